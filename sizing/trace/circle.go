package trace

import "math"

// circle is a closed trail that is one.
type circle struct {
	c         vec
	r         float64
	clockwise bool // as seen, with y down
}

// circleThrough fits a circle by least squares (Kasa 1976).
func circleThrough(p []vec) (c circle, ok bool) {
	var mid vec
	for _, q := range p {
		mid = mid.add(q)
	}
	mid = mid.mul(1 / float64(len(p)))
	var xx, xy, yy, xz, yz, z float64
	for _, q := range p {
		q = q.sub(mid)
		l := q.dot(q)
		xx, xy, yy = xx+float64(q.x*q.x), xy+float64(q.x*q.y), yy+float64(q.y*q.y)
		xz, yz, z = xz+float64(q.x*l), yz+float64(q.y*l), z+l
	}
	det := 2 * (float64(xx*yy) - float64(xy*xy))
	if det < 1e-9 {
		return c, false
	}
	o := vec{(float64(xz*yy) - float64(yz*xy)) / det, (float64(yz*xx) - float64(xz*xy)) / det}
	c = circle{c: mid.add(o), r: math.Sqrt(z/float64(len(p)) + o.dot(o))}
	return c, true
}

// speckOff lets small specks be round, px.
const speckOff = 0.35

// round says whether a closed trail is a circle that goes round once, no place
// further off than it may be.
func (t *trail) round(off float64) (c circle, ok bool) {
	if c, ok = circleThrough(t.p); !ok {
		return c, false
	}
	if len(t.p) < leastLoop {
		off = max(off, speckOff)
	}
	for i, q := range t.p {
		if math.Abs(q.to(c.c)-c.r) > max(off, t.unsure[i]) {
			return c, false
		}
	}
	area, last := 0.0, t.p[len(t.p)-1]
	for _, q := range t.p {
		area += last.sub(c.c).cross(q.sub(c.c)) / 2
		last = q
	}
	c.clockwise = area > 0
	full := math.Pi * c.r * c.r
	return c, math.Abs(area) > full/2 && math.Abs(area) < full*1.5
}

// path draws the circle with as few cubics as keep to it within a hundredth of
// a pixel: four, or eight.
func (c *circle) path() path {
	n := 4
	if c.r*quarterOff > circleOff {
		n = 8
	}
	// A cubic over an angle of 2 pi / n has its inner points 4/3 tan(pi / 2n) of
	// the radius from its ends.
	reach := 4.0 / 3 * math.Tan(math.Pi/2/float64(n)) * c.r
	sign := 1.0
	if !c.clockwise {
		sign = -1
	}
	on := func(k int) (p, d vec) {
		e := eighths[k*8/n%8]
		return c.c.add(vec{e.x * c.r, sign * e.y * c.r}), vec{-e.y, sign * e.x}
	}
	start, _ := on(0)
	out := path{start: start}
	for k := range n {
		a, da := on(k)
		b, db := on(k + 1)
		out.segs = append(out.segs, seg{a.along(da, reach), b.along(db, -reach), b, false})
	}
	return out
}

const (
	// quarterOff is by how much a quarter circle drawn as one cubic is off, as a
	// part of the radius.
	quarterOff = 2.7e-4
	circleOff  = 0.01
)

// eighths are the directions of the eight parts of a circle.
var eighths = [8]vec{{1, 0}, {math.Sqrt2 / 2, math.Sqrt2 / 2}, {0, 1}, {-math.Sqrt2 / 2, math.Sqrt2 / 2}, {-1, 0}, {-math.Sqrt2 / 2, -math.Sqrt2 / 2}, {0, -1}, {math.Sqrt2 / 2, -math.Sqrt2 / 2}}
