package calls

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/canvas"
	"badgewright/wasm/wire"
)

func planFor(m sizing.Making, f sizing.Fill) canvas.Plan {
	return canvas.Plan{Size: 32, Making: m, Fill: f, Limits: sizing.DefaultLimits(m, f)}
}

// byNumbers draws a badge on a canvas as its numbers say: a disc that fills the
// box with a dark outer edge, a line down its middle, two lines with the least
// gap between them, and a square of the least area; all in px of the canvas. It
// comes as the page would bring it, side px square.
func byNumbers(c wire.Canvas, side int, need map[canvas.NeedKey]float64) []byte {
	const fine = 4
	k := float64(c.W) / float64(side)
	mid, r := float64(c.W)/2, float64(c.Size.MM)*c.PerMM/2
	out := make([]byte, 4*side*side)
	dark, red, cream := [3]float64{20, 24, 40}, [3]float64{200, 40, 40}, [3]float64{240, 220, 180}
	line, gap, square := need[canvas.NeedLine], need[canvas.NeedGap], need[canvas.NeedArea]
	at := func(x, y float64) (c [3]float64, in bool) {
		dx, dy := x-mid, y-mid
		d := math.Hypot(dx, dy)
		pair, box := math.Abs(dx-r/2), math.Max(math.Abs(dx+r/2), math.Abs(dy))
		switch {
		case d > r:
			return c, false
		case d > r-need[canvas.NeedEdge], math.Abs(dx) < line/2,
			pair > gap/2 && pair < gap/2+line, box > square/2 && box < square/2+line:
			return dark, true
		case pair < gap/2, box < square/2, dx > 0 && dx < r/2:
			return cream, true
		}
		return red, true
	}
	for y := range side {
		for x := range side {
			// Nothing is so thin as to slip through between the corners of a pixel.
			grain := 1
			c, in := at(k*float64(x), k*float64(y))
			for _, q := range [3][2]int{{1, 0}, {0, 1}, {1, 1}} {
				if d, there := at(k*float64(x+q[0]), k*float64(y+q[1])); d != c || there != in {
					grain = fine
				}
			}
			copy(out[4*(y*side+x):], sampled(grain, func(dx, dy float64) ([3]float64, bool) { return at(k*(float64(x)+dx), k*(float64(y)+dy)) }))
		}
	}
	return out
}

// sampled is the mean of a pixel's colour over grain x grain places, R G B A.
func sampled(grain int, at func(dx, dy float64) ([3]float64, bool)) []byte {
	var sum [4]float64
	for s := range grain * grain {
		if c, in := at((float64(s%grain)+0.5)/float64(grain), (float64(s/grain)+0.5)/float64(grain)); in {
			sum = [4]float64{sum[0] + c[0], sum[1] + c[1], sum[2] + c[2], sum[3] + 1}
		}
	}
	if sum[3] == 0 {
		return make([]byte, 4)
	}
	mean := func(k int) byte { return byte(math.Round(sum[k] / sum[3])) }
	return []byte{mean(0), mean(1), mean(2), byte(math.Round(255 * sum[3] / float64(grain*grain)))}
}

// failures opens a drawing at a plan and counts what fails, by kind.
func failures(t *testing.T, p canvas.Plan, c wire.Canvas, need map[canvas.NeedKey]float64) map[sizing.Kind]int {
	t.Helper()
	const side = 900
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "a", FileName: "planned.png", W: side, H: side, FileW: c.W, FileH: c.H, Space: "srgb", Ground: reduce.GroundAuto}, byNumbers(c, side, need))
	d := o.Design
	d.Size, d.Making, d.Fill, d.Limits = sizing.Size{MM: p.Size, By: sizing.ByLongest}, p.Making, p.Fill, p.Limits
	project := BlankProject()
	project.Order.Designs = []sizing.Design{d}
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: wire.Picked{Project: project}}, nil)
	found := map[sizing.Kind]int{}
	for _, f := range check.Findings {
		if f.Verdict != sizing.Holds {
			found[f.Kind]++
		}
	}
	return found
}

// A drawing made by the numbers of its canvas holds, and one that falls short of
// each of them does not.
func TestWhatIsDrawnByTheNumbersHolds(t *testing.T) {
	for i, p := range []canvas.Plan{planFor(sizing.Struck, sizing.Soft), planFor(sizing.Struck, sizing.Hard), planFor(sizing.Cast, sizing.Soft)} {
		c, _ := ask[wire.Canvas](t, NewSession(), "canvas", wire.CanvasAsk{Plan: p}, nil)
		need := map[canvas.NeedKey]float64{}
		for _, n := range c.Needs {
			need[n.Key] = float64(n.Px)
		}
		assert.Empty(t, failures(t, p, c, need), "%s %s", p.Making, p.Fill)
		if i > 0 {
			continue // once is enough to fall short
		}
		for key, kind := range map[canvas.NeedKey]sizing.Kind{
			canvas.NeedLine: sizing.ThinLine, canvas.NeedEdge: sizing.ThinLine, canvas.NeedGap: sizing.NarrowArea, canvas.NeedArea: sizing.SmallArea,
		} {
			short := map[canvas.NeedKey]float64{}
			for k, px := range need {
				short[k] = px
			}
			short[key] *= 0.75
			assert.Positive(t, failures(t, p, c, short)[kind], "%s %s, %s too small", p.Making, p.Fill, key)
		}
	}
}

func TestTheGuideComesAsAFile(t *testing.T) {
	p := planFor(sizing.Struck, sizing.Soft)
	p.W, p.H = 900, 700
	g, file := ask[wire.PNGFile](t, NewSession(), "guide", wire.GuideAsk{Plan: p}, nil)
	assert.Equal(t, "pin-guide-32mm-900x700.png", g.FileName)
	img, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	assert.Equal(t, image.Rect(0, 0, 900, 700), img.Bounds())
	assert.Contains(t, g.Words, "mm in squares of a millimetre")
}

func TestACanvasThatIsNoneIsRefused(t *testing.T) {
	for _, side := range []int{-1, 3, 100_000} {
		p := planFor(sizing.Cast, sizing.Hard)
		p.W, p.H = side, side
		for _, call := range []string{"canvas", "guide"} {
			_, err := NewSession().Do(call, []byte(mustJSON(t, wire.CanvasAsk{Plan: p})), Job{})
			require.Error(t, err)
			f := FailureOf(err)
			assert.NotEmpty(t, f.Do, "%s of %d px", call, side)
		}
	}
}

func TestMarksHaveTheSizeOfTheFile(t *testing.T) {
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "a", FileName: "sea_roundel.png", W: 400, H: 400, FileW: 1333, FileH: 1333, Space: "srgb", Ground: reduce.GroundAuto}, roundel(400, 4))
	p := BlankProject()
	o.Design.Size = sizeOf(12)
	o.Design.Name = "Möwe & Anker"
	p.Order.Designs = []sizing.Design{o.Design}
	picked := wire.Picked{Project: p}
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	m, file := ask[wire.PNGFile](t, s, "marks", wire.MarksAsk{Picked: picked}, nil)
	img, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	assert.Equal(t, image.Rect(0, 0, 1333, 1333), img.Bounds())
	assert.Equal(t, "m-we-anker-marks.png", m.FileName)
	assert.Contains(t, m.Words, counted(len(check.Findings), "trouble spot"))
	// Where the bar of the roundel is too thin, something is marked at its side.
	inked := false
	for x := 640; x < 690; x++ {
		_, _, _, a := img.At(x, 666).RGBA()
		inked = inked || a > 0
	}
	assert.True(t, inked)
}

func TestNothingIsMarkedWhereEverythingHolds(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 30)
	p.Project.Order.Designs[0].Limits.Solid = 0
	_, err := s.Do("marks", []byte(mustJSON(t, wire.MarksAsk{Picked: p})), Job{})
	require.Error(t, err)
	assert.Contains(t, FailureOf(err).What, "nothing to mark")
}

// A vector drawing has as many pixels as one likes: it is marked at those it
// was looked at in. A part of a file lies where it lies.
func TestHowWorkingPixelsLieOnTheFile(t *testing.T) {
	a := artOf(&reduce.Drawing{W: 1600, H: 800, FileW: 200, FileH: 100})
	assert.Equal(t, canvas.Art{W: 1600, H: 800, KX: 1, KY: 1}, a)
	a = artOf(&reduce.Drawing{W: 1600, H: 800, FileW: 4000, FileH: 2000})
	assert.Equal(t, canvas.Art{W: 4000, H: 2000, KX: 2.5, KY: 2.5}, a)
	a = artOf(&reduce.Drawing{W: 1000, H: 1000, FileW: 8000, FileH: 4000, Part: reduce.Part{0.25, 0.5, 0.5, 1}})
	assert.Equal(t, canvas.Art{W: 8000, H: 4000, X: 2000, Y: 2000, KX: 2, KY: 2}, a)
}
