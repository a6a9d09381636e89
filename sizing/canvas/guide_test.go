package canvas

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/png"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// printed writes a guide and reads it as any program would.
func printed(t *testing.T, p Plan, c Canvas) (Guide, []byte, *image.NRGBA) {
	t.Helper()
	g := p.Guide(c, false)
	file, err := g.PNG(float64(c.Scale), nil)
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	read, ok := img.(*image.NRGBA)
	require.True(t, ok)
	return g, file, read
}

func TestTheGuideHasTheSizeAndTheScaleOfItsCanvas(t *testing.T) {
	p := planned(38.1, sizing.Struck, sizing.Hard)
	c := laidOut(t, p)
	_, file, img := printed(t, p, c)
	assert.Equal(t, image.Rect(0, 0, c.W, c.H), img.Rect)
	at := bytes.Index(file, []byte("pHYs"))
	require.Positive(t, at)
	perMetre := binary.BigEndian.Uint32(file[at+4:])
	// Printed at its scale the pin's box is the size of the pin (PNG, 11.3.4.3).
	assert.InDelta(t, 38.1, float64(c.X1-c.X0)/float64(perMetre)*1000, 0.005)
	assert.Zero(t, img.NRGBAAt(c.W/2+3, c.H/2+7).A, "one sees through it")
	assert.Zero(t, img.NRGBAAt(0, 0).A)
}

func TestOnWhiteNothingIsSeenThrough(t *testing.T) {
	p := planned(25, sizing.Cast, sizing.Soft)
	g := p.Guide(laidOut(t, p), true)
	file, err := g.PNG(0, nil)
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	for y := 0; y < g.H; y += 7 {
		for x := 0; x < g.W; x += 7 {
			_, _, _, a := img.At(x, y).RGBA()
			require.EqualValues(t, 0xffff, a)
		}
	}
}

// around takes a part of the guide for a flat drawing in which the ink is metal
// and the rest enamel.
func around(img *image.NRGBA, x0, y0, x1, y1 int) *reduce.Separation {
	s := reduce.NewSeparation(x1-x0, y1-y0)
	s.Flats = []reduce.Flat{{ID: 0, Role: reduce.Enamel}, {ID: 1, Role: reduce.Metal}}
	for i := range s.Labels {
		a := float64(img.NRGBAAt(x0+i%s.W, y0+i/s.W).A) / 255
		first, second := uint8(1), uint8(0)
		if a < 0.5 {
			first, second, a = second, first, 1-a
		}
		s.Labels[i], s.Beside[i], s.Cover[i] = first, second, uint8(math.Round(255*a))
	}
	return s
}

// widthOf measures a sample as the tool measures a drawing: the line, the room
// between two lines or in a ring, whatever lies in its middle.
func widthOf(t *testing.T, img *image.NRGBA, s Sample) float64 {
	t.Helper()
	const air = 6
	x0, y0 := int(s.X0)-air, int(s.Y0)-air
	m, err := wall.Measure(around(img, x0, y0, int(math.Ceil(s.X1))+air, int(math.Ceil(s.Y1))+air), nil)
	require.NoError(t, err)
	return m.At((s.X0+s.X1)/2-float64(x0), (s.Y0+s.Y1)/2-float64(y0)).Width
}

// heightOf sums the ink down the left stem of a capital.
func heightOf(img *image.NRGBA, s Sample) float64 {
	best := 0.0
	for x := int(s.X0); x < int(s.X0+s.X1)/2; x++ {
		sum := 0.0
		for y := int(s.Y0) - 3; y < int(s.Y1)+3; y++ {
			sum += float64(img.NRGBAAt(x, y).A) / 255
		}
		best = max(best, sum)
	}
	return best
}

// What the guide shows as a limit measures as the limit, on canvases of all
// sorts, to half a pixel.
func TestSamplesMeasureAsTheirLimits(t *testing.T) {
	odd := planned(38, sizing.Struck, sizing.Soft)
	odd.W, odd.H = 1234, 1567
	for _, p := range []Plan{planned(32, sizing.Struck, sizing.Soft), planned(19, sizing.Cast, sizing.Soft), planned(60, sizing.Struck, sizing.Hard), odd} {
		c := laidOut(t, p)
		g, _, img := printed(t, p, c)
		l := p.Limits
		limits := map[NeedKey]unit.MM{
			NeedLine: l.Line, NeedGap: l.Area, NeedEdge: l.Edge, NeedArea: unit.MM(math.Sqrt(l.AreaSize)),
			NeedCutOut: l.CutOut, NeedBridge: l.Bridge, NeedCapitals: l.Lettering, NeedSunk: l.LetteringSunk,
		}
		require.Len(t, g.Samples, len(limits))
		for _, s := range g.Samples {
			got := 0.0
			if s.Key == NeedCapitals || s.Key == NeedSunk {
				got = heightOf(img, s)
			} else {
				got = widthOf(t, img, s)
			}
			off := 0.5
			if s.Key == NeedCutOut {
				off = 0.75 // the middle of a ring lies between the pixels it is measured from
			}
			assert.InDelta(t, limits[s.Key].Px(c.Scale), got, off, "%s at %v mm on %d x %d px", s.Key, p.Size, c.W, c.H)
		}
	}
}

// The ruler below the box is as long as it says: tick to tick.
func TestTheRulerIsTrue(t *testing.T) {
	p := planned(38, sizing.Struck, sizing.Soft)
	p.W, p.H = 1234, 1567
	c := laidOut(t, p)
	_, _, img := printed(t, p, c)
	y := c.Y1 + int(tickMM.Px(c.Scale)/2)
	var ticks []float64
	for x := 1; x < c.W; x++ {
		if img.NRGBAAt(x, y).A > 0 && img.NRGBAAt(x-1, y).A == 0 {
			w := 0
			for ; img.NRGBAAt(x+w, y).A > 0; w++ {
			}
			ticks = append(ticks, float64(x)+float64(w)/2)
		}
	}
	require.Len(t, ticks, int(c.BoxW())+1)
	for mm, at := range ticks {
		assert.InDelta(t, unit.MM(mm).Px(c.Scale), at-float64(c.X0), 0.51, "%d mm", mm)
	}
}

func TestSmallGuidesLeaveOutWhatDoesNotFit(t *testing.T) {
	for _, side := range []int{64, 90, 200, 400} {
		for _, mm := range []unit.MM{5, 32, 150} {
			p := planned(mm, sizing.Struck, sizing.Soft)
			p.W, p.H = side, 2*side
			c := laidOut(t, p)
			g := p.Guide(c, false)
			for _, s := range g.Samples {
				assert.True(t, s.X0 >= 0 && s.Y0 >= 0 && s.X1 <= float64(c.W) && s.Y1 <= float64(c.H), "%v on %d px", s, side)
				assert.True(t, s.X1 <= float64(c.X0) || s.X0 >= float64(c.X1), "beside the box")
			}
		}
	}
}
