package demand

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tiers is an all-units bill: a die, and a price a piece that holds from a
// number on.
func tiers(die string, minimum int, steps ...any) Bill {
	first := money(die)
	var froms []int
	var prices []decimal.Decimal
	for i := 0; i < len(steps); i += 2 {
		froms, prices = append(froms, steps[i].(int)), append(prices, money(steps[i+1].(string)))
	}
	return func(n int) (decimal.Decimal, bool) {
		each := decimal.Zero
		for i, from := range froms {
			if n >= from {
				each = prices[i]
			}
		}
		return first.Add(each.Mul(decimal.NewFromInt(int64(n)))), n >= minimum
	}
}

// pins is a bill of the usual shape, invented: dear in small numbers, flat
// beyond a hundred (common practice, no published source).
var pins = tiers("100", 25, 0, "4.80", 50, "2.90", 100, "1.72", 200, "1.52", 500, "1.36", 1000, "1.28")

func stake() Stake {
	return Stake{Currency: "EUR", MinorDigits: 2, Each: money("7.35"), Second: money("3.10"), SecondsShare: money("8"), Leftover: money("0.50")}
}

func question(g ...Guess) Question {
	q := Question{Stake: stake(), Bill: pins, Most: Most}
	for _, one := range g {
		q.Versions = append(q.Versions, VersionGuess{Guess: one})
	}
	return q
}

// slowly is the average over everything that can happen, one by one, as the
// definition has it.
func slowly(t *testing.T, q Question, n int) (worth float64, sellOut, tenth, lose float64) {
	t.Helper()
	d, f := q.Versions[0].Guess.Distribution("")
	require.Empty(t, f)
	bill := decimal.Zero
	if n > 0 {
		var ok bool
		if bill, ok = q.Bill(n); !ok {
			return math.Inf(-1), 0, 0, 0
		}
	}
	bad := int(math.Round(float64(n) * q.Stake.SecondsShare.InexactFloat64() / 100))
	good := max(0, n-bad-q.Stake.Free)
	paid := bill.InexactFloat64()
	each, leftover, second, missed := q.Stake.Each.InexactFloat64(), q.Stake.Leftover.InexactFloat64(), q.Stake.Second.InexactFloat64(), q.Stake.Missed.InexactFloat64()
	for i, p := range chances(d) {
		wanted := d.First() + i
		sold := min(good, wanted)
		left := each*float64(sold) + leftover*float64(good-sold) + second*float64(bad) - paid
		worth += p * (left - missed*float64(wanted-sold))
		if sold == good {
			sellOut += p
		}
		if 10*(good-sold) > good {
			tenth += p
		}
		if left < -1e-9 {
			lose += p
		}
	}
	return worth, sellOut, tenth, lose
}

// The best order is that of trying all up to 5000 the slow way.
func TestTheBestOrderIsThatOfTryingAll(t *testing.T) {
	stakes := map[string]func(*Stake){
		"plain":    func(*Stake) {},
		"missed":   func(s *Stake) { s.Missed = money("2.25") },
		"no flaws": func(s *Stake) { s.SecondsShare, s.Leftover = decimal.Zero, decimal.Zero },
		"gifts":    func(s *Stake) { s.Free = 12 },
		"dear":     func(s *Stake) { s.Each = money("1.90") },
	}
	for name, change := range stakes {
		for i, g := range []Guess{three(20, 60, 180), three(150, 190, 260), three(0, 5, 12), orders(22, 9, 21)} {
			if i%2 != len(name)%2 && name != "plain" {
				continue // half of them will do, trying all is slow
			}
			q := question(g)
			change(&q.Stake)
			a, f := Ask(q)
			require.Empty(t, f)
			best, worth := 0, math.Inf(-1)
			least := 0
			if g.Kind == ByOrders {
				least = g.Orders
			}
			for n := least; n <= Most; n++ {
				if least > 0 && q.Stake.sellable(n) < least {
					continue
				}
				if w, _, _, _ := slowly(t, q, n); w > worth+1e-7 {
					best, worth = n, w
				}
			}
			require.Equal(t, best, a.Best.Quantity, "%s %+v", name, g)
			w, sellOut, tenth, lose := slowly(t, q, best)
			assert.InDelta(t, w, a.Best.Worth.InexactFloat64(), 0.00501)
			if best > 0 {
				assert.InDelta(t, sellOut, a.Best.SellOut, 1e-6)
				assert.InDelta(t, tenth, a.Best.TenthLeft, 1e-6)
				assert.InDelta(t, lose, a.Best.Lose, 1e-6)
			}
		}
	}
}

// A little less than a break is passed over for the break itself.
func TestTheBestOrderGoesUpToABreak(t *testing.T) {
	q := question(three(60, 80, 100))
	q.Stake.SecondsShare = decimal.Zero
	a, f := Ask(q)
	require.Empty(t, f)
	assert.Equal(t, 100, a.Best.Quantity)
	q.Bill = tiers("100", 25, 0, "2.90")
	a, _ = Ask(q)
	assert.Less(t, a.Best.Quantity, 95)
	assert.Contains(t, a.Says, "leave most on average")
}

func TestWhenNothingPaysNothingIsOrdered(t *testing.T) {
	q := question(three(5, 8, 12))
	a, f := Ask(q)
	require.Empty(t, f)
	assert.Equal(t, 0, a.Best.Quantity)
	assert.Contains(t, a.Says, "Ordering nothing")
	assert.Equal(t, 0.0, a.Best.Lose)
	q = question(orders(5, 2, 0)) // five are paid for and have to be made
	q.Stake.SecondsShare, q.Stake.Leftover = decimal.Zero, decimal.Zero
	a, f = Ask(q)
	require.Empty(t, f)
	assert.Equal(t, 25, a.Best.Quantity, "the least that can be ordered")
}

// What is left moves with the price as it must, and chances are chances.
func TestWhatMustRiseRises(t *testing.T) {
	const seed = 11
	r := rand.New(rand.NewPCG(seed, seed))
	for range 60 {
		low := r.IntN(200)
		g := three(low, low+r.IntN(200), low+200+r.IntN(300))
		q := question(g)
		q.Stake.Each = decimal.New(int64(200+r.IntN(1500)), -2)
		q.Stake.Leftover = decimal.New(int64(r.IntN(150)), -2)
		q.Stake.SecondsShare = decimal.NewFromInt(int64(r.IntN(30)))
		q.Look = []int{25, 49, 50, 99, 100, 200, 500}
		q.Most = 1200
		a, f := Ask(q)
		require.Empty(t, f, "seed %d", seed)
		for _, o := range append(a.Rows, a.Best) {
			require.LessOrEqual(t, o.Left.Sub(a.Best.Left).InexactFloat64(), 0.011)
			for _, p := range []float64{o.SellOut, o.TenthLeft, o.Lose} {
				require.True(t, p >= 0 && p <= 1, "seed %d: %g", seed, p)
			}
			require.InDelta(t, float64(o.Good), o.Sold+o.Leftover, 2e-6)
			if o.Covering > 0 {
				bill, _ := q.Bill(o.Quantity)
				require.False(t, q.Stake.brought(o.Quantity, o.Covering).LessThan(bill))
				require.True(t, q.Stake.brought(o.Quantity, o.Covering-1).LessThan(bill))
			}
		}
		q.Stake.Each = q.Stake.Each.Add(money("0.5"))
		more, _ := Ask(q)
		require.True(t, more.Best.Left.GreaterThanOrEqual(a.Best.Left), "seed %d", seed)
	}
}

// Versions share a bill; trying every split the slow way finds nothing better.
func TestVersionsAreSharedOutAsTryingAllSplits(t *testing.T) {
	q := question(three(5, 20, 40), three(10, 12, 30))
	q.Stake.SecondsShare = decimal.Zero
	q.Bill, q.Most = tiers("30", 1, 0, "2.20", 30, "1.70", 60, "1.10"), 90
	a, f := Ask(q)
	require.Empty(t, f)
	d0, _ := q.Versions[0].Guess.Distribution("")
	d1, _ := q.Versions[1].Guess.Distribution("")
	best := math.Inf(-1)
	for x := 0; x <= 90; x++ {
		for y := 0; x+y <= 90; y++ {
			bill := decimal.Zero
			if x+y > 0 {
				bill, _ = q.Bill(x + y)
			}
			sold := d0.Sold(x) + d1.Sold(y)
			best = max(best, 7.35*sold+0.5*(float64(x+y)-sold)-bill.InexactFloat64())
		}
	}
	assert.InDelta(t, best, a.Best.Left.InexactFloat64(), 0.00501)
	v := a.Best.Versions
	assert.Equal(t, a.Best.Quantity, v[0].Quantity+v[1].Quantity)
	assert.InDelta(t, a.Best.Sold, v[0].Sold+v[1].Sold, 1e-5)
	assert.Contains(t, a.Notes[0], "independently of one another")

	// The chance of losing money, by every pair of demands.
	need, lose, all := a.Best.Covering, 0.0, 0.0
	for i, p := range chances(d0) {
		for j, r := range chances(d1) {
			sold := min(v[0].Good, d0.First()+i) + min(v[1].Good, d1.First()+j)
			if sold < need {
				lose += p * r
			}
			if sold == a.Best.Good {
				all += p * r
			}
		}
	}
	assert.InDelta(t, lose, a.Best.Lose, 1e-6)
	assert.InDelta(t, all, a.Best.SellOut, 1e-6)
}

func TestFlawsAreSharedAmongVersions(t *testing.T) {
	q := question(three(50, 60, 90), three(20, 20, 20), three(0, 1, 9))
	q.Look = []int{100, 137}
	a, f := Ask(q)
	require.Empty(t, f)
	for _, o := range append(a.Rows, a.Best) {
		sum, good := 0, 0
		for _, v := range o.Versions {
			assert.GreaterOrEqual(t, v.Quantity, v.Good)
			sum += v.Quantity
			good += v.Good
		}
		assert.Equal(t, o.Quantity, sum)
		assert.Equal(t, o.Good, good)
	}
}

func TestBadQuestionsAreRefusedFieldByField(t *testing.T) {
	q := question(three(9, 3, 1))
	q.Most, q.Look = 0, []int{-4}
	q.Stake = Stake{Currency: "euro", Each: money("-3"), Leftover: money("-1"), Missed: money("1000000000"), SecondsShare: money("140"), Free: -2}
	a, f := Ask(q)
	assert.Nil(t, a)
	var fields []string
	for _, x := range f {
		fields = append(fields, x.Field)
	}
	assert.Equal(t, []string{
		"stake.currency", "stake.leftover", "stake.missed", "stake.secondsShare", "stake.free", "most", "look[0]",
		"versions[0].guess.likely", "versions[0].guess.high",
	}, fields)
	q = question(three(1, 2, 3))
	q.Bill = func(int) (decimal.Decimal, bool) { return decimal.Zero, false }
	a, f = Ask(q)
	require.Empty(t, f)
	assert.Equal(t, 0, a.Best.Quantity)
	q = question(orders(1, 2, 3))
	q.Bill = func(int) (decimal.Decimal, bool) { return decimal.Zero, false }
	_, f = Ask(q)
	require.Len(t, f, 1)
	assert.Contains(t, f[0].What, "nothing has a price")
	_, f = Ask(Question{Stake: stake(), Bill: pins, Most: 10})
	require.Len(t, f, 1)
	assert.Equal(t, "versions", f[0].Field)
}

// Ties: the smaller order, and versions alike get alike.
func TestTies(t *testing.T) {
	q := question(three(10, 10, 10), three(10, 10, 10))
	q.Stake.SecondsShare, q.Stake.Each = decimal.Zero, money("2")
	q.Bill, q.Most = tiers("0", 1, 0, "0.50"), 60
	q.Look = []int{10, 40}
	a, f := Ask(q)
	require.Empty(t, f)
	assert.Equal(t, 20, a.Best.Quantity, "a further piece costs what it brings when left over")
	for _, o := range append(a.Rows, a.Best) {
		assert.Equal(t, o.Versions[0].Quantity, o.Versions[1].Quantity)
	}
	for _, breaks := range [][]int{{}, {1}, {45}, {20}, {21, 33}} {
		q.Breaks = breaks
		few, _ := Ask(q)
		assert.Equal(t, a, few, "%v", breaks)
	}
	q.Bill, q.Stake.Leftover = tiers("5", 1, 0, "0"), decimal.Zero // as much for one as for all
	for _, breaks := range [][]int{nil, {}, {1}, {30}} {
		q.Breaks = breaks
		a, _ = Ask(q)
		assert.Equal(t, 20, a.Best.Quantity, "%v", breaks)
	}
}

// With the breaks known, few bills are asked for, and the same order is found
// as by looking at all: random bills, their lines rounded, a minimum below which
// nothing can be ordered.
func TestBreaksSaveBillsAndChangeNothing(t *testing.T) {
	const seed = 13
	r := rand.New(rand.NewPCG(seed, seed))
	for range 120 {
		low := r.IntN(300)
		q := question(three(low, low+r.IntN(300), low+300+r.IntN(500)))
		q.Stake.SecondsShare = decimal.NewFromInt(int64(r.IntN(20)))
		q.Stake.Missed = decimal.New(int64(r.IntN(300)), -2)
		q.Most = 1500
		minimum := r.IntN(60)
		breaks, prices := []int{1}, []decimal.Decimal{decimal.New(int64(9000+r.IntN(90_000)), -4)}
		for len(breaks) < 6 {
			breaks = append(breaks, breaks[len(breaks)-1]+1+r.IntN(300))
			prices = append(prices, prices[len(prices)-1].Mul(decimal.New(int64(60+r.IntN(60)), -2)).Round(4))
		}
		asked := 0
		q.Bill = func(n int) (decimal.Decimal, bool) {
			asked++
			i := 0
			for i+1 < len(breaks) && breaks[i+1] <= n {
				i++
			}
			return prices[i].Mul(decimal.NewFromInt(int64(n))).Round(2).Add(money("83.10")), n >= minimum
		}
		all, f := Ask(q)
		require.Empty(t, f)
		q.Breaks, asked = append(breaks, minimum), 0
		few, f := Ask(q)
		require.Empty(t, f)
		require.Equal(t, all, few, "seed %d", seed)
		require.Less(t, asked, 600, "seed %d", seed)
	}
}
