package trace

import "slices"

// Side is one use of an arc by a face: forward, or backward.
type Side struct {
	Arc  int
	Back bool
}

// Loop is a closed border of a face, which lies to its right hand: seen with y
// down, the outer border of an area goes round clockwise, a hole against it.
type Loop []Side

// Area is one connected piece of a face: its outer border, then its holes.
type Area []Loop

// loops returns the borders of everything whose class is in the set.
func (m *planar) loops(in *[256]bool) []Loop {
	used := make([]uint8, len(m.arcs))
	var all []Loop
	for i := range m.arcs {
		a := &m.arcs[i]
		for back := range 2 {
			h := int32(2*i + back)
			if used[i]&(1<<back) == 0 && m.borders(h, in) {
				all = append(all, m.follow(h, in, used))
			}
		}
		_ = a
	}
	return all
}

// borders says whether what lies right of a half-arc is in the set, and what
// lies left is not.
func (m *planar) borders(h int32, in *[256]bool) bool {
	a := &m.arcs[h>>1]
	l, r := a.left, a.right
	if h&1 == 1 {
		l, r = r, l
	}
	return in[r] && !in[l]
}

// follow walks a border from one of its half-arcs until it comes round.
func (m *planar) follow(first int32, in *[256]bool, used []uint8) Loop {
	var l Loop
	for h := first; ; {
		used[h>>1] |= 1 << (h & 1)
		l = append(l, Side{int(h >> 1), h&1 == 1})
		a := &m.arcs[h>>1]
		if a.closed() {
			return l
		}
		if h = m.onward(h, in); h == first {
			return l
		}
	}
}

// onward returns the half-arc by which a border goes on from the end of one.
func (m *planar) onward(h int32, in *[256]bool) int32 {
	a := &m.arcs[h>>1]
	k, back := a.to, turn(int(a.ways[len(a.ways)-1]), 2)
	if h&1 == 1 {
		k, back = a.from, int(a.ways[0])
	}
	kn := &m.knots[k]
	// Pixel `back` of the four lies right of the half-arc that arrives; go round
	// the knot through what is in the set, to its far side.
	d := turn(back, 3)
	for in[kn.around[d]] && d != back {
		d = turn(d, 3)
	}
	return kn.out[d]
}

// areaOf returns the area within a loop, px2, along the sides of the pixels:
// negative for a hole.
func (m *planar) areaOf(l Loop) int {
	sum := 0
	for _, s := range l {
		if s.Back {
			sum -= m.arcs[s.Arc].area
		} else {
			sum += m.arcs[s.Arc].area
		}
	}
	return sum
}

// areas puts holes to the outer border they lie in. Holes that lie in none, as
// those of the boundless outside, are dropped.
func (m *planar) areas(in *[256]bool) []Area {
	loops := m.loops(in)
	at := make([]int, len(loops)) // index of the area
	var all []Area
	var holes []int
	for i, l := range loops {
		at[i] = -1
		if m.areaOf(l) > 0 {
			at[i] = len(all)
			all = append(all, Area{l})
		} else {
			holes = append(holes, i)
		}
	}
	if len(holes) == 0 {
		return all
	}
	n := m.newNeighbours(loops)
	for _, i := range holes {
		if k := n.outer(i, at); k >= 0 {
			all[k] = append(all[k], loops[i])
		}
	}
	return all
}

// neighbours finds which loop lies left of another: the upright sides of all,
// row by row.
type neighbours struct {
	row  []int32 // first of each row
	side []upright
	top  []upright // of each loop, the leftmost of its highest sides, row above
}

type upright struct{ x, loop int32 }

func (m *planar) newNeighbours(loops []Loop) *neighbours {
	n := &neighbours{row: make([]int32, m.g.h+3), top: make([]upright, len(loops))}
	highest := make([]int32, len(loops))
	for i := range highest {
		highest[i] = int32(m.g.h) + 2
	}
	m.sides(loops, func(loop, x, y, d int) {
		if d == down || d == up {
			n.row[y+1]++
			return
		}
		if y32 := int32(y); y32 < highest[loop] || y32 == highest[loop] && int32(x) < n.top[loop].x {
			highest[loop], n.top[loop] = y32, upright{int32(x), y32 - 1}
		}
	})
	for y := 1; y < len(n.row); y++ {
		n.row[y] += n.row[y-1]
	}
	n.side = make([]upright, n.row[len(n.row)-1])
	next := slices.Clone(n.row)
	m.sides(loops, func(loop, x, y, d int) {
		if d == down || d == up {
			n.side[next[y]] = upright{int32(x), int32(loop)}
			next[y]++
		}
	})
	for y := range len(n.row) - 1 {
		slices.SortFunc(n.side[n.row[y]:n.row[y+1]], func(a, b upright) int {
			if a.x != b.x {
				return int(a.x - b.x)
			}
			return int(a.loop - b.loop)
		})
	}
	return n
}

// sides visits every side of every loop: (x, y) is its upper or left end.
func (m *planar) sides(loops []Loop, visit func(loop, x, y, d int)) {
	for i, l := range loops {
		for _, s := range l {
			a := &m.arcs[s.Arc]
			x, y := m.g.place(a.start)
			for _, w := range a.ways {
				visit(i, min(x, x+stepX[w]), min(y, y+stepY[w]), int(w))
				x, y = x+stepX[w], y+stepY[w]
			}
		}
	}
}

// outer returns the area that hole i lies in, or -1: the pixel above its highest
// side is in the same area, and so is whatever border lies left of that pixel.
func (n *neighbours) outer(i int, at []int) int {
	if at[i] >= 0 || at[i] == beyond {
		return at[i]
	}
	y, x := n.top[i].loop, n.top[i].x
	if y < 0 {
		return -1
	}
	row := n.side[n.row[y]:n.row[y+1]]
	k, found := slices.BinarySearchFunc(row, x, func(u upright, x int32) int { return int(u.x - x) })
	for found && k < len(row) && row[k].x == x {
		k++
	}
	if k == 0 {
		at[i] = beyond
		return beyond
	}
	at[i] = n.outer(int(row[k-1].loop), at)
	return at[i]
}

// beyond stands for the boundless outside.
const beyond = -2
