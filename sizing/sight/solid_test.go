package sight

import (
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// solidPin is a tall badge with much bare metal: an anchor in relief on one
// field of enamel, below a solid bar.
func solidPin(side int, mm unit.MM) *sizing.Badge {
	flats := []reduce.Flat{flat(0, reduce.Metal, 0x202020), flat(1, reduce.Enamel, 0x1f6f63)}
	return paint(side, mm, flats, anchorAt)
}

func anchorAt(x, y float64) uint8 {
	out := max(math.Abs(x-0.5)-0.30, math.Abs(y-0.5)-0.47)
	if corner := math.Hypot(max(math.Abs(x-0.5)-0.20, 0), max(math.Abs(y-0.5)-0.37, 0)) - 0.10; corner > 0 {
		return reduce.None
	}
	if out > -0.02 || y < 0.27 {
		return 0
	}
	ring := math.Abs(math.Hypot(x-0.5, y-0.37)-0.04) - 0.014
	shank := max(math.Abs(x-0.5)-0.022, max(0.40-y, y-0.82))
	stock := max(math.Abs(y-0.47)-0.018, math.Abs(x-0.5)-0.10)
	arms := max(math.Abs(math.Hypot(x-0.5, y-0.66)-0.165)-0.022, 0.68-y)
	if min(ring, shank, stock, arms) < 0 {
		return 0
	}
	return 1
}
