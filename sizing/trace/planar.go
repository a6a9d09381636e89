package trace

import "encoding/binary"

// planar is the map of a grid: arcs between junctions.
type planar struct {
	g     *grid
	arcs  []arc
	knots []knot
	at    map[int]int32 // knot at a corner; looked up, never walked over
	seen  []uint8       // by corner: which sides were walked, and knots
	ways  []uint8       // of all arcs, one after the other
}

// arc is a border along which two classes meet. It runs between two knots, or
// is closed and has none (-1).
type arc struct {
	left, right uint8
	from, to    int32
	start       int     // corner
	ways        []uint8 // from corner to corner
	// area is the integral of x dy along the sides of the pixels, px2.
	area int
	// rough marks, by way, where a curve came too near another: 1 fit closer,
	// 2 keep to the sides of the pixels. It is nil while there is none.
	rough []uint8
}

func (a *arc) closed() bool { return a.from < 0 }

// knot is a corner where three or more arcs end.
type knot struct {
	corner int
	around [4]uint8
	// out holds, by way, the half-arc that leaves there: 2*arc, and 1 more when
	// the arc is walked backward; -1 for none.
	out   [4]int32
	rough bool // stays at its corner
	at    vec
	// through holds, by way, the direction in which the half-arc leaves when it
	// goes on smoothly on the other side; zero when it does not.
	through [4]vec
}

// The marks of a corner.
const (
	sideRight = 1 << iota // the side from it to the right was walked
	sideDown
	isKnot
)

// newPlanar reads a grid.
func newPlanar(g *grid) *planar {
	m := &planar{g: g, at: map[int]int32{}, seen: make([]uint8, len(g.class))}
	m.scan(m.knotAt)
	for k := range m.knots {
		for d := range 4 {
			m.fromKnot(int32(k), d)
		}
	}
	m.scan(m.loopAt)
	return m
}

// scan visits every corner whose pixels are not all alike, eight at a time
// where they are.
func (m *planar) scan(visit func(corner int)) {
	c, stride := m.g.class, m.g.stride
	end := len(c) - stride - 1
	for p := 0; p < end; p++ {
		if p+9+stride < len(c) {
			a := binary.LittleEndian.Uint64(c[p:])
			if a == binary.LittleEndian.Uint64(c[p+1:]) && a == binary.LittleEndian.Uint64(c[p+stride:]) {
				p += 6 // the last of the eight does not know its lower right
				continue
			}
		}
		if p%stride == stride-1 {
			continue // no corner: the next pixel lies on the next row
		}
		if a := c[p]; a != c[p+1] || a != c[p+stride] || a != c[p+stride+1] {
			visit(p)
		}
	}
}

func (m *planar) knotAt(corner int) {
	q := m.g.around(corner)
	n := 0
	for d := range 4 {
		if q[d] != q[turn(d, 1)] {
			n++
		}
	}
	if n < 3 || n == 4 && bridge(q) >= 0 {
		return
	}
	m.at[corner] = int32(len(m.knots))
	m.knots = append(m.knots, knot{corner: corner, around: q, out: [4]int32{-1, -1, -1, -1}})
	m.seen[corner] |= isKnot
}

// bridge says which two pixels that touch only by a corner are one piece:
// those at 0 and 2 of the four or those at 1 and 3; -1 for neither. Metal
// always is (so that thin lines hold together), and of two classes that cross,
// one has to be: metal, else what is solid, else the lower label.
func bridge(q [4]uint8) int {
	first, second := q[0] == q[2], q[1] == q[3]
	switch {
	case first && second:
		if rank(q[0]) < rank(q[1]) {
			return 0
		}
		return 1
	case first && q[0] == metal:
		return 0
	case second && q[1] == metal:
		return 1
	}
	return -1
}

// rank puts metal first and void last.
func rank(class uint8) int {
	if class == metal {
		return -1
	}
	return int(class)
}

// next returns the way on from a corner that was reached by way d; -1 at a knot.
func (m *planar) next(corner, d int) int {
	if m.seen[corner]&isKnot != 0 {
		return -1
	}
	q := m.g.around(corner)
	back := turn(d, 2)
	if n := bridgeOf(q); n >= 0 {
		// Paths go round the two pixels that are not one piece.
		if back&1 == n {
			return turn(back, 1)
		}
		return turn(back, 3)
	}
	for k := 1; k < 4; k++ {
		if o := turn(back, k); q[o] != q[turn(o, 1)] {
			return o
		}
	}
	return back // cannot be: a side never ends alone
}

// bridgeOf is bridge where all four sides of a corner are borders, else -1.
func bridgeOf(q [4]uint8) int {
	for d := range 4 {
		if q[d] == q[turn(d, 1)] {
			return -1
		}
	}
	return bridge(q)
}

// walked says whether the side from a corner was walked, and marks it.
func (m *planar) walked(corner, d int) bool {
	bit := uint8(sideRight)
	switch d {
	case down:
		bit = sideDown
	case left:
		corner--
	case up:
		corner, bit = corner-m.g.stride, sideDown
	}
	was := m.seen[corner]&bit != 0
	m.seen[corner] |= bit
	return was
}

func (m *planar) fromKnot(k int32, d int) {
	kn := &m.knots[k]
	if kn.around[d] == kn.around[turn(d, 1)] || m.walked(kn.corner, d) {
		return
	}
	a := arc{left: kn.around[d], right: kn.around[turn(d, 1)], from: k, start: kn.corner}
	n := int32(len(m.arcs))
	kn.out[d] = 2 * n
	corner, last := m.walk(&a, d)
	a.to = m.at[corner]
	m.knots[a.to].out[turn(last, 2)] = 2*n + 1
	m.arcs = append(m.arcs, a)
}

// loopAt begins a closed arc at a corner where none came by yet. The first one
// in reading order begins to the right: what it has there lies below it.
func (m *planar) loopAt(corner int) {
	q := m.g.around(corner)
	if q[right] == q[down] || m.seen[corner]&sideRight != 0 {
		return
	}
	m.walked(corner, right)
	a := arc{left: q[right], right: q[down], from: -1, to: -1, start: corner}
	m.walk(&a, right)
	m.arcs = append(m.arcs, a)
}

// walk follows an arc to the knot at its end, or round to where it began.
func (m *planar) walk(a *arc, d int) (corner, last int) {
	from := len(m.ways)
	corner = a.start
	x := corner % m.g.stride
	for {
		m.ways = append(m.ways, uint8(d))
		corner += m.g.step(d)
		x += stepX[d]
		a.area += x * stepY[d]
		last = d
		if d = m.next(corner, d); d < 0 || m.walked(corner, d) {
			break
		}
	}
	a.ways = m.ways[from:len(m.ways):len(m.ways)]
	return corner, last
}
