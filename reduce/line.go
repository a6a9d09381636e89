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

// lineWork returns the leaves that are dark connected line work, as a table,
// or nil. Steps of one gradient (a line under a lamp) count as one.
func lineWork(leaves []leaf, blend []int, label []uint8, w, h int, m *meetings) *[256]bool {
	sides, all := groupSides(leaves, blend, m)
	area := make([]int, len(leaves))
	for k := range leaves {
		area[blend[k]] += leaves[k].area
	}
	diagonal := extent(label, w, h)
	best, most := -1, 0.0
	for k := range leaves {
		g := blend[k]
		if leaves[k].lab.L > lineLight || leaves[k].lab.Chroma() > lineChroma || sides[g] == 0 {
			continue
		}
		thin := 2*float64(area[g]) <= lineThin*diagonal*float64(sides[g])
		// each side is counted for both its labels
		if meets := 2 * float64(sides[g]) / float64(all); thin && meets >= lineMeets && meets > most {
			best, most = g, meets
		}
	}
	if best < 0 {
		return nil
	}
	var in [256]bool
	for k := range leaves {
		in[k] = blend[k] == best
	}
	if !hangsTogether(label, w, h, &in, area[best]) {
		return nil
	}
	return &in
}

// groupSides counts the sides at which each gradient, named by a leaf, meets
// anything else, and all sides.
func groupSides(leaves []leaf, blend []int, m *meetings) (sides []int, all int) {
	sides = make([]int, len(leaves))
	for k := range leaves {
		for l, n := range m[k] {
			if l >= len(leaves) || blend[l] != blend[k] {
				sides[blend[k]] += int(n)
				all += int(n)
			}
		}
	}
	for _, n := range m[None] {
		all += int(n)
	}
	return sides, all
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

func hangsTogether(label []uint8, w, h int, in *[256]bool, area int) bool {
	line := make([]uint8, len(label))
	for i, l := range label {
		if in[l] {
			line[i] = 1
		}
	}
	parts := mask.Connect(line, w, h, &[256]bool{1: true})
	most := 0
	for k, of := range parts.Label {
		if of == 1 {
			most = max(most, parts.Area[k])
		}
	}
	return float64(most) >= lineWhole*float64(area)
}
