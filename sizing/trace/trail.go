package trace

// trail is the places of an arc, moved to the true edge inside the pixels. A
// closed one does not repeat its first place.
type trail struct {
	places
	way    []int32 // which way of the arc each place lies on
	closed bool
	grade  grade
	shared int // pixels shared across the edge, at all places together
}

// Which way an arc runs at a side of a pixel is judged by this many sides
// before and after it: an even number, so that on a slope of 45 degrees the
// upright sides and the level ones both count.
const headReach = 2

// leastAdvance is how far, px, a place must lie ahead of the last one; of a speck
// every place counts.
const leastAdvance = 0.3

// trailOf finds the places of an arc: one for each row or column it passes,
// whichever it crosses more squarely.
func (m *planar) trailOf(a *arc) *trail {
	t := &trail{closed: a.closed()}
	if a.rough != nil {
		t.rough = make([]uint8, 0, len(a.ways))
	}
	x, y := m.g.place(a.start)
	head := newHeading(a)
	for i, w := range a.ways {
		d := int(w)
		dx, dy := head.at(i)
		if a.rough != nil && a.rough[i] == keepSides {
			t.put(vec{float64(x) + float64(stepX[d])/2, float64(y) + float64(stepY[d])/2}, i, keepSides)
		} else if facing(d, dx, dy) {
			m.putEdge(t, a, i, x, y, vec{float64(dx), float64(dy)})
		}
		x, y = x+stepX[d], y+stepY[d]
	}
	m.judge(a, t)
	return t
}

// facing says whether a side walked by way d lies along the arc.
func facing(d, dx, dy int) bool {
	if d == right || d == left {
		return dx*dx >= dy*dy
	}
	return dy*dy >= dx*dx
}

func (t *trail) put(p vec, way int, rough uint8) {
	t.p = append(t.p, p)
	t.way = append(t.way, int32(way))
	if t.rough != nil {
		t.rough = append(t.rough, rough)
	}
}

// putEdge adds the true place of the edge at a side, unless it lies behind.
func (m *planar) putEdge(t *trail, a *arc, i, x, y int, head vec) {
	p, shared := m.edgeAt(a, int(a.ways[i]), x, y)
	t.shared += shared
	if n := len(t.p); n > 0 && len(a.ways) >= leastLoop && p.sub(t.p[n-1]).dot(head.unit()) < leastAdvance && head != (vec{}) {
		return
	}
	var rough uint8
	if a.rough != nil {
		rough = a.rough[i]
	}
	t.put(p, i, rough)
}

// edgeAt returns the true place of the edge at the side walked from the corner
// (x, y) by way d, and how many pixels are shared across it.
func (m *planar) edgeAt(a *arc, d, x, y int) (p vec, shared int) {
	// The pixel to the right of the side, and the way to it.
	px, py := x, y
	switch d {
	case down:
		px--
	case left:
		px, py = px-1, py-1
	case up:
		py--
	}
	to, back := turn(d, 1), turn(d, 3)
	r, n := m.g.inset(px, py, to, a.right, a.left)
	l, k := m.g.inset(px+stepX[back], py+stepY[back], back, a.left, a.right)
	off := r - l
	return vec{
		float64(x) + float64(stepX[d])/2 + float64(off*float64(stepX[to])),
		float64(y) + float64(stepY[d])/2 + float64(off*float64(stepY[to])),
	}, n + k
}

// heading tells how far an arc goes within headReach sides of one.
type heading struct {
	a      *arc
	n      int
	reach  int
	dx, dy int
}

func newHeading(a *arc) *heading {
	h := &heading{a: a, n: len(a.ways), reach: headReach}
	if a.closed() {
		h.reach = min(headReach, (h.n-1)/4)
	}
	for k := -h.reach; k < h.reach; k++ {
		h.add(k, 1)
	}
	return h
}

func (h *heading) add(k, sign int) {
	if k < 0 || k >= h.n {
		if !h.a.closed() {
			return
		}
		k = (k + h.n) % h.n
	}
	d := h.a.ways[k]
	h.dx += sign * stepX[d]
	h.dy += sign * stepY[d]
}

// at must be asked in order.
func (h *heading) at(i int) (dx, dy int) {
	h.add(i+h.reach, 1)
	dx, dy = h.dx, h.dy
	h.add(i-h.reach, -1)
	return dx, dy
}
