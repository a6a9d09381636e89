package trace

import (
	"image"
	"image/draw"
	_ "image/jpeg"
	_ "image/png"
	"math"
	"os"
	"testing"

	"github.com/anthonynsimon/bild/transform"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
)

const benchPixels = 2.5e6

// flatDrawing is one of the test drawings in flats, as many as it has, brought
// to a number of pixels or as it is.
func flatDrawing(t testing.TB, name string, pixels float64) *reduce.Separation {
	t.Helper()
	f, err := os.Open("../../testdata/drawings/" + name)
	require.NoError(t, err)
	defer f.Close()
	src, _, err := image.Decode(f)
	require.NoError(t, err)
	w, h := src.Bounds().Dx(), src.Bounds().Dy()
	if pixels > 0 {
		k := math.Sqrt(pixels / float64(w*h))
		w, h = int(float64(w)*k), int(float64(h)*k)
		src = transform.Resize(src, w, h, transform.Linear)
	}
	m := image.NewNRGBA(image.Rect(0, 0, w, h))
	draw.Draw(m, m.Rect, src, src.Bounds().Min, draw.Src)
	pix := make([]uint32, w*h)
	for i := range pix {
		p := m.Pix[4*i : 4*i+4]
		pix[i] = uint32(p[0]) | uint32(p[1])<<8 | uint32(p[2])<<16 | uint32(p[3])<<24
	}
	d, err := reduce.NewDrawing(w, h, pix)
	require.NoError(t, err)
	g, err := reduce.FindGround(d, reduce.GroundAuto)
	require.NoError(t, err)
	a, err := reduce.Analyse(d, g, nil)
	require.NoError(t, err)
	n, _ := a.Suggested()
	s, err := a.Reduce(reduce.Options{Count: n})
	require.NoError(t, err)
	return s
}

func BenchmarkTrace(b *testing.B) {
	for _, name := range []string{"lighthouse.png", "harbour.png", "lighthouse-white.jpg"} {
		b.Run(name, func(b *testing.B) {
			badge := struckBadge(b, flatDrawing(b, name, benchPixels), 32)
			b.ReportAllocs()
			for b.Loop() {
				_, err := Trace(badge, 0, nil)
				require.NoError(b, err)
			}
		})
	}
}
