package shop

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// disc is a round pin of one colour, half seen through along its edge.
func disc(side int, c color.NRGBA) *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, side, side))
	r := side/2 - 2
	for y := range side {
		for x := range side {
			dx, dy := x-side/2, y-side/2
			switch d := dx*dx + dy*dy; {
			case d < (r-1)*(r-1):
				m.SetNRGBA(x, y, c)
			case d < r*r:
				half := c
				half.A /= 2
				m.SetNRGBA(x, y, half)
			}
		}
	}
	return m
}

var red = color.NRGBA{200, 20, 30, 255}

// The reader is Go's own image/png.
func TestACutOutKeepsEveryPixel(t *testing.T) {
	pin := disc(40, red)
	file, err := PNG(pin)
	require.NoError(t, err)
	got, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	assert.Equal(t, pin.Pix, got.(*image.NRGBA).Pix)
	assert.Equal(t, uint8(0), got.(*image.NRGBA).NRGBAAt(0, 0).A)
}

func TestOnAGround(t *testing.T) {
	g := UsualGround()
	m, err := Lay(disc(100, red), g)
	require.NoError(t, err)
	side := m.Rect.Dx()
	assert.Equal(t, side, m.Rect.Dy())
	assert.InDelta(t, 100/0.72, float64(side), 1)
	assert.Equal(t, color.NRGBA{0xf3, 0xf0, 0xea, 255}, m.NRGBAAt(0, 0), "the corner is the plain ground")
	assert.Equal(t, red, m.NRGBAAt(side/2, side/2))
	for i := 3; i < len(m.Pix); i += 4 {
		require.Equal(t, uint8(255), m.Pix[i], "nothing is seen through")
	}
	below, above := m.NRGBAAt(side/2, side/2+50), m.NRGBAAt(side/2, side/2-50)
	assert.Less(t, below.R, above.R, "the shadow falls down")
	left, right := m.NRGBAAt(side/2-52, side/2), m.NRGBAAt(side/2+52, side/2)
	assert.InDelta(t, float64(left.R), float64(right.R), 6, "and to neither side")
}

// Compositing "over" of straight alpha: W3C Compositing and Blending Level 1,
// section 5.1: co = cs*as + cb*(1-as) on an opaque backdrop.
func TestEdgesAreLaidOver(t *testing.T) {
	pin := image.NewNRGBA(image.Rect(0, 0, 1, 1))
	pin.SetNRGBA(0, 0, color.NRGBA{200, 100, 0, 128})
	m, err := Lay(pin, ShopGround{RGB: colour.RGB8{R: 10, G: 50, B: 250}})
	require.NoError(t, err)
	want := func(s, b float64) float64 { return s*128/255 + b*127/255 }
	p := m.NRGBAAt(0, 0)
	for i, c := range [][2]float64{{200, 10}, {100, 50}, {0, 250}} {
		assert.InDelta(t, want(c[0], c[1]), float64([]uint8{p.R, p.G, p.B}[i]), 0.51)
	}
}

// A box blur as a slow sum over the window.
func TestTheBlurIsTheMeanOfItsWindow(t *testing.T) {
	for _, radius := range []int{1, 3, 9} {
		in := []uint8{0, 0, 255, 255, 10, 0, 90, 255, 0, 0, 0, 7}
		got := append([]uint8(nil), in...)
		blur(got, 1, len(in), radius, make([]uint8, len(in)))
		for i := range in {
			sum := 0
			for j := i - radius; j <= i+radius; j++ {
				if j >= 0 && j < len(in) {
					sum += int(in[j])
				}
			}
			assert.Equal(t, uint8((sum+radius)/(2*radius+1)), got[i], "radius %d at %d", radius, i)
		}
	}
}

func TestShapes(t *testing.T) {
	for _, k := range []struct {
		shape PictureShape
		w, h  int
	}{{Square, 1250, 1250}, {Close, 1126, 626}, {Portrait, 1250, 1563}} {
		m, err := Lay(image.NewNRGBA(image.Rect(0, 0, 1000, 500)), ShopGround{Shape: k.shape, Margin: 0.1})
		require.NoError(t, err)
		assert.Equal(t, []int{k.w, k.h}, []int{m.Rect.Dx(), m.Rect.Dy()}, string(k.shape))
	}
}

func TestWhatCannotBeDrawnIsRefused(t *testing.T) {
	for _, g := range []ShopGround{{Margin: 0.6}, {Margin: -1}, {Shadow: 2}} {
		_, err := Lay(disc(10, red), g)
		assert.Error(t, err)
	}
	_, err := Lay(image.NewNRGBA(image.Rect(0, 0, Most, 1)), ShopGround{Margin: 0.4})
	assert.Error(t, err)
}
