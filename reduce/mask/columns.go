package mask

import (
	"math"
	"math/bits"
)

// columns goes down a raster row by row and knows, in every column, the row of
// the nearest pixel with another label. It looks only at the places where the
// label changes from one row to the next, so that wide areas cost nothing.
type columns struct {
	h       int32
	walled  bool    // what lies off the raster is another label too
	reach   int32   // what lies further up or down than this does not count
	singles []int32 // columns in which a label begins and ends in this row, from the left
	near    []int16 // of each column, in the row last gone to; none where there is none
	breaks  bitmap  // whether a column's near is not that of the one before
	spans   []span  // what is still to come, the next last
	below   []int16 // of each column of spans: where its label ends
	turns   []turn
	turnAt  []int32 // by row, 1 + the first of the turns there, 0 for none
}

// span is a stretch x0..x1-1 of row y whose label is not that of the row above.
type span struct{ y, x0, x1 int32 }

// turn is what comes to be nearest in a column.
type turn struct {
	x    int32
	to   int16
	next int32 // 1 + the next in the same row, 0 for none
}

// everywhere is a reach across any raster.
const everywhere = 2 * GreatestSide

// none stands for "no other label in this column".
const none = math.MinInt16

// newColumns looks through the raster from below. Columns of labels for which
// skip is true are not kept.
func newColumns(c *Components, skip *[256]bool, walled bool, reach int) *columns {
	k := &columns{
		h: int32(c.H), walled: walled, reach: int32(min(reach, everywhere)),
		near: make([]int16, c.W), breaks: make(bitmap, c.W/64+1), turnAt: make([]int32, c.H+1),
	}
	end := make([]int16, c.W)
	for x := range end {
		end[x] = int16(c.H)
	}
	for y := c.H - 1; y > 0; y-- {
		k.note(c, int32(y), end, skip)
	}
	k.push(span{0, 0, int32(c.W)}, end)
	k.turns = make([]turn, 0, len(k.below))
	return k
}

// note keeps where row y differs from the row above; ends is, for each column,
// where the label of row y ends, and afterwards that of the row above.
func (k *columns) note(c *Components, y int32, ends []int16, skip *[256]bool) {
	above, here := c.row(int(y-1)), c.row(int(y))
	i, j := len(above)-1, len(here)-1
	for end := int32(c.W); end > 0; {
		a, b := &above[i], &here[j]
		s := span{y, max(a.X0, b.X0), end}
		if a.Label != b.Label {
			if !skip[b.Label] {
				k.push(s, ends)
			}
			for x := range ends[s.x0:s.x1] {
				ends[int(s.x0)+x] = int16(y)
			}
		}
		if a.X0 == s.x0 {
			i--
		}
		if b.X0 == s.x0 {
			j--
		}
		end = s.x0
	}
}

func (k *columns) push(s span, end []int16) {
	k.spans = append(k.spans, s)
	k.below = append(k.below, end[s.x0:s.x1]...)
}

// down goes to the next row, y.
func (k *columns) down(y int32) {
	k.singles = k.singles[:0]
	for n := len(k.spans) - 1; n >= 0 && k.spans[n].y == y; n-- {
		s := k.spans[n]
		rest := len(k.below) - int(s.x1-s.x0)
		for i, end := range k.below[rest:] {
			k.begin(s.x0+int32(i), y, int32(end))
		}
		k.spans, k.below = k.spans[:n], k.below[:rest]
	}
	for i := k.turnAt[y]; i > 0; i = k.turns[i-1].next {
		k.set(k.turns[i-1].x, k.turns[i-1].to)
	}
}

// begin starts a stretch of one label in column x, from row y to just before
// row end. Of two pixels equally near, the one above counts.
func (k *columns) begin(x, y, end int32) {
	if end == y+1 {
		k.singles = append(k.singles, x)
	}
	until := (y-1+end)/2 + 1 // where the one above is nearest, and from where the one below
	from := until
	if !k.walled && y == 0 {
		until, from = y, y
	}
	if !k.walled && end == k.h {
		from = end
		if y > 0 {
			until = end
		}
	}
	until, from = min(until, y+k.reach), max(from, end-k.reach)
	switch {
	case until > y:
		k.set(x, int16(y-1))
		if until < from {
			k.later(until, x, none)
		}
	case from > y:
		k.set(x, none)
	default:
		k.set(x, int16(end))
	}
	if from > y && from < end {
		k.later(from, x, int16(end))
	}
}

// later notes what comes to be nearest in column x at a row.
func (k *columns) later(y, x int32, to int16) {
	if y < k.h {
		k.turns = append(k.turns, turn{x, to, k.turnAt[y]})
		k.turnAt[y] = int32(len(k.turns))
	}
}

func (k *columns) set(x int32, v int16) {
	k.near[x] = v
	k.mend(int(x))
	k.mend(int(x) + 1)
}

// mend says anew whether there is a break before column x.
func (k *columns) mend(x int) {
	if x == 0 || x >= len(k.near) {
		return
	}
	if k.near[x] != k.near[x-1] {
		k.breaks.set(x)
	} else {
		k.breaks.clear(x)
	}
}

// drop forgets sites above the row last gone to.
func (k *columns) drop(s *stretch) {
	for x := s.a; x <= s.b; x++ {
		k.set(x, none)
	}
}

// list puts what is nearest in columns x0..x1-1 of row y at the beginning of
// into, taken together where sites lie side by side, and returns how much.
func (k *columns) list(into []stretch, y, x0, x1 int) int {
	n := 0
	for x0 < x1 {
		x := min(k.nextBreak(x0+1), x1)
		if v := k.near[x0]; v != none {
			g := int(v) - y
			s := &into[n]
			s.a, s.b, s.v, s.g2 = int32(x0), int32(x-1), int32(v), int32(g*g)
			n++
		}
		x0 = x
	}
	return n
}

// nextBreak returns the first column, x or further right, that begins anew.
func (k *columns) nextBreak(x int) int {
	w := x >> 6
	if w >= len(k.breaks) {
		return len(k.near)
	}
	b := k.breaks[w] >> (x & 63) << (x & 63)
	for b == 0 {
		if w++; w == len(k.breaks) {
			return len(k.near)
		}
		b = k.breaks[w]
	}
	return w<<6 + bits.TrailingZeros64(b)
}
