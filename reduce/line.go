package reduce

import (
	"math"

	"badgewright/reduce/mask"
)

// What makes dark line work: all must hold.
const (
	// darkest lightness (OKLab L) a line may have, and its greatest chroma:
	// black, charcoal, deep navy or brown, not a mid grey or a red.
	lineLight  = 0.45
	lineChroma = 0.13
	// lineThin is the greatest mean width against the drawing's diagonal: a
	// bold outline is 3 in 100.
	lineThin = 0.05
	// lineMeets is the share of all edges in the drawing that must be the
	// line's: in an outlined drawing nearly every colour ends at a line.
	lineMeets = 0.45
	// lineWhole is the share of the line work that must hang together.
	lineWhole = 0.3
)

// lineWork returns the leaf that is dark connected line work, or -1.
func lineWork(leaves []leaf, label []uint8, w, h int, m *meetings) int {
	all, diagonal := 0, extent(label, w, h)
	for l := range m {
		all += m.of(uint8(l))
	}
	best, most := -1, 0.0
	for k := range leaves {
		if leaves[k].lab.L > lineLight || leaves[k].lab.Chroma() > lineChroma {
			continue
		}
		sides := m.of(uint8(k))
		if sides == 0 || 2*float64(leaves[k].area) > lineThin*diagonal*float64(sides) {
			continue
		}
		// each side is counted for both its labels
		if meets := 2 * float64(sides) / float64(all); meets >= lineMeets && meets > most {
			best, most = k, meets
		}
	}
	if best < 0 || !hangsTogether(label, w, h, uint8(best), leaves[best].area) {
		return -1
	}
	return best
}

// extent is the diagonal, px, of the box round the drawing.
func extent(label []uint8, w, h int) float64 {
	x0, y0, x1, y1 := w, h, 0, 0
	for y := 0; y < h; y++ {
		for x, l := range label[y*w : (y+1)*w] {
			if l != None {
				x0, x1 = min(x0, x), max(x1, x+1)
				y0, y1 = min(y0, y), max(y1, y+1)
			}
		}
	}
	dx, dy := float64(x1-x0), float64(y1-y0)
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

func hangsTogether(label []uint8, w, h int, l uint8, area int) bool {
	var eight [256]bool
	eight[l] = true
	parts := mask.Connect(label, w, h, &eight)
	most := 0
	for k, of := range parts.Label {
		if of == l {
			most = max(most, parts.Area[k])
		}
	}
	return float64(most) >= lineWhole*float64(area)
}
