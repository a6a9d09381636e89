package sight

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
)

// framed is a square of enamel in a metal edge.
func framed(rgb uint32, role reduce.Role) *sizing.Badge {
	flats := []reduce.Flat{flat(0, reduce.Metal, 0x202020), flat(1, role, rgb)}
	return paint(240, 30, flats, func(x, y float64) uint8 {
		e := min(x, y, 1-x, 1-y)
		switch {
		case e < 0.05:
			return reduce.None
		case e < 0.10:
			return 0
		}
		return 1
	})
}

func meanOf(im *Image, x0, y0, x1, y1 int) colour.RGB8 {
	var r, g, b, n float64
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			p := im.Pix[y*im.W+x]
			r, g, b, n = r+float64(p&255), g+float64(p>>8&255), b+float64(p>>16&255), n+1
		}
	}
	return colour.RGB8{R: uint8(r/n + 0.5), G: uint8(g/n + 0.5), B: uint8(b/n + 0.5)}
}

// trueTo is how far (CIEDE2000) the shading may move the mean of an area from
// the chosen colour: a difference that is seen only side by side.
const trueTo = 3

func TestEnamelStaysTrueToItsColour(t *testing.T) {
	for _, hex := range []uint32{0xc8322b, 0x2b5c8a, 0xf2b53c, 0x12304f, 0xf4efe2, 0x101012, 0xffffff, 0x2f7d4f, 0x808080, 0xe79ac0} {
		for _, fill := range []sizing.Fill{sizing.Soft, sizing.Hard} {
			b := framed(hex, reduce.Enamel)
			im := struckAt(t, b, lookAt(fill, Front, 400))
			want := b.Sep.Flats[1].RGB
			x0, y0 := place(im, 40, 40)
			x1, y1 := place(im, 200, 200)
			got := meanOf(im, x0, y0, x1, y1)
			assert.Less(t, colour.CIEDE2000(want.Lab(), got.Lab()), float64(trueTo), "%06x %s became %v", hex, fill, got)
		}
	}
}

func TestPrintIsItsColour(t *testing.T) {
	b := framed(0x3366aa, reduce.Printed)
	im := struckAt(t, b, lookAt(sizing.Soft, Front, 300))
	x, y := place(im, 120, 120)
	assert.Equal(t, uint32(0xffaa6633), im.Pix[y*im.W+x])
}

func TestRecolourReplacesAFlat(t *testing.T) {
	b := framed(0xff0000, reduce.Enamel)
	re := Recolour{1: {R: 10, G: 20, B: 200}}
	im := Flat(b, 200, plating("gold"), re)
	x, y := place(im, 120, 120)
	assert.Equal(t, uint32(0xffc8140a), im.Pix[y*im.W+x])
}

func TestFlatShowsMetalInThePlating(t *testing.T) {
	b := framed(0xff0000, reduce.Enamel)
	im := Flat(b, 240, plating("copper"), nil)
	x, y := place(im, 18, 120)
	mid := plating("copper").Mid
	assert.Equal(t, uint32(mid.R)|uint32(mid.G)<<8|uint32(mid.B)<<16|255<<24, im.Pix[y*im.W+x])
}

func TestACutOutIsAHole(t *testing.T) {
	b := framed(0, reduce.CutOut)
	for _, side := range []Side{Front, Back} {
		im := struckAt(t, b, Look{Plating: plating("gold"), Side: side, LongSide: 400})
		assert.Zero(t, im.Pix[im.H/2*im.W+im.W/2]>>24, "side %s", side)
	}
}

func TestLightComesFromTheUpperLeft(t *testing.T) {
	b := solidPin(300, 32)
	im := struckAt(t, b, lookAt(sizing.Soft, Front, 300))
	// The outer bevel of the upper and of the lower edge, mid-way along.
	x := im.W / 2
	_, top := place(im, 0, b.Outline[1])
	_, foot := place(im, 0, b.Outline[3])
	upper := meanOf(im, x-20, top+1, x+20, top+4)
	lower := meanOf(im, x-20, foot-4, x+20, foot-1)
	assert.Greater(t, upper.Luminance(), 2*lower.Luminance())
}

func TestSunkEnamelLiesInTheShadowOfItsWall(t *testing.T) {
	b := framed(0x2b5c8a, reduce.Enamel)
	im := struckAt(t, b, lookAt(sizing.Soft, Front, 400))
	x, y := place(im, 26, 120)
	far, _ := place(im, 80, 120)
	by := meanOf(im, x, y-10, x+2, y+10)
	open := meanOf(im, far, y-10, far+2, y+10)
	assert.Less(t, by.Luminance(), 0.85*open.Luminance())
}

func TestEveryPlatingKeepsItsOrderOfTones(t *testing.T) {
	for _, p := range sizing.Platings() {
		t.Run(string(p.ID), func(t *testing.T) {
			r := rampOf(&p)
			last := -1.0
			for i := 0; i <= 20; i++ {
				c := r.at(float32(i) / 20)
				l := colour.RGB8{R: uint8(level(c[0])), G: uint8(level(c[1])), B: uint8(level(c[2]))}.Luminance()
				require.GreaterOrEqual(t, l, last)
				last = l
			}
			face := ballOf(&p).at(0, 0)
			got := colour.RGB8{R: uint8(level(face[0])), G: uint8(level(face[1])), B: uint8(level(face[2]))}
			assert.Less(t, colour.CIEDE2000(got.Lab(), p.Mid.Lab()), 5.0, "metal seen straight on is the tone of its face")
		})
	}
}

// TestShrinkAveragesLight: half white and half black is half the light, which
// IEC 61966-2-1 encodes as level 188 (187.5).
func TestShrinkAveragesLight(t *testing.T) {
	const black, white, clear = 0xff000000, 0xffffffff, 0x00123456
	assert.Equal(t, []uint32{0xffbcbcbc}, shrink([]uint32{black, white, white, black}, 2, 2, 2))
	assert.Equal(t, []uint32{0x80ffffff}, shrink([]uint32{clear, white, white, clear}, 2, 2, 2))
	for i := range lightOf {
		assert.InDelta(t, i, float64(levelOf[min(4095, (lightOf[i]+8)/16)]), 1, "level %d there and back", i)
	}
}
