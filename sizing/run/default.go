package run

import (
	"github.com/shopspring/decimal"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Default returns an invented price list to start from. Its shape is the
// trade's (common practice, no published source): four colours in the price,
// dear below a hundred pieces and nearly flat above, the pieces and not the die
// cheaper for the patient; its figures are nobody's.
func Default() PriceList {
	return PriceList{
		ID: "example", Name: "Example maker (invented prices)", Invented: true,
		Currency: "EUR", MinorDigits: 2,
		Pieces: PiecePrices{
			Sizes: []unit.MM{22, 30, 38, 45, 60}, SizeBy: sizing.ByLongest, Together: ByVersion,
			Breaks: []Break{
				prices(25, "3.90", "4.30", "4.80", "5.60", "7.40"),
				prices(50, "2.30", "2.55", "2.90", "3.45", "4.70"),
				prices(100, "1.32", "1.48", "1.72", "2.10", "2.95"),
				prices(200, "1.16", "1.30", "1.52", "1.87", "2.65"),
				prices(300, "1.09", "1.23", "1.44", "1.78", "2.53"),
				prices(500, "1.02", "1.15", "1.36", "1.69", "2.41"),
				prices(1000, "0.95", "1.08", "1.28", "1.60", "2.30"),
			},
		},
		Least: Least{Design: 25},
		Die:   DiePrices{Flat: money("68.00"), BySize: []Rate{}, Further: money("48.00"), KeptMonths: 36},
		Metal: MetalPrices{
			Making:  Kinds{Listed: []KindCharge{kind(sizing.Cast, "15", Percent)}, Others: apiece("0")},
			Plating: Kinds{Listed: []KindCharge{}, Others: apiece("0")},
			Thick:   []Thick{{From: 2, Charge: apiece("0.14")}},
		},
		Colours: ColourPrices{
			Included: 4, Further: apiece("0.11"),
			Fill:    Kinds{Listed: []KindCharge{kind(sizing.Hard, "12", Percent)}, Others: apiece("0")},
			Fancy:   Kinds{Listed: []KindCharge{}, Others: apiece("0.06")},
			Printed: apiece("0.08"), PrintSetUp: money("18.00"),
		},
		Shape:  ShapePrices{CutOutsFree: 1, CutOut: apiece("0.04"), Part: apiece("0.25"), Ring: apiece("0.03"), Chain: apiece("0.16")},
		Back:   BackPrices{Post: apiece("0.09"), Kinds: Kinds{Listed: []KindCharge{kind(sizing.MagnetBack, "0.55", PerPiece)}, Others: apiece("0.20")}, Stamp: Charge{money("15.00"), SetUp}},
		Pack:   PackPrices{Dome: apiece("0.12"), Packaging: Kinds{Listed: []KindCharge{kind("bag", "0", PerPiece), kind("box", "0.70", PerPiece)}}, CardSetUp: money("22.00"), Card: apiece("0.17")},
		Proofs: ProofPrices{Included: 3, Further: money("9.00")},
		Delivery: Delivery{Choices: []DeliveryChoice{
			{Name: "usual", Days: 15, Off: money("0"), On: OnPieces},
			{Name: "patient", Days: 30, Off: money("6"), On: OnPieces},
			{Name: "rush", Days: 9, More: money("20"), On: OnPieces},
		}},
		Shipping: Shipping{By: ShipFlat, Flat: money("32.00"), Weights: []ByWeight{}, Classes: []ShippingClass{}},
		Fees:     Fees{Duty: money("0"), Tax: money("0"), BankFee: money("0"), BankPercent: money("0")},
		Count:    Counting{Over: money("5"), Under: money("0")},
		Named:    []NamedCharge{},
		Notes:    Notes{Faults: "Faulty pieces are made again or paid back when told of within 14 days (invented).", Keeps: "The die and the drawing (invented)."},
	}
}

func money(s string) Rate { return Of(decimal.RequireFromString(s)) }

func apiece(s string) Charge { return Charge{money(s), PerPiece} }

func kind[T ~string](id T, rate string, by ChargeBy) KindCharge {
	return KindCharge{ID: string(id), Charge: Charge{money(rate), by}}
}

func prices(from int, each ...string) Break {
	b := Break{From: from}
	for _, s := range each {
		b.Unit = append(b.Unit, money(s))
	}
	return b
}
