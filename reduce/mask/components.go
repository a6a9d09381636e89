package mask

import (
	"encoding/binary"
	"math/bits"
)

// Run is a stretch X0..X1-1 of one row with one label, and the component it
// belongs to.
type Run struct {
	X0, X1 int32
	Label  uint8
	Comp   int32
}

// Components are the connected parts of a raster of labels, kept as runs.
// Part numbers follow the first pixel of each part in reading order.
type Components struct {
	W, H int
	Runs []Run
	// Row holds, for each row, the index of its first run; Row[H] is len(Runs).
	Row []int32
	// Label and Area (pixels) of each part.
	Label []uint8
	Area  []int
}

// Connect finds the connected parts of equal labels: through corners too where
// eight is true for the label, through sides only elsewhere.
func Connect(label []uint8, w, h int, eight *[256]bool) *Components {
	c := runsOf(label, w, h)
	parent := make([]int32, len(c.Runs))
	for i := range parent {
		parent[i] = int32(i)
	}
	for y := 1; y < h; y++ {
		c.join(y, parent, eight)
	}
	c.number(parent)
	return c
}

// runsARow is about how many runs a row of a drawing has.
const runsARow = 8

// runsOf lists the runs of a raster, not yet put together.
func runsOf(label []uint8, w, h int) *Components {
	c := &Components{W: w, H: h, Row: make([]int32, h+1), Runs: make([]Run, 0, runsARow*h)}
	for y := 0; y < h; y++ {
		c.Row[y] = int32(len(c.Runs))
		c.addRow(label[y*w : y*w+w])
	}
	c.Row[h] = int32(len(c.Runs))
	return c
}

func (c *Components) row(y int) []Run { return c.Runs[c.Row[y]:c.Row[y+1]] }

func (c *Components) addRow(line []uint8) {
	for x0 := 0; x0 < len(line); {
		x1 := x0 + alike(line[x0:])
		c.Runs = append(c.Runs, Run{X0: int32(x0), X1: int32(x1), Label: line[x0]})
		x0 = x1
	}
}

// alike returns how many bytes at the beginning of line are equal: eight are
// compared at a time.
func alike(line []uint8) int {
	n := 1
	same := uint64(line[0]) * ((1<<64 - 1) / 255)
	for ; n+8 <= len(line); n += 8 {
		if d := binary.LittleEndian.Uint64(line[n:]) ^ same; d != 0 {
			return n + bits.TrailingZeros64(d)/8
		}
	}
	for n < len(line) && line[n] == line[0] {
		n++
	}
	return n
}

// join unites the runs of row y with those above that touch them.
func (c *Components) join(y int, parent []int32, eight *[256]bool) {
	a, aEnd := c.Row[y-1], c.Row[y]
	for b := aEnd; b < c.Row[y+1]; b++ {
		rb := &c.Runs[b]
		for a < aEnd-1 && c.Runs[a].X1 < rb.X0 {
			a++
		}
		for k := a; k < aEnd && c.Runs[k].X0 <= rb.X1; k++ {
			ra := &c.Runs[k]
			touch := ra.X0 < rb.X1 && rb.X0 < ra.X1 || eight[rb.Label] && ra.X0 <= rb.X1 && rb.X0 <= ra.X1
			if ra.Label == rb.Label && touch {
				unite(parent, k, b)
			}
		}
	}
}

func (c *Components) number(parent []int32) {
	name := make([]int32, len(c.Runs))
	for i := range c.Runs {
		r := root(parent, int32(i))
		if r == int32(i) {
			name[i] = int32(len(c.Label))
			c.Label = append(c.Label, c.Runs[i].Label)
			c.Area = append(c.Area, 0)
		}
		n := name[r]
		c.Runs[i].Comp = n
		c.Area[n] += int(c.Runs[i].X1 - c.Runs[i].X0)
	}
}

// At returns the part that pixel (x, y) belongs to.
func (c *Components) At(x, y int) int32 {
	lo, hi := c.Row[y], c.Row[y+1]-1
	for lo < hi {
		if mid := (lo + hi) / 2; int(c.Runs[mid].X1) > x {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return c.Runs[lo].Comp
}

func root(parent []int32, i int32) int32 {
	for parent[i] != i {
		parent[i] = parent[parent[i]]
		i = parent[i]
	}
	return i
}

// unite keeps the lower root, so that numbering follows reading order.
func unite(parent []int32, a, b int32) {
	a, b = root(parent, a), root(parent, b)
	if a < b {
		parent[b] = a
	} else {
		parent[a] = b
	}
}
