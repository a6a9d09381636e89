package wall

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

// strokesOf are letters of straight strokes on a field 4 wide and 6 high.
var strokesOf = map[rune][]bar{
	'S': {{4, 0, 0, 0, 0}, {0, 0, 0, 3, 0}, {0, 3, 4, 3, 0}, {4, 3, 4, 6, 0}, {4, 6, 0, 6, 0}},
	'K': {{0, 0, 0, 6, 0}, {0, 3, 4, 0, 0}, {0, 3, 4, 6, 0}},
	'E': {{0, 0, 0, 6, 0}, {0, 0, 4, 0, 0}, {0, 3, 3, 3, 0}, {0, 6, 4, 6, 0}},
	'R': {{0, 0, 0, 6, 0}, {0, 0, 4, 0, 0}, {4, 0, 4, 3, 0}, {0, 3, 4, 3, 0}, {1, 3, 4, 6, 0}},
	'Y': {{0, 0, 2, 3, 0}, {4, 0, 2, 3, 0}, {2, 3, 2, 6, 0}},
	'L': {{0, 0, 0, 6, 0}, {0, 6, 4, 6, 0}},
	'I': {{2, 0, 2, 6, 0}},
	'G': {{4, 0, 0, 0, 0}, {0, 0, 0, 6, 0}, {0, 6, 4, 6, 0}, {4, 6, 4, 3, 0}, {4, 3, 2, 3, 0}},
	'H': {{0, 0, 0, 6, 0}, {4, 0, 4, 6, 0}, {0, 3, 4, 3, 0}},
	'T': {{0, 0, 4, 0, 0}, {2, 0, 2, 6, 0}},
}

// written are the strokes of a text whose capitals are as high as given, from
// their middle lines, with the width of a stroke; place puts a point of the
// straight row, from its left foot, where it belongs.
func written(text string, caps, stroke float64, place func(x, y float64) (float64, float64)) func(x, y float64) bool {
	u := (caps - stroke) / 6
	var all []bar
	at := 0.0
	for _, r := range text {
		for _, b := range strokesOf[r] {
			// A stroke reaches half its width past its ends.
			l := math.Hypot(b.x1-b.x0, b.y1-b.y0) * u
			ex, ey := (b.x1-b.x0)*u/l*stroke/2, (b.y1-b.y0)*u/l*stroke/2
			x0, y0 := place(at+b.x0*u-ex, (b.y0-6)*u-ey)
			x1, y1 := place(at+b.x1*u+ex, (b.y1-6)*u+ey)
			all = append(all, bar{x0, y0, x1, y1, stroke})
		}
		at += 6 * u
		if r == ' ' {
			at -= 2 * u
		}
	}
	return func(x, y float64) bool {
		for i := range all {
			b := &all[i]
			near := x > min(b.x0, b.x1)-stroke && x < max(b.x0, b.x1)+stroke && y > min(b.y0, b.y1)-stroke && y < max(b.y0, b.y1)+stroke
			if near && b.holds(x, y) {
				return true
			}
		}
		return false
	}
}

func straight(x0, y0, tilt float64) func(x, y float64) (float64, float64) {
	s, c := math.Sincos(tilt)
	return func(x, y float64) (float64, float64) { return x0 + x*c - y*s, y0 + x*s + y*c }
}

// ofLines keeps what is said of lines and areas out of a test of lettering.
var ofLines = sizing.Limits{Line: 0.02, Area: 0.02, Edge: 0.02, Lettering: 1.5, LetteringSunk: 2.0}

func TestLetteringIsFoundAndToldOnce(t *testing.T) {
	const caps = 48.0
	for name, place := range map[string]func(x, y float64) (float64, float64){
		"straight": straight(60, 320, 0),
		"tilted":   straight(80, 200, 0.4),
		"steep":    straight(320, 100, math.Pi/2),
		"arc": func(x, y float64) (float64, float64) {
			s, c := math.Sincos(x/220 - 1.2)
			return 320 + (220-y)*s, 340 - (220-y)*c
		},
	} {
		text := written("SKERRY LIGHT", caps, 7, place)
		m := measured(t, plate(640, text))
		found := m.Findings(caps/1.2, ofLines)
		require.Len(t, found, 1, name)
		f := found[0]
		require.Equal(t, sizing.SmallLettering, f.Kind)
		require.Equal(t, sizing.Fails, f.Verdict)
		require.Equal(t, 11, f.Count, name)
		require.InDelta(t, 1.2, float64(f.Thinnest), 0.07, name) // on an arc, more than their own height
		require.Equal(t, reduce.FlatID(12), f.Flat)
		require.Empty(t, m.Findings(caps/1.6, ofLines), "1.6 mm raised is high enough")
		// What is too thin in it is told with it, until the letters are high enough.
		thin := ofLines
		thin.Line = 0.3
		require.Len(t, m.Findings(caps/1.2, thin), 1, name)
		require.NotEmpty(t, kinds(m.Findings(caps/1.6, thin), sizing.ThinLine), name)
	}
}

func TestSunkLetteringHasItsOwnLimit(t *testing.T) {
	text := written("LIGHT", 48, 8, straight(120, 220, 0))
	s := scene(500, 400, func(x, y float64) uint8 {
		switch {
		case x < 4 || y < 4 || x > 496 || y > 396:
			return sky
		case text(x, y):
			return blue
		}
		return steel
	})
	m := measured(t, s)
	found := m.Findings(48/1.6, ofLines)
	require.Len(t, found, 1)
	require.Equal(t, sizing.SmallLettering, found[0].Kind)
	require.Equal(t, 5, found[0].Count)
	require.Equal(t, ofLines.LetteringSunk, found[0].Limit)
	require.Empty(t, m.Findings(48/2.1, ofLines))
}

func TestRowsOfOtherThingsAreNoLettering(t *testing.T) {
	star := func(x, y, r float64) bool {
		a := math.Atan2(y, x)
		return math.Hypot(x, y) < r*(0.6+0.4*math.Cos(5*a))
	}
	letter := written("R", 30, 5, straight(12, 165, 0))
	for name, at := range map[string]func(x, y float64) bool{
		"dots":    func(x, y float64) bool { return math.Hypot(math.Mod(x, 40)-20, y-150) < 12 },
		"bars":    func(x, y float64) bool { return math.Abs(math.Mod(x, 30)-15) < 3+x/150 && math.Abs(y-150) < 20 },
		"stars":   func(x, y float64) bool { return star(math.Mod(x, 40)-20, y-150, 15) },
		"windows": func(x, y float64) bool { return math.Abs(math.Mod(x, 40)-20) < 8 && math.Abs(y-150) < 14 },
		"waves": func(x, y float64) bool {
			u := math.Mod(x, 60) - 30
			return math.Abs(u) < 22 && math.Abs(y-150-6*math.Sin(u/7)) < 3
		},
		"the same letter": func(x, y float64) bool {
			return letter(math.Mod(x, 50), y)
		},
	} {
		row := func(x, y float64) bool { return x > 40 && x < 240 && at(x, y) }
		require.Empty(t, kinds(measured(t, plate(300, row)).Findings(40, ofLines), sizing.SmallLettering), name)
	}
}

func TestLetteringHoldsFromASize(t *testing.T) {
	text := written("SKERRY LIGHT", 48, 7, straight(60, 320, 0))
	s := plate(640, text)
	m := measured(t, s)
	box, _ := sizing.Outline(s)
	from := m.HoldsFrom(box, sizing.ByLongest, ofLines)
	require.InDelta(t, 1.5*636/48, float64(from), 0.7)
}
