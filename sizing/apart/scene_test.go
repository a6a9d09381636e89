package apart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// The labels of drawn scenes.
const (
	left  = 0
	right = 1
	steel = 2
	sky   = reduce.None
)

func hex(t *testing.T, s string) colour.RGB8 {
	t.Helper()
	c, err := colour.ParseHex(s)
	require.NoError(t, err)
	return c
}

// draw is a picture by the label at each place, each pixel of the two labels it
// has most of.
func draw(n int, flats []reduce.Flat, at func(x, y float64) uint8) *reduce.Separation {
	s := reduce.NewSeparation(n, n)
	s.Flats = flats
	const grain = 6
	for i := range s.Labels {
		var count [256]int
		for k := range grain * grain {
			count[at(float64(i%n)+(float64(k%grain)+0.5)/grain, float64(i/n)+(float64(k/grain)+0.5)/grain)]++
		}
		a, b := 0, -1
		for l, c := range count {
			if c > count[a] {
				a = l
			}
		}
		for l, c := range count {
			if l != a && c > 0 && (b < 0 || c > count[b]) {
				b = l
			}
		}
		s.Labels[i], s.Beside[i], s.Cover[i] = uint8(a), uint8(a), 255
		if b >= 0 {
			s.Beside[i] = uint8(b)
			s.Cover[i] = uint8(max(128, 255*count[a]/(count[a]+count[b])))
		}
	}
	return s
}

// pin is two colours in a metal edge, with a line of a width in px between them
// or, where it is 0, none; 200 px square, of which the pin has 180.
func pin(t *testing.T, a, b string, line float64) (*wall.Measured, []reduce.Flat) {
	t.Helper()
	flats := []reduce.Flat{
		{ID: 0, Name: "left", RGB: hex(t, a), Role: reduce.Enamel},
		{ID: 1, Name: "right", RGB: hex(t, b), Role: reduce.Enamel},
		{ID: 2, Name: "steel", Role: reduce.Metal},
	}
	m, err := wall.Measure(draw(200, flats, func(x, y float64) uint8 {
		switch {
		case x < 10 || y < 10 || x > 190 || y > 190:
			return sky
		case x < 22 || y < 22 || x > 178 || y > 178, math.Abs(x-100) < line/2:
			return steel
		case x < 100:
			return left
		}
		return right
	}), nil)
	require.NoError(t, err)
	return m, flats
}

func plating(t *testing.T, id sizing.PlatingID) sizing.Plating {
	t.Helper()
	for _, p := range sizing.Platings() {
		if p.ID == id {
			return p
		}
	}
	t.Fatalf("no plating %s", id)
	return sizing.Plating{}
}

// at is a scene of the pin at a size in mm.
func at(t *testing.T, flats []reduce.Flat, mm unit.MM, id sizing.PlatingID) *Scene {
	t.Helper()
	size := sizing.Size{MM: mm, By: sizing.ByLongest}
	return &Scene{
		Scale: sizing.ScaleFor([4]float64{10, 10, 190, 190}, size), Size: size, LongSide: 200,
		Flats: flats, Plating: plating(t, id), Cloth: colour.RGB8{R: 62, G: 82, B: 112},
	}
}
