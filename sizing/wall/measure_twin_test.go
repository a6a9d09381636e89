package wall

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
)

// speckled is a small drawing of anything at all.
func speckled(rnd *rand.Rand, size int) *reduce.Separation {
	s := reduce.NewSeparation(1+rnd.IntN(size), 1+rnd.IntN(size))
	s.Flats = flats()
	labels := []uint8{red, blue, steel, hole, ink, sky}
	for i := range s.Labels {
		if s.Labels[i] = labels[rnd.IntN(6)]; i > 0 && rnd.IntN(3) > 0 {
			s.Labels[i] = s.Labels[i-1]
		}
		s.Beside[i], s.Cover[i] = labels[rnd.IntN(6)], uint8(128+rnd.IntN(128))
	}
	return s
}

// drawings are what the twins are compared on.
var drawings = sync.OnceValue(func() (all []*reduce.Separation) {
	rnd := rand.New(rand.NewPCG(51, 0))
	for range 2 {
		all = append(all, blobs(rnd, 160))
	}
	for range 60 {
		all = append(all, speckled(rnd, 24))
	}
	return append(all, lighthouse(300, 5, 2))
})

// slowThickness is the twin of thicken: every disc, the widest first, is laid
// over all points.
func slowThickness(points []point) []float32 {
	order := make([]int, len(points))
	tau, done := make([]float32, len(points)), make([]bool, len(points))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(points[b].width, points[a].width) })
	for _, i := range order {
		q := &points[i]
		tau[i] = max(tau[i], q.width)
		if done[i] {
			continue
		}
		r := float64(q.width) / 2
		for k := range points {
			p := &points[k]
			dx, dy := math.Abs(float64(p.x-q.x)), math.Abs(float64(p.y-q.y))
			if p.part != q.part || dy > math.Trunc(r) || dx > math.Trunc(math.Sqrt(max(0, r*r-dy*dy))) {
				continue
			}
			tau[k] = max(tau[k], q.width)
			done[k] = done[k] || dx*dx+dy*dy <= r*hardlyMoved*r*hardlyMoved
		}
	}
	return tau
}

func TestDiscsLaidOverWhatIsNotCoveredYetGiveTheSame(t *testing.T) {
	n := 0
	for _, s := range drawings() {
		points := measured(t, s).lines.points
		for i, want := range slowThickness(points) {
			require.Equal(t, want, points[i].tau, "point %d of %d x %d", i, s.W, s.H)
		}
		n += len(points)
	}
	require.Greater(t, n, 5000)
}

// slowBorders is the twin of borders: the length of border of each two parts,
// from every corner where pixels meet.
func slowBorders(m *Measured) map[[2]int32]float64 {
	lengths := map[[2]int32]float64{}
	part := func(x, y int) int32 {
		if m.v.at(x, y) == outside {
			return -1
		}
		return m.parts.At(x, y)
	}
	round := [4][2]int{{-1, -1}, {0, -1}, {0, 0}, {-1, 0}}
	for y := 0; y <= m.v.h; y++ {
		for x := 0; x <= m.v.w; x++ {
			sides := map[[2]int32]int{}
			for k, d := range round {
				e := round[(k+1)%4]
				p, q := m.v.at(x+d[0], y+d[1]), m.v.at(x+e[0], y+e[1])
				enamels := m.v.enamel[p] && m.v.enamel[q]
				if p != q && (enamels || m.v.enamel[p] && q == outside || m.v.enamel[q] && p == outside) {
					a, b := part(x+d[0], y+d[1]), part(x+e[0], y+e[1])
					if a > b {
						a, b = b, a
					}
					if a < 0 {
						a, b = b, a
					}
					sides[[2]int32{a, b}] |= 1 << k
				}
			}
			for pair, s := range sides {
				lengths[pair] += cornerLength[s]
			}
		}
	}
	return lengths
}

func TestBordersAreThoseOfEveryCorner(t *testing.T) {
	n := 0
	for _, s := range drawings() {
		m := measured(t, s)
		want := slowBorders(m)
		all := slices.Concat(m.touches, m.open)
		require.Len(t, all, len(want))
		for _, b := range all {
			require.InDelta(t, want[[2]int32{b.a, b.b}], b.length, 1e-9)
		}
		n += len(all)
	}
	require.Greater(t, n, 500)
}

// slowAreas is the twin of weighParts, pixel by pixel.
func slowAreas(m *Measured) []float64 {
	area := make([]float64, len(m.parts.Label))
	for i := range m.v.class {
		x, y := i%m.v.w, i/m.v.w
		own := m.parts.At(x, y)
		area[own]++
		if !m.v.mixed(x, y) {
			continue
		}
		lost := 1 - float64(m.s.Cover[i])/255
		area[own] -= lost
		for _, d := range [8][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {1, -1}, {-1, 1}, {1, 1}} {
			if nx, ny := x+d[0], y+d[1]; nx >= 0 && ny >= 0 && nx < m.v.w && ny < m.v.h && m.v.class[ny*m.v.w+nx] == m.v.of[m.s.Beside[i]] {
				area[m.parts.At(nx, ny)] += lost
				break
			}
		}
	}
	return area
}

func TestClassesAreThoseOfTheLabels(t *testing.T) {
	for _, s := range drawings() {
		v := newView(s)
		for i, l := range s.Labels {
			if !v.printed[l] {
				require.Equal(t, v.of[l], v.class[i])
			}
		}
	}
}

func TestAreasAreThoseOfEveryPixel(t *testing.T) {
	for _, s := range drawings() {
		m := measured(t, s)
		require.InDeltaSlice(t, slowAreas(m), m.area, 1e-6)
	}
}
