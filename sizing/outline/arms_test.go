package outline

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// lollipop is a disc of radius 6 at the left with an arm that reaches out of it.
func lollipop(wide, long float64) shape {
	return join(disc(-8, 0, 6), box(-8, -wide/2, -2+long, wide/2))
}

// An arm as wide all along gives at the force that the beam formula says, for
// every metal and thickness, and is flagged when that is less than the push.
func TestArmsGiveAtTheForceOfTheFormula(t *testing.T) {
	for _, wide := range []float64{0.8, 1.6} {
		for _, turn := range []float64{0, 40} {
			m := measured(t, lollipop(wide, 14).turned(turn), 15, 20)
			for _, base := range []sizing.BaseMetal{sizing.Iron, sizing.Brass, sizing.Copper, sizing.Zinc} {
				for _, thick := range []unit.MM{1.2, 1.5, 2} {
					name := fmt.Sprintf("%g mm wide, turned %g, %s of %g", wide, turn, base, thick)
					at := usual(20)
					at.Base, at.Thickness = base, thick
					at.Limits.Push = 100 // bends all of them
					found := ofKind(m.Findings(at), sizing.LongArm)
					require.Len(t, found, 1, name)
					f := found[0]
					assert.InEpsilon(t, Yield(base), Stress(f.Force, 14, unit.MM(wide), thick), 0.06, name)
					assert.InDelta(t, 14, float64(f.Length), 0.6, name)
					assert.InDelta(t, wide, float64(f.Thinnest), 0.03, name)
					assert.InDelta(t, wide, float64(f.Typical), 0.1, name)
					assert.InEpsilon(t, Yield(base), Stress(100, f.Length, f.Limit, thick), 1e-6, name+": the width that would do")
					at.Limits.Push = f.Force * 0.98
					assert.Empty(t, ofKind(m.Findings(at), sizing.LongArm), name)
					at.Limits.Push = f.Force * 1.1
					assert.Len(t, ofKind(m.Findings(at), sizing.LongArm), 1, name)
				}
			}
		}
	}
}

// A heavy head on a thin neck bends at the neck, not where the arm is widest.
func TestHeadOnANeck(t *testing.T) {
	s := join(disc(-8, 0, 6), box(-8, -0.5, 8, 0.5), disc(9, 0, 4))
	at := usual(20)
	at.Base = sizing.Copper
	found := ofKind(measured(t, s, 15, 20).Findings(at), sizing.LongArm)
	require.Len(t, found, 1)
	f := found[0]
	assert.InDelta(t, 15, float64(f.Length), 0.6, "from the root of the neck to the far side of the head")
	assert.InDelta(t, 1, float64(f.Thinnest), 0.03)
	assert.Greater(t, f.Typical, f.Thinnest)
	assert.InDelta(t, 15*20-40, f.Ends[0], 14, "where the neck begins")
	assert.InDelta(t, (15+13)*20, f.X, 3)
}

// What is held from two sides, round a hole, is no arm; what is short has no
// room for a finger; nothing is judged without a push, a thickness, a metal.
func TestWhatIsNoArm(t *testing.T) {
	at := usual(20)
	at.Base, at.Limits.Push = sizing.Copper, 12
	handle := join(disc(-8, 0, 6), disc(4, 0, 10).less(disc(4, 0, 8.4)))
	assert.Empty(t, ofKind(measured(t, handle, 15, 20).Findings(at), sizing.LongArm), "a handle")
	assert.Empty(t, ofKind(measured(t, lollipop(0.5, 2.4), 15, 20).Findings(at), sizing.LongArm), "short")

	long := measured(t, lollipop(0.8, 14), 15, 20)
	assert.NotEmpty(t, ofKind(long.Findings(at), sizing.LongArm))
	for _, change := range []func(*At){
		func(a *At) { a.Limits.Push = 0 },
		func(a *At) { a.Thickness = 0 },
		func(a *At) { a.Base = "cheese" },
	} {
		other := at
		change(&other)
		assert.Empty(t, ofKind(long.Findings(other), sizing.LongArm))
	}
}

// Each arm of several is found for itself.
func TestTwoArms(t *testing.T) {
	at := usual(20)
	at.Limits.Push = 12
	s := join(disc(0, 4, 6), box(-0.5, -13, 0.5, 4).turned(25), box(-0.5, -13, 0.5, 4).turned(-25))
	found := ofKind(measured(t, s, 15, 20).Findings(at), sizing.LongArm)
	require.Len(t, found, 2)
	assert.InDelta(t, 600, found[0].X+found[1].X, 20)
	assert.InDelta(t, found[0].Force, found[1].Force, 0.2)
}
