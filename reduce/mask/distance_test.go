package mask

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

type grid struct {
	name      string
	w, h      int
	label     []uint8
	d2        []int32
	thickness []float64
}

// grids reads exact distances and local thickness (as Hildebrand and
// Rueegsegger 1997, by brute force) made with scipy 1.10.1,
// ndimage.distance_transform_edt.
func grids(t *testing.T) []*grid {
	f, err := os.Open("../../testdata/reference/edt_small_grids.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var all []*grid
	for _, r := range rows[1:] {
		if len(all) == 0 || all[len(all)-1].name != r[0] {
			all = append(all, &grid{name: r[0]})
		}
		g := all[len(all)-1]
		y, x, in, d2 := number(t, r[1]), number(t, r[2]), number(t, r[3]), number(t, r[4])
		th, err := strconv.ParseFloat(r[6], 64)
		require.NoError(t, err)
		g.w, g.h = max(g.w, x+1), max(g.h, y+1)
		g.label, g.d2, g.thickness = append(g.label, uint8(in)), append(g.d2, int32(d2)), append(g.thickness, th)
	}
	require.Len(t, all, 8)
	return all
}

func number(t *testing.T, s string) int {
	n, err := strconv.Atoi(s)
	require.NoError(t, err)
	return n
}

var skipZero = &[256]bool{0: true}

func TestDistancesAreThoseOfTheReference(t *testing.T) {
	for _, g := range grids(t) {
		f := Others(g.label, g.w, g.h, skipZero)
		require.Equal(t, g.d2, f.D2, g.name)
	}
}

// slowThickness is twice the radius of the largest disc that covers a pixel.
func slowThickness(g *grid, d2 []int32) []float64 {
	out := make([]float64, len(d2))
	for p := range out {
		for q, d := range d2 {
			dx, dy := p%g.w-q%g.w, p/g.w-q/g.w
			if g.label[p] > 0 && int32(dx*dx+dy*dy) < d {
				out[p] = max(out[p], 2*math.Sqrt(float64(d)))
			}
		}
	}
	return out
}

func TestLocalThicknessIsThatOfTheReference(t *testing.T) {
	for _, g := range grids(t) {
		f := Others(g.label, g.w, g.h, skipZero)
		require.InDeltaSlice(t, g.thickness, slowThickness(g, f.D2), 1e-9, g.name)
	}
}

// slowOther looks at every pixel, and at the rim of pixels off the raster. Of
// several equally near, the leftmost counts, and of those the uppermost.
func slowOther(label []uint8, w, h, x, y int) (best int32, sx, sy int) {
	best = math.MaxInt32
	for u := -1; u <= w; u++ {
		for v := -1; v <= h; v++ {
			off := u < 0 || v < 0 || u >= w || v >= h
			if d := int32((u-x)*(u-x) + (v-y)*(v-y)); d < best && (off || label[v*w+u] != label[y*w+x]) {
				best, sx, sy = d, u, v
			}
		}
	}
	return best, sx, sy
}

func TestDistancesOfAllLabelsAtOnce(t *testing.T) {
	const seed = 41
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for n := range 200 {
		w, h := 1+rnd.IntN(24), 1+rnd.IntN(24)
		if n%20 == 0 {
			w = 90 // more columns than a word has bits
		}
		label := patches(rnd, w, h)
		skip := &[256]bool{2: true}
		f := Others(label, w, h, skip)
		for i, l := range label {
			if skip[l] {
				require.Zero(t, f.D2[i])
				continue
			}
			x, y := i%w, i/w
			d2, wantX, wantY := slowOther(label, w, h, x, y)
			require.Equal(t, d2, f.D2[i])
			sx, sy := f.Site(x, y)
			require.Equal(t, [2]int{wantX, wantY}, [2]int{sx, sy}, "(%d,%d) of %d x %d", x, y, w, h)
		}
	}
}

// slowNearest looks at every site, with the same choice as slowOther.
func slowNearest(site []bool, w, h, x, y int) (best int32, sx, sy int) {
	best = math.MaxInt32
	for u := range w {
		for v := range h {
			if d := int32((u-x)*(u-x) + (v-y)*(v-y)); d < best && site[v*w+u] {
				best, sx, sy = d, u, v
			}
		}
	}
	return best, sx, sy
}

// Towards the middle of a round area the places nearest to one pixel of its
// edge come to be less than a pixel wide, and miss a row here and there.
func TestDistancesInRoundAreas(t *testing.T) {
	const seed, w, h = 46, 64, 64
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 3 {
		cx, cy, r := 30+4*rnd.Float64(), 30+4*rnd.Float64(), 22+8*rnd.Float64()
		label := make([]uint8, w*h)
		for i := range label {
			if math.Hypot(float64(i%w)-cx, float64(i/w)-cy) < r {
				label[i] = 1
			}
		}
		f := Others(label, w, h, skipZero)
		for i, l := range label {
			if l == 1 {
				_, wantX, wantY := slowOther(label, w, h, i%w, i/w)
				sx, sy := f.Site(i%w, i/w)
				require.Equal(t, [2]int{wantX, wantY}, [2]int{sx, sy}, "(%d,%d)", i%w, i/w)
			}
		}
	}
}

// fieldOf puts a list of near pixels into a field; D2 is -1 where none is listed.
func fieldOf(t *testing.T, near []Near, w, h int) *Field {
	f := newField(w, h)
	for i := range f.D2 {
		f.D2[i] = -1
	}
	last := -1
	for _, n := range near {
		i := int(n.Y)*w + int(n.X)
		require.Greater(t, i, last, "in reading order")
		last = i
		dx, dy := int32(n.X-n.SX), int32(n.Y-n.SY)
		f.D2[i], f.SX[i], f.SY[i] = dx*dx+dy*dy, n.SX, n.SY
	}
	return f
}

func TestSitesWithinReach(t *testing.T) {
	const seed = 42
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for n := range 300 {
		w, h := 1+rnd.IntN(20), 1+rnd.IntN(20)
		site := make([]bool, w*h)
		for range rnd.IntN(5) {
			site[rnd.IntN(w*h)] = true
		}
		if n%2 == 0 { // a line, whose pixels lie side by side
			y := rnd.IntN(h)
			for x := rnd.IntN(w); x < w; x++ {
				site[y*w+x] = true
			}
		}
		reach := rnd.IntN(12)
		if n%3 == 0 {
			reach = 1000
		}
		f := fieldOf(t, SitesWithin(site, w, h, reach), w, h)
		if all, ok := Nearest(site, w, h); ok && reach == 1000 {
			require.Equal(t, all, f)
		} else if !ok {
			require.NotContains(t, site, true)
		}
		for i := range site {
			x, y := i%w, i/w
			d2, wantX, wantY := slowNearest(site, w, h, x, y)
			if int(d2) > reach*reach {
				require.EqualValues(t, -1, f.D2[i])
				continue
			}
			sx, sy := f.Site(x, y)
			require.Equal(t, [3]int{int(d2), wantX, wantY}, [3]int{int(f.D2[i]), sx, sy}, "(%d,%d) of %d x %d", x, y, w, h)
		}
	}
}

func TestOthersWithinReach(t *testing.T) {
	const seed = 47
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		w, h, reach := 1+rnd.IntN(40), 1+rnd.IntN(40), rnd.IntN(12)
		label, skip := patches(rnd, w, h), &[256]bool{2: true}
		f, want := fieldOf(t, OthersWithin(label, w, h, skip, reach), w, h), Others(label, w, h, skip)
		for i, l := range label {
			if skip[l] || int(want.D2[i]) > reach*reach {
				require.EqualValues(t, -1, f.D2[i])
				continue
			}
			require.Equal(t, [3]int{int(want.D2[i]), int(want.SX[i]), int(want.SY[i])}, [3]int{int(f.D2[i]), int(f.SX[i]), int(f.SY[i])})
		}
	}
}

// patches are a few overlapping rectangles and discs of labels 0..3.
func patches(rnd *rand.Rand, w, h int) []uint8 {
	label := make([]uint8, w*h)
	for range 6 {
		x0, y0 := rnd.IntN(w), rnd.IntN(h)
		x1, y1 := x0+1+rnd.IntN(w), y0+1+rnd.IntN(h)
		l, r, round := uint8(rnd.IntN(4)), 1+rnd.IntN(w), rnd.IntN(2) == 0
		for i := range label {
			x, y := i%w, i/w
			if round && (x-x0)*(x-x0)+(y-y0)*(y-y0) < r*r || !round && x >= x0 && x < x1 && y >= y0 && y < y1 {
				label[i] = l
			}
		}
	}
	return label
}
