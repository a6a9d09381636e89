package sheet

import (
	"bytes"
	"fmt"
	"strings"
	"time"
	"unicode"

	"codeberg.org/go-pdf/fpdf"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// Format is a size of sheet.
type Format string

// The formats of office printers (ISO 216; ANSI/ASME Y14.1, size A).
const (
	A4     Format = "a4"
	Letter Format = "letter"
)

// Size is the width and height of an upright sheet; what is not known is A4.
func (f Format) Size() (w, h unit.MM) {
	if f == Letter {
		return 215.9, 279.4
	}
	return 210, 297
}

// Meta is what a document says of itself.
type Meta struct {
	Title    string
	Subject  string
	Language string // BCP 47; empty for en
	// Date is when it is made, for its metadata. It must be given: a document
	// that reads the clock differs from run to run.
	Date time.Time
}

// Document is a PDF in the making.
type Document struct {
	pdf      *fpdf.Fpdf
	fonts    *Fonts
	used     []*strings.Builder // what was set in a face; nil for one that the file does not know
	missing  []rune
	unjoined []string // scripts that stand letter by letter
	widths   map[int]bool
	w, h     unit.MM // of the page at hand
}

// NewDocument begins a document without pages.
func NewDocument(m Meta, fonts *Fonts) *Document {
	w, h := A4.Size()
	pdf := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: float64(w), Ht: float64(h)}})
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(m.Date.UTC())
	pdf.SetModificationDate(m.Date.UTC())
	pdf.SetTitle(Clean(m.Title), true)
	pdf.SetSubject(Clean(m.Subject), true)
	pdf.SetProducer("badgewright", false)
	pdf.SetCreator("badgewright", false)
	pdf.SetLang(languageOr(m.Language))
	pdf.SetDisplayMode("fullpage", "continuous")
	return &Document{pdf: pdf, fonts: fonts, used: make([]*strings.Builder, len(fonts.faces)), widths: map[int]bool{}}
}

// languageOr is a language tag, en for what is none.
func languageOr(tag string) string {
	plain := func(r rune) bool {
		return r == '-' || r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r))
	}
	if tag == "" || len(tag) > 35 || strings.ContainsFunc(tag, func(r rune) bool { return !plain(r) }) {
		return "en"
	}
	return tag
}

// AddPage begins a sheet of a size.
func (d *Document) AddPage(w, h unit.MM) {
	d.w, d.h = w, h
	d.pdf.AddPageFormat("P", fpdf.SizeType{Wd: float64(w), Ht: float64(h)})
}

// Pages is how many sheets there are.
func (d *Document) Pages() int { return d.pdf.PageCount() }

// Trim says where the sheet at hand is cut, for a printer's own programs.
func (d *Document) Trim(x, y, w, h unit.MM) {
	// The format counts from below.
	d.pdf.SetPageBox("trim", float64(x), float64(d.h-y-h), float64(w), float64(h))
}

// Notes is what the person must be told of the document, a sentence each.
func (d *Document) Notes() []string {
	var all []string
	if len(d.missing) > 0 {
		var named []string
		for _, r := range d.missing[:min(len(d.missing), notedLetters)] {
			named = append(named, fmt.Sprintf("%c (U+%04X)", r, r))
		}
		more := ""
		if left := len(d.missing) - len(named); left > 0 {
			more = fmt.Sprintf(" and %d more", left)
		}
		all = append(all, fmt.Sprintf("No font of the papers has %s%s: a stand-in is printed there. Write the name in other letters, or add it by hand.", strings.Join(named, ", "), more))
	}
	for _, script := range d.unjoined {
		all = append(all, fmt.Sprintf("%s stands letter by letter, from left to right, as the papers cannot join or turn it. Have it read by someone who knows it, or write the name in other letters.", script))
	}
	return all
}

// notedLetters is how many letters without a font are named one by one.
const notedLetters = 12

// Bytes ends the document.
func (d *Document) Bytes() ([]byte, error) {
	var b bytes.Buffer
	if err := d.pdf.Output(&b); err != nil {
		return nil, fmt.Errorf("sheet: %w", err)
	}
	return d.mended(b.Bytes())
}

// Pen is how a line is drawn.
type Pen struct {
	Width  unit.MM
	Colour colour.RGB8
	Dash   []unit.MM // lengths of dash and gap by turns; none for a whole line
}

func (d *Document) pen(p Pen) {
	d.pdf.SetLineWidth(float64(p.Width))
	d.pdf.SetDrawColor(int(p.Colour.R), int(p.Colour.G), int(p.Colour.B))
	dash := make([]float64, len(p.Dash))
	for i, l := range p.Dash {
		dash[i] = float64(l)
	}
	d.pdf.SetDashPattern(dash, 0)
}

func (d *Document) brush(c colour.RGB8) { d.pdf.SetFillColor(int(c.R), int(c.G), int(c.B)) }

// Line draws a straight line.
func (d *Document) Line(x1, y1, x2, y2 unit.MM, p Pen) {
	d.pen(p)
	d.pdf.Line(float64(x1), float64(y1), float64(x2), float64(y2))
}

// Rect draws a box; fill and pen may be nil.
func (d *Document) Rect(x, y, w, h unit.MM, fill *colour.RGB8, p *Pen) {
	if style := d.style(fill, p); style != "" {
		d.pdf.Rect(float64(x), float64(y), float64(w), float64(h), style)
	}
}

// Circle draws a circle round x, y; fill and pen may be nil.
func (d *Document) Circle(x, y, r unit.MM, fill *colour.RGB8, p *Pen) {
	if style := d.style(fill, p); style != "" {
		d.pdf.Circle(float64(x), float64(y), float64(r), style)
	}
}

// Polygon draws a closed shape through places x, y; fill and pen may be nil.
func (d *Document) Polygon(places [][2]unit.MM, fill *colour.RGB8, p *Pen) {
	points := make([]fpdf.PointType, len(places))
	for i, q := range places {
		points[i] = fpdf.PointType{X: float64(q[0]), Y: float64(q[1])}
	}
	if style := d.style(fill, p); style != "" {
		d.pdf.Polygon(points, style)
	}
}

func (d *Document) style(fill *colour.RGB8, p *Pen) string {
	style := ""
	if fill != nil {
		d.brush(*fill)
		style += "F"
	}
	if p != nil {
		d.pen(*p)
		style += "D"
	}
	return style
}

// Clip draws within a box only.
func (d *Document) Clip(x, y, w, h unit.MM, draw func()) {
	d.pdf.ClipRect(float64(x), float64(y), float64(w), float64(h), false)
	draw()
	d.pdf.ClipEnd()
}

// Layer draws into a layer that a reader of the file can show and hide by name.
func (d *Document) Layer(name string, draw func()) {
	id := d.pdf.AddLayer(Clean(name), true)
	d.pdf.BeginLayer(id)
	draw()
	d.pdf.EndLayer()
}
