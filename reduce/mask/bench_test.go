package mask

import (
	"image/png"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

// benchPixels is how many pixels the demo lighthouse is brought to.
const (
	benchPixels = 2.5e6
	benchReach  = 24
)

// demo is the demo lighthouse in labels: 0 outside, the rest by how light and
// how red a pixel is.
func demo(b *testing.B) (label []uint8, w, h int) {
	b.Helper()
	f, err := os.Open("../../testdata/drawings/lighthouse.png")
	require.NoError(b, err)
	defer f.Close()
	img, err := png.Decode(f)
	require.NoError(b, err)
	box := img.Bounds()
	k := math.Sqrt(benchPixels / float64(box.Dx()*box.Dy()))
	w, h = int(float64(box.Dx())*k), int(float64(box.Dy())*k)
	label = make([]uint8, w*h)
	for i := range label {
		r, g, bl, a := img.At(box.Min.X+i%w*box.Dx()/w, box.Min.Y+i/w*box.Dy()/h).RGBA()
		if a > 0x8000 {
			label[i] = uint8(1 + (r+g+bl)/0xc001)
			if r > g+0x4000 {
				label[i] += 4
			}
		}
	}
	return label, w, h
}

func BenchmarkConnect(b *testing.B) {
	label, w, h := demo(b)
	for b.Loop() {
		Connect(label, w, h, skipZero)
	}
}

func BenchmarkRidge(b *testing.B) {
	label, w, h := demo(b)
	c := Connect(label, w, h, skipZero)
	b.ReportAllocs()
	for b.Loop() {
		Ridge(label, c, skipZero)
	}
}

func BenchmarkOthers(b *testing.B) {
	label, w, h := demo(b)
	b.ReportAllocs()
	for b.Loop() {
		Others(label, w, h, skipZero)
	}
}

func BenchmarkSitesWithin(b *testing.B) {
	label, w, h := demo(b)
	site := make([]bool, len(label))
	for i := 1; i < len(site); i++ {
		site[i] = i%w > 0 && label[i] != label[i-1]
	}
	b.ReportAllocs()
	for b.Loop() {
		SitesWithin(site, w, h, benchReach)
	}
}
