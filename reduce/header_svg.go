package reduce

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf16"
)

// isSVG is true for text whose first element is svg.
func isSVG(b []byte) bool { _, ok := svgTag(b); return ok }

// svgTag returns the attributes of the root element as text.
func svgTag(b []byte) (string, bool) {
	s := plainText(b)
	for {
		s = strings.TrimLeft(s, " \t\r\n")
		switch {
		case strings.HasPrefix(s, "<?"):
			s = after(s, "?>")
		case strings.HasPrefix(s, "<!--"):
			s = after(s[4:], "-->")
		case strings.HasPrefix(s, "<!"):
			s = afterDoctype(s)
		case strings.HasPrefix(s, "<"):
			return rootOf(s[1:])
		default:
			return "", false
		}
	}
}

// plainText drops a byte order mark and turns UTF-16 into UTF-8.
func plainText(b []byte) string {
	little, big := has(b, 0, "\xff\xfe"), has(b, 0, "\xfe\xff")
	if !little && !big {
		return strings.TrimPrefix(string(b), "\ufeff")
	}
	units := make([]uint16, 0, len(b)/2)
	for b = b[2:]; len(b) >= 2; b = b[2:] {
		if little {
			units = append(units, le16(b))
		} else {
			units = append(units, be16(b))
		}
	}
	return string(utf16.Decode(units))
}

func after(s, mark string) string {
	if i := strings.Index(s, mark); i >= 0 {
		return s[i+len(mark):]
	}
	return ""
}

// afterDoctype skips a document type, with its own declarations in brackets.
func afterDoctype(s string) string {
	end, inside := strings.IndexByte(s, '>'), strings.IndexByte(s, '[')
	if inside >= 0 && inside < end {
		return after(after(s, "]"), ">")
	}
	return after(s, ">")
}

// rootOf returns the attributes of an element if it is svg, with or without a prefix.
func rootOf(s string) (string, bool) {
	end := strings.IndexAny(s, " \t\r\n/>")
	if end < 0 {
		return "", false
	}
	name := s[:end]
	if i := strings.IndexByte(name, ':'); i >= 0 {
		name = name[i+1:]
	}
	return s[end:], name == "svg"
}

// readSVG reads width, height and viewBox of the root (SVG 2, section 8). A
// vector drawing is given at the working raster's long side.
func readSVG(f file) (Header, error) {
	tag, _ := svgTag(f.head)
	at := attributes(tag)
	w, h := cssLength(at["width"]), cssLength(at["height"])
	vw, vh := viewBox(at["viewBox"])
	switch {
	case vw <= 0 || vh <= 0:
		if w <= 0 || h <= 0 {
			w, h = 0, 0
		}
	case w <= 0 && h <= 0:
		w, h = vw, vh
	case w <= 0:
		w = h * vw / vh
	case h <= 0:
		h = w * vh / vw
	}
	if f.whole() && !strings.Contains(plainText(f.head), ">") {
		return Header{}, cutShort
	}
	return atVectorSide(w, h), nil
}

func atVectorSide(w, h float64) Header {
	long := max(w, h)
	if w <= 0 || h <= 0 || math.IsInf(long, 0) || math.IsNaN(long) {
		return Header{}
	}
	side := func(v float64) int { return max(1, int(math.Round(v/long*vectorSide))) }
	return Header{W: side(w), H: side(h)}
}

// attributes reads name="value" pairs up to the end of the tag.
func attributes(s string) map[string]string {
	at := map[string]string{}
	for {
		s = strings.TrimLeft(s, " \t\r\n")
		eq := strings.IndexByte(s, '=')
		if eq <= 0 || strings.ContainsAny(s[:eq], "<>") {
			return at
		}
		name := strings.TrimSpace(s[:eq])
		s = strings.TrimLeft(s[eq+1:], " \t\r\n")
		if s == "" || s[0] != '"' && s[0] != '\'' {
			return at
		}
		end := strings.IndexByte(s[1:], s[0])
		if end < 0 {
			return at
		}
		at[name] = s[1 : 1+end]
		s = s[2+end:]
	}
}

// cssPixels gives the absolute units of CSS in px (CSS Values and Units 4,
// section 6.2: 1in = 96px = 2.54cm).
var cssPixels = map[string]float64{
	"": 1, "px": 1, "in": 96, "cm": 96 / 2.54, "mm": 96 / 25.4, "q": 96 / 101.6, "pt": 96.0 / 72, "pc": 16,
}

// cssLength returns a length in CSS px, or 0 for what depends on the page
// around it (per cent, em) or is no length.
func cssLength(s string) float64 {
	s = strings.ToLower(strings.TrimSpace(s))
	end := len(s)
	for end > 0 && (s[end-1] >= 'a' && s[end-1] <= 'z' || s[end-1] == '%') {
		end--
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(s[:end]), 64)
	per, known := cssPixels[s[end:]]
	if err != nil || !known || !(v > 0) || math.IsInf(v, 0) {
		return 0
	}
	return v * per
}

func viewBox(s string) (w, h float64) {
	parts := strings.FieldsFunc(s, func(r rune) bool { return r == ',' || r == ' ' || r == '\t' || r == '\n' || r == '\r' })
	if len(parts) != 4 {
		return 0, 0
	}
	w, err1 := strconv.ParseFloat(parts[2], 64)
	h, err2 := strconv.ParseFloat(parts[3], 64)
	if err1 != nil || err2 != nil {
		return 0, 0
	}
	return w, h
}
