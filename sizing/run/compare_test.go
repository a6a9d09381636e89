package run

import (
	"math/rand"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/unit"
)

var euros = Exchange{Currency: "EUR", MinorDigits: 2}

func atPar(lists ...PriceList) (all []Maker) {
	for _, l := range lists {
		all = append(all, Maker{l, decimal.NewFromInt(1)})
	}
	return all
}

// 60 + 10 + 2 n against 20 + 10 + 2.50 n: the same at 80.
func TestWhereTwoMakersCross(t *testing.T) {
	a, b := bare(), bare()
	a.Name, b.Name = "Steady", "Quick"
	b.Die.Flat, b.Pieces.Breaks = money("20"), []Break{prices(1, "2.50")}
	b.Least.Design, b.Notes.Keeps = 10, "the die"
	c, err := Compare(atPar(a, b), Wanted{Items: []Item{it2(item(50))}}, 0, 500, euros)
	require.NoError(t, err)
	require.Len(t, c.Ranges, 3)
	assert.Equal(t, CheapRange{From: 1, To: 9, Maker: 0, Words: "1 to 9 pieces: Steady is cheapest."}, c.Ranges[0])
	assert.Equal(t, CheapRange{From: 10, To: 79, Maker: 1, Words: "10 to 79 pieces: Quick is cheapest."}, c.Ranges[1])
	assert.Equal(t, CheapRange{From: 80, To: 500, Maker: 0, Words: "From 80 pieces: Steady is cheapest."}, c.Ranges[2])
	assert.Equal(t, "EUR\u00a0155.00", c.Makers[1].Now.TotalSays)
	for _, row := range c.Beyond {
		assert.Equal(t, row.What == "Fewest of a design" || row.What == "What the maker keeps", row.Differs, row.What)
	}
	b.Pieces.Breaks[0].Unit[0] = Rate{}
	c, err = Compare(atPar(a, b), Wanted{Items: []Item{it2(item(50))}}, 0, 500, euros)
	require.NoError(t, err)
	assert.Contains(t, c.Makers[1].Problem, "does not say")
	assert.Len(t, c.Ranges, 1)
}

// The slow twin: every quantity by itself.
func TestRangesAgreeWithEveryQuantity(t *testing.T) {
	seed := int64(7)
	r := rand.New(rand.NewSource(seed))
	trials := 8
	if testing.Short() {
		trials = 1
	}
	for n := range trials {
		it := anyItem(r)
		it.Weight = unit.Grams(5 + r.Intn(20))
		o := Wanted{Items: []Item{it}}
		makers := []Maker{{anyList(r), decimal.New(11, -1)}, {anyList(r), decimal.NewFromInt(1)}, {anyList(r), decimal.NewFromInt(1)}}
		for i := range makers {
			makers[i].List.MinorDigits = 2
		}
		makers[0].List.Shipping = Shipping{By: ShipWeight, Weights: []ByWeight{{500, money("8")}, {2000, money("19.5")}}, Further: money("7")}
		c, err := Compare(makers, o, 0, 900, euros)
		require.NoError(t, err)
		work := comparing{makers: makers, order: &o, into: euros}
		next, slack := 1, decimal.New(1, 0) // rounding of lines may shift a crossing of almost equal totals
		for _, rg := range c.Ranges {
			require.Equal(t, next, rg.From)
			for q := rg.From; q <= rg.To; q++ {
				mine, _, err := work.total(rg.Maker, q)
				require.NoError(t, err)
				best, _, err := work.total(work.cheapest(q), q)
				require.NoError(t, err)
				require.False(t, best.Add(slack).LessThan(mine), "seed %d, trial %d: %d pieces", seed, n, q)
			}
			next = rg.To + 1
		}
		require.Equal(t, 901, next)
		straight(t, &work, c)
	}
}

// straight holds that totals between two points lie on the line between them.
func straight(t *testing.T, work *comparing, c Comparison) {
	for i, m := range c.Makers {
		for k := 1; k < len(m.Points); k++ {
			a, b := m.Points[k-1], m.Points[k]
			mid := (a.Quantity + b.Quantity) / 2
			total, _, err := work.total(i, mid)
			require.NoError(t, err)
			on := a.Draw + (b.Draw-a.Draw)*float64(mid-a.Quantity)/float64(max(1, b.Quantity-a.Quantity))
			require.InDelta(t, on, total.InexactFloat64(), 1, "maker %d at %d", i, mid)
		}
	}
}

func TestMakersInTwoCurrencies(t *testing.T) {
	a, b := bare(), bare()
	b.Currency, b.Name = "USD", "Far"
	makers := []Maker{{a, decimal.NewFromInt(1)}, {b, decimal.RequireFromString("0.92")}}
	c, err := Compare(makers, Wanted{Items: []Item{it2(item(100))}}, 0, 200, euros)
	require.NoError(t, err)
	assert.Equal(t, "EUR\u00a0248.40", c.Makers[1].Now.TotalSays) // 270 x 0.92
	makers[1].Rate = decimal.Zero
	_, err = Compare(makers, Wanted{Items: []Item{it2(item(100))}}, 0, 200, euros)
	assert.ErrorContains(t, err, "no rate of exchange")
}
