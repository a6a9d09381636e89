package reduce

import (
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// shape is what a test picture is made of: a colour, and where it is.
type shape struct {
	rgb colour.RGB8
	in  func(x, y float64) bool
}

// rasterise paints shapes over one another, edges smoothed by 8 x 8 samples
// mixed in encoded sRGB, as rasterisers do.
func rasterise(w, h int, ground colour.RGB8, shapes ...shape) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	const n = 8
	for y := range h {
		for x := range w {
			var r, g, b int
			for s := range n * n {
				c := ground
				fx, fy := float64(x)+(float64(s%n)+0.5)/n, float64(y)+(float64(s/n)+0.5)/n
				for _, sh := range shapes {
					if sh.in(fx, fy) {
						c = sh.rgb
					}
				}
				r, g, b = r+int(c.R), g+int(c.G), b+int(c.B)
			}
			half := n * n / 2
			m.SetRGBA(x, y, color.RGBA{uint8((r + half) / (n * n)), uint8((g + half) / (n * n)), uint8((b + half) / (n * n)), 255})
		}
	}
	return m
}

func disc(cx, cy, r float64) func(x, y float64) bool {
	return func(x, y float64) bool { return (x-cx)*(x-cx)+(y-cy)*(y-cy) < r*r }
}

func ring(cx, cy, r, width float64) func(x, y float64) bool {
	in, out := disc(cx, cy, r-width/2), disc(cx, cy, r+width/2)
	return func(x, y float64) bool { return out(x, y) && !in(x, y) }
}

func drawingOf(t testing.TB, m *image.RGBA) *Drawing {
	t.Helper()
	pix := make([]uint32, len(m.Pix)/4)
	for i := range pix {
		pix[i] = uint32(m.Pix[4*i]) | uint32(m.Pix[4*i+1])<<8 | uint32(m.Pix[4*i+2])<<16 | uint32(m.Pix[4*i+3])<<24
	}
	d, err := NewDrawing(m.Rect.Dx(), m.Rect.Dy(), pix)
	require.NoError(t, err)
	return d
}

func analysed(t testing.TB, d *Drawing) *Analysis {
	t.Helper()
	g, err := FindGround(d, GroundAuto)
	require.NoError(t, err)
	a, err := Analyse(d, g, nil)
	require.NoError(t, err)
	return a
}

func rgb(t testing.TB, hex string) colour.RGB8 {
	t.Helper()
	c, err := colour.ParseHex(hex)
	require.NoError(t, err)
	return c
}

// buoy is an outlined drawing of four colours with an accent.
func buoy(t testing.TB, side int) *Drawing {
	s := float64(side) / 200
	return drawingOf(t, rasterise(side, side, rgb(t, "#ffffff"),
		shape{rgb(t, "#8fc7e8"), disc(100*s, 100*s, 80*s)},
		shape{rgb(t, "#d23b2f"), disc(100*s, 95*s, 45*s)},
		shape{rgb(t, "#f4efe2"), func(x, y float64) bool { return disc(100*s, 95*s, 45*s)(x, y) && y > 85*s && y < 105*s }},
		shape{rgb(t, "#1b1b1f"), ring(100*s, 95*s, 45*s, 5*s)},
		shape{rgb(t, "#1b1b1f"), ring(100*s, 100*s, 80*s, 5*s)},
		shape{rgb(t, "#1b1b1f"), func(x, y float64) bool { return x > 98*s && x < 102*s && y > 20*s && y < 50*s }},
		shape{rgb(t, "#ffd35a"), disc(100*s, 95*s, 5*s)},
	))
}

func TestOutlinedDrawing(t *testing.T) {
	a := analysed(t, buoy(t, 400))
	n, why := a.Suggested()
	assert.Equal(t, 4, n)
	assert.Contains(t, why, "4 colours")
	require.True(t, a.Lined())
	s, err := a.Reduce(Options{Count: n})
	require.NoError(t, err)
	want := map[string]Role{"#8fc7e8": Enamel, "#d23b2f": Enamel, "#f4efe2": Enamel, "#ffd35a": Enamel, "#1b1b1f": Metal}
	require.Len(t, s.Flats, len(want))
	for _, f := range s.Flats {
		assert.Equal(t, want[f.RGB.Hex()], f.Role, f.RGB.Hex())
	}
}
