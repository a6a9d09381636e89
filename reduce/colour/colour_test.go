package colour

import (
	"math"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Source: IEC 61966-2-1, testdata/reference/srgb_transfer_function.csv.
func TestTransferFunction(t *testing.T) {
	for _, r := range table(t, "srgb_transfer_function.csv") {
		assert.InDelta(t, num(t, r, "linear"), Decode(num(t, r, "encoded")), 1e-9, "%v", r)
		assert.InDelta(t, num(t, r, "encoded_again_from_linear"), Encode(num(t, r, "linear")), 1e-8, "%v", r)
		if r["code_8bit"] != "" { // the others probe the knee between codes
			assert.InDelta(t, num(t, r, "linear"), linear8[int(num(t, r, "code_8bit"))], 1e-9, "%v", r)
		}
	}
	for v := range 256 {
		assert.Equal(t, uint8(v), to8(linear8[v]), "8-bit codes survive the round trip")
	}
	assert.InDelta(t, -Decode(0.5), Decode(-0.5), 0)
	assert.InDelta(t, math.Pow((0.7+0.055)/1.055, 2.4), Decode(0.7), 1e-14)
}

// Source: CSS Color 4 sRGB primaries; Ottosson 2020/2021; CIE 15. The table was
// computed with culori and colorjs: testdata/reference/srgb_colors_oklab_cielab.csv.
// Libraries round the whites differently: 1e-4 in OKLab, 0.02 in CIELAB.
func TestKnownColours(t *testing.T) {
	for _, r := range table(t, "srgb_colors_oklab_cielab.csv") {
		c := RGB8{uint8(num(t, r, "R8")), uint8(num(t, r, "G8")), uint8(num(t, r, "B8"))}
		require.Equal(t, r["hex"], c.Hex())
		xyz, ok, lab, print := c.Linear().XYZ(), c.OKLab(), c.Lab(), c.LabD50()
		for _, p := range []struct {
			column string
			got    float64
			within float64
		}{
			{"X_D65_culori", xyz.X, 1e-6}, {"Y_D65_culori", xyz.Y, 1e-6}, {"Z_D65_culori", xyz.Z, 1e-6},
			{"oklab_L_culori", ok.L, 1e-4}, {"oklab_a_culori", ok.A, 1e-4}, {"oklab_b_culori", ok.B, 1e-4},
			{"oklab_L_colorjs", ok.L, 1e-4}, {"oklab_a_colorjs", ok.A, 1e-4}, {"oklab_b_colorjs", ok.B, 1e-4},
			{"lab65_L_culori", lab.L, 0.02}, {"lab65_a_culori", lab.A, 0.02}, {"lab65_b_culori", lab.B, 0.02},
			{"lab65_L_skimage", lab.L, 0.02}, {"lab65_a_skimage", lab.A, 0.02}, {"lab65_b_skimage", lab.B, 0.02},
			{"labD50_L_culori", print.L, 0.02}, {"labD50_a_culori", print.A, 0.02}, {"labD50_b_culori", print.B, 0.02},
		} {
			assert.InDelta(t, num(t, r, p.column), p.got, p.within, "%s %s", r["name"], p.column)
		}
		assert.Equal(t, c, ok.RGB8(), "%s survives OKLab and back", r["name"])
		back, inside := FromLab(lab)
		assert.Equal(t, c, back, "%s survives CIELAB and back", r["name"])
		_ = inside // the gamut's own corners fall either side of it by rounding
	}
}

// Source: Ottosson's published XYZ pairs (3 decimals) by his first matrix,
// reached here through linear sRGB: testdata/reference/oklab_ottosson_xyz_pairs.csv.
func TestOKLabPublishedPairs(t *testing.T) {
	for _, r := range table(t, "oklab_ottosson_xyz_pairs.csv") {
		x, y, z := num(t, r, "X"), num(t, r, "Y"), num(t, r, "Z")
		// inverse of the sRGB matrix, CSS Color 4
		l := Linear{
			dot(3.2409699419045213, -1.5373831775700935, -0.4986107602930033, x, y, z),
			dot(-0.9692436362808798, 1.8759675015077206, 0.04155505740717561, x, y, z),
			dot(0.05563007969699361, -0.20397695888897657, 1.0569715142428786, x, y, z),
		}
		got := l.OKLab()
		assert.InDelta(t, num(t, r, "oklab_L_published_3dp"), got.L, 1e-3)
		assert.InDelta(t, num(t, r, "oklab_a_published_3dp"), got.A, 2e-3)
		assert.InDelta(t, num(t, r, "oklab_b_published_3dp"), got.B, 2e-3)
	}
}

// Source: Sharma, Wu & Dalal, Color Research and Application 30(1), 2005,
// Table 1: all 34 pairs, to the 4 decimals printed.
func TestCIEDE2000PublishedPairs(t *testing.T) {
	rows := table(t, "ciede2000_sharma2005.csv")
	require.Len(t, rows, 34)
	for _, r := range rows {
		p := Lab{num(t, r, "L1"), num(t, r, "a1"), num(t, r, "b1")}
		q := Lab{num(t, r, "L2"), num(t, r, "a2"), num(t, r, "b2")}
		want := num(t, r, "dE00_published_4dp")
		assert.InDelta(t, want, CIEDE2000(p, q), 0.00005+1e-9, "pair %s", r["pair"])
		assert.InDelta(t, want, CIEDE2000(q, p), 0.00005+1e-9, "pair %s, turned round", r["pair"])
	}
}

// go-colorful 1.4.1 prints 7.2195 for pair 10 of Sharma et al. (2005), whose
// table says 7.1792: so the difference formula here is our own.
func TestTheLibraryIsWrongOnPairTen(t *testing.T) {
	r := table(t, "ciede2000_sharma2005.csv")[9]
	require.Equal(t, "10", r["pair"])
	p := Lab{num(t, r, "L1"), num(t, r, "a1"), num(t, r, "b1")}
	q := Lab{num(t, r, "L2"), num(t, r, "a2"), num(t, r, "b2")}
	lib := 100 * colorful.Lab(p.L/100, p.A/100, p.B/100).DistanceCIEDE2000(colorful.Lab(q.L/100, q.A/100, q.B/100))
	published := num(t, r, "dE00_published_4dp")
	assert.Greater(t, math.Abs(lib-published), 0.03)
	assert.InDelta(t, published, CIEDE2000(p, q), 0.00005)
}

// Source: WCAG 2.x definitions, testdata/reference/wcag_contrast.csv.
func TestContrast(t *testing.T) {
	for _, r := range table(t, "wcag_contrast.csv") {
		c, d := hexOf(t, r["fg_hex"]), hexOf(t, r["bg_hex"])
		assert.InDelta(t, num(t, r, "rel_luminance_fg"), c.Luminance(), 1e-6)
		assert.InDelta(t, num(t, r, "contrast_formula"), Contrast(c, d), 1e-5)
		assert.Equal(t, Contrast(c, d), Contrast(d, c))
		assert.Equal(t, r["passes_4.5_AA_text"] == "true", Contrast(c, d) >= 4.5, r["fg_hex"])
		assert.Equal(t, r["passes_3.0_AA_graphics"] == "true", Contrast(c, d) >= 3, r["fg_hex"])
	}
}

// Source: the 24-patch chart (Lab D50 after November 2014) and its sRGB
// values: testdata/reference/colorchecker24.csv.
func TestColourChart(t *testing.T) {
	for _, r := range table(t, "colorchecker24.csv") {
		if r["out_of_srgb_gamut"] == "true" {
			continue
		}
		c := RGB8{uint8(num(t, r, "srgb8_R_from_after")), uint8(num(t, r, "srgb8_G_from_after")), uint8(num(t, r, "srgb8_B_from_after"))}
		want := Lab{num(t, r, "L_D50_after_Nov2014"), num(t, r, "a_D50_after_Nov2014"), num(t, r, "b_D50_after_Nov2014")}
		assert.Less(t, CIEDE2000(want, c.LabD50()), 0.5, r["name"]) // half an 8-bit step
	}
}

// Source: NBS Special Publication 440 centroids: testdata/reference/iscc_nbs_centroids.csv.
func TestNames(t *testing.T) {
	rows := table(t, "iscc_nbs_centroids.csv")
	require.Len(t, rows, len(named))
	for i, r := range rows {
		require.Equal(t, r["hex"], named[i].rgb.Hex())
		want := Lab{num(t, r, "lab65_L"), num(t, r, "lab65_a"), num(t, r, "lab65_b")}
		assert.Less(t, CIEDE2000(want, centroids[i]), 0.02, r["name"])
	}
	for hex, name := range map[string]string{"#000000": "black", "#ffffff": "white", "#00304e": "dark blue"} {
		assert.Equal(t, name, Name(hexOf(t, hex)))
	}
}

func TestHex(t *testing.T) {
	assert.Equal(t, RGB8{0x1a, 0x6b, 0x8f}, hexOf(t, " #1A6b8F"))
	assert.Equal(t, RGB8{0xff, 0, 0xaa}, hexOf(t, "f0a"))
	for _, s := range []string{"", "#12", "#12345g", "red", "#1234567", "+12345"} {
		_, err := ParseHex(s)
		assert.Error(t, err, s)
	}
}

func TestStartingSet(t *testing.T) {
	assert.Empty(t, StartingSet(0))
	for n := 1; n <= 24; n++ {
		set := StartingSet(n)
		require.Len(t, set, n)
		assert.Equal(t, set, StartingSet(n))
		for i := range set {
			for j := range i {
				assert.Greater(t, CIEDE2000(set[i].Lab(), set[j].Lab()), 4.0, "%d: %s and %s", n, set[i].Hex(), set[j].Hex())
			}
		}
	}
}
