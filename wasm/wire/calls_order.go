//go:build !pin

package wire

import (
	"badgewright/sizing/deduce"
	"badgewright/sizing/run"
)

// OrderCalls is every call that needs no drawing and can wait until the first
// screen is there: the page's second program answers them.
var OrderCalls = []Call{
	{"canvas", CanvasAsk{}, Canvas{}},
	{"guide", GuideAsk{}, PNGFile{}},
	{"colourlist", ColourListAsk{}, ColourListRead{}},
	{"orderquote", OrderQuoteAsk{}, run.Quote{}},
	{"makers", MakersAsk{}, run.Comparison{}},
	{"listcheck", ListCheckAsk{}, ListCheck{}},
	{"newlist", NewListAsk{}, NewList{}},
	{"pricefile", PriceFileAsk{}, PriceFileRead{}},
	{"pricefilewrite", PriceFileWriteAsk{}, PriceFileWritten{}},
	{"fromquotes", FromQuotesAsk{}, deduce.Deduction{}},
	{"left", LeftAsk{}, Left{}},
	{"demand", DemandAsk{}, Demand{}},
	{"presale", PresaleAsk{}, Presale{}},
	{"orderusual", OrderUsualAsk{}, OrderUsual{}},
	{"days", DaysAsk{}, Days{}},
	{"promise", PromiseAsk{}, Promise{}},
	{"ics", CalendarFileAsk{}, CalendarFile{}},
	{"backmark", BackMarkAsk{}, BackMark{}},
}
