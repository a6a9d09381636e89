package fit

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

const perMM = 24

// shape is how far inside a figure a place (mm) is: below 0 outside.
type shape func(x, y float64) float64

func disc(cx, cy, r float64) shape {
	return func(x, y float64) float64 { return r - math.Hypot(x-cx, y-cy) }
}

func join(all ...shape) shape {
	return func(x, y float64) float64 {
		most := math.Inf(-1)
		for _, s := range all {
			most = max(most, s(x, y))
		}
		return most
	}
}

// point is a wedge of some degrees with its tip at a place, open to the left.
func point(x0, y0, degrees float64) shape {
	sin, cos := math.Sincos(degrees / 2 * math.Pi / 180)
	return func(x, y float64) float64 { return (x0-x)*sin - math.Abs(y-y0)*cos }
}

func both(a, b shape) shape {
	return func(x, y float64) float64 { return min(a(x, y), b(x, y)) }
}

// enamelled draws a shape w x h mm of enamel with an edge of metal; pixels at a
// border are shared.
func enamelled(s shape, w, h int) *reduce.Separation {
	const edge = 0.35
	sep := reduce.NewSeparation(w*perMM, h*perMM)
	sep.Flats = []reduce.Flat{{ID: 0, Role: reduce.Enamel}, {ID: 1, Role: reduce.Metal}}
	for i := range sep.Labels {
		x, y := (float64(i%sep.W)+0.5)/perMM, (float64(i/sep.W)+0.5)/perMM
		d := s(x, y)
		switch c := d*perMM + 0.5; {
		case c <= 0:
		case c < 0.5:
			sep.Beside[i], sep.Cover[i] = 1, uint8(255-255*c)
		case c < 1:
			sep.Labels[i], sep.Cover[i] = 1, uint8(255*c)
		case d < edge:
			sep.Labels[i], sep.Beside[i] = 1, 1
		default:
			sep.Labels[i], sep.Beside[i] = 0, 0
		}
	}
	return sep
}

// found measures what is struck with recipes.
func found(t *testing.T, base *reduce.Separation, recipes []sizing.Recipe, p sizing.Parts) (*outline.Measured, []sizing.Finding, *reduce.Separation) {
	t.Helper()
	limits := sizing.DefaultLimits(sizing.Struck, sizing.Soft)
	struck, err := wall.NewBuilder(base).Apply(append(recipes, p.Eyes()...), perMM, limits)
	require.NoError(t, err)
	m, err := outline.Measure(struck, nil)
	require.NoError(t, err)
	return m, m.Findings(outline.At{Scale: perMM, Limits: limits, Base: sizing.Iron, Thickness: 1.5, Parts: p}), struck
}

// A bridge makes one part of two and keeps its own limit; what was drawn stays.
func TestBridgeOffered(t *testing.T) {
	base := enamelled(join(disc(8, 10, 6), disc(22, 12, 5)), 30, 20)
	m, before, _ := found(t, base, nil, sizing.Parts{})
	require.Len(t, before, 1)
	require.Equal(t, sizing.LoosePart, before[0].Kind)
	offer := m.Offer(&before[0])
	require.Len(t, offer, 1)
	_, after, struck := found(t, base, offer, sizing.Parts{})
	assert.Empty(t, after)
	solid := base.Solid()
	for i, l := range base.Labels {
		if solid[l] && base.Cover[i] == 255 {
			require.Equal(t, l, struck.Labels[i], "what was drawn stays")
		}
	}
	offer[0].Width = 1.0
	_, thin, _ := found(t, base, offer, sizing.Parts{})
	require.Len(t, thin, 1)
	assert.Equal(t, sizing.ThinBridge, thin[0].Kind)
	assert.InDelta(t, 1, float64(thin[0].Thinnest), 0.08)
}

// A tip that was rounded is no longer sharp, and nothing else has changed.
func TestRoundingOffered(t *testing.T) {
	for _, degrees := range []float64{28, 40, 55} {
		half := degrees / 2 * math.Pi / 180
		sin := math.Sin(half)
		sides := both(point(20, 8, degrees), func(x, _ float64) float64 { return x - 8 - 12*sin*sin })
		base := enamelled(join(disc(8, 8, 12*sin), sides), 22, 16)
		m, before, _ := found(t, base, nil, sizing.Parts{})
		require.Len(t, before, 1, degrees)
		require.Equal(t, sizing.SharpTip, before[0].Kind)
		offer := m.Offer(&before[0])
		require.Len(t, offer, 1)
		_, after, struck := found(t, base, offer, sizing.Parts{})
		for _, f := range after {
			assert.Equal(t, sizing.Holds, f.Verdict, "%g degrees: %s of %g mm", degrees, f.Kind, f.Thinnest)
		}
		lost, solid := 0, base.Solid()
		for i, l := range base.Labels {
			if solid[l] && !solid[struck.Labels[i]] {
				lost++
				x := (float64(i%base.W) + 0.5) / perMM
				assert.Greater(t, x, 20-0.3/sin-0.15)
			}
		}
		want := 0.09 * (1/math.Tan(half) - (math.Pi/2 - half))                   // between the sides and the disc that touches them
		assert.InDelta(t, want, float64(lost)/(perMM*perMM), 0.45*want, degrees) // a little more, as the raster takes it
		_, _, again := found(t, base, append(offer, offer...), sizing.Parts{})
		assert.Equal(t, struck.Labels, again.Labels, "what is round stays")
	}
}

// Only the tip is cut: what stands beside it is another's.
func TestRoundingLeavesWhatStandsBeside(t *testing.T) {
	sin := math.Sin(math.Pi / 9)
	drop := join(disc(8, 8, 12*sin), both(point(20, 8, 40), func(x, _ float64) float64 { return x - 8 - 12*sin*sin }))
	m, before, _ := found(t, enamelled(drop, 22, 16), nil, sizing.Parts{})
	require.Len(t, before, 1)
	base := enamelled(join(drop, disc(19.5, 8.72, 0.3)), 22, 16)
	_, _, struck := found(t, base, m.Offer(&before[0]), sizing.Parts{})
	solid := base.Solid()
	for i, l := range base.Labels {
		if y := (float64(i/base.W) + 0.5) / perMM; y > 8.42 && y < 9.02 && i%base.W > 18*perMM && solid[l] {
			require.True(t, solid[struck.Labels[i]], "the speck beside it stays")
		}
	}
	assert.NotEqual(t, base.Labels, struck.Labels)
}

// Eyes that are added hang the parts, and keep their limits.
func TestEyesAdded(t *testing.T) {
	for name, s := range map[string]shape{
		"ears":  join(disc(11, 8, 6), disc(11.5, 26, 5)),
		"holes": join(disc(11, 8, 6), disc(11.5, 20, 5)),
	} {
		base := enamelled(s, 22, 33)
		m, before, _ := found(t, base, nil, sizing.Parts{})
		require.Len(t, before, 1, name)
		joins, ok := m.Joins(outline.At{Scale: perMM, Limits: sizing.DefaultLimits(sizing.Struck, sizing.Soft)})
		require.True(t, ok, name)
		p := sizing.Parts{Choice: sizing.PartsDangle, Joins: joins}
		struck, after, _ := found(t, base, nil, p)
		assert.Empty(t, after, name)
		assert.True(t, struck.Apart(perMM), name)
	}
}
