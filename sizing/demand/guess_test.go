package demand

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func three(low, likely, high int) Guess {
	return Guess{Kind: ByThree, Low: low, Likely: likely, High: high}
}

func orders(n, gone, left int) Guess {
	return Guess{Kind: ByOrders, Orders: n, DaysGone: gone, DaysLeft: left, Prior: UsualPrior()}
}

func chances(d Distribution) []float64 {
	out := make([]float64, len(d.cum))
	for i := range out {
		out[i] = d.weight(i) / d.total()
	}
	return out
}

func TestTriangularByHand(t *testing.T) {
	// Weights 1, 2, 3 up and 3, 1.5 down to 0 at 7, brought to whole numbers.
	d := Triangular(3, 5, 6)
	assert.Equal(t, []float64{2, 6, 12, 15}, d.cum)
	assert.Equal(t, 3, d.First())
	assert.Equal(t, 6, d.Last())
	assert.Equal(t, []float64{1}, chances(Triangular(40, 40, 40)))
	even := Triangular(0, 50, 100)
	assert.Equal(t, 50.0, even.Mean())
	assert.Equal(t, 50, even.Quantile(0.5))
}

// The steps get finer as the numbers grow: the continuous triangular
// distribution (Johnson, Kotz & Balakrishnan, Continuous Univariate
// Distributions 2, ch. 26.9) from low-1 to high+1 is the limit.
func TestTriangularNearsTheContinuousOne(t *testing.T) {
	low, likely, high := 1000, 4000, 9000
	d := Triangular(low, likely, high)
	a, c, b := float64(low-1), float64(likely), float64(high+1)
	for n := low; n <= high; n += 97 {
		x := float64(n) + 0.5
		f := (x - a) * (x - a) / ((b - a) * (c - a))
		if x > c {
			f = 1 - (b-x)*(b-x)/((b-a)*(b-c))
		}
		require.InDelta(t, f, d.AtMost(n), 2e-7)
	}
	assert.InDelta(t, (a+b+c)/3, d.Mean(), 0.01)
}

// 12 orders in 7 days, 10 days left, the prior one order in one day: a negative
// binomial of 13 and 8/18 (Johnson, Kemp & Kotz, Univariate Discrete
// Distributions, 3rd ed., ch. 5.3), here in exact fractions.
func TestOrdersSoFarGiveTheNegativeBinomial(t *testing.T) {
	d, f := orders(12, 7, 10).Distribution("guess")
	require.Empty(t, f)
	assert.InDelta(t, 12+13*10/8.0, d.Mean(), 1e-9, "shape by rate, times the days")
	exact := exactNegativeBinomial(13, 8, 10, 80)
	for k, want := range exact {
		got := d.AtMost(12+k) - d.AtMost(12+k-1)
		require.InDelta(t, want, got, 1e-13, "%d", k)
	}
}

// exactNegativeBinomial is the definition, in exact fractions: the Poisson
// mixture over a gamma of whole shape is C(k+n-1, k) p^n q^k.
func exactNegativeBinomial(shape, rate, days int64, up int) []float64 {
	p, q := big.NewRat(rate, rate+days), big.NewRat(days, rate+days)
	w := big.NewRat(1, 1)
	for range shape {
		w.Mul(w, p)
	}
	out := []float64{}
	for k := range int64(up) {
		c := new(big.Int).Binomial(k+shape-1, k)
		v := new(big.Rat).Mul(w, new(big.Rat).SetInt(c))
		for range k {
			v.Mul(v, q)
		}
		x, _ := v.Float64()
		out = append(out, x)
	}
	return out
}

// Weights far from the likeliest are not lost, nor does anything overflow,
// where a power would.
func TestManyOrdersStayFinite(t *testing.T) {
	for _, g := range []Guess{orders(9000, 30, 30), orders(0, 100, 700), orders(400, 1, 20), orders(3, 10, 0)} {
		d, f := g.Distribution("guess")
		require.Empty(t, f)
		rate := g.Prior.Days + float64(g.DaysGone)
		assert.InEpsilon(t, max(1e-9, float64(g.Orders)+(g.Prior.Orders+float64(g.Orders))*float64(g.DaysLeft)/rate), max(1e-9, d.Mean()), 1e-9)
		sum := 0.0
		for _, p := range chances(d) {
			require.False(t, math.IsNaN(p) || p < 0)
			sum += p
		}
		assert.InDelta(t, 1, sum, 1e-9)
		assert.GreaterOrEqual(t, d.First(), g.Orders)
	}
}

func TestAPriorOfPartsOfAnOrder(t *testing.T) {
	g := orders(0, 0, 10)
	g.Prior = DemandPrior{Orders: 0.5, Days: 5}
	d, f := g.Distribution("guess")
	require.Empty(t, f)
	assert.InDelta(t, 1.0, d.Mean(), 1e-9)
	assert.InDelta(t, math.Sqrt(5.0/15), d.AtMost(0), 1e-9, "(b/(b+t))^a at none")
}

func TestBadGuessesAreRefusedInWords(t *testing.T) {
	for want, g := range map[string]Guess{
		"The likeliest number, 5, is below the least, 10.":                       three(10, 5, 20),
		"The most that may be wanted, 20, is below the likeliest number, 30.":    three(10, 30, 20),
		"The least that may be wanted is -1; it cannot be below 0.":              three(-1, 5, 20),
		"12 orders cannot have come in 0 days; count the day that is running.":   orders(12, 0, 20),
		"Demand is guessed by three numbers or from orders so far, not by \"\".": {},
	} {
		_, f := g.Distribution("guess")
		require.NotEmpty(t, f)
		assert.Equal(t, want, f[0].What)
	}
	g := orders(1, 1, 1)
	g.Prior = DemandPrior{Orders: math.NaN(), Days: -1}
	_, f := g.Distribution("guess")
	assert.Len(t, f, 2)
	_, f = orders(20_000, 1, 700).Distribution("guess")
	require.Len(t, f, 1)
	assert.Contains(t, f[0].What, "shorten the days left")
}
