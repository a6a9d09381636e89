//go:build !js

package outline

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
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

// figures are the shapes of the tables (mm, y up there and down here).
func figures() map[string]shape {
	h := 10 * math.Sqrt(3)
	flip := func(s shape) shape { return func(x, y float64) bool { return s(x, -y) } }
	return map[string]shape{
		"circle_R10":              disc(0, 0, 10),
		"square_20":               box(-10, -10, 10, 10),
		"rectangle_30x10":         box(-15, -5, 15, 5),
		"rectangle_30x10_rot30":   flip(box(-15, -5, 15, 5).turned(30)),
		"semicircle_R10":          flip(disc(0, 0, 10).less(box(-20, -20, 20, 0))),
		"equilateral_triangle_20": flip(poly(-10, 0, 10, 0, 0, h)),
		"annulus_R10_r6":          disc(0, 0, 10).less(disc(0, 0, 6)),
		"L_20x20_leg8":            flip(join(box(0, 0, 20, 8), box(0, 0, 8, 20))),
	}
}

// Textbook formulas: area, centre and the largest disc that fits.
func TestPartsAgainstClosedForms(t *testing.T) {
	const perMM = 20
	for _, r := range table(t, "shape_geometry_closed_form.csv") {
		m := measured(t, figures()[r["shape"]], 21, perMM)
		require.Len(t, m.parts, 1, r["shape"])
		p := m.parts[0]
		assert.InEpsilon(t, r.num(t, "area_mm2"), p.Area/(perMM*perMM), 2e-3, r["shape"])
		assert.InDelta(t, r.num(t, "centroid_x_mm"), p.X/perMM-21, 0.02, r["shape"])
		assert.InDelta(t, -r.num(t, "centroid_y_mm"), p.Y/perMM-21, 0.02, r["shape"])
		wide := m.g.nodes[m.tree.root[0]].width / 2 / perMM
		assert.InDelta(t, r.num(t, "largest_inscribed_circle_radius_mm"), wide, 0.04, r["shape"])
	}
}

// scikit-image regionprops and the distance transform of scipy, on hard pixels.
func TestPartsAgainstAnotherLibraryOnPixels(t *testing.T) {
	for _, r := range table(t, "shape_geometry_raster_skimage.csv") {
		perMM := r.num(t, "pixels_per_mm")
		m, err := Measure(pixels(figures()[r["shape"]], int(perMM)), nil)
		require.NoError(t, err)
		p := m.parts[0]
		assert.InEpsilon(t, r.num(t, "pixel_count"), p.Area, 1e-3, r["shape"])
		assert.InDelta(t, r.num(t, "centroid_x_mm"), p.X/perMM-21, 0.005, r["shape"])
		assert.InDelta(t, -r.num(t, "centroid_y_mm"), p.Y/perMM-21, 0.005, r["shape"])
		// Twice the distance to the nearest pixel, less half a pixel, is the width
		// to within a pixel (see edt_bar_width_bias.csv).
		wide := m.g.nodes[m.tree.root[0]].width / 2 / perMM
		assert.InDelta(t, r.num(t, "edt_max_minus_half_pixel_mm"), wide, 1/perMM, r["shape"])
	}
}

// pixels draws a figure on whole pixels whose middles lie inside it.
func pixels(s shape, perMM int) *reduce.Separation {
	n := 42 * perMM
	sep := reduce.NewSeparation(n, n)
	sep.Flats = []reduce.Flat{{Role: reduce.Enamel}}
	for i := range sep.Labels {
		if s((float64(i%n)+0.5)/float64(perMM)-21, (float64(i/n)+0.5)/float64(perMM)-21) {
			sep.Labels[i], sep.Beside[i] = 0, 0
		}
	}
	return sep
}

// Worked examples of textbooks, each with its source in the table.
func TestStressAgainstWorkedExamples(t *testing.T) {
	for _, r := range table(t, "cantilever_worked.csv") {
		got := Stress(r.num(t, "push_N"), unit.MM(r.num(t, "arm_mm")), unit.MM(r.num(t, "width_mm")), unit.MM(r.num(t, "thickness_mm")))
		assert.InDelta(t, r.num(t, "stress_MPa"), got, 0.005, r["case"])
	}
}
