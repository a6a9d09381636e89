package wall

import (
	"math"
	"slices"
)

// isTip says whether a centreline ends at a point: nothing leads on, or but a
// loop of three or four pixels, as grain leaves at the tip of a corner.
func (g *graph) isTip(i int32) bool {
	of := g.of(i)
	switch len(of) {
	case 0, 1:
		return true
	case 2:
		return g.looped(i, of[0], of[1]) && g.leans(i)
	}
	return false
}

// looped says whether two neighbours of i are joined past it.
func (g *graph) looped(i, a, b int32) bool {
	for _, n := range g.of(a) {
		if n == b || n != i && slices.Contains(g.of(b), n) {
			return true
		}
	}
	return false
}

// leanSteps is how far along the centreline one looks to say on which hand of a
// point it lies; leaning is how much of that way is to one hand at its end: a
// line that turns by less than 130 degrees leans less.
const (
	leanSteps = 5
	leaning   = 0.9
)

// leans says whether all centreline near a point lies on one hand of it.
func (g *graph) leans(i int32) bool {
	near := []int32{i}
	for k, steps := 0, 0; k < len(near) && steps < leanSteps; steps++ {
		for end := len(near); k < end; k++ {
			for _, n := range g.of(near[k]) {
				if !slices.Contains(near, n) {
					near = append(near, n)
				}
			}
		}
	}
	x, y, far := 0.0, 0.0, 0.0
	for _, k := range near {
		dx, dy := float64(g.points[k].x-g.points[i].x), float64(g.points[k].y-g.points[i].y)
		x, y, far = x+dx, y+dy, far+math.Sqrt(dx*dx+dy*dy)
	}
	return math.Sqrt(x*x+y*y) >= leaning*far
}
