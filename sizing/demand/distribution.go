// Package demand answers how many to order: how many may be wanted, what each
// number leaves on average, and when a pre-sale covers the bill. It knows
// nothing of price lists; a bill is a function of the number ordered.
package demand

// Distribution is how likely each whole number of pieces is to be wanted.
// Weights need not add up to 1: sums are kept whole as long as they can be, and
// divided last, so that the same comes out on every machine.
type Distribution struct {
	first int       // the least number with a weight
	cum   []float64 // cum[i] is the weight of first..first+i
	cumD  []float64 // the same, each number's weight times the number
}

// weighted makes a distribution of weights for first, first+1, and so on; at
// least one is above 0, none below.
func weighted(first int, weights []float64) Distribution {
	d := Distribution{first: first, cum: make([]float64, len(weights)), cumD: make([]float64, len(weights))}
	sum, sumD := 0.0, 0.0
	for i, w := range weights {
		sum += w
		sumD += float64(w * float64(first+i))
		d.cum[i], d.cumD[i] = sum, sumD
	}
	return d
}

func (d Distribution) total() float64 { return d.cum[len(d.cum)-1] }

// First and Last are the least and the most that can be wanted.
func (d Distribution) First() int { return d.first }
func (d Distribution) Last() int  { return d.first + len(d.cum) - 1 }

// Mean is how many are wanted on average.
func (d Distribution) Mean() float64 { return d.cumD[len(d.cumD)-1] / d.total() }

// AtMost is the chance that no more than n are wanted.
func (d Distribution) AtMost(n int) float64 {
	switch i := n - d.first; {
	case i < 0:
		return 0
	case i >= len(d.cum):
		return 1
	default:
		return d.cum[i] / d.total()
	}
}

// AtLeast is the chance that n or more are wanted.
func (d Distribution) AtLeast(n int) float64 {
	switch i := n - 1 - d.first; {
	case i < 0:
		return 1
	case i >= len(d.cum):
		return 0
	default:
		return (d.total() - d.cum[i]) / d.total()
	}
}

// Sold is how many of n pieces find a buyer on average: the mean of the lesser
// of n and what is wanted.
func (d Distribution) Sold(n int) float64 {
	switch i := n - d.first; {
	case i < 0:
		return float64(n)
	case i >= len(d.cum):
		return d.Mean()
	default:
		short := d.total() - d.cum[i]
		return (d.cumD[i] + float64(float64(n)*short)) / d.total()
	}
}

// Quantile is the least number that is enough with a chance of at least p, from
// 0 to 1.
func (d Distribution) Quantile(p float64) int {
	want := p * d.total()
	for i, c := range d.cum {
		if c >= want {
			return d.first + i
		}
	}
	return d.Last()
}
