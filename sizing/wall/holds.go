package wall

import (
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Sizes are tried in steps of a tenth of a millimetre, up to the greatest that
// is still called a pin here (this tool's bounds).
const (
	sizesPerMM = 10
	greatestMM = 120
)

// HoldsFrom returns the smallest size at which no line, area, cut-out or
// lettering of the drawing, as it is, fails; 0 when there is none up to 120 mm. It
// holds at every larger size too. Ends that fade out do so at any size, metal that
// is missing is so at any size, and neither counts.
func (m *Measured) HoldsFrom(box [4]float64, by sizing.SizeBy, l sizing.Limits) unit.MM {
	lo, hi := int(math.Ceil(float64(sizing.LeastSize)*sizesPerMM)), greatestMM*sizesPerMM
	at := func(k int) bool {
		scale := sizing.ScaleFor(box, sizing.Size{MM: unit.MM(k) / sizesPerMM, By: by})
		return m.sound(scale, l)
	}
	if !at(hi) {
		return 0
	}
	for lo < hi {
		mid := (lo + hi) / 2
		if at(mid) {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return unit.MM(lo) / sizesPerMM
}

// sound says whether nothing that a size can mend fails at a scale.
func (m *Measured) sound(scale unit.PxPerMM, l sizing.Limits) bool {
	for g, mm := range limitsOf(l) {
		limit := mm.Px(scale)
		if m.shaky <= limit/4 && float64(m.least[g]) < threshold(limit, m.shaky) && g != areaGroup {
			return false
		}
	}
	for _, f := range m.sized(scale, l) {
		if f.Verdict == sizing.Fails {
			return false
		}
	}
	return true
}
