package reduce

import (
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// Two shapes that meet within a column of pixels, painted one after the other
// by simple alpha compositing, as SVG renderers do: what lies under them
// shows through there, by a quarter where each covers half.
func TestASeamIsNoColour(t *testing.T) {
	left, right := rgb(t, "#d23b2f"), rgb(t, "#2a9d8f")
	for _, under := range []string{"#ffffff", "#1d3557", "#f4d35e"} {
		for _, half := range []float64{0.25, 0.5, 0.75} {
			g := rgb(t, under)
			img := rasterise(160, 160, rgb(t, "#ffffff"), shape{g, disc(80, 80, 72)},
				shape{left, func(x, y float64) bool { return x > 30 && x < 80 && y > 40 && y < 120 }},
				shape{right, func(x, y float64) bool { return x > 80 && x < 130 && y > 40 && y < 120 }})
			mix := func(l, r, g uint8) uint8 {
				return uint8(float64(r)*(1-half) + half*(float64(l)*half+float64(g)*(1-half)) + 0.5)
			}
			for y := 40; y < 120; y++ {
				img.SetRGBA(80, y, color.RGBA{mix(left.R, right.R, g.R), mix(left.G, right.G, g.G), mix(left.B, right.B, g.B), 255})
			}
			s, err := analysed(t, drawingOf(t, img)).Reduce(Options{Count: 8, RolesOff: true})
			require.NoError(t, err)
			want := map[string]bool{left.Hex(): true, right.Hex(): true, under: under != "#ffffff"}
			for _, f := range s.Flats {
				assert.True(t, want[f.RGB.Hex()], "%s under, %g: %s of %.5f", under, half, f.RGB.Hex(), f.Share)
			}
		}
	}
}

// A line of another colour there is one all the same.
func TestAThinLineBetweenTwoShapesIsNoSeam(t *testing.T) {
	img := rasterise(160, 160, rgb(t, "#ffffff"),
		shape{rgb(t, "#d23b2f"), func(x, y float64) bool { return x > 30 && x < 80 && y > 40 && y < 120 }},
		shape{rgb(t, "#2a9d8f"), func(x, y float64) bool { return x > 80 && x < 130 && y > 40 && y < 120 }},
		shape{rgb(t, "#f4d35e"), func(x, y float64) bool { return x > 79.5 && x < 81 && y > 40 && y < 120 }})
	s, err := analysed(t, drawingOf(t, img)).Reduce(Options{Count: 8, RolesOff: true})
	require.NoError(t, err)
	require.Len(t, s.Flats, 3)
	assert.Less(t, colour.CIEDE2000(rgb(t, "#f4d35e").Lab(), s.Flats[2].RGB.Lab()), 2.0, s.Flats[2].RGB.Hex())
}
