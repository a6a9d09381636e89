package reduce

import (
	"image"
	"image/color"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ringLines are two rings of a width, as ink on a clear layer or on paper, in
// a picture of 200 x 200 px.
func ringLines(t *testing.T, hex string, width float64, clear bool) *Drawing {
	t.Helper()
	ink := rgb(t, hex)
	ring := func(x, y float64) bool {
		d, e := math.Hypot(x-100, y-100), math.Hypot(x-100, y-100.5)
		return math.Abs(d-80) < width/2 || math.Abs(e-40) < width/2
	}
	on := rasterise(200, 200, rgb(t, "#ffffff"), shape{rgb(t, "#000000"), ring})
	if !clear {
		return drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"), shape{ink, ring}))
	}
	img := image.NewNRGBA(on.Rect)
	for i := range 200 * 200 {
		img.SetNRGBA(i%200, i/200, color.NRGBA{ink.R, ink.G, ink.B, 255 - on.RGBAAt(i%200, i/200).R})
	}
	return drawingOf(t, &image.RGBA{Pix: img.Pix, Stride: img.Stride, Rect: img.Rect}) // straight alpha, as a Drawing has it
}

// ringColours are the colours for ringLines: sea between the rings, cut short
// of their middles, and the white of the paper within the inner one.
func ringColours(t *testing.T) *Drawing {
	t.Helper()
	return drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"),
		shape{rgb(t, "#2a9d8f"), func(x, y float64) bool {
			d := math.Hypot(x-100, y-100)
			return d < 79 && d > 41 && x < 100
		}},
		shape{rgb(t, "#e76f51"), func(x, y float64) bool {
			d := math.Hypot(x-100, y-100)
			return d < 79 && d > 41 && x >= 100
		}}))
}

func analysedLayers(t *testing.T, a, b *Drawing) *Analysis {
	t.Helper()
	l, err := LayersOf(a, b)
	require.NoError(t, err)
	g, err := FindGround(l.Whole, GroundAuto)
	require.NoError(t, err)
	got, err := AnalyseLayers(l, g, nil)
	require.NoError(t, err)
	return got
}

// Lines of any colour are metal when they come as lines; what they close in is
// an area even where it is the paper's white.
func TestLinesApartAreMetal(t *testing.T) {
	for _, hex := range []string{"#16233f", "#f4d35e", "#d23b2f"} {
		for _, clear := range []bool{true, false} {
			for _, linesFirst := range []bool{true, false} {
				a, b := ringLines(t, hex, 6, clear), ringColours(t)
				if !linesFirst {
					a, b = b, a
				}
				s := at(t, analysedLayers(t, a, b), 6)
				require.Len(t, s.Flats, 4, "%s, clear %t", hex, clear)
				roles := map[Role]int{}
				for _, f := range s.Flats {
					roles[f.Role]++
					if f.Role == Metal {
						assert.Equal(t, hex, f.RGB.Hex())
					}
				}
				assert.Equal(t, map[Role]int{Metal: 1, Enamel: 3}, roles)
				assert.Equal(t, "#ffffff", s.Flats[s.Labels[100*200+100]].RGB.Hex(), "the middle is white")
				assert.Equal(t, None, s.Labels[3*200+3])
			}
		}
	}
}

// The width of a line is what its layer says, to a tenth of a pixel.
func TestLinesApartKeepTheirWidth(t *testing.T) {
	for _, w := range []float64{2, 3.5, 6} {
		s := at(t, analysedLayers(t, ringLines(t, "#16233f", w, true), ringColours(t)), 6)
		area := widthOf(s, "#16233f", t, 1)
		assert.InDelta(t, w, area/(2*math.Pi*(80+40)), 0.1)
	}
}

func TestLayersThatAreNone(t *testing.T) {
	small := drawingOf(t, rasterise(100, 100, rgb(t, "#ffffff"), shape{rgb(t, "#000000"), disc(50, 50, 20)}))
	_, err := LayersOf(small, ringColours(t))
	assert.ErrorContains(t, err, "one size")
	full := drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff"), shape{rgb(t, "#203040"), disc(100, 100, 99)}))
	_, err = LayersOf(full, full)
	assert.ErrorContains(t, err, "looks like lines")
	blank := drawingOf(t, rasterise(200, 200, rgb(t, "#ffffff")))
	_, err = LayersOf(blank, full)
	assert.ErrorContains(t, err, "looks like lines")
}
