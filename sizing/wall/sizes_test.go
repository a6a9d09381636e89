package wall

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

func softLimits() sizing.Limits { return sizing.DefaultLimits(sizing.Struck, sizing.Soft) }

func outlined(t *testing.T, s *reduce.Separation) [4]float64 {
	t.Helper()
	box, ok := sizing.Outline(s)
	require.True(t, ok)
	return box
}

func scaleAt(box [4]float64, mm float64) unit.PxPerMM {
	return sizing.ScaleFor(box, sizing.Size{MM: unit.MM(mm), By: sizing.ByLongest})
}

// A line of metal of 400 px in enamel, half of it 4 px wide and half 10: where
// 6 px are the limit, half of its length fails; 12 px fail it all, 3 px nothing.
func TestHalfALineFails(t *testing.T) {
	s := scene(440, 120, func(x, y float64) uint8 {
		half := 2.0
		if x > 220 {
			half = 5
		}
		if x > 20 && x < 420 && math.Abs(y-60) < half {
			return steel
		}
		return red
	})
	c := measured(t, s).Curve()
	l := softLimits()
	for px, want := range map[float64]float64{3: 0, 6: 0.5, 12: 1} {
		got := c.At(unit.PxPerMM(px/float64(l.Line)), l)
		assert.InDelta(t, want, got.Lines, 0.03, "a limit of %v px", px)
	}
}

// A line a pixel wide, with hard edges, is known to half a pixel: against a limit
// of 1.4 px it may hold, against 1.8 it cannot.
func TestWhatCannotBeToldIsNoFailure(t *testing.T) {
	s := text(1, append(slices.Repeat([]string{strings.Repeat("r", 70)}, 12), append([]string{"rrrrr" + strings.Repeat("#", 60) + "rrrrr"}, slices.Repeat([]string{strings.Repeat("r", 70)}, 12)...)...)...)
	c := measured(t, s).Curve()
	l := softLimits()
	for px, want := range map[float64]float64{1.4: 0, 1.8: 1} {
		assert.Equal(t, want, c.At(unit.PxPerMM(px/float64(l.Line)), l).Lines, "a limit of %v px", px)
	}
}

// Enamel of 100 x 100 px, and a strip of 300 x 5 px between metal.
func TestNarrowEnamelFailsByItsArea(t *testing.T) {
	s := scene(460, 200, func(x, y float64) uint8 {
		switch {
		case x > 20 && x < 120 && y > 50 && y < 150, x > 140 && x < 440 && y > 90 && y < 95:
			return red
		}
		return steel
	})
	c := measured(t, s).Curve()
	l := softLimits()
	l.AreaSize = 0.0001
	got := c.At(unit.PxPerMM(8/float64(l.Area)), l)
	assert.InDelta(t, 1500./11500, got.Areas, 0.01)
	l.AreaSize = 1 // 40 px to the mm: 1600 px2
	got = c.At(40, l)
	assert.InDelta(t, 1500./11500, got.Areas, 0.01, "as a whole it is too small, and counts once")
}

// twinShares sums over every point and part anew: the slow twin of a curve.
func twinShares(m *Measured, scale unit.PxPerMM, l sizing.Limits) (s Shares) {
	limits := limitsOf(l)
	all, thin, enamel, lost := 0.0, 0.0, 0.0, map[int32]float64{}
	for i := range m.lines.points {
		p := &m.lines.points[i]
		long := 0.0
		for _, n := range m.lines.of(int32(i)) {
			long += m.lines.step(int32(i), n) / 2
		}
		fails := float64(p.hard) < m.surely(limits[p.group].Px(scale))
		if p.group == areaGroup {
			if fails {
				lost[p.part] += long * float64(p.tau)
			}
			continue
		}
		all += long
		if fails {
			thin += long
		}
	}
	sum := 0.0
	for k, class := range m.parts.Label {
		if !m.v.enamel[class] {
			continue
		}
		enamel += m.area[k]
		side := unit.MM(math.Sqrt(m.area[k]) / float64(scale))
		if m.area[k] >= crumb && sizing.Judge(side, scale.MM(m.shaky), unit.MM(math.Sqrt(l.AreaSize))) == sizing.Fails {
			lost[int32(k)] = m.area[k]
		}
		sum += min(lost[int32(k)], m.area[k])
	}
	return Shares{thin / all, sum / enamel}
}

func TestCurveIsWhatEveryPlaceSays(t *testing.T) {
	m := measured(t, lighthouse(500, 9, 4))
	c := m.Curve()
	box := outlined(t, m.s)
	for mm := 8.0; mm <= 90; mm += 1.7 {
		scale := scaleAt(box, mm)
		want, got := twinShares(m, scale, softLimits()), c.At(scale, softLimits())
		assert.InDelta(t, want.Lines, got.Lines, 1e-9, "%v mm", mm)
		assert.InDelta(t, want.Areas, got.Areas, 1e-9, "%v mm", mm)
	}
}

// What the curve says and the smallest size that holds are of one mind, and
// what fails only ever becomes less.
func TestCurveEndsWhereTheSizesThatHoldBegin(t *testing.T) {
	for name, s := range map[string]*reduce.Separation{
		"lighthouse": lighthouse(500, 9, 9), "with a hair": lighthouse(500, 9, 4), "fine": lighthouse(400, 4, 3),
	} {
		m := measured(t, s)
		c := m.Curve()
		box := outlined(t, s)
		for _, l := range []sizing.Limits{softLimits(), sizing.DefaultLimits(sizing.Struck, sizing.Hard), sizing.DefaultLimits(sizing.Cast, sizing.Soft)} {
			holds := float64(m.HoldsFrom(box, sizing.ByLongest, l))
			require.Positive(t, holds, name)
			before := Shares{1, 1}
			for mm := 6.0; mm <= 110; mm += 0.5 {
				got := c.At(scaleAt(box, mm), l)
				assert.LessOrEqual(t, got.Lines, before.Lines, "%s at %v mm", name, mm)
				assert.LessOrEqual(t, got.Areas, before.Areas, "%s at %v mm", name, mm)
				before = got
				switch {
				case mm >= holds+0.5: // nearer, the grain of each piece counts
					assert.Zero(t, got, "%s holds from %v mm, and at %v", name, holds, mm)
				case mm < holds-0.2:
					assert.Positive(t, got.Lines+got.Areas, "%s holds from %v mm, not at %v", name, holds, mm)
				}
			}
		}
	}
}

// Two enamels touch over 12 px: at which size, makes no difference.
func TestAShortSeamIsMissedAtEverySize(t *testing.T) {
	s := scene(640, 640, func(x, y float64) uint8 {
		switch {
		case math.Hypot(x-320, y-320) > 300:
			return sky
		case math.Hypot(x-320, y-320) > 270, math.Abs(x-320) < 8 && math.Abs(y-320) > 6:
			return steel
		case x < 320:
			return red
		}
		return blue
	})
	m := measured(t, s)
	assert.True(t, m.Lacks(softLimits(), func(*sizing.Finding) bool { return false }))
	assert.False(t, m.Lacks(softLimits(), func(*sizing.Finding) bool { return true }), "it is built")
	assert.False(t, measured(t, lighthouse(500, 9, 9)).Lacks(softLimits(), func(*sizing.Finding) bool { return false }))
}

func BenchmarkCurve(b *testing.B) {
	benchBoth(b, func(b *testing.B, s *reduce.Separation) {
		c := measured(b, s).Curve()
		box, _ := sizing.Outline(s)
		for b.Loop() {
			for mm := 10; mm <= 80; mm++ {
				c.At(scaleAt(box, float64(mm)), benchLimits)
			}
		}
	})
}
