package wall

import (
	"bytes"
	"image"
	imagedraw "image/draw"
	"image/jpeg"
	"image/png"
	"math"
	"os"
	"testing"

	"github.com/anthonynsimon/bild/transform"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

const (
	benchPixels = 2.5e6
	benchCount  = 7
	benchScale  = 50 // px per mm: about 33 mm high
)

var benchLimits = sizing.DefaultLimits(sizing.Struck, sizing.Soft)

// demos are the demo lighthouse in flats, by whether it was a JPEG.
var demos = map[bool]*reduce.Separation{}

func demo(b *testing.B, stained bool) *reduce.Separation {
	b.Helper()
	if demos[stained] == nil {
		d := demoDrawing(b, stained)
		g, err := reduce.FindGround(d, reduce.GroundAuto)
		require.NoError(b, err)
		a, err := reduce.Analyse(d, g, nil)
		require.NoError(b, err)
		demos[stained], err = a.Reduce(reduce.Options{Count: benchCount})
		require.NoError(b, err)
	}
	return demos[stained]
}

// demoDrawing is the demo lighthouse on white, clean or as JPEG 80.
func demoDrawing(b *testing.B, stained bool) *reduce.Drawing {
	f, err := os.Open("../../testdata/drawings/lighthouse.png")
	require.NoError(b, err)
	defer f.Close()
	src, err := png.Decode(f)
	require.NoError(b, err)
	box := src.Bounds()
	k := math.Sqrt(benchPixels / float64(box.Dx()*box.Dy()))
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
	d, err := reduce.NewDrawing(w, h, pix)
	require.NoError(b, err)
	return d
}

func benchBoth(b *testing.B, run func(b *testing.B, s *reduce.Separation)) {
	for _, kind := range []string{"flat", "jpeg"} {
		b.Run(kind, func(b *testing.B) {
			s := demo(b, kind == "jpeg")
			b.ReportAllocs()
			b.ResetTimer()
			run(b, s)
		})
	}
}

func BenchmarkMeasure(b *testing.B) {
	benchBoth(b, func(b *testing.B, s *reduce.Separation) {
		for b.Loop() {
			measured(b, s)
		}
	})
}

func BenchmarkFindings(b *testing.B) {
	benchBoth(b, func(b *testing.B, s *reduce.Separation) {
		m := measured(b, s)
		for b.Loop() {
			m.Findings(benchScale, benchLimits)
		}
	})
}

func BenchmarkFindingsAllTooThin(b *testing.B) {
	benchBoth(b, func(b *testing.B, s *reduce.Separation) {
		m := measured(b, s)
		for b.Loop() {
			m.Findings(4*benchScale, benchLimits)
		}
	})
}

func BenchmarkHoldsFrom(b *testing.B) {
	benchBoth(b, func(b *testing.B, s *reduce.Separation) {
		m := measured(b, s)
		box, _ := sizing.Outline(s)
		for b.Loop() {
			m.HoldsFrom(box, sizing.ByLongest, benchLimits)
		}
	})
}

func BenchmarkBuilderFirst(b *testing.B) {
	benchBoth(b, func(b *testing.B, s *reduce.Separation) {
		for b.Loop() {
			build(b, NewBuilder(s))
		}
	})
}

func BenchmarkApply(b *testing.B) {
	benchBoth(b, func(b *testing.B, s *reduce.Separation) {
		builder := NewBuilder(s)
		for b.Loop() {
			build(b, builder)
		}
	})
}

func build(b testing.TB, builder *Builder) {
	recipes := []sizing.Recipe{{Kind: sizing.OuterEdge}, {Kind: sizing.BuildLines}}
	_, err := builder.Apply(recipes, benchScale, benchLimits)
	require.NoError(b, err)
}

func BenchmarkSuggest(b *testing.B) {
	benchBoth(b, func(b *testing.B, s *reduce.Separation) {
		for b.Loop() {
			Suggest(s)
		}
	})
}
