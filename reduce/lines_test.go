package reduce

import (
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// onClear is a line drawing of two closed cells on a transparent layer.
func onClear(t *testing.T) *Drawing {
	t.Helper()
	paper := boxDrawing(t, 0)
	img := image.NewNRGBA(image.Rect(0, 0, paper.W, paper.H))
	for i, p := range paper.Pix {
		img.SetNRGBA(i%paper.W, i/paper.W, color.NRGBA{0x11, 0x11, 0x11, 255 - uint8(p)})
	}
	return drawingOf(t, &image.RGBA{Pix: img.Pix, Stride: img.Stride, Rect: img.Rect})
}

func TestLinesAloneCloseInWhite(t *testing.T) {
	d := onClear(t)
	a := analysed(t, d)
	require.True(t, a.OnlyLines())
	assert.Equal(t, None, at(t, a, 2).Labels[80*200+60], "on a clear ground there is nothing within")

	g, err := FindGround(OnWhite(d), GroundPaper)
	require.NoError(t, err)
	a, err = Analyse(OnWhite(d), g, nil)
	require.NoError(t, err)
	assert.False(t, a.OnlyLines())
	s := at(t, a, 2)
	assert.Equal(t, "#ffffff", s.Flats[s.Labels[80*200+60]].RGB.Hex())
	assert.Equal(t, None, s.Labels[5*200+5])
	assert.False(t, analysed(t, buoy(t, 200)).OnlyLines(), "a coloured drawing")
}
