package trace

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// poly says whether a place lies in a polygon, by the even-odd rule.
func poly(p []vec, x, y float64) bool {
	in := false
	for i, a := range p {
		b := p[(i+1)%len(p)]
		if (a.y > y) != (b.y > y) && x < a.x+(y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}

func filled(p []vec, in, out uint8) func(x, y float64) uint8 {
	return func(x, y float64) uint8 {
		if poly(p, x, y) {
			return in
		}
		return out
	}
}

// regular is a polygon of n corners, alternately at two radii.
func regular(n int, r0, r1, turn float64) []vec {
	p := make([]vec, n)
	for i := range p {
		r := r0
		if i%2 == 1 {
			r = r1
		}
		s, c := math.Sincos(turn + float64(i)*2*math.Pi/float64(n))
		p[i] = vec{100.3 + r*c, 100.7 + r*s}
	}
	return p
}

func nearest(p vec, all []vec) float64 {
	least := math.Inf(1)
	for _, q := range all {
		least = min(least, p.to(q))
	}
	return least
}

func TestPolygonsComeOutStraightAndSharp(t *testing.T) {
	for _, c := range []struct {
		n      int
		r0, r1 float64
		off    float64 // px
	}{
		{4, 70, 70, 0.1}, {3, 80, 80, 0.15}, {6, 70, 70, 0.1}, {8, 70, 70, 0.1},
		{10, 80, 45, 0.2}, // a star
		{8, 85, 30, 0.5},  // sharp tips, cut off by the pixels
	} {
		for _, turn := range []float64{0, 0.1, 0.35, 0.7, 1.3} {
			t.Run(fmt.Sprintf("%d corners, %v, turned %v", c.n, c.r1, turn), func(t *testing.T) {
				p := regular(c.n, c.r0, c.r1, turn)
				b, sh := traced(t, scene(200, 200, filled(p, steel, sky)), 40)
				require.Len(t, sh.Metal.Areas, 1)
				require.Len(t, sh.Metal.Areas[0], 1)
				assert.Equal(t, Counts{Lines: c.n, Corners: c.n}, sh.Counts)
				for _, q := range flattened(b, sh, sh.Metal.Areas[0][0], 1) {
					assert.Less(t, nearest(q, p), c.off)
				}
			})
		}
	}
}

func TestPolygonsOfHardPixelsComeOutStraightAndSharp(t *testing.T) {
	for _, turn := range []float64{0, 0.1, 0.35, 0.7, 1.3} {
		p := regular(4, 85, 85, turn)
		b, sh := traced(t, hardened(scene(200, 200, filled(p, steel, sky))), 40)
		assert.Equal(t, Counts{Lines: 4, Corners: 4}, sh.Counts, "turned %v", turn)
		for _, q := range flattened(b, sh, sh.Metal.Areas[0][0], 1) {
			assert.Less(t, nearest(q, p), 0.8, "turned %v", turn)
		}
	}
}

func TestCirclesAreRoundInFewCurves(t *testing.T) {
	for _, r := range []float64{3, 5, 8, 20, 60, 95} {
		c := vec{100.2, 99.6}
		b, sh := traced(t, scene(200, 200, func(x, y float64) uint8 {
			if (vec{x, y}).to(c) < r {
				return steel
			}
			return sky
		}), 40)
		assert.LessOrEqual(t, sh.Counts.Curves, 8, "radius %v", r)
		assert.Zero(t, sh.Counts.Lines+sh.Counts.Corners, "radius %v", r)
		for _, q := range flattened(b, sh, sh.Metal.Areas[0][0], 16) {
			assert.InDelta(t, r, q.to(c), 0.06, "radius %v", r)
		}
	}
}

func TestEllipsesAreSmoothInFewCurves(t *testing.T) {
	b, sh := traced(t, scene(240, 160, func(x, y float64) uint8 {
		u, v := (x-120.3)/100, (y-80.1)/50
		if u*u+v*v < 1 {
			return steel
		}
		return sky
	}), 40)
	assert.LessOrEqual(t, sh.Counts.Curves, 8)
	assert.Zero(t, sh.Counts.Lines+sh.Counts.Corners)
	for _, q := range flattened(b, sh, sh.Metal.Areas[0][0], 16) {
		assert.InDelta(t, 1, (vec{(q.x - 120.3) / 100, (q.y - 80.1) / 50}).len(), 0.3/50)
	}
	assertSmooth(t, b, sh, sh.Metal.Areas[0][0])
}

// assertSmooth says that a loop has no kink of more than half a degree.
func assertSmooth(t *testing.T, b interface{}, sh *Shapes, l Loop) {
	t.Helper()
	var last, first, in vec
	at := func(p Point) vec { return vec{float64(p.X), float64(p.Y)} }
	check := func(out vec) {
		if in != (vec{}) && out != (vec{}) {
			assert.Less(t, angle(in, out), 0.01)
		}
		if first == (vec{}) {
			first = out
		}
	}
	sh.Walk(Walker{
		Move: func(p Point) { last = at(p) },
		Line: func(p Point) { check(at(p).sub(last)); in = at(p).sub(last); last = at(p) },
		Curve: func(c1, c2, to Point) {
			check(at(c1).sub(last))
			in, last = at(to).sub(at(c2)), at(to)
		},
		Close: func() { assert.Less(t, angle(in, first), 0.01) },
	}, Area{l})
}

// A stadium: two half circles and two straight sides that go over into them.
func TestStraightSidesGoOverIntoCurves(t *testing.T) {
	turnC, turnS := math.Cos(0.4), math.Sin(0.4)
	b, sh := traced(t, scene(260, 200, func(x, y float64) uint8 {
		x, y = turnC*(x-130)+turnS*(y-100), turnC*(y-100)-turnS*(x-130)
		if d := (vec{max(0, math.Abs(x)-60), y}).len(); d < 40 {
			return steel
		}
		return sky
	}), 40)
	assert.Equal(t, 2, sh.Counts.Lines)
	assert.Zero(t, sh.Counts.Corners)
	assert.LessOrEqual(t, sh.Counts.Curves, 6)
	assertSmooth(t, b, sh, sh.Metal.Areas[0][0])
}

func TestRoundCornersStayRound(t *testing.T) {
	for _, r := range []float64{5, 7, 12} {
		for _, turn := range []float64{0, 0.3, 0.7} {
			sin, cos := math.Sincos(turn)
			beyond := func(x, y float64) float64 {
				x, y = x-100.4, y-99.7
				u, v := math.Abs(cos*x+sin*y)-(60-r), math.Abs(cos*y-sin*x)-(40-r)
				return (vec{max(u, 0), max(v, 0)}).len() - r + min(max(u, v), 0)
			}
			b, sh := traced(t, scene(200, 200, func(x, y float64) uint8 {
				if beyond(x, y) < 0 {
					return steel
				}
				return sky
			}), 40)
			assert.Zero(t, sh.Counts.Corners, "radius %v, turned %v", r, turn)
			assert.Equal(t, 4, sh.Counts.Lines, "radius %v, turned %v", r, turn)
			for _, q := range flattened(b, sh, sh.Metal.Areas[0][0], 8) {
				assert.InDelta(t, 0, beyond(q.x, q.y), 0.3, "radius %v, turned %v", r, turn)
			}
		}
	}
}

// Three areas: a straight border passes a place where another ends. It must go
// on straight there, and the other end on it.
func TestJunctionsHaveNoKinks(t *testing.T) {
	for _, slope := range []float64{0, 0.13, 0.5, 1, 1.7} {
		n := (vec{-slope, 1}).unit()
		edge := func(x, y float64) float64 { return (vec{x - 100, y - 100.4}).dot(n) }
		b, sh := traced(t, scene(200, 200, func(x, y float64) uint8 {
			switch {
			case (vec{x - 100, y - 100}).len() > 90:
				return sky
			case edge(x, y) < 0:
				return steel
			case x+0.4*y < 141:
				return red
			}
			return blue
		}), 40)
		require.Len(t, sh.Enamel, 2)
		for _, f := range sh.Enamel {
			for _, q := range flattened(b, sh, f.Areas[0][0], 8) {
				if (vec{q.x - 100, q.y - 100}).len() < 80 && math.Abs(edge(q.x, q.y)) < 3 {
					assert.InDelta(t, 0, edge(q.x, q.y), 0.12, "slope %v at %v", slope, q)
				}
			}
		}
	}
}

// Where a border between two areas ends on a round outline, the outline goes on
// without a kink, although it is two curves there.
func TestOutlinesGoOnPastJunctions(t *testing.T) {
	for _, slope := range []float64{0.1, 0.6, 1.9} {
		b, sh := traced(t, scene(240, 240, func(x, y float64) uint8 {
			switch {
			case (vec{x - 120.4, y - 119.8}).len() > 100:
				return sky
			case y-110 > slope*(x-110):
				return red
			}
			return blue
		}), 40)
		require.Len(t, sh.Outline.Areas, 1)
		require.Len(t, sh.Outline.Areas[0][0], 2, "two arcs")
		assertSmooth(t, b, sh, sh.Outline.Areas[0][0])
		for _, q := range flattened(b, sh, sh.Outline.Areas[0][0], 16) {
			assert.InDelta(t, 100, q.to(vec{120.4, 119.8}), 0.2)
		}
	}
}

// Renderers draw curves as polygons with sides of some 20 px.
func TestFacetsOfACurveAreNotStraightLines(t *testing.T) {
	const sides, r = 72, 260.0
	_, sh := traced(t, scene(540, 540, func(x, y float64) uint8 {
		x, y = x-270.3, (y-269.8)/0.94 // no circle
		sector := 2 * math.Pi / sides
		turn := math.Mod(math.Atan2(y, x)+0.01+2*math.Pi, sector) - sector/2
		if math.Hypot(x, y)*math.Cos(turn) < r*math.Cos(sector/2) {
			return steel
		}
		return sky
	}), 40)
	assert.Zero(t, sh.Counts.Lines+sh.Counts.Corners)
	assert.LessOrEqual(t, sh.Counts.Curves, 12)
}

func TestEveryPieceHasItsFace(t *testing.T) {
	s := text(12, rows(`
		..............
		.############.
		.#rrrr#bbbb##.
		.#rrrr#b%%b##.
		.#riir#bbbb##.
		.#rrrr####oo#.
		.#########oo#.
		.############.
		..............
		.####.........
		.####.........
		..............`)...)
	_, sh := traced(t, s, 12)
	mm2 := func(areas ...Area) float64 { return math.Round(sh.Area(areas...)*10) / 10 }
	require.Len(t, sh.Outline.Areas, 2, "two parts")
	assert.Len(t, sh.Outline.Areas[0], 2, "a hole in one")
	assert.Equal(t, 80.0+8, mm2(sh.Outline.Areas...))
	require.Len(t, sh.CutOuts.Areas, 1)
	assert.Equal(t, 4.0, mm2(sh.CutOuts.Areas...))
	require.Len(t, sh.Enamel, 2)
	assert.Equal(t, 16.0, mm2(sh.Enamel[0].Areas...), "print lies on red")
	assert.Equal(t, 14.0-4, mm2(sh.Enamel[1].Areas...))
	require.Len(t, sh.Enamel[1].Areas[0], 2, "metal lies in blue")
	require.Len(t, sh.Printed, 1)
	assert.Equal(t, 2.0, mm2(sh.Printed[0].Areas...))
	assert.Len(t, sh.Metal.Areas, 3, "two metals are one, in three pieces")
}

func TestMetalHoldsTogetherByItsCorners(t *testing.T) {
	s := text(1, rows(`
		rrrrrrrr
		r##rrrrr
		rrr##rrr
		rrrrr##r
		rrrrrrrr`)...)
	m := newPlanar(struckGrid(s))
	only := everyClass(false)
	only[metal] = true
	assert.Len(t, m.areas(only), 1)
}

func TestOriginIsTheSilhouettesBox(t *testing.T) {
	b, sh := traced(t, scene(120, 90, func(x, y float64) uint8 {
		if x > 20.3 && x < 99.7 && y > 11.6 && y < 70.1 {
			return steel
		}
		return sky
	}), 10)
	least, most := vec{1e9, 1e9}, vec{-1e9, -1e9}
	for _, q := range flattened(b, sh, sh.Outline.Areas[0][0], 1) {
		least, most = vec{min(least.x, q.x), min(least.y, q.y)}, vec{max(most.x, q.x), max(most.y, q.y)}
	}
	assert.InDelta(t, 20.3, least.x, 0.05)
	assert.InDelta(t, 11.6, least.y, 0.05)
	assert.InDelta(t, 99.7, most.x, 0.05)
	assert.InDelta(t, 70.1, most.y, 0.05)
	assert.InDelta(t, 7.94, float64(sh.Width), 0.01)
	assert.Equal(t, "M7.9333 0L7.9333 5.8498L0 5.8498L0 0Z", sh.PathData(sh.Outline.Areas[0]))
}
