package reduce

import (
	"bytes"
	"fmt"
	"image"
	imagedraw "image/draw"
	"image/jpeg"
	"image/png"
	"math"
	"os"
	"testing"

	"github.com/anthonynsimon/bild/transform"
	"github.com/stretchr/testify/require"
)

// benchSizes are the working rasters that are measured, in megapixels.
var benchSizes = []float64{1, 2.5, 4}

// benchDrawing is the demo lighthouse on white at a size, clean or as JPEG 80.
func benchDrawing(b *testing.B, mega float64, stained bool) *Drawing {
	b.Helper()
	f, err := os.Open("../testdata/drawings/lighthouse.png")
	require.NoError(b, err)
	defer f.Close()
	src, err := png.Decode(f)
	require.NoError(b, err)
	box := src.Bounds()
	k := math.Sqrt(mega * 1e6 / float64(box.Dx()*box.Dy()))
	w, h := int(float64(box.Dx())*k), int(float64(box.Dy())*k)
	page := image.NewRGBA(image.Rect(0, 0, w, h))
	imagedraw.Draw(page, page.Rect, image.White, image.Point{}, imagedraw.Src)
	imagedraw.Draw(page, page.Rect, transform.Resize(src, w, h, transform.Linear), image.Point{}, imagedraw.Over)
	var img image.Image = page
	if stained {
		var buf bytes.Buffer
		require.NoError(b, jpeg.Encode(&buf, page, &jpeg.Options{Quality: 80}))
		img, err = jpeg.Decode(&buf)
		require.NoError(b, err)
	}
	pix := make([]uint32, w*h)
	for i := range pix {
		r, g, bl, _ := img.At(i%w, i/w).RGBA()
		pix[i] = r>>8 | g&0xff00 | bl>>8<<16 | 0xff000000
	}
	d, err := NewDrawing(w, h, pix)
	require.NoError(b, err)
	return d
}

func benchAll(b *testing.B, run func(b *testing.B, d *Drawing)) {
	for _, mega := range benchSizes {
		for _, kind := range []string{"flat", "jpeg"} {
			b.Run(fmt.Sprintf("%gMpx/%s", mega, kind), func(b *testing.B) {
				d := benchDrawing(b, mega, kind == "jpeg")
				b.ResetTimer()
				run(b, d)
			})
		}
	}
}

func BenchmarkAnalyse(b *testing.B) {
	benchAll(b, func(b *testing.B, d *Drawing) {
		for b.Loop() {
			g, err := FindGround(d, GroundAuto)
			require.NoError(b, err)
			_, err = Analyse(d, g, func(float64, string) error { return nil })
			require.NoError(b, err)
		}
	})
}

func BenchmarkReduce(b *testing.B) {
	benchAll(b, func(b *testing.B, d *Drawing) {
		g, err := FindGround(d, GroundAuto)
		require.NoError(b, err)
		a, err := Analyse(d, g, func(float64, string) error { return nil })
		require.NoError(b, err)
		n := 0
		for b.Loop() {
			_, err = a.Reduce(Options{Count: 3 + n%3})
			require.NoError(b, err)
			n++
		}
	})
}
