package fastener

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

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

type row map[string]string

func (r row) num(t *testing.T, key string) float64 {
	v, err := strconv.ParseFloat(r[key], 64)
	require.NoError(t, err, key)
	return v
}

func table(t *testing.T, name string) []row {
	f, err := os.Open("../../testdata/reference/" + name)
	require.NoError(t, err)
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var out []row
	for _, l := range lines[1:] {
		r := row{}
		for i, h := range lines[0] {
			r[h] = l[i]
		}
		out = append(out, r)
	}
	require.NotEmpty(t, out)
	return out
}

// figure is a shape of the tables (mm, y UP) with its box: x0, y0, x1, y1.
type figure struct {
	shape shape
	box   [4]float64
}

func figures() map[string]figure {
	h := 10 * math.Sqrt(3)
	sin, cos := math.Sincos(math.Pi / 6)
	rw, rh := 15*cos+5*sin, 15*sin+5*cos
	return map[string]figure{
		"circle_R10":              {disc(0, 0, 10), [4]float64{-10, -10, 10, 10}},
		"square_20":               {box(-10, -10, 10, 10), [4]float64{-10, -10, 10, 10}},
		"rectangle_30x10":         {box(-15, -5, 15, 5), [4]float64{-15, -5, 15, 5}},
		"rectangle_30x10_rot30":   {box(-15, -5, 15, 5).turned(math.Pi / 6), [4]float64{-rw, -rh, rw, rh}},
		"semicircle_R10":          {disc(0, 0, 10).less(box(-20, -20, 20, 0)), [4]float64{-10, 0, 10, 10}},
		"equilateral_triangle_20": {poly(-10, 0, 10, 0, 0, h), [4]float64{-10, 0, 10, h}},
		"annulus_R10_r6":          {disc(0, 0, 10).less(disc(0, 0, 6)), [4]float64{-10, -10, 10, 10}},
		"L_20x20_leg8":            {join(box(0, 0, 20, 8), box(0, 0, 8, 20)), [4]float64{0, 0, 20, 20}},
	}
}

// flip turns y up into y down.
func flip(s shape) shape { return func(x, y float64) bool { return s(x, -y) } }

// Textbook formulas.
func TestGeometryAgainstClosedForms(t *testing.T) {
	all := figures()
	for _, r := range table(t, "shape_geometry_closed_form.csv") {
		name := r["shape"]
		f, ok := all[name]
		require.True(t, ok, name)
		b := strike(flip(f.shape), 21, 1050, 20)
		b.Scale = 25
		g := gridOf(b)
		m := g.measure(g.share)
		area, big := r.num(t, "area_mm2"), r.num(t, "I_max_mm4")
		assert.InEpsilon(t, area, m.Area, 1e-3, name)
		// The outline ends short of a sharp tip by up to a pixel, 0.04 mm.
		assert.InDelta(t, r.num(t, "centroid_x_mm")-f.box[0], m.CX+g.x0, 0.04, name)
		assert.InDelta(t, f.box[3]-r.num(t, "centroid_y_mm"), m.CY+g.y0, 0.04, name)
		assert.InDelta(t, r.num(t, "Ix_centroid_mm4"), m.IXX, 2e-3*big, name)
		assert.InDelta(t, r.num(t, "Iy_centroid_mm4"), m.IYY, 2e-3*big, name)
		assert.InDelta(t, -r.num(t, "Ixy_centroid_mm4"), m.IXY, 2e-3*big, name+": y down turns the sign")
		assert.InDelta(t, r.num(t, "I_min_mm4"), m.IMin, 2e-3*big, name)
		assert.InDelta(t, big, m.IMax, 2e-3*big, name)
		slack := 1.5 * g.cell
		assert.InDelta(t, r.num(t, "max_feret_mm"), m.Feret, slack, name)
		assert.InDelta(t, r.num(t, "min_width_mm"), m.MinWidth, slack, name)
		assert.InDelta(t, r.num(t, "largest_inscribed_circle_radius_mm"), plateOf(g, m).most, slack, name)
	}
}

// pixels draws a figure on whole pixels whose centres lie inside it.
func pixels(f figure, perMM int) *sizing.Badge {
	const half = 21
	n := 2 * half * perMM
	sep := reduce.NewSeparation(n, n)
	sep.Flats = []reduce.Flat{{Role: reduce.Enamel}}
	for y := range n {
		for x := range n {
			if f.shape((float64(x)+0.5)/float64(perMM)-half, half-(float64(y)+0.5)/float64(perMM)) {
				sep.Labels[y*n+x], sep.Beside[y*n+x] = 0, 0
			}
		}
	}
	b := &sizing.Badge{Sep: sep, Scale: unit.PxPerMM(perMM)}
	b.Outline, _ = sizing.Outline(sep)
	return b
}

// scikit-image 0.19.3 regionprops and the distance transform of SciPy 1.10.1
// on the same pixels. Their second moments leave out the twelfth of a pixel's
// side squared that each pixel has of its own.
func TestGeometryAgainstRasters(t *testing.T) {
	all, exact := figures(), 0
	for _, r := range table(t, "shape_geometry_raster_skimage.csv") {
		perMM := int(r.num(t, "pixels_per_mm"))
		f := all[r["shape"]]
		b := pixels(f, perMM)
		g := gridOf(b)
		m := g.measure(g.share)
		name := r["shape"] + " at " + r["pixels_per_mm"]
		area := r.num(t, "area_mm2")
		assert.InDelta(t, area, m.Area, 1e-5, name)
		own := area / float64(12*perMM*perMM)
		loose := 1e-5 + 1e-12*area
		if g.cell*float64(perMM) > 1.5 { // cells of several pixels
			loose = 1.5e-3 * m.IMax
		}
		assert.InDelta(t, r.num(t, "Ix_mm4")+own, m.IXX, loose, name)
		assert.InDelta(t, r.num(t, "Iy_mm4")+own, m.IYY, loose, name)
		assert.InDelta(t, -r.num(t, "Ixy_mm4"), m.IXY, loose, name)
		if g.cell*float64(perMM) < 1.5 {
			exact++
			assert.InDelta(t, r.num(t, "edt_max_minus_half_pixel_mm"), plateOf(g, m).most, 1e-5, name)
		}
	}
	assert.GreaterOrEqual(t, exact, 6)
}

func TestTurnedArtTurnsItsGeometry(t *testing.T) {
	s := join(oval(0, 0, 15, 6), disc(9, 4, 5))
	at := func(by float64) geometry {
		b := strike(s.turned(by), 21, 900, 20)
		b.Scale = 20
		g := gridOf(b)
		return g.measure(g.share)
	}
	still := at(0)
	for _, by := range []float64{0.3, 0.8, 1.2} {
		m := at(by)
		assert.InEpsilon(t, still.Area, m.Area, 1e-3)
		assert.InEpsilon(t, still.IMax, m.IMax, 3e-3)
		assert.InEpsilon(t, still.IMin, m.IMin, 3e-3)
		assert.InDelta(t, by, m.Angle-still.Angle, 0.01)
		assert.InDelta(t, still.Feret, m.Feret, 0.4)
	}
}

var inTable = map[string]sizing.BaseMetal{
	"Zamak 3": sizing.Zinc, "cartridge brass": sizing.Brass, "copper": sizing.Copper, "low-carbon steel": sizing.Iron,
}

func metalOf(name string) (sizing.BaseMetal, bool) {
	for prefix, m := range inTable {
		if name == prefix || strings.HasPrefix(name, prefix+" ") || name == prefix+", pure" {
			return m, true
		}
	}
	return "", false
}

// Handbook and alloy tables, named row by row in the reference table.
func TestDensitiesLieInThePublishedRanges(t *testing.T) {
	seen := map[sizing.BaseMetal]bool{}
	for _, r := range table(t, "material_densities.csv") {
		m, ok := metalOf(r["material"])
		if !ok || m == sizing.Copper && r["designation"] != "Cu element" {
			continue
		}
		seen[m] = true
		assert.Equal(t, r.num(t, "density_g_cm3"), densities[m].value, r["material"])
		assert.Equal(t, sizing.Range{Low: r.num(t, "low_g_cm3"), High: r.num(t, "high_g_cm3")}, densities[m].Range, r["material"])
	}
	assert.Len(t, seen, len(densities))
}

// Volume by density, worked outside this project.
func TestDiscsWeighWhatTheyShould(t *testing.T) {
	seen := 0
	for _, r := range table(t, "disc_mass_worked.csv") {
		m, ok := metalOf(r["material"])
		if !ok {
			continue
		}
		seen++
		d, thick := r.num(t, "diameter_mm"), unit.MM(r.num(t, "thickness_mm"))
		g, _, err := Stuff{Base: m, Thickness: thick, Fill: sizing.Soft, Depths: sizing.UsualDepths()}.weigh(math.Pi*d*d/4, 0)
		require.NoError(t, err)
		assert.InDelta(t, r.num(t, "mass_g"), float64(g), 1e-5, r["material"])
		a, err := Advise(strike(disc(0, 0, 10), 12, 400, unit.MM(d)), m, thick, 0)
		require.NoError(t, err)
		assert.InEpsilon(t, r.num(t, "mass_g"), float64(a.Weight), 3e-3, r["material"])
	}
	assert.Equal(t, 16, seen)
}

// The plain twin of shares, on random separations.
func TestSharesAddUpEveryPixel(t *testing.T) {
	seed := int64(4)
	r := rand.New(rand.NewSource(seed))
	for n := range 40 {
		sep := reduce.NewSeparation(4+r.Intn(40), 4+r.Intn(40))
		sep.Flats = []reduce.Flat{{Role: reduce.Enamel}, {Role: reduce.CutOut}, {Role: reduce.Metal}}
		labels := []uint8{0, 1, 2, reduce.None}
		for i := range sep.Labels {
			sep.Labels[i] = labels[r.Intn(4)]
			sep.Beside[i] = sep.Labels[i]
			if i > 0 && r.Intn(3) > 0 {
				sep.Labels[i], sep.Beside[i] = sep.Labels[i-1], sep.Labels[i-1]
			} else if r.Intn(2) == 0 {
				sep.Beside[i], sep.Cover[i] = labels[r.Intn(4)], uint8(128+r.Intn(128))
			}
		}
		left, top, k := r.Intn(7)-3, r.Intn(7)-3, 1+r.Intn(5)
		w, h := 1+(sep.W-left)/k, 1+(sep.H-top)/k
		got := shares(&sizing.Badge{Sep: sep}, left, top, k, w, h)
		want := make([]float64, w*h)
		for i := range sep.Labels {
			x, y := i%sep.W-left, i/sep.W-top
			if x >= 0 && y >= 0 && x/k < w && y/k < h {
				want[y/k*w+x/k] += sep.CoverOf(i, sep.Solid()) / float64(k*k)
			}
		}
		require.InDeltaSlice(t, want, got, 1e-9, "seed %d, case %d", seed, n)
	}
}
