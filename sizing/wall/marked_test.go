package wall

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// stem is an upright bar of another class, 10 px wide and 48 high, in the middle
// of a plate 200 px across; mark is drawn along it, from its foot to its head.
func stem(inside uint8) (*reduce.Separation, sizing.LetterMark) {
	s := scene(200, 200, func(x, y float64) uint8 {
		d := math.Hypot(x-100, y-100)
		switch in := math.Abs(x-100) < 5 && math.Abs(y-100) < 24; {
		case d > 96:
			return sky
		case in:
			return inside
		case inside == steel && d < 80:
			return red
		}
		return steel
	})
	return s, sizing.LetterMark{X0: 0.5, Y0: 0.62, X1: 0.5, Y1: 0.38}
}

func TestAMarkedCapitalIsJudgedByWhatItIsMadeOf(t *testing.T) {
	for name, c := range map[string]struct {
		inside uint8
		scale  unit.PxPerMM // 48 px of it
		lies   sizing.Lies
		limit  unit.MM
		want   sizing.Verdict
	}{
		"raised, 1.2 mm":         {steel, 40, sizing.Raised, 1.5, sizing.Fails},
		"raised, 1.6 mm":         {steel, 30, sizing.Raised, 1.5, sizing.Holds},
		"raised, within a pixel": {steel, 32.5, sizing.Raised, 1.5, sizing.Holds},
		"sunk, 1.6 mm":           {red, 30, sizing.Sunk, 2, sizing.Fails},
		"sunk, 2.4 mm":           {red, 20, sizing.Sunk, 2, sizing.Holds},
		"off the pin":            {sky, 40, sizing.OffThePin, 0, sizing.Holds},
	} {
		s, mark := stem(c.inside)
		f, lies := measured(t, s).Marked(mark, c.scale, ofLines)
		require.Equal(t, c.lies, lies, name)
		require.Equal(t, c.want, f.Verdict, name)
		require.Equal(t, sizing.SmallLettering, f.Kind, name)
		require.InDelta(t, 48/float64(c.scale), float64(f.Thinnest), 1e-9, name)
		require.Equal(t, c.limit, f.Limit, name)
		require.Equal(t, []float32{100, 124, 100, 76}, f.Path, name)
	}
}

// A mark of print is told as such, and no height is asked of it.
func TestAMarkOnPrintAsksNoHeight(t *testing.T) {
	s, mark := stem(red)
	for l := range s.Flats {
		if s.Flats[l].Role == reduce.Enamel {
			s.Flats[l].Role = reduce.Printed
		}
	}
	m := &Measured{s: s}
	f, lies := m.Marked(mark, 80, ofLines)
	require.Equal(t, sizing.OnPrint, lies)
	require.Equal(t, sizing.Holds, f.Verdict)
	require.Zero(t, m.MarkHoldsFrom(mark, [4]float64{0, 0, 200, 200}, sizing.ByWidth, ofLines))
}

// On a coarse raster the answer is that it cannot be told, and what could tell.
func TestACoarseMarkCannotBeTold(t *testing.T) {
	s, mark := stem(steel)
	mark.Y0, mark.Y1 = 0.5, 0.48
	f, _ := measured(t, s).Marked(mark, 2.5, ofLines) // 4 px: 1.6 mm, to 0.4 mm
	require.Equal(t, sizing.CannotTell, f.Verdict)
	require.Positive(t, f.NeedPx)
}

// The size from which it holds is the least of those that are judged to, found
// one by one.
func TestTheSizeFromWhichAMarkHolds(t *testing.T) {
	for _, inside := range []uint8{steel, red} {
		s, mark := stem(inside)
		m, box := measured(t, s), [4]float64{4, 4, 196, 196}
		for _, long := range []float64{2, 4, 5, 6, 9, 30, 48} {
			mark.Y0 = mark.Y1 + long/200
			slow := unit.MM(0)
			for k := greatestMM * sizesPerMM; k >= int(sizing.LeastSize)*sizesPerMM; k-- {
				mm := unit.MM(k) / sizesPerMM
				if f, _ := m.Marked(mark, sizing.ScaleFor(box, sizing.Size{MM: mm, By: sizing.ByWidth}), ofLines); f.Verdict != sizing.Holds {
					break
				}
				slow = mm
			}
			require.InDelta(t, float64(slow), float64(m.MarkHoldsFrom(mark, box, sizing.ByWidth, ofLines)), 1e-9, "%v px", long)
		}
	}
}

// A mark beyond the drawing ends at its edge; one that is nothing marks nothing.
func TestBadMarksAreBroughtIn(t *testing.T) {
	s, _ := stem(steel)
	m := measured(t, s)
	f, _ := m.Marked(sizing.LetterMark{X0: 0.5, Y0: 7, X1: 0.5, Y1: -3}, 40, ofLines)
	require.Equal(t, []float32{100, 200, 100, 0}, f.Path)
	for _, bad := range []sizing.LetterMark{{}, {X0: 3, Y0: 3, X1: 9, Y1: 9}, {X0: 0.5, Y0: 0.5, X1: 0.5, Y1: 0.5}, {X0: math.NaN(), Y0: math.NaN(), X1: math.Inf(-1), Y1: -1}} {
		f, lies := m.Marked(bad, 40, ofLines)
		require.Equal(t, sizing.OffThePin, lies)
		require.Equal(t, sizing.Holds, f.Verdict)
	}
}
