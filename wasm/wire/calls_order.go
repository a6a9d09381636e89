//go:build !pin

package wire

import (
	"reflect"

	"badgewright/sizing/deduce"
	"badgewright/sizing/proof"
	"badgewright/sizing/run"
	"badgewright/sizing/sheet"
)

// OrderCalls is every call that needs no drawing, or one handed over as struck,
// and can wait until the first screen is there: the page's second program answers them.
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
	{"parcel", ParcelAsk{}, ParcelCounted{}},
	{"lookedat", LookedAtAsk{}, LookedAt{}},
	{"plan", PlanAsk{}, Planned{}},
	{"ledger", LedgerAsk{}, Ledger{}},
	{"claim", ClaimAsk{}, ClaimWritten{}},
	{"font", FontAsk{}, Font{}},
	{"specsheet", SpecSheetAsk{}, PaperFile{}},
	{"layers", LayersAsk{}, PaperFile{}},
	{"hand", Struck{}, Hand{}},
	{"asked", AskedAsk{}, sheet.Asked{}},
	{"inquiry", InquiryAsk{}, sheet.Inquiry{}},
	{"changes", ChangesAsk{}, sheet.Inquiry{}},
	{"list", ListAsk{}, PaperFile{}},
	{"card", CardAsk{}, CardLaid{}},
	{"cardfile", CardFileAsk{}, PaperFile{}},
	{"cardpicture", CardPictureAsk{}, CardPicture{}},
	{"shoppicture", ShopPictureAsk{}, PNGFile{}},
	{"shapes", ShapesAsk{}, Shapes{}},
	{"savefile", SaveFileAsk{}, SavedFile{}},
	{"openfile", OpenFileAsk{}, OpenedFile{}},
	{"forward", ForwardAsk{}, Forwarded{}},
	{"proofopen", ProofOpenAsk{}, ProofLaid{}},
	{"prooffit", ProofFitAsk{}, ProofLaid{}},
	{"proofdiff", ProofDiffAsk{}, proof.HeldAgainst{}},
	{"prooflook", ProofLookAsk{}, Picture{}},
	{"proofmarks", ProofMarksAsk{}, PNGFile{}},
	{"proofpairs", ProofPairsAsk{}, ProofPairs{}},
}

// OfHanded says whether a call speaks of a version that was handed over: its
// request names one by its key, as "of".
func OfHanded(call string) bool {
	for _, c := range OrderCalls {
		if c.Name != call {
			continue
		}
		f, has := reflect.TypeOf(c.Ask).FieldByName("Of")
		return has && f.Tag.Get("json") == "of"
	}
	return false
}
