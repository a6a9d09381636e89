package wall

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

func byHand(kind sizing.RecipeKind, width unit.MM, s *reduce.Separation, px ...[2]float64) sizing.Recipe {
	r := sizing.Recipe{Kind: kind, Width: width}
	for _, p := range px {
		r.Points = append(r.Points, [2]float64{p[0] / float64(s.W), p[1] / float64(s.H)})
	}
	return r
}

// metalArea is the metal of a separation, in px2.
func metalArea(s *reduce.Separation) float64 {
	sum := 0.0
	for i, has := 0, s.WithRole(reduce.Metal); i < len(s.Labels); i++ {
		sum += s.CoverOf(i, has)
	}
	return sum
}

// A line drawn by hand has the area of a bar with round ends (a stadium:
// width times length and a disc), at any tilt and width.
func TestADrawnLineHasItsWidth(t *testing.T) {
	s := bare(0)
	before := metalArea(s)
	for _, tilt := range []float64{0, 0.3, math.Pi / 4, 1.2} {
		for _, mm := range []unit.MM{0.15, 0.25, 0.4} {
			dx, dy := 60*math.Cos(tilt), 60*math.Sin(tilt)
			r := byHand(sizing.DrawLine, mm, s, [2]float64{200 - dx, 180 - dy}, [2]float64{200 + dx, 180 + dy})
			struck, err := NewBuilder(s).Apply([]sizing.Recipe{r}, 30, soft)
			require.NoError(t, err)
			w := float64(mm) * 30
			assert.InDelta(t, 120*w+math.Pi*w*w/4, metalArea(struck)-before, 0.012*120*w+6, "tilt %.1f, %g mm", tilt, float64(mm))
		}
	}
}

// Drawn over a gap in the outer edge it closes it, outside as well as within.
func TestADrawnLineClosesAGap(t *testing.T) {
	s := plate(200, func(x, y float64) bool { return false })
	r := byHand(sizing.DrawLine, 0.3, s, [2]float64{100, 2}, [2]float64{100, 60})
	struck, err := NewBuilder(s).Apply([]sizing.Recipe{r}, 30, soft)
	require.NoError(t, err)
	l := struck.Labels[3*struck.W+100]
	require.NotEqual(t, reduce.None, l, "metal stands outside what was drawn")
	assert.Equal(t, reduce.Metal, struck.Flats[l].Role)
}

func TestAnErasedLineGivesWayToWhatLiesBeside(t *testing.T) {
	s := plate(200, func(x, y float64) bool { return math.Abs(x-100) < 4 })
	r := byHand(sizing.EraseLine, 1, s, [2]float64{100, 70}, [2]float64{100, 130})
	struck, err := NewBuilder(s).Apply([]sizing.Recipe{r}, 30, soft)
	require.NoError(t, err)
	assert.Equal(t, reduce.Enamel, struck.Flats[struck.Labels[100*s.W+100]].Role)
	assert.Equal(t, reduce.Metal, struck.Flats[struck.Labels[40*s.W+100]].Role, "beyond the stretch the line stays")
	again, err := NewBuilder(s).Apply([]sizing.Recipe{r, r}, 30, soft)
	require.NoError(t, err)
	assert.Equal(t, struck.Labels, again.Labels, "erasing twice changes nothing more")
}

func TestStrokesOfNothing(t *testing.T) {
	s := bare(0)
	for _, kind := range []sizing.RecipeKind{sizing.DrawLine, sizing.EraseLine} {
		struck, err := NewBuilder(s).Apply([]sizing.Recipe{{Kind: kind}, byHand(kind, 0.2, s, [2]float64{-900, 4e6})}, 30, soft)
		require.NoError(t, err)
		assert.Equal(t, s.Labels, struck.Labels)
	}
	dot, err := NewBuilder(s).Apply([]sizing.Recipe{byHand(sizing.DrawLine, 1, s, [2]float64{220, 160})}, 30, soft)
	require.NoError(t, err)
	assert.InDelta(t, math.Pi*15*15, metalArea(dot)-metalArea(s), 8)
}
