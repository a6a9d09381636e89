package trace

import (
	"image"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/vector"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// drawnBack rasterises areas with a general-purpose rasteriser, up times finer
// than the raster they were traced from: cover of each pixel, 0..255.
func drawnBack(b *sizing.Badge, sh *Shapes, up int, areas []Area) []uint8 {
	w, h := b.Sep.W*up, b.Sep.H*up
	z := vector.NewRasterizer(w, h)
	at := func(p Point) (float32, float32) {
		x, y := px(b, p)
		return float32(x * float64(up)), float32(y * float64(up))
	}
	sh.Walk(Walker{
		Move: func(p Point) { z.MoveTo(at(p)) },
		Line: func(p Point) { z.LineTo(at(p)) },
		Curve: func(c1, c2, to Point) {
			x1, y1 := at(c1)
			x2, y2 := at(c2)
			x, y := at(to)
			z.CubeTo(x1, y1, x2, y2, x, y)
		},
		Close: z.ClosePath,
	}, areas...)
	dst := image.NewAlpha(image.Rect(0, 0, w, h))
	z.Draw(dst, dst.Rect, image.Opaque, image.Point{})
	return dst.Pix
}

// backAgain is the separation that the curves give when they are drawn.
func backAgain(b *sizing.Badge, sh *Shapes, up int) *reduce.Separation {
	s := reduce.NewSeparation(b.Sep.W*up, b.Sep.H*up)
	s.Flats = b.Sep.Flats
	covers := map[uint8][]uint8{}
	for _, f := range append(append([]Face{}, sh.Enamel...), sh.Metal) {
		for l := range s.Flats {
			if s.Flats[l].ID == f.Flat {
				covers[uint8(l)] = drawnBack(b, sh, up, f.Areas)
			}
		}
	}
	for i := range s.Labels {
		var n [256]int
		rest := 255
		for l, c := range covers {
			n[l] = int(c[i])
			rest -= n[l]
		}
		n[sky] = max(rest, 0)
		first, second := top2(&n)
		s.Labels[i], s.Beside[i], s.Cover[i] = first, second, 255
		if second != first {
			s.Cover[i] = uint8(max(128, 255*n[first]/(n[first]+n[second])))
		}
	}
	return s
}

// thinner is what tracing may take from the width of a line, both edges
// together: what the page promises.
const thinner unit.MM = 0.02

func widths(t *testing.T, s *reduce.Separation) *wall.Measured {
	m, err := wall.Measure(s, nil)
	require.NoError(t, err)
	return m
}

func TestBarsKeepTheirWidth(t *testing.T) {
	const up, scale = 3, 40
	for _, width := range []float64{2.2, 4, 7.3} {
		for _, turn := range []float64{0, 0.1, 0.45, 1.2} {
			sin, cos := math.Sincos(turn)
			b, sh := traced(t, scene(140, 140, func(x, y float64) uint8 {
				x, y = x-70.2, y-69.7
				switch across, along := math.Abs(cos*y-sin*x), math.Abs(cos*x+sin*y); {
				case math.Hypot(x, y) > 60:
					return sky
				case across < width/2 && along < 40:
					return steel
				}
				return red
			}), scale)
			was, is := widths(t, b.Sep), widths(t, backAgain(b, sh, up))
			for _, along := range []float64{-30, -11, 0, 17, 31} {
				x, y := 70.2+along*cos, 69.7+along*sin
				before, after := was.At(x, y).Width, is.At(x*up, y*up).Width/up
				assert.InDelta(t, before, after, thinner.Px(scale), "%v px at %v, %v along", width, turn, along)
				assert.InDelta(t, width, after, 0.25, "%v px at %v, %v along", width, turn, along)
			}
		}
	}
}

// wave is a small badge with thin curved lines of a width, px, in every
// direction.
func wave(width float64) *reduce.Separation {
	return scene(320, 320, func(x, y float64) uint8 {
		x, y = x-160.2, y-159.8
		d, a := math.Hypot(x, y), math.Atan2(y, x)
		petal := d - 95 - 25*math.Cos(5*a)
		switch {
		case d > 150:
			return sky
		case d > 150-2*width, math.Abs(petal)/math.Hypot(1, 125*math.Sin(5*a)/max(d, 20)) < width/2:
			return steel
		case petal > 0:
			return blue
		case math.Abs(d-40) < width/2:
			return steel
		}
		return red
	})
}

func TestNoLineComesOutThinner(t *testing.T) {
	const up, scale = 3, 45
	for _, width := range []float64{4.5, 9} {
		b, sh := traced(t, wave(width), scale)
		was, is := widths(t, b.Sep), widths(t, backAgain(b, sh, up))
		looked := 0
		for y := 2; y < b.Sep.H; y += 5 {
			for x := 2; x < b.Sep.W; x += 5 {
				if b.Sep.Labels[y*b.Sep.W+x] != steel || b.Sep.Cover[y*b.Sep.W+x] < 255 {
					continue
				}
				before := was.At(float64(x)+0.5, float64(y)+0.5)
				after := is.At((float64(x)+0.5)*up, (float64(y)+0.5)*up)
				if after.Label == steel && before.Width < 3*width {
					looked++
					assert.GreaterOrEqual(t, after.Width/up, before.Width-thinner.Px(scale), "at %d, %d", x, y)
				}
			}
		}
		assert.Greater(t, looked, 100)
		assert.LessOrEqual(t, sh.Within, DefaultTolerance)
	}
}

// Drawn again by a general-purpose rasteriser, at most so many pixels get
// another flat than the raster gave them.
const mostOther = 0.003

func TestDrawnBackTheFlatsAreTheSame(t *testing.T) {
	names := []string{"lighthouse.png", "harbour.png", "lines-photo.jpg"}
	if testing.Short() {
		names = names[:1]
	}
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			b := struckBadge(t, flatDrawing(t, name, 0), 32)
			sh, err := Trace(b, 0, nil)
			require.NoError(t, err)
			checkShared(t, sh)
			checkUncrossed(t, b, sh)
			other := 0
			for i, l := range backAgain(b, sh, 1).Labels {
				if l != b.Sep.Labels[i] {
					other++
				}
			}
			assert.Less(t, float64(other)/float64(len(b.Sep.Labels)), mostOther)
		})
	}
}

// struckBadge is a flat drawing at a size, with the lines that are proposed for it.
func struckBadge(t testing.TB, s *reduce.Separation, mm unit.MM) *sizing.Badge {
	box, ok := sizing.Outline(s)
	require.True(t, ok)
	scale := sizing.ScaleFor(box, sizing.Size{MM: mm, By: sizing.ByLongest})
	recipes := wall.Suggest(s)
	if len(recipes) > 0 {
		var err error
		s, err = wall.NewBuilder(s).Apply(recipes, scale, sizing.DefaultLimits(sizing.Struck, sizing.Soft))
		require.NoError(t, err)
	}
	return &sizing.Badge{Sep: s, Scale: scale, Outline: box}
}

func TestABendTakesNoMorePlacesThanItHasRoomFor(t *testing.T) {
	var tr trail
	for i := range 400 {
		tr.p = append(tr.p, vec{x: 0.05 * float64(i)})
	}
	assert.Equal(t, windowMost, tr.both(200, 9).n)
}
