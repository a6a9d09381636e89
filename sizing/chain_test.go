package sizing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/unit"
)

// ends are where a loop is hooked, at both ends of its inside.
func (o *Loop) ends() (a, b [2]float64) {
	sin, cos := math.Sincos(o.Angle)
	in := o.Long/2 - o.Wire
	return [2]float64{o.X - cos*in, o.Y - sin*in}, [2]float64{o.X + cos*in, o.Y + sin*in}
}

// A chain is hooked together end to end, begins in the upper hole, and ends in
// the lower where it is long enough.
func TestChainsAreHookedTogether(t *testing.T) {
	const perMM = unit.PxPerMM(10)
	for name, c := range map[string]struct {
		join    Join
		x, y    float64 // of the lower hole, px
		reaches bool
	}{
		"one ring":        {Join{}, 0, 41, true},
		"as drawn":        {Join{Links: 2}, 0, 117, true},
		"to the side":     {Join{Links: 2}, 80, 80, true},
		"longer":          {Join{Links: 6, Ring: 5}, 0, 60, true},
		"much longer":     {Join{Links: 12}, 30, 5, true},
		"upside down":     {Join{Links: 3}, 10, -60, true},
		"too short":       {Join{}, 0, 200, false},
		"on one place":    {Join{Links: 2}, 0, 0, true},
		"nothing of wire": {Join{Ring: 1}, 0, 100, false},
	} {
		up, low := Hole{X: 0, Y: 0, Across: 15}, Hole{X: c.x, Y: c.y, Across: 15}
		all := c.join.Chain(up, low, perMM)
		if c.join.Ring == 1 {
			assert.Empty(t, all, name)
			continue
		}
		want := c.join.Links + 2
		if c.join.Links == 0 {
			want = 1
		}
		require.Len(t, all, want, name)
		first, _ := all[0].ends()
		assert.InDelta(t, 7.5, math.Hypot(first[0], first[1]), 0.01, name)
		for i := 1; i < len(all); i++ {
			_, was := all[i-1].ends()
			is, _ := all[i].ends()
			assert.InDelta(t, 0, math.Hypot(is[0]-was[0], is[1]-was[1]), 1e-6, name)
		}
		_, last := all[len(all)-1].ends()
		off := math.Hypot(last[0]-c.x, last[1]-c.y)
		if c.x == 0 && c.y == 0 {
			continue // the holes are one: where the lower is hooked is nowhere in particular
		}
		assert.Equal(t, c.reaches, math.Abs(off-7.5) < 0.5, "%s: ends %g px from the lower eye", name, off)
	}
}

// In a bow, rings and links keep their length: the chords are a little shorter
// than the arc, and no longer.
func TestABowKeepsTheLength(t *testing.T) {
	j := Join{Links: 5}
	all := j.Chain(Hole{Across: 15}, Hole{X: 20, Y: 60, Across: 15}, 10)
	sum := 0.0
	for i := range all {
		sum += all[i].Long - 2*all[i].Wire
	}
	assert.InDelta(t, float64(j.Drop())*10, sum, 0.05*sum)
	assert.LessOrEqual(t, sum, float64(j.Drop())*10)
}

// A ring of 4 mm goes round twice 1 mm of metal; one of 3 mm does not.
func TestRingsTooSmall(t *testing.T) {
	assert.False(t, (&Join{}).TooSmall(1))
	assert.True(t, (&Join{Ring: 3}).TooSmall(1))
	assert.True(t, (&Join{Ring: 3, Links: 2}).TooSmall(1))
	assert.False(t, (&Join{Ring: 3.2, Links: 2}).TooSmall(1))
}
