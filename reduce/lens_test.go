package reduce

import (
	"image/color"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// throughLens photographs a bar of one colour on white: a lens blurs light
// (IEC 61966-2-1 decoded), the sensor adds grain.
func throughLens(t *testing.T, hex string, from, to float64) *Drawing {
	t.Helper()
	bar := func(x, y float64) bool { return y > 30 && y < 130 && x > from && x < to }
	sharp := rasterise(160, 160, rgb(t, "#ffffff"), shape{rgb(t, "#000000"), bar})
	ink := rgb(t, hex).Linear()
	rng := rand.New(rand.NewPCG(5, 7))
	out := *sharp
	out.Pix = append([]uint8(nil), sharp.Pix...)
	for i := range 160 * 160 {
		x, y := i%160, i/160
		ink1 := 0.0 // how much of the pixel is ink, blurred along the row
		for k, w := range []float64{0.06, 0.24, 0.4, 0.24, 0.06} {
			ink1 += w * (1 - float64(sharp.RGBAAt(min(159, max(0, x+k-2)), y).R)/255)
		}
		grain := 2.5 * rng.NormFloat64()
		level := func(v float64) uint8 {
			return uint8(min(255, max(0, 255*colour.Encode(1-ink1+ink1*v)+grain+0.5)))
		}
		out.SetRGBA(x, y, color.RGBA{level(ink.R), level(ink.G), level(ink.B), 255})
	}
	return drawingOf(t, &out)
}

// In a photograph a dark line has the width it was drawn with, not the width
// at the middle of the encoded levels, which is more than a pixel less. The
// last tenth of a soft edge drowns in the grain: half a pixel is allowed.
func TestWidthsThroughALens(t *testing.T) {
	for _, hex := range []string{"#16233f", "#7a1f2b", "#2a9d8f"} {
		for _, w := range []float64{9, 14.5, 30.25} {
			d := throughLens(t, hex, 60.25, 60.25+w)
			s, err := analysed(t, d).Reduce(Options{Count: 1, RolesOff: true})
			require.NoError(t, err)
			assert.InDelta(t, w, widthOf(s, s.Flats[0].RGB.Hex(), t, 100), 0.55, "%s, %g px", hex, w)
		}
	}
}
