package proof

import (
	"iter"
	"math"
	"slices"
)

// spans goes through the pixels of a row whose middles lie between the first and
// second crossing, the third and fourth, and so on.
func spans(xs []float64, w int) iter.Seq[int] {
	slices.Sort(xs)
	return func(yield func(int) bool) {
		for i := 0; i+1 < len(xs); i += 2 {
			for x := max(0, int(math.Ceil(xs[i]-0.5))); x < w && float64(x)+0.5 < xs[i+1]; x++ {
				if !yield(x) {
					return
				}
			}
		}
	}
}
