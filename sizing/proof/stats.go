package proof

import (
	"math"
	"slices"
)

// trimmedRms is the root mean square of the nearest nine tenths of distances.
func trimmedRms(list []float64) float64 {
	if len(list) == 0 {
		return 0
	}
	slices.Sort(list)
	keep := list[:max(1, len(list)*9/10)]
	sum := 0.0
	for _, v := range keep {
		sum += float64(v * v)
	}
	return math.Sqrt(sum / float64(len(keep)))
}

// middle is the median of a list, which is put in order; 0 of none.
func middle(list []float64) float64 {
	if len(list) == 0 {
		return 0
	}
	slices.Sort(list)
	return list[len(list)/2]
}
