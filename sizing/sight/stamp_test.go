package sight

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/ink"
	"badgewright/sizing/unit"
)

// holdBy holds a look by a fastening other than posts, with lettering below it.
func holdBy(look *Look, f sizing.Fastening) {
	look.Fastening = f
	switch f {
	case sizing.MagnetBack:
		look.Clutch, look.Pad = 13, 13
	case sizing.ScrewBack:
		look.Clutch, look.Pad = 10, 8
	case sizing.PinBar:
		look.Posts, look.Clutch, look.Pad, look.Bar = []sizing.Post{{X: 16, Y: 11}}, 6, 5, 20
	}
	look.Stamp = stampAt(16, 24, "SKERRY", f == sizing.ScrewBack)
}

func stampAt(x, y unit.MM, text string, raised bool) *Stamp {
	return &Stamp{At: sizing.Post{X: x, Y: y}, Strokes: ink.TextPaths(text, ink.Point{}, 2, ink.Middle), Width: 0.24, Raised: raised}
}

// differ is the box (mm from the left and top, as seen from behind) of where
// two pictures of the back differ, and by how many levels the second is
// brighter there on average.
func differ(b *sizing.Badge, p, q *Image) (box [4]float64, brighter float64) {
	box = [4]float64{1e9, 1e9, -1e9, -1e9}
	n := 0.0
	mm := float64(b.Scale) * p.Scale
	x0, y0 := b.Outline[0]*p.Scale+p.DX, b.Outline[1]*p.Scale+p.DY
	for i := range p.Pix {
		if p.Pix[i] == q.Pix[i] {
			continue
		}
		x, y := (float64(i%p.W)-x0)/mm, (float64(i/p.W)-y0)/mm
		box = [4]float64{min(box[0], x), min(box[1], y), max(box[2], x), max(box[3], y)}
		brighter += float64(q.Pix[i]&255) - float64(p.Pix[i]&255)
		n++
	}
	return box, brighter / max(1, n)
}

// A stamp is struck where it is placed, mirrored as all of the back is, and
// nothing else of the picture changes.
func TestAStampIsStruckWhereItIsPlaced(t *testing.T) {
	b := framed(0x3366aa, reduce.Enamel)
	wide := float64(b.Width())
	look := lookAt(sizing.Soft, Back, 500)
	look.Posts = nil
	bare := struckAt(t, b, look)
	for _, raised := range []bool{false, true} {
		look.Stamp = stampAt(8, 20, "HH", raised)
		box, brighter := differ(b, bare, struckAt(t, b, look))
		const slack = 0.35 // mm: half a stroke, its blurred foot, a pixel
		half := ink.TextWidth("HH", 2) / 2
		assert.InDelta(t, wide-8-half, box[0], slack, "eight mm from the left in front, from the right behind")
		assert.InDelta(t, wide-8+half, box[2], slack)
		assert.InDelta(t, 18, box[1], slack)
		assert.InDelta(t, 20, box[3], slack)
		assert.Equal(t, raised, brighter > 0, "a cut lies in shade, a raised top shines: %.1f", brighter)
	}
}

// It reads from behind: the upright of an L stands left of its foot.
func TestAStampReadsFromBehind(t *testing.T) {
	b := framed(0x3366aa, reduce.Enamel)
	look := lookAt(sizing.Soft, Back, 500)
	look.Posts = nil
	bare := struckAt(t, b, look)
	look.Stamp = stampAt(15, 15, "L", false)
	struck := struckAt(t, b, look)
	left, right := 0, 0
	mid := float64(bare.W) / 2
	for i := range bare.Pix {
		if bare.Pix[i] != struck.Pix[i] && float64(i%bare.W) < mid-3 {
			left++
		} else if bare.Pix[i] != struck.Pix[i] {
			right++
		}
	}
	assert.Greater(t, left, 2*right, "upright %d, foot %d", left, right)
}

// A mark of cells fills its place, mirrored as a place is and not itself: the
// foot of this L is at its right as seen from behind.
func TestAMarkIsStruckCellByCell(t *testing.T) {
	b := framed(0x3366aa, reduce.Enamel)
	wide := float64(b.Width())
	look := lookAt(sizing.Soft, Back, 500)
	look.Posts = nil
	bare := struckAt(t, b, look)
	on := make([]bool, 40*60)
	for i := range on {
		on[i] = i%40 < 12 || i/40 >= 48
	}
	for _, raised := range []bool{false, true} {
		look.Stamp = &Stamp{At: sizing.Post{X: 9, Y: 18}, Raised: raised, Cells: &Cells{W: 40, H: 60, On: on, Side: 0.1, Left: -2, Top: -3}}
		struck := struckAt(t, b, look)
		box, brighter := differ(b, bare, struck)
		const slack = 0.35 // mm: its blurred foot, a pixel
		assert.InDeltaSlice(t, []float64{wide - 11, 15, wide - 7, 21}, box[:], slack)
		assert.Equal(t, raised, brighter > 0, "%.1f", brighter)
		left, right := 0, 0
		middle := float64(struck.W) - ((b.Outline[0]+float64(b.Scale)*9)*struck.Scale + struck.DX)
		for i := range bare.Pix {
			if bare.Pix[i] != struck.Pix[i] && float64(i%bare.W) < middle {
				left++
			} else if bare.Pix[i] != struck.Pix[i] {
				right++
			}
		}
		assert.Greater(t, left, 2*right, "upright %d, foot %d", left, right)
	}
}

// Each fastening covers what it is said to cover, mirrored, and is bare nickel.
func TestWhatHoldsThePinIsDrawnAsSuch(t *testing.T) {
	b := framed(0x3366aa, reduce.Enamel)
	wide := float64(b.Width())
	look := lookAt(sizing.Soft, Back, 500)
	look.Posts = nil
	bare := struckAt(t, b, look)
	seen := map[[4]float64]bool{}
	for _, f := range []sizing.Fastening{sizing.MagnetBack, sizing.ScrewBack, sizing.PinBar} {
		look := lookAt(sizing.Soft, Back, 500)
		holdBy(&look, f)
		look.Stamp, look.Posts = nil, []sizing.Post{{X: 11, Y: 13}}
		box, _ := differ(b, bare, struckAt(t, b, look))
		assert.False(t, seen[box], "%s is drawn like another", f)
		seen[box] = true
		half, slack := float64(look.Clutch)/2, 1.2 // its shadow
		if f == sizing.PinBar {
			half = float64(look.Bar) / 2
		}
		assert.InDelta(t, wide-11-half, box[0], slack, f)
		assert.InDelta(t, wide-11+half, box[2], slack, f)
		assert.InDelta(t, 13, (box[1]+box[3])/2, slack, f)
		if f == sizing.PinBar {
			look.Upright = true
			turned, _ := differ(b, bare, struckAt(t, b, look))
			assert.Greater(t, turned[3]-turned[1], 2*(turned[2]-turned[0]), "upright")
		}
	}
}
