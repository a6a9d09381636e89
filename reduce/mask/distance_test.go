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

// slowOther looks at every pixel, and at the rim of pixels off the raster.
func slowOther(label []uint8, w, h, x, y int) int32 {
	best := int32(math.MaxInt32)
	for v := -1; v <= h; v++ {
		for u := -1; u <= w; u++ {
			off := u < 0 || v < 0 || u >= w || v >= h
			if off || label[v*w+u] != label[y*w+x] {
				best = min(best, int32((u-x)*(u-x)+(v-y)*(v-y)))
			}
		}
	}
	return best
}

func TestDistancesOfAllLabelsAtOnce(t *testing.T) {
	const seed = 41
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 60 {
		w, h := 1+rnd.IntN(24), 1+rnd.IntN(24)
		label := patches(rnd, w, h)
		skip := &[256]bool{2: true}
		f := Others(label, w, h, skip)
		for i, l := range label {
			if skip[l] {
				require.Zero(t, f.D2[i])
				continue
			}
			x, y := i%w, i/w
			require.Equal(t, slowOther(label, w, h, x, y), f.D2[i])
			sx, sy := f.Site(x, y)
			require.Equal(t, f.D2[i], int32((sx-x)*(sx-x)+(sy-y)*(sy-y)), "the site is as far as said")
			if sx >= 0 && sy >= 0 && sx < w && sy < h {
				require.NotEqual(t, l, label[sy*w+sx])
			}
		}
	}
}

func TestNearestSite(t *testing.T) {
	const seed = 42
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 60 {
		w, h := 1+rnd.IntN(20), 1+rnd.IntN(20)
		site := make([]bool, w*h)
		for range 1 + rnd.IntN(4) {
			site[rnd.IntN(w*h)] = true
		}
		f, ok := Nearest(site, w, h)
		require.True(t, ok)
		for i := range site {
			best := int32(math.MaxInt32)
			for k, s := range site {
				if s {
					dx, dy := i%w-k%w, i/w-k/w
					best = min(best, int32(dx*dx+dy*dy))
				}
			}
			require.Equal(t, best, f.D2[i])
			sx, sy := f.Site(i%w, i/w)
			require.True(t, site[sy*w+sx])
		}
	}
	_, ok := Nearest(make([]bool, 6), 3, 2)
	require.False(t, ok)
}

// patches are a few overlapping rectangles of labels 0..3.
func patches(rnd *rand.Rand, w, h int) []uint8 {
	label := make([]uint8, w*h)
	for range 6 {
		x0, y0 := rnd.IntN(w), rnd.IntN(h)
		x1, y1 := x0+1+rnd.IntN(w), y0+1+rnd.IntN(h)
		l := uint8(rnd.IntN(4))
		for y := y0; y < min(y1, h); y++ {
			for x := x0; x < min(x1, w); x++ {
				label[y*w+x] = l
			}
		}
	}
	return label
}
