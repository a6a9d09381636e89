package mask

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// slowRidge is the twin of Ridge: it asks the field about every pixel and both
// its neighbours, and sorts by comparing.
func slowRidge(label []uint8, f *Field, skip *[256]bool) []RidgePoint {
	r := &slowRidger{f: f, label: label, at: make([]int, len(label))}
	for i, l := range label {
		if x, y := i%f.W, i/f.W; !skip[l] {
			r.single(x, y, l)
			if x+1 < f.W && label[i+1] == l {
				r.pair(x, y, x+1, y)
			}
			if y+1 < f.H && label[i+f.W] == l {
				r.pair(x, y, x, y+1)
			}
		}
	}
	r.thin()
	kept := slices.DeleteFunc(r.points, func(p RidgePoint) bool { return r.at[int(p.Y)*f.W+int(p.X)] == 0 })
	slices.SortFunc(kept, func(a, b RidgePoint) int { return int(a.Y-b.Y)*f.W + int(a.X-b.X) })
	return kept
}

type slowRidger struct {
	f      *Field
	label  []uint8
	points []RidgePoint
	at     []int // 1 + index of the point at a pixel, 0 for none
}

func (r *slowRidger) other(x, y int, l uint8) bool {
	return x < 0 || y < 0 || x >= r.f.W || y >= r.f.H || r.label[y*r.f.W+x] != l
}

func (r *slowRidger) single(x, y int, l uint8) {
	switch {
	case r.other(x-1, y, l) && r.other(x+1, y, l):
		r.mark(x, y, x-1, y, x+1, y)
	case r.other(x, y-1, l) && r.other(x, y+1, l):
		r.mark(x, y, x, y-1, x, y+1)
	}
}

func (r *slowRidger) pair(x0, y0, x1, y1 int) {
	ax, ay := r.f.Site(x0, y0)
	bx, by := r.f.Site(x1, y1)
	dot := (ax-x0)*(bx-x1) + (ay-y0)*(by-y1)
	a, b := float64(r.f.D2[y0*r.f.W+x0]), float64(r.f.D2[y1*r.f.W+x1])
	if dot >= 0 || float64(dot)*float64(dot) <= narrowestCos2*a*b {
		return
	}
	if (bx-ax)*(ax+bx-x0-x1)+(by-ay)*(ay+by-y0-y1) <= 0 {
		r.mark(x0, y0, ax, ay, bx, by)
	} else {
		r.mark(x1, y1, bx, by, ax, ay)
	}
}

func (r *slowRidger) mark(x, y, ax, ay, bx, by int) {
	i := y*r.f.W + x
	p := RidgePoint{X: int32(x), Y: int32(y), AX: int32(ax), AY: int32(ay), BX: int32(bx), BY: int32(by), D2: r.f.D2[i], Label: r.label[i]}
	k := r.at[i]
	if k == 0 {
		r.points = append(r.points, p)
		r.at[i] = len(r.points)
	} else if chord2(&p) > chord2(&r.points[k-1]) {
		r.points[k-1] = p
	}
}

func (r *slowRidger) thin() {
	order := slices.Clone(r.points)
	slices.SortStableFunc(order, func(a, b RidgePoint) int { return int(a.D2 - b.D2) })
	around := func(p RidgePoint, in func(i int) bool) (bits uint8) {
		for k, d := range ring8 {
			x, y := int(p.X+d[0]), int(p.Y+d[1])
			if !r.other(x, y, p.Label) && in(y*r.f.W+x) {
				bits |= 1 << k
			}
		}
		return bits
	}
	on := func(i int) bool { return r.at[i] > 0 }
	for _, p := range order {
		if removable[around(p, on)] {
			r.at[int(p.Y)*r.f.W+int(p.X)] = 0
		}
	}
	gone := map[int]bool{}
	for _, p := range order {
		i := int(p.Y)*r.f.W + int(p.X)
		if on(i) && stepped[around(p, on)] && around(p, func(i int) bool { return gone[i] }) == 0 {
			r.at[i], gone[i] = 0, true
		}
	}
}

// The centreline of a bar runs its whole length at every slant: near 45 degrees
// it comes in steps, whose ends must not be eaten one after the other.
func TestCentrelinesOfSlantingBarsAreWhole(t *testing.T) {
	const side, half = 120, 46
	for _, degrees := range []float64{0, 30, 44, 44.3, 44.5, 44.7, 45, 45.4, 46, 70} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		for _, width := range []float64{2.5, 4, 7.3, 12} {
			for _, shift := range []float64{0, 0.1, 0.3, 0.5, 0.7} {
				label := make([]uint8, side*side)
				for i := range label {
					x, y := float64(i%side)+0.5-side/2-shift, float64(i/side)+0.5-side/2-shift
					if math.Abs(x*cos+y*sin) < half && math.Abs(y*cos-x*sin) < width/2 {
						label[i] = 1
					}
				}
				var along [2*half + 1]bool
				for _, p := range Ridge(label, Connect(label, side, side, new([256]bool)), new([256]bool)) {
					if p.Label == 1 {
						x, y := float64(p.X)+0.5-side/2-shift, float64(p.Y)+0.5-side/2-shift
						k := int(x*cos + y*sin + half)
						along[k], along[k+1] = true, true // a step of a slanting line is longer than a pixel
					}
				}
				for k := 10; k < 2*half-10; k++ {
					require.True(t, along[k], "%.1f degrees, %.1f px, shifted %.1f: none at %d", degrees, width, shift, k)
				}
			}
		}
	}
}

func TestCentrelinesAreThoseOfEveryPixelAsked(t *testing.T) {
	const seed = 44
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	n := 0
	for range 400 {
		w, h := 1+rnd.IntN(40), 1+rnd.IntN(40)
		label := patches(rnd, w, h)
		for range rnd.IntN(12) {
			label[rnd.IntN(w*h)] = uint8(rnd.IntN(4))
		}
		skip := &[256]bool{2: true}
		want := slowRidge(label, Others(label, w, h, skip), skip)
		got := Ridge(label, Connect(label, w, h, new([256]bool)), skip)
		require.Len(t, got, len(want), "%d x %d", w, h)
		for i := range want {
			require.Equal(t, want[i], got[i])
		}
		n += len(got)
	}
	require.Greater(t, n, 10000)
}
