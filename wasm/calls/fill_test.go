package calls

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// openRing is a line drawing on white paper: a ring of 8 px with a gap at its
// right, in a picture px square.
func openRing(px int, gap float64) []byte {
	out := make([]byte, 4*px*px)
	mid := float64(px) / 2
	for i := range px * px {
		x, y := float64(i%px)+0.5-mid, float64(i/px)+0.5-mid
		ring := 4.5 - math.Abs(math.Hypot(x, y)-0.4*float64(px))
		if x > 0 {
			ring = min(ring, math.Abs(y)-gap/2+0.5)
		}
		v := byte(255 * (1 - min(1, max(0, ring))))
		copy(out[4*i:], []byte{v, v, v, 255})
	}
	return out
}

// A touch inside an open ring shows the gap; a fill that cuts it off and a
// line drawn across close it, and the area is then an area.
func TestTouchShowsTheGapAndAFillClosesIt(t *testing.T) {
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "a", FileName: "ring.png", W: 600, H: 600, FileW: 600, FileH: 600, Space: "srgb", Ground: reduce.GroundAuto}, openRing(600, 24))
	p := BlankProject()
	p.Order.Designs = []sizing.Design{o.Design}
	picked := wire.Picked{Project: p}
	touch, _ := ask[wire.Touch](t, s, "touch", wire.TouchAsk{Picked: picked, X: 300, Y: 300}, nil)
	assert.False(t, touch.Hit)
	require.NotNil(t, touch.Gap)
	assert.True(t, touch.Gap.Open)
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	assert.InDelta(t, 24/float64(check.Scale), float64(touch.Gap.Width.MM), 2/float64(check.Scale))

	d := &picked.Project.Order.Designs[0]
	sea := colour.RGB8{R: 42, G: 157, B: 143}
	g := touch.Gap.Ends
	d.Edits = append(d.Edits, reduce.Edit{Op: reduce.Fill, X: 0.5, Y: 0.5, RGB: &sea, Gap: &g, Count: d.Colours})
	d.Recipes = append(d.Recipes, sizing.Recipe{Kind: sizing.DrawLine, Points: [][2]float64{{g[0], g[1]}, {g[2], g[3]}}})
	touch, _ = ask[wire.Touch](t, s, "touch", wire.TouchAsk{Picked: picked, X: 300, Y: 300}, nil)
	assert.True(t, touch.Hit)
	assert.Nil(t, touch.Gap)
	check, _ = ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	for _, f := range check.Flats.Flats {
		if f.ID == touch.Flat {
			assert.Equal(t, sea, f.RGB)
		}
	}
	for _, f := range check.Findings {
		assert.NotContains(t, []sizing.Kind{sizing.NoEdge, sizing.NoLine}, f.Kind, "the ring is closed")
	}
}

// A line drawn across an area parts it: each side takes a colour of its own.
func TestAFillKeepsToItsSideOfADrawnLine(t *testing.T) {
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "a", FileName: "ring.png", W: 600, H: 600, FileW: 600, FileH: 600, Space: "srgb", Ground: reduce.GroundNone}, openRing(600, 0))
	p := BlankProject()
	p.Order.Designs = []sizing.Design{o.Design}
	picked := wire.Picked{Project: p}
	d := &picked.Project.Order.Designs[0]
	d.Recipes = append(d.Recipes, sizing.Recipe{Kind: sizing.DrawLine, Width: 0.5, Points: [][2]float64{{0.1, 0.5}, {0.9, 0.5}}})
	under := func(y float64) wire.Touch {
		touch, _ := ask[wire.Touch](t, s, "touch", wire.TouchAsk{Picked: picked, X: 300, Y: y}, nil)
		require.True(t, touch.Hit)
		return touch
	}
	upper := under(200)
	require.Len(t, upper.Lines, 1)
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	assert.InDelta(t, 0.5*float64(check.Scale)/600, upper.Lines[0].Width, 1e-9)
	sea := colour.RGB8{R: 42, G: 157, B: 143}
	d.Edits = append(d.Edits, reduce.Edit{Op: reduce.Fill, X: 0.5, Y: 1.0 / 3, RGB: &sea, Count: d.Colours, Lines: upper.Lines})
	d.Colours++
	assert.NotEqual(t, upper.Flat, under(200).Flat)
	assert.Equal(t, upper.Flat, under(400).Flat, "the other side keeps its colour")
}

// Lines alone on a transparent ground close in areas that can be filled; who
// asks for transparency gets it.
func TestLinesOnAClearGround(t *testing.T) {
	pix := openRing(600, 0)
	for i := 0; i < len(pix); i += 4 {
		pix[i+3] = 255 - pix[i]
		copy(pix[i:i+3], []byte{20, 20, 20})
	}
	open := wire.OpenAsk{ID: "a", FileName: "ring.png", W: 600, H: 600, FileW: 600, FileH: 600, Space: "srgb", Ground: reduce.GroundAuto}
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", open, pix)
	assert.Equal(t, 1, o.Suggested)
	assert.Contains(t, o.GroundNote, "lines alone")
	clear, _ := ask[wire.Opened](t, s, "ground", wire.GroundAsk{Drawing: "a", Ground: reduce.GroundClear}, nil)
	assert.NotContains(t, clear.GroundNote, "lines alone")
}
