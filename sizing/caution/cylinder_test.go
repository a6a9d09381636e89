package caution

import (
	"encoding/csv"
	"math"
	"math/rand"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// table reads a table of references, a map a row.
func table(t *testing.T, name string) []map[string]string {
	f, err := os.Open("../../testdata/reference/" + name)
	require.NoError(t, err)
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var out []map[string]string
	for _, l := range lines[1:] {
		r := map[string]string{}
		for i, h := range lines[0] {
			r[h] = l[i]
		}
		out = append(out, r)
	}
	require.NotEmpty(t, out)
	return out
}

func number(t *testing.T, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// ngon is a regular polygon of a radius about a place.
func ngon(n int, r, x, y float64) [][2]float64 {
	out := make([][2]float64, n)
	for i := range out {
		sin, cos := math.Sincos(2*math.Pi*float64(i)/float64(n) + 0.1)
		out[i] = [2]float64{x + r*cos, y + r*sin}
	}
	return out
}

func rect(w, h float64) [][2]float64 { return [][2]float64{{0, 0}, {w, 0}, {w, h}, {0, h}} }

// 16 CFR 1501.4 worked for flat parts: minimum width above 31.75 mm never fits,
// an enclosing circle up to it always does.
func TestFlatPartsAgainstTheCylinder(t *testing.T) {
	shapes := map[string][][2]float64{
		"disc 25": ngon(2048, 12.5, 40, -7), "disc 31 ": ngon(2048, 15.5, 3, 3), "disc 31.7 ": ngon(2048, 15.85, 0, 0),
		"disc 31.75": ngon(2048, 15.875, 9, 0), "disc 32": ngon(2048, 16, 0, 0), "square 22": rect(22, 22), "square 33": rect(33, 33),
		"equilateral": ngon(3, 40/math.Sqrt(3), 0, 0),
	}
	seen := 0
	for _, r := range table(t, "small_parts_cylinder_cases.csv") {
		for name, hull := range shapes {
			if !strings.HasPrefix(r["flat_part"], name) {
				continue
			}
			seen++
			want := map[string]Fit{"yes": Fits, "boundary": Boundary, "no": NoFit}[r["fits_entirely"]]
			got := FitOf(Piece{Hull: hull, Thickness: number(t, r["thickness_mm"]), Slack: 0.02})
			assert.Equal(t, want, got, r["flat_part"])
		}
	}
	assert.Equal(t, 8, seen)
}

// Between the two, by hand. Upright across the bottom's slope, d mm towards the
// deep side, a plate has a chord of 2 sqrt(15.875^2 - d^2) and a depth of 25.4 +
// 15.875 + d (the foot is level there): 30 mm wide goes in to d = 5.19 and so
// 46.46 deep. Flat against the bottom, at 45 degrees, it lies in an ellipse of
// 31.75 by 44.90. Nothing longer than from rim to foot, 65.38, goes in at all.
func TestPartsThatGoInUprightOrAskew(t *testing.T) {
	fit := func(hull [][2]float64, thick float64) Fit {
		return FitOf(Piece{Hull: hull, Thickness: thick, Slack: 0.02})
	}
	assert.Equal(t, Fits, fit(rect(30, 46), 0.01))
	assert.Equal(t, Fits, fit(rect(46, 30), 0.01), "however it is drawn")
	assert.Equal(t, Fits, fit(rect(20, 50), 1.5))
	assert.Equal(t, Fits, fit(rect(2, 62), 1))
	assert.Equal(t, NoFit, fit(rect(2, 66), 1))
	assert.Equal(t, NoFit, fit(rect(31, 50), 1.5))
	assert.Equal(t, NoFit, fit(rect(28, 55), 1.5))
	oval := ngon(200, 1, 0, 0)
	for i := range oval {
		oval[i] = [2]float64{oval[i][0] * 15.8, oval[i][1] * 22.3}
	}
	assert.Equal(t, Fits, fit(oval, 0.01), "against the bottom")
	assert.Equal(t, Fits, fit(nil, 1), "nothing at all goes in")
	assert.InDelta(t, 65.38, longestInside, 0.005)
	assert.InDelta(t, 1, bottomSlope, 1e-12)
}

// holdsAll is the slow twin: it lays a piece at a place in an orientation and
// looks whether every corner lies in the cylinder.
func holdsAll(s *search, t turning, x, y float64) bool {
	sinA, cosA := math.Sincos(t[0])
	sinB, cosB := math.Sincos(t[1])
	sinC, cosC := math.Sincos(t[2])
	var all [][3]float64
	top := math.Inf(-1)
	for _, q := range s.hull {
		for _, w := range []float64{s.half, -s.half} {
			u, v := q[0]*cosA-q[1]*sinA, q[0]*sinA+q[1]*cosA
			py, pz := v*cosB-w*sinB, v*sinB+w*cosB
			p := [3]float64{u*cosC - py*sinC + x, u*sinC + py*cosC + y, pz}
			all, top = append(all, p), math.Max(top, pz)
		}
	}
	for _, p := range all {
		depth := cylinderShallow + (p[0]+cylinderRadius)*bottomSlope
		if math.Hypot(p[0], p[1]) > cylinderRadius || top-p[2] > depth {
			return false
		}
	}
	return true
}

// What a blind search finds to fit is never said not to.
func TestNothingThatFitsIsSaidNotTo(t *testing.T) {
	r := rand.New(rand.NewSource(9))
	found := 0
	for n := range 12 {
		a, b := 14+18*r.Float64(), 30+32*r.Float64()
		hull := ngon(5+r.Intn(8), 1, 0, 0)
		for i := range hull {
			hull[i] = [2]float64{hull[i][0] * a / 2, hull[i][1] * b / 2}
		}
		s := &search{hull: hull, half: 0.75}
		fits := false
		for range 60000 {
			o := turning{r.Float64() * 2 * math.Pi, r.Float64() * math.Pi / 2, r.Float64() * math.Pi}
			if holdsAll(s, o, (2*r.Float64()-1)*10, (2*r.Float64()-1)*3) {
				fits = true
				break
			}
		}
		if fits {
			found++
			assert.NotEqual(t, NoFit, FitOf(Piece{Hull: hull, Thickness: 1.5, Slack: 0.02}), "seed 9, case %d: %.1f x %.1f", n, a, b)
		}
	}
	assert.Greater(t, found, 4)
}

// The search against one many times as fine, on pieces near the limit.
func TestTheSearchMissesByLessThanItSays(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for n := range 4 {
		hull := ngon(4+r.Intn(5), 1, 0, 0)
		a, b := 26+5*r.Float64(), 44+8*r.Float64()
		for i := range hull {
			hull[i] = [2]float64{hull[i][0] * a / 2, hull[i][1] * b / 2}
		}
		s := &search{hull: hull, half: 0.75}
		got := s.least()
		best := math.Inf(1)
		for range 20000 {
			best = min(best, s.need(turning{r.Float64() * 2 * math.Pi, r.Float64() * math.Pi / 2, r.Float64() * math.Pi}))
		}
		assert.Less(t, got, best+searchError, "seed 4, case %d", n)
	}
}

// A larger copy never fits where a smaller does not.
func TestFitIsMonotoneInSize(t *testing.T) {
	order := map[Fit]int{Fits: 0, Boundary: 1, NoFit: 2}
	base := [][2]float64{{0, 0}, {1, 0.1}, {1.2, 0.9}, {0.5, 1.4}, {-0.2, 0.8}}
	before := 0
	for k := 10.0; k < 60; k += 2 {
		hull := make([][2]float64, len(base))
		for i, q := range base {
			hull[i] = [2]float64{q[0] * k, q[1] * k}
		}
		now := order[FitOf(Piece{Hull: hull, Thickness: 1.5, Slack: 0.05})]
		assert.GreaterOrEqual(t, now, before, "at %.0f", k)
		before = now
	}
	assert.Equal(t, 2, before)
}

// The smallest circle by its slow twin: every pair and every three.
func TestEnclosingCircleAgainstEveryPairAndTriple(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for n := range 60 {
		p := make([][2]float64, 2+r.Intn(14))
		for i := range p {
			p[i] = [2]float64{float64(r.Intn(30)), float64(r.Intn(30))}
		}
		want := math.Inf(1)
		try := func(c circle) {
			for _, q := range p {
				if distance(c.x, c.y, q) > c.r+1e-9 {
					return
				}
			}
			want = math.Min(want, c.r)
		}
		for i := range p {
			for j := range p {
				try(across(p[i], p[j]))
				for k := range p {
					try(through(p[i], p[j], p[k]))
				}
			}
		}
		assert.InDelta(t, want, enclosing(p).r, 1e-7, "seed 3, case %d", n)
	}
}

func BenchmarkFitOfAPieceThatDoesNotFit(b *testing.B) {
	hull := ngon(400, 1, 0, 0)
	for i := range hull {
		hull[i] = [2]float64{hull[i][0] * 15.2, hull[i][1] * 27}
	}
	for b.Loop() {
		FitOf(Piece{Hull: hull, Thickness: 1.5, Slack: 0.1})
	}
}
