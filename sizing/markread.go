package sizing

import (
	"fmt"
	"math"

	"badgewright/reduce"
)

// How a mark is read from a picture, tried by hand.
const (
	markFewest = 16    // px, shortest long side of what is drawn
	markSpread = 48    // levels of 255 between a ground and what is drawn on it
	markStray  = 0.001 // share of pixels that may be darker or lighter than all else
	markClear  = 0.005 // share of pixels that must be clear for a clear ground
	markHalf   = 128   // alpha from which a pixel counts as drawn
	markKept   = 0.7   // least share of a drawing's area that its cells must keep
)

// ReadMark reads a mark from w x h RGBA pixels (straight alpha): what is dark
// on light, light on dark, or, of one tone on a clear ground, all that is drawn.
func ReadMark(pix []uint32, w, h int) (Mark, error) {
	drawn, ok := drawnOf(pix, w, h)
	box := boxOf(drawn, w)
	if !ok || box.empty() {
		return Mark{}, &reduce.Refusal{What: "Nothing stands out from its ground in this picture.", Do: "Choose a mark that is dark on light, or drawn on a transparent ground."}
	}
	if max(box.w(), box.h()) < markFewest {
		return Mark{}, &reduce.Refusal{What: fmt.Sprintf("What is drawn in this picture is only %d by %d px.", box.w(), box.h()), Do: fmt.Sprintf("Export it at least %d px on its long side; %d is good.", markFewest, 4*MarkCells)}
	}
	cells, cw, ch, kept := box.cells(drawn, w)
	if kept < markKept {
		return Mark{}, &reduce.Refusal{What: "The strokes of this mark are too fine for the back of a pin.", Do: "Draw them thicker, or choose a simpler mark."}
	}
	return NewMark(cells, cw, ch), nil
}

// luma is the tone of a pixel, 0 to 255 (weights of Rec. ITU-R BT.709).
func luma(p uint32) int {
	return (2126*int(p&255) + 7152*int(p>>8&255) + 722*int(p>>16&255) + 5000) / 10000
}

func opaque(p uint32) bool { return p>>24 >= markHalf }

// drawnOf marks the pixels that are drawn; ok is false when all are of one tone.
func drawnOf(pix []uint32, w, h int) (drawn []bool, ok bool) {
	low, high, clear := tonesOf(pix)
	drawn = make([]bool, len(pix))
	flat := high-low < markSpread
	if flat && !clear {
		return drawn, false
	}
	mid := (low + high) / 2
	light := clear || lightGround(pix, w, h, mid)
	for i, p := range pix {
		drawn[i] = opaque(p) && (flat || (luma(p) <= mid) == light)
	}
	return drawn, true
}

// tonesOf is the darkest and the lightest tone but for strays, and whether the
// ground is clear.
func tonesOf(pix []uint32) (low, high int, clear bool) {
	var count [256]int
	seen := 0
	for _, p := range pix {
		if opaque(p) {
			count[luma(p)]++
			seen++
		}
	}
	stray := int(markStray * float64(seen))
	high = 255
	for n := count[low]; n <= stray && low < high; n += count[low] {
		low++
	}
	for n := count[high]; n <= stray && high > low; n += count[high] {
		high--
	}
	return low, high, float64(len(pix)-seen) >= markClear*float64(len(pix))
}

// lightGround says whether most of the picture's edge is lighter than a tone.
func lightGround(pix []uint32, w, h, mid int) bool {
	lighter, all := 0, 0
	for i, p := range pix {
		if x, y := i%w, i/w; x == 0 || y == 0 || x == w-1 || y == h-1 {
			all++
			if luma(p) > mid {
				lighter++
			}
		}
	}
	return 2*lighter >= all
}

// pixBox is a box of pixels, its right and bottom left out.
type pixBox struct{ x0, y0, x1, y1 int }

func (b pixBox) w() int      { return b.x1 - b.x0 }
func (b pixBox) h() int      { return b.y1 - b.y0 }
func (b pixBox) empty() bool { return b.x1 <= b.x0 }

func boxOf(on []bool, w int) pixBox {
	b := pixBox{math.MaxInt, math.MaxInt, 0, 0}
	for i, is := range on {
		if x, y := i%w, i/w; is {
			b = pixBox{min(b.x0, x), min(b.y0, y), max(b.x1, x+1), max(b.y1, y+1)}
		}
	}
	return b
}

// cells brings what is drawn in a box down to square cells, each on where half
// of it is; kept is how much of the drawn area they have.
func (b pixBox) cells(drawn []bool, w int) (cells []bool, cw, ch int, kept float64) {
	step := max(1, float64(max(b.w(), b.h()))/MarkCells)
	cw, ch = max(1, int(math.Round(float64(b.w())/step))), max(1, int(math.Round(float64(b.h())/step)))
	cells = make([]bool, cw*ch)
	all, in := 0.0, 0.0
	for i := range cells {
		part := b.share(drawn, w, float64(i%cw)*step, float64(i/cw)*step, step)
		cells[i] = part >= 0.5
		all += part
		if cells[i] {
			in += part
		}
	}
	return cells, cw, ch, in / all
}

// share is how much of a square of the box is drawn, its left and top counted
// from those of the box.
func (b pixBox) share(drawn []bool, w int, left, top, side float64) float64 {
	sum := 0.0
	for y := int(top); y < min(b.h(), int(math.Ceil(top+side))); y++ {
		high := min(float64(y+1), top+side) - max(float64(y), top)
		for x := int(left); x < min(b.w(), int(math.Ceil(left+side))); x++ {
			if drawn[(b.y0+y)*w+b.x0+x] {
				wide := min(float64(x+1), left+side) - max(float64(x), left)
				sum += float64(high * wide)
			}
		}
	}
	return sum / float64(side*side)
}
