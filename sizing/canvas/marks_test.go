package canvas

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/ink"
)

// art is a file of 1200 x 900 px that was looked at in 400 x 300.
var art = Art{W: 1200, H: 900, KX: 3, KY: 3, Scale: 10}

func thinLine(x0, y0, x1, y1 float32) sizing.Finding {
	return sizing.Finding{
		Kind: sizing.ThinLine, Verdict: sizing.Fails, Count: 1, Typical: 0.4, X: float64(x0+x1) / 2, Y: float64(y0+y1) / 2,
		X0: float64(x0), Y0: float64(y0), X1: float64(x1), Y1: float64(y1), Path: []float32{x0, y0, x1, y1},
	}
}

func marked(t *testing.T, a Art, spots ...sizing.Finding) *image.NRGBA {
	t.Helper()
	file, err := Marks(a, spots).PNG(30, nil)
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	read, ok := img.(*image.NRGBA)
	require.True(t, ok)
	return read
}

func TestAMarkGoesRoundItsSpotAndLeavesItOpen(t *testing.T) {
	img := marked(t, art, thinLine(100, 150, 300, 150))
	require.Equal(t, image.Rect(0, 0, 1200, 900), img.Rect)
	// The line is 4 working px wide, so 12 px of the file: 444 to 456.
	for x := 300; x <= 900; x += 50 {
		for y := 444; y <= 456; y++ {
			require.Zero(t, img.NRGBAAt(x, y).A, "the artist sees the line at %d,%d", x, y)
		}
		above, below := 0, 0
		for d := 6; d < 20; d++ {
			above, below = above+int(img.NRGBAAt(x, 450-d).A), below+int(img.NRGBAAt(x, 450+d).A)
		}
		require.Greater(t, above, 3*255, "marked above at %d", x)
		require.Greater(t, below, 3*255, "marked below at %d", x)
	}
	assert.Zero(t, img.NRGBAAt(100, 100).A)
	assert.Zero(t, img.NRGBAAt(1100, 800).A)
}

func TestAPartOfAFileIsMarkedWhereItLies(t *testing.T) {
	part := art
	part.X, part.Y, part.KX, part.KY = 600, 300, 1.5, 1.5
	img := marked(t, part, thinLine(100, 150, 300, 150))
	inked := image.Rectangle{}
	for y := range 900 {
		for x := range 1200 {
			if img.NRGBAAt(x, y).A > 0 {
				inked = inked.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	assert.InDelta(t, 750, inked.Min.X, 20) // 600 + 1.5*100
	assert.InDelta(t, 1050, inked.Max.X, 20)
	assert.True(t, image.Pt(900, 525).In(inked))
}

func TestNumbersStandClearOfEachOtherAndInside(t *testing.T) {
	var spots []sizing.Finding
	for i := range 40 { // a crowd in a corner
		spots = append(spots, thinLine(float32(4+6*i), 5, float32(8+6*i), 9))
	}
	m := &marks{Sheet: &ink.Sheet{W: art.W, H: art.H}, art: art, pen: 2}
	for i := range spots {
		m.ways = append(m.ways, m.wayOf(&spots[i]))
	}
	for i := range spots {
		m.place(i, fmt.Sprint(i+1))
	}
	require.Len(t, m.taken, 40)
	for i, a := range m.taken {
		assert.True(t, a[0] >= 0 && a[1] >= 0 && a[2] <= 1200 && a[3] <= 900, "%v", a)
		for _, b := range m.taken[:i] {
			assert.False(t, a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3], "%v hides %v", a, b)
		}
	}
}

// Two thin lines run side by side; each number stands off both.
func TestNumbersStandOffTheSpots(t *testing.T) {
	m := &marks{Sheet: &ink.Sheet{W: art.W, H: art.H}, art: art, pen: 2}
	spots := []sizing.Finding{thinLine(100, 150, 300, 150), thinLine(100, 162, 300, 162)}
	for i := range spots {
		m.ways = append(m.ways, m.wayOf(&spots[i]))
	}
	for i := range spots {
		m.place(i, fmt.Sprint(i+1))
	}
	for _, b := range m.taken {
		for _, y := range []float64{450, 486} {
			assert.True(t, b[3] < y-6 || b[1] > y+6, "the number at %v lies on the line at %v", b, y)
		}
		assert.Less(t, max(450-b[3], b[1]-486), 60., "and near them")
	}
}

func TestSpotsWithoutAPathAreRinged(t *testing.T) {
	f := sizing.Finding{Kind: sizing.SmallArea, Verdict: sizing.CannotTell, Count: 1, X: 200, Y: 150, X0: 190, Y0: 140, X1: 210, Y1: 160}
	img := marked(t, art, f)
	assert.Zero(t, img.NRGBAAt(600, 450).A, "open within")
	ring := 0.0
	for d := 30; d < 60; d++ { // the box reaches 30 px from its middle, its corners 42
		ring += float64(img.NRGBAAt(600-d, 450).A) / 255
	}
	assert.Greater(t, ring, 2., "and ringed")
	f.Count = 12
	img = marked(t, art, f)
	assert.Zero(t, img.NRGBAAt(600-45, 450).A, "what stands for many is marked at its worst place alone")
}

// WCAG 2.2, 1.4.11: 3 to 1 at least between what must be told apart; of the two
// lines of a mark one has that on anything, light or dark.
func TestMarksAreSeenOnAnything(t *testing.T) {
	rgb := func(v sizing.Verdict) colour.RGB8 {
		c := markInks[v]
		return colour.RGB8{R: c.R, G: c.G, B: c.B}
	}
	dark := colour.RGB8{R: markDark.R, G: markDark.G, B: markDark.B}
	for _, v := range []sizing.Verdict{sizing.Fails, sizing.CannotTell, sizing.Holds} {
		for grey := range 256 {
			under := colour.RGB8{R: uint8(grey), G: uint8(grey), B: uint8(grey)}
			best := max(colour.Contrast(under, rgb(v)), colour.Contrast(under, dark))
			assert.GreaterOrEqual(t, best, 3., "%v on grey %d", v, grey)
		}
		assert.Greater(t, colour.Contrast(dark, rgb(v)), 4.5, "its number is read")
	}
}

func TestFewPixelsAreMarkedToo(t *testing.T) {
	for _, side := range []int{1, 7, 40} {
		a := Art{W: side, H: side, KX: 1, KY: 1, Scale: 1}
		img := marked(t, a, thinLine(0, 0, 3, 3), sizing.Finding{Verdict: sizing.Holds, Count: 1})
		assert.Equal(t, side, img.Rect.Dx())
	}
}
