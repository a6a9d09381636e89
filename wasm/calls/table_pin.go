//go:build !order

package calls

func init() {
	enter(map[string]handler{
		"hello":      answering(hello),
		"header":     answering(header),
		"open":       answering(open),
		"ground":     answering(ground),
		"revise":     answering(revise),
		"thumbnail":  answering(thumbnail),
		"flats":      answering(flats),
		"codes":      answering(codes),
		"buys":       answering(buys),
		"check":      answering(check),
		"quote":      answering(quote),
		"choices":    answering(choices),
		"orderitems": answering(orderItems),
		"picture":    answering(picture),
		"look":       answering(lookedAt),
		"reading":    answering(reading),
		"neighbours": answering(neighbours),
		"glance":     answering(glance),
		"touch":      answering(touch),
		"offers":     answering(offers),
		"mendall":    answering(mendAll),
		"mendedfrom": answering(mendedFrom),
		"marks":      answering(marks),
		"sizes":      answering(sizes),
		"hang":       answering(hang),
		"parts":      answering(chooseParts),
		"eyes":       answering(eyes),
		"screen":     answering(screen),
		"typed":      answering(typed),
		"struck":     answering(handOver),
	})
}
