package run

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// bare is a list that charges 2.00 a piece up to 40 mm, and else says nothing.
func bare() PriceList {
	return PriceList{
		Currency: "EUR", MinorDigits: 2,
		Pieces:   PiecePrices{Sizes: []unit.MM{40}, SizeBy: sizing.ByLongest, Breaks: []Break{prices(1, "2.00")}},
		Die:      DiePrices{Flat: money("60")},
		Shipping: Shipping{By: ShipFlat, Flat: money("10")},
		Fees:     Fees{Duty: money("0"), Tax: money("0"), BankFee: money("0"), BankPercent: money("0")},
		Back:     BackPrices{Post: apiece("0.10")},
	}
}

// priceOf gives the lines of an order of 100 by a list, both changed first.
func priceOf(t *testing.T, list func(*PriceList), ask func(*Item), terms Terms) Quote {
	l, it := bare(), item(100)
	it.Enamels = 0
	list(&l)
	ask(&it)
	require.Empty(t, l.Validate())
	q, err := PriceOrder(l, Wanted{Items: []Item{it}, Terms: terms})
	require.NoError(t, err)
	return q
}

// Each charge by itself, worked by hand on 100 pieces at 2.00.
func TestEveryChargeHasItsLine(t *testing.T) {
	percent := func(s string) Charge { return Charge{money(s), Percent} }
	setUp := func(s string) Charge { return Charge{money(s), SetUp} }
	none := func(*Item) {}
	for key, c := range map[string]struct {
		list func(*PriceList)
		ask  func(*Item)
		is   string
	}{
		KeyDie:        {func(l *PriceList) { l.Die.BySize = []Rate{money("45")} }, none, "Die, once |  | EUR 45.00"},
		KeyFurtherDie: {func(l *PriceList) { l.Die.Further = money("30") }, func(i *Item) { i.FurtherDies = 2 }, "2 further dies, once |  | EUR 60.00"},
		KeyMaking:     {func(l *PriceList) { l.Metal.Making.Others = percent("15") }, func(i *Item) { i.Making = sizing.Cast }, "Made cast | 100 × EUR 0.30 | EUR 30.00"},
		KeyPlating:    {func(l *PriceList) { l.Metal.Plating.Listed = []KindCharge{kind("rose", "0.05", PerPiece)} }, func(i *Item) { i.Plating = "rose" }, "Plating: rose gold | 100 × EUR 0.05 | EUR 5.00"},
		KeyThickness:  {func(l *PriceList) { l.Metal.Thick = []Thick{{1.8, apiece("0.1")}, {2, apiece("0.2")}} }, func(i *Item) { i.Thickness = 2 }, "Metal 2 mm thick | 100 × EUR 0.20 | EUR 20.00"},
		KeyColours:    {func(l *PriceList) { l.Colours.Included = 4; l.Colours.Further = setUp("7") }, func(i *Item) { i.Enamels = 6 }, "2 further colours, set-up |  | EUR 14.00"},
		KeyHard:       {func(l *PriceList) { l.Colours.Fill.Listed = []KindCharge{kind(sizing.Hard, "12", Percent)} }, func(i *Item) { i.Fill = sizing.Hard }, "Hard enamel instead of soft | 100 × EUR 0.24 | EUR 24.00"},
		KeyCutOuts:    {func(l *PriceList) { l.Shape.CutOutsFree = 1; l.Shape.CutOut = apiece("0.04") }, func(i *Item) { i.CutOuts = 3 }, "2 cut-outs | 100 × EUR 0.08 | EUR 8.00"},
		KeyParts:      {func(l *PriceList) { l.Shape.Part = apiece("0.3") }, func(i *Item) { i.Parts = 2 }, "1 further part | 100 × EUR 0.30 | EUR 30.00"},
		KeyRings:      {func(l *PriceList) { l.Shape.Ring = apiece("0.02") }, func(i *Item) { i.Rings = 2 }, "2 jump rings | 100 × EUR 0.04 | EUR 4.00"},
		KeyChains:     {func(l *PriceList) { l.Shape.Chain = apiece("0.15") }, func(i *Item) { i.Chains = 1 }, "1 chain | 100 × EUR 0.15 | EUR 15.00"},
		KeyPost:       {func(*PriceList) {}, func(i *Item) { i.Posts = 3 }, "2 further posts | 100 × EUR 0.20 | EUR 20.00"},
		KeyFastening:  {func(l *PriceList) { l.Back.Kinds.Listed = []KindCharge{kind(sizing.MagnetBack, "0.5", PerPiece)} }, func(i *Item) { i.Fastening = sizing.MagnetBack }, "Fastening: magnet | 100 × EUR 0.50 | EUR 50.00"},
		KeyStamp:      {func(l *PriceList) { l.Back.Stamp = apiece("0.03") }, func(i *Item) { i.Stamped = true }, "Stamp on the back | 100 × EUR 0.03 | EUR 3.00"},
		KeyDome:       {func(l *PriceList) { l.Pack.Dome = apiece("0.12") }, func(i *Item) { i.Dome = true }, "Clear dome | 100 × EUR 0.12 | EUR 12.00"},
		KeyPackaging:  {func(l *PriceList) { l.Pack.Packaging.Others = apiece("0.7") }, func(i *Item) { i.Packaging = "box" }, "Packaging: box | 100 × EUR 0.70 | EUR 70.00"},
		KeyCardSetUp:  {func(l *PriceList) { l.Pack.CardSetUp, l.Pack.Card = money("22"), apiece("0.2") }, func(i *Item) { i.Card = true }, "Backing card set-up, once |  | EUR 22.00"},
		KeyCard:       {func(l *PriceList) { l.Pack.CardSetUp, l.Pack.Card = money("22"), apiece("0.2") }, func(i *Item) { i.Card = true }, "Backing card | 100 × EUR 0.20 | EUR 20.00"},
		KeyNamed: {func(l *PriceList) {
			l.Colours.Included, l.Named = 4, []NamedCharge{{"Mixing", money("3"), NamedColour}}
		}, func(i *Item) { i.Enamels = 4 }, "Mixing, 4 colours |  | EUR 12.00"},
		KeyProofs: {func(l *PriceList) { l.Proofs = ProofPrices{Included: 2, Further: money("8")} }, none, "2 further proof rounds |  | EUR 16.00"},
		KeyDuty:   {func(l *PriceList) { l.Fees.Duty, l.Fees.DutyOnShipping = money("5"), true }, none, "Duty, 5 % of goods and shipping |  | EUR 13.50"},
		KeyTax:    {func(l *PriceList) { l.Fees.Duty, l.Fees.Tax = money("5"), money("20") }, none, "Tax, 20 % of goods, shipping and duty |  | EUR 56.60"}, // 20 % of 260 + 10 + 13
		KeyBank:   {func(l *PriceList) { l.Fees.BankFee = money("4.5") }, none, "Bank fee, once |  | EUR 4.50"},
	} {
		terms := Terms{}
		if key == KeyProofs {
			terms.Rounds = 4
		}
		assert.Equal(t, c.is, listed(priceOf(t, c.list, c.ask, terms), key), key)
	}
}

func TestWhatIsNotKnownIsAskedForOnlyWhenItMatters(t *testing.T) {
	l, it := bare(), item(100)
	it.Enamels = 0
	_, err := Price(l, []Item{it})
	require.NoError(t, err, "a plain pin hangs on none of what is open")
	it.Fill, it.Card = sizing.Hard, true
	_, err = Price(l, []Item{it})
	var open *Unknown
	require.ErrorAs(t, err, &open)
	var cells []string
	for _, n := range open.Needs {
		cells = append(cells, n.Cell)
	}
	assert.Equal(t, []string{"colours.fill.others.rate", "pack.cardSetUp", "pack.card.rate"}, cells)
	assert.Equal(t, "The list does not say what this costs: Hard enamel instead of soft. It leaves open 2 more. Ask the maker, and put it into the price list.", err.Error())
	q, err := Known(l, Wanted{Items: []Item{it}})
	require.NoError(t, err)
	assert.Equal(t, "270", q.Total.String(), "what is known is shown")
	assert.Len(t, q.Needs, 3)

	l = bare()
	l.Pieces.Breaks[0].Unit[0] = Rate{}
	_, err = Price(l, []Item{item(100)})
	assert.ErrorContains(t, err, "Pieces up to 40 mm")
	l = bare()
	l.Fees = Fees{}
	q, err = Price(l, []Item{it2(item(10))})
	require.NoError(t, err)
	assert.Contains(t, q.Notes[0], "Without duty, tax and bank fee")
}

func it2(it Item) Item { it.Enamels = 0; return it }

// The die is kept for reorders, not charged again while it is, and shared by
// the versions of a design unless the maker cuts one for each (common practice,
// no published source).
func TestADieIsPaidOnceWhileItIsKept(t *testing.T) {
	l := bare()
	l.Die.KeptMonths = 24
	again := it2(item(50))
	again.NewDie, again.DieAge = false, 24
	q, err := Price(l, []Item{again})
	require.NoError(t, err)
	assert.Empty(t, listed(q, KeyDie))
	again.DieAge = 25
	q, err = Price(l, []Item{again})
	require.NoError(t, err)
	assert.Equal(t, "Die, cut again after 25 months |  | EUR 60.00", listed(q, KeyDie))

	day, night := it2(item(50)), it2(item(50))
	day.Version, night.Version = "day", "night"
	dies := func() (n int) {
		q, err := Price(l, []Item{day, night})
		require.NoError(t, err)
		for _, line := range q.Lines {
			if line.Key == KeyDie {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 1, dies())
	l.Die.EachVersion = true
	assert.Equal(t, 2, dies())
	l.Die.EachVersion = false
	night.Die = "another"
	assert.Equal(t, 2, dies())
}

func TestBreaksAreReachedTogetherWhereTheListSaysSo(t *testing.T) {
	l := bare()
	l.Pieces.Breaks = append(l.Pieces.Breaks, prices(100, "1.00"))
	day, night, buoy := it2(item(60)), it2(item(60)), it2(item(60))
	day.Version, night.Version, buoy.Design = "day", "night", "Buoy"
	for by, want := range map[Together]string{"": "490", ByVersion: "490", ByDesign: "370", ByOrder: "310"} {
		l.Pieces.Together = by
		q, err := Price(l, []Item{day, night, buoy})
		require.NoError(t, err)
		assert.Equal(t, want, q.Total.String(), by) // two dies and the shipping, 130, and 180 pieces
	}
	l.Pieces.Together = ByOrder
	more := CheaperMore(l, Wanted{Items: []Item{day, night, buoy}})
	assert.Empty(t, more, "all are past the break together")
	day.Quantity, night.Quantity = 45, 45
	l.Pieces.Together = ByDesign
	more = CheaperMore(l, Wanted{Items: []Item{day, night, buoy}})
	require.Len(t, more, 3)
	assert.Equal(t, 55, more[0].Quantity, "10 more of one reach the break for both")
}

func TestAMinimumHoldsForDesignAndVersion(t *testing.T) {
	l := bare()
	l.Least = Least{Design: 50, Version: 25}
	a, b := it2(item(40)), it2(item(20))
	a.Version, b.Version = "day", "night"
	_, err := Price(l, []Item{a, b})
	assert.ErrorContains(t, err, "below 25 pieces of a version, and 20 are asked for")
	b.Quantity = 25
	_, err = Price(l, []Item{a, b})
	assert.NoError(t, err)
}

// 6 % off the pieces or off all but the shipping; a rush is dearer.
func TestDeliveryFallsOnWhatItIsStatedToFallOn(t *testing.T) {
	list := func(on DeliveryOn) func(*PriceList) {
		return func(l *PriceList) {
			l.Delivery.Choices = []DeliveryChoice{{Name: "usual", Off: money("0"), On: on}, {Name: "patient", Off: money("6"), On: on}, {Name: "rush", More: money("20"), Fee: money("15"), On: on}}
		}
	}
	two := func(i *Item) { i.Posts = 2 }
	assert.Empty(t, listed(priceOf(t, list(OnPieces), two, Terms{}), KeyDelivery))
	assert.Equal(t, "Delivery patient: 6 % off, of the pieces |  | EUR −12.60", listed(priceOf(t, list(OnPieces), two, Terms{Delivery: "patient"}), KeyDelivery))
	assert.Equal(t, "Delivery patient: 6 % off, of all before shipping |  | EUR −16.20", listed(priceOf(t, list(OnAll), two, Terms{Delivery: "patient"}), KeyDelivery))
	q := priceOf(t, list(OnPieces), two, Terms{Delivery: "rush"})
	assert.Equal(t, "337", q.Total.String()) // 60 + 210 + 42 + 15 + 10
	l, it := bare(), it2(item(5))
	_, err := PriceOrder(l, Wanted{Items: []Item{it}, Terms: Terms{Delivery: "slow"}})
	assert.ErrorContains(t, err, `no delivery called "slow"`)
}

func TestShippingByWeightAndByClass(t *testing.T) {
	l := bare()
	l.Shipping = Shipping{By: ShipWeight, Weights: []ByWeight{{500, money("9")}, {1000, money("14")}}, Further: money("6")}
	it := it2(item(50))
	_, err := Price(l, []Item{it})
	assert.ErrorContains(t, err, "weight of a piece is not known")
	for grams, want := range map[unit.Grams]string{10: "9", 10.1: "14", 20: "14", 21: "20", 60.5: "32"} {
		it.Weight = grams
		q, err := Price(l, []Item{it})
		require.NoError(t, err)
		assert.Equal(t, want, q.Lines[len(q.Lines)-1].Amount.String(), "%g g each", grams)
	}
	it.Weight, l.Shipping.Further = 60.5, Rate{}
	_, err = Price(l, []Item{it})
	assert.ErrorContains(t, err, "Shipping, 1000 g and 3 kilograms more")
	l.Shipping = Shipping{By: ShipClass, Classes: []ShippingClass{{"post", 9, money("12")}, {"courier", 3, money("30")}}}
	q, err := PriceOrder(l, Wanted{Items: []Item{it}, Terms: Terms{Shipping: "courier"}})
	require.NoError(t, err)
	assert.Equal(t, "Shipping, courier |  | EUR 30.00", listed(q, KeyShipping))
}

func TestATotalInASecondCurrency(t *testing.T) {
	rate := func(s string) *Exchange {
		return &Exchange{Currency: "JPY", MinorDigits: 0, Rate: money(s).Value(), Dated: "2026-11-26"}
	}
	q := priceOf(t, func(*PriceList) {}, func(*Item) {}, Terms{Into: rate("162.355")})
	assert.Equal(t, "43836", q.Into.Total.String()) // 270 x 162.355 = 43835.85
	assert.Equal(t, "about JPY\u00a043\u00a0836", q.Into.TotalSays)
	assert.Equal(t, "at JPY\u00a0162.355 for EUR\u00a01, of 2026-11-26", q.Into.RateSays)
	_, err := PriceOrder(bare(), Wanted{Items: []Item{it2(item(5))}, Terms: Terms{Into: rate("0")}})
	assert.ErrorContains(t, err, "no rate of exchange")
}

// 100 ordered at 270 in all: 12 in a hundred have flaws, 8 are given away.
func TestWhatASoldPieceCosts(t *testing.T) {
	l := func(l *PriceList) { l.Count.Under = money("5") }
	q := priceOf(t, l, func(*Item) {}, Terms{Seconds: 12, Free: 8})
	assert.Equal(t, 88, q.Landed.Good)
	assert.Equal(t, 80, q.Landed.Sold)
	assert.Equal(t, "about EUR\u00a03.068", q.Landed.GoodSays) // 270 / 88
	assert.Equal(t, "about EUR\u00a03.375", q.Landed.SoldSays) // 270 / 80
	assert.Equal(t, 83, q.Landed.Short.Good)                   // 95 come, 12 flawed
	assert.Equal(t, "about EUR\u00a03.467", q.Landed.Short.SoldSays, "260 over 75: five that do not come are not billed")
	q = priceOf(t, func(l *PriceList) { l.Count.Under, l.Count.UnderBilled = money("5"), true }, func(*Item) {}, Terms{Seconds: 12, Free: 8})
	assert.Equal(t, "about EUR\u00a03.600", q.Landed.Short.SoldSays, "270 over 75")
	q = priceOf(t, func(*PriceList) {}, func(*Item) {}, Terms{Free: 200})
	assert.Empty(t, q.Landed.SoldSays)
	assert.Nil(t, q.Landed.Short)
	_, err := PriceOrder(bare(), Wanted{Items: []Item{it2(item(5))}, Terms: Terms{Seconds: 101}})
	assert.ErrorContains(t, err, "cannot be seconds")
}

// A rate that is not known stays so on the wire, and is not nothing.
func TestAnUnknownRateSurvivesJSON(t *testing.T) {
	b, err := json.Marshal([]Rate{{}, money("0"), money("1.50")})
	require.NoError(t, err)
	assert.Equal(t, `["","0","1.5"]`, string(b))
	var back []Rate
	require.NoError(t, json.Unmarshal(b, &back))
	assert.False(t, back[0].Known())
	assert.True(t, back[1].free())
	assert.Error(t, json.Unmarshal([]byte(`["1,5"]`), &back))
}
