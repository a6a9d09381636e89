package wall

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// halves is a round badge in a thick rim, red above and blue below, with a line
// between that what lies beside it, and whatever else is drawn, can break.
func halves(size int, line, rim float64, cut func(x, y float64) bool) *reduce.Separation {
	c := float64(size) / 2
	return scene(size, size, func(x, y float64) uint8 {
		d := math.Hypot(x-c, y-c)
		switch {
		case d > c-4:
			return sky
		case d > c-4-rim && !cut(x, y):
			return steel
		case math.Abs(y-c) < line/2 && !cut(x, y):
			return steel
		case y < c:
			return red
		}
		return blue
	})
}

func nowhere(float64, float64) bool { return false }

func TestAGapInALineIsToldFromNoLine(t *testing.T) {
	const perMM = 40
	for _, gap := range []float64{6, 12, 30} {
		s := halves(300, 10, 20, func(x, y float64) bool { return math.Abs(x-140) < gap/2 })
		found := measured(t, s).Findings(perMM, soft)
		require.Len(t, kinds(found, sizing.Gap), 1+2, "the rim is cut too, above and below")
		require.Empty(t, kinds(found, sizing.NoLine))
		require.Empty(t, kinds(found, sizing.NoEdge))
		for _, f := range kinds(found, sizing.Gap) {
			require.Equal(t, sizing.Fails, f.Verdict)
			require.InDelta(t, 140, f.X, 2)
			require.InDelta(t, gap, float64(f.Thinnest)*perMM, 1)
			require.InDelta(t, gap+1, math.Hypot(f.Ends[2]-f.Ends[0], f.Ends[3]-f.Ends[1]), 1.5)
			require.Contains(t, []reduce.FlatID{10, 11}, f.Flat)
			require.Contains(t, []reduce.FlatID{11, sizing.Outside}, f.Other)
		}
	}
	none := measured(t, halves(300, 0, 20, nowhere)).Findings(perMM, soft)
	require.Empty(t, kinds(none, sizing.Gap), "the rims face one another, far apart")
	require.Len(t, kinds(none, sizing.NoLine), 1)
	half := measured(t, halves(300, 10, 20, func(x, y float64) bool { return math.Abs(y-150) < 5 && x > 150 && x < 260 })).Findings(perMM, soft)
	require.Empty(t, kinds(half, sizing.Gap), "eleven widths long")
	require.Len(t, kinds(half, sizing.NoLine), 1)
}

func TestAGapAtAJunctionIsOne(t *testing.T) {
	// The line stops 8 px short of the rim, whose side it points at.
	s := halves(300, 10, 20, func(x, y float64) bool { return math.Abs(y-150) < 6 && x > 268-8 && x < 276 })
	found := measured(t, s).Findings(40, soft)
	require.Len(t, kinds(found, sizing.Gap), 1)
	require.Empty(t, kinds(found, sizing.NoLine))
	require.InDelta(t, 264+6, kinds(found, sizing.Gap)[0].X, 8)
}

func TestAGapIsOneAtEverySize(t *testing.T) {
	m := measured(t, halves(300, 10, 20, func(x, y float64) bool { return math.Abs(x-140) < 4 && y > 100 && y < 200 }))
	for _, scale := range []unit.PxPerMM{3, 10, 40, 90} {
		require.Len(t, kinds(m.Findings(scale, soft), sizing.Gap), 1)
	}
}

func TestALineEndThatPointsElsewhereIsNoGap(t *testing.T) {
	// Two lines end side by side, 40 px apart; red lies between them, blue beyond.
	s := scene(200, 200, func(x, y float64) uint8 {
		switch {
		case x < 12 || x > 188 || y < 12 || y > 188:
			return steel
		case y < 100 && (math.Abs(x-80) < 4 || math.Abs(x-120) < 4):
			return steel
		case y < 100 && x > 80 && x < 120:
			return red
		}
		return blue
	})
	found := measured(t, s).Findings(40, soft)
	require.Empty(t, kinds(found, sizing.Gap))
	require.Len(t, kinds(found, sizing.NoLine), 1)
}

func TestARoomOpenToTheOutside(t *testing.T) {
	// A pin in the form of a ring, 40 px of metal, with a slit; at 40 px/mm.
	ring := func(slit float64) []sizing.Finding {
		s := scene(600, 600, func(x, y float64) uint8 {
			d := math.Hypot(x-300, y-300)
			if d > 280 || d < 240 || x > 300 && math.Abs(y-300) < slit/2 {
				return sky
			}
			return steel
		})
		return measured(t, s).Findings(40, soft)
	}
	for _, slit := range []float64{4, 20, 50} {
		open := kinds(ring(slit), sizing.OpenArea)
		require.Len(t, open, 1)
		require.InDelta(t, slit/40, float64(open[0].Thinnest), 0.6/40)
		require.InDelta(t, math.Pi*36, open[0].Area, 2)
		require.InDelta(t, 560, open[0].X, 22)
		require.Equal(t, reduce.FlatID(12), open[0].Flat)
	}
	require.Empty(t, kinds(ring(62), sizing.OpenArea), "1.55 mm can be cut")
	require.Empty(t, kinds(ring(-1), sizing.OpenArea), "a hole")
}

func TestABayIsNoRoom(t *testing.T) {
	// A notch as wide as it is deep, and one that narrows to its bottom.
	s := scene(300, 300, func(x, y float64) uint8 {
		notch := math.Abs(x-100) < 20 && y < 60 || math.Abs(x-200) < 30-y/3 && y < 90
		if x < 10 || x > 290 || y < 10 || y > 290 || notch {
			return sky
		}
		return steel
	})
	require.Empty(t, kinds(measured(t, s).Findings(40, soft), sizing.OpenArea))
}

func TestHolesTooSmallToCut(t *testing.T) {
	hole := func(d float64) []sizing.Finding {
		s := scene(300, 300, func(x, y float64) uint8 {
			switch {
			case math.Hypot(x-150, y-150) > 145 || math.Hypot(x-150, y-150) < d/2:
				return sky
			}
			return steel
		})
		l := soft
		l.Solid = 0
		return measured(t, s).Findings(40, l)
	}
	small := hole(48)
	require.Len(t, small, 1)
	require.Equal(t, sizing.SmallCutOut, small[0].Kind)
	require.InDelta(t, 1.2, float64(small[0].Thinnest), 0.02)
	require.InDelta(t, 150, small[0].X, 1)
	require.Equal(t, sizing.Outside, small[0].Flat)
	require.Empty(t, hole(61))
	pin := hole(6)
	require.Len(t, pin, 1)
	require.Equal(t, sizing.Pinhole, pin[0].Kind)
	require.InDelta(t, 6*math.Sqrt(math.Pi)/2/40, float64(pin[0].Thinnest), 0.01)
}

func TestSpecksAndPinholes(t *testing.T) {
	dot := func(cx, cy, d float64) func(x, y float64) bool {
		return func(x, y float64) bool { return math.Hypot(x-cx, y-cy) < d/2 }
	}
	small, large, hole, room := dot(90, 90, 5), dot(200, 90, 10), dot(130, 198, 6), dot(205, 198, 28)
	s := plate(300, func(x, y float64) bool {
		bar := x > 105 && x < 235 && y > 175 && y < 220
		return small(x, y) || large(x, y) || bar && !hole(x, y) && !room(x, y)
	})
	found := measured(t, s).Findings(40, soft)
	require.Len(t, found, 2)
	specks, pins := kinds(found, sizing.MetalIsland), kinds(found, sizing.Pinhole)
	require.Len(t, specks, 1, "the large dot, of 0.25 mm, stays")
	require.InDelta(t, 90, specks[0].X, 1)
	require.InDelta(t, 5.0/40, float64(specks[0].Thinnest), 0.5/40)
	require.InDelta(t, math.Pi*6.25/1600, specks[0].Area, 0.003)
	require.Len(t, pins, 1, "the room is filled")
	require.InDelta(t, 130, pins[0].X, 1)
	require.Equal(t, reduce.FlatID(10), pins[0].Flat)
}

func TestManySpecksAreOneFinding(t *testing.T) {
	s := plate(300, func(x, y float64) bool {
		return math.Hypot(math.Mod(x, 30)-15, math.Mod(y, 30)-15) < 2.2
	})
	specks := kinds(measured(t, s).Findings(40, soft), sizing.MetalIsland)
	require.Len(t, specks, 1)
	require.Greater(t, specks[0].Count, 30)
	require.Greater(t, specks[0].X1-specks[0].X0, 150.0)
}

func TestLargeBareMetalIsNoted(t *testing.T) {
	s := plate(400, func(x, y float64) bool { return math.Hypot(x-200, y-200) < 70 })
	m := measured(t, s)
	found := m.Findings(25, soft)
	require.Len(t, found, 1)
	require.Equal(t, sizing.SolidMetal, found[0].Kind)
	require.Equal(t, sizing.Holds, found[0].Verdict)
	require.InDelta(t, 140.0/25, float64(found[0].Thinnest), 0.05)
	require.InDelta(t, math.Pi*70*70/625, found[0].Area, 1.5)
	require.Empty(t, m.Findings(30, soft), "4.7 mm")
	bare := soft
	bare.Solid = 0
	require.Empty(t, m.Findings(25, bare))
}

func TestAFadingEndSaysWhereItPassesTheLimit(t *testing.T) {
	// A wedge of 20 degrees whose tip lies at x = 260: it is 8 px wide, the limit
	// at 40 px/mm, 22.7 px from there, and discs of 8 px reach 4 px further.
	tan := math.Tan(10 * math.Pi / 180)
	s := plate(320, func(x, y float64) bool { return x > 100 && x < 260 && math.Abs(y-160) < (260-x)*tan })
	found := measured(t, s).Findings(40, soft)
	require.Len(t, found, 1)
	f := found[0]
	require.Equal(t, sizing.FadesOut, f.Kind)
	require.InDelta(t, 260-(4/math.Sin(10*math.Pi/180)-4), f.Ends[0], 2)
	require.InDelta(t, 160, f.Ends[1], 1)
	require.InDelta(t, 257, f.Ends[2], 3)
}

func TestShortCornersAreSummedAsAreaLost(t *testing.T) {
	// Many triangles of metal with corners of 60 degrees, cut short by 0.2 mm.
	const side, perMM = 80.0, 100
	s := scene(700, 700, func(x, y float64) uint8 {
		u, v := math.Mod(x, 100)-50, math.Mod(y, 100)-60
		h := side * math.Sqrt(3) / 2
		if x < 4 || y < 4 || x > 696 || y > 696 || v < h/3 && v > -2*h/3+math.Abs(u)*math.Sqrt(3) {
			return steel
		}
		return red
	})
	noted := kinds(measured(t, s).Findings(perMM, soft), sizing.RoundedCorners)
	require.Len(t, noted, 1)
	f := noted[0]
	require.Equal(t, sizing.Holds, f.Verdict)
	corners := 3 * 7 * 7
	require.InDelta(t, corners, f.Count, 0.1*float64(corners))
	// Each loses r2 (cot 30 - 60 degrees), r being half the limit.
	each := 0.01 * (math.Sqrt(3) - math.Pi/3)
	require.InEpsilon(t, float64(corners)*each, f.Area, 0.2)
}

func TestLostAtIsThatOfAWedge(t *testing.T) {
	for _, a := range []float64{5, 15, 30, 45} {
		a *= math.Pi / 180
		r := 3.0
		beyond := r/math.Sin(a) - r
		// By counting: the wedge up to the disc's middle, less what the disc covers.
		n, step := 0, 0.01
		for x := step / 2; x < r/math.Sin(a); x += step {
			for y := step / 2; y < x*math.Tan(a); y += step {
				d := r/math.Sin(a) - x
				if d*d+y*y > r*r && d*math.Cos(a) > 0 && x < r/math.Tan(a)*math.Cos(a) {
					n++
				}
			}
		}
		require.InDelta(t, 2*float64(n)*step*step, lostAt(beyond, r), 0.1, "%g", a)
	}
	require.Zero(t, lostAt(3, 0))
}
