package trace

import "math"

// bend is a parabola laid through the places of a trail on one side of one of
// them, or on both: where it passes there, how it runs there, and how well it
// fits.
type bend struct {
	at, dir vec     // dir is a unit vector, the way the trail goes
	off     float64 // the greatest distance of a place from it, px
	turn    float64 // how far it turns over its reach, radians (small ones)
	n       int
}

// window is a few places of a trail with their distance along it from one.
type window struct {
	p [windowMost]vec
	s [windowMost]float64
	n int
}

// windowMost is the most places a bend is laid through.
const windowMost = 48

// at returns the place of an index that may lie past the ends; ok is false
// when there is none.
func (t *trail) at(i int) (p vec, ok bool) {
	n := len(t.p)
	if i < 0 || i >= n {
		if !t.closed {
			return vec{}, false
		}
		i = ((i % n) + n) % n
	}
	return t.p[i], true
}

// collect fills the window with the places that lie between gap and gap+reach
// along the trail from place i, forward (step 1) or backward (-1).
func (w *window) collect(t *trail, i, step int, gap, reach float64) {
	last, _ := t.at(i)
	s := 0.0
	for k := 1; k < len(t.p) && w.n < windowMost; k++ {
		p, ok := t.at(i + k*step)
		if !ok {
			return
		}
		s += last.to(p)
		last = p
		if s > gap+reach {
			return
		}
		if s >= gap {
			w.put(p, float64(step)*s)
		}
	}
}

// put takes a place in while there is room.
func (w *window) put(p vec, s float64) {
	if w.n == len(w.p) {
		return
	}
	w.p[w.n], w.s[w.n] = p, s
	w.n++
}

// linearBelow is the number of places from which a parabola is fitted and not
// a line.
const linearBelow = 4

// fit lays a parabola by least squares; it passes "at" at distance 0.
func (w *window) fit() bend {
	b := bend{n: w.n}
	if w.n == 0 {
		return b
	}
	o := w.p[0]
	var s1, s2, s3, s4 float64
	var v0, v1, v2 vec
	for k := range w.n {
		s, p := w.s[k], w.p[k].sub(o)
		q := float64(s * s)
		s1, s2, s3, s4 = s1+s, s2+q, s3+float64(q*s), s4+float64(q*q)
		v0, v1, v2 = v0.add(p), v1.along(p, s), v2.along(p, q)
	}
	n := float64(w.n)
	var c0, c1, c2 vec
	if w.n < linearBelow {
		c0, c1 = solve2(n, s1, s2, v0, v1)
	} else {
		c0, c1, c2 = solve3(n, s1, s2, s3, s4, v0, v1, v2)
	}
	b.at, b.dir = o.add(c0), c1.unit()
	far := w.s[w.n-1]
	b.turn = math.Abs(b.dir.cross(c1.along(c2, 2*far).unit()))
	for k := range w.n {
		s := w.s[k]
		q := c0.along(c1, s).along(c2, float64(s*s))
		b.off = max(b.off, math.Abs(w.p[k].sub(o).sub(q).cross(c1.along(c2, 2*s).unit())))
	}
	return b
}

// solve2 solves the normal equations of a line.
func solve2(n, s1, s2 float64, v0, v1 vec) (c0, c1 vec) {
	det := float64(n*s2) - float64(s1*s1)
	if math.Abs(det) < 1e-12 {
		return v0.mul(1 / n), vec{}
	}
	c0 = v0.mul(s2).sub(v1.mul(s1)).mul(1 / det)
	c1 = v1.mul(n).sub(v0.mul(s1)).mul(1 / det)
	return c0, c1
}

// solve3 solves the normal equations of a parabola.
func solve3(n, s1, s2, s3, s4 float64, v0, v1, v2 vec) (c0, c1, c2 vec) {
	a00 := float64(s2*s4) - float64(s3*s3)
	a01 := float64(s2*s3) - float64(s1*s4)
	a02 := float64(s1*s3) - float64(s2*s2)
	det := float64(n*a00) + float64(s1*a01) + float64(s2*a02)
	if math.Abs(det) < 1e-9 {
		c0, c1 = solve2(n, s1, s2, v0, v1)
		return c0, c1, vec{}
	}
	a11 := float64(n*s4) - float64(s2*s2)
	a12 := float64(s1*s2) - float64(n*s3)
	a22 := float64(n*s2) - float64(s1*s1)
	k := 1 / det
	c0 = v0.mul(a00).along(v1, a01).along(v2, a02).mul(k)
	c1 = v0.mul(a01).along(v1, a11).along(v2, a12).mul(k)
	c2 = v0.mul(a02).along(v1, a12).along(v2, a22).mul(k)
	return c0, c1, c2
}

// side lays a bend on one side of place i, leaving out the places nearer than
// gap: the longest reach whose places fit it within off, else the shortest.
func (t *trail) side(i, step int, gap, off float64, reaches []float64) bend {
	var best bend
	for k, reach := range reaches {
		var w window
		w.collect(t, i, step, gap, reach)
		b := w.fit()
		if k > 0 && best.n >= 3 && (b.off > off || b.n == best.n) {
			break
		}
		best = b
	}
	return best
}

// both lays a bend on both sides of place i.
func (t *trail) both(i int, reach float64) bend {
	w := t.about(i, reach, true)
	return w.fit()
}

// about returns the places within reach on both sides of place i, with itself
// or without.
func (t *trail) about(i int, reach float64, itself bool) (w window) {
	var back window
	back.collect(t, i, -1, 0, reach)
	for k := back.n - 1; k >= 0; k-- {
		w.put(back.p[k], back.s[k])
	}
	if itself {
		w.put(t.p[i], 0)
	}
	w.collect(t, i, 1, 0, reach)
	return w
}
