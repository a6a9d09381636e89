package trace

import (
	"math"
	"slices"
)

// clash is a place where arc a crosses arc b, or itself.
type clash struct {
	a, b int32
	at   vec
}

// crosser looks for crossings among paths: curves are walked in short straight
// steps, which are sorted into cells.
type crosser struct {
	steps []stepOf
	cells []cellOf
}

// stepOf is a short straight step of a path.
type stepOf struct {
	p, q vec
	arc  int32
}

// cellOf says that a step passes through a cell.
type cellOf struct {
	cell uint32
	step int32
}

const (
	// stepLength is about how long, px, a step is.
	stepLength = 1.5
	// mostSteps bounds the steps of one curve.
	mostSteps = 400
	// cellSize is the side of a cell, px, as a power of two.
	cellBits = 2
)

// crossings returns every pair of steps that cross, by arcs in order.
func (x *crosser) crossings(paths []path) []clash {
	x.steps, x.cells = x.steps[:0], x.cells[:0]
	for i := range paths {
		x.walk(&paths[i], int32(i))
	}
	for i := range x.steps {
		x.place(int32(i))
	}
	slices.SortFunc(x.cells, func(a, b cellOf) int {
		if a.cell != b.cell {
			return int(int64(a.cell) - int64(b.cell))
		}
		return int(a.step - b.step)
	})
	var found []clash
	for i := 0; i < len(x.cells); {
		j := i + 1
		for j < len(x.cells) && x.cells[j].cell == x.cells[i].cell {
			j++
		}
		found = x.within(found, x.cells[i:j])
		i = j
	}
	return found
}

func (x *crosser) walk(p *path, arc int32) {
	from := p.start
	for k := range p.segs {
		s := &p.segs[k]
		if s.line {
			x.line(from, s.to, arc)
		} else {
			c := cubic{from, s.c1, s.c2, s.to}
			n := stepsOf(&c)
			last := from
			for i := 1; i <= n; i++ {
				q := c.at(float64(i) / float64(n))
				x.steps = append(x.steps, stepOf{last, q, arc})
				last = q
			}
		}
		from = s.to
	}
}

// line adds a line as it is: cutting it up would only round its places.
func (x *crosser) line(p, q vec, arc int32) {
	if p != q {
		x.steps = append(x.steps, stepOf{p, q, arc})
	}
}

func stepsOf(c *cubic) int {
	l := c[0].to(c[1]) + c[1].to(c[2]) + c[2].to(c[3])
	return min(mostSteps, max(2, int(l/stepLength)))
}

// place enters a step in the cells that it passes, one row of cells at a time.
func (x *crosser) place(i int32) {
	s := &x.steps[i]
	p, q := s.p, s.q
	if p.y > q.y {
		p, q = q, p
	}
	y0, y1 := cellAt(p.y), cellAt(q.y)
	for y := y0; y <= y1; y++ {
		a, b := p.x, q.x
		if y0 != y1 {
			k := (q.x - p.x) / (q.y - p.y)
			top, end := float64(y<<cellBits)-cellShift, float64((y+1)<<cellBits)-cellShift
			a = p.x + float64(k*(max(top, p.y)-p.y))
			b = p.x + float64(k*(min(end, q.y)-p.y))
		}
		for c := cellAt(min(a, b)); c <= cellAt(max(a, b)); c++ {
			x.cells = append(x.cells, cellOf{uint32(y)<<16 | uint32(c), i})
		}
	}
}

// cellShift keeps cells from being negative: a place may lie a little off the
// raster.
const cellShift = 64

func cellAt(v float64) int { return max(0, int(v+cellShift)) >> cellBits }

func (x *crosser) within(found []clash, cells []cellOf) []clash {
	for i := range cells {
		a := &x.steps[cells[i].step]
		for _, c := range cells[i+1:] {
			b := &x.steps[c.step]
			if at, ok := cross(a, b); ok {
				found = append(found, clash{min(a.arc, b.arc), max(a.arc, b.arc), at})
			}
		}
	}
	return found
}

// cross says whether two steps cross each other between their ends.
func cross(a, b *stepOf) (at vec, ok bool) {
	if max(a.p.x, a.q.x) < min(b.p.x, b.q.x) || max(b.p.x, b.q.x) < min(a.p.x, a.q.x) {
		return at, false
	}
	u, v, w := a.q.sub(a.p), b.q.sub(b.p), b.p.sub(a.p)
	den := u.cross(v)
	if math.Abs(den) < 1e-12 {
		return at, false
	}
	s, t := w.cross(v)/den, w.cross(u)/den
	if s <= between || t <= between || s >= 1-between || t >= 1-between {
		return at, false
	}
	return a.p.along(u, s), true
}

// between keeps steps that only touch at their ends, to rounding, from crossing.
const between = 1e-6
