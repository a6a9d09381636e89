package sheet

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

// board is what layers are drawn on, in mm from the upper left of the pin's box,
// y down.
type board interface {
	// layer begins a layer with an id of plain letters and a name for people.
	layer(id, name string, draw func())
	fill(c colour.RGB8, areas []trace.Area)
	border(p Pen, areas []trace.Area)
	line(p Pen, places ...[2]unit.MM)
	circle(p Pen, x, y, r unit.MM)
	// ellipse is turned clockwise by so many degrees.
	ellipse(p Pen, x, y, rx, ry unit.MM, turn float64)
	box(c colour.RGB8, x, y, w, h unit.MM)
	// text stands with its middle at x, its base line at y; upright it reads from
	// below.
	text(x, y unit.MM, size unit.MM, upright bool, s string)
}

// layersMargin is what lies round the pin for its measures, mm.
const layersMargin unit.MM = 16

// Pens of layers: a colour each that no art is likely to have alone.
var (
	cutPen     = Pen{Width: 0.1, Colour: colour.RGB8{R: 226, B: 118}}
	postPen    = Pen{Width: 0.1, Colour: colour.RGB8{G: 120, B: 220}}
	measurePen = Pen{Width: 0.1, Colour: colour.RGB8{R: 60, G: 60, B: 60}}
)

// Layers of a pin at true size: outline and lines filled with the plating, each
// colour on top of them, then what only explains it. Curves that two layers
// share are the same in both.
type Layers struct{ Spec }

// drawOn draws every layer, the lowest first.
func (l *Layers) drawOn(b board) {
	sh := l.Shapes
	b.layer("outline", "outline", func() { b.fill(l.Metal, sh.Outline.Areas) })
	b.layer("lines", "metal lines", func() { b.fill(l.Metal, sh.Metal.Areas) })
	for _, faces := range [][]trace.Face{sh.Enamel, sh.Printed} {
		for i := range faces {
			f := &faces[i]
			no, rgb, name := l.named(f)
			kind := "colour"
			if f.Role == reduce.Printed {
				kind = "print"
			}
			b.layer(idOf(kind, no, name), fmt.Sprintf("%d %s", no, name), func() { b.fill(rgb, f.Areas) })
		}
	}
	if len(sh.CutOuts.Areas) > 0 {
		b.layer("cut-outs", "cut-outs, right through", func() { b.border(cutPen, sh.CutOuts.Areas) })
	}
	l.chainOn(b)
	l.postsOn(b)
	l.stampOn(b)
	b.layer("measures", "measures in mm", func() { l.measuresOn(b) })
}

// named is the number, the colour and the name of a face in this version.
func (l *Layers) named(f *trace.Face) (int, colour.RGB8, string) {
	for _, c := range l.Asked.Colours {
		if c.Flat == f.Flat && c.Role != reduce.Metal {
			return c.No, c.RGB, Clean(c.Name)
		}
	}
	return 0, f.RGB, Clean(f.Name)
}

// idOf is an id that people can read too: kind, number, and what of the name is
// of plain letters. The number keeps it apart from all others.
func idOf(kind string, no int, name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') })
	id := kind + "-" + strconv.Itoa(no)
	for _, w := range words {
		if len(id)+len(w) > 60 {
			break
		}
		id += "-" + w
	}
	return id
}

func (l *Layers) chainOn(b board) {
	if len(l.Chain) == 0 {
		return
	}
	b.layer("chain", "rings and chain", func() {
		for _, o := range l.Chain {
			mm := l.Badge.Scale.MM
			wire := mm(o.Wire)
			b.ellipse(Pen{Width: wire, Colour: l.Metal}, mm(o.X-l.Badge.Outline[0]), mm(o.Y-l.Badge.Outline[1]),
				max(mm(o.Long)/2-wire/2, 0.05), max(mm(o.Wide)/2-wire/2, 0.05), degreesOf(o.Angle))
		}
	})
}

// postsOn draws what holds the pin, seen through it from the front.
func (l *Layers) postsOn(b board) {
	if len(l.Back.Posts) == 0 {
		return
	}
	b.layer("posts", "posts, seen through from the front", func() {
		for i, p := range l.Back.Posts {
			if l.Back.Bar > 0 {
				w, h := l.Back.Bar/2, barThick/2
				if l.Back.Upright {
					w, h = h, w
				}
				b.line(postPen, [2]unit.MM{p.X - w, p.Y - h}, [2]unit.MM{p.X + w, p.Y - h}, [2]unit.MM{p.X + w, p.Y + h}, [2]unit.MM{p.X - w, p.Y + h}, [2]unit.MM{p.X - w, p.Y - h})
				continue
			}
			b.circle(postPen, p.X, p.Y, l.Back.Pad/2)
			b.circle(postPen, p.X, p.Y, l.Back.Clutch/2)
			b.line(postPen, [2]unit.MM{p.X - 1, p.Y}, [2]unit.MM{p.X + 1, p.Y})
			b.line(postPen, [2]unit.MM{p.X, p.Y - 1}, [2]unit.MM{p.X, p.Y + 1})
			b.text(p.X+1.2, p.Y-0.6, 2, false, strconv.Itoa(l.number(i)))
		}
	})
}

// stampOn draws the back stamp, seen through from the front: left is right.
func (l *Layers) stampOn(b board) {
	st := l.Stamped
	if !st.Struck() {
		return
	}
	b.layer("back-stamp", "back stamp, seen through from the front", func() {
		pen := Pen{Width: max(st.Stroke, 0.05), Colour: postPen.Colour}
		for _, way := range st.Strokes() {
			var places [][2]unit.MM
			for _, p := range way {
				places = append(places, [2]unit.MM{st.Middle.X - unit.MM(p.X), st.Middle.Y + unit.MM(p.Y)})
			}
			b.line(pen, places...)
		}
		if st.Mark == nil || l.Mark == nil {
			return
		}
		rowsOf(l.Mark, func(x, y, w, h float64) {
			side := st.Mark.Height / unit.MM(l.Mark.H)
			right := st.Middle.X + side*unit.MM(l.Mark.W)/2
			b.box(postPen.Colour, right-side*unit.MM(x+w), st.Middle.Y-st.H/2+side*unit.MM(y), side*unit.MM(w), side*unit.MM(h))
		})
	})
}

// measuresOn draws width and height beside the pin.
func (l *Layers) measuresOn(b board) {
	w, h := l.Shapes.Width, l.Shapes.Height
	below, left := h+6, unit.MM(-6)
	for _, x := range []unit.MM{0, w} {
		b.line(measurePen, [2]unit.MM{x, h + 1}, [2]unit.MM{x, below + 1.5})
		b.line(measurePen, [2]unit.MM{x - 0.7, below + 0.7}, [2]unit.MM{x + 0.7, below - 0.7})
	}
	for _, y := range []unit.MM{0, h} {
		b.line(measurePen, [2]unit.MM{-1, y}, [2]unit.MM{left - 1.5, y})
		b.line(measurePen, [2]unit.MM{left - 0.7, y + 0.7}, [2]unit.MM{left + 0.7, y - 0.7})
	}
	b.line(measurePen, [2]unit.MM{0, below}, [2]unit.MM{w, below})
	b.line(measurePen, [2]unit.MM{left, 0}, [2]unit.MM{left, h})
	b.text(w/2, below+4, 2.8, false, unit.InMM(w, 2))
	b.text(left-1.5, h/2, 2.8, true, unit.InMM(h, 2))
}

// PDF is the layers as a PDF, which readers show and hide by their names.
func (l *Layers) PDF(fonts *Fonts) (Print, error) {
	date, err := time.Parse(time.DateOnly, l.Date)
	if err != nil {
		return Print{}, &reduce.Refusal{What: fmt.Sprintf("%q is no date for a drawing.", l.Date), Do: "Give one such as 2026-03-02."}
	}
	d := NewDocument(Meta{Title: l.title() + ": layers", Subject: "Curves of an enamel pin at true size, a layer each", Language: "en", Date: date}, fonts)
	d.AddPage(l.Shapes.Width+2*layersMargin, l.Shapes.Height+2*layersMargin)
	l.drawOn(&pdfBoard{d, l.Shapes, Stand{X: layersMargin, Y: layersMargin, Scale: 1}})
	file, err := d.Bytes()
	return Print{file, d.Pages(), d.Notes()}, err
}

// SVG is the layers as SVG.
func (l *Layers) SVG() []byte {
	b := &svgBoard{sh: l.Shapes}
	b.begin(l.title())
	l.drawOn(b)
	return []byte(b.String() + "</svg>\n")
}
