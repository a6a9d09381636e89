package calls

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

func mustJSON(t *testing.T, v any) string {
	t.Helper()
	text, err := json.Marshal(v)
	require.NoError(t, err)
	return string(text)
}

// The roundel is 360 px across and has lines of 5 px: 0.2 mm at 14.4 mm, and an
// outer edge of 0.3 mm at 21.6 mm; within a quarter of a pixel.
func TestSizesThatHold(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 5)
	got, _ := ask[wire.Sizes](t, s, "sizes", wire.SizesAsk{Picked: p}, nil)
	require.Len(t, got.Rows, 3)
	soft := got.Rows[0]
	assert.True(t, soft.Now)
	require.Len(t, soft.Ranges, 1)
	assert.InDelta(t, 21.6, float64(soft.Ranges[0].From.MM), 1.2)
	assert.Zero(t, soft.Ranges[0].To.MM, "there is no greatest one")
	assert.Equal(t, "holds from "+soft.Ranges[0].From.InMM, soft.Says)
	assert.Greater(t, got.Rows[1].Ranges[0].From.MM, soft.Ranges[0].From.MM, "hard enamel asks for more")
	for _, r := range got.Rows {
		require.Len(t, r.Curve, int(got.To-got.From)+1)
		for i, share := range r.Curve {
			mm := got.From + unit.MM(i)
			assert.Equal(t, mm >= r.Ranges[0].From.MM, share == wall.Shares{}, "%s at %v mm: %+v", r.Name, mm, share)
		}
	}
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Equal(t, check.HoldsFrom, soft.Ranges[0].From.MM, "one answer, wherever it is asked")
}

func TestWhatIfTheLimitWereAnother(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 5)
	before := mustJSON(t, p)
	l := p.Project.Order.Designs[0].Limits
	l.Line, l.Edge = 0.4, 0.4
	got, _ := ask[wire.Sizes](t, s, "sizes", wire.SizesAsk{Picked: p, WhatIf: &l}, nil)
	require.Len(t, got.Rows, 1)
	assert.InDelta(t, 28.8, float64(got.Rows[0].Ranges[0].From.MM), 1.6, "5 px are 0.4 mm there")
	assert.Equal(t, before, mustJSON(t, p))
	p.Project.Order.Designs[0].Limits = l
	own, _ := ask[wire.Sizes](t, s, "sizes", wire.SizesAsk{Picked: p}, nil)
	require.Len(t, own.Rows, 4, "limits of one's own stand before the usual ones")
	assert.True(t, own.Rows[0].Now)
	assert.Equal(t, got.Rows[0].Ranges, own.Rows[0].Ranges)
	for _, r := range own.Rows[1:] {
		assert.False(t, r.Now)
	}
}

// lollipop is a disc of red 200 px across with a bare arm to its right, six times as long as
// wide.
func lollipop() []byte {
	const w, h = 600, 240
	pix := discs(w, h, [3]float64{120, 120, 100})
	for y := 105; y < 135; y++ {
		for x := 210; x < 210+180; x++ {
			copy(pix[4*(y*w+x):], []byte{0x1d, 0x20, 0x30, 255})
		}
	}
	return pix
}

// A pin with a long arm is too large from some size on: in copper of 1.2 mm, which
// yields at 69 MPa, a push of 5 N bends what is more than 3.3 times as long as wide
// (6 F L / (b t2), elementary beam theory) once a finger gets hold of 3 mm of it.
func TestASizeCanBeTooLarge(t *testing.T) {
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "arm", FileName: "arm.png", W: 600, H: 240, Space: "srgb"}, lollipop())
	p := wire.Picked{Project: BlankProject()}
	p.Project.Order.Designs = []sizing.Design{o.Design}
	d := &p.Project.Order.Designs[0]
	d.Base, d.Thickness = sizing.Copper, 1.2
	d.Limits.Bridge = 0.5
	d.Size = sizeOf(60)
	got, _ := ask[wire.Sizes](t, s, "sizes", wire.SizesAsk{Picked: p}, nil)
	require.Len(t, got.Rows[0].Ranges, 1, got.Rows[0].Says)
	r := got.Rows[0].Ranges[0]
	// The arm is 180 px of a box of 370, a little more with its end.
	assert.InDelta(t, 3*370/180.0, float64(r.To.MM), 1.5)
	assert.Greater(t, r.To.MM, r.From.MM)
	assert.Contains(t, got.Rows[0].Says, "; larger, an arm bends")
	assert.False(t, got.Rows[0].Lacks)
	c := checked(t, s, p)
	assert.Equal(t, r.To.MM, c.ShrinkTo.MM)
	assert.NotEmpty(t, ofKind(c.Findings, sizing.LongArm))
	d.Size = sizing.Size{MM: r.To.MM, By: d.Size.By}
	c = checked(t, s, p)
	assert.Zero(t, c.ShrinkTo.MM)
	assert.Empty(t, ofKind(c.Findings, sizing.LongArm), "at the largest size it holds")
	d.Size.MM += 0.1
	assert.NotEmpty(t, ofKind(checked(t, s, p).Findings, sizing.LongArm))
}

func TestMissingMetalHoldsAtNoSize(t *testing.T) {
	all := []outline.Sizes{{From: 5, To: outline.Greatest}}
	from, says := rangesOf(20, false, all)
	assert.Len(t, from, 1)
	assert.Zero(t, from[0].To.MM, "there is no greatest one")
	assert.Equal(t, "holds from 20 mm", says)
	none, says := rangesOf(20, true, all)
	assert.Empty(t, none)
	assert.Contains(t, says, "metal is missing")
	from, says = rangesOf(20, false, []outline.Sizes{{From: 24, To: 41}})
	assert.Equal(t, []wire.SizeRange{{From: unit.Shown(24), To: unit.Shown(41)}}, from, "too small and too large")
	assert.Equal(t, "holds from 24 mm to 41 mm; larger, an arm bends", says)
	none, says = rangesOf(20, false, []outline.Sizes{{From: 5, To: 19}})
	assert.Empty(t, none)
	assert.Contains(t, says, "outline bends")
	none, _ = rangesOf(0, false, all)
	assert.NotNil(t, none)
	assert.Empty(t, none)
	built := builtBy([]sizing.Recipe{{Kind: sizing.BuildLines}})
	assert.True(t, built(&sizing.Finding{Kind: sizing.Gap, Other: 3}))
	assert.False(t, built(&sizing.Finding{Kind: sizing.Gap, Other: sizing.Outside}))
	assert.False(t, built(&sizing.Finding{Kind: sizing.NoEdge, Other: sizing.Outside}))
}

// Without metal between its colours a drawing holds nowhere until lines are built.
func TestADrawingWithoutLines(t *testing.T) {
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "a", FileName: "plain.png", W: 400, H: 400, Space: "srgb", Ground: reduce.GroundAuto}, roundel(400, 0))
	require.NotEmpty(t, o.Design.Recipes, "lines and an outer edge are proposed")
	p := BlankProject()
	p.Order.Designs = []sizing.Design{o.Design}
	got, _ := ask[wire.Sizes](t, s, "sizes", wire.SizesAsk{Picked: wire.Picked{Project: p}}, nil)
	assert.NotEmpty(t, got.Rows[0].Ranges, got.Rows[0].Says)
	p.Order.Designs[0].Recipes = []sizing.Recipe{}
	got, _ = ask[wire.Sizes](t, s, "sizes", wire.SizesAsk{Picked: wire.Picked{Project: p}}, nil)
	assert.Empty(t, got.Rows[0].Ranges)
	assert.Contains(t, got.Rows[0].Says, "metal is missing")
	assert.True(t, got.Rows[0].Lacks)
}
