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
	assert.Equal(t, "holds from 24 mm to 41 mm", says)
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
}
