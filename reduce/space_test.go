package reduce

import (
	"math"
	"math/rand"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Display-P3 to sRGB against testdata/reference/display_p3_srgb.csv (CSS Color
// 4, computed by two libraries): rows inside sRGB within 2 levels, the others
// clipped channel by channel and counted.
func TestDisplayP3AgainstPublishedRows(t *testing.T) {
	level := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v * 255
	}
	for _, row := range reference(t, "display_p3_srgb.csv") {
		p3, srgb := [3]string{"in_R", "in_G", "in_B"}, [3]string{"out_R", "out_G", "out_B"}
		within := 2.0
		if row["direction"] == "srgb_to_display-p3" {
			// Read backwards: 8 bits cannot hold the table's Display-P3 colour,
			// and half a level of it is up to 3 levels of sRGB near 0.
			p3, srgb, within = srgb, p3, 3
		}
		pix := []uint32{0xff000000}
		for c, col := range p3 {
			pix[0] |= uint32(math.Round(level(row[col]))) << (8 * c)
		}
		share := FromDisplayP3(pix)
		for c, col := range srgb {
			want := min(max(level(row[col]), 0), 255)
			assert.InDelta(t, want, float64(pix[0]>>(8*c)&255), within, "%v channel %d", row, c)
		}
		if row["in_srgb_gamut"] == "false" {
			assert.Equal(t, 1.0, share, "%v", row)
		}
	}
}

func TestGreysAreInsideBothSpaces(t *testing.T) {
	for v := range uint32(256) {
		pix := []uint32{v | v<<8 | v<<16 | 0x80000000}
		assert.Zero(t, FromDisplayP3(pix))
		assert.Equal(t, v|v<<8|v<<16|0x80000000, pix[0])
	}
}

func TestClippedCountsOnlyWhatIsSeen(t *testing.T) {
	green, grey := uint32(0xff00ff00), uint32(0xff808080)
	assert.Equal(t, 0.25, FromDisplayP3([]uint32{green, grey, grey, grey, 0x0000ff00, 0x0500ff00}))
	assert.Zero(t, FromDisplayP3([]uint32{0x0000ff00}))
}

// slowShrink is the obvious twin: the area each new pixel shares with each old one.
func slowShrink(d *Drawing, w, h int) [][4]float64 {
	out := make([][4]float64, w*h)
	overlap := func(a, b, c, d float64) float64 { return max(0, min(b, d)-max(a, c)) }
	sx, sy := float64(d.W)/float64(w), float64(d.H)/float64(h)
	for i := range out {
		x, y := float64(i%w), float64(i/w)
		var sum [4]float64
		for j, p := range d.Pix {
			jx, jy := float64(j%d.W), float64(j/d.W)
			area := overlap(x*sx, (x+1)*sx, jx, jx+1) * overlap(y*sy, (y+1)*sy, jy, jy+1)
			for c := range 3 {
				sum[c] += area * float64(p>>(8*c)&255) * float64(p>>24)
			}
			sum[3] += area * float64(p>>24)
		}
		if sum[3] > 1e-9 {
			for c := range 3 {
				out[i][c] = sum[c] / sum[3]
			}
			out[i][3] = sum[3] / (sx * sy)
		}
	}
	return out
}

func TestShrinkAgreesWithItsSlowTwin(t *testing.T) {
	seed := time.Now().UnixNano()
	t.Logf("seed %d", seed)
	rng := rand.New(rand.NewSource(seed))
	for range 60 {
		d := &Drawing{W: 1 + rng.Intn(19), H: 1 + rng.Intn(19)}
		d.Pix = make([]uint32, d.W*d.H)
		for i := range d.Pix {
			d.Pix[i] = rng.Uint32()
		}
		long := 1 + rng.Intn(19)
		s := Shrink(d, long)
		if max(d.W, d.H) <= long {
			assert.Same(t, d, s)
			continue
		}
		require.Equal(t, long, max(s.W, s.H))
		for i, want := range slowShrink(d, s.W, s.H) {
			for c := range 4 {
				require.InDelta(t, want[c], float64(s.Pix[i]>>(8*c)&255), 0.5+1e-6, "%dx%d to %dx%d pixel %d", d.W, d.H, s.W, s.H, i)
			}
		}
	}
}

func TestShrinkKeepsFlatColourExactly(t *testing.T) {
	d := &Drawing{W: 1000, H: 731, FileW: 2000, FileH: 1462, Clipped: 0.5, Pix: make([]uint32, 731000)}
	for i := range d.Pix {
		d.Pix[i] = 0x7f4321fe
	}
	s := Shrink(d, 333)
	for _, p := range s.Pix {
		require.Equal(t, uint32(0x7f4321fe), p)
	}
	assert.Equal(t, [3]int{243, 2000, 1462}, [3]int{s.H, s.FileW, s.FileH})
	assert.Equal(t, 0.5, s.Clipped)
}

func TestThumbnail(t *testing.T) {
	d := draw(t, 80, "  ", "r ", "r ", "rr")
	s := Thumbnail(d, 64)
	assert.Equal(t, [2]int{32, 64}, [2]int{s.W, s.H})
	assert.Equal(t, inks['r'], s.Pix[32*60+8], "solid stays solid, no dark fringe")
	assert.Zero(t, s.Pix[8], "clear stays clear")
	for _, p := range s.Pix {
		if a := p >> 24; a > 60 { // colour is kept where alpha is soft
			assert.InDelta(t, inks['r']&255, p&255, 3)
		}
	}
	assert.Same(t, d, Thumbnail(d, 320))
	assert.Same(t, d, Thumbnail(d, 0))
}

func BenchmarkShrink24Megapixels(b *testing.B) {
	d := &Drawing{W: 6000, H: 4000, Pix: make([]uint32, 24_000_000)}
	for i := range d.Pix {
		d.Pix[i] = 0xff000000 | uint32(i*7919)
	}
	for b.Loop() {
		Shrink(d, WorkingLongSide)
	}
}

func BenchmarkFromDisplayP3(b *testing.B) {
	pix := make([]uint32, 2_500_000)
	for b.Loop() {
		for i := range pix {
			pix[i] = 0xff000000 | uint32(i*7919)&0xffffff
		}
		FromDisplayP3(pix)
	}
}
