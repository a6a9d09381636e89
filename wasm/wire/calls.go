package wire

import "badgewright/sizing/run"

// Call is one call between the page and the engine: its name, and an empty
// value of the type it asks with and of the type it is answered with.
type Call struct {
	Name   string
	Ask    any
	Answer any
}

// Calls is every call of the pin; the TypeScript twin is generated from it and
// from OrderCalls.
var Calls = []Call{
	{"hello", HelloAsk{}, Hello{}},
	{"header", HeaderAsk{}, Header{}},
	{"open", OpenAsk{}, Opened{}},
	{"ground", GroundAsk{}, Opened{}},
	{"revise", ReviseAsk{}, Revised{}},
	{"thumbnail", ThumbnailAsk{}, Thumbnail{}},
	{"flats", FlatsAsk{}, Flats{}},
	{"buys", BuysAsk{}, Buys{}},
	{"codes", CodesAsk{}, Codes{}},
	{"check", CheckAsk{}, Check{}},
	{"quote", QuoteAsk{}, run.Quote{}},
	{"choices", ChoicesAsk{}, Choices{}},
	{"orderitems", OrderItemsAsk{}, OrderItems{}},
	{"picture", PictureAsk{}, Picture{}},
	{"look", LookAsk{}, Picture{}},
	{"reading", ReadingAsk{}, ReadingAnswer{}},
	{"neighbours", NeighboursAsk{}, Neighbours{}},
	{"glance", GlanceAsk{}, Glance{}},
	{"touch", TouchAsk{}, Touch{}},
	{"offers", OffersAsk{}, Offers{}},
	{"mendall", MendAllAsk{}, MendAll{}},
	{"mendedfrom", MendedFromAsk{}, MendedFrom{}},
	{"marks", MarksAsk{}, PNGFile{}},
	{"sizes", SizesAsk{}, Sizes{}},
	{"hang", HangAsk{}, Hung{}},
	{"parts", PartsAsk{}, PartsChosen{}},
	{"eyes", EyesAsk{}, HeldParts{}},
	{"screen", ScreenAsk{}, TrueSize{}},
	{"typed", TypedAsk{}, Typed{}},
	{"struck", StruckAsk{}, Struck{}},
}
