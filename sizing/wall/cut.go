package wall

import (
	"math"

	"badgewright/reduce/mask"
)

// cutter parts what lies outside along short straight cuts, run by run.
type cutter struct {
	m    *Measured
	mark []int32 // of each half run: the search that reached it
	used []bool  // of each half run: it is part of a bay that was found
	now  int32
	// The cut: in rows from..from+len(cut)-1, the columns x0..x1-1.
	from int
	cutX [][2]int32
	// What the last successful cut parted.
	side int32
	list []int32
	area float64
	x, y float64 // its middle
	box  [4]float64
}

func newCutter(m *Measured) *cutter {
	return &cutter{m: m, mark: make([]int32, 2*len(m.parts.Runs)), used: make([]bool, 2*len(m.parts.Runs))}
}

// cut parts what lies outside between the two sites of a point. It says whether
// one side does not reach the end of the raster any more.
func (c *cutter) cut(q *mask.RidgePoint) bool {
	c.lay(int(q.AX), int(q.AY), int(q.BX), int(q.BY))
	dx, dy := unitOf(float64(q.BX-q.AX), float64(q.BY-q.AY))
	mx, my := float64(q.AX+q.BX)/2+0.5, float64(q.AY+q.BY)/2+0.5
	var sides [2]search
	for k := range sides {
		c.now++
		s := &sides[k]
		s.mark = c.now
		nx, ny := -dy*float64(1-2*k), dx*float64(1-2*k)
		for step := 1.5; step <= 3 && len(s.queue) == 0; step += 0.5 {
			c.enter(s, floor(mx+float64(step*nx)), floor(my+float64(step*ny)))
		}
		if len(s.queue) == 0 {
			return false
		}
	}
	if sides[0].queue[0] == sides[1].queue[0] {
		return false
	}
	// In turn, so that it takes no longer than the smaller side is large.
	for {
		for k := range sides {
			s := &sides[k]
			switch c.step(s, sides[1-k].mark) {
			case isParted:
				c.keep(s)
				return true
			case isJoined:
				return false
			}
		}
		if sides[0].free && sides[1].free {
			return false
		}
	}
}

// lay notes which pixels a cut takes, from site to site.
func (c *cutter) lay(ax, ay, bx, by int) {
	c.from = min(ay, by)
	c.cutX = make([][2]int32, max(ay, by)-c.from+1)
	n := 2 * max(bx-ax, ax-bx, by-ay, ay-by, 1)
	for k := range n + 1 {
		t := float64(k) / float64(n)
		x, y := int32(math.Round(float64(ax)+float64(t*float64(bx-ax)))), int(math.Round(float64(ay)+float64(t*float64(by-ay))))
		s := &c.cutX[y-c.from]
		if s[1] == 0 {
			*s = [2]int32{x, x + 1}
		}
		*s = [2]int32{min(s[0], x), max(s[1], x+1)}
	}
}

// search is what can be reached from one side of a cut.
type search struct {
	mark  int32
	queue []int32 // half runs
	done  int
	free  bool // it reaches the end of the raster
}

type outcome uint8

const (
	goesOn outcome = iota
	isParted
	isJoined
)

// step looks at one more half run; other is the mark of the other side.
func (c *cutter) step(s *search, other int32) outcome {
	if s.free {
		return goesOn
	}
	if s.done == len(s.queue) {
		return isParted
	}
	h := s.queue[s.done]
	s.done++
	y := c.rowOf(h / 2)
	x0, x1 := c.halfOf(h, y)
	if y == 0 || y == c.m.v.h-1 || x0 == 0 || int(x1) == c.m.v.w {
		s.free = true
		return goesOn
	}
	for _, next := range [2]int{y - 1, y + 1} {
		for k := c.m.runFrom(next, x0); k < c.m.parts.Row[next+1] && c.m.parts.Runs[k].X0 < x1; k++ {
			if c.m.parts.Runs[k].Label != outside {
				continue
			}
			for half := 2 * k; half <= 2*k+1; half++ {
				u, v := c.halfOf(half, next)
				if u >= v || u >= x1 || v <= x0 {
					continue
				}
				switch c.mark[half] {
				case other:
					return isJoined
				case s.mark:
				default:
					c.mark[half] = s.mark
					s.queue = append(s.queue, half)
				}
			}
		}
	}
	return goesOn
}

// enter begins a search at a pixel, if that lies outside and not in the cut.
func (c *cutter) enter(s *search, x, y int) {
	if x < 0 || y < 0 || x >= c.m.v.w || y >= c.m.v.h || c.m.v.at(x, y) != outside {
		return
	}
	if h, ok := c.halfAt(x, y); ok {
		c.mark[h] = s.mark
		s.queue = append(s.queue, h)
	}
}

// halfAt returns the half run at a pixel.
func (c *cutter) halfAt(x, y int) (h int32, ok bool) {
	k := c.m.runFrom(y, int32(x))
	for h = 2 * k; h <= 2*k+1; h++ {
		if u, v := c.halfOf(h, y); u <= int32(x) && int32(x) < v {
			return h, true
		}
	}
	return 0, false
}

// halfOf returns the columns of a half run: a run without a cut is its first
// half, one with a cut is what lies left and right of that.
func (c *cutter) halfOf(h int32, y int) (x0, x1 int32) {
	r := &c.m.parts.Runs[h/2]
	x0, x1 = r.X0, r.X1
	if k := y - c.from; k >= 0 && k < len(c.cutX) && c.cutX[k][0] < x1 && c.cutX[k][1] > x0 {
		if h&1 == 0 {
			return x0, c.cutX[k][0]
		}
		return c.cutX[k][1], x1
	}
	if h&1 == 1 {
		return x0, x0
	}
	return x0, x1
}

// keep measures what a search reached.
func (c *cutter) keep(s *search) {
	c.side, c.list, c.area, c.x, c.y = s.mark, s.queue, 0, 0, 0
	c.box = [4]float64{math.MaxFloat64, math.MaxFloat64, 0, 0}
	for _, h := range s.queue {
		y := c.rowOf(h / 2)
		x0, x1 := c.halfOf(h, y)
		n := float64(x1 - x0)
		c.area, c.x, c.y = c.area+n, c.x+float64(n*float64(x0+x1)/2), c.y+float64(n*(float64(y)+0.5))
		b := &c.box
		*b = [4]float64{min(b[0], float64(x0)), min(b[1], float64(y)), max(b[2], float64(x1)), max(b[3], float64(y+1))}
	}
	c.x, c.y = c.x/c.area, c.y/c.area
}

// reached says whether a pixel is part of what was kept.
func (c *cutter) reached(x, y int) bool {
	if c.m.v.at(x, y) != outside {
		return false
	}
	h, ok := c.halfAt(x, y)
	return ok && c.mark[h] == c.side
}

// take notes what was kept as found.
func (c *cutter) take() {
	for _, h := range c.list {
		c.used[h&^1], c.used[h|1] = true, true
	}
}

// overlaps says whether some of what was kept has been found already, behind a
// narrower opening.
func (c *cutter) overlaps() bool {
	for _, h := range c.list {
		if c.used[h] {
			return true
		}
	}
	return false
}

// taken says whether a pixel is part of what has been found.
func (c *cutter) taken(x, y int) bool { return c.used[2*c.m.runFrom(y, int32(x))] }

// rowOf returns the row of a run.
func (c *cutter) rowOf(run int32) int {
	lo, hi := 0, c.m.v.h
	for lo+1 < hi {
		if mid := (lo + hi) / 2; c.m.parts.Row[mid] <= run {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// runFrom returns the run of a row that holds column x.
func (m *Measured) runFrom(y int, x int32) int32 {
	lo, hi := m.parts.Row[y], m.parts.Row[y+1]-1
	for lo < hi {
		if mid := (lo + hi) / 2; m.parts.Runs[mid].X1 > x {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo
}
