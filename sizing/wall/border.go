package wall

import (
	"cmp"
	"math"
	"slices"

	"badgewright/reduce/mask"
)

func sqrt(x float64) float64 { return math.Sqrt(x) }

// border is where two enamels touch, or an enamel and what lies outside, with
// no metal between: all stretches of one pair of parts.
type border struct {
	a, b   int32   // parts, a < b; b is -1 for what lies outside
	length float64 // of all stretches
	points []int32 // corners of pixels, as indices into a raster of w+1 by h+1

	// Of the stretches that are no gap in a line:
	bare  float64
	count int     // of borders summed up in this one
	x, y  float64 // middle of the longest
	path  []float32
	box   [4]float64
}

// borders walks over every corner where pixels meet and notes which enamels
// touch there.
func (m *Measured) borders() {
	all := m.walkBorders()
	m.trace(all)
	for i := range all {
		if all[i].b < 0 {
			m.open = append(m.open, all[i])
		} else {
			m.touches = append(m.touches, all[i])
		}
	}
}

func (m *Measured) walkBorders() []border {
	b := &bordering{m: m, found: map[[2]int32]*border{}}
	w, h := m.v.w, m.v.h
	off := []mask.Run{{X1: int32(w), Label: outside}}
	above := off
	for y := 0; y <= h; y++ {
		below := off
		if y < h {
			below = m.parts.Runs[m.parts.Row[y]:m.parts.Row[y+1]]
		}
		b.row(y, above, below)
		above = below
	}
	return b.all()
}

type bordering struct {
	m     *Measured
	found map[[2]int32]*border
	last  *border
	key   [2]int32
}

// row looks at the corners (0..w, y) between the runs of two rows: where a run
// ends, and where the two differ.
func (b *bordering) row(y int, above, below []mask.Run) {
	e := &b.m.v.enamel
	off := mask.Run{Label: outside}
	p, s := &off, &off
	for i, j, x := 0, 0, int32(0); i < len(above) && j < len(below); {
		q, r := &above[i], &below[j]
		b.corner(int(x), y, [4]*mask.Run{p, q, r, s})
		end := min(q.X1, r.X1)
		if q.Label != r.Label && (e[q.Label] || e[r.Label]) {
			for x++; x < end; x++ {
				b.corner(int(x), y, [4]*mask.Run{q, q, r, r})
			}
		}
		if q.X1 == end {
			i++
		}
		if r.X1 == end {
			j++
		}
		p, s, x = q, r, end
	}
	b.corner(b.m.v.w, y, [4]*mask.Run{p, &off, &off, s})
}

// touching says whether a side between two classes lacks its metal.
func (b *bordering) touching(p, q uint8) bool {
	e := &b.m.v.enamel
	return p != q && (e[p] && (e[q] || q == outside) || e[q] && p == outside)
}

// corner adds the length of border that passes a corner, whose four pixels lie
// in runs given going round. A side seen from both its ends counts half at each.
func (b *bordering) corner(x, y int, c [4]*mask.Run) {
	var pairs [4][2]int32
	n := 0
	var sides [4]int
	for k := 0; k < 4; k++ {
		p, q := c[k], c[(k+1)&3]
		if !b.touching(p.Label, q.Label) {
			continue
		}
		pair := [2]int32{partOf(p), partOf(q)}
		if pair[0] > pair[1] {
			pair[0], pair[1] = pair[1], pair[0]
		}
		if pair[0] < 0 {
			pair[0], pair[1] = pair[1], pair[0]
		}
		at := 0
		for at < n && pairs[at] != pair {
			at++
		}
		if at == n {
			pairs[n] = pair
			n++
		}
		sides[at] |= 1 << k
	}
	for k := 0; k < n; k++ {
		b.add(x, y, pairs[k], cornerLength[sides[k]])
	}
}

// cornerLength is the length of border at a corner by which of its four sides
// belong to it: half a side, straight across, round a bend, or both diagonals.
var cornerLength = func() (t [16]float64) {
	for s := range t {
		n := s&1 + s>>1&1 + s>>2&1 + s>>3&1
		switch {
		case n == 1:
			t[s] = sideStep / 2
		case n == 2 && (s == 5 || s == 10):
			t[s] = sideStep
		case n == 2:
			t[s] = cornerStep / 2
		case n > 2:
			t[s] = cornerStep
		}
	}
	return t
}()

// partOf returns the part a run belongs to, -1 for outside.
func partOf(r *mask.Run) int32 {
	if r.Label == outside {
		return -1
	}
	return r.Comp
}

func (b *bordering) add(x, y int, pair [2]int32, length float64) {
	if b.last == nil || b.key != pair {
		if b.found[pair] == nil {
			b.found[pair] = &border{a: pair[0], b: pair[1], count: 1, box: [4]float64{math.MaxFloat64, math.MaxFloat64, 0, 0}}
		}
		b.last, b.key = b.found[pair], pair
	}
	t := b.last
	t.length += length
	t.points = append(t.points, int32(y*(b.m.v.w+1)+x))
}

// all returns the borders in the order of their parts.
func (b *bordering) all() []border {
	all := make([]border, 0, len(b.found))
	for _, t := range b.found {
		all = append(all, *t)
	}
	slices.SortFunc(all, func(p, q border) int {
		return cmp.Or(cmp.Compare(p.a, q.a), cmp.Compare(p.b, q.b))
	})
	return all
}
