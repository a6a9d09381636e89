package ink

import (
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pixels draws a whole sheet.
func pixels(t *testing.T, s *Sheet) []byte {
	t.Helper()
	var all []byte
	require.NoError(t, s.each(func(_ int, row []byte) error {
		all = append(all, row...)
		return nil
	}))
	return all
}

// alphas are the covers of a sheet drawn in one opaque ink.
func alphas(t *testing.T, s *Sheet) []float64 {
	pix := pixels(t, s)
	out := make([]float64, len(pix)/4)
	for i := range out {
		out[i] = float64(pix[4*i+3]) / 255
	}
	return out
}

// toSegment is how far a place lies from the stretch a-b.
func toSegment(x, y float64, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = min(max(((x-a.X)*dx+(y-a.Y)*dy)/l, 0), 1)
	}
	return math.Hypot(x-a.X-t*dx, y-a.Y-t*dy)
}

// toPath is how far a place lies from a path.
func toPath(x, y float64, path []Point) float64 {
	d := math.Inf(1)
	for i := range path {
		d = min(d, toSegment(x, y, path[i], path[min(i+1, len(path)-1)]))
	}
	return d
}

// sampled is how much of a pixel lies between two distances of a path, by 12 x
// 12 places: the slow twin of a stroke.
func sampled(px, py int, path []Point, from, to float64) float64 {
	if toPath(float64(px)+0.5, float64(py)+0.5, path) > to+1 {
		return 0
	}
	const n = 12
	hits := 0
	for k := range n * n {
		d := toPath(float64(px)+(float64(k%n)+0.5)/n, float64(py)+(float64(k/n)+0.5)/n, path)
		if d >= from && d < to {
			hits++
		}
	}
	return float64(hits) / (n * n)
}

func TestStrokesCoverWhatTheyShould(t *testing.T) {
	const seed = 11
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	for range 25 {
		at := func() Point { return Point{10 + 60*r.Float64(), 10 + 60*r.Float64()} }
		path := []Point{at(), at()}
		if r.IntN(2) == 0 {
			path = append(path, at())
		}
		from, to := 0.0, 1+5*r.Float64()
		if r.IntN(2) == 0 {
			from = to / 2
		}
		s := &Sheet{W: 80, H: 80}
		s.Stroke([][]Point{path}, Band{From: from, To: to, Ink: red})
		sum, want := 0.0, 0.0
		for i, a := range alphas(t, s) {
			exact := sampled(i%80, i/80, path, from, to)
			if len(path) == 2 { // between two stretches more than one edge may cross a pixel
				require.InDelta(t, exact, a, 0.12, "pixel %d,%d of %v from %.2f to %.2f", i%80, i/80, path, from, to)
			}
			sum, want = sum+a, want+exact
		}
		assert.InEpsilon(t, want, sum, 0.02)
	}
}

func TestALineAcrossIsExact(t *testing.T) {
	s := &Sheet{W: 60, H: 20}
	s.Stroke([][]Point{{{10, 10.3}, {50, 10.3}}}, Line(4.5, red))
	a := alphas(t, s)
	sum := 0.0
	for y := range 20 {
		sum += a[y*60+30]
	}
	assert.InDelta(t, 4.5, sum, 0.01)
	assert.InDelta(t, 0.95, a[8*60+30], 0.01, "from 8.05 to 12.55")
	assert.InDelta(t, 0.55, a[12*60+30], 0.01)
}

func TestBarsShareTheirPixels(t *testing.T) {
	s := &Sheet{W: 6, H: 4}
	s.Bar(1.25, 1, 3.5, 2.5, red)
	a := alphas(t, s)
	for i, want := range []float64{
		0, 0, 0, 0, 0, 0,
		0, 0.75, 1, 0.5, 0, 0,
		0, 0.375, 0.5, 0.25, 0, 0,
		0, 0, 0, 0, 0, 0,
	} {
		assert.InDelta(t, want, a[i], 0.003, "pixel %d", i)
	}
}

// Laid over each other, inks mix as the compositing of Porter and Duff (1984,
// operator over) says.
func TestInksMixOver(t *testing.T) {
	s := &Sheet{W: 1, H: 1, Ground: color.NRGBA{R: 100, G: 100, B: 100, A: 255}}
	s.Bar(0, 0, 1, 1, color.NRGBA{R: 200, G: 0, B: 100, A: 51}) // a fifth
	assert.Equal(t, []byte{120, 80, 100, 255}, pixels(t, s))
	s = &Sheet{W: 1, H: 1}
	s.Bar(0, 0, 1, 1, color.NRGBA{R: 200, G: 0, B: 100, A: 51})
	s.Bar(0, 0, 1, 1, color.NRGBA{R: 0, G: 250, B: 0, A: 51})
	// 0.2 over 0.2: alpha 0.36, colour (0.2*new + 0.16*old)/0.36.
	assert.Equal(t, []byte{89, 139, 44, 92}, pixels(t, s))
}

func TestAStripMakesNoDifference(t *testing.T) {
	draw := func(h int, dy float64) []byte {
		s := &Sheet{W: 90, H: h}
		s.Stroke([][]Point{{{10, 20 + dy}, {80, 130 + dy}}, Ring(45, 70+dy, 30, 50)}, Band{From: 2, To: 6.3, Ink: red}, Band{From: 3, To: 4, Ink: half})
		s.Text("64", Point{20, 75 + dy}, 33, Left, half)
		return pixels(t, s)
	}
	const shift = 27 // another part of the picture lies on the seam of strips
	a, b := draw(160, 0), draw(160+shift, shift)
	assert.Equal(t, a, b[4*90*shift:])
}

func TestDashes(t *testing.T) {
	path := []Point{{0, 0}, {10, 0}, {10, 10}}
	all := Dashed(path, 4, 2)
	require.Len(t, all, 4)
	assert.Equal(t, []Point{{0, 0}, {4, 0}}, all[0])
	assert.Equal(t, []Point{{6, 0}, {10, 0}}, all[1])
	assert.Equal(t, []Point{{10, 2}, {10, 6}}, all[2])
	assert.Equal(t, []Point{{10, 8}, {10, 10}}, all[3])
	assert.Empty(t, Dashed(nil, 1, 1))
	assert.Equal(t, [][]Point{{{0, 0}, {3, 0}, {3, 2}}, {{3, 4}, {3, 5}}}, Dashed([]Point{{0, 0}, {3, 0}, {3, 5}}, 5, 2), "round a corner")
}
