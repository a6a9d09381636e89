package outline

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
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
		}
	}
}

// What is open to the outside is no hole, on the raster's rim neither.
func TestNotchesAreNoHoles(t *testing.T) {
	assert.Empty(t, measured(t, disc(0, 0, 9).less(box(4, -0.3, 12, 0.3)), 10, 20).holes)
	assert.Empty(t, measured(t, box(-10, -10, 10, 10).less(box(4, -1, 10, 1)), 10, 20).holes)
}
