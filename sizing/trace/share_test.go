package trace

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

// uses counts how often each side of each arc is used by the faces.
func uses(arcs int, faces ...[]Area) [][2]int {
	n := make([][2]int, arcs)
	for _, f := range faces {
		for _, a := range f {
			for _, l := range a {
				for _, s := range l {
					if s.Back {
						n[s.Arc][1]++
					} else {
						n[s.Arc][0]++
					}
				}
			}
		}
	}
	return n
}

// checkShared says that metal and enamel fill the outline without overlap, that
// print covers just its own arcs, and that every arc has a face on either side,
// but for the boundless outside.
func checkShared(t require.TestingT, sh *Shapes) {
	solid := [][]Area{sh.Metal.Areas}
	sum := sh.Area(sh.Metal.Areas...)
	for _, f := range sh.Enamel {
		solid = append(solid, f.Areas)
		sum += sh.Area(f.Areas...)
	}
	assert.InDelta(t, sh.Area(sh.Outline.Areas...), sum, 1e-9*max(1, sum))
	var print [][]Area
	for _, f := range sh.Printed {
		print = append(print, f.Areas)
	}
	struck, silhouette := uses(len(sh.Arcs), solid...), uses(len(sh.Arcs), sh.Outline.Areas)
	prints := uses(len(sh.Arcs), print...)
	for i := range sh.Arcs {
		inner := struck[i][0]+struck[i][1] == 2 && struck[i][0] == 1
		outer := struck[i][0]+struck[i][1] == 1 && struck[i] == silhouette[i]
		printed := prints[i][0]+prints[i][1] > 0 && struck[i] == [2]int{}
		assert.True(t, inner || outer || printed, "arc %d: %v %v %v", i, struck[i], silhouette[i], prints[i])
		if inner {
			assert.Equal(t, [2]int{}, silhouette[i])
		}
		assert.LessOrEqual(t, max(prints[i][0], prints[i][1]), 1)
	}
}

// pathsOf are arcs as paths, in px, to look for crossings.
func pathsOf(b *sizing.Badge, arcs []Arc) []path {
	at := func(p Point) vec { x, y := px(b, p); return vec{x, y} }
	out := make([]path, len(arcs))
	for i := range arcs {
		out[i].start = at(arcs[i].Start)
		for _, g := range arcs[i].Segs {
			out[i].segs = append(out[i].segs, seg{at(g.C1), at(g.C2), at(g.To), g.Line})
		}
	}
	return out
}

// struckArcs is how many arcs are not print: those come first.
func struckArcs(sh *Shapes) int {
	n := len(sh.Arcs)
	for _, f := range sh.Printed {
		for _, a := range f.Areas {
			for _, l := range a {
				for _, s := range l {
					n = min(n, s.Arc)
				}
			}
		}
	}
	return n
}

func checkUncrossed(t require.TestingT, b *sizing.Badge, sh *Shapes) {
	var x crosser
	n := struckArcs(sh)
	for _, arcs := range [][]Arc{sh.Arcs[:n], sh.Arcs[n:]} {
		for _, c := range x.crossings(pathsOf(b, arcs)) {
			assert.Fail(t, "curves cross", "arcs %d and %d at %v", c.a, c.b, c.at)
		}
	}
}

func TestFacesShareTheirBordersAndNothingCrosses(t *testing.T) {
	for seed := range uint64(24) {
		t.Run(fmt.Sprint("seed ", seed), func(t *testing.T) {
			r := rand.New(rand.NewPCG(seed, 1))
			s := random(r, 20+r.IntN(100), 20+r.IntN(100))
			b, ok := badge(s, []float64{3, 20, 45}[r.IntN(3)])
			if !ok {
				return
			}
			sh, err := Trace(b, 0, nil)
			require.NoError(t, err)
			checkShared(t, sh)
			checkUncrossed(t, b, sh)
		})
	}
}

// The slow twin of crossings: every step against every other.
func TestCrossingsAreAllFound(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for range 30 {
		paths := make([]path, 6)
		at := func() vec { return vec{r.Float64() * 60, r.Float64() * 60} }
		for i := range paths {
			paths[i].start = at()
			for range 4 {
				paths[i].segs = append(paths[i].segs, seg{at(), at(), at(), r.IntN(2) == 0})
			}
		}
		var x crosser
		got := map[[2]int32]bool{}
		for _, c := range x.crossings(paths) {
			got[[2]int32{c.a, c.b}] = true
		}
		want := map[[2]int32]bool{}
		for i := range x.steps {
			for j := range x.steps[:i] {
				if _, ok := cross(&x.steps[i], &x.steps[j]); ok {
					a, b := x.steps[i].arc, x.steps[j].arc
					want[[2]int32{min(a, b), max(a, b)}] = true
				}
			}
		}
		assert.Equal(t, want, got)
	}
}

// The exact area of a cubic against that of a fine polygon.
func TestAreaOfACurve(t *testing.T) {
	a := Arc{Start: Point{1, 2}, Segs: []Segment{{C1: Point{3, -4}, C2: Point{8, 7}, To: Point{5, 5}}, {To: Point{1, 2}, Line: true}}}
	c, sum := cubic{{1, 2}, {3, -4}, {8, 7}, {5, 5}}, 0.0
	const n = 200000
	last := c[0]
	for i := 1; i <= n; i++ {
		p := c.at(float64(i) / n)
		sum += last.cross(p) / 2
		last = p
	}
	sum += last.cross(c[0]) / 2
	assert.InDelta(t, sum, a.areaOf(), 1e-8)
}

// What is traced covers as much as the raster says it does.
func TestAreasAreThoseOfTheRaster(t *testing.T) {
	s := scene(300, 300, func(x, y float64) uint8 {
		switch d := math.Hypot(x-150, y-150); {
		case d > 140:
			return sky
		case d > 128 || math.Abs(x-150+y/3-50) < 5:
			return steel
		case x+y/3 < 200:
			return red
		}
		return blue
	})
	_, sh := traced(t, s, 1)
	want := map[reduce.FlatID]float64{}
	for i := range s.Labels {
		c := float64(s.Cover[i]) / 255
		for l, part := range map[uint8]float64{s.Labels[i]: c, s.Beside[i]: 1 - c} {
			if s.Labels[i] == s.Beside[i] {
				part = 1
			}
			if l != sky {
				want[s.Flats[l].ID] += part
			}
		}
	}
	for _, f := range append(sh.Enamel, sh.Metal) {
		assert.InEpsilon(t, want[f.Flat], sh.Area(f.Areas...), 3e-3, f.Name)
	}
}

func TestTheSameTwice(t *testing.T) {
	s := random(rand.New(rand.NewPCG(3, 3)), 160, 120)
	_, one := traced(t, s, 30)
	_, two := traced(t, s, 30)
	assert.Equal(t, one, two)
}

func TestBadInputIsRefused(t *testing.T) {
	s := text(4, "##", "##")
	b, _ := badge(s, 10)
	for _, scale := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		bad, _ := badge(s, scale)
		_, err := Trace(bad, 0, nil)
		assert.Error(t, err)
	}
	_, err := Trace(b, -1, nil)
	assert.Error(t, err)
	stop := fmt.Errorf("stop")
	_, err = Trace(b, 0, func(float64, string) error { return stop })
	assert.Equal(t, stop, err)
}

func FuzzTrace(f *testing.F) {
	f.Add(uint64(1), uint8(9), uint8(9), []byte{0, 1, 2, 3, 4, 5, 255, 0, 2, 2, 0})
	f.Add(uint64(2), uint8(30), uint8(5), []byte{2, 0, 2, 0, 2})
	f.Add(uint64(3), uint8(40), uint8(40), []byte{})
	f.Fuzz(func(t *testing.T, seed uint64, w, h uint8, cells []byte) {
		s := random(rand.New(rand.NewPCG(seed, 2)), 1+int(w)%64, 1+int(h)%64)
		for i, c := range cells {
			if i < len(s.Labels) {
				s.Labels[i] = []uint8{red, blue, steel, hole, ink, gilt, sky}[c%7]
				s.Cover[i] = max(128, c)
			}
		}
		b, ok := badge(s, 1+float64(seed%50))
		if !ok {
			return
		}
		sh, err := Trace(b, 0, nil)
		require.NoError(t, err)
		checkShared(t, sh)
		checkUncrossed(t, b, sh)
	})
}
