package outline

import (
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Sizes is a stretch of sizes, both ends among them.
type Sizes struct {
	From unit.MM `json:"from"`
	To   unit.MM `json:"to"`
}

// Greatest is the largest size that is tried, past which nobody calls it a pin:
// what holds up to there has no end (this tool's bound).
const Greatest unit.MM = 120

// sizesPerMM is the steps in which sizes are tried: tenths of a millimetre.
const sizesPerMM = 10

// HoldsIn returns the sizes at which nothing of the silhouette fails, by the
// measure of its box; none when there is none up to 120 mm. A size may be too
// small, for what is thin or narrow, and too large, for an arm that a finger
// gets hold of. Parts that hang loose do so at any size, and a point that was
// drawn sharp is sharp at any: they do not count. Nor do eyes that are added, which
// are as large as they must be at every size.
func (m *Measured) HoldsIn(box [4]float64, by sizing.SizeBy, at At) []Sizes {
	lo, hi := int(math.Ceil(float64(sizing.LeastSize)*sizesPerMM)), int(Greatest)*sizesPerMM
	at.Parts.Joins = onlyDrawn(at.Parts.Joins)
	scale := func(k int) At {
		at.Scale = sizing.ScaleFor(box, sizing.Size{MM: unit.MM(k) / sizesPerMM, By: by})
		return at
	}
	// What is thin holds from some size on, arms up to one.
	from := firstSize(lo, hi, func(k int) bool { return m.wideEnough(scale(k)) })
	beyond := firstSize(lo, hi, func(k int) bool { a := scale(k); return fails(m.longArms(&a)) })
	if from >= beyond {
		return nil
	}
	return []Sizes{{From: unit.MM(from) / sizesPerMM, To: unit.MM(beyond-1) / sizesPerMM}}
}

// onlyDrawn leaves out the joins by an eye that the drawing does not have.
func onlyDrawn(all []sizing.Join) []sizing.Join {
	var kept []sizing.Join
	for _, j := range all {
		if j.Upper.Drawn && j.Lower.Drawn {
			kept = append(kept, j)
		}
	}
	return kept
}

// firstSize returns the first of lo..hi that is so, hi+1 when none is; all that
// come after it are so too.
func firstSize(lo, hi int, so func(int) bool) int {
	hi++
	for lo < hi {
		if mid := (lo + hi) / 2; so(mid) {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo
}

// wideEnough says whether nothing fails at a scale for being small.
func (m *Measured) wideEnough(at At) bool {
	return !fails(m.thinPlaces(&at, nil)) && !fails(m.weakEyes(&at))
}

func fails(found []sizing.Finding) bool {
	for i := range found {
		if found[i].Verdict == sizing.Fails {
			return true
		}
	}
	return false
}
