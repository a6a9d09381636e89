//go:build !pin

package calls

// The calls of the order need no drawing: what they know of the pin comes with
// the request. The page fetches their program when the first screen is there.
func init() {
	enter(map[string]handler{
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
	})
}
