package colour

import "github.com/lucasb-eyer/go-colorful"

// StartingSet returns n colours (0..24) that sit well together, for filling a
// drawing that has none: hues evenly spread, lightness and strength varied so
// that neighbours in the list are easily told apart. The same n always gives
// the same set.
func StartingSet(n int) []RGB8 {
	n = min(max(n, 0), 24)
	set := make([]RGB8, n)
	light := [3]float64{0.62, 0.78, 0.46}
	chroma := [3]float64{0.14, 0.11, 0.10}
	for i := range set {
		// a warm red first; each next hue as far round as makes n even steps of it
		hue := 25 + 360*float64((i*strideOf(n))%n)/float64(n)
		if hue >= 360 {
			hue -= 360
		}
		r, g, b := colorful.OkLch(light[i%3], chroma[i%3], hue).Clamped().RGB255()
		set[i] = RGB8{r, g, b}
	}
	return set
}

// strideOf is the step nearest to five twelfths of n that visits all of n.
func strideOf(n int) int {
	for s := max(1, 5*n/12); ; s++ {
		if gcd(s, n) == 1 {
			return s
		}
	}
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
