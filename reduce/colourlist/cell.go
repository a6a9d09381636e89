package colourlist

import (
	"math"
	"strconv"
	"strings"

	"badgewright/reduce/colour"
)

// number reads "12.5", "12,5" or "-12.5", with a hyphen or a true minus.
func number(s string) (float64, bool) {
	const most = 24 // bytes; no number here is longer
	if len(s) > most {
		return 0, false
	}
	s = strings.ReplaceAll(strings.TrimSpace(s), "−", "-")
	if strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		s = strings.Replace(s, ",", ".", 1)
	}
	if s == "" || strings.Trim(s, "0123456789.+-") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

// hexOf reads a colour such as #1a6b8f, also as 1A6B8F, 0x1a6b8f, #18f and
// #1a6b8fff.
func hexOf(s string) (colour.RGB8, *fault) {
	h := strings.ToLower(strings.TrimSpace(s))
	marked := strings.HasPrefix(h, "#") || strings.HasPrefix(h, "0x")
	h = strings.TrimPrefix(strings.TrimPrefix(h, "#"), "0x")
	if len(h) == 8 && strings.HasSuffix(h, "ff") {
		h = h[:6]
	}
	// Three digits without a mark may be six that lost their zeros.
	if c, err := colour.ParseHex(h); err == nil && hexDigits(h) && (marked || len(h) == 6) {
		return c, nil
	}
	const do = "Write # and six digits from 0 to 9 and a to f, such as #1a6b8f."
	switch {
	case h == "":
		return colour.RGB8{}, faultf(do, "There is no colour.")
	case !hexDigits(h):
		return colour.RGB8{}, faultf(do, "%s is not a hex colour.", quoted(s))
	case len(h) == 8:
		return colour.RGB8{}, faultf("Leave the last two digits off; enamel is given as a solid colour.", "%s is a see-through colour.", quoted(s))
	case len(h) < 6 && !marked:
		return colour.RGB8{}, faultf("Table programs drop leading zeros. If that is what was lost, write it as #"+strings.Repeat("0", 6-len(h))+h+".", "%s has %d digits, not six.", quoted(s), len(h))
	}
	return colour.RGB8{}, faultf(do, "%s has %d digits, not six.", quoted(s), len(h))
}

func hexDigits(s string) bool { return strings.Trim(s, "0123456789abcdef") == "" }

// rgbOf reads three channels from 0 to 255.
func rgbOf(cells [3]string) (colour.RGB8, *fault) {
	var v [3]uint8
	for i, s := range cells {
		n, ok := number(s)
		switch {
		case strings.TrimSpace(s) == "":
			return colour.RGB8{}, faultf("Give red, green and blue, each from 0 to 255.", "There is no %s.", [3]string{"red", "green", "blue"}[i])
		case !ok || n != math.Trunc(n) || n < 0 || n > 255:
			return colour.RGB8{}, faultf("Write whole numbers from 0 to 255.", "%s is not an amount of %s.", quoted(s), [3]string{"red", "green", "blue"}[i])
		}
		v[i] = uint8(n)
	}
	return colour.RGB8{R: v[0], G: v[1], B: v[2]}, nil
}

// The bounds of CIELAB that a pigment can have, with room to spare.
const mostAB = 150

// labOf reads CIELAB values and brings them to D65.
func labOf(cells [3]string, w White) (colour.Lab, *fault) {
	var v [3]float64
	for i, s := range cells {
		name := [3]string{"L", "a", "b"}[i]
		n, ok := number(s)
		switch {
		case strings.TrimSpace(s) == "":
			return colour.Lab{}, faultf("Give L, a and b.", "There is no %s.", name)
		case !ok:
			return colour.Lab{}, faultf("Write plain numbers, such as 54.3.", "%s is not a number for %s.", quoted(s), name)
		case i == 0 && (n < 0 || n > 100):
			return colour.Lab{}, faultf("L goes from 0 (black) to 100 (white).", "%s is no L of CIELAB.", quoted(s))
		case i > 0 && math.Abs(n) > mostAB:
			return colour.Lab{}, faultf("a and b go from about -128 to 128.", "%s is no %s of CIELAB.", quoted(s), name)
		}
		v[i] = n
	}
	l := colour.Lab{L: v[0], A: v[1], B: v[2]}
	if w == D50 {
		l = colour.LabFromD50(l)
	}
	return l, nil
}

// triple parts one cell such as "26, 107, 143", "rgb(26 107 143)" or
// "54,3; 12,1; -4,5" into three.
func triple(s string) [3]string {
	s = strings.TrimSpace(s)
	if open := strings.IndexByte(s, '('); open >= 0 && strings.HasSuffix(s, ")") {
		s = s[open+1 : len(s)-1]
	}
	parts := strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == ';' || r == '/' || r == '|' || r == '\t' || r == '\u00a0' })
	if len(parts) != 3 {
		parts = strings.Split(s, ",")
	}
	if len(parts) != 3 {
		return [3]string{s, s, s}
	}
	for i := range parts {
		parts[i] = strings.Trim(parts[i], ", ")
	}
	return [3]string(parts)
}

// quoted shows what a cell said, harmless and short.
func quoted(s string) string {
	return "“" + cut(printable(s), shortText) + "”"
}

// shortText is how much of a cell is shown when speaking of it, characters.
const shortText = 28
