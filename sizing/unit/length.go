package unit

import (
	"fmt"
	"strconv"
	"strings"
)

// Measure is a unit of length a person can type.
type Measure string

// The measures understood.
const (
	Millimetres Measure = "mm"
	Inches      Measure = "in"
)

// mmPer holds what each spelling of a unit is in mm. The inch is exact (1959);
// its spellings include the double prime and what keyboards make of it.
var mmPer = map[string]float64{
	"mm": 1, "cm": 10, "m": 1000,
	"in": MMPerInch, "inch": MMPerInch, "inches": MMPerInch,
	`"`: MMPerInch, "″": MMPerInch, "”": MMPerInch, "''": MMPerInch,
}

// vulgar holds the fractions that have a character of their own.
var vulgar = strings.NewReplacer(
	"¼", " 1/4", "½", " 1/2", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⁄", "/", "\u00a0", " ", "\u202f", " ",
)

// ParseLength reads a length as people write it: "32", "32 mm", "3.2cm",
// "1.25 in", `1 1/4"`, "1,25 in" (a decimal comma). A bare number is in the
// measure given. Negative numbers, zero and anything unclear are a *Mistake.
func ParseLength(text string, bare Measure) (MM, error) {
	t := strings.TrimSpace(vulgar.Replace(strings.ToLower(text)))
	if t == "" {
		return 0, &Mistake{What: "No length is given.", Do: `Type one such as "32 mm" or "1.25 in".`}
	}
	digits, name := splitUnit(t)
	if name == "" {
		name = string(bare)
	}
	per, ok := mmPer[name]
	if !ok {
		return 0, unclear(text, fmt.Sprintf("%q is not a unit known here.", name))
	}
	n, err := parseNumber(digits)
	if err != nil {
		return 0, unclear(text, err.Error())
	}
	if !(n > 0) {
		return 0, unclear(text, "A length is more than nothing.")
	}
	return MM(n * per), nil
}

// unclear is the mistake of a length that cannot be read.
func unclear(text, why string) *Mistake {
	return &Mistake{
		What: fmt.Sprintf("%q cannot be read as a length: %s", strings.TrimSpace(text), why),
		Do:   `Type one such as "32 mm", "1.25 in" or "1 1/4 in".`,
	}
}

// splitUnit cuts "1 1/4 in" into "1 1/4" and "in".
func splitUnit(t string) (digits, name string) {
	cut := strings.LastIndexAny(t, "0123456789") + 1
	for cut < len(t) && (t[cut] == '.' || t[cut] == ',' || t[cut] == '/') {
		cut++
	}
	name = strings.TrimSpace(t[cut:])
	if name != "." {
		name = strings.TrimSuffix(name, ".")
	}
	return strings.TrimSpace(t[:cut]), name
}

// parseNumber reads "1.25", "1,25", "5/4" or "1 1/4". Its errors are sentences.
func parseNumber(t string) (float64, error) {
	parts := strings.Fields(t)
	switch len(parts) {
	case 1:
		if strings.Contains(t, "/") {
			return parseFraction(t)
		}
		return parseDecimal(t)
	case 2:
		if !strings.Contains(parts[1], "/") || strings.ContainsAny(parts[0], ".,/") {
			return 0, fmt.Errorf("there are two numbers in it.")
		}
		whole, err := parseDecimal(parts[0])
		if err != nil {
			return 0, err
		}
		rest, err := parseFraction(parts[1])
		if err == nil && (rest >= 1 || whole < 0) {
			err = fmt.Errorf("a whole number is followed by a fraction below one.")
		}
		return whole + rest, err
	default:
		return 0, fmt.Errorf("there is no one number in it.")
	}
}

func parseFraction(t string) (float64, error) {
	over, under, _ := strings.Cut(t, "/")
	a, err1 := strconv.ParseUint(over, 10, 16)
	b, err2 := strconv.ParseUint(under, 10, 16)
	if err1 != nil || err2 != nil || b == 0 {
		return 0, fmt.Errorf("%q is no fraction.", t)
	}
	return float64(a) / float64(b), nil
}

// parseDecimal takes a point or a comma before the decimals, not both.
func parseDecimal(t string) (float64, error) {
	if strings.Count(t, ",")+strings.Count(t, ".") > 1 {
		return 0, fmt.Errorf("it has more than one point or comma, so it could mean two things.")
	}
	t = strings.Replace(t, ",", ".", 1)
	if strings.Trim(t, "+-0123456789.") != "" || len(t) > 12 {
		return 0, fmt.Errorf("%q is no number.", t)
	}
	n, err := strconv.ParseFloat(t, 64)
	if err != nil {
		return 0, fmt.Errorf("%q is no number.", t)
	}
	return n, nil
}

// InMM prints a length in mm with at most the decimals given: "32 mm".
func InMM(m MM, decimals int) string { return trimmed(float64(m), decimals) + " mm" }

// InMM2 prints an area in mm2 with at most the decimals given: "0.25 mm²".
func InMM2(mm2 float64, decimals int) string { return trimmed(mm2, decimals) + " mm²" }

// InInches prints a length in inches with two decimals: "1.26 in".
func InInches(m MM) string { return strconv.FormatFloat(m.Inches(), 'f', 2, 64) + " in" }

// InBoth prints a size in both measures, mm to a tenth: "32 mm (1.26 in)".
func InBoth(m MM) string { return InMM(m, 1) + " (" + InInches(m) + ")" }

// Length is a length that is shown: as a number to draw with, and in words.
type Length struct {
	MM       MM      `json:"mm"`
	Inches   float64 `json:"inches"`
	InMM     string  `json:"inMM"`     // "27.2 mm"
	InInches string  `json:"inInches"` // "1.07 in"
}

// ShownBy returns a width by a height, the unit said once: "35.5 × 38 mm" and
// "1.40 × 1.50 in".
func ShownBy(w, h MM) (mm, inches string) {
	a, b := Shown(w), Shown(h)
	by := func(w, h string) string {
		number, _, _ := strings.Cut(w, " ")
		return number + " × " + h
	}
	return by(a.InMM, b.InMM), by(a.InInches, b.InInches)
}

// finer is the length in mm below which a hundredth of one is shown.
const finer MM = 10

// Shown returns a length to be shown.
func Shown(m MM) Length {
	decimals := 1
	if m < finer {
		decimals = 2
	}
	return Length{MM: m, Inches: m.Inches(), InMM: InMM(m, decimals), InInches: InInches(m)}
}

// trimmed prints a number with at most some decimals and no trailing zeros.
func trimmed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
