package outline

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// moved is a separation whose pixel (x, y) is that at another place.
func moved(s *reduce.Separation, w, h int, from func(x, y int) (int, int)) *reduce.Separation {
	out := reduce.NewSeparation(w, h)
	out.Flats = s.Flats
	for i := range out.Labels {
		x, y := from(i%w, i/w)
		k := y*s.W + x
		out.Labels[i], out.Beside[i], out.Cover[i] = s.Labels[k], s.Beside[k], s.Cover[k]
	}
	return out
}

func mirrored(s *reduce.Separation) *reduce.Separation {
	return moved(s, s.W, s.H, func(x, y int) (int, int) { return s.W - 1 - x, y })
}

func turnedRight(s *reduce.Separation) *reduce.Separation {
	return moved(s, s.H, s.W, func(x, y int) (int, int) { return y, s.H - 1 - x })
}

// sameSpots compares what was found in art and in the same art moved. A bar is
// as thin at one place as at another, two parts may be nearest at several places,
// and an arm ends in two corners.
func sameSpots(t *testing.T, want, got []sizing.Finding, place func(x, y float64) (float64, float64), name string) {
	t.Helper()
	rest := slices.Clone(got)
	for _, f := range want {
		x, y := place(f.X, f.Y)
		k := slices.IndexFunc(rest, func(g sizing.Finding) bool {
			near := g.Kind != sizing.SharpTip || length(g.X-x, g.Y-y) < 4
			return g.Kind == f.Kind && g.Verdict == f.Verdict && near && math.Abs(float64(g.Thinnest-f.Thinnest)) < 0.06
		})
		if assert.GreaterOrEqual(t, k, 0, "%s: %s at %g, %g of %g mm", name, f.Kind, f.X, f.Y, f.Thinnest) {
			rest = slices.Delete(rest, k, k+1)
		}
	}
	assert.Empty(t, rest, name)
}

func TestMirroredAndTurnedArt(t *testing.T) {
	for name, p := range cabinet() {
		k := p.longest / (2 * p.half)
		sep := strike(p.shape.scaled(k), p.longest/2+1, 12)
		at := usual(12)
		at.Base, at.Thickness = sizing.Copper, 1.2
		find := func(s *reduce.Separation) []sizing.Finding {
			m, err := Measure(s, nil)
			require.NoError(t, err)
			return m.Findings(at)
		}
		want, w := find(sep), float64(sep.W)
		sameSpots(t, want, find(mirrored(sep)), func(x, y float64) (float64, float64) { return w - x, y }, name+" mirrored")
		sameSpots(t, want, find(turnedRight(sep)), func(x, y float64) (float64, float64) { return w - y, x }, name+" turned")
	}
}

// A pin twice as large, drawn with half as many pixels to the millimetre, is the
// same drawing: what is measured in pixels is twice as many millimetres.
func TestScaling(t *testing.T) {
	m := measured(t, twoDiscs(0.6), 17, 20)
	one := ofKind(m.Findings(usual(20)), sizing.ThinBridge)
	two := ofKind(m.Findings(usual(10)), sizing.ThinBridge)
	require.Len(t, one, 1)
	require.Len(t, two, 1)
	assert.InDelta(t, 2*float64(one[0].Thinnest), float64(two[0].Thinnest), 1e-9)
	assert.InDelta(t, 2*float64(one[0].Length), float64(two[0].Length), 0.7)
}

// Noise never breaks it, and gives the same answer twice.
func TestNoise(t *testing.T) {
	const seed = 11
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	for range 150 {
		s := reduce.NewSeparation(1+r.IntN(40), 1+r.IntN(40))
		s.Flats = []reduce.Flat{{Role: reduce.Enamel}, {ID: 1, Role: reduce.CutOut}, {ID: 2, Role: reduce.Metal}, {ID: 3, Role: reduce.Printed}}
		kinds := []uint8{0, 0, 0, 1, 2, 2, 3, reduce.None}
		clump := 1 + r.IntN(6)
		for i := range s.Labels {
			x, y := i%s.W/clump*clump, i/s.W/clump*clump
			if k := y*s.W + x; k < i && r.IntN(20) > 0 {
				s.Labels[i], s.Beside[i], s.Cover[i] = s.Labels[k], s.Beside[k], s.Cover[k]
				continue
			}
			s.Labels[i], s.Beside[i] = kinds[r.IntN(len(kinds))], kinds[r.IntN(len(kinds))]
			s.Cover[i] = uint8(128 + r.IntN(128))
		}
		m, err := Measure(s, nil)
		require.NoError(t, err)
		again, err := Measure(s, nil)
		require.NoError(t, err)
		for _, scale := range []float64{0.3, 2, 15} {
			at := usual(scale)
			at.Base = sizing.Copper
			at.Parts.Joins, _ = m.Joins(at)
			at.Parts.Choice = sizing.PartsDangle
			require.Equal(t, m.Findings(at), again.Findings(at))
			for _, f := range m.Findings(at) {
				require.False(t, math.IsNaN(f.X+f.Y+float64(f.Thinnest)+float64(f.Length)+f.Force+f.Angle))
				require.NotEmpty(t, f.Verdict)
				require.GreaterOrEqual(t, f.Count, 1)
			}
		}
		if b, ok := sizing.Outline(s); ok {
			m.HoldsIn(b, sizing.ByLongest, usual(1))
		}
	}
}

func TestWhatCannotBeMeasured(t *testing.T) {
	_, err := Measure(&reduce.Separation{W: 20, H: 20}, nil)
	assert.Error(t, err)
	_, err = Measure(reduce.NewSeparation(0, 0), nil)
	assert.Error(t, err)
	m, err := Measure(reduce.NewSeparation(8, 8), nil)
	require.NoError(t, err)
	assert.Empty(t, m.Findings(usual(20)), "nothing is solid")
	for _, scale := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		assert.Empty(t, measured(t, disc(0, 0, 3), 4, 10).Findings(usual(scale)))
	}
	stop := errors.New("stop")
	_, err = Measure(reduce.NewSeparation(8, 8), func(float64, string) error { return stop })
	assert.ErrorIs(t, err, stop)
}

// The sizes that hold are those at which nothing of the silhouette fails for
// being small or long: every size looked at by itself.
func TestSizesThatHoldOneByOne(t *testing.T) {
	for name, c := range map[string]struct {
		s    shape
		base sizing.BaseMetal
		push float64
		some bool
	}{
		"bar":       {twoDiscs(1.8), sizing.Iron, 5, true},
		"thin bar":  {twoDiscs(0.8), sizing.Iron, 5, false}, // the other disc bends it
		"arm":       {lollipop(2, 14), sizing.Brass, 5, true},
		"soft arm":  {lollipop(2, 14), sizing.Copper, 5, false},
		"short arm": {lollipop(2.4, 12), sizing.Copper, 6, true},
		"near rim":  {disc(0, 0, 9).less(disc(7.7, 0, 0.9)), sizing.Iron, 5, true},
	} {
		m := measured(t, c.s, 17, 12)
		b, _ := sizing.Outline(m.v.s)
		at := usual(12)
		at.Base, at.Limits.Push = c.base, c.push
		got := m.HoldsIn(b, sizing.ByLongest, at)
		any := false
		for mm := unit.MM(5); mm <= 119; mm += 3 {
			at.Scale = sizing.ScaleFor(b, sizing.Size{MM: mm, By: sizing.ByLongest})
			holds := !slices.ContainsFunc(m.Findings(at), func(f sizing.Finding) bool { return f.Verdict == sizing.Fails && f.Kind != sizing.SharpTip })
			for _, h := range m.holes { // found with the line work
				holds = holds && at.Scale.MM(h.Across) >= at.Limits.CutOut
			}
			any = any || holds
			in := slices.ContainsFunc(got, func(s Sizes) bool { return mm >= s.From && mm <= s.To })
			assert.Equal(t, holds, in, "%s at %g mm, of %v", name, mm, got)
		}
		assert.Equal(t, c.some, any, name)
		assert.Equal(t, c.some, len(got) == 1, name)
	}
}
