package sheet

import (
	"bytes"
	"image"
	_ "image/jpeg" // a picture on a card may be either
	_ "image/png"

	"badgewright/reduce"
	"badgewright/sizing/card"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

// CardPaper is a card to be printed: how it is laid out, and on what.
type CardPaper struct {
	Card    *card.BackingCard
	Laid    *card.LaidCard
	Imposed *card.Imposed
	Shapes  *trace.Shapes
}

// PDF prints the cards, and says what the person must be told of them. Each kind
// of thing has a layer: art, pin outline, holes and marks of the cut.
func (p CardPaper) PDF(m Meta, fonts *Fonts) (file []byte, notes []string, err error) {
	d := NewDocument(m, fonts)
	d.AddPage(p.Imposed.W, p.Imposed.H)
	if p.Card.Sheet.Paper == card.Alone {
		at := p.Imposed.Places[0]
		d.Trim(at.X, at.Y, p.Laid.W, p.Laid.H)
	}
	picture, err := p.picture(d)
	if err != nil {
		return nil, nil, err
	}
	each := func(layer string, draw func(x, y unit.MM)) {
		d.Layer(layer, func() {
			for _, at := range p.Imposed.Places {
				draw(at.X, at.Y)
			}
		})
	}
	each("card", func(x, y unit.MM) { p.art(d, x, y, picture) })
	if !p.Card.NoAid {
		pen := Pen{Width: card.AidThick, Colour: card.AidRGB}
		each("pin outline", func(x, y unit.MM) {
			d.Stroke(p.Shapes, Stand{X: x + p.Laid.Pin.X, Y: y + p.Laid.Pin.Y, Scale: 1}, pen, p.Shapes.Outline.Areas...)
		})
	}
	each("holes and rounded corners", func(x, y unit.MM) { p.holes(d, x, y) })
	d.Layer("marks of the cut", func() {
		for _, k := range p.Imposed.Marks {
			d.Line(k[0], k[1], k[2], k[3], Pen{Width: card.MarkThick, Colour: card.MarkRGB})
		}
	})
	file, err = d.Bytes()
	return file, d.Notes(), err
}

// picture puts the person's own into the file once, for all its cards.
func (p CardPaper) picture(d *Document) (kept, error) {
	own := p.Card.Picture
	if own == nil {
		return kept{}, nil
	}
	data, err := own.File()
	if err != nil {
		return kept{}, err
	}
	m, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return kept{}, &reduce.Refusal{What: "The picture on the card is damaged.", Do: "Bring it again."}
	}
	return d.keep(m)
}

func (p CardPaper) art(d *Document, x, y unit.MM, picture kept) {
	b := p.Laid.Printed()
	if p.Card.Ground != nil {
		d.Rect(x+b[0], y+b[1], b[2]-b[0], b[3]-b[1], p.Card.Ground, nil)
	}
	if own := p.Card.Picture; own != nil {
		d.Clip(x+b[0], y+b[1], b[2]-b[0], b[3]-b[1], func() {
			_ = d.place(picture, x+own.X, y+own.Y, own.Wide, own.High()) // the document keeps its first error
		})
	}
	for i, t := range p.Laid.Texts {
		own := p.Card.Texts[i]
		d.Text(x+t.X, y+t.Y, Type{Size: own.Points, Weight: weightOf(own.Strong), Colour: own.RGB}, own.Words)
	}
}

func weightOf(strong bool) Weight {
	if strong {
		return Strong
	}
	return Regular
}

// holes are thin rings with a cross in each, so that a punch finds its middle.
func (p CardPaper) holes(d *Document, x, y unit.MM) {
	pen := Pen{Width: card.HoleThick, Colour: card.HoleRGB}
	for _, h := range p.Laid.Holes {
		cx, cy, out := x+h.X, y+h.Y, h.Across/2+card.CrossOut
		d.Circle(cx, cy, h.Across/2, nil, &pen)
		d.Line(cx-out, cy, cx+out, cy, pen)
		d.Line(cx, cy-out, cx, cy+out, pen)
	}
	if h := p.Laid.Hang; h != nil {
		b := p.Laid.HangBox()
		d.rounded(x+b[0], y+b[1], b[2]-b[0], b[3]-b[1], min(h.W, h.H)/2, pen)
	}
	if p.Card.Corner > 0 {
		d.rounded(x, y, p.Laid.W, p.Laid.H, p.Card.Corner, pen)
	}
}

// rounded draws a box with round corners.
func (d *Document) rounded(x, y, w, h, r unit.MM, p Pen) {
	d.pen(p)
	d.pdf.RoundedRect(float64(x), float64(y), float64(w), float64(h), float64(r), "1234", "D")
}

// CardPin is what a card needs to know of a pin in clean curves.
func CardPin(s *trace.Shapes) card.Pin {
	p := card.Pin{W: s.Width, H: s.Height, D: s.PathData(s.Outline.Areas...)}
	var loop []card.CardPlace
	var at trace.Point
	s.Walk(trace.Walker{
		Move: func(to trace.Point) { loop, at = []card.CardPlace{card.CardPlace(to)}, to },
		Line: func(to trace.Point) { loop, at = append(loop, card.CardPlace(to)), to },
		Curve: func(c1, c2, to trace.Point) {
			for k := 1; k <= curveSteps; k++ {
				loop = append(loop, alongCurve(at, c1, c2, to, float64(k)/curveSteps))
			}
			at = to
		},
		Close: func() { p.Loops = append(p.Loops, loop) },
	}, s.Outline.Areas...)
	return p
}

// curveSteps is how finely a curve is parted to see what lies under a pin.
const curveSteps = 6

func alongCurve(a, b, c, d trace.Point, t float64) card.CardPlace {
	u := 1 - t
	mix := func(a, b, c, d unit.MM) unit.MM {
		return unit.MM(float64(u*u*u*float64(a)) + float64(3*u*u*t*float64(b)) + float64(3*u*t*t*float64(c)) + float64(t*t*t*float64(d)))
	}
	return card.CardPlace{X: mix(a.X, b.X, c.X, d.X), Y: mix(a.Y, b.Y, c.Y, d.Y)}
}
