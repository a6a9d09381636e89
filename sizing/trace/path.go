package trace

import "math"

// path is a course drawn: lines and cubics, each beginning where the last one
// ended.
type path struct {
	start vec
	segs  []seg
}

// seg is a cubic to a place, or a line.
type seg struct {
	c1, c2, to vec
	line       bool
}

// pen draws courses.
type pen struct {
	fitter
	p     []vec
	off   []float64
	out   path
	worst float64 // the greatest distance of a place from its curve so far, px
}

// draw draws a course.
func (n *pen) draw(c *course) path {
	if w := c.whole; w != nil {
		for _, p := range c.p {
			n.worst = max(n.worst, math.Abs(p.to(w.c)-w.r))
		}
		return w.path()
	}
	n.out = path{start: c.joints[0].at, segs: make([]seg, 0, 2*len(c.spans))}
	for k := range c.spans {
		a, b, s := &c.joints[k], &c.joints[k+1], &c.spans[k]
		if s.straight || s.i1-s.i0 < 1 {
			n.line(c.p[s.i0:s.i1], a.at, b.at)
			continue
		}
		n.curve(c, s, a, b)
	}
	return n.out
}

// cutOff is how far from the ends of a line, px, pixels may cut off a corner.
const cutOff = cornerGap + 0.5

func (n *pen) line(p []vec, a, b vec) {
	n.out.segs = append(n.out.segs, seg{to: b, line: true})
	u, long := b.sub(a).unit(), a.to(b)
	for _, q := range p {
		if t := q.sub(a).dot(u); t > cutOff && t < long-cutOff {
			n.worst = max(n.worst, fromLine(q, a, u))
		}
	}
}

// curve draws a span as cubics that run into each other smoothly, each as long
// as its tolerance lets it be.
func (n *pen) curve(c *course, s *span, a, b *joint) {
	n.load(c, s, a.at, b.at)
	w := trail{places: places{p: n.p}, grade: c.t.grade}
	d0, d1 := a.out, b.in
	if d0 == (vec{}) {
		d0 = w.side(0, 1, 0, c.off, c.t.grade.reaches()).dir
	}
	if d1 == (vec{}) {
		d1 = w.side(len(n.p)-1, -1, 0, c.off, c.t.grade.reaches()).dir
	}
	n.stretch(&w, c.jointReach(), d0, d1)
}

// load takes the places of a span, between its ends, with their tolerances.
func (n *pen) load(c *course, s *span, a, b vec) {
	n.p, n.off = append(n.p[:0], a), append(n.off[:0], c.offAt(s.i0))
	for i := s.i0; i < s.i1; i++ {
		if c.p[i].to(a) < tooNear || c.p[i].to(b) < tooNear {
			continue
		}
		n.p, n.off = append(n.p, c.p[i]), append(n.off, c.offAt(i))
	}
	n.p, n.off = append(n.p, b), append(n.off, c.offAt(s.i1-1))
}

// tooNear is how near to a joint, px, a place says nothing more.
const tooNear = 0.3

// stretch draws the loaded places from a direction to a direction: in one if it
// may be, in two halves, or one as long as may be and then the rest.
func (n *pen) stretch(w *trail, reach float64, d0, d1 vec) {
	from, last := 0, len(n.p)-1
	for {
		if n.try(from, last, d0, d1, true) {
			return
		}
		if last-from < 2 {
			n.out.segs = append(n.out.segs, seg{to: n.p[last], line: true})
			return
		}
		mid := (from + last) / 2
		dm := n.joint(w, mid, reach)
		if n.tryBoth(from, mid, last, d0, dm, d1) {
			return
		}
		to := furthest(from+1, last-1, func(k int) bool {
			return n.try(from, k, d0, n.joint(w, k, reach).dir, false)
		})
		b := n.joint(w, to, reach)
		if !n.try(from, to, d0, b.dir, true) {
			n.out.segs = append(n.out.segs, seg{to: n.p[to], line: true})
		}
		from, d0 = to, b.dir
	}
}

// joint says where and how the curve passes place i: as seen over the longest
// reach that its places bear, for a curve drawn as a polygon shows how it runs
// only over several of its sides.
func (n *pen) joint(w *trail, i int, reach float64) bend {
	for _, longer := range []float64{4, 2} {
		if b := w.both(i, longer*reach); b.off <= n.off[i]*jointOff {
			return b
		}
	}
	return w.both(i, reach)
}

// jointOff is the part of its tolerance that a place may be off where a curve is
// seen over a longer reach.
const jointOff = 0.8

func (n *pen) tryBoth(from, mid, last int, d0 vec, b bend, d1 vec) bool {
	if mid == from || mid == last || !n.try(from, mid, d0, b.dir, false) || !n.try(mid, last, b.dir, d1, false) {
		return false
	}
	return n.try(from, mid, d0, b.dir, true) && n.try(mid, last, b.dir, d1, true)
}

// try fits one cubic to places from..to; keep draws it when it is good enough.
func (n *pen) try(from, to int, d0, d1 vec, keep bool) bool {
	if from == to {
		return false
	}
	c, ok := n.fit(n.p[from:to+1], n.off[from:to+1], d0, d1)
	if ok && keep {
		n.worst = max(n.worst, n.furthest(&c, n.p[from:to+1]))
		n.out.segs = append(n.out.segs, seg{c[1], c[2], c[3], false})
	}
	return ok
}
