package wall

import (
	"math"

	"badgewright/reduce/mask"
)

// thicken finds tau, the local thickness of Hildebrand and Rueegsegger (1997),
// at every point: each point's disc, the widest first, is laid over the
// centreline of its part within it. A disc hardly moved from a wider one adds
// nothing.
func (g *graph) thicken() {
	c := newCovering(g.points)
	done := make([]bool, len(g.points))
	for _, q := range widestFirst(g.points) {
		if !done[q] {
			c.lay(q)
			c.excuse(q, done)
		}
	}
}

// widestFirst returns the order of points by falling width, equals by number.
func widestFirst(points []point) []int32 {
	keys := make([]uint32, len(points))
	for i := range points {
		keys[i] = ^rising(points[i].width)
	}
	return mask.Order(keys)
}

// rising returns a key that rises with a length, which is not negative.
func rising(length float32) uint32 { return math.Float32bits(length) }

// covering finds the points in a disc by square cells, and those no disc has
// covered yet. As the widest discs come first, the first to cover a point gives
// its thickness.
type covering struct {
	points []point
	wide   int32 // cells in a row
	high   int32
	cells  []cell
	list   []listed // by cell
}

// cell has list[begin:end], of which those before free are not covered yet.
type cell struct{ begin, free, end int32 }

type listed struct{ x, y, part, i int32 }

// cellPx is the side of a cell in pixels: about the width of a line, as most
// discs are.
const cellPx = 16

func newCovering(points []point) *covering {
	c := &covering{points: points, list: make([]listed, len(points))}
	for i := range points {
		c.wide, c.high = max(c.wide, points[i].x/cellPx+1), max(c.high, points[i].y/cellPx+1)
	}
	c.cells = make([]cell, c.wide*c.high)
	for i := range points {
		c.cells[points[i].y/cellPx*c.wide+points[i].x/cellPx].end++
	}
	sum := int32(0)
	for k := range c.cells {
		n := c.cells[k].end
		c.cells[k] = cell{begin: sum, free: sum, end: sum + n}
		sum += n
	}
	for i := range points {
		p := &points[i]
		k := &c.cells[p.y/cellPx*c.wide+p.x/cellPx]
		c.list[k.free] = listed{p.x, p.y, p.part, int32(i)}
		k.free++
	}
	return c
}

// lay gives the width of the disc of point i to what lies within it and is not
// covered yet.
func (c *covering) lay(i int32) {
	q := c.points[i]
	r := float64(q.width) / 2
	x0, y0, x1, y1 := c.round(&q, int32(r))
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			if k := &c.cells[y*c.wide+x]; k.free > k.begin {
				c.cover(k, &q, float64(r*r))
			}
		}
	}
}

// cover gives the width of point q to those of a cell whose squared distance
// from it is at most r2.
func (c *covering) cover(k *cell, q *point, r2 float64) {
	for n := k.begin; n < k.free; {
		p := &c.list[n]
		if dx, dy := p.x-q.x, p.y-q.y; p.part != q.part || float64(dx*dx+dy*dy) > r2 {
			n++
			continue
		}
		c.points[p.i].tau = q.width
		k.free--
		c.list[n], c.list[k.free] = c.list[k.free], c.list[n]
	}
}

// hardlyMoved is the share of its radius that a disc may be moved from a wider
// one that has been laid, to be left out.
const hardlyMoved = 1.0 / 16

// excuse marks as done the points whose discs are hardly moved from that of
// point i.
func (c *covering) excuse(i int32, done []bool) {
	q := c.points[i]
	reach := float64(q.width) / 2 * hardlyMoved
	if reach < 1 {
		return
	}
	x0, y0, x1, y1 := c.round(&q, int32(reach))
	for y := y0; y <= y1; y++ {
		for _, p := range c.list[c.cells[y*c.wide+x0].begin:c.cells[y*c.wide+x1].end] {
			if dx, dy := p.x-q.x, p.y-q.y; p.part == q.part && float64(dx*dx+dy*dy) <= float64(reach*reach) {
				done[p.i] = true
			}
		}
	}
}

// round returns the first and last cells, across and down, that reach to within
// n pixels of a point.
func (c *covering) round(q *point, n int32) (x0, y0, x1, y1 int32) {
	x0, y0 = max(q.x-n, 0)/cellPx, max(q.y-n, 0)/cellPx
	return x0, y0, min((q.x+n)/cellPx, c.wide-1), min((q.y+n)/cellPx, c.high-1)
}
