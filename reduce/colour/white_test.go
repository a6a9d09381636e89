package colour

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Source: 40 sRGB colours with CIELAB under both whites, computed by culori
// (another library): testdata/reference/srgb_colors_oklab_cielab.csv.
func TestLabFromD50GivesWhatIsPublishedUnderD65(t *testing.T) {
	for _, r := range table(t, "srgb_colors_oklab_cielab.csv") {
		got := LabFromD50(Lab{num(t, r, "labD50_L_culori"), num(t, r, "labD50_a_culori"), num(t, r, "labD50_b_culori")})
		assert.InDelta(t, num(t, r, "lab65_L_culori"), got.L, 1e-3, r["name"])
		assert.InDelta(t, num(t, r, "lab65_a_culori"), got.A, 1e-3, r["name"])
		assert.InDelta(t, num(t, r, "lab65_b_culori"), got.B, 1e-3, r["name"])
	}
}

// Source: CSS Color Module Level 4, "Specifying Lab and LCH": the examples and
// the hex colours printed beside them. CSS Lab is D50.
func TestLabFromD50GivesTheExamplesOfCSS(t *testing.T) {
	for _, c := range []struct {
		lab Lab
		hex string
	}{
		{Lab{29.2345, 39.3825, 20.0664}, "#7d2329"},
		{Lab{52.2345, 40.1645, 59.9971}, "#c65d07"},
		{Lab{60.2345, -5.3654, 58.956}, "#9d9318"},
		{Lab{62.2345, -34.9638, 47.7721}, "#68a639"},
		{Lab{67.5345, -8.6911, -41.6019}, "#62acef"},
	} {
		got, inside := FromLab(LabFromD50(c.lab))
		want := hexOf(t, c.hex)
		assert.InDelta(t, want.R, got.R, 1, c.hex) // the printed hex is rounded
		assert.InDelta(t, want.G, got.G, 1, c.hex)
		assert.InDelta(t, want.B, got.B, 1, c.hex)
		assert.True(t, inside)
	}
}

// Source: the 24-patch chart (CIELAB D50 after November 2014) and its sRGB
// values, by culori and colorjs: testdata/reference/colorchecker24.csv.
func TestColourChartFromD50(t *testing.T) {
	for _, r := range table(t, "colorchecker24.csv") {
		lab := Lab{num(t, r, "L_D50_after_Nov2014"), num(t, r, "a_D50_after_Nov2014"), num(t, r, "b_D50_after_Nov2014")}
		got, inside := FromLab(LabFromD50(lab))
		assert.Equal(t, r["out_of_srgb_gamut"] != "true", inside, r["name"])
		assert.Equal(t, RGB8{uint8(num(t, r, "srgb8_R_from_after")), uint8(num(t, r, "srgb8_G_from_after")), uint8(num(t, r, "srgb8_B_from_after"))}, got, r["name"])
	}
}

// Source: the cone responses of Bradford (Lam 1985, as CIE and ICC print
// them), adapted here step by step.
func TestFromD50IsBradford(t *testing.T) {
	cones := func(c XYZ) [3]float64 {
		return [3]float64{
			0.8951*c.X + 0.2664*c.Y - 0.1614*c.Z,
			-0.7502*c.X + 1.7135*c.Y + 0.0367*c.Z,
			0.0389*c.X - 0.0685*c.Y + 1.0296*c.Z,
		}
	}
	from, to := cones(d50), cones(d65)
	for _, c := range []XYZ{{0.2, 0.3, 0.1}, {0.9, 0.5, 0.05}, d50} {
		before, after := cones(c), cones(c.fromD50())
		for k := range 3 {
			assert.InDelta(t, before[k]*to[k]/from[k], after[k], 1e-12)
		}
	}
}

func TestLabAndBack(t *testing.T) {
	for l := 0.0; l <= 100; l += 4 {
		for a := -120.0; a <= 120; a += 24 {
			want := Lab{l, a, -a / 2}
			got := want.xyz(d65).lab(d65)
			assert.InDelta(t, want.L, got.L, 1e-9)
			assert.InDelta(t, want.A, got.A, 1e-9)
			assert.InDelta(t, want.B, got.B, 1e-9)
		}
	}
}
