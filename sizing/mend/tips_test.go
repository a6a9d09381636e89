package mend

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/wall"
)

// spike is a tip that points right from (x, y), its sides falling by slope.
func spike(x, y, slope float64) func(px, py float64) float64 {
	return func(px, py float64) float64 {
		return min(px-8, ((x-px)*slope-math.Abs(py-y))/math.Hypot(1, slope))
	}
}

// Tips that prick are rounded with everything else: to a radius of 0.3 mm (common
// practice, no published source). Where the outline is not looked at, they stay.
func TestAllRoundsTips(t *testing.T) {
	up, low := spike(21, 3, 0.25), spike(21, 13, 0.25)
	inside := func(x, y float64) float64 { return max(round(8, 8, 6.5, x, y), up(x, y), low(x, y)) }
	d := &Drawing{Builder: wall.NewBuilder(bare(inside)), Scale: 20, Limits: sizing.DefaultLimits(sizing.Struck, sizing.Soft)}
	at := outline.At{Scale: 20, Limits: d.Limits, Base: sizing.Iron, Thickness: 1.5}

	o, err := All(d, nil)
	require.NoError(t, err)
	assert.Zero(t, o.Before)
	assert.Empty(t, o.Recipes)

	d.Outline = &at
	o, err = All(d, nil)
	require.NoError(t, err)
	assert.Equal(t, 2, o.Before)
	require.Len(t, o.Recipes, 2)
	assert.Empty(t, o.Left)
	assert.Positive(t, o.Change.MM2)
	assert.Less(t, o.Change.MM2, 2.0)
	for _, r := range o.Recipes {
		assert.Equal(t, sizing.RoundTip, r.Kind)
	}
	after, err := d.Builder.Apply(o.Recipes, d.Scale, d.Limits)
	require.NoError(t, err)
	m, err := outline.Measure(after, nil)
	require.NoError(t, err)
	assert.Empty(t, bad(m.Findings(at)))
}

// A tip that stays sharp when it is rounded is left as it was drawn, and told of;
// the one beside it is rounded all the same.
func TestATipThatCannotBeRoundedIsToldOf(t *testing.T) {
	up, low := spike(21, 3, 0.25), spike(23, 13, 0.07)
	inside := func(x, y float64) float64 { return max(round(8, 8, 6.5, x, y), up(x, y), low(x, y)) }
	d := &Drawing{Builder: wall.NewBuilder(bare(inside)), Scale: 20, Limits: sizing.DefaultLimits(sizing.Struck, sizing.Soft)}
	d.Limits.Tip = 0.4
	at := outline.At{Scale: 20, Limits: d.Limits, Base: sizing.Iron, Thickness: 1.5}
	at.Limits.Bridge, at.Limits.Push = 0, 0 // the needle is too thin as well; here it is its tip that counts
	d.Outline = &at
	o, err := All(d, nil)
	require.NoError(t, err)
	require.Equal(t, 2, o.Before)
	require.Len(t, o.Recipes, 1)
	require.Len(t, o.Left, 1)
	assert.Equal(t, sizing.SharpTip, o.Left[0].Finding.Kind)
	assert.InDelta(t, 13*20, o.Left[0].Finding.Y, 4)
	assert.Contains(t, o.Left[0].Why, "blunter")
}
