package outline

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

// twoDiscs are discs of radius 6 whose middles lie 20 mm apart, joined by a bar.
func twoDiscs(bar float64) shape {
	return join(disc(-10, 0, 6), disc(10, 0, 6), box(-10, -bar/2, 10, bar/2))
}

// The bar is the bridge, and as wide as it is.
func TestBridgeBetweenTwoDiscs(t *testing.T) {
	for _, bar := range []float64{0.5, 1, 1.4, 1.6, 3} {
		for _, turn := range []float64{0, 23, 45, 90} {
			name := fmt.Sprintf("bar %g turned %g", bar, turn)
			found := ofKind(measured(t, twoDiscs(bar).turned(turn), 17, 20).Findings(usual(20)), sizing.ThinBridge)
			if bar >= 1.5 { // common practice, no published source
				assert.Empty(t, found, name)
				continue
			}
			require.Len(t, found, 1, name)
			f := found[0]
			assert.Equal(t, sizing.Fails, f.Verdict, name)
			assert.InDelta(t, bar, float64(f.Thinnest), 0.03, name)
			assert.InDelta(t, bar, float64(f.Typical), 0.03, name)
			assert.InDelta(t, 20-2*math.Sqrt(36-bar*bar/4), float64(f.Length), 1, name)
			assert.Equal(t, 7, int(f.Flat), name)
		}
	}
}

// Two wedges that overlap have a waist, however short it is.
func TestWaistOfTwoWedges(t *testing.T) {
	for _, waist := range []float64{0.4, 1.2} {
		for _, turn := range []float64{0, 31} {
			bow := poly(-9, -9-waist/2, 0, -waist/2, 9, -9-waist/2, 9, 9+waist/2, 0, waist/2, -9, 9+waist/2).turned(turn)
			found := ofKind(measured(t, bow, 14, 20).Findings(usual(20)), sizing.ThinBridge)
			require.Len(t, found, 1)
			assert.InDelta(t, waist, float64(found[0].Thinnest), 0.06)
			assert.InDelta(t, 280, found[0].X, 2)
			assert.InDelta(t, 280, found[0].Y, 2)
		}
	}
}

// What ends freely is a bridge only when it is much longer than wide.
func TestThinEnds(t *testing.T) {
	for name, c := range map[string]struct {
		s    shape
		want int
	}{
		"stub of 1.2 mm, 3 long":    {join(disc(0, 0, 6), box(0, -0.6, 9, 0.6)), 0},
		"feeler of 1.2 mm, 10 long": {join(disc(0, 0, 6), box(0, -0.6, 16, 0.6)), 1},
		"tip of 36 degrees":         {join(disc(0, 0, 6), poly(0, -4, 16, 0, 0, 4).turned(0)), 0},
		"needle of 7 degrees":       {join(disc(0, 0, 4), poly(0, -1, 16, 0, 0, 1)), 1},
		"bead on a stub":            {join(disc(0, 0, 6), box(0, -0.6, 9, 0.6), disc(9, 0, 0.8)), 0},
		"head on a neck":            {join(disc(0, 0, 6), box(0, -0.6, 9, 0.6), disc(9, 0, 2)), 1},
	} {
		at := usual(20)
		at.Limits.Push = 0
		assert.Len(t, ofKind(measured(t, c.s, 17, 20).Findings(at), sizing.ThinBridge), c.want, name)
	}
}

// A ring all of which is too thin is held by nothing wider.
func TestThinPartAllOver(t *testing.T) {
	for wide, want := range map[float64]int{1: 1, 2: 0} {
		found := ofKind(measured(t, disc(0, 0, 10).less(disc(0, 0, 10-wide)), 11, 20).Findings(usual(20)), sizing.ThinBridge)
		assert.Len(t, found, want, wide)
	}
}

// Round a hole for a ring less metal will do than elsewhere.
func TestMetalRoundAHole(t *testing.T) {
	for _, c := range []struct {
		hole, rim float64
		want      int
	}{{1.6, 1.2, 0}, {1.6, 0.8, 1}, {6, 1.2, 1}, {6, 1.7, 0}, {0.5, 0.4, 0}} { // the last is closed
		s := disc(0, 0, 9).less(disc(9-c.rim-c.hole/2, 0, c.hole/2))
		m := measured(t, s, 10, 20)
		found := ofKind(m.Findings(usual(20)), sizing.ThinBridge)
		assert.Len(t, found, c.want, "%+v", c)
		require.Len(t, m.holes, 1)
		assert.InDelta(t, c.rim, m.holes[0].Rim/20, 0.03, "%+v", c)
	}
}
