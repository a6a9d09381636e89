package sheet

import (
	"fmt"
	"time"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/caution"
	"badgewright/sizing/fastener"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

// Spec is all that stands on the spec sheet of one version of a design.
type Spec struct {
	Asked  Asked
	Badge  *sizing.Badge // as struck, its flats in the version's colours
	Shapes *trace.Shapes
	Metal  colour.RGB8 // of the plating
	Back   *fastener.Advice
	// Stamped is where the back stamp goes, nil for none; Mark the artist's own
	// mark on it.
	Stamped *fastener.Stamped
	Mark    *sizing.Mark
	Chain   []sizing.Loop // rings and links as they lie on the drawing, working px
	Hanging []string      // how its parts hang, a sentence each
	// Versions are all versions of the design, in order.
	Versions []SpecVersion
	Cautions []caution.Caution
	Drawing  string // the file it was made from
	Date     string // ISO 8601, where the person is
	Note     string // the person's own sentence to the maker
	Units    Units
	Format   Format
}

// SpecVersion is what is ordered of one version.
type SpecVersion struct {
	Name     string
	Plating  string
	Quantity int
	This     bool // the version of this sheet
}

// Print is a finished file.
type Print struct {
	File  []byte
	Pages int
	Notes []string // what the person must be told, a sentence each
}

// Inks of the sheet: one for what is read, one for what explains it, one for
// what only guides the eye.
var (
	black = colour.RGB8{R: 22, G: 22, B: 24}
	grey  = colour.RGB8{R: 96, G: 96, B: 100}
	hair  = colour.RGB8{R: 186, G: 186, B: 188}
	paper = colour.RGB8{R: 255, G: 255, B: 255}
	plate = colour.RGB8{R: 236, G: 234, B: 229} // the back of a pin
	alarm = colour.RGB8{R: 176, G: 28, B: 36}
)

// Types of the sheet.
var (
	headline = Type{Size: 17, Weight: Strong, Colour: black}
	heading  = Type{Size: 8.5, Weight: Strong, Colour: black}
	body     = Type{Size: 8, Colour: black}
	strong   = Type{Size: 8, Weight: Strong, Colour: black}
	small    = Type{Size: 7, Colour: grey}
)

// Pens of the sheet.
var (
	frameLine = Pen{Width: 0.35, Colour: black}
	thinLine  = Pen{Width: 0.15, Colour: black}
	ruleLine  = Pen{Width: 0.12, Colour: hair}
	edgeLine  = Pen{Width: 0.05, Colour: black} // on art at true size, where it must not add to it
)

// margin is what is left free round a sheet: office printers reach no nearer.
const margin unit.MM = 12

// drafting is a spec sheet being drawn.
type drafting struct {
	*Document
	s     *Spec
	look  Look
	wide  unit.MM // from margin to margin
	foot  unit.MM // where the room of a page ends
	y     unit.MM // how far a page is filled
	notes []string
	// unnumbered says that some area of the view has no number of its own.
	unnumbered bool
	long       []fact // what the first page has no room for as a whole
	// apart says that the true size has sheets of its own.
	apart bool
}

// Print draws the sheet.
func (s Spec) Print(fonts *Fonts) (Print, error) {
	date, err := time.Parse(time.DateOnly, s.Date)
	if err != nil {
		return Print{}, &reduce.Refusal{What: fmt.Sprintf("%q is no date for a sheet.", s.Date), Do: "Give one such as 2026-03-02."}
	}
	w, h := s.Format.Size()
	d := &drafting{Document: NewDocument(s.meta(date), fonts), s: &s, wide: w - 2*margin, foot: h - margin}
	d.look = Look{Metal: s.Metal, Paint: func(f *trace.Face) colour.RGB8 { return f.RGB }}
	d.sheet()
	d.first()
	if d.apart {
		d.trueSheets()
	}
	d.behind()
	d.counted()
	file, err := d.Bytes()
	return Print{file, d.Pages(), append(d.notes, d.Notes()...)}, err
}

func (s *Spec) meta(date time.Time) Meta {
	return Meta{Title: s.title() + ": spec sheet", Subject: "Specification of an enamel pin, to be made as drawn", Language: "en", Date: date}
}

// title is the name of design and version.
func (s *Spec) title() string {
	name := Clean(s.Asked.Design)
	if name == "" {
		name = "A pin without a name"
	}
	if v := Clean(s.Asked.Version); v != "" && len(s.Versions) > 1 {
		name += ", " + v
	}
	return name
}

// sheet begins a page with its frame and head.
func (d *drafting) sheet() {
	d.AddPage(d.s.Format.Size())
	d.Rect(margin-4, margin-4, d.wide+8, d.foot-margin+8, nil, &frameLine)
	if d.Pages() == 1 {
		d.firstHead()
		return
	}
	d.Text(margin, margin+3.4, strong, d.Cut(strong, d.wide-40, d.s.title()))
	d.y = margin + 6
	d.rule()
	d.y += 3
}

// firstHead is the head of the first page.
func (d *drafting) firstHead() {
	const right = 46
	y := margin + 6
	d.name(y, d.wide-right)
	words := "Enamel pin, specification for making"
	if v := Clean(d.s.Asked.Version); v != "" {
		words += ". Version: " + v
	}
	d.Text(margin, y+5.2, body, d.Cut(body, d.wide-right, words))
	d.Right(margin+d.wide, y+5.2, body, "Date: "+d.s.Date)
	d.y = y + 8
	d.rule()
	d.y += 2.5
}

// name sets the name as large as it fits, in two small lines if it must.
func (d *drafting) name(y, width unit.MM) {
	t := headline
	for ; t.Size >= 11; t.Size -= 2 {
		if d.Width(t, d.s.title()) <= width {
			d.Text(margin, y, t, d.s.title())
			return
		}
	}
	lines := d.Wrap(t, width, d.s.title())
	if len(lines) > 2 {
		lines = []string{lines[0], d.Cut(t, width, lines[1]+"…")}
	}
	for i, l := range lines {
		d.Text(margin, y-4.2+unit.MM(i)*t.Leading(), t, l)
	}
}

// rule draws a line across at the present height.
func (d *drafting) rule() { d.Line(margin, d.y, margin+d.wide, d.y, thinLine) }

// counted numbers the sheets once all are there.
func (d *drafting) counted() {
	n := d.Pages()
	for i := 1; i <= n; i++ {
		d.pdf.SetPage(i)
		y, t := margin+unit.MM(3.4), small
		if i == 1 {
			y, t = margin+6, heading
		}
		d.Right(margin+d.wide, y, t, fmt.Sprintf("Sheet %d of %d", i, n))
	}
}

// room begins another page where one has less left than asked for.
func (d *drafting) room(h unit.MM) {
	if d.y+h > d.foot {
		d.sheet()
	}
}

// head writes a heading and what explains it.
func (d *drafting) head(x, y, width unit.MM, title, more string) {
	at := x + d.Text(x, y, heading, d.Cut(heading, width, title)) + 2
	if more != "" && x+width-at > 8 {
		d.Text(at, y, small, d.Cut(small, x+width-at, more))
	}
}
