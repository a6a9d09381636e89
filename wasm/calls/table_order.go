//go:build !pin

package calls

// These calls need no drawing: what they know of a pin comes with the request,
// or was handed over before it as struck.
// The page fetches their program with the first of them.
func init() {
	enter(map[string]handler{
		"canvas":         answering(canvasOf),
		"guide":          answering(guide),
		"colourlist":     answering(readColourList),
		"orderquote":     answering(orderQuote),
		"makers":         answering(makers),
		"listcheck":      answering(listCheck),
		"newlist":        answering(newList),
		"pricefile":      answering(readPriceFile),
		"pricefilewrite": answering(writePriceFile),
		"left":           answering(leftAfter),
		"demand":         answering(howMany),
		"presale":        answering(presale),
		"orderusual":     answering(orderUsual),
		"days":           answering(calendar),
		"promise":        answering(promise),
		"ics":            answering(calendarFile),
		"fromquotes":     answering(fromQuotes),
		"backmark":       answering(backMark),
		"parcel":         answering(parcelCounted),
		"lookedat":       answering(someLooked),
		"plan":           answering(samplingPlan),
		"ledger":         answering(stockLeft),
		"claim":          answering(claimWritten),
		"font":           answering(font),
		"specsheet":      answering(specSheet),
		"layers":         answering(layers),
		"hand":           answering(hand),
		"asked":          answering(askedFor),
		"inquiry":        answering(inquiry),
		"changes":        answering(changeRequest),
		"list":           answering(csvList),
		"card":           answering(cardLaid),
		"cardfile":       answering(cardFile),
		"cardpicture":    answering(cardPicture),
		"shoppicture":    answering(shopPicture),
		"shapes":         answering(shapes),
		"savefile":       answering(saveFile),
		"openfile":       answering(openFile),
		"forward":        answering(bringForward),
	})
}
