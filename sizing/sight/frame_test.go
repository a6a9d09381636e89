package sight

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

func lookAt(fill sizing.Fill, side Side, long int) Look {
	return Look{Plating: plating("gold"), Fill: fill, Side: side, LongSide: long,
		Posts: []sizing.Post{{X: 9, Y: 11}, {X: 22, Y: 11}}, Clutch: 10, Pad: 5.5}
}

func struckAt(t *testing.T, b *sizing.Badge, look Look) *Image {
	t.Helper()
	im, err := Struck(b, look, nil)
	require.NoError(t, err)
	return im
}

// place is the picture pixel that shows a working place from the front.
func place(im *Image, x, y float64) (int, int) {
	return int(x*im.Scale + im.DX), int(y*im.Scale + im.DY)
}

func TestEveryViewHasOneFrame(t *testing.T) {
	b := lightPin(300, 32)
	d := &reduce.Drawing{W: 300, H: 300, Pix: make([]uint32, 300*300)}
	front := struckAt(t, b, lookAt(sizing.Soft, Front, 240))
	for _, im := range []*Image{
		struckAt(t, b, lookAt(sizing.Soft, Back, 240)),
		Flat(b, 240, plating("gold"), nil),
		Original(b, d, 240),
	} {
		assert.Equal(t, [2]int{front.W, front.H}, [2]int{im.W, im.H})
		assert.Equal(t, [3]float64{front.Scale, front.DX, front.DY}, [3]float64{im.Scale, im.DX, im.DY})
		assert.Len(t, im.Pix, im.W*im.H)
	}
	assert.Equal(t, 240, max(front.W, front.H))
}

func TestTheFrameHoldsTheSilhouette(t *testing.T) {
	b := lightPin(300, 32)
	for _, long := range []int{16, 77, 128, 1000} {
		im := frameOf(b, long)
		x0, y0 := b.Outline[0]*im.Scale+im.DX, b.Outline[1]*im.Scale+im.DY
		x1, y1 := b.Outline[2]*im.Scale+im.DX, b.Outline[3]*im.Scale+im.DY
		assert.GreaterOrEqual(t, min(x0, y0), 0.99, "long side %d", long)
		assert.LessOrEqual(t, x1, float64(im.W)-0.99)
		assert.LessOrEqual(t, y1, float64(im.H)-0.99)
		assert.InDelta(t, x0, float64(im.W)-x1, 1e-9, "the box stands in the middle, so the back mirrors in the same frame")
	}
}

func TestTheBackIsTheFrontMirrored(t *testing.T) {
	// A badge that is wide on its left only.
	b := paint(200, 30, []reduce.Flat{flat(0, reduce.Metal, 0)}, func(x, y float64) uint8 {
		if x > 0.1 && x < 0.8 && y > 0.1 && y < 0.9 && (x < 0.4 || y < 0.4) {
			return 0
		}
		return reduce.None
	})
	front := struckAt(t, b, Look{Plating: plating("gold"), Side: Front, LongSide: 200})
	back := struckAt(t, b, Look{Plating: plating("gold"), Side: Back, LongSide: 200})
	x, y := place(front, 50, 150)
	assert.Equal(t, uint32(255), front.Pix[y*front.W+x]>>24)
	assert.Equal(t, uint32(255), back.Pix[y*back.W+back.W-1-x]>>24)
	assert.Less(t, back.Pix[y*back.W+x]>>24, uint32(120), "only shadow where the front had metal")
}

func TestAnEmptyBadgeIsAClearPicture(t *testing.T) {
	b := &sizing.Badge{Sep: reduce.NewSeparation(20, 10), Scale: 10}
	for _, side := range []Side{Front, Back} {
		for _, p := range struckAt(t, b, Look{Plating: plating("gold"), Side: side, LongSide: 40}).Pix {
			require.Zero(t, p>>24)
		}
	}
}

func TestStruckStopsWhenTold(t *testing.T) {
	stop := errors.New("stop")
	for _, after := range []float64{0, 0.4, 0.9} {
		_, err := Struck(lightPin(60, 32), lookAt(sizing.Soft, Front, 60), func(share float64, _ string) error {
			if share >= after {
				return stop
			}
			return nil
		})
		assert.ErrorIs(t, err, stop)
	}
}

func TestOriginalKeepsColoursAndPlaces(t *testing.T) {
	b := lightPin(300, 32)
	d := &reduce.Drawing{W: 300, H: 300, Pix: make([]uint32, 300*300)}
	for i := range d.Pix {
		d.Pix[i] = 0xff000000 | uint32(i%300) | uint32(i/300)<<8
	}
	for _, long := range []int{120, 900} {
		im := Original(b, d, long)
		x, y := place(im, 150, 100)
		p := im.Pix[y*im.W+x]
		assert.InDelta(t, 150, float64(p&255), 2)
		assert.InDelta(t, 100, float64(p>>8&255), 2)
		assert.Equal(t, uint32(255), p>>24)
	}
}
