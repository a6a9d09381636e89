package reduce

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// onCanvas is a white canvas of w x h pixels with a disc of radius r at (x, y).
func onCanvas(t *testing.T, w, h int, x, y, r float64) (*Drawing, *Ground) {
	d := drawingOf(t, rasterise(w, h, rgb(t, "#ffffff"), shape{rgb(t, "#d23b2f"), disc(x, y, r)}))
	g, err := FindGround(d, GroundAuto)
	require.NoError(t, err)
	return d, g
}

func TestASmallDrawingOnALargeCanvasIsLookedAtCloser(t *testing.T) {
	d, g := onCanvas(t, 800, 600, 200, 300, 100)
	d.FileW, d.FileH = 4000, 3000
	part, ok := d.Closer(g, 4000)
	require.True(t, ok)
	// The disc and an eighth of its width round it, less a pixel of soft edge.
	for k, want := range []float64{76.0 / 800, 176.0 / 600, 324.0 / 800, 424.0 / 600} {
		assert.InDelta(t, want, part[k], 2.0/600)
	}
	part, w, h := WorkingPart(part, d.FileW, d.FileH, 4000)
	assert.InDelta(t, 1240, w, 12, "as many pixels as the file has there")
	assert.InDelta(t, 1240, h, 12)
	for k, side := range []float64{4000, 3000, 4000, 3000} {
		assert.InDelta(t, 0, part[k]*side-float64(int(part[k]*side+0.5)), 1e-6, "edges on whole pixels of the file")
	}

	_, ok = d.Closer(g, 900)
	assert.False(t, ok, "the file has little more to show")
	_, ok = d.Closer(g, 1400)
	assert.True(t, ok)
	d.FileW = 5000
	_, ok = d.Closer(g, 1400)
	assert.False(t, ok, "a heavy file has to show more")
	d, g = onCanvas(t, 800, 600, 400, 300, 290)
	_, ok = d.Closer(g, 900)
	assert.False(t, ok, "the drawing fills its canvas")
	g.Found = GroundNone
	_, ok = d.Closer(g, 8000)
	assert.False(t, ok, "the whole file is drawing")
}

func TestPlacesInTheFile(t *testing.T) {
	d := &Drawing{W: 100, H: 50, FileW: 400, FileH: 200}
	x, y := d.InFile(50, 25)
	assert.Equal(t, [2]float64{200, 100}, [2]float64{x, y})
	d.Part = Part{0.5, 0.25, 0.75, 0.5}
	x, y = d.InFile(0, 50)
	assert.Equal(t, [2]float64{200, 100}, [2]float64{x, y})
}
