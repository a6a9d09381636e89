package outline

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
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
	assert.Zero(t, joins[0].Links, "a ring reaches about as far as they were drawn")
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
		assert.InDelta(t, m.parts[1].X, low, 10.5, "%s: hangs straight but for a little", name)
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

// What hangs from a part that itself hangs from nothing is loose with it, and two
// eyes in one piece of metal hang nothing.
func TestWhatHangsTogether(t *testing.T) {
	s := join(disc(-12, 0, 5), disc(0, 0, 3), disc(9, 0, 3))
	for _, x := range []float64{-8.6, -1.6, 1.6, 8} {
		s = s.less(disc(x, 0, 0.8))
	}
	m := measured(t, s, 18, 20)
	require.Len(t, m.parts, 3)
	eye := func(x float64) sizing.Eye { return sizing.Eye{At: [2]float64{(x + 18) / 36, 0.5}, Drawn: true} }
	loose := func(joins ...sizing.Join) int {
		at := usual(20)
		at.Parts = sizing.Parts{Choice: sizing.PartsDangle, Joins: joins}
		assert.Equal(t, 3, m.PartsAt(at))
		return m.LooseAt(at)
	}
	assert.Equal(t, 2, loose())
	assert.Equal(t, 1, loose(sizing.Join{Upper: eye(-8.6), Lower: eye(-1.6)}))
	assert.Equal(t, 0, loose(sizing.Join{Upper: eye(-8.6), Lower: eye(-1.6)}, sizing.Join{Upper: eye(1.6), Lower: eye(8)}))
	assert.Equal(t, 2, loose(sizing.Join{Upper: eye(1.6), Lower: eye(8)}), "they hang together, from nothing")

	at := usual(20)
	at.Parts = sizing.Parts{Choice: sizing.PartsDangle, Joins: []sizing.Join{{Upper: eye(-1.6), Lower: eye(1.6)}}}
	grown := ofKind(m.Findings(at), sizing.GrownTogether)
	require.Len(t, grown, 1)
	assert.InDelta(t, 3.2, float64(grown[0].Thinnest), 0.1)
	assert.Equal(t, sizing.Fails, grown[0].Verdict)
	assert.Len(t, ofKind(m.Findings(at), sizing.LoosePart), 2)
}

// An eye that is moved is told at once what it finds: the limits are 1.5 mm for
// the hole, 1 mm round it and 1.5 mm for a foot (common practice, no published
// source).
func TestRoomForAnEye(t *testing.T) {
	m := measured(t, join(disc(-8, 0, 6).less(disc(-8, 0, 1)), disc(5, 0, 4)), 15, 20)
	for want, x := range map[Room][]float64{
		RoomThere:   {-4.5, -11.5, 5, -14.75, 9.5, 0.9},
		RoomOff:     {12},
		RoomThin:    {10.7},
		RoomHole:    {-6.5},
		RoomTouches: {-0.5, -0.6},
	} {
		for _, mm := range x {
			assert.Equal(t, want, m.RoomFor(&sizing.Eye{At: [2]float64{(mm + 15) / 30, 0.5}}, usual(20)), mm)
		}
	}
}

// Links are so many that the chain hangs about as far as was drawn.
func TestReach(t *testing.T) {
	for gap, links := range map[float64]int{-3: 0, 2: 0, 5: 0, 6: 1, 7.7: 1, 10: 2, 13: 3, 500: 12} {
		var j sizing.Join
		j.Reach(unit.MM(gap))
		assert.Equal(t, links, j.Links, gap)
	}
}
