package wall

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
)

// usafBars reads line widths in mm of MIL-STD-150A (12 May 1959), the
// three-bar resolving power target.
func usafBars(t *testing.T) (widths []float64) {
	f, err := os.Open("../../testdata/reference/usaf1951_line_widths.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	for _, r := range rows[1:] {
		w, err := strconv.ParseFloat(r[4], 64)
		require.NoError(t, err)
		widths = append(widths, w)
	}
	require.Len(t, widths, 54)
	return widths
}

// leastBarPx is the thinnest bar a raster can hold: below it no pixel need be
// more than half metal.
const leastBarPx = 1.5

func TestBarsOfTheResolvingPowerTargetMeasureTrue(t *testing.T) {
	angles := []float64{0, 7, 22.5, 30, 45, 63, 90}
	for _, perMM := range []float64{20, 33.3, 50} {
		worst, n := 0.0, 0
		for k, mm := range usafBars(t) {
			px := mm * perMM
			if px < leastBarPx || px > 30 {
				continue
			}
			angle := angles[k%len(angles)] * math.Pi / 180
			got := barWidth(t, px, angle, 0.37*float64(k))
			require.InDelta(t, px, got, 0.5, "bar of %.3f px at %.1f degrees", px, angle*180/math.Pi)
			worst = max(worst, math.Abs(got-px))
			n++
		}
		require.Greater(t, n, 15)
		t.Logf("%.1f px/mm: %d bars, worst error %.3f px", perMM, n, worst)
		require.Less(t, worst, 0.25, "as stated for soft edges")
	}
}

// barWidth draws a bar five widths long in enamel and returns its typical width.
func barWidth(t *testing.T, px, angle, shift float64) float64 {
	half := max(5*px, 24) / 2
	size := int(2*half) + 16
	c := float64(size)/2 + math.Mod(shift, 1)
	dx, dy := half*math.Cos(angle), half*math.Sin(angle)
	b := bar{c - dx, c - dy, c + dx, c + dy, px}
	m := measured(t, scene(size, size, func(x, y float64) uint8 {
		if b.holds(x, y) {
			return steel
		}
		return red
	}))
	var all []float64
	for _, p := range m.lines.points {
		if p.class == metal {
			all = append(all, float64(p.tau))
		}
	}
	require.NotEmpty(t, all, "bar of %.3f px at %.2f", px, angle)
	return median(all)
}

// Plain twice-the-distance is exact for one parity of widths and a pixel out
// for the other; widths here are exact for both. The table was made with
// scipy 1.10.1, ndimage.distance_transform_edt.
func TestHardBarsHaveNoBiasOfParity(t *testing.T) {
	f, err := os.Open("../../testdata/reference/edt_bar_width_bias.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	n := 0
	for _, r := range rows[1:] {
		if r[0] != "axis-aligned bar" {
			continue
		}
		width, err := strconv.Atoi(r[1])
		require.NoError(t, err)
		s := reduce.NewSeparation(80, 60)
		s.Flats = flats()
		for i := range s.Labels {
			x, y := i%80, i/80
			s.Labels[i] = red
			if x >= 10 && x < 70 && y >= 20 && y < 20+width {
				s.Labels[i] = steel
			}
			s.Beside[i] = s.Labels[i]
		}
		var all []float64
		for _, p := range measured(t, s).lines.points {
			if p.class == metal {
				all = append(all, float64(p.tau))
			}
		}
		require.InDelta(t, width, median(all), 1e-6, "%d px", width)
		n++
	}
	require.Greater(t, n, 8)
}
