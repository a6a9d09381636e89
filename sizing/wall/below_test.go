package wall

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

func measuredOf(t *testing.T, s *reduce.Separation) *Measured {
	t.Helper()
	m, err := Measure(s, nil)
	require.NoError(t, err)
	return m
}

// twoFields is red and blue with a line of a width between them, and round both
// an edge of 12 px: 200 px square.
func twoFields(line float64) *reduce.Separation {
	return scene(200, 200, func(x, y float64) uint8 {
		switch {
		case x < 10 || y < 10 || x > 190 || y > 190:
			return sky
		case x < 22 || y < 22 || x > 178 || y > 178, math.Abs(x-100) < line/2:
			return steel
		case x < 100:
			return red
		}
		return blue
	})
}

func TestALineBetweenTwoColoursIsNarrowerThan(t *testing.T) {
	m := measuredOf(t, twoFields(5))
	found := m.NarrowerThan(6)
	require.Len(t, found, 1)
	n := found[0]
	assert.InDelta(t, 5, n.From, 0.3)
	assert.InDelta(t, 5, n.Thinnest, 0.3)
	assert.InDelta(t, 156, n.Length, 16)
	assert.True(t, n.Metal)
	assert.False(t, n.Edge)
	assert.ElementsMatch(t, []reduce.FlatID{10, 11}, n.Beside[:], "the two colours")
	assert.Empty(t, m.NarrowerThan(4.4), "it is wider")
	edge := m.NarrowerThan(13)
	require.Len(t, edge, 2)
	assert.True(t, edge[1].Edge)
	assert.Contains(t, edge[1].Beside, sizing.Outside)
	drawn, built, err := m.Narrowest()
	assert.InDelta(t, 5, drawn, 0.3)
	assert.True(t, math.IsInf(built, 1))
	assert.Equal(t, n.Error, err)
}

func TestAnAreaBetweenTwoLinesIsNarrowerThan(t *testing.T) {
	s := scene(200, 200, func(x, y float64) uint8 {
		switch {
		case x < 10 || y < 10 || x > 190 || y > 190:
			return sky
		case math.Abs(y-100) < 4 && x > 40 && x < 160:
			return blue
		}
		return steel
	})
	found := measuredOf(t, s).NarrowerThan(9)
	require.Len(t, found, 1)
	assert.False(t, found[0].Metal)
	assert.Equal(t, reduce.FlatID(11), found[0].Flat)
	assert.Equal(t, [2]reduce.FlatID{12, 12}, found[0].Beside)
	assert.InDelta(t, 8, found[0].From, 0.3)
}

// What is narrower than a width is narrower than every greater one, and the
// share that is parted never rises.
func TestNarrowerOnlyGrows(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 3))
	for range 6 {
		var lines []bar
		for range 9 {
			lines = append(lines, bar{r.Float64() * 240, r.Float64() * 240, r.Float64() * 240, r.Float64() * 240, 1.5 + 12*r.Float64()})
		}
		m := measuredOf(t, scene(240, 240, func(x, y float64) uint8 {
			for _, l := range lines {
				if l.holds(x, y) {
					return steel
				}
			}
			if x+y < 240 {
				return red
			}
			return blue
		}))
		c := m.Curve()
		var before []Narrow
		wasLines, wasAreas := 1.0, 1.0
		for px := 1.0; px < 40; px *= 1.17 {
			now := m.NarrowerThan(px)
			for _, p := range before {
				covered := false
				for _, q := range now {
					covered = covered || q.X0 <= p.X && p.X <= q.X1 && q.Y0 <= p.Y && p.Y <= q.Y1 && q.From <= p.From
				}
				require.True(t, covered, "%v px: %+v", px, p)
			}
			before = now
			l, a := c.Parted(px)
			require.LessOrEqual(t, l, wasLines)
			require.LessOrEqual(t, a, wasAreas)
			wasLines, wasAreas = l, a
		}
		require.NotEmpty(t, before)
		require.Less(t, wasLines, 0.5)
	}
}

func TestWhichFlatsMeet(t *testing.T) {
	all := measuredOf(t, twoFields(5)).Meetings()
	require.Len(t, all, 3)
	across := all[0]
	assert.True(t, across.Across)
	assert.Equal(t, [2]reduce.FlatID{10, 11}, [2]reduce.FlatID{across.A, across.B})
	assert.InDelta(t, 156, across.Length, 16)
	assert.InDelta(t, 5, across.Width, 1.5)
	assert.InDelta(t, 100, across.X, 2)
	for k, id := range []reduce.FlatID{10, 11} {
		assert.True(t, all[1+k].Metal)
		assert.Equal(t, id, all[1+k].A)
		assert.Equal(t, reduce.BuiltMetal, all[1+k].B)
	}
	touching := measuredOf(t, text(12, rows(`
		........
		.rrrrbb.
		.rrrrbb.
		.rrrrbb.
		........`)...)).Meetings()
	require.Len(t, touching, 1)
	assert.False(t, touching[0].Metal || touching[0].Across)
	assert.InDelta(t, 36, touching[0].Length, 5)
	assert.InDelta(t, 60, touching[0].X, 2)
}

func TestRowsOfLettering(t *testing.T) {
	word := written("SKERRY LIGHT", 30, 4, straight(40, 90, 0))
	m := measuredOf(t, scene(400, 160, func(x, y float64) uint8 {
		switch {
		case x < 10 || y < 10 || x > 390 || y > 150:
			return sky
		case x < 20 || y < 20 || x > 380 || y > 140, word(x, y):
			return steel
		}
		return red
	}))
	found := m.Rows()
	require.NotEmpty(t, found)
	assert.InDelta(t, 30, found[0].Height, 1.5)
	assert.InDelta(t, 4, found[0].Stroke, 1.5)
	assert.Equal(t, reduce.FlatID(12), found[0].Flat)
	assert.Equal(t, reduce.FlatID(10), found[0].On)
	own, beside := m.BesideAt(found[0].X, 15)
	assert.Equal(t, reduce.FlatID(12), own)
	assert.ElementsMatch(t, []reduce.FlatID{10, sizing.Outside}, beside[:])
}
