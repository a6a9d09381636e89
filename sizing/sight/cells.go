package sight

import (
	"math"

	"badgewright/reduce/mask"
	"badgewright/sizing/unit"
)

// Cells is a mark of square cells, struck where they are on.
type Cells struct {
	W, H      int
	On        []bool  // W*H of them, from the top left as seen from behind
	Side      unit.MM // of a cell
	Left, Top unit.MM // of the first one, from the middle of its stamp
}

// depth is how far the middle of each cell lies inside what is on, in cells,
// below 0 outside; one cell round the mark is there too.
func (c *Cells) depth() (in []float32, w, h int) {
	w, h = c.W+2, c.H+2
	on, off := make([]bool, w*h), make([]bool, w*h)
	for i := range on {
		x, y := i%w-1, i/w-1
		on[i] = x >= 0 && y >= 0 && x < c.W && y < c.H && c.On[y*c.W+x]
		off[i] = !on[i]
	}
	inside, _ := mask.Nearest(off, w, h)
	outside, _ := mask.Nearest(on, w, h)
	in = make([]float32, w*h)
	for i := range in {
		// An edge lies half a cell from the middles on both its sides.
		if on[i] {
			in[i] = float32(math.Sqrt(float64(inside.D2[i]))) - 0.5
		} else {
			in[i] = 0.5 - float32(math.Sqrt(float64(outside.D2[i])))
		}
	}
	return in, w, h
}

// cells notes how far pixels lie inside a mark, its top left at a pixel.
func (s *scene) cells(in []float32, c *Cells, left, top float32) {
	side := mul(float32(c.Side), s.mm)
	if side <= 0 {
		return
	}
	depth, w, h := c.depth()
	wide, high := mul(side, float32(c.W)), mul(side, float32(c.H))
	for y := max(0, int(top)); y < min(s.h, int(top+high)+1); y++ {
		for x := max(0, int(left)); x < min(s.w, int(left+wide)+1); x++ {
			// The middle of the first cell is at 1, past the one round the mark.
			u, v := (float32(x)+0.5-left)/side+0.5, (float32(y)+0.5-top)/side+0.5
			i := y*s.w + x
			in[i] = max(in[i], mul(blended(depth, w, h, u, v), side)+0.5)
		}
	}
}

// blended is a value between the four cells round a place.
func blended(in []float32, w, h int, u, v float32) float32 {
	u, v = min(max(u, 0), float32(w-1)), min(max(v, 0), float32(h-1))
	x, y := min(int(u), w-2), min(int(v), h-2)
	fx, fy := u-float32(x), v-float32(y)
	i := y*w + x
	above := mul(in[i], 1-fx) + mul(in[i+1], fx)
	below := mul(in[i+w], 1-fx) + mul(in[i+w+1], fx)
	return mul(above, 1-fy) + mul(below, fy)
}
