package unit

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// refused sees that an error is a sentence with what to do.
func refused(t *testing.T, err error, text string) *Mistake {
	t.Helper()
	var m *Mistake
	require.ErrorAs(t, err, &m, "%q", text)
	assert.NotEmpty(t, m.What)
	assert.NotEmpty(t, m.Do)
	return m
}

func TestAmountsAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"1.25": "1.25", " 1,25 ": "1.25", "0": "0", "3": "3", ".5": "0.5", "5.": "5", "0,125": "0.125", "1.250": "1.25",
		"1 250,50": "1250.5", "1'250.5": "1250.5", "12\u00a0345": "12345", "007": "7", "123456789.123456": "123456789.123456",
		"1.250,50": "1250.5", "1,234,567.8": "1234567.8", "1.234.567,8": "1234567.8",
		"€ 1,25": "1.25", "1.250,50 €": "1250.5", "EUR 1.25": "1.25", "1.25 eur": "1.25", "EUR\u00a01.25": "1.25",
	} {
		d, err := ParseAmount(text, "EUR")
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, d.String(), text)
		}
	}
	d, err := ParseAmount("12 %", "%")
	require.NoError(t, err)
	assert.Equal(t, "12", d.String())
}

func TestAnAmountIsReadExactly(t *testing.T) {
	for _, text := range []string{"0.1", "2.675", "123456789.000001", "0.3"} {
		d, err := ParseAmount(text, "")
		require.NoError(t, err)
		want, _ := new(big.Rat).SetString(text) // the standard library's exact fractions
		assert.Zero(t, want.Cmp(d.Rat()), text)
	}
}

func TestUnclearAmountsAreRefusedInWords(t *testing.T) {
	for _, text := range []string{"", " ", ".", "-1", "free", "1.2.3", "1,23.4", "1.2,3.4", "12.34,5", "1,2,3", "1e3", "1.2345678", "1234567890", "USD 3", "3 USD", "12 %", "NaN", "EUR", "$ 3", "3 £", "€", "€-3"} {
		_, err := ParseAmount(text, "EUR")
		refused(t, err, text)
	}
	_, err := ParseAmount("1,250", "EUR")
	assert.Equal(t, `"1,250" can mean two things. Type 1250 or 1.250.`, refused(t, err, "1,250").Error())
}

func TestCountsAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]int{"100": 100, " 7 ": 7, "0": 0, "1 000": 1000, "1,000": 1000, "1.000.000": 1000000, "50 pins": 50, "12'500": 12500, "1000": 1000, "12.345": 12345} {
		n, err := ParseCount(text, "pins")
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, n, text)
		}
	}
	for _, text := range []string{"", "ten", "-3", "2.5", "1,5", "1e3", "12 34x", "99999999999", "NaN", "pins", "0x10", "1,00", "1,,000", ",100", "1,000,", "1000,000", "١٢"} {
		_, err := ParseCount(text, "pins")
		refused(t, err, text)
	}
}

func TestAreasAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]float64{"0.25": 0.25, "0,25 mm²": 0.25, "1.5mm2": 1.5, "2 sq mm": 2, ".3 MM^2": 0.3} {
		a, err := ParseArea(text)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want, a, 1e-12, text)
		}
	}
	for _, text := range []string{"", "mm²", "0", "-1", "small", "0.25 mm", "1/4"} {
		_, err := ParseArea(text)
		refused(t, err, text)
	}
}

func TestForcesAndAnglesAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]float64{"5": 5, "7,5 N": 7.5, "2 newtons": 2, "1newton": 1} {
		n, err := ParseForce(text)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want, n, 1e-12, text)
		}
	}
	for text, want := range map[string]float64{"40": 40, "37.5°": 37.5, "20 deg": 20, "1 degree": 1, "3 degrees": 3} {
		n, err := ParseAngle(text)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want, n, 1e-12, text)
		}
	}
	for _, text := range []string{"", "N", "0", "-1 N", "strong", "5 kg", "5 mm"} {
		_, err := ParseForce(text)
		refused(t, err, text)
		_, err = ParseAngle(text)
		refused(t, err, text)
	}
}

func TestCurrenciesAreCodes(t *testing.T) {
	code, err := ParseCurrency(" eur ")
	require.NoError(t, err)
	assert.Equal(t, "EUR", code)
	for _, text := range []string{"", "€", "EURO", "E1R"} {
		_, err := ParseCurrency(text)
		refused(t, err, text)
	}
}

func TestPercentagesAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]string{"12": "12", "12,5 %": "12.5", "8.1 per cent": "8.1", "0": "0", " 3.4% ": "3.4", "2 Percent": "2", "0,125 %": "0.125", "100 pct": "100"} {
		d, err := ParsePercent(text)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, d.String(), text)
		}
	}
	for _, text := range []string{"", "%", "-3 %", "half", "3 %%", "EUR 3", "1.2.3", "3 ‰", "12 of 100"} {
		_, err := ParsePercent(text)
		refused(t, err, text)
	}
	_, err := ParsePercent("half")
	assert.Equal(t, `"half" cannot be read as a percentage. Type one such as 12.5 %.`, refused(t, err, "half").Error())
}

func TestDaysAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]int{"10": 10, "10 days": 10, " 1 day": 1, "15 Working Days": 15, "0": 0, "3d": 3, "7 workdays": 7, "20 business days": 20, "1 000 days": 1000} {
		n, err := ParseDays(text)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, n, text)
		}
	}
	for _, text := range []string{"", "days", "-2", "2.5 days", "two days", "10 hours", "Monday", "3 months"} {
		_, err := ParseDays(text)
		refused(t, err, text)
	}
	_, err := ParseDays("2 weeks")
	assert.Equal(t, `"2 weeks" is not in days. Count working days: a week has five in most places.`, refused(t, err, "2 weeks").Error())
}
