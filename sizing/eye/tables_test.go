package eye

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// Source: ISO 8596 clause 3 (ring and gap), ISO 9241-303 (heights of
// characters), NUREG-0700 (the formula without a tangent):
// testdata/reference/visual_angle_sizes.csv.
func TestVisualAngles(t *testing.T) {
	for _, r := range table(t, "visual_angle_sizes.csv") {
		v := Viewing{Distance: unit.MM(num(t, r, "distance_mm")), Acuity: 1}
		arc, mm := num(t, r, "angle_arcmin"), num(t, r, "size_mm_exact_2dtan")
		assert.InDelta(t, mm, float64(v.Size(arc)), 1e-6, "%v", r)
		assert.InDelta(t, arc, v.Arcmin(unit.MM(mm)), 1e-3, "%v", r)
		assert.InEpsilon(t, num(t, r, "size_mm_nureg0700_6.283_D_MA_over_21600"), float64(v.Size(arc)), 2e-4, "%v", r)
	}
}

// Source: geometry, testdata/reference/samples_per_degree.csv. Ours is one over
// the angle of a pixel, as the S-CIELAB authors' code has it; the other
// convention, pixels in the tangent of a degree, is told apart.
func TestSamplesPerDegree(t *testing.T) {
	for _, r := range table(t, "samples_per_degree.csv") {
		v := Viewing{Distance: unit.MM(num(t, r, "viewing_distance_mm")), Acuity: 1}
		pitch := unit.MM(25.4 / num(t, r, "ppi"))
		got := v.SamplesPerDegree(pitch)
		assert.InDelta(t, num(t, r, "samples_per_degree_1_over_pixel_angle"), got, 1e-4, "%v", r)
		assert.InDelta(t, num(t, r, "samples_per_degree_tan1deg_convention"), math.Tan(degree)*float64(v.Distance/pitch), 1e-4, "%v", r)
		assert.InDelta(t, num(t, r, "pixel_angle_arcmin"), 60/got, 1e-4, "%v", r)
	}
}

// Source: ISO 8596, logarithmic series: testdata/reference/acuity_series.csv. An
// eye of acuity a sees from a distance what a normal one sees from that over a
// (this tool's convention): the gaps of the series follow, but for the tangent.
func TestAcuities(t *testing.T) {
	for _, r := range table(t, "acuity_series.csv") {
		v := Viewing{Distance: 400, Acuity: num(t, r, "decimal_acuity")}
		assert.InDelta(t, num(t, r, "gap_mm_at_400_mm"), float64(v.Size(1)), 2e-4, "%v", r)
		v.Distance = 5000
		assert.InDelta(t, num(t, r, "gap_mm_at_5_m"), float64(v.Size(1)), 2e-3, "%v", r)
		assert.InDelta(t, num(t, r, "gap_arcmin"), 1/v.Acuity, 1e-3)
	}
}

// Source: Zhang & Wandell, SID 1996, and the authors' code of 1998:
// testdata/reference/scielab_filter_parameters.csv and scielab_opponent_matrices.csv.
func TestFilterParameters(t *testing.T) {
	names := map[string]int{"luminance": 0, "red-green": 1, "blue-yellow": 2}
	for _, r := range table(t, "scielab_filter_parameters.csv") {
		b := filters[names[r["plane"]]][int(num(t, r, "gaussian"))-1]
		assert.Equal(t, num(t, r, "weight_1998_code"), b.weight, "%v", r)
		assert.Equal(t, num(t, r, "fwhm_deg_1998_code"), b.fwhm, "%v", r)
		// The paper's spread is in exp(-r2/s2): up to 6 % from the code's.
		assert.InEpsilon(t, num(t, r, "spread_s_deg_paper_exp(-r2/s2)")/math.Sqrt2, b.sigma(), 0.065, "%v", r)
	}
	found := 0
	for _, r := range table(t, "scielab_opponent_matrices.csv") {
		if r["matrix"] != "XYZ1931_to_opponent" {
			continue
		}
		for k, column := range []string{"c1", "c2", "c3"} {
			assert.Equal(t, num(t, r, column), opponentXYZ[3*names[r["row"]]+k], "%v", r)
			found++
		}
	}
	assert.Equal(t, 9, found)
	for _, bells := range filters {
		sum := 0.0
		for _, b := range bells {
			sum += b.weight
		}
		assert.InDelta(t, 1, sum, 1e-4, "an even picture stays as it is")
	}
}

func TestPlainFunctions(t *testing.T) {
	for x := 0.0; x < 30; x += 0.37 {
		assert.InEpsilon(t, math.Exp(-x), colour.FallOff(x), 1e-12)
	}
	for x := 0.0; x < 7; x += 0.05 {
		assert.InDelta(t, math.Erf(x/math.Sqrt2), within(x), 1e-12, "%v", x)
	}
	for _, v := range []float64{-0.1, 0, 0.004, 0.01, 0.2, 0.7, 1, 1.3} {
		want := math.Cbrt(v)
		if v <= 216.0/24389 {
			want = (24389.0/27*v + 16) / 116
		}
		assert.InDelta(t, want, float64(root(float32(v))), 2e-5, "%v", v)
	}
}

func TestViewingsThatAreNoneAreRefused(t *testing.T) {
	for _, v := range []Viewing{
		{0, 1}, {-400, 1}, {99, 1}, {1e9, 1}, {unit.MM(math.NaN()), 1}, {unit.MM(math.Inf(1)), 1},
		{400, 0}, {400, -1}, {400, 30}, {400, math.NaN()}, {400, math.Inf(1)},
	} {
		err := v.Check()
		require.Error(t, err, "%v", v)
		assert.Contains(t, err.Error(), "Give a", "%v", v)
	}
	for _, d := range []unit.MM{InTheHand, OnTheLapel, AcrossTheTable, LeastDistance, GreatestDistance} {
		assert.NoError(t, Viewing{d, 1}.Check())
	}
}
