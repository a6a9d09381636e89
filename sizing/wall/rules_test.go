package wall

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

var soft = sizing.DefaultLimits(sizing.Struck, sizing.Soft)

// plate is a round enamel badge in a thick rim with whatever ink draws on it.
func plate(size int, ink func(x, y float64) bool) *reduce.Separation {
	c := float64(size) / 2
	return scene(size, size, func(x, y float64) uint8 {
		switch d := math.Hypot(x-c, y-c); {
		case d > c-2:
			return sky
		case d > c-30 || ink(x, y):
			return steel
		}
		return red
	})
}

func TestAHairOnASoundLineIsFoundOnceAndInItsPlace(t *testing.T) {
	// Line 14 px wide, thinned to 5 px for 20 px; at 40 px/mm: 0.35 and 0.125 mm.
	s := plate(300, func(x, y float64) bool {
		half := 7.0
		if math.Abs(x-150) < 10 {
			half = 2.5
		}
		return math.Abs(y-150) < half
	})
	found := measured(t, s).Findings(40, soft)
	require.Len(t, found, 1)
	f := found[0]
	require.Equal(t, sizing.ThinLine, f.Kind)
	require.Equal(t, sizing.Fails, f.Verdict)
	require.Equal(t, reduce.FlatID(12), f.Flat)
	require.InDelta(t, 150, f.X, 10)
	require.InDelta(t, 150, f.Y, 1)
	require.InDelta(t, 5.0/40, float64(f.Thinnest), 0.3/40)
	require.InDelta(t, 20.0/40, float64(f.Length), 4.0/40)
	require.InDelta(t, 0.25/40, float64(f.Error), 1e-9)
}

func TestCornersAndJunctionsAreNoTrouble(t *testing.T) {
	// A star of lines 10 px wide (0.25 mm): acute crossings, ends and corners.
	s := plate(320, func(x, y float64) bool {
		for k := range 3 {
			a := float64(k) * math.Pi / 3
			if math.Abs((x-160)*math.Sin(a)-(y-160)*math.Cos(a)) < 5 {
				return true
			}
		}
		return x > 60 && x < 80 && y > 200 && y < 230
	})
	require.Empty(t, kinds(measured(t, s).Findings(40, soft), sizing.ThinLine))
}

func TestALongPointIsNotedAndDoesNotCountAgainstTheSize(t *testing.T) {
	// A wedge of metal 10 degrees wide runs out to a point in enamel; it does so
	// at any size.
	s := plate(320, func(x, y float64) bool {
		return x > 60 && x < 260 && math.Abs(y-160) < (260-x)*math.Tan(5*math.Pi/180)
	})
	m := measured(t, s)
	for _, scale := range []unit.PxPerMM{25, 40, 60} {
		found := m.Findings(scale, soft)
		require.Len(t, found, 1)
		require.Equal(t, sizing.FadesOut, found[0].Kind)
		require.Equal(t, sizing.Holds, found[0].Verdict)
		// Discs of 0.2 mm reach to 0.1 mm / sin 5 degrees - 0.1 mm from the point.
		require.InDelta(t, 0.1/math.Sin(5*math.Pi/180)-0.1, float64(found[0].Length), 12/float64(scale), "less the tip that no pixel holds")
	}
	box, _ := sizing.Outline(s)
	require.Equal(t, sizing.LeastSize, m.HoldsFrom(box, sizing.ByLongest, sizing.Limits{Line: 0.2, Area: 0.1, Edge: 0.1}))
}

func TestAHairThatEndsInEnamelFails(t *testing.T) {
	s := plate(320, func(x, y float64) bool { return x > 0 && x < 200 && math.Abs(y-160) < 2 })
	found := measured(t, s).Findings(40, soft)
	require.Len(t, found, 1)
	require.Equal(t, sizing.ThinLine, found[0].Kind)
	require.Equal(t, sizing.Fails, found[0].Verdict)
	thin := plate(320, func(x, y float64) bool { return x > 0 && x < 200 && math.Abs(y-160.5) < 0.8 })
	hair := measured(t, thin).Findings(40, soft)
	require.Len(t, hair, 1)
	require.Equal(t, sizing.ThinLine, hair[0].Kind, "1.6 px")
	require.InDelta(t, 0.1, float64(found[0].Thinnest), 0.01)
}

func TestAThinRimIsJudgedAsAnEdge(t *testing.T) {
	// Rim of 10 px: 0.25 mm, enough for a line (0.20) and not for an edge (0.30).
	ring := func(rim float64) []sizing.Finding {
		return measured(t, scene(240, 240, func(x, y float64) uint8 {
			switch d := math.Hypot(x-120, y-120); {
			case d > 115:
				return sky
			case d > 115-rim:
				return steel
			}
			return red
		})).Findings(40, soft)
	}
	found := ring(10)
	require.Len(t, found, 1)
	require.Equal(t, soft.Edge, found[0].Limit)
	require.InDelta(t, 0.25, float64(found[0].Thinnest), 0.3/40)
	require.InDelta(t, 2*math.Pi*110/40, float64(found[0].Length), 1)
	require.Empty(t, ring(12.2))
}

func TestNarrowAndSmallAreas(t *testing.T) {
	m := measured(t, text(10, rows(`
##################
#rrrrrrrr#bbbbbbb#
#rrrrrrrr#bbbbbbb#
#rrrrrrrr#bbbbbbb#
#rrrrrrrr#########
#rrrrrrrr#b#rrrrr#
#rrrrrrrr###rrrrr#
#rrrrrrrr#########
#rrrrrrrrrrrrrrrr#
##################`)...))
	l := soft
	l.Edge = l.Line            // the outer edge is not at stake here
	found := m.Findings(40, l) // 10 px are 0.25 mm: below 0.30 for an area; lines hold
	narrow, small := kinds(found, sizing.NarrowArea), kinds(found, sizing.SmallArea)
	require.Len(t, found, 2)
	require.Len(t, narrow, 1)
	require.InDelta(t, 0.25, float64(narrow[0].Thinnest), 0.02)
	require.InDelta(t, 85, narrow[0].Y, 1)
	require.Len(t, small, 1)
	require.InDelta(t, 105, small[0].X, 0.5)
	require.InDelta(t, 55, small[0].Y, 0.5)
	require.InDelta(t, 0.25, float64(small[0].Thinnest), 1e-6)
}

func TestMissingMetalIsToldOncePerBorder(t *testing.T) {
	m := measured(t, text(10, rows(`
............
.rrrrrbbbbb.
.rrrrrbbbbb.
.rrrrr#bbbb.
.rrrrr#bbbb.
.##########.
............`)...))
	found := m.Findings(40, soft)
	lines, edges := kinds(found, sizing.NoLine), kinds(found, sizing.NoEdge)
	require.Len(t, lines, 1)
	require.InDelta(t, 20.0/40, float64(lines[0].Length), 2.0/40)
	require.InDelta(t, 60, lines[0].X, 1)
	require.InDelta(t, 20, lines[0].Y, 3)
	require.Len(t, edges, 2)
	require.InDelta(t, (50+40)/40.0, float64(edges[0].Length), 0.2)
}

func TestPrintedDetailNeedsNoMetal(t *testing.T) {
	with, without := rows(`
########
#rrrrrr#
#riirrr#
#riirri#
########`), rows(`
########
#rrrrrr#
#rrrrrr#
#rrrrrr#
########`)
	l := sizing.DefaultLimits(sizing.Cast, sizing.Soft)
	a, b := measured(t, text(12, with...)), measured(t, text(12, without...))
	require.Equal(t, b.Findings(60, l), a.Findings(60, l))
	require.Equal(t, b.area, a.area)
}

func TestARasterTooCoarseSaysSo(t *testing.T) {
	// A line 1.1 px wide, at 4 px/mm: 0.275 mm, known to a quarter pixel.
	m := measured(t, plate(200, func(x, y float64) bool { return math.Abs(y-100.5) < 0.55 }))
	at := func(limit unit.MM) []sizing.Finding {
		return kinds(m.Findings(4, sizing.Limits{Line: limit, Area: 0.1, Edge: 0.1}), sizing.ThinLine)
	}
	require.Empty(t, at(0.1), "0.4 px: it holds even on this raster")
	unsure := at(0.24)
	require.Len(t, unsure, 1)
	require.Equal(t, sizing.CannotTell, unsure[0].Verdict)
	// Four errors to a limit: 1 px to 0.24 mm, 4.17 px/mm instead of 4.
	require.Equal(t, 300, unsure[0].NeedPx)
	sure := at(0.5)
	require.Len(t, sure, 1)
	require.Equal(t, sizing.Fails, sure[0].Verdict)
	require.Zero(t, sure[0].NeedPx)
}

func TestTurningAndMirroringChangeNothing(t *testing.T) {
	const seed = 46
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	n := 0
	for range 6 {
		s := blobs(rnd, 140)
		m, right, glass := measured(t, s), measured(t, turned(s)), measured(t, mirrored(s))
		for _, f := range m.Findings(1, sevenPx) {
			if f.Length < 3.5*f.Limit || f.Kind == sizing.FadesOut || f.Kind.Missing() {
				continue
			}
			n++
			sameAt(t, right, f, func(x, y float64) (float64, float64) { return float64(s.H) - y, x })
			sameAt(t, glass, f, func(x, y float64) (float64, float64) { return float64(s.W) - x, y })
		}
	}
	require.Greater(t, n, 8)
}

var sevenPx = sizing.Limits{Line: 7, Area: 7, Edge: 7}

// sameAt wants nine in ten corners of a finding's path to lie on centreline that is
// part of a finding in another measure; the rest may be at the tip of a wedge,
// where the centreline ends a few pixels sooner or later.
func sameAt(t *testing.T, m *Measured, f sizing.Finding, to func(x, y float64) (float64, float64)) {
	hit, all := 0, len(f.Path)/2
	for i := 0; i < len(f.Path); i += 2 {
		x, y := to(float64(f.Path[i]), float64(f.Path[i+1]))
		for _, p := range m.lines.points {
			if math.Hypot(float64(p.x)+0.5-x, float64(p.y)+0.5-y) < 2.5 && p.bad < 7 && (p.group == areaGroup) == (f.Kind == sizing.NarrowArea) {
				hit++
				break
			}
		}
	}
	require.GreaterOrEqual(t, float64(hit), 0.9*float64(all)-1, "not found when turned or mirrored: %+v", f)
}

func TestThicknessScalesWithSize(t *testing.T) {
	const seed = 47
	t.Logf("seed %d", seed)
	m := measured(t, blobs(rand.New(rand.NewPCG(seed, 0)), 160))
	at := func(mm float64) []sizing.Finding {
		return m.Findings(unit.PxPerMM(40/mm), sizing.Limits{Line: 0.2 * unit.MM(mm), Area: 0.3 * unit.MM(mm), Edge: 0.2 * unit.MM(mm)})
	}
	one, two := at(1), at(2)
	require.NotEmpty(t, one)
	require.Len(t, two, len(one))
	for i := range one {
		require.InEpsilon(t, 2*float64(one[i].Length), float64(two[i].Length), 1e-9)
		require.InDelta(t, 2*float64(one[i].Thinnest), float64(two[i].Thinnest), 1e-9)
	}
}

func TestWhatHoldsHoldsAtEveryLargerSize(t *testing.T) {
	const seed = 48
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 6 {
		s := blobs(rnd, 140)
		m := measured(t, s)
		box, ok := sizing.Outline(s)
		require.True(t, ok)
		from := m.HoldsFrom(box, sizing.ByLongest, soft)
		held := false
		for mm := sizing.LeastSize; mm <= 120; mm += 0.7 {
			scale := sizing.ScaleFor(box, sizing.Size{MM: mm, By: sizing.ByLongest})
			fails := 0
			for _, f := range m.Findings(scale, soft) {
				if f.Verdict == sizing.Fails && !f.Kind.Missing() {
					fails++
				}
			}
			require.False(t, held && fails > 0, "holds below %.1f mm and fails there", float64(mm))
			held = held || fails == 0
			require.Equal(t, from > 0 && mm >= from-1e-9, fails == 0, "at %.1f mm, said to hold from %.1f", float64(mm), float64(from))
		}
	}
}

func TestFindingsAreTheSameEveryTime(t *testing.T) {
	s := blobs(rand.New(rand.NewPCG(49, 0)), 140)
	want := measured(t, s).Findings(30, soft)
	require.NotEmpty(t, want)
	for range 3 {
		require.Equal(t, want, measured(t, s).Findings(30, soft))
	}
}

func TestTouch(t *testing.T) {
	m := measured(t, text(10, rows(`
........
.######.
.#rrrr#.
.#rrrr#.
.######.
........`)...))
	require.Equal(t, Touch{Label: reduce.None}, m.At(5, 5))
	require.Equal(t, Touch{Label: reduce.None}, m.At(-1, 5))
	in := m.At(40, 30)
	require.Equal(t, uint8(red), in.Label)
	require.InDelta(t, 800, in.Area, 1e-9)
	require.InDelta(t, 20, in.Width, 0.5)
	line := m.At(15, 30)
	require.Equal(t, uint8(steel), line.Label)
	require.InDelta(t, 2400-800, line.Area, 1e-9)
	require.InDelta(t, 10, line.Width, 0.5)
}

func TestAnythingAtAllIsMeasuredWithoutPanic(t *testing.T) {
	const seed = 50
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		s := reduce.NewSeparation(1+rnd.IntN(14), 1+rnd.IntN(14))
		s.Flats = flats()
		labels := []uint8{red, blue, steel, hole, ink, sky}
		for i := range s.Labels {
			s.Labels[i], s.Beside[i] = labels[rnd.IntN(6)], labels[rnd.IntN(6)]
			s.Cover[i] = uint8(128 + rnd.IntN(128))
		}
		m := measured(t, s)
		m.Findings(unit.PxPerMM(rnd.Float64()*40), soft)
		m.At(rnd.Float64()*14, rnd.Float64()*14)
		Suggest(s)
		b, err := NewBuilder(s).Apply(both, unit.PxPerMM(0.1+rnd.Float64()*20), soft)
		require.NoError(t, err)
		measured(t, b).Findings(10, soft)
	}
}
