package outline

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// shape says whether a point (mm, x right, y down) is metal.
type shape func(x, y float64) bool

func disc(cx, cy, r float64) shape {
	return func(x, y float64) bool { return (x-cx)*(x-cx)+(y-cy)*(y-cy) <= r*r }
}

func oval(cx, cy, a, b float64) shape {
	return func(x, y float64) bool { return math.Hypot((x-cx)/a, (y-cy)/b) <= 1 }
}

func box(x0, y0, x1, y1 float64) shape {
	return func(x, y float64) bool { return x >= x0 && x <= x1 && y >= y0 && y <= y1 }
}

// poly is a polygon of x, y pairs, by the even-odd rule.
func poly(c ...float64) shape {
	return func(x, y float64) bool {
		in := false
		for i, n := 0, len(c)/2; i < n; i++ {
			j := (i + 1) % n
			x0, y0, x1, y1 := c[2*i], c[2*i+1], c[2*j], c[2*j+1]
			if (y0 > y) != (y1 > y) && x < x0+(y-y0)/(y1-y0)*(x1-x0) {
				in = !in
			}
		}
		return in
	}
}

func join(s ...shape) shape {
	return func(x, y float64) bool {
		for _, f := range s {
			if f(x, y) {
				return true
			}
		}
		return false
	}
}

func (s shape) less(o shape) shape { return func(x, y float64) bool { return s(x, y) && !o(x, y) } }
func (s shape) turned(degrees float64) shape {
	sin, cos := math.Sincos(-degrees * math.Pi / 180)
	return func(x, y float64) bool { return s(x*cos-y*sin, x*sin+y*cos) }
}
func (s shape) scaled(by float64) shape { return func(x, y float64) bool { return s(x/by, y/by) } }

// strike draws a shape that lies within -r..r mm, anti-aliased from 4 x 4 points
// a pixel, at a scale; the middle of the raster is the point 0, 0.
func strike(s shape, r float64, perMM int) *reduce.Separation {
	n := 2 * int(math.Ceil(r)) * perMM
	sep := reduce.NewSeparation(n, n)
	sep.Flats = []reduce.Flat{{ID: 7, Role: reduce.Metal}}
	mid := float64(n) / 2
	at := func(x, y float64) bool { return s((x-mid)/float64(perMM), (y-mid)/float64(perMM)) }
	above, below := make([]bool, n+1), make([]bool, n+1)
	corners := func(row []bool, y int) {
		for x := range row {
			row[x] = at(float64(x), float64(y))
		}
	}
	corners(below, 0)
	for y := range n {
		above, below = below, above
		corners(below, y+1)
		for x := range n {
			c := above[x]
			switch {
			case c != above[x+1] || c != below[x] || c != below[x+1]:
				fill(sep, y*n+x, sixteenths(at, x, y))
			case c:
				fill(sep, y*n+x, 16)
			}
		}
	}
	return sep
}

func sixteenths(at func(x, y float64) bool, x, y int) (n int) {
	for k := range 16 {
		if at(float64(x)+(float64(k%4)+0.5)/4, float64(y)+(float64(k/4)+0.5)/4) {
			n++
		}
	}
	return n
}

// fill sets a pixel of which n sixteenths are metal.
func fill(sep *reduce.Separation, i, n int) {
	switch {
	case n == 16:
		sep.Labels[i], sep.Beside[i] = 0, 0
	case n >= 8:
		sep.Labels[i], sep.Cover[i] = 0, uint8(255*n/16)
	case n > 0:
		sep.Beside[i], sep.Cover[i] = 0, uint8(255-255*n/16)
	}
}

func measured(t testing.TB, s shape, r float64, perMM int) *Measured {
	t.Helper()
	m, err := Measure(strike(s, r, perMM), nil)
	require.NoError(t, err)
	return m
}

// usual is what an iron pin of 1.5 mm is judged by.
func usual(perMM float64) At {
	return At{Scale: unit.PxPerMM(perMM), Limits: sizing.DefaultLimits(sizing.Struck, sizing.Soft), Base: sizing.Iron, Thickness: 1.5}
}

func ofKind(found []sizing.Finding, k sizing.Kind) []sizing.Finding {
	var all []sizing.Finding
	for _, f := range found {
		if f.Kind == k {
			all = append(all, f)
		}
	}
	return all
}

// cabinet holds silhouettes such as pins have, each with a usual size.
func cabinet() map[string]struct {
	longest float64
	shape   shape
	half    float64
} {
	type piece = struct {
		longest float64
		shape   shape
		half    float64
	}
	tower := join(poly(-5, 20, -3, -10, 3, -10, 5, 20), box(-4.5, -12, 4.5, -10), box(-2.5, -16, 2.5, -12), poly(-3.5, -16, 0, -20, 3.5, -16))
	return map[string]piece{
		"disc":            {30, disc(0, 0, 10), 10},
		"crescent":        {32, disc(0, 0, 10).less(disc(4.5, 0, 8.2)), 10},
		"ring":            {34, disc(0, 0, 10).less(disc(0, 0, 6.2)), 10},
		"arrow":           {40, join(box(-18, -3, 6, 3), poly(6, -9, 19, 0, 6, 9)), 19},
		"fish":            {50, join(oval(-3, 0, 14, 5.5), poly(9, 0, 18, -6, 16, 0, 18, 6)), 18},
		"tower":           {50, tower, 20},
		"wings":           {60, poly(-20, -7, -4, -3, 0, -5, 4, -3, 20, -7, 14, 1, 4, 4, 0, 8, -4, 4, -14, 1), 20},
		"cross":           {36, join(box(-4, -14, 4, 14), box(-14, -4, 14, 4)), 14},
		"key":             {45, join(disc(0, -12, 7).less(disc(0, -13, 2.5)), box(-2, -6, 2, 18), box(2, 8, 7, 11), box(2, 13, 6, 16)), 19},
		"cloud":           {38, join(disc(-8, 2, 6), disc(-2, -3, 7), disc(6, -1, 6), disc(11, 3, 4.5), box(-8, 2, 11, 8)), 16},
		"tree":            {40, join(poly(0, -18, 8, -6, -8, -6), poly(0, -12, 10, 2, -10, 2), poly(0, -5, 12, 10, -12, 10), box(-2.5, 10, 2.5, 16)), 18},
		"buoy-anchor":     {50, join(oval(0, -12, 7, 6), poly(-4, -8, -2, 2, 2, 2, 4, -8), box(-0.8, 6, 0.8, 18), disc(0, 14, 5).less(disc(0, 12.5, 4.3))), 19},
		"boat":            {40, join(poly(-14, 6, 14, 6, 9, 13, -9, 13), box(-0.8, -14, 0.8, 6), poly(0, -12, 12, 4, 0, 4)), 14},
		"heart":           {30, join(disc(-5, -4, 5.6), disc(5, -4, 5.6), poly(-9.6, -1, -5, -4, 5, -4, 9.6, -1, 0, 11)), 11},
		"star":            {34, poly(0, -10, 2.4, -3.1, 9.5, -3.1, 3.8, 1.2, 5.9, 8.1, 0, 3.8, -5.9, 8.1, -3.8, 1.2, -9.5, -3.1, -2.4, -3.1), 10},
		"leaning-feather": {50, oval(0, 0, 15, 4.5).turned(-50), 15},
		"wave":            {45, disc(0, 0, 12).less(disc(5, -4, 8)).less(box(-20, 8, 20, 20)), 12},
		"banner":          {90, box(-15, -5, 15, 5), 15},
		"lollipop":        {45, join(disc(0, -8, 7), box(-0.9, -8, 0.9, 15)), 15},
		"snowflake":       {38, join(box(-1, -14, 1, 14), box(-1, -14, 1, 14).turned(60), box(-1, -14, 1, 14).turned(120), disc(0, 0, 4)), 14},
		"house":           {32, join(box(-8, -2, 8, 10), poly(-10, -2, 0, -11, 10, -2)), 11},
		"antennae":        {36, join(oval(0, 4, 7, 9), box(-0.5, -13, 0.5, 0).turned(18), box(-0.5, -13, 0.5, 0).turned(-18)), 14},
	}
}
