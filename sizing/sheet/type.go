package sheet

import (
	"bytes"
	"slices"
	"strings"
	"unicode"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// Type is how text is set.
type Type struct {
	Size   float64 // points
	Weight Weight
	Colour colour.RGB8
}

// mmPerPoint is the typographic point of the file format, 1/72 inch.
const mmPerPoint = 25.4 / 72

// Leading is the usual way from line to line.
func (t Type) Leading() unit.MM { return unit.MM(t.Size * mmPerPoint * 1.32) }

// Cap is about the height of its capitals.
func (t Type) Cap() unit.MM { return unit.MM(t.Size * mmPerPoint * 0.714) }

// face sets the type in a face, which the file learns of with its first use.
func (d *Document) face(i int, t Type) {
	if d.used[i] == nil {
		// The writer scribbles on the bytes it reads from.
		d.pdf.AddUTF8FontFromBytes(keyOf(i), "", bytes.Clone(d.fonts.faces[i].file.Data))
		d.used[i] = &strings.Builder{}
	}
	d.pdf.SetFont(keyOf(i), "", t.Size)
}

// Text sets one line from x on, its base line at y, and returns its width.
func (d *Document) Text(x, y unit.MM, t Type, s string) unit.MM {
	s = Clean(s)
	d.heed(s, t.Weight)
	d.pdf.SetTextColor(int(t.Colour.R), int(t.Colour.G), int(t.Colour.B))
	from := x
	for _, r := range d.fonts.runs(s, t.Weight) {
		d.face(r.face, t)
		d.pdf.Text(float64(x), float64(y), r.text)
		d.used[r.face].WriteString(r.text)
		x += t.wide(d.fonts.width(r.text, t.Weight))
	}
	return x - from
}

// Right sets one line that ends at x.
func (d *Document) Right(x, y unit.MM, t Type, s string) {
	d.Text(x-d.Width(t, s), y, t, s)
}

// Centred sets one line with its middle at x.
func (d *Document) Centred(x, y unit.MM, t Type, s string) {
	d.Text(x-d.Width(t, s)/2, y, t, s)
}

// upright sets one line that reads from below, its middle at a height.
func (d *Document) upright(x, y unit.MM, t Type, s string) {
	d.pdf.TransformBegin()
	d.pdf.TransformRotate(90, float64(x), float64(y))
	d.Centred(x, y, t, s)
	d.pdf.TransformEnd()
}

// Width is the width of one line.
func (d *Document) Width(t Type, s string) unit.MM { return d.widthOf(t, Clean(s)) }

func (d *Document) widthOf(t Type, clean string) unit.MM {
	return t.wide(d.fonts.width(clean, t.Weight))
}

// wide brings thousandths of the size to mm.
func (t Type) wide(thousandths int) unit.MM {
	return unit.MM(float64(thousandths) / 1000 * t.Size * mmPerPoint)
}

// heed keeps what the person must be told of a line that is set.
func (d *Document) heed(clean string, w Weight) {
	for _, r := range clean {
		if d.fonts.faceFor(r, w) < 0 {
			d.missing = with(d.missing, r)
		} else if name := unjoinedScript(r); name != "" {
			d.unjoined = with(d.unjoined, name)
		}
	}
}

func with[T comparable](all []T, one T) []T {
	if slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}

// Cut shortens a line to a width, with an ellipsis where something is left out.
func (d *Document) Cut(t Type, width unit.MM, s string) string {
	s = Clean(s)
	if d.widthOf(t, s) <= width {
		return s
	}
	all := []rune(s)
	low, high := 0, len(all) // the first low letters fit
	for low < high {
		mid := (low + high + 1) / 2
		if d.widthOf(t, string(all[:mid])+"…") <= width {
			low = mid
		} else {
			high = mid - 1
		}
	}
	return strings.TrimRight(string(all[:low]), " ") + "…"
}

// Wrap breaks text into lines of a width: at spaces, in scripts without spaces
// anywhere, and within a word that is wider than a line.
func (d *Document) Wrap(t Type, width unit.MM, s string) []string {
	var lines []string
	line, room := "", width
	for _, w := range pieces(Clean(s)) {
		wide := d.widthOf(t, w)
		if line != "" && wide-d.trailing(t, w) > room {
			lines = append(lines, strings.TrimRight(line, " "))
			line, room = "", width
		}
		for wide-d.trailing(t, w) > width {
			head := d.head(t, width, w)
			lines = append(lines, w[:head])
			w = w[head:]
			wide = d.widthOf(t, w)
		}
		line += w
		room -= wide
	}
	if line = strings.TrimRight(line, " "); line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// trailing is the width of the space at the end of a piece.
func (d *Document) trailing(t Type, piece string) unit.MM {
	if strings.HasSuffix(piece, " ") {
		return d.widthOf(t, " ")
	}
	return 0
}

// head is how many bytes of a word fit a width, one letter at least.
func (d *Document) head(t Type, width unit.MM, word string) int {
	sum, end := unit.MM(0), 0
	for i, r := range word {
		sum += d.widthOf(t, string(r))
		if sum > width && i > 0 {
			return i
		}
		end = i + len(string(r))
	}
	return end
}

// pieces are the stretches that a line may end after.
func pieces(s string) []string {
	var all []string
	from := 0
	for i, r := range s {
		end := i + len(string(r))
		if r == ' ' || unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Thai, unicode.Hangul) {
			all = append(all, s[from:end])
			from = end
		}
	}
	if from < len(s) {
		all = append(all, s[from:])
	}
	return all
}

// Block sets text in lines of a width, the first base line at y, and returns
// the base line that would come next.
func (d *Document) Block(x, y, width unit.MM, t Type, s string) unit.MM {
	for _, line := range d.Wrap(t, width, s) {
		d.Text(x, y, t, line)
		y += t.Leading()
	}
	return y
}
