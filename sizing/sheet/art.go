package sheet

import (
	"math"
	"strconv"

	"badgewright/reduce/colour"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

// Stand is how and where the curves of a pin stand on a sheet: the upper left
// of its box at X, Y, each of its mm Scale mm long; mirrored left to right as it
// is seen from behind.
type Stand struct {
	X, Y     unit.MM
	Scale    float64
	Mirrored bool
}

// At is where a place of the pin, mm from the upper left of its front, stands
// on the sheet.
func (s Stand) At(shapes *trace.Shapes, x, y unit.MM) (px, py unit.MM) {
	if s.Mirrored {
		x = shapes.Width - x
	}
	return s.X + unit.MM(float64(float64(x)*s.Scale)), s.Y + unit.MM(float64(float64(y)*s.Scale))
}

// Look says what the faces of a pin are coloured.
type Look struct {
	Metal colour.RGB8
	Paint func(*trace.Face) colour.RGB8
}

// Art draws a pin in its colours: all of it in metal, the colours on that, and
// what is printed on top.
func (d *Document) Art(s *trace.Shapes, stand Stand, look Look) {
	d.Fill(s, stand, look.Metal, s.Outline.Areas...)
	for _, faces := range [][]trace.Face{s.Enamel, s.Printed} {
		for i := range faces {
			d.Fill(s, stand, look.Paint(&faces[i]), faces[i].Areas...)
		}
	}
}

// Fill fills areas of a pin.
func (d *Document) Fill(s *trace.Shapes, stand Stand, c colour.RGB8, areas ...trace.Area) {
	if len(areas) == 0 {
		return
	}
	d.brush(c)
	d.drawn(s, stand, "f*", areas)
}

// Stroke draws the borders of areas of a pin; the pen's width is on the sheet.
func (d *Document) Stroke(s *trace.Shapes, stand Stand, p Pen, areas ...trace.Area) {
	if len(areas) == 0 {
		return
	}
	p.Width /= unit.MM(stand.Scale)
	dash := p.Dash
	p.Dash = nil
	for _, l := range dash {
		p.Dash = append(p.Dash, l/unit.MM(stand.Scale))
	}
	w := &writer{d: d, b: []byte("q 1 j ")}
	w.matrix(s, stand)
	w.pen(p)
	w.areas(s, areas)
	w.end("S")
}

// Within draws inside areas of a pin only.
func (d *Document) Within(s *trace.Shapes, stand Stand, areas []trace.Area, draw func()) {
	w := &writer{d: d, b: []byte("q ")}
	w.areasIn(s, stand, areas)
	d.pdf.RawWriteStr(string(w.b) + "W* n\n")
	draw()
	d.pdf.RawWriteStr("Q\n")
}

func (d *Document) drawn(s *trace.Shapes, stand Stand, how string, areas []trace.Area) {
	w := &writer{d: d, b: []byte("q ")}
	w.matrix(s, stand)
	w.areas(s, areas)
	w.end(how)
}

// writer writes a path in the words of the file format.
type writer struct {
	d *Document
	b []byte
}

// pointsPerMM is the file format's unit.
const pointsPerMM = 72 / 25.4

// matrix makes the pin's mm, y down, the unit of what follows: a place that two
// faces share is then written with the same digits in both.
func (w *writer) matrix(s *trace.Shapes, t Stand) {
	k := pointsPerMM * t.Scale
	x, across := float64(t.X)*pointsPerMM, k
	if t.Mirrored {
		x += float64(float64(s.Width) * k)
		across = -k
	}
	w.numbers(9, across, 0, 0, -k, x, float64(w.d.h-t.Y)*pointsPerMM)
	w.b = append(w.b, "cm\n"...)
}

func (w *writer) numbers(decimals int, all ...float64) {
	p := math.Pow10(decimals)
	for _, v := range all {
		w.b = strconv.AppendFloat(w.b, math.Round(v*p)/p+0, 'f', -1, 64)
		w.b = append(w.b, ' ')
	}
}

func (w *writer) pen(p Pen) {
	w.numbers(4, float64(p.Width))
	w.b = append(w.b, "w "...)
	w.numbers(4, float64(p.Colour.R)/255, float64(p.Colour.G)/255, float64(p.Colour.B)/255)
	w.b = append(w.b, "RG ["...)
	for _, l := range p.Dash {
		w.numbers(4, float64(l))
	}
	w.b = append(w.b, "] 0 d "...)
}

func (w *writer) areas(s *trace.Shapes, areas []trace.Area) {
	w.path(s, areas, func(p trace.Point) (float64, float64) { return float64(p.X), float64(p.Y) })
}

// areasIn writes a path in the units of the sheet.
func (w *writer) areasIn(s *trace.Shapes, stand Stand, areas []trace.Area) {
	w.path(s, areas, func(p trace.Point) (float64, float64) {
		x, y := stand.At(s, p.X, p.Y)
		return float64(x) * pointsPerMM, float64(w.d.h-y) * pointsPerMM
	})
}

func (w *writer) path(s *trace.Shapes, areas []trace.Area, at func(trace.Point) (float64, float64)) {
	step := func(letter string, points ...trace.Point) {
		for _, p := range points {
			x, y := at(p)
			w.numbers(4, x, y)
		}
		w.b = append(w.b, letter...)
	}
	s.Walk(trace.Walker{
		Move:  func(to trace.Point) { step("m\n", to) },
		Line:  func(to trace.Point) { step("l\n", to) },
		Curve: func(c1, c2, to trace.Point) { step("c\n", c1, c2, to) },
		Close: func() { step("h\n") },
	}, areas...)
}

func (w *writer) end(how string) {
	w.d.pdf.RawWriteStr(string(w.b) + how + " Q\n")
}
