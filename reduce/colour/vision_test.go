package colour

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// named as in the tables.
var deficiencies = map[string]Vision{"protanomaly": Protan, "deuteranomaly": Deutan, "tritanomaly": Tritan}

// Source: Machado, Oliveira & Fernandes, IEEE TVCG 15(6), 2009, the authors'
// table: testdata/reference/cvd_machado2009_matrices.csv, at full severity.
func TestMatricesOfDeficiencies(t *testing.T) {
	found := 0
	for _, r := range table(t, "cvd_machado2009_matrices.csv") {
		if num(t, r, "severity") != 1 {
			continue
		}
		found++
		m := missing[deficiencies[r["deficiency"]]]
		for k, v := range m {
			assert.Equal(t, num(t, r, fmt.Sprintf("m%d%d", k/3+1, k%3+1)), v, "%v %d", r["deficiency"], k)
		}
	}
	assert.Equal(t, 3, found)
}

// Source: testdata/reference/cvd_machado2009_colours.csv, computed with R
// colorspace and colorspacious (on linear light, which is ours) and with R
// colorspace and culori (on encoded values): the tables tell them apart, and a
// matrix put to the wrong one of them would not pass.
func TestColoursOfDeficiencies(t *testing.T) {
	checked := 0
	for _, r := range table(t, "cvd_machado2009_colours.csv") {
		v, known := deficiencies[r["deficiency"]]
		require.True(t, known)
		if num(t, r, "severity") != 1 {
			continue
		}
		checked++
		c := hexOf(t, r["hex_in"])
		near(t, hexOf(t, r["hex_out_matrix_on_linear_RGB"]), c.SeenBy(v), "%v", r)
		near(t, hexOf(t, r["hex_out_matrix_on_encoded_sRGB"]), onEncoded(c, v), "%v", r)
	}
	assert.Greater(t, checked, 20)
}

// near allows one level: libraries round the last half differently.
func near(t *testing.T, want, got RGB8, words string, args ...any) {
	t.Helper()
	for _, d := range [3][2]uint8{{want.R, got.R}, {want.G, got.G}, {want.B, got.B}} {
		assert.InDelta(t, float64(d[0]), float64(d[1]), 1, words, args)
	}
}

// onEncoded is the other convention: the matrix put to encoded values.
func onEncoded(c RGB8, v Vision) RGB8 {
	m := missing[v]
	r, g, b := times(&m, float64(c.R), float64(c.G), float64(c.B))
	to := func(x float64) uint8 { return uint8(math.Round(min(max(x, 0), 255))) }
	return RGB8{to(r), to(g), to(b)}
}

func TestGreyStaysGrey(t *testing.T) {
	for _, v := range Visions() {
		for level := 0; level < 256; level += 15 {
			c := RGB8{uint8(level), uint8(level), uint8(level)}
			near(t, c, c.SeenBy(v), "%s %d", string(v), level)
		}
	}
	assert.Equal(t, RGB8{10, 200, 30}, RGB8{10, 200, 30}.SeenBy(Normal))
}
