package trace

import (
	"math"
	"slices"
)

// end is how an arc runs where it meets a knot: on a line through at along dir,
// which leads away from the knot.
type end struct {
	at, dir  vec
	straight bool
	weight   float64
}

const (
	// knotGap is how far from a knot, px, the raster tells two classes again.
	knotGap = 1.5
	// knotHold is the weight of the pixel corner itself among the arcs that end
	// there; it decides when all of them run the same way.
	knotHold = 0.05
	// knotAway is how far a knot may lie from its pixel corner, px.
	knotAway = 1.2
	// onward is the angle, radians (20 degrees), below which an arc goes on
	// smoothly as another on the far side of a knot.
	onward = 0.35
)

// endOf says how an arc runs at its start, or at its end. An arc of a few places,
// or one that turns at once, does not say.
func (c *course) endOf(atEnd bool) end {
	s, i, step := &c.spans[0], 0, 1
	if atEnd {
		s, i, step = &c.spans[len(c.spans)-1], len(c.p)-1, -1
	}
	if s.straight && s.u != (vec{}) {
		return end{at: s.c, dir: s.u.mul(float64(step)), straight: true, weight: 1}
	}
	if len(c.p) < leastPlaces {
		return end{}
	}
	b := c.t.side(i, step, knotGap, c.off, c.t.grade.reaches())
	if b.n < linearBelow || b.off > max(c.straightOff(i), c.off) {
		return end{}
	}
	return end{at: b.at, dir: b.dir.mul(float64(step)), weight: 1}
}

// settle places a knot where the arcs that end there meet, by least squares,
// and finds which of them go on as another.
func (k *knot) settle(g *grid, ends *[4]end) {
	x, y := g.place(k.corner)
	corner := vec{float64(x), float64(y)}
	k.at, k.through = corner, [4]vec{}
	if k.rough {
		return
	}
	if p := crossing(corner, ends); p.to(corner) <= knotAway {
		k.at = p
	}
	k.join(ends)
}

// crossing returns the place nearest to all the lines.
func crossing(corner vec, ends *[4]end) vec {
	a, b, c := knotHold, 0.0, knotHold
	var v vec
	for _, e := range ends {
		if e.weight == 0 {
			continue
		}
		// The line's normal, and how far the corner lies from the line.
		n := vec{-e.dir.y, e.dir.x}
		off := e.at.sub(corner).dot(n)
		a, b, c = a+float64(n.x*n.x), b+float64(n.x*n.y), c+float64(n.y*n.y)
		v = v.along(n, off)
	}
	det := float64(a*c) - float64(b*b)
	return corner.add(vec{(float64(v.x*c) - float64(v.y*b)) / det, (float64(v.y*a) - float64(v.x*b)) / det})
}

// join finds the two arcs that differ least from one going straight on.
func (k *knot) join(ends *[4]end) {
	bestA, bestB, least := -1, -1, onward
	for a := range 4 {
		for b := a + 1; b < 4; b++ {
			if ends[a].weight == 0 || ends[b].weight == 0 {
				continue
			}
			if t := angle(ends[a].dir.mul(-1), ends[b].dir); t < least {
				bestA, bestB, least = a, b, t
			}
		}
	}
	if bestA < 0 {
		return
	}
	a, b := &ends[bestA], &ends[bestB]
	d := a.dir.sub(b.dir).unit()
	switch {
	case a.straight && b.straight:
		return // two lines
	case a.straight:
		d = a.dir
	case b.straight:
		d = b.dir.mul(-1)
	}
	if math.IsNaN(d.x) {
		return
	}
	k.through[bestA], k.through[bestB] = d, d.mul(-1)
}

// tie moves the ends of a course to its knots.
func (c *course) tie(m *planar, a *arc, first, last int) {
	if a.closed() {
		return
	}
	n := len(c.joints) - 1
	from, to := &m.knots[a.from], &m.knots[a.to]
	c.joints[0].at, c.joints[0].out = from.at, from.through[first]
	c.joints[n].at, c.joints[n].in = to.at, to.through[last].mul(-1)
	if c.joints[0].out == (vec{}) {
		c.joints[0].out = c.endOf(false).dir
	}
	if c.joints[n].in == (vec{}) {
		c.joints[n].in = c.endOf(true).dir.mul(-1)
	}
	c.jog(0, &c.joints[0], 1)
	c.jog(len(c.spans)-1, &c.joints[len(c.joints)-1], -1)
}

// jogAt is how far before a knot, px, a straight line is left that does not lead
// to it: where a third class shares its pixels the line is not to be told.
const jogAt = 2

// jog lets a straight span that misses its knot run straight on to near the
// knot, and go to it from there.
func (c *course) jog(k int, end *joint, sign float64) {
	s := &c.spans[k]
	if !s.straight || s.u == (vec{}) || fromLine(end.at, s.c, s.u) <= straightOff {
		return
	}
	turn := joint{at: foot(end.at, s.c, s.u).along(s.u, sign*jogAt), sharp: true}
	bit := span{i0: s.i0, i1: s.i0, straight: true}
	if sign > 0 {
		c.joints = slices.Insert(c.joints, 1, turn)
		c.spans = slices.Insert(c.spans, 0, bit)
		return
	}
	c.joints = slices.Insert(c.joints, len(c.joints)-1, turn)
	c.spans = append(c.spans, bit)
}
