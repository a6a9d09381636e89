package run

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math/rand"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

func item(quantity int) Item {
	return Item{Design: "Lighthouse", NewDie: true, Longest: 32, Mean: 25, Enamels: 4, Fill: sizing.Soft, Posts: 1, Quantity: quantity}
}

func amounts(q Quote) map[string]string {
	m := map[string]string{}
	for _, l := range q.Lines {
		m[l.Key] = l.Amount.StringFixed(int32(q.MinorDigits))
	}
	return m
}

func tiers(t *testing.T) PriceList {
	b, err := os.ReadFile("../../testdata/pricelists/tiers.json")
	require.NoError(t, err)
	var l PriceList
	require.NoError(t, json.Unmarshal(b, &l))
	require.Empty(t, l.Validate())
	return l
}

// tier_break_pricing.csv: one-off orders, is the next tier cheaper (invented
// tiers, plain arithmetic done outside this project).
func TestTierBreaks(t *testing.T) {
	l := tiers(t)
	f, err := os.Open("../../testdata/reference/tier_break_pricing.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 20)
	for _, r := range rows[1:] {
		n, err := strconv.Atoi(r[0])
		require.NoError(t, err)
		checkTierText(t, l, r[1], r[2])
		q, err := Price(l, []Item{item(n)})
		require.NoError(t, err)
		assert.Equal(t, r[3], q.Total.StringFixed(2), "total at %d", n)
		more := CheaperMore(l, Order{Items: []Item{item(n)}})
		assert.Equal(t, r[6] == "True", len(more) == 1, "cheaper at %d", n)
		assert.Equal(t, len(more), len(q.Notes))
		if len(more) == 1 {
			assert.Equal(t, r[5], strconv.Itoa(more[0].Quantity), "quantity for %d", n)
			assert.Equal(t, r[4], more[0].Total.StringFixed(2), "least total for %d", n)
			assert.Contains(t, q.Notes[0], r[4])
		}
	}
}

func TestAsMuchForMoreIsNotCheaper(t *testing.T) {
	l := tiers(t)
	l.Pieces.Breaks = []Break{prices(1, "5"), prices(10, "4.5"), prices(20, "4")}
	assert.Empty(t, CheaperMore(l, Order{Items: []Item{item(9)}}))
	assert.Len(t, CheaperMore(l, Order{Items: []Item{item(19)}}), 1)
}

// checkTierText holds the price list of the test against the table's own words.
func checkTierText(t *testing.T, l PriceList, text, die string) {
	var parts []string
	for _, b := range l.Pieces.Breaks {
		parts = append(parts, fmt.Sprintf("%d+:%s", b.From, b.Unit[0].Value().StringFixed(2)))
	}
	require.Equal(t, text, strings.Join(parts, " "))
	require.Equal(t, die, l.Die.Flat.Value().StringFixed(1))
}

func TestEveryLineIsShownAndRoundedOnce(t *testing.T) {
	l := tiers(t)
	l.Pieces.Breaks = []Break{prices(1, "1.2345")}
	l.Colours.Further = Charge{Rate: money("3.3"), By: Percent}
	l.Colours.Fill.Listed = []KindCharge{kind(sizing.Hard, "12.5", Percent)}
	l.Back.Post, l.Shipping.Flat = apiece("0.0355"), money("12.345")
	it := item(7)
	it.Enamels, it.Fill, it.Posts = 6, sizing.Hard, 3
	q, err := Price(l, []Item{it})
	require.NoError(t, err)
	assert.Equal(t, map[string]string{
		"die":      "65.00",
		"pieces":   "8.64",  // 8.6415
		"colours":  "0.57",  // 7 x 1.2345 x 0.066 = 0.570339
		"hard":     "1.08",  // 7 x 0.1543125 = 1.0801875
		"post":     "0.50",  // 7 x 0.071 = 0.497
		"shipping": "12.35", // half away from zero
	}, amounts(q))
	assert.Equal(t, "88.14", q.Total.String())
	assert.Equal(t, "12.591", q.PerPiece.String()) // 12.5914...
	assert.Equal(t, "0.081477", q.Lines[2].Each.String())
	assert.Equal(t, "7\u00a0× USD\u00a00.081477", q.Lines[2].SumSays)
	assert.Equal(t, "USD\u00a00.57", q.Lines[2].Says)
	assert.Empty(t, q.Lines[0].SumSays, "the die is paid once")
	assert.Equal(t, "USD\u00a088.14", q.TotalSays)
	assert.Equal(t, "about USD\u00a012.591", q.EachSays)
}

func TestCurrenciesWithOtherDecimals(t *testing.T) {
	l := tiers(t)
	l.Currency, l.MinorDigits, l.Die.Flat = "JPY", 0, money("9800")
	l.Pieces.Breaks = []Break{prices(1, "123.5")}
	q, err := Price(l, []Item{item(3)})
	require.NoError(t, err)
	assert.Equal(t, "10171", q.Total.String()) // 9800 + 370.5 away from zero
	assert.Equal(t, "about JPY\u00a03390.3", About(q.PerPiece, q))
	l.Currency, l.MinorDigits = "KWD", 3
	q, err = Price(l, []Item{item(3)})
	require.NoError(t, err)
	assert.Equal(t, "KWD\u00a010\u00a0170.500", Amount(q.Total, q))
}

// Four enamels in the price; steep below a hundred pieces, flat above; the die
// not discounted with the pieces: common practice, no published source.
func TestDefaultListFollowsTheTrade(t *testing.T) {
	l := Default()
	require.Empty(t, l.Validate())
	assert.True(t, l.Invented)
	assert.Contains(t, l.Name, "invented")
	assert.Equal(t, 4, l.Colours.Included)
	for class := range l.Pieces.Sizes {
		at := func(n int) float64 {
			i, err := l.row(n)
			require.NoError(t, err)
			return l.Pieces.Breaks[i].Unit[class].Value().InexactFloat64()
		}
		assert.Greater(t, at(25)/at(100), 2.0, "steep below a hundred")
		assert.Less(t, at(100)/at(500), 1.4, "flat above")
		for i := 1; i < len(l.Pieces.Breaks); i++ {
			assert.True(t, l.Pieces.Breaks[i].Unit[class].Value().LessThan(l.Pieces.Breaks[i-1].Unit[class].Value()))
		}
	}
	few, err := Price(l, []Item{item(50)})
	require.NoError(t, err)
	many, err := Price(l, []Item{item(1000)})
	require.NoError(t, err)
	assert.Equal(t, amounts(few)["die"], amounts(many)["die"])
	assert.NotContains(t, amounts(few), "colours", "the fourth enamel is in the price")
}

func TestStepInWords(t *testing.T) {
	it := item(300)
	four, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	it.Enamels = 5
	five, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	assert.Equal(t, "about EUR\u00a00.11 a piece, EUR\u00a033.00 in all", Step(four, five))
	assert.Equal(t, "about EUR\u00a00.11 less a piece, EUR\u00a033.00 less in all", Step(five, four))
	it.Enamels = 3
	three, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	assert.Equal(t, "nothing more to pay", Step(three, four))
}

func TestWhatTheListCannotPriceIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*PriceList, *Item)
		says   string
	}{
		"too large":     {func(l *PriceList, i *Item) { i.Longest = 61 }, "This list has no price above 60 mm"},
		"no size":       {func(l *PriceList, i *Item) { i.Longest = 0 }, "no size"},
		"under minimum": {func(l *PriceList, i *Item) { i.Quantity = 24 }, "no order below 25 pieces"},
		"under break":   {func(l *PriceList, i *Item) { l.Least.Design = 0; i.Quantity = 1 }, "no price below 25 pieces, and 1 is asked for"},
		"no quantity":   {func(l *PriceList, i *Item) { i.Quantity = 0 }, "no number of pieces"},
		"below zero":    {func(l *PriceList, i *Item) { i.Quantity = -5 }, "no number of pieces"},
		"absurd":        {func(l *PriceList, i *Item) { i.Quantity = 2e9 }, "more than a price list"},
		"bad list":      {func(l *PriceList, i *Item) { l.Die.Flat = money("-1") }, "-1 is below zero"},
	} {
		l, it := Default(), item(100)
		c.change(&l, &it)
		q, err := Price(l, []Item{it})
		var r *reduce.Refusal
		if assert.ErrorAs(t, err, &r, name) {
			assert.Contains(t, err.Error(), c.says, name)
			assert.NotEmpty(t, r.Do, name)
			assert.Empty(t, q.Lines, name)
		}
	}
	_, err := Price(Default(), nil)
	assert.Error(t, err)
}

func TestSizeClassesGoByTheListsMeasure(t *testing.T) {
	l := Default()
	it := item(100)
	it.Longest, it.Mean = 38, 30
	class, err := l.class(&it)
	require.NoError(t, err)
	assert.Equal(t, unit.MM(38), l.Pieces.Sizes[class])
	l.Pieces.SizeBy = sizing.ByMean
	class, err = l.class(&it)
	require.NoError(t, err)
	assert.Equal(t, unit.MM(30), l.Pieces.Sizes[class])
}

func TestSeveralVersionsShareTheMinimumOfADesign(t *testing.T) {
	l := Default()
	l.Pieces.Breaks = append([]Break{prices(1, "9", "9", "9", "9", "9")}, l.Pieces.Breaks...)
	a, b := item(15), item(15)
	a.Version, b.Version, b.NewDie = "day", "night", false
	q, err := Price(l, []Item{a, b})
	require.NoError(t, err)
	assert.Equal(t, 30, q.Pieces)
	dies := 0
	for _, line := range q.Lines {
		if line.Key == KeyDie {
			dies++
		}
	}
	assert.Equal(t, 1, dies)
	assert.Contains(t, q.Lines[1].What, "(Lighthouse, day)")
	b.Design = "Buoy"
	_, err = Price(l, []Item{a, b})
	assert.Error(t, err)
}

func TestAListSurvivesJSON(t *testing.T) {
	b, err := json.Marshal(Default())
	require.NoError(t, err)
	var l PriceList
	require.NoError(t, json.Unmarshal(b, &l))
	want, err := Price(Default(), []Item{item(137)})
	require.NoError(t, err)
	got, err := Price(l, []Item{item(137)})
	require.NoError(t, err)
	assert.True(t, want.Total.Equal(got.Total))
}

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
	for n := range 400 {
		l := anyList(r)
		require.Empty(t, l.Validate(), "seed %d, list %d", seed, n)
		it := anyItem(r)
		terms := Terms{Delivery: []string{"", "rush", "patient"}[r.Intn(3)], Rounds: r.Intn(6)}
		q, err := PriceOrder(l, Order{Items: []Item{it}, Terms: terms})
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
			q2, err := PriceOrder(l, Order{Items: []Item{other}, Terms: terms})
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
	qa, err := PriceOrder(l, Order{Items: []Item{a}, Terms: terms})
	require.NoError(t, err)
	qb, err := PriceOrder(l, Order{Items: []Item{b}, Terms: terms})
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
		then, err := bill(&l, &Order{Items: []Item{o}})
		require.NoError(t, err)
		if then.Total.LessThan(best) {
			best = then.Total
		}
	}
	more := CheaperMore(l, Order{Items: []Item{it}})
	if best.Equal(q.Total) {
		require.Empty(t, more)
		return
	}
	require.Len(t, more, 1)
	require.True(t, more[0].Total.Equal(best))
}

func BenchmarkPrice(b *testing.B) {
	l := Default()
	for b.Loop() {
		if _, err := Price(l, []Item{item(137)}); err != nil {
			b.Fatal(err)
		}
	}
}
