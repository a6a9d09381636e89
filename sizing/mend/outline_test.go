package mend

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/wall"
)

// bare draws a plain piece of metal, 24 x 16 mm at 20 px a mm, from how far
// inside it each place (mm) is.
func bare(inside func(x, y float64) float64) *reduce.Separation {
	s := reduce.NewSeparation(24*20, 16*20)
	s.Flats = []reduce.Flat{{ID: 0, Role: reduce.Metal}}
	for i := range s.Labels {
		c := inside((float64(i%s.W)+0.5)/20, (float64(i/s.W)+0.5)/20)*20 + 0.5
		switch {
		case c >= 1:
			s.Labels[i], s.Beside[i] = 0, 0
		case c >= 0.5:
			s.Labels[i], s.Cover[i] = 0, uint8(255*c)
		case c > 0:
			s.Beside[i], s.Cover[i] = 0, uint8(255-255*c)
		}
	}
	return s
}

func round(cx, cy, r, x, y float64) float64 { return r - math.Hypot(x-cx, y-cy) }

func slab(x0, y0, x1, y1, x, y float64) float64 { return min(x-x0, x1-x, y-y0, y1-y) }

// Each kind of trouble of the outline that can be repaired is, and measured
// again it is gone.
func TestRepairsOfTheOutline(t *testing.T) {
	const slope = 0.3
	for name, c := range map[string]struct {
		kind   sizing.Kind
		inside func(x, y float64) float64
	}{
		"loose": {sizing.LoosePart, func(x, y float64) float64 { return max(round(6, 8, 5, x, y), round(18, 8, 4, x, y)) }},
		"thin": {sizing.ThinBridge, func(x, y float64) float64 {
			return max(round(6, 8, 5, x, y), round(18, 8, 4, x, y), slab(6, 7.6, 18, 8.4, x, y))
		}},
		"tip": {sizing.SharpTip, func(x, y float64) float64 {
			return max(round(8, 8, 5, x, y), min(x-8, ((22-x)*slope-math.Abs(y-8))/math.Hypot(1, slope)))
		}},
		"arm": {sizing.LongArm, func(x, y float64) float64 { return max(round(6, 8, 5, x, y), slab(6, 7.2, 22, 8.8, x, y)) }},
	} {
		d := &Drawing{Builder: wall.NewBuilder(bare(c.inside)), Scale: 20, Limits: sizing.DefaultLimits(sizing.Struck, sizing.Soft)}
		at := outline.At{Scale: 20, Limits: d.Limits, Base: sizing.Copper, Thickness: 1.5}
		if c.kind != sizing.LongArm {
			at.Limits.Push = 0
		}
		m, err := outline.Measure(bare(c.inside), nil)
		require.NoError(t, err)
		found := m.Findings(at)
		require.NotEmpty(t, found, name)
		require.Equal(t, c.kind, found[0].Kind, name)
		require.True(t, OfOutline(c.kind))
		tried, err := ForOutline(d, found[0], at, nil)
		require.NoError(t, err)
		require.Len(t, tried, 1, name)
		assert.NotEmpty(t, tried[0].Words)
		assert.Positive(t, tried[0].Change.MM2)
		assert.Less(t, tried[0].Change.Share, 0.2, name)
		after, err := outline.Measure(tried[0].Struck, nil)
		require.NoError(t, err)
		for _, f := range after.Findings(at) {
			assert.NotEqual(t, sizing.Fails, f.Verdict, "%s: %s of %g mm", name, f.Kind, f.Thinnest)
		}
	}
	assert.NotEmpty(t, WhyOutline(&sizing.Finding{Kind: sizing.WeakEye}))
	assert.False(t, OfOutline(sizing.ThinLine))
}
