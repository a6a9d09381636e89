package calls

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// onTheBar marks 30 px of the bar of metal in a roundel 200 px square, 180 across.
var onTheBar = sizing.LetterMark{X0: 0.5, Y0: 0.55, X1: 0.5, Y1: 0.40}

func spotsOfLettering(c wire.Check) (n int) {
	for _, f := range c.Findings {
		if f.Kind == sizing.SmallLettering {
			n++
		}
	}
	return n
}

func TestAMarkedCapitalIsToldAndJoinsTheTroubleSpots(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 9)
	d := &p.Project.Order.Designs[0]
	d.Lettering = []sizing.LetterMark{onTheBar, {X0: 0.7, Y0: 0.55, X1: 0.7, Y1: 0.40}}
	for _, c := range []struct {
		mm           float64
		raised, sunk sizing.Verdict
		spots        int
	}{
		{6, sizing.Fails, sizing.Fails, 2},  // 1 mm
		{11, sizing.Holds, sizing.Fails, 1}, // 1.83 mm
		{20, sizing.Holds, sizing.Holds, 0}, // 3.33 mm
	} {
		d.Size = sizeOf(c.mm)
		check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
		require.Len(t, check.Lettering, 2)
		raised, sunk := check.Lettering[0], check.Lettering[1]
		assert.Equal(t, onTheBar, raised.Mark)
		assert.Equal(t, sizing.Raised, raised.Lies)
		assert.Equal(t, sizing.Sunk, sunk.Lies)
		assert.InDelta(t, 30*c.mm/180, float64(raised.Height), 0.02)
		assert.Equal(t, d.Limits.Lettering, raised.Least)
		assert.Equal(t, d.Limits.LetteringSunk, sunk.Least)
		assert.Equal(t, c.raised, raised.Verdict, "at %v mm", c.mm)
		assert.Equal(t, c.sunk, sunk.Verdict, "at %v mm", c.mm)
		assert.Equal(t, c.spots, spotsOfLettering(check), "at %v mm", c.mm)
		assert.GreaterOrEqual(t, check.HoldsFrom, sunk.HoldsFrom)
		assert.InDelta(t, 180*float64(d.Limits.LetteringSunk)/31, float64(sunk.HoldsFrom), 0.11)
	}
}

// What was found by itself is not told again by a mark in it.
func TestAMarkInLetteringThatWasFoundIsToldOnce(t *testing.T) {
	row := sizing.Finding{Kind: sizing.SmallLettering, X0: 10, Y0: 10, X1: 60, Y1: 30}
	other := row
	other.Kind = sizing.ThinLine
	in := sizing.Finding{X: 20, Y: 20}
	assert.True(t, toldIn(&in, []sizing.Finding{other, row}))
	assert.False(t, toldIn(&in, []sizing.Finding{other}))
	out := sizing.Finding{X: 20, Y: 40}
	assert.False(t, toldIn(&out, []sizing.Finding{row}))
}

// Marks go with the drawing to its next version and come back with the old one;
// one where nothing is drawn any more is lost, in words.
func TestMarksAreCarriedToARevision(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 9)
	d := &p.Project.Order.Designs[0]
	d.Lettering = []sizing.LetterMark{onTheBar, {X0: 0.01, Y0: 0.05, X1: 0.01, Y1: 0.02}}
	ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "b", FileName: "two.png", W: 300, H: 300, FileW: 300, FileH: 300, Space: "srgb", Ground: reduce.GroundAuto}, roundel(300, 16))
	r, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "b"}, nil)
	assert.Equal(t, []string{"A mark of lettering: nothing is drawn at its place any more."}, r.Lost)
	assert.Equal(t, []sizing.LetterMark{onTheBar}, r.Design.Lettering)

	was := d.Lettering
	p.Project.Order.Designs[0] = r.Design
	p.Project.Order.Designs[0].Lettering = nil
	back, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "a"}, nil)
	assert.Equal(t, was, back.Design.Lettering)
}
