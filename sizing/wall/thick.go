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
	for _, q := range widestFirst(g.points) {
		if k := c.place[q]; !c.points[k].done {
			c.lay(k)
			c.excuse(k)
		}
	}
	for i := range g.points {
		g.points[i].tau = c.points[c.place[i]].tau
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

// covering is the points of a graph, part by part and each part in reading
// order, with what no disc has covered yet. As the widest discs come first,
// the first to cover a point gives its thickness.
type covering struct {
	points []covered
	place  []int32 // of each point of the graph
	free   []int32 // leads to the first point not covered, here or further on
	rows   []int32 // where the rows of the parts begin
	parts  []rowsOf
}

type covered struct {
	x, y       int32
	width, tau float32
	part       int32
	done       bool // its disc need not be laid
}

// rowsOf is a part from row y0 to row y1: row y0 begins at rows[at], and so on
// to what comes after row y1.
type rowsOf struct{ y0, y1, at int32 }

func newCovering(points []point) *covering {
	n := len(points)
	c := &covering{points: make([]covered, n), place: make([]int32, n), free: make([]int32, n+1)}
	keys, parts := make([]uint32, n), int32(0)
	for i := range points {
		keys[i] = uint32(points[i].part)
		parts = max(parts, points[i].part+1)
	}
	for k, i := range mask.Order(keys) {
		p := &points[i]
		c.points[k] = covered{x: p.x, y: p.y, width: p.width, part: p.part}
		c.place[i] = int32(k)
	}
	for k := range c.free {
		c.free[k] = int32(k)
	}
	c.parts = make([]rowsOf, parts)
	for k := 0; k < n; {
		k = c.list(k)
	}
	return c
}

// list notes the rows of the part that begins at point k and returns where the
// next one does.
func (c *covering) list(k int) int {
	first := &c.points[k]
	y := first.y
	part := &c.parts[first.part]
	part.y0, part.at = y, int32(len(c.rows))
	c.rows = append(c.rows, int32(k))
	for ; k < len(c.points) && c.points[k].part == first.part; k++ {
		for ; y < c.points[k].y; y++ {
			c.rows = append(c.rows, int32(k))
		}
	}
	part.y1 = y
	c.rows = append(c.rows, int32(k))
	return k
}

// lay gives the width of the disc of point k to what lies within it and is not
// covered yet.
func (c *covering) lay(k int32) {
	q := c.points[k]
	r := float64(q.width) / 2
	r2 := float64(r * r)
	rows, y, last := c.near(&q, int32(r))
	for i, end := c.next(rows[0]), rows[last-y+1]; i < end; i = c.next(i) {
		p := &c.points[i]
		half := int32(0)
		if dy := float64(p.y - q.y); r2 > float64(dy*dy) {
			half = int32(math.Sqrt(r2 - float64(dy*dy)))
		}
		switch after := rows[p.y-y+1]; {
		case p.x < q.x-half:
			i = c.from(i, after, q.x-half)
		case p.x > q.x+half:
			i = after
		default:
			p.tau = q.width
			i++
			c.free[i-1] = i
		}
	}
}

// near returns the rows y0..y1 of a point's part that lie within n of it, by
// where they begin and what comes after them.
func (c *covering) near(q *covered, n int32) (rows []int32, y0, y1 int32) {
	part := &c.parts[q.part]
	y0, y1 = max(q.y-n, part.y0), min(q.y+n, part.y1)
	return c.rows[part.at+y0-part.y0:], y0, y1
}

// hardlyMoved is the share of its radius that a disc may be moved from a wider
// one that has been laid, to be left out.
const hardlyMoved = 1.0 / 16

// excuse marks the points whose discs are hardly moved from that of point k.
func (c *covering) excuse(k int32) {
	q := c.points[k]
	reach := float64(q.width) / 2 * hardlyMoved
	n := int32(reach)
	if n == 0 {
		return
	}
	rows, y, last := c.near(&q, n)
	for ; y <= last; y++ {
		dy, end := float64(y-q.y), rows[1]
		for i := c.from(rows[0], end, q.x-n); i < end && c.points[i].x <= q.x+n; i++ {
			if dx := float64(c.points[i].x - q.x); float64(dx*dx)+float64(dy*dy) <= float64(reach*reach) {
				c.points[i].done = true
			}
		}
		rows = rows[1:]
	}
}

// next returns the first point not covered, at i or further on.
func (c *covering) next(i int32) int32 {
	for c.free[i] != i {
		c.free[i] = c.free[c.free[i]]
		i = c.free[i]
	}
	return i
}

// from returns the first of points lo..hi-1, of one row, at column x or later.
func (c *covering) from(lo, hi, x int32) int32 {
	for lo < hi {
		if mid := (lo + hi) / 2; c.points[mid].x < x {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}
