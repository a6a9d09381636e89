package sight

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

// drawn reads a separation from text: a letter is a flat, a dot is nothing.
func drawn(flats []reduce.Flat, rows ...string) *sizing.Badge {
	s := reduce.NewSeparation(len(rows[0]), len(rows))
	s.Flats = flats
	for y, r := range rows {
		for x := range r {
			if r[x] != '.' {
				s.Labels[y*s.W+x] = r[x] - 'a'
				s.Beside[y*s.W+x] = r[x] - 'a'
			}
		}
	}
	box, _ := sizing.Outline(s)
	return &sizing.Badge{Sep: s, Scale: 10, Outline: box}
}

var metalAndRed = []reduce.Flat{flat(0, reduce.Metal, 0), flat(1, reduce.Enamel, 0xff0000), flat(2, reduce.Printed, 0x0000ff)}

func TestLaySpreadsByArea(t *testing.T) {
	b := drawn(metalAndRed,
		"aabb",
		"aabb")
	b.Sep.Labels[1], b.Sep.Beside[1], b.Sep.Cover[1] = 0, 1, 153 // three fifths metal
	f := lay(b, Image{W: 2, H: 1, Scale: 0.5}, nil)
	assert.InDeltaSlice(t, []float64{1, 1}, wide(f.solid), 1e-6)
	assert.InDeltaSlice(t, []float64{0.9, 0}, wide(f.metal), 1e-6)
	assert.InDeltaSlice(t, []float64{1, 1}, wide(f.r), 1e-6, "the colour of the coloured share")
	f.mirror()
	assert.InDeltaSlice(t, []float64{0, 0.9}, wide(f.metal), 1e-6)
}

func wide(v []float32) []float64 {
	out := make([]float64, len(v))
	for i := range v {
		out[i] = float64(v[i])
	}
	return out
}

// TestLayAgainstItsTwin compares the areas with a sum over every pair of
// working pixel and picture pixel.
func TestLayAgainstItsTwin(t *testing.T) {
	const seed = 5
	rng := rand.New(rand.NewSource(seed))
	s := reduce.NewSeparation(23, 17)
	s.Flats = metalAndRed
	for i := range s.Labels {
		s.Labels[i], s.Beside[i], s.Cover[i] = uint8(rng.Intn(2)), uint8(rng.Intn(2)), uint8(128+rng.Intn(128))
	}
	b := &sizing.Badge{Sep: s, Scale: 10}
	fr := Image{W: 11, H: 9, Scale: 0.41, DX: 0.7, DY: -0.3}
	f := lay(b, fr, nil)
	has := s.WithRole(reduce.Metal)
	for v := 0; v < fr.H; v++ {
		for u := 0; u < fr.W; u++ {
			var metal float64
			for i := range s.Labels {
				x, y := float64(i%s.W), float64(i/s.W)
				metal += s.CoverOf(i, has) * overlap(x*fr.Scale+fr.DX, fr.Scale, u) * overlap(y*fr.Scale+fr.DY, fr.Scale, v)
			}
			require.InDelta(t, metal, float64(f.metal[v*fr.W+u]), 1e-4, "pixel (%d, %d), seed %d", u, v, seed)
		}
	}
}

func overlap(from, length float64, cell int) float64 {
	return max(0, min(from+length, float64(cell+1))-max(from, float64(cell)))
}

func TestPrintLiesOnWhatItTouches(t *testing.T) {
	on := underPrint(drawn(metalAndRed, "aaaa", "acca", "aaaa").Sep)
	assert.Equal(t, float32(1), on[2], "printed on metal")
	on = underPrint(drawn(metalAndRed, "bbbb", "bccb", "aaaa").Sep)
	assert.Equal(t, float32(0), on[2], "printed on enamel")
}

func TestBoxAgainstItsTwin(t *testing.T) {
	const seed, w, h = 9, 19, 13
	rng := rand.New(rand.NewSource(seed))
	in := make([]float32, w*h)
	for i := range in {
		in[i] = rng.Float32()
	}
	for _, width := range []float64{1.5, 3, 4.2, 9, 40} {
		got := append([]float32(nil), in...)
		box(got, make([]float32, w*h), w, h, width)
		for i := range in {
			var want float64
			for j := range in {
				want += float64(in[j]) * boxWeight(i%w-j%w, width) * boxWeight(i/w-j/w, width)
			}
			require.InDelta(t, want, float64(got[i]), 1e-5, "width %v, pixel %d, seed %d", width, i, seed)
		}
	}
}

// boxWeight is what a box centred on a pixel covers of one n further on.
func boxWeight(n int, width float64) float64 {
	at := math.Abs(float64(n))
	return max(0, min(at+0.5, width/2)-max(at-0.5, -width/2)) / width
}

// TestTheCoarseBlurIsTheFineOne: a hundredth of a shadow is, at
// shadowAlpha, one level of 255.
func TestTheCoarseBlurIsTheFineOne(t *testing.T) {
	const w, h = 90, 71
	in := coverBy(w, h, func(x, y float64) float64 { return 20.3 - math.Hypot(x-40.2, y-33.1) })
	for _, width := range []float64{20, 31.4} {
		fine := append([]float32(nil), in...)
		tmp := make([]float32, w*h)
		box(fine, tmp, w, h, width)
		box(fine, tmp, w, h, width)
		got := soften(in, w, h, width)
		for i := range fine {
			// Past the outermost coarse middles there is nothing to go between.
			if x, y := i%w, i/w; min(x, y, w-1-x, h-1-y) < coarseBy {
				continue
			}
			require.InDelta(t, float64(fine[i]), float64(got[i]), 0.01, "width %v, pixel %d", width, i)
		}
	}
}

func TestAWindowHasTheVarianceAskedFor(t *testing.T) {
	for _, v := range []float64{0.1, 0.66, 1.17, 2, 9.3} {
		assert.InDelta(t, v, windowOf(widthOf(v)).variance(), 1e-5)
	}
}

func TestSideIsTheMostOfShiftedCopies(t *testing.T) {
	const seed, w, h = 3, 12, 12
	rng := rand.New(rand.NewSource(seed))
	s := scene{field: &field{w: w, h: h, solid: make([]float32, w*h)}}
	for i := range s.solid {
		s.solid[i] = rng.Float32()
	}
	for depth := 0; depth < 8; depth++ {
		got := s.sideOf(depth)
		for y := 0; y < h; y++ {
			for x := 0; x < w; x++ {
				want := s.solid[y*w+x]
				for k := 1; k <= min(depth, x, y); k++ {
					want = max(want, s.solid[(y-k)*w+x-k])
				}
				require.Equal(t, want, got[y*w+x], "depth %d at (%d, %d), seed %d", depth, x, y, seed)
			}
		}
	}
}
