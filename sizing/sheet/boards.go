package sheet

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

func degreesOf(rad float64) float64 { return rad * 180 / math.Pi }

// rowsOf tells the strokes of a mark as boxes, in cells.
func rowsOf(m *sizing.Mark, box func(x, y, w, h float64)) {
	cells, err := m.Cells()
	if err != nil {
		return // it was refused where it was chosen
	}
	for row := range m.H {
		for from := 0; from < m.W; {
			to := from
			for to < m.W && cells[row*m.W+to] {
				to++
			}
			if to > from {
				box(float64(from), float64(row), float64(to-from), 1)
			}
			from = max(to, from+1)
		}
	}
}

// svgBoard draws layers as SVG.
type svgBoard struct {
	strings.Builder
	sh *trace.Shapes
}

// begin opens a drawing whose unit is the mm, with room round the pin.
func (b *svgBoard) begin(title string) {
	w, h, m := b.sh.Width+2*layersMargin, b.sh.Height+2*layersMargin, number(-layersMargin)
	fmt.Fprintf(b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="%s %s %s %s">`+"\n", number(w), number(h), m, m, number(w), number(h))
	fmt.Fprintf(b, "<title>%s</title>\n", html.EscapeString(title))
}

// number writes a length to the grid of the curves, without idle zeros.
func number(v unit.MM) string {
	return strconv.FormatFloat(math.Round(float64(v)*1e4)/1e4+0, 'f', -1, 64)
}

func (b *svgBoard) layer(id, name string, draw func()) {
	fmt.Fprintf(b, "<g id=\"%s\">\n<title>%s</title>\n", id, html.EscapeString(name))
	draw()
	b.WriteString("</g>\n")
}

func (b *svgBoard) fill(c colour.RGB8, areas []trace.Area) {
	for _, a := range areas {
		fmt.Fprintf(b, `<path fill="%s" fill-rule="evenodd" d="%s"/>`+"\n", c.Hex(), b.sh.PathData(a))
	}
}

// stroke is how a pen is said in SVG.
func stroke(p Pen) string {
	return fmt.Sprintf(`fill="none" stroke="%s" stroke-width="%s" stroke-linejoin="round" stroke-linecap="round"`, p.Colour.Hex(), number(p.Width))
}

func (b *svgBoard) border(p Pen, areas []trace.Area) {
	for _, a := range areas {
		fmt.Fprintf(b, `<path %s d="%s"/>`+"\n", stroke(p), b.sh.PathData(a))
	}
}

func (b *svgBoard) line(p Pen, places ...[2]unit.MM) {
	var all []string
	for _, q := range places {
		all = append(all, number(q[0])+","+number(q[1]))
	}
	fmt.Fprintf(b, `<polyline %s points="%s"/>`+"\n", stroke(p), strings.Join(all, " "))
}

func (b *svgBoard) circle(p Pen, x, y, r unit.MM) {
	fmt.Fprintf(b, `<circle %s cx="%s" cy="%s" r="%s"/>`+"\n", stroke(p), number(x), number(y), number(r))
}

func (b *svgBoard) ellipse(p Pen, x, y, rx, ry unit.MM, turn float64) {
	fmt.Fprintf(b, `<ellipse %s cx="%s" cy="%s" rx="%s" ry="%s" transform="rotate(%s %s %s)"/>`+"\n",
		stroke(p), number(x), number(y), number(rx), number(ry), number(unit.MM(turn)), number(x), number(y))
}

func (b *svgBoard) box(c colour.RGB8, x, y, w, h unit.MM) {
	fmt.Fprintf(b, `<rect fill="%s" x="%s" y="%s" width="%s" height="%s"/>`+"\n", c.Hex(), number(x), number(y), number(w), number(h))
}

func (b *svgBoard) text(x, y, size unit.MM, upright bool, s string) {
	turn := ""
	if upright {
		turn = fmt.Sprintf(` transform="rotate(-90 %s %s)"`, number(x), number(y))
	}
	fmt.Fprintf(b, `<text x="%s" y="%s" font-family="sans-serif" font-size="%s" text-anchor="middle" fill="%s"%s>%s</text>`+"\n",
		number(x), number(y), number(size), measurePen.Colour.Hex(), turn, html.EscapeString(Clean(s)))
}

// pdfBoard draws layers as PDF.
type pdfBoard struct {
	d     *Document
	sh    *trace.Shapes
	stand Stand
}

func (b *pdfBoard) layer(_, name string, draw func()) { b.d.Layer(name, draw) }

func (b *pdfBoard) fill(c colour.RGB8, areas []trace.Area) { b.d.Fill(b.sh, b.stand, c, areas...) }

func (b *pdfBoard) border(p Pen, areas []trace.Area) { b.d.Stroke(b.sh, b.stand, p, areas...) }

func (b *pdfBoard) line(p Pen, places ...[2]unit.MM) {
	b.d.pdf.SetLineCapStyle("round")
	for i := 1; i < len(places); i++ {
		b.d.Line(b.stand.X+places[i-1][0], b.stand.Y+places[i-1][1], b.stand.X+places[i][0], b.stand.Y+places[i][1], p)
	}
	b.d.pdf.SetLineCapStyle("butt")
}

func (b *pdfBoard) circle(p Pen, x, y, r unit.MM) {
	b.d.Circle(b.stand.X+x, b.stand.Y+y, r, nil, &p)
}

func (b *pdfBoard) ellipse(p Pen, x, y, rx, ry unit.MM, turn float64) {
	b.d.pen(p)
	b.d.pdf.Ellipse(float64(b.stand.X+x), float64(b.stand.Y+y), float64(rx), float64(ry), -turn, "D")
}

func (b *pdfBoard) box(c colour.RGB8, x, y, w, h unit.MM) {
	b.d.Rect(b.stand.X+x, b.stand.Y+y, w, h, &c, nil)
}

func (b *pdfBoard) text(x, y, size unit.MM, upright bool, s string) {
	t := Type{Size: float64(size) / mmPerPoint, Colour: measurePen.Colour}
	if upright {
		b.d.upright(b.stand.X+x, b.stand.Y+y, t, s)
		return
	}
	b.d.Centred(b.stand.X+x, b.stand.Y+y, t, s)
}
