package colourlist

import (
	"strings"
	"unicode"
)

// White is the white that CIELAB values hang on.
type White string

// The whites that this tool knows, for the 2-degree observer.
const (
	Unstated White = ""
	D50      White = "D50" // print, most charts
	D65      White = "D65" // screens, daylight
)

// field is what a column holds.
type field int

const (
	code field = iota
	name
	hex
	rgb // all three in one cell
	red
	green
	blue
	lab // all three in one cell
	labL
	labA
	labB
	white
	fields
)

// columns says where each field stands, counted from 0; -1 is nowhere.
type columns struct {
	at    [fields]int
	white White
	// torn is true when headers name both whites.
	torn bool
	// wide is true when a header speaks of the 10-degree observer.
	wide bool
	// titles are the header's cells; none without a header.
	titles []string
}

func noColumns() columns {
	var c columns
	for f := range c.at {
		c.at[f] = -1
	}
	return c
}

func (c *columns) has(all ...field) bool {
	for _, f := range all {
		if c.at[f] < 0 {
			return false
		}
	}
	return true
}

func (c *columns) hasLab() bool { return c.has(lab) || c.has(labL, labA, labB) }
func (c *columns) hasRGB() bool { return c.has(hex) || c.has(rgb) || c.has(red, green, blue) }

// words that a header may use, once fillers are dropped.
var words = map[string]field{
	"code": code, "no": code, "nr": code, "number": code, "num": code, "ref": code, "reference": code, "id": code,
	"sku": code, "item": code, "item no": code, "item number": code, "article": code, "code no": code, "code number": code, "ref no": code, "key": code,
	"nummer": code, "artikel": code, "artikelnummer": code, "farbnummer": code, "codice": code, "código": code, "色号": code, "编号": code,
	"name": name, "description": name, "title": name, "label": name,
	"farbe": name, "farbname": name, "bezeichnung": name, "nom": name, "couleur": name, "nombre": name, "nome": name, "名称": name, "颜色": name,
	"hex": hex, "hex code": hex, "hexcode": hex, "html": hex, "html code": hex, "web": hex, "hex rgb": hex, "rgb hex": hex, "hex srgb": hex, "srgb hex": hex, "hexadecimal": hex,
	"rgb": rgb, "srgb": rgb,
	"r": red, "red": red, "rgb r": red, "srgb r": red, "r rgb": red, "rgb red": red,
	"g": green, "green": green, "rgb g": green, "srgb g": green, "g rgb": green, "rgb green": green,
	"blue": blue, "rgb b": blue, "srgb b": blue, "b rgb": blue, "rgb blue": blue, // a lone b hangs on what stands before it
	"lab": lab, "l a b": lab, "lab l a b": lab,
	"l": labL, "lab l": labL, "l lab": labL, "lightness": labL,
	"a": labA, "lab a": labA, "a lab": labA,
	"lab b": labB, "b lab": labB,
	"white": white, "illuminant": white,
}

// fillers say nothing of what a column holds; alone, those of the first kind
// stand for a name.
var (
	nameFillers = map[string]bool{"colour": true, "color": true, "enamel": true, "shade": true}
	fillers     = map[string]bool{"value": true, "values": true, "the": true, "our": true, "of": true, "chart": true, "maker": true, "makers": true, "maker's": true, "cie": true, "point": true, "observer": true, "deg": true, "2": true, "10": true}
)

// headed reads one header cell: the words that count, and the white it states.
func headed(cell string) (key string, w White) {
	cell = strings.ToLower(printable(cell))
	if cell == "#" || cell == "№" || cell == "n°" || cell == "nº" {
		return "no", Unstated
	}
	var kept []string
	named := false
	for _, word := range strings.FieldsFunc(cell, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' }) {
		switch {
		case word == "d50":
			w = D50
		case word == "d65":
			w = D65
		case word == "cielab":
			kept = append(kept, "lab")
		case nameFillers[word]:
			named = true
		case !fillers[word]:
			kept = append(kept, word)
		}
	}
	if len(kept) == 0 && named {
		return "name", w
	}
	return strings.Join(kept, " "), w
}

// headerOf reads a line as a header. Columns it does not know are left aside;
// of two that say the same, the first counts.
func headerOf(cells []string) columns {
	c := noColumns()
	before := fields
	for i, cell := range cells {
		key, w := headed(cell)
		f, known := words[key]
		if key == "b" {
			f, known = blue, true
			if before == labA {
				f = labB
			}
		}
		if !known {
			before = fields
			continue
		}
		before = f
		c.state(w)
		c.wide = c.wide || w != Unstated && strings.Contains(cell, "10")
		if c.at[f] < 0 {
			c.at[f] = i
		}
	}
	if c.has(labL, labA, blue) && !c.has(labB) && !c.has(red) {
		c.at[labB], c.at[blue] = c.at[blue], -1
	}
	c.titles = cells
	return c
}

// state takes in the white that one header states.
func (c *columns) state(w White) {
	if w == Unstated {
		return
	}
	c.torn = c.torn || c.white != Unstated && c.white != w
	c.white = w
}

// title is what to call a column when speaking of it.
func (c *columns) title(i int) string {
	if i >= 0 && i < len(c.titles) {
		if t := printable(c.titles[i]); t != "" {
			return cut(t, shortText)
		}
	}
	return columnNumber(i)
}
