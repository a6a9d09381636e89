package unit

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// table reads a reference table, one map a row.
func table(t *testing.T, name string) []map[string]string {
	f, err := os.Open("../../testdata/reference/" + name)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	var out []map[string]string
	for _, r := range rows[1:] {
		m := map[string]string{}
		for i, h := range rows[0] {
			m[h] = r[i]
		}
		out = append(out, m)
	}
	return out
}

func num(t *testing.T, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

func TestLengthsAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]MM{
		"32": 32, " 32 mm ": 32, "32MM": 32, "3.2 cm": 32, "31,75": 31.75, "31,75 mm": 31.75,
		"1.25 in": 31.75, "1.25in.": 31.75, "1,25 inches": 31.75, `1 1/4"`: 31.75, "1¼ in": 31.75,
		"1.5 m": 1500, "5/4 in": 31.75, "1 1⁄4″": 31.75, "½ inch": 12.7, ".5 in": 12.7, "38.": 38, "1.5''": 38.1,
	} {
		got, err := ParseLength(text, Millimetres)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, float64(want), float64(got), 1e-9, text)
		}
	}
	got, err := ParseLength("1 1/2", Inches)
	require.NoError(t, err)
	assert.InDelta(t, 38.1, float64(got), 1e-9)
}

func TestUnclearLengthsAreRefusedInWords(t *testing.T) {
	for _, text := range []string{
		"", "  ", "mm", "big", "0", "-3 mm", "-1 1/2 in", "3 miles", "1.250,5", "1,250,5", "12 34", "1/0 in",
		"1 5/4 in", "1.5 1/4", "1e3", "NaN", "inf", "3-4", "1/2/3", "32 mm wide", "99999999999999999",
	} {
		_, err := ParseLength(text, Millimetres)
		var m *Mistake
		if assert.ErrorAs(t, err, &m, text) {
			assert.NotEmpty(t, m.What)
			assert.NotEmpty(t, m.Do)
		}
	}
}

func TestLengthsArePrintedInBoth(t *testing.T) {
	assert.Equal(t, "32 mm (1.26 in)", InBoth(32))
	assert.Equal(t, "31.8 mm (1.25 in)", InBoth(31.75))
	assert.Equal(t, "38.1 mm (1.50 in)", InBoth(38.1))
	assert.Equal(t, "0.25 mm", InMM(0.25, 2))
	assert.Equal(t, "0.3 mm", InMM(0.30, 2))
	assert.Equal(t, "0 mm", InMM(-0.001, 2))
	assert.Equal(t, "100 mm", InMM(100, 0))
	assert.Equal(t, Length{31.75, 1.25, "31.8 mm", "1.25 in"}, Shown(31.75))
	assert.Equal(t, "0.18 mm", Shown(0.184).InMM)
	mm, inches := ShownBy(35.5, 38.1)
	assert.Equal(t, "35.5 × 38.1 mm", mm)
	assert.Equal(t, "1.40 × 1.50 in", inches)
}

// CSS Values and Units Level 3/4, absolute lengths.
func TestCSSUnits(t *testing.T) {
	for _, r := range table(t, "css_absolute_units.csv") {
		mm, px := num(t, r["mm"]), num(t, r["px"])
		assert.InDelta(t, px, mm*CSSPxPerMM, 1e-8, r["unit"])
		assert.InDelta(t, num(t, r["in"]), MM(mm).Inches(), 1e-9, r["unit"])
	}
}

// ISO/IEC 7810 ID-1, as quoted in the table of objects.
func TestTheCardIsID1(t *testing.T) {
	card := table(t, "calibration_objects.csv")[0]
	require.Contains(t, card["object"], "ISO/IEC 7810")
	assert.Equal(t, num(t, card["diameter_or_width_mm"]), float64(CardWidth))
	assert.Equal(t, num(t, card["height_mm"]), float64(CardHeight))
}

// Real displays: density and width of an ID-1 card by arithmetic.
func TestCalibrationOnRealDisplays(t *testing.T) {
	for _, r := range table(t, "display_ppi.csv") {
		s, err := Calibrate(num(t, r["id1_card_width_px"]), CardWidth)
		require.NoError(t, err)
		assert.InDelta(t, num(t, r["px_per_mm"]), float64(s), 1e-4, r["display"])
		// px_for_30_mm and id1_card_width_px are each printed to 0.001 px.
		for _, zoom := range []float64{0.5, 1, 1.25, 2} {
			for _, pinch := range []float64{1, 3} {
				css := s.CSSPx(30, zoom, pinch)
				assert.InDelta(t, num(t, r["px_for_30_mm"]), css*zoom*pinch, 1.5e-3, r["display"])
			}
		}
		tall, err := Calibrate(num(t, r["id1_card_height_px"]), CardHeight)
		require.NoError(t, err)
		assert.InDelta(t, float64(s), float64(tall), 2e-5)
	}
}

func TestWhatIsNoScreenIsRefused(t *testing.T) {
	for _, px := range []float64{0, -3, 10, 1e6, math.NaN(), math.Inf(1)} {
		_, err := Calibrate(px, CardWidth)
		var m *Mistake
		assert.ErrorAs(t, err, &m, px)
	}
	_, err := Calibrate(300, 0)
	assert.Error(t, err)
	assert.InDelta(t, 2*96/25.4, float64(GuessScreen(2)), 1e-12)
}

// ISO 4217 (HUF: the standard says 2 where one library prints 0).
func TestMinorDigits(t *testing.T) {
	for _, r := range table(t, "currency_minor_digits.csv") {
		d, ok := MinorDigits(r["iso4217"])
		assert.True(t, ok)
		assert.Equal(t, int(num(t, r["iso4217_minor_units_memory"])), d, r["iso4217"])
	}
	for _, bad := range []string{"", "eur", "EURO", "€", "E1R"} {
		_, ok := MinorDigits(bad)
		assert.False(t, ok, bad)
	}
}

func TestMoneyIsPrintedPlainly(t *testing.T) {
	d := decimal.RequireFromString
	assert.Equal(t, "EUR\u00a033.00", Money(d("33"), "EUR", 2))
	assert.Equal(t, "JPY\u00a01234", Money(d("1234"), "JPY", 0))
	assert.Equal(t, "KWD\u00a01.500", Money(d("1.5"), "KWD", 3))
	assert.Equal(t, "EUR\u00a01\u00a0234\u00a0567.80", Money(d("1234567.8"), "EUR", 2))
	assert.Equal(t, "about EUR\u00a00.113", About(d("0.1125"), "EUR", 2))
	assert.Equal(t, "\u22120.11", Figure(d("-0.11"), 2))
	assert.Equal(t, "0.00", Figure(d("-0.004"), 2))
	// Half away from zero, and exact where binary fractions are not.
	assert.Equal(t, "2.68", RoundMoney(d("2.675"), 2).String())
	assert.Equal(t, "-2.68", RoundMoney(d("-2.675"), 2).String())
	assert.Equal(t, "2.67", RoundMoney(d("2.665"), 2).String())
}
