package trace

import (
	"math"
	"slices"
)

// How an arc is drawn where its curve would cross another.
const (
	fitCloser uint8 = 1 // within a part of the tolerance
	keepSides uint8 = 2 // along the middles of the sides of its pixels
)

const (
	// closer is the part of the tolerance that is left where curves crossed.
	closer = 0.3
	// untangleRounds bounds how often arcs are drawn again. From the last but
	// one on, arcs that still cross keep to the sides of their pixels all along.
	untangleRounds = 6
)

// untangle draws again, closer to its places, every arc that crosses itself or
// another, and in the end along the sides of the pixels, which never cross.
func (d *drawer) untangle() {
	var x crosser
	for round := range untangleRounds {
		found := x.crossings(d.paths)
		if len(found) == 0 {
			return
		}
		d.redraw(d.roughen(found, round))
	}
}

// roughen marks the places round the crossings, more of them each round, and
// returns the arcs that were marked, in order.
func (d *drawer) roughen(found []clash, round int) []int32 {
	var arcs []int32
	for _, f := range found {
		for _, i := range []int32{f.a, f.b} {
			d.mark(i, f.at, round)
			arcs = append(arcs, i)
		}
	}
	slices.Sort(arcs)
	return slices.Compact(arcs)
}

func (d *drawer) mark(i int32, at vec, round int) {
	a := &d.m.arcs[i]
	if a.rough == nil {
		a.rough = make([]uint8, len(a.ways))
	}
	level, reach := keepSides, 1.5*float64(round+1)
	if round == 0 {
		level, reach = fitCloser, 8
	}
	if round >= untangleRounds-2 {
		reach = math.Inf(1)
	}
	x, y := d.m.g.place(a.start)
	for k, w := range a.ways {
		if (vec{float64(x), float64(y)}).to(at) <= reach {
			a.rough[k] = max(a.rough[k], level)
		}
		x, y = x+stepX[w], y+stepY[w]
	}
	if !a.closed() && level == keepSides {
		d.holdKnot(a.from, a.rough[0])
		d.holdKnot(a.to, a.rough[len(a.rough)-1])
	}
}

func (d *drawer) holdKnot(k int32, rough uint8) {
	if rough == keepSides {
		d.m.knots[k].rough = true
	}
}

// redraw draws arcs anew, and all that share a knot with them.
func (d *drawer) redraw(arcs []int32) {
	var knots []int32
	for _, i := range arcs {
		d.lay(i)
		if a := &d.m.arcs[i]; !a.closed() {
			knots = append(knots, a.from, a.to)
		}
	}
	slices.Sort(knots)
	for _, k := range slices.Compact(knots) {
		d.settle(k)
		for _, h := range d.m.knots[k].out {
			if h >= 0 {
				arcs = append(arcs, h>>1)
			}
		}
	}
	slices.Sort(arcs)
	for _, i := range slices.Compact(arcs) {
		d.drawArc(i)
	}
}
