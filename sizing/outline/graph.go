package outline

import (
	"slices"

	"badgewright/reduce/mask"
)

// node is one pixel of the middle line of the silhouette.
type node struct {
	x, y  int32
	width float64 // px, between the two nearest edges
	// sideA and sideB are the holes the two edges belong to, -1 for the outline.
	sideA, sideB int32
	part         int32
	// across is true where the two edges lie on either side, and the width is that
	// of a section; on the ways up it is only that of the largest disc.
	across bool
}

// graph is the middle line of every part: the centrelines of what has two
// sides, and the ways from where they end up to the middles of what is wider.
// It is one piece in each part: between two wide places the way across the
// narrowest one has two sides and is a centreline, and from there the distance
// to the edge only grows.
type graph struct {
	nodes []node
	next  [][]int32
	index []int32 // of each pixel, 1 + its node, 0 for none
	w     int
}

func (m *Measured) newGraph() {
	v := m.v
	skip := &[256]bool{outside: true}
	ridge := mask.Ridge(v.in, m.comps, skip)
	field := mask.Others(v.in, v.w, v.h, skip)
	g := &graph{index: make([]int32, len(v.in)), w: v.w}
	for i := range ridge {
		m.addRidge(g, &ridge[i])
	}
	g.next = make([][]int32, len(g.nodes))
	g.join(v.h)
	m.g = g
	m.climb(field)
	m.addTops(field)
}

// addTops gives each part that has no line, as a square has none, its middle.
func (m *Measured) addTops(f *mask.Field) {
	g := m.g
	lined := make([]bool, len(m.parts))
	for i := range g.nodes {
		if k := m.partOf[g.nodes[i].part]; k >= 0 {
			lined[k] = true
		}
	}
	for k := range m.parts {
		if lined[k] {
			continue
		}
		p := &m.parts[k]
		best, bx, by := int32(0), 0, 0
		for y := int(p.Y0); y < int(p.Y1); y++ {
			for _, r := range m.comps.Runs[m.comps.Row[y]:m.comps.Row[y+1]] {
				for x := int(r.X0); r.Comp == p.comp && x < int(r.X1); x++ {
					if d := f.D2[y*f.W+x]; d > best {
						best, bx, by = d, x, y
					}
				}
			}
		}
		m.addPlain(bx, by, p.comp, f)
	}
}

func (m *Measured) addRidge(g *graph, r *mask.RidgePoint) {
	x, y := int(r.X), int(r.Y)
	a := m.v.distance(x, y, int(r.AX), int(r.AY))
	b := m.v.distance(x, y, int(r.BX), int(r.BY))
	if m.v.mixed(int(r.AX), int(r.AY)) && m.v.mixed(int(r.BX), int(r.BY)) {
		m.soft++
	}
	g.nodes = append(g.nodes, node{
		x: r.X, y: r.Y, width: a + b, across: true, part: m.comps.At(x, y),
		sideA: m.holeAt(int(r.AX), int(r.AY)), sideB: m.holeAt(int(r.BX), int(r.BY)),
	})
	g.index[y*g.w+x] = int32(len(g.nodes))
}

// ring are the pixels round one: sides at even places, corners between them.
var ring = [8][2]int{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}

// join makes neighbours of nodes that touch; through a corner only where no
// side leads there, so that lengths add up.
func (g *graph) join(h int) {
	for i := range g.nodes {
		n := &g.nodes[i]
		var at [8]int32
		for k, d := range ring {
			at[k] = g.at(int(n.x)+d[0], int(n.y)+d[1], h)
		}
		for k := range ring {
			if at[k] < 0 || k&1 == 1 && (at[k-1] >= 0 || at[(k+1)&7] >= 0) {
				continue
			}
			g.next[i] = append(g.next[i], at[k])
		}
	}
}

func (g *graph) at(x, y, h int) int32 {
	if x < 0 || y < 0 || x >= g.w || y >= h {
		return -1
	}
	return g.index[y*g.w+x] - 1
}

// climb goes on from every end of a centreline to where the distance to the
// edge is greatest, or to what is in the way. At the end of a taper that is the
// line itself, and nothing is added.
func (m *Measured) climb(f *mask.Field) {
	line := len(m.g.nodes)
	var tops []int32
	for i := 0; i < line; i++ {
		if len(m.g.next[i]) <= 1 {
			if top := m.climbFrom(int32(i), f); top >= 0 {
				tops = append(tops, top)
			}
		}
	}
	for _, top := range tops {
		m.rest(top)
	}
}

// climbFrom adds the way up from a node and returns the node at the top, -1
// where the way meets the line. One that only goes round a corner of the line
// it started from is left out.
func (m *Measured) climbFrom(from int32, f *mask.Field) (top int32) {
	g := m.g
	x, y := int(g.nodes[from].x), int(g.nodes[from].y)
	var way [][2]int
	meets := int32(-1)
	for {
		nx, ny, ok := uphill(f, x, y, m.v)
		if !ok {
			break
		}
		x, y = nx, ny
		if meets = g.at(x, y, m.v.h); meets >= 0 {
			break
		}
		way = append(way, [2]int{x, y})
	}
	if meets >= 0 && len(way) < nearTop && g.close(from, meets) {
		return -1
	}
	last := from
	for _, p := range way {
		last = m.addStep(last, p, f)
	}
	if meets < 0 {
		return last
	}
	g.link(last, meets)
	return -1
}

// addStep adds a node to a way up. The edge is nearer on the middle line than
// anywhere beside it, so twice the distance is the width.
func (m *Measured) addStep(last int32, p [2]int, f *mask.Field) int32 {
	g := m.g
	k := m.addPlain(p[0], p[1], g.nodes[last].part, f)
	g.link(last, k)
	return k
}

// addPlain adds a node that is as wide as twice its distance from the edge.
func (m *Measured) addPlain(x, y int, part int32, f *mask.Field) int32 {
	g := m.g
	sx, sy := f.Site(x, y)
	side := m.holeAt(sx, sy)
	g.nodes = append(g.nodes, node{
		x: int32(x), y: int32(y), part: part, width: 2 * m.v.distance(x, y, sx, sy), sideA: side, sideB: side,
	})
	g.next = append(g.next, nil)
	g.index[y*g.w+x] = int32(len(g.nodes))
	return int32(len(g.nodes) - 1)
}

// uphill returns the neighbour at which the distance to the edge grows most for
// the way there; ok is false at a top.
func uphill(f *mask.Field, x, y int, v *silhouette) (nx, ny int, ok bool) {
	here := root(f.D2[y*f.W+x])
	best := 0.0
	for k, d := range ring {
		px, py := x+d[0], y+d[1]
		if v.at(px, py) != solid {
			continue
		}
		rise := root(f.D2[py*f.W+px]) - here
		if k&1 == 1 {
			rise *= invRoot2
		}
		if rise > best {
			best, nx, ny, ok = rise, px, py, true
		}
	}
	return nx, ny, ok
}

const invRoot2 = 0.7071067811865476

func root(d2 int32) float64 { return length(float64(d2), 0) }

// rest joins a way that has come to a top to the middle line round that top: the
// grain of the raster may leave tops a few pixels apart.
func (m *Measured) rest(last int32) {
	g := m.g
	x, y := int(g.nodes[last].x), int(g.nodes[last].y)
	best, pick := (nearTop+1)*(nearTop+1), int32(-1)
	for dy := -nearTop; dy <= nearTop; dy++ {
		for dx := -nearTop; dx <= nearTop; dx++ {
			k := g.at(x+dx, y+dy, m.v.h)
			if d := dx*dx + dy*dy; k >= 0 && d < best && !g.close(last, k) && g.nodes[k].part == g.nodes[last].part {
				best, pick = d, k
			}
		}
	}
	if pick >= 0 {
		g.link(last, pick)
	}
}

// nearTop is how far from a top the middle line is looked for, in pixels.
const nearTop = 6

// fewSteps is how far along the line counts as the same place.
const fewSteps = 3 * nearTop

// close says whether a few steps lead from one node to another.
func (g *graph) close(i, k int32) bool {
	at, steps := []int32{i}, []int{0}
	for n := 0; n < len(at); n++ {
		if at[n] == k {
			return true
		}
		if steps[n] == fewSteps {
			continue
		}
		for _, a := range g.next[at[n]] {
			if !slices.Contains(at, a) {
				at, steps = append(at, a), append(steps, steps[n]+1)
			}
		}
	}
	return false
}

func (g *graph) link(a, b int32) {
	if a == b {
		return
	}
	for _, k := range g.next[a] {
		if k == b {
			return
		}
	}
	g.next[a] = append(g.next[a], b)
	g.next[b] = append(g.next[b], a)
}

// Steps along a chain of pixels, weighted so that a straight line of any
// direction has its true length on average (Kulpa 1977).
const (
	sideStep   = 0.948
	cornerStep = 1.343
)

// step returns how far apart two neighbours are, in pixels.
func (g *graph) step(a, b int32) float64 {
	p, q := &g.nodes[a], &g.nodes[b]
	switch dx, dy := p.x-q.x, p.y-q.y; dx*dx + dy*dy {
	case 1:
		return sideStep
	case 2:
		return cornerStep
	default:
		return length(float64(dx), float64(dy))
	}
}
