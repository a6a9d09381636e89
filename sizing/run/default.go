package run

import (
	"github.com/shopspring/decimal"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Default returns an invented price list to start from. Its shape is the
// trade's (common practice, no published source): four colours in the price,
// dear below a hundred pieces and nearly flat above; its figures are nobody's.
func Default() PriceList {
	return PriceList{
		ID: "example", Name: "Example maker (invented prices)", Invented: true,
		Currency: "EUR", MinorDigits: 2,
		Die:   money("68.00"),
		Sizes: []unit.MM{22, 30, 38, 45, 60}, SizeBy: sizing.ByLongest,
		Breaks: []Break{
			prices(25, "3.90", "4.30", "4.80", "5.60", "7.40"),
			prices(50, "2.30", "2.55", "2.90", "3.45", "4.70"),
			prices(100, "1.32", "1.48", "1.72", "2.10", "2.95"),
			prices(200, "1.16", "1.30", "1.52", "1.87", "2.65"),
			prices(300, "1.09", "1.23", "1.44", "1.78", "2.53"),
			prices(500, "1.02", "1.15", "1.36", "1.69", "2.41"),
			prices(1000, "0.95", "1.08", "1.28", "1.60", "2.30"),
		},
		Included:    4,
		ExtraColour: Charge{Rate: money("0.11"), By: PerPiece},
		Hard:        Charge{Rate: money("12"), By: Percent},
		Fancy:       Charge{Rate: money("0.06"), By: PerPiece},
		Printed:     Charge{Rate: money("0.08"), By: PerPiece},
		PrintSetUp:  money("18.00"),
		SecondPost:  money("0.09"),
		BackStamp:   money("15.00"),
		Shipping:    money("32.00"),
		Minimum:     25,
	}
}

func money(s string) decimal.Decimal { return decimal.RequireFromString(s) }

func prices(from int, each ...string) Break {
	b := Break{From: from}
	for _, s := range each {
		b.Unit = append(b.Unit, money(s))
	}
	return b
}
