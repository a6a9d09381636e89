package outline

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

// A hole is as wide as the largest disc that goes through it.
func TestHolesAgainstTheirWidth(t *testing.T) {
	for name, c := range map[string]struct {
		hole  shape
		width float64
	}{
		"round 1.2":    {disc(2, 1, 0.6), 1.2},
		"round 1.6":    {disc(2, 1, 0.8), 1.6},
		"square 1.3":   {box(1, 1, 2.3, 2.3), 1.3},
		"slot 1 x 6":   {box(-3, -0.5, 3, 0.5), 1},
		"slot 2 x 6":   {box(-3, -1, 3, 1), 2},
		"triangle":     {poly(-2, 1.2, 2, 1.2, 0, -2.264), 2.309}, // equilateral: side / root 3
		"slot 1.4 x 6": {box(-3, -0.7, 3, 0.7), 1.4},
	} {
		for _, turn := range []float64{0, 33} {
			m := measured(t, disc(0, 0, 9).less(c.hole.turned(turn)), 10, 20)
			require.Len(t, m.holes, 1, name)
			assert.InDelta(t, c.width, m.holes[0].Across/20, 0.04, "%s turned %g", name, turn)
			for making, limit := range map[sizing.Making]float64{sizing.Struck: 1.5, sizing.Cast: 1.2} {
				at := usual(20)
				at.Limits = sizing.DefaultLimits(making, sizing.Soft)
				found := ofKind(m.Findings(at), sizing.SmallCutOut)
				assert.Equal(t, c.width < limit-0.001, len(found) == 1, fmt.Sprint(name, making))
			}
		}
	}
}

// What is open to the outside is no hole, on the raster's rim neither.
func TestNotchesAreNoHoles(t *testing.T) {
	assert.Empty(t, measured(t, disc(0, 0, 9).less(box(4, -0.3, 12, 0.3)), 10, 20).holes)
	assert.Empty(t, measured(t, box(-10, -10, 10, 10).less(box(4, -1, 10, 1)), 10, 20).holes)
}

// The edge of a hole is metal, or enamel with nothing to hold it; a speck of a
// hole in metal is the line work's, in enamel it is a cut-out.
func TestWhatStandsRoundAHole(t *testing.T) {
	sep := reduce.NewSeparation(60, 40)
	sep.Flats = []reduce.Flat{{ID: 3, Role: reduce.Metal}, {ID: 4, Role: reduce.Enamel}, {ID: 5, Role: reduce.CutOut}}
	for i := range sep.Labels {
		if x, y := i%60, i/60; x > 2 && x < 57 && y > 2 && y < 37 {
			l := uint8(0)
			if x >= 30 {
				l = 1
			}
			if x >= 14 && x < 17 && y >= 14 && y < 17 {
				l = 2
			}
			if x >= 44 && x < 47 && y >= 14 && y < 17 {
				l = reduce.None
			}
			sep.Labels[i], sep.Beside[i] = l, l
		}
	}
	m, err := Measure(sep, nil)
	require.NoError(t, err)
	require.Len(t, m.holes, 2)
	assert.InDelta(t, 0, m.holes[0].Enamel, 1e-9)
	assert.InDelta(t, 1, m.holes[1].Enamel, 1e-9)
	assert.Len(t, ofKind(m.Findings(usual(4)), sizing.SmallCutOut), 2, "3 px of 0.25 mm")
	found := ofKind(m.Findings(usual(20)), sizing.SmallCutOut)
	require.Len(t, found, 1, "3 px of 0.05 mm")
	assert.Equal(t, reduce.FlatID(4), found[0].Flat)
}
