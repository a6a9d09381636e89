package parcel

import (
	"math"
	"math/big"
	"strconv"
)

// decimalRat is a number as it is written, not as a double holds it.
func decimalRat(v float64) *big.Rat {
	r, ok := new(big.Rat).SetString(strconv.FormatFloat(v, 'g', -1, 64))
	if !ok {
		return new(big.Rat)
	}
	return r
}

// near is a fraction as a double.
func near(r *big.Rat) float64 {
	v, _ := r.Float64()
	return v
}

// faint is how little a number may weigh against the likeliest and still count:
// less cannot be seen in any sum of doubles.
const faint = 1e-18

// chances is how likely each whole number from first on is. Weights are found
// from the likeliest outward, one from the next by plain arithmetic, so that
// the same comes out on every machine.
type chances struct {
	first   int
	weights []float64
	total   float64
}

// outward weighs the numbers 0 to last; up is the weight of k+1 by that of k.
func outward(mode, last int, up func(k int) float64) chances {
	below := []float64{}
	for k, w := mode, 1.0; k > 0; k-- {
		if w /= up(k - 1); w < faint {
			break
		}
		below = append(below, w)
	}
	c := chances{first: mode - len(below)}
	for i := len(below) - 1; i >= 0; i-- {
		c.weights = append(c.weights, below[i])
	}
	for k, w := mode, 1.0; w > faint; k++ {
		c.weights = append(c.weights, w)
		if k == last {
			break
		}
		w *= up(k)
	}
	for _, w := range c.weights {
		c.total += w
	}
	return c
}

// atMost is the chance of k or less.
func (c chances) atMost(k int) float64 {
	sum := 0.0
	for i, w := range c.weights {
		if c.first+i > k {
			break
		}
		sum += w
	}
	return sum / c.total
}

// atLeast is the chance of k or more, summed from the far end so that a small
// one stays exact.
func (c chances) atLeast(k int) float64 {
	sum := 0.0
	for i := len(c.weights) - 1; i >= 0 && c.first+i >= k; i-- {
		sum += c.weights[i]
	}
	return sum / c.total
}

// binomial is how many of n pieces are bad when each is so with a chance p, from
// 0 to 1, whatever the others are.
func binomial(n int, p float64) chances {
	switch {
	case p <= 0 || n == 0:
		return chances{0, []float64{1}, 1}
	case p >= 1:
		return chances{n, []float64{1}, 1}
	}
	odds := p / (1 - p)
	mode := min(n, int(math.Floor(float64(float64(n+1)*p))))
	return outward(mode, n, func(k int) float64 { return float64(float64(n-k)*odds) / float64(k+1) })
}

// poisson is how many come when so many are to be expected.
func poisson(mean float64) chances {
	if mean <= 0 {
		return chances{0, []float64{1}, 1}
	}
	return outward(int(math.Floor(mean)), math.MaxInt, func(k int) float64 { return mean / float64(k+1) })
}

// halvings bring an interval down to the last bits of a double.
const halvings = 60

// where halves its way to the place between lo and hi at which below turns false.
func where(lo, hi float64, below func(v float64) bool) float64 {
	for range halvings {
		mid := float64(lo+hi) / 2
		if below(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return float64(lo+hi) / 2
}

// ShareBetween is the exact two-sided interval of a share of which k of n were
// found (Clopper & Pearson, Biometrika 26, 1934).
func ShareBetween(k, n int, sure Sure) (lo, hi float64) {
	half := near(sure.doubt()) / 2
	lo, hi = 0, 1
	if k > 0 {
		lo = where(0, 1, func(p float64) bool { return binomial(n, p).atLeast(k) < half })
	}
	if k < n {
		hi = where(0, 1, func(p float64) bool { return binomial(n, p).atMost(k) > half })
	}
	return lo, hi
}

// CountBetween is the exact two-sided interval of what is to be expected where
// k came (Garwood, Biometrika 28, 1936).
func CountBetween(k int, sure Sure) (lo, hi float64) {
	half := near(sure.doubt()) / 2
	most := float64(4*k + 40)
	if k > 0 {
		lo = where(0, most, func(m float64) bool { return poisson(m).atLeast(k) < half })
	}
	return lo, where(0, most, func(m float64) bool { return poisson(m).atMost(k) > half })
}
