package wall

import (
	"math"

	"badgewright/reduce/mask"
)

// extent is the reach of a connected piece of centreline.
type extent struct {
	x0, y0, x1, y1 int32
	bad            float32 // limit at which it became a finding, or never
	hard           float32 // limit at which it became more than a fading end, or never
	n              int32
	sum            float32 // of tau
	least          float32 // tau
	tip            float32 // least tau at a free end
}

var never = float32(math.Inf(1))

// lesser and greater are min and max of what are numbers: in WebAssembly the
// built-in ones are calls that ask.
func lesser[T float32 | float64](a, b T) T {
	if b < a {
		return b
	}
	return a
}

func greater[T float32 | float64](a, b T) T {
	if b > a {
		return b
	}
	return a
}

// reach is how far apart the ends of a piece lie, in pixels.
func (e *extent) reach() float64 {
	dx, dy := float64(e.x1-e.x0), float64(e.y1-e.y0)
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

// spare is how much longer than the limit, in pixels, a piece must be before it
// is more than the rounding of a corner: the centreline into a corner is known
// to a pixel.
const spare = 1

// grainPx is the length in pixels up to which what no disc covers is grain of
// the raster, whatever the limit.
const grainPx = 3

// fades says whether a piece runs out to a point: its thinnest place is a free
// end and it widens from there, as a wedge does, whose mean width is half its
// greatest; a rounded point has up to three quarters. A pixel is allowed for the
// raster. What is very long for its width is a hair, whatever its end is like.
func (e *extent) fades(limit float32) bool {
	return e.tip <= e.least+1 && e.least <= 0.4*limit+1 && e.sum/float32(e.n) <= 0.75*limit+0.5 &&
		e.reach() < hairLimits*float64(limit)
}

// hairLimits is how many limits long a piece is at least that is no point: a
// wedge of less than 7 degrees.
const hairLimits = 8

// grow lets the limit rise from 0: points join as it passes their thickness,
// pieces join as they touch, and a piece longer than the limit is a finding
// from then on. So what fails at a limit fails at every greater one.
func (g *graph) grow() {
	keys := make([]uint32, len(g.points))
	for i := range keys {
		keys[i] = rising(g.points[i].tau)
	}
	order := mask.Order(keys)
	t := newTree(len(g.points))
	for _, i := range order {
		t.add(g, i)
	}
	t.whole(g, order)
	for i := range g.points {
		g.points[i].bad, g.points[i].hard = t.badOf(int32(i), g)
	}
}

// tree is a union of pieces that remembers when each came to be bad.
type tree struct {
	parent []int32
	piece  []extent
	// since is the limit at which a node was joined to its parent.
	since []float32
}

func newTree(n int) *tree {
	t := &tree{parent: make([]int32, n), piece: make([]extent, n), since: make([]float32, n)}
	for i := range t.parent {
		t.parent[i] = -1
		t.since[i] = never
	}
	return t
}

// root follows parents; paths stay short because pieces join by size of box.
func (t *tree) root(i int32) int32 {
	for t.parent[i] != i {
		i = t.parent[i]
	}
	return i
}

func (t *tree) add(g *graph, i int32) {
	p := &g.points[i]
	t.parent[i] = i
	t.piece[i] = extent{x0: p.x, y0: p.y, x1: p.x, y1: p.y, bad: never, hard: never, n: 1, sum: p.tau, least: p.tau, tip: never}
	if g.isTip(i) {
		t.piece[i].tip = p.tau
	}
	for _, n := range g.of(i) {
		if t.parent[n] >= 0 && g.points[n].group == p.group {
			t.join(t.root(i), t.root(n), p.tau)
		}
	}
	r := &t.piece[t.root(i)]
	if r.hard == never && r.reach() >= greater(float64(p.tau), grainPx)+spare {
		r.bad = lesser(r.bad, p.tau)
		if !r.fades(p.tau) {
			r.hard = p.tau
		}
	}
}

// whole judges what is the widest piece of its part: past its greatest width
// it is no end of something wider, however much it looks like a point.
func (t *tree) whole(g *graph, order []int32) {
	parts := int32(0)
	for i := range g.points {
		parts = max(parts, g.points[i].part+1)
	}
	judged := make([]bool, parts)
	for k := len(order) - 1; k >= 0; k-- {
		p := &g.points[order[k]]
		if judged[p.part] {
			continue
		}
		judged[p.part] = true
		r := &t.piece[t.root(order[k])]
		if r.reach() >= float64(p.tau)+spare {
			r.bad, r.hard = lesser(r.bad, p.tau), lesser(r.hard, p.tau)
		}
	}
}

func (t *tree) join(a, b int32, at float32) {
	if a == b {
		return
	}
	pa, pb := &t.piece[a], &t.piece[b]
	if pa.size() < pb.size() {
		a, b, pa, pb = b, a, pb, pa
	}
	pa.x0, pa.y0 = min(pa.x0, pb.x0), min(pa.y0, pb.y0)
	pa.x1, pa.y1 = max(pa.x1, pb.x1), max(pa.y1, pb.y1)
	pa.n, pa.sum = pa.n+pb.n, pa.sum+pb.sum
	pa.least, pa.tip = lesser(pa.least, pb.least), lesser(pa.tip, pb.tip)
	if pb.bad < never && pa.bad == never {
		pa.bad = at
	}
	if pb.hard < never && pa.hard == never {
		pa.hard = at
	}
	t.parent[b], t.since[b] = a, at
}

func (e *extent) size() int32 { return (e.x1 - e.x0) + (e.y1 - e.y0) }

// badOf returns the limits from which a point's piece is a finding, and from
// which it is more than a fading end: the first on its way to the root at which
// its piece is.
func (t *tree) badOf(i int32, g *graph) (bad, hard float32) {
	bad, hard = never, never
	joined := g.points[i].tau
	for {
		bad = lesser(bad, greater(joined, t.piece[i].bad))
		hard = lesser(hard, greater(joined, t.piece[i].hard))
		if t.parent[i] == i {
			return bad, hard
		}
		joined = greater(joined, t.since[i])
		i = t.parent[i]
	}
}

// least returns the limit above which something of the group first fails to hold.
func (g *graph) least(group uint8) float32 {
	least := never
	for i := range g.points {
		if p := &g.points[i]; p.group == group {
			least = lesser(least, p.hard)
		}
	}
	return least
}
