package left

import "github.com/shopspring/decimal"

// Usual is a way of selling to start from. Its shape is common practice, with
// no published source; its figures are invented, and no post's or shop's.
func Usual() Selling {
	d := decimal.RequireFromString
	return Selling{
		Currency: "EUR", MinorDigits: 2, Pieces: 100, Price: d("11"),
		SecondsShare: d("10"), SecondsOff: d("50"), SecondsBy: 0,
		Tax: SalesTax{Percent: d("20"), Included: true, OnPosting: true}, Grams: 12, MM: 9,
		Classes: []PostClass{
			{Name: "letter", Grams: 20, MM: 5, Price: d("1.10")},
			{Name: "large letter", Grams: 250, MM: 20, Price: d("1.95")},
			{Name: "parcel", Grams: 2000, MM: 300, Price: d("5.20")},
		},
		Packing: Wrapping{Envelope: d("0.24"), Card: d("0.15"), Bag: d("0.03"), EnvelopeGrams: 8, CardGrams: 3, BagGrams: 1, EnvelopeMM: 2},
		Channels: []Channel{
			{Kind: Online, Name: "Online", Share: d("50"), FeePercent: d("6.5"), FeeFixed: d("0.30"), Posted: true, PostPaid: d("2.50")},
			{Kind: Fair, Name: "Fairs", Share: d("20"), FeePercent: d("1.75"), Once: d("60")},
			{Kind: Wholesale, Name: "Wholesale", Share: d("20"), Cut: d("50")},
			{Kind: Consignment, Name: "On consignment", Cut: d("40")},
			{Kind: Set, Name: "In sets of three", Price: d("28"), Pieces: 3, FeePercent: d("6.5"), FeeFixed: d("0.30"), Posted: true, PostPaid: d("2.50")},
			{Kind: Gift, Name: "Gifts", Share: d("5")},
			{Kind: Cause, Name: "For a cause", Given: d("100"), GivenOf: OfLeft, FeePercent: d("6.5"), FeeFixed: d("0.30")},
		},
	}
}
