package wall

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

// Two halves without a line, a hole in one of them, a drop of metal in the
// other: every stretch is found, with the recipe for it.
func TestBareFindsEveryStretch(t *testing.T) {
	s := scene(240, 140, func(x, y float64) uint8 {
		switch {
		case x < 20 || x > 220 || y < 20 || y > 120:
			return sky
		case x > 50 && x < 80 && y > 50 && y < 80:
			return sky
		case x > 150 && x < 180 && y > 50 && y < 80:
			return steel
		case x < 120:
			return red
		}
		return blue
	})
	m, err := Measure(s, nil)
	require.NoError(t, err)
	all, seam, edge := m.Bare()
	// Lengths are right over all directions, and a twentieth short along rows.
	assert.InEpsilon(t, 100, seam, 0.06, "where the halves meet, the drop left out")
	assert.InEpsilon(t, 2*(200+100)+4*30, edge, 0.06, "round the outside and the hole")
	kinds := map[sizing.RecipeKind]int{}
	for _, b := range all {
		kinds[b.Kind]++
		for i := 0; i < len(b.Path); i += 2 {
			x, y := float64(b.Path[i]), float64(b.Path[i+1])
			if b.Kind == sizing.BuildLines {
				assert.InDelta(t, 120, x, 1.1, "along the seam")
			} else {
				onHole := x > 48 && x < 82 && y > 48 && y < 82
				assert.True(t, onHole || x < 22 || x > 218 || y < 22 || y > 118, "%g, %g is no edge", x, y)
			}
		}
	}
	assert.Equal(t, map[sizing.RecipeKind]int{sizing.BuildLines: 1, sizing.OuterEdge: 3}, kinds, "the hole's, and one for each half")
}

func TestNothingIsBareInsideMetal(t *testing.T) {
	s := scene(120, 120, func(x, y float64) uint8 {
		if x < 20 || x > 100 || y < 20 || y > 100 {
			return sky
		}
		if x < 30 || x > 90 || y < 30 || y > 90 {
			return steel
		}
		return red
	})
	m, err := Measure(s, nil)
	require.NoError(t, err)
	all, seam, edge := m.Bare()
	assert.Empty(t, all)
	assert.Zero(t, seam+edge)
}

func TestWidthOfARecipe(t *testing.T) {
	l := sizing.DefaultLimits(sizing.Struck, sizing.Soft)
	assert.Equal(t, l.Edge, WidthOf(sizing.Recipe{Kind: sizing.OuterEdge}, l))
	assert.Equal(t, l.Line, WidthOf(sizing.Recipe{Kind: sizing.BuildLines}, l))
	assert.EqualValues(t, 0.7, WidthOf(sizing.Recipe{Kind: sizing.BuildLines, Width: 0.7}, l))
}
