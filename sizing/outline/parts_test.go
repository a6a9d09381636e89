package outline

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

// Two discs apart are two parts, as far from each other as drawn.
func TestLooseParts(t *testing.T) {
	s := join(disc(-7, 0, 6), disc(5, 0, 3)).turned(27)
	m := measured(t, s, 14, 20)
	found := m.Findings(usual(20))
	require.Len(t, found, 1)
	f := found[0]
	assert.Equal(t, sizing.LoosePart, f.Kind)
	assert.Equal(t, sizing.Fails, f.Verdict)
	assert.InDelta(t, 3, float64(f.Thinnest), 0.06)
	assert.InDelta(t, 28.3, f.Area, 0.2)
	assert.InDelta(t, 60, length(f.Ends[2]-f.Ends[0], f.Ends[3]-f.Ends[1]), 2)
	assert.True(t, m.Apart(20))
}

// The way between parts is the shortest there is: every pixel of one against
// every pixel of the other.
func TestWaysAgainstAllPairs(t *testing.T) {
	m := measured(t, join(oval(-6, -3, 3, 7), oval(3, 2, 2, 5).turned(20), disc(9, -8, 1.4)), 13, 12)
	require.Len(t, m.ways, 2)
	for _, w := range m.ways {
		best := int32(1 << 30)
		a, b := pixelsOf(m, w.from), pixelsOf(m, w.to)
		for _, p := range a {
			for _, q := range b {
				best = min(best, apart(p, q))
			}
		}
		dx, dy := w.ends[2]-w.ends[0], w.ends[3]-w.ends[1]
		assert.InDelta(t, float64(best), dx*dx+dy*dy, 1e-9)
	}
}

func pixelsOf(m *Measured, part int32) (all [][2]int32) {
	for y := range m.comps.H {
		for _, r := range m.comps.Runs[m.comps.Row[y]:m.comps.Row[y+1]] {
			for x := r.X0; m.partOf[r.Comp] == part && x < r.X1; x++ {
				all = append(all, [2]int32{x, int32(y)})
			}
		}
	}
	return all
}

// Specks are summed up in one finding.
func TestSpecks(t *testing.T) {
	s := disc(0, 0, 8)
	for k := range 15 {
		s = join(s, disc(9.5, 0, 0.4).turned(24*float64(k)))
	}
	found := ofKind(measured(t, s, 11, 20).Findings(usual(20)), sizing.LoosePart)
	require.Len(t, found, 1)
	assert.Equal(t, 15, found[0].Count)
	assert.InDelta(t, 15*0.503, found[0].Area, 0.3)
	assert.False(t, measured(t, s, 11, 20).Apart(20))
}

// hanging is a disc above another, each with an eye towards the other.
func hanging(hole, rim, gap float64) shape {
	out := hole/2 + rim
	up, low := 2+out-0.3, 2+2*out+gap+out+out-0.9
	return join(
		join(disc(0, -5, 7), disc(0, up, out)).less(disc(0, up, hole/2)),
		join(disc(0, low+out+3, 4), disc(0, low, out)).less(disc(0, low, hole/2)),
	)
}

func TestDrawnEyesAreTakenForADangle(t *testing.T) {
	m := measured(t, hanging(1.7, 1.2, 1), 17, 20)
	require.Len(t, m.parts, 2)
	require.Len(t, m.holes, 2)
	at := usual(20)
	found := m.Findings(at)
	require.Len(t, found, 1)
	assert.Equal(t, sizing.LoosePart, found[0].Kind)
	assert.Equal(t, sizing.Holds, found[0].Verdict)

	joins, ok := m.Joins(at)
	require.True(t, ok)
	require.Len(t, joins, 1)
	assert.True(t, joins[0].Upper.Drawn && joins[0].Lower.Drawn)
	assert.Less(t, joins[0].Upper.At[1], joins[0].Lower.At[1])
	assert.Equal(t, sizing.UsualLinks, joins[0].Links)
	at.Parts = sizing.Parts{Choice: sizing.PartsDangle, Joins: joins}
	assert.Empty(t, m.Findings(at), "what hangs as it should is no trouble")
	assert.Empty(t, at.Parts.Eyes(), "what is drawn needs no recipe")
}

// Metal round an eye is held to its own limit (common practice, no published source).
func TestWeakEyes(t *testing.T) {
	for rim, want := range map[float64]int{0.6: 2, 0.9: 2, 1.1: 0} {
		m := measured(t, hanging(1.7, rim, 1), 17, 20)
		at := usual(20)
		joins, _ := m.Joins(at)
		at.Parts = sizing.Parts{Choice: sizing.PartsDangle, Joins: joins}
		found := ofKind(m.Findings(at), sizing.WeakEye)
		assert.Len(t, found, want, rim)
		for _, f := range found {
			assert.InDelta(t, rim, float64(f.Thinnest), 0.04)
			assert.InDelta(t, 1.7, float64(f.Typical), 0.06)
		}
	}
	at := usual(20)
	at.Limits.CutOut = 1.2 // cast: the hole can be made, but no ring goes through
	narrow := measured(t, hanging(1.3, 1.3, 1), 17, 20)
	joins, _ := narrow.Joins(at)
	at.Parts = sizing.Parts{Choice: sizing.PartsDangle, Joins: joins}
	found := ofKind(narrow.Findings(at), sizing.WeakEye)
	require.Len(t, found, 2)
	assert.InDelta(t, 1.3, float64(found[0].Thinnest), 0.06)
	assert.Equal(t, at.Limits.Eye, found[0].Limit)

	m := measured(t, join(disc(-7, 0, 6), disc(6, 0, 4)), 14, 20)
	at.Parts = sizing.Parts{Choice: sizing.PartsDangle, Joins: []sizing.Join{{Upper: sizing.Eye{At: [2]float64{0.2, 0.5}}, Lower: sizing.Eye{At: [2]float64{0.8, 0.5}}}}}
	assert.Len(t, ofKind(m.Findings(at), sizing.WeakEye), 2, "no holes there")
	assert.Len(t, ofKind(m.Findings(at), sizing.LoosePart), 1, "so nothing hangs")
}

// Eyes that are added keep the limits: a hole of 1.5 mm with 1 mm round it,
// clear of the other part (common practice, no published source).
func TestAddedEyesKeepTheLimits(t *testing.T) {
	for name, c := range map[string]struct {
		s   shape
		ear [2]bool // above and below: outside what is drawn
	}{
		"room between":      {join(disc(0, -9, 6), disc(1, 9, 5)), [2]bool{true, true}},
		"little room":       {join(disc(0, -7, 6), disc(1, 5.5, 5)), [2]bool{}},
		"from a spire down": {join(poly(-6, -14, 6, -14, 0, -3), disc(0, 10, 4)), [2]bool{false, true}},
	} {
		m := measured(t, c.s, 16, 20)
		at := usual(20)
		joins, ok := m.Joins(at)
		require.True(t, ok, name)
		require.Len(t, joins, 1, name)
		for k, e := range []sizing.Eye{joins[0].Upper, joins[0].Lower} {
			x, y := e.At[0]*float64(m.v.w), e.At[1]*float64(m.v.h)
			assert.False(t, e.Drawn, name)
			part := int32(k)
			assert.GreaterOrEqual(t, nearestTo(m, 1-part, x, y), (0.75+1)*20-1.5, "%s: clear of the other part", name)
			far := nearestTo(m, part, x, y)
			assert.Less(t, far, (0.75+1)*20-2.0, "%s: the metal round it is not off its part", name)
			assert.Equal(t, c.ear[k], far >= 0.75*20-1.5, "%s: the hole is outside what is drawn", name)
		}
		low := joins[0].Lower.At[0] * float64(m.v.w)
		assert.InDelta(t, m.parts[1].X, low, 40, "%s: hangs straight but for a little", name)
		at.Parts = sizing.Parts{Choice: sizing.PartsDangle, Joins: joins}
		assert.Len(t, at.Parts.Eyes(), 2, name)
	}
	_, ok := measured(t, join(disc(0, 0, 9).less(disc(0, 0, 3)), disc(0, 0.5, 1.2)), 16, 20).Joins(usual(20))
	assert.False(t, ok, "a part too small for an eye and too near for an ear")
}

func nearestTo(m *Measured, part int32, x, y float64) float64 {
	best := 1e9
	for _, p := range pixelsOf(m, part) {
		best = min(best, length(float64(p[0])+0.5-x, float64(p[1])+0.5-y))
	}
	return best
}

// A chain hangs by the insides of its rings and the pitch of its links.
func TestDrop(t *testing.T) {
	assert.InDelta(t, 2.6, float64((&sizing.Join{}).Drop()), 1e-9)
	assert.InDelta(t, 10.2, float64((&sizing.Join{Links: 2}).Drop()), 1e-9)
	assert.InDelta(t, 12.2, float64((&sizing.Join{Links: 2, Ring: 5}).Drop()), 1e-9)
}
