package eye

import (
	"math"

	"badgewright/reduce/colour"
)

// within is the share of a Gaussian that lies within t standard deviations of
// its middle: erf(t / sqrt 2), by its series, from 0 on.
func within(t float64) float64 {
	if t > 8 {
		return 1
	}
	x := t / math.Sqrt2
	term, sum := x, x
	for n := 1; n < 200 && term > 1e-17*sum; n++ {
		// The series with all its terms positive: 2^n x^(2n+1) / (1 3 5 .. 2n+1).
		term *= 2 * x * x / float64(2*n+1)
		sum += term
	}
	return min(1, 2/math.SqrtPi*sum*colour.FallOff(x*x))
}

func distance(p, q colour.Lab) float64 {
	l, a, b := p.L-q.L, p.A-q.A, p.B-q.B
	return math.Sqrt(float64(l*l) + float64(a*a) + float64(b*b))
}
