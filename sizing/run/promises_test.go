package run

import (
	"math/rand"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// anyList makes a list that is in order, with prices that never rise.
func anyList(r *rand.Rand) PriceList {
	l := PriceList{Currency: "EUR", MinorDigits: r.Intn(3)}
	l.Pieces.SizeBy, l.Colours.Included, l.Shape.CutOutsFree, l.Proofs.Included = sizing.ByLongest, r.Intn(6), r.Intn(3), r.Intn(3)
	rate := func(most int64) Rate { return Of(decimal.New(r.Int63n(most), -6)) }
	by := []ChargeBy{PerPiece, Percent, SetUp}
	charge := func() Charge { return Charge{rate(5e6), by[r.Intn(3)]} }
	kinds := func(id string) Kinds {
		return Kinds{Listed: []KindCharge{{ID: id, Charge: charge()}}, Others: charge()}
	}
	l.Die, l.Shipping = DiePrices{Flat: rate(90e6), Further: rate(50e6)}, Shipping{By: ShipFlat, Flat: rate(40e6)}
	l.Colours.Further, l.Colours.Fill, l.Colours.Fancy = charge(), kinds("hard"), kinds("pearl")
	l.Colours.Printed, l.Colours.PrintSetUp = charge(), rate(40e6)
	l.Metal = MetalPrices{Making: kinds("cast"), Plating: kinds("copper"), Thick: []Thick{{From: 1.8, Charge: charge()}}}
	l.Shape.CutOut, l.Shape.Part, l.Shape.Ring, l.Shape.Chain = charge(), charge(), charge(), charge()
	l.Back = BackPrices{Post: charge(), Kinds: kinds("magnet"), Stamp: charge()}
	l.Pack = PackPrices{Dome: charge(), Packaging: kinds("box"), CardSetUp: rate(40e6), Card: charge()}
	l.Proofs.Further = rate(9e6)
	l.Delivery.Choices = []DeliveryChoice{{Name: "usual", Off: rate(30e6), On: OnPieces}, {Name: "rush", More: rate(30e6), Fee: rate(9e6), On: OnAll}, {Name: "patient", Off: rate(99e6), On: OnAll}}
	l.Fees = Fees{Duty: rate(9e6), DutyOnShipping: r.Intn(2) == 0, Tax: rate(25e6), BankFee: rate(9e6), BankPercent: rate(3e6)}
	l.Named = []NamedCharge{{"forms", rate(9e6), NamedOrder}, {"wiping", rate(9e4), NamedPiece}, {"mixing", rate(2e6), NamedColour}, {"filing", rate(9e6), NamedDesign}}
	l.Pieces.Sizes = []unit.MM{30, 60}
	from, price := 1, int64(9e6)
	for range 1 + r.Intn(6) {
		l.Pieces.Breaks = append(l.Pieces.Breaks, Break{From: from, Unit: []Rate{Of(decimal.New(price, -6)), Of(decimal.New(price+r.Int63n(1e6), -6))}})
		from += 1 + r.Intn(120)
		price = price*int64(50+r.Intn(45))/100 + 1
	}
	return l
}

// anyItem makes an item with a share of all that can be ordered.
func anyItem(r *rand.Rand) Item {
	it := item(1 + r.Intn(600))
	some := func(n int) int { return r.Intn(n) }
	it.Longest, it.Enamels, it.Posts = unit.MM(5+some(55)), some(12), 1+some(2)
	it.Fill = []sizing.Fill{sizing.Soft, sizing.Hard, sizing.Unfilled}[some(3)]
	it.Making = []sizing.Making{"", sizing.Struck, sizing.Cast}[some(3)]
	it.Plating = []sizing.PlatingID{"", "gold", "copper"}[some(3)]
	it.Fastening = []sizing.Fastening{"", sizing.MagnetBack, sizing.PinBar}[some(3)]
	it.Packaging = []string{"", "box", "bag"}[some(3)]
	it.Thickness, it.Printed, it.CutOuts, it.Parts = unit.MM(1+some(2)), some(3), some(5), some(3)
	it.Rings, it.Chains, it.FurtherDies = some(4), some(2), some(2)
	it.Stamped, it.Dome, it.Card, it.NewDie = some(2) == 0, some(2) == 0, some(2) == 0, some(4) > 0
	return it
}

// Every total is the sum of its lines, none is below zero, and asking for more
// of anything never makes an order cheaper.
func TestTotalsKeepTheirPromises(t *testing.T) {
	seed := int64(20261125)
	r := rand.New(rand.NewSource(seed))
	lists := 400
	if testing.Short() {
		lists = 50
	}
	for n := range lists {
		l := anyList(r)
		require.Empty(t, l.Validate(), "seed %d, list %d", seed, n)
		it := anyItem(r)
		terms := Terms{Delivery: []string{"", "rush", "patient"}[r.Intn(3)], Rounds: r.Intn(6)}
		q, err := PriceOrder(l, Wanted{Items: []Item{it}, Terms: terms})
		require.NoError(t, err)
		require.False(t, q.Total.IsNegative(), "seed %d, list %d", seed, n)
		sum := decimal.Zero
		for _, line := range q.Lines {
			require.True(t, line.Key == KeyDelivery || !line.Amount.IsNegative(), line.What)
			require.True(t, line.Amount.Equal(line.Amount.Round(int32(l.MinorDigits))), "shown in full")
			sum = sum.Add(line.Amount)
		}
		require.True(t, sum.Equal(q.Total), "seed %d, list %d: %s is not %s", seed, n, sum, q.Total)
		for what, dearer := range dearerWith {
			other := it
			dearer(&other)
			if what == "a colour" && it.Fill == sizing.Unfilled {
				continue
			}
			q2, err := PriceOrder(l, Wanted{Items: []Item{other}, Terms: terms})
			require.NoError(t, err)
			// Each share of the whole is rounded from shown lines.
			slack := decimal.New(int64(len(q2.Lines)), -int32(l.MinorDigits))
			require.False(t, q2.Total.Add(slack).LessThan(q.Total), "seed %d, list %d: %s makes it cheaper", seed, n, what)
		}
		splitNeverBeatsTheWhole(t, l, it, terms, q, seed)
		if terms == (Terms{}) {
			moreIsTheBest(t, l, it, q)
		}
	}
}

var dearerWith = map[string]func(*Item){
	"a colour":  func(i *Item) { i.Enamels++ },
	"a post":    func(i *Item) { i.Posts++ },
	"a print":   func(i *Item) { i.Printed++ },
	"a fill":    func(i *Item) { i.Fancy = append(i.Fancy[:len(i.Fancy):len(i.Fancy)], sizing.Glow) },
	"a die":     func(i *Item) { i.NewDie = true },
	"a cut-out": func(i *Item) { i.CutOuts++ },
	"a part":    func(i *Item) { i.Parts++ },
	"a chain":   func(i *Item) { i.Chains++ },
	"a dome":    func(i *Item) { i.Dome = true },
	"a card":    func(i *Item) { i.Card = true },
	"a stamp":   func(i *Item) { i.Stamped = true },
}

// Two orders pay die, shipping and dearer breaks; each of their rounded lines
// can gain one minor unit at most.
func splitNeverBeatsTheWhole(t *testing.T, l PriceList, it Item, terms Terms, whole Quote, seed int64) {
	if it.Quantity < 2 {
		return
	}
	a, b := it, it
	a.Quantity = max(1, it.Quantity/3)
	b.Quantity = it.Quantity - a.Quantity
	qa, err := PriceOrder(l, Wanted{Items: []Item{a}, Terms: terms})
	require.NoError(t, err)
	qb, err := PriceOrder(l, Wanted{Items: []Item{b}, Terms: terms})
	require.NoError(t, err)
	slack := decimal.New(int64(len(qa.Lines)+len(qb.Lines)), -int32(l.MinorDigits))
	require.False(t, qa.Total.Add(qb.Total).Add(slack).LessThan(whole.Total), "seed %d", seed)
}

// The slow twin of CheaperMore: every quantity up to past the last break.
func moreIsTheBest(t *testing.T, l PriceList, it Item, q Quote) {
	if it.Quantity%7 != 0 {
		return
	}
	best := q.Total
	for n := it.Quantity + 1; n <= l.Pieces.Breaks[len(l.Pieces.Breaks)-1].From; n++ {
		o := it
		o.Quantity = n
		then, err := bill(&l, &Wanted{Items: []Item{o}})
		require.NoError(t, err)
		if then.Total.LessThan(best) {
			best = then.Total
		}
	}
	more := CheaperMore(l, Wanted{Items: []Item{it}})
	if best.Equal(q.Total) {
		require.Empty(t, more)
		return
	}
	require.Len(t, more, 1)
	require.True(t, more[0].Total.Equal(best))
}
