package wall

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

// blobs is a drawing of two enamels and metal with soft random borders.
func blobs(rnd *rand.Rand, size int) *reduce.Separation {
	type wave struct{ kx, ky, p float64 }
	waves := make([][4]wave, 2)
	for k := range waves {
		for i := range waves[k] {
			a, f := rnd.Float64()*2*math.Pi, (0.5+rnd.Float64())*2*math.Pi/40
			waves[k][i] = wave{f * math.Cos(a), f * math.Sin(a), rnd.Float64() * 7}
		}
	}
	at := func(k int, x, y float64) (v float64) {
		for _, w := range waves[k] {
			v += math.Sin(w.kx*x + w.ky*y + w.p)
		}
		return v
	}
	c := float64(size) / 2
	return sceneBy(size, size, 6, func(x, y float64) uint8 {
		switch {
		case math.Hypot(x-c, y-c) > c-3:
			return sky
		case math.Abs(at(0, x, y)) < 0.45:
			return steel
		case at(1, x, y) > 0:
			return red
		default:
			return blue
		}
	})
}

// leftover is the slow twin of the rule: pixels of one class that no disc of a
// diameter covers, by trying a disc at every pixel; then joined through corners.
// The distance of a pixel's centre to the edge is taken to the middles of the
// sides between it and pixels of other classes.
type leftover struct {
	v    *view
	free []bool
	comp []int32
	span []float64 // of each connected part: between its farthest pixels
}

func leftoverOf(v *view, wide float64) *leftover {
	l := &leftover{v: v, free: make([]bool, len(v.class)), comp: make([]int32, len(v.class))}
	var sides [][3]float64 // a point of a border, and the pixels on either side
	for y := -1; y < v.h; y++ {
		for x := -1; x < v.w; x++ {
			if v.at(x, y) != v.at(x+1, y) {
				sides = append(sides, [3]float64{float64(x) + 0.5, float64(y)})
			}
			if v.at(x, y) != v.at(x, y+1) {
				sides = append(sides, [3]float64{float64(x), float64(y) + 0.5})
			}
		}
	}
	r := wide / 2
	for i, c := range v.class {
		l.free[i] = !v.exempt[c]
	}
	for q := range v.class {
		if v.exempt[v.class[q]] || nearest(sides, q%v.w, q/v.w) < r {
			continue
		}
		n := int(r) + 1
		for dy := -n; dy <= n; dy++ {
			for dx := -n; dx <= n; dx++ {
				x, y := q%v.w+dx, q/v.w+dy
				if float64(dx*dx+dy*dy) <= r*r && v.at(x, y) == v.class[q] {
					l.free[y*v.w+x] = false
				}
			}
		}
	}
	l.join()
	return l
}

func nearest(sides [][3]float64, x, y int) float64 {
	best := math.MaxFloat64
	for _, s := range sides {
		dx, dy := s[0]-float64(x), s[1]-float64(y)
		best = min(best, dx*dx+dy*dy)
	}
	return math.Sqrt(best)
}

func (l *leftover) join() {
	for i := range l.free {
		if !l.free[i] || l.comp[i] != 0 {
			continue
		}
		l.span = append(l.span, 0)
		n := int32(len(l.span))
		q := []int{i}
		l.comp[i] = n
		for k := 0; k < len(q); k++ {
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					x, y := q[k]%l.v.w+dx, q[k]/l.v.w+dy
					if x < 0 || y < 0 || x >= l.v.w || y >= l.v.h {
						continue
					}
					if p := y*l.v.w + x; l.free[p] && l.comp[p] == 0 && l.v.class[p] == l.v.class[i] {
						l.comp[p] = n
						q = append(q, p)
					}
				}
			}
		}
		for _, a := range q {
			for _, b := range q {
				l.span[n-1] = max(l.span[n-1], math.Hypot(float64(a%l.v.w-b%l.v.w), float64(a/l.v.w-b/l.v.w)))
			}
		}
	}
}

// The twin sees whole pixels: a place is certain when it would be found with a
// limit this much smaller, and possible when it would with one this much larger.
const twinSlack = 1.6

func TestWhatIsFoundIsWhatDiscsLeaveOver(t *testing.T) {
	const seed = 44
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	found, certain := 0, 0
	for range 10 {
		s := blobs(rnd, 84)
		m := measured(t, s)
		const limit = 8.0
		l := sizing.Limits{Line: limit, Edge: limit, Area: limit}
		places := m.Findings(1, l)
		surely, maybe := leftoverOf(m.v, limit-twinSlack), leftoverOf(m.v, limit+twinSlack)
		for _, f := range places {
			if f.Kind != sizing.ThinLine && f.Kind != sizing.NarrowArea {
				continue
			}
			found++
			i := int(f.Y)*s.W + int(f.X)
			require.True(t, maybe.free[i], "%s at (%.0f,%.0f) is covered by a disc", f.Kind, f.X, f.Y)
		}
		for k, span := range surely.span {
			// The ends of a leftover's region come on top of its centreline.
			if span < limit+6 {
				continue
			}
			certain++
			require.True(t, touched(m, surely, int32(k+1), limit), "a leftover %.1f px long is not found", span)
		}
	}
	t.Logf("%d found, %d certain", found, certain)
	require.Greater(t, found, 20)
	require.Greater(t, certain, 10)
}

// touched says whether a centreline point that is part of a finding lies in a leftover.
func touched(m *Measured, l *leftover, comp int32, limit float64) bool {
	for _, p := range m.lines.points {
		if float64(p.bad) < threshold(limit, m.shaky) && l.comp[int(p.y)*m.v.w+int(p.x)] == comp {
			return true
		}
	}
	return false
}

func TestThicknessIsThatOfAllPairs(t *testing.T) {
	const seed = 45
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	n, off := 0, 0
	for range 4 {
		m := measured(t, blobs(rnd, 160))
		for _, p := range m.lines.points {
			want := p.width
			for _, q := range m.lines.points {
				dx, dy := float32(p.x-q.x), float32(p.y-q.y)
				if p.part == q.part && dx*dx+dy*dy <= q.width*q.width/4 {
					want = max(want, q.width)
				}
			}
			require.LessOrEqual(t, p.tau, want)
			n++
			if p.tau < want-0.25 {
				off++
			}
		}
	}
	t.Logf("%d of %d points differ by more than a quarter pixel", off, n)
	require.Less(t, off*200, n, "fewer than one in two hundred")
}
