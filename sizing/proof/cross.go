package proof

import (
	"math"

	"badgewright/reduce/mask"
	"badgewright/sizing/unit"
)

// cross is a way across a metal line: its middle, the unit direction from the
// cell on one side to that on the other, and its width there.
type cross struct {
	at, dir Point
	wide    float64 // px
	// a and b are the cells before and behind; roomA and roomB are how far they
	// reach along the way, px.
	a, b         int32
	roomA, roomB float64
	x, y         int32
}

// widestLine is the metal that still counts as a line; wider is an area.
const widestLine unit.MM = 1.5

// mostCrosses bounds how many ways are measured: every few px of a line do.
const mostCrosses = 6000

// findLines takes ways across all metal lines.
func (a *Asked) findLines() {
	var skip [256]bool
	for l := range skip {
		skip[l] = uint8(l) != metal
	}
	ridge := mask.Ridge(a.class, a.cells, &skip)
	widest := a.px(widestLine)
	every := max(1, len(ridge)/mostCrosses)
	a.every = every
	for i, p := range ridge {
		if i%every != 0 || 2*math.Sqrt(float64(p.D2)) > widest+2 {
			continue
		}
		if c, ok := a.crossAt(p); ok {
			a.lines = append(a.lines, c)
		}
	}
}

func (a *Asked) crossAt(p mask.RidgePoint) (c cross, ok bool) {
	from, to := Point{float64(p.AX) + 0.5, float64(p.AY) + 0.5}, Point{float64(p.BX) + 0.5, float64(p.BY) + 0.5}
	d := dist(from, to)
	if d < 2 {
		return c, false
	}
	c.dir = Point{(to.X - from.X) / d, (to.Y - from.Y) / d}
	c.x, c.y = p.X, p.Y
	ia, okA := a.index(from.X, from.Y)
	ib, okB := a.index(to.X, to.Y)
	if !okA || !okB {
		return c, false
	}
	c.a, c.b = a.cell[ia], a.cell[ib]
	const step = 0.5
	sum, first := 0.0, 0.0
	for t := -1.0; t <= d+1; t += step {
		m := a.coverAt(from.X+c.dir.X*t, from.Y+c.dir.Y*t, metal)
		sum += m * step
		first += m * step * t
	}
	if sum < 1 {
		return c, false
	}
	c.wide = sum
	mid := first / sum
	c.at = Point{from.X + c.dir.X*mid, from.Y + c.dir.Y*mid}
	c.roomA = a.room(from, Point{-c.dir.X, -c.dir.Y}, c.a)
	c.roomB = a.room(to, c.dir, c.b)
	return c, true
}

// room is how far a cell reaches from a place in it, px, as far as is of use.
func (a *Asked) room(from, dir Point, cell int32) float64 {
	most := a.px(sideMM) + 2
	for t := 0.0; t < most; t++ {
		i, ok := a.index(from.X+dir.X*t, from.Y+dir.Y*t)
		if !ok {
			if a.cells.Label[cell] == outside {
				continue
			}
			return t
		}
		if a.cell[i] != cell {
			return t
		}
	}
	return most
}

// sideMM is how far to either side of a line its profile is read: an edge that
// has moved further is another one.
const sideMM unit.MM = 0.6
