package deduce

import (
	"encoding/json"
	"fmt"
	"math/big"
	"math/rand"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

var euros = run.PriceList{ID: "deduced", Name: "Skerry’s maker", Currency: "EUR", MinorDigits: 2}

func amount(s string) run.Rate { return run.Of(decimal.RequireFromString(s)) }

// hidden is a list that quotes are made by: the deduction is not shown it.
func hidden() run.PriceList {
	l := euros.Copy()
	l.Pieces = run.PiecePrices{Sizes: []unit.MM{30, 38}, SizeBy: sizing.ByLongest, Together: run.ByVersion, Breaks: []run.Break{
		{From: 50, Unit: []run.Rate{amount("2.55"), amount("2.90")}},
		{From: 100, Unit: []run.Rate{amount("1.48"), amount("1.72")}},
	}}
	l.Die.Flat, l.Shipping = amount("68"), run.Shipping{By: run.ShipFlat, Flat: amount("32")}
	l.Colours.Included, l.Colours.Further = 4, run.Charge{Rate: amount("0.11"), By: run.PerPiece}
	l.Colours.Fill.Listed = []run.KindCharge{{ID: "hard", Charge: run.Charge{Rate: amount("12"), By: run.Percent}}}
	l.Back.Post = run.Charge{Rate: amount("0.09"), By: run.PerPiece}
	return l
}

// quoted writes what a list asks for some orders, as a maker would.
func quoted(t *testing.T, l run.PriceList, asks ...string) string {
	t.Helper()
	var lines []string
	for _, ask := range asks {
		all, bad := Parse(ask+": 1", "EUR")
		require.Empty(t, bad)
		total, ok := priced(l, &all[0])
		require.True(t, ok, ask)
		lines = append(lines, ask+": "+total.String())
	}
	return strings.Join(lines, "\n")
}

func deduced(t *testing.T, text string) (*Deduction, map[string]DeducedEntry) {
	t.Helper()
	got, err := From(text, euros)
	require.NoError(t, err)
	require.Empty(t, got.Mistakes)
	by := map[string]DeducedEntry{}
	for _, e := range got.Entries {
		by[e.Cell] = e
	}
	return got, by
}

// With quotes enough, the list that made them comes out, every entry fixed.
func TestAKnownListIsFoundAgain(t *testing.T) {
	text := quoted(t, hidden(),
		"50 at 30 mm with 4 colours", "50 at 30 mm with 4 colours without die",
		"100 at 30 mm with 3 colours", "150 at 30 mm with 4 colours", "50 at 38 mm with 4 colours",
		"100 at 38 mm with 5 colours", "100 at 38 mm with 4 colours", "150 at 38 mm with 6 colours",
		"100 at 30 mm with 4 colours hard", "150 at 38 mm with 4 colours hard", "100 at 38 mm hard 4 colours",
		"100 at 30 mm with 4 colours 2 posts", "100 at 30 mm with 4 colours with shipping")
	got, by := deduced(t, text)
	require.True(t, got.Agrees)
	for cell, want := range map[string]string{
		"die.flat": "EUR\u00a068.00", "shipping.flat": "EUR\u00a032.00", "colours.included": "4",
		"colours.further.rate": "EUR\u00a00.11 a piece", "back.post.rate": "EUR\u00a00.09 a piece", "colours.fill.listed[0].charge.rate": "12 %",
		"pieces.breaks[0].unit[0]": "EUR\u00a02.55", "pieces.breaks[0].unit[1]": "EUR\u00a02.90",
		"pieces.breaks[1].unit[0]": "EUR\u00a01.48", "pieces.breaks[2].unit[1]": "EUR\u00a01.72",
	} {
		assert.Equal(t, Fixed, by[cell].Status, cell)
		assert.Equal(t, want, by[cell].Says, cell)
	}
	want, err := json.Marshal(hidden().Pieces)
	require.NoError(t, err)
	is, err := json.Marshal(got.List.Pieces)
	require.NoError(t, err)
	assert.Equal(t, string(want), string(is), "100 and 150 share their price")
	assert.Nil(t, got.Next, "nothing is left to ask")
	assert.Len(t, got.Residuals, 13)
	for _, r := range got.Residuals {
		assert.Equal(t, "exactly", r.Says, r.Text)
	}
	require.Empty(t, got.List.Validate())
	never := &PlainQuote{Quantity: 137, Size: 36, Colours: 7, Posts: 2, Hard: true, Die: true, Shipping: true}
	wanted, ok := priced(hidden(), never)
	require.True(t, ok)
	found, ok := priced(got.List, never)
	require.True(t, ok)
	assert.Equal(t, wanted.String(), found.String(), "an order that was never quoted")
}

// Whatever is quoted: the truth is never outside what is said of it.
func TestWhatIsSaidIsNeverWrong(t *testing.T) {
	seed := int64(412)
	r := rand.New(rand.NewSource(seed))
	l := hidden()
	truth := map[string]run.Rate{"die.flat": l.Die.Flat, "shipping.flat": l.Shipping.Flat, "back.post.rate": l.Back.Post.Rate, "colours.further.rate": l.Colours.Further.Rate}
	open := 0
	for trial := range 30 {
		var asks []string
		for range 1 + r.Intn(6) {
			ask := fmt.Sprintf("%d at %d mm with %d colours", []int{50, 100, 150}[r.Intn(3)], []int{30, 38}[r.Intn(2)], 4+r.Intn(3))
			ask += []string{"", " without die", " with shipping", " 2 posts"}[r.Intn(4)]
			asks = append(asks, ask)
		}
		got, by := deduced(t, quoted(t, l, asks...))
		require.True(t, got.Agrees, "seed %d, trial %d: %v", seed, trial, asks)
		for cell, want := range truth {
			e, about := by[cell], fmt.Sprintf("seed %d, trial %d: %v\n%s %s", seed, trial, asks, cell, by[cell].Says)
			switch {
			case e.Status == Fixed:
				require.True(t, want.Value().Equal(e.Value.Value()), about)
			case e.Status == Between && e.High.Known():
				open++
				require.False(t, want.Value().LessThan(e.Low.Value()) || want.Value().GreaterThan(e.High.Value()), about)
			}
		}
		// A price a piece is for as many colours as the fewest quoted.
		least, _ := colourRange(parsed(t, asks))
		beside := decimal.New(int64(11*(least-4)), -2)
		for i, size := range plainShape(parsed(t, asks)).sizes {
			for c, count := range plainShape(parsed(t, asks)).counts {
				e := by[fmt.Sprintf("pieces.breaks[%d].unit[%d]", c, i)]
				want := l.Pieces.Breaks[min(1, count/100)].Unit[int(size)/38].Value().Add(beside)
				if e.Status == Fixed {
					require.True(t, want.Equal(e.Value.Value()), "seed %d, trial %d: %v: %s is %s, not %s", seed, trial, asks, e.What, e.Says, want)
				} else if e.Status == Between {
					require.False(t, want.LessThan(e.Low.Value()) || want.GreaterThan(e.High.Value()), "seed %d, trial %d: %v: %s %s", seed, trial, asks, e.What, e.Says)
				}
			}
		}
	}
	assert.Greater(t, open, 10)
}

func parsed(t *testing.T, asks []string) (all []PlainQuote) {
	for _, a := range asks {
		q, bad := Parse(a+": 1", "EUR")
		require.Empty(t, bad)
		all = append(all, q...)
	}
	return all
}

// One quote fixes nothing: the die may be all of it, or none.
func TestOneQuoteLeavesItOpen(t *testing.T) {
	got, by := deduced(t, "150 at 30 mm with 3 colours: 412.50")
	assert.Equal(t, Between, by["die.flat"].Status)
	assert.Equal(t, "between EUR\u00a00.00 and EUR\u00a0412.505", by["die.flat"].Says)
	assert.Equal(t, Between, by["pieces.breaks[0].unit[0]"].Status)
	assert.Equal(t, Unknown, by["back.post.rate"].Status)
	assert.Equal(t, "all quotes are for 3", by["colours.included"].Says)
	assert.Empty(t, got.Residuals)
	require.NotNil(t, got.Next)
	assert.Equal(t, "Ask what 150 at 30 mm with 3 colours without die cost: that settles the die and the price for 150 at 30 mm.", got.Next.Words)
	assert.Equal(t, "2.75", got.List.Pieces.Breaks[0].Unit[0].String())
	total, ok := priced(got.List, &got.Next.Quote)
	require.True(t, ok)
	assert.Equal(t, "412.5", total.String())

	_, by = deduced(t, "150 at 30 mm with 3 colours: 412.50\n150 at 30 mm with 3 colours without die: 345")
	assert.Equal(t, "EUR\u00a067.50", by["die.flat"].Says)
	assert.Equal(t, "EUR\u00a02.30", by["pieces.breaks[0].unit[0]"].Says)
}

// Three quantities on one line speak for one price a piece; two do not.
func TestQuantitiesShareAPriceOnlyWhereQuotesSpeakForIt(t *testing.T) {
	_, by := deduced(t, "100 at 30 mm: 216\n150 at 30 mm: 290")
	assert.Equal(t, Between, by["die.flat"].Status)
	got, by := deduced(t, "100 at 30 mm: 216\n150 at 30 mm: 290\n200 at 30 mm: 364")
	assert.Equal(t, Fixed, by["die.flat"].Status)
	assert.Equal(t, "68", by["die.flat"].Value.String())
	assert.Len(t, got.List.Pieces.Breaks, 1)
	got, _ = deduced(t, "100 at 30 mm: 216\n150 at 30 mm: 290")
	assert.Len(t, got.List.Pieces.Breaks, 1, "the simplest list has one price for both")
}

// A charge seen once may be counted in several ways, and is not called fixed.
func TestAChargeSeenOnceMayBeCountedInSeveralWays(t *testing.T) {
	got, by := deduced(t, "100 at 30 mm 4 colours: 216\n100 at 30 mm 4 colours without die: 148\n100 at 30 mm 5 colours: 227")
	e := by["colours.further.rate"]
	assert.Equal(t, Between, e.Status)
	assert.Contains(t, e.Says, "EUR\u00a00.11 a piece")
	assert.Contains(t, e.Says, "EUR\u00a011.00 once")
	assert.Equal(t, "0.11", e.Value.String(), "by the piece is proposed")
	require.NotNil(t, got.Next)
}

func TestQuotesThatDisagreeAreSaidTo(t *testing.T) {
	got, by := deduced(t, "100 at 30 mm: 216\n100 at 30 mm: 216\n100 at 30 mm: 240\n100 at 30 mm without die: 148")
	assert.False(t, got.Agrees)
	require.Len(t, got.Residuals, 4)
	assert.Equal(t, "exactly", got.Residuals[0].Says, "the two that agree are kept")
	assert.Equal(t, "EUR\u00a024.00 less by the list", got.Residuals[2].Says)
	assert.Equal(t, Between, by["die.flat"].Status)
	assert.Contains(t, got.Notes[0], "No price list gives all 4 totals")
}

func TestQuotesAreReadAsTheyAreWritten(t *testing.T) {
	for text, want := range map[string]PlainQuote{
		"150 at 30 mm with 3 colours: 412.50":                                    {Quantity: 150, Size: 30, Colours: 3, Posts: 1, Die: true},
		"1,000 pcs 1.25 in, 5 colors, two posts, hard = €412,5":                  {Quantity: 1000, Size: 31.75, Colours: 5, Posts: 2, Hard: true, Die: true},
		"100 pieces of 38mm soft enamel, without the die, delivered: EUR 412.50": {Quantity: 100, Size: 38, Posts: 1, Shipping: true},
		"reorder 80 at 3.2 cm excl. shipping: 412.5":                             {Quantity: 80, Size: 32, Posts: 1},
	} {
		got, bad := Parse(text, "EUR")
		if assert.Empty(t, bad, text) {
			assert.Equal(t, "412.5", got[0].Total.String(), text)
			got[0].Text, got[0].Total = "", decimal.Decimal{}
			assert.Equal(t, want, got[0], text)
		}
	}
	got, bad := Parse("200 at 30 mm: 1.30 each", "EUR")
	require.Empty(t, bad)
	assert.Equal(t, "260", got[0].Total.String())
	assert.False(t, got[0].Die, "a price each is without the die")
	for text, says := range map[string]string{
		"150 at 30 mm 412.50":               "Nothing says what it costs",
		"150 with 3 colours: 412.50":        "Nothing says how large",
		"some at 30 mm: 412.50":             "Nothing says how many",
		"150 at 30 mm with glitter: 412.50": `"glitter" is not understood, and might be paid for.`,
		"150 at 30 mm: 1,250":               "can mean two things",
		"150 at 30 mm: -5":                  "cannot be read as an amount",
		"150 at 30 mm: $":                   "No amount is given",
		"0 at 30 mm: 5":                     "not those of an order",
	} {
		all, bad := Parse("\n"+text+"\n", "EUR")
		if assert.Len(t, bad, 1, text) {
			assert.Empty(t, all)
			assert.Equal(t, 2, bad[0].Line)
			assert.Contains(t, bad[0].What, says, text)
		}
	}
	_, err := From(" \n", euros)
	assert.ErrorContains(t, err, "no quotes yet")
}

func rats(all ...int64) (out []*big.Rat) {
	for _, n := range all {
		out = append(out, big.NewRat(n, 1))
	}
	return out
}

// Worked by hand, and a slow twin: every corner of random programs in two
// unknowns, by crossing all pairs of bounds.
func TestTheSimplexFindsTheBestCorner(t *testing.T) {
	p := newProgram(2, []bound{{rats(1, 1), big.NewRat(4, 1)}, {rats(1, 3), big.NewRat(6, 1)}, {rats(-1, 0), big.NewRat(-1, 1)}})
	require.NotNil(t, p)
	v, ok := p.most(rats(1, 2))
	assert.True(t, ok)
	assert.Equal(t, "5", v.RatString()) // at (3, 1)
	assert.Nil(t, newProgram(1, []bound{{rats(1), big.NewRat(1, 1)}, {rats(-1), big.NewRat(-2, 1)}}))
	p = newProgram(1, []bound{{rats(-1), big.NewRat(-2, 1)}})
	_, ok = p.most(rats(1))
	assert.False(t, ok, "nothing bounds it")

	seed := int64(3)
	r := rand.New(rand.NewSource(seed))
	for n := range 500 {
		var all []bound
		for range 2 + r.Intn(4) {
			all = append(all, bound{rats(r.Int63n(9)-4, r.Int63n(9)-4), big.NewRat(r.Int63n(15)-4, 1)})
		}
		all = append(all, bound{rats(1, 1), big.NewRat(50, 1)})
		aim := rats(r.Int63n(9)-4, r.Int63n(9)-4)
		best := byCorners(all, aim)
		p := newProgram(2, all)
		if best == nil {
			require.Nil(t, p, "seed %d, program %d", seed, n)
			continue
		}
		require.NotNil(t, p, "seed %d, program %d", seed, n)
		v, ok := p.most(aim)
		require.True(t, ok)
		require.Equal(t, best.RatString(), v.RatString(), "seed %d, program %d", seed, n)
	}
}

func byCorners(all []bound, aim []*big.Rat) (best *big.Rat) {
	all = append(append([]bound{}, all...), bound{rats(-1, 0), new(big.Rat)}, bound{rats(0, -1), new(big.Rat)})
	mul := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
	sub := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
	for i := range all {
		for k := range i {
			a, b := all[i], all[k]
			det := sub(mul(a.coef[0], b.coef[1]), mul(a.coef[1], b.coef[0]))
			if det.Sign() == 0 {
				continue
			}
			x := new(big.Rat).Quo(sub(mul(a.limit, b.coef[1]), mul(a.coef[1], b.limit)), det)
			y := new(big.Rat).Quo(sub(mul(a.coef[0], b.limit), mul(a.limit, b.coef[0])), det)
			inside := true
			for _, c := range all {
				inside = inside && new(big.Rat).Add(mul(c.coef[0], x), mul(c.coef[1], y)).Cmp(c.limit) <= 0
			}
			if v := new(big.Rat).Add(mul(aim[0], x), mul(aim[1], y)); inside && (best == nil || v.Cmp(best) > 0) {
				best = v
			}
		}
	}
	return best
}

func TestTheSimplestFigureBetweenTwo(t *testing.T) {
	for _, c := range [][3]string{{"67.95", "68.05", "68"}, {"1.47996", "1.48004", "1.48"}, {"0", "5", "0"}, {"0.101", "0.109", "0.101"}, {"2", "2", "2"}} {
		low, _ := new(big.Rat).SetString(c[0])
		high, _ := new(big.Rat).SetString(c[1])
		want, _ := new(big.Rat).SetString(c[2])
		assert.Zero(t, want.Cmp(simplest(low, high)), "%v: %s", c, simplest(low, high).FloatString(6))
	}
}

func BenchmarkTwelveQuotes(b *testing.B) {
	text := "50 at 30 mm 4 colours: 195.5\n100 at 30 mm 4 colours: 216\n200 at 30 mm 5 colours: 350\n300 at 30 mm 4 colours: 437\n50 at 38 mm 4 colours: 213\n100 at 38 mm 5 colours: 251\n200 at 38 mm 6 colours: 416\n300 at 38 mm 4 colours: 500\n100 at 30 mm 4 colours hard: 233.76\n100 at 30 mm 4 colours 2 posts: 225\n100 at 30 mm 4 colours without die: 148\n100 at 30 mm 4 colours with shipping: 248"
	for b.Loop() {
		if _, err := From(text, euros); err != nil {
			b.Fatal(err)
		}
	}
}
