package trace

import (
	"fmt"
	"html"
	"strconv"
	"strings"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// PathData writes areas as the d of an SVG path, in mm: absolute moves, lines
// and cubics, so that a place two faces share has the same digits in both.
// Fill it by the nonzero or by the even-odd rule.
func (s *Shapes) PathData(areas ...Area) string {
	w := &pathWriter{}
	s.Walk(Walker{
		Move:  func(to Point) { w.step('M', to) },
		Line:  func(to Point) { w.step('L', to) },
		Curve: func(c1, c2, to Point) { w.step('C', c1, c2, to) },
		Close: func() { w.b = append(w.b, 'Z') },
	}, areas...)
	return string(w.b)
}

type pathWriter struct{ b []byte }

func (w *pathWriter) step(letter byte, points ...Point) {
	w.b = append(w.b, letter)
	for i, p := range points {
		if i > 0 {
			w.b = append(w.b, ' ')
		}
		w.number(p.X)
		w.b = append(w.b, ' ')
		w.number(p.Y)
	}
}

// number writes a length to the grid, without idle zeros.
func (w *pathWriter) number(v unit.MM) {
	if v == 0 {
		w.b = append(w.b, '0') // and not -0
		return
	}
	w.b = strconv.AppendFloat(w.b, float64(v), 'f', -1, 64)
}

// Drawing says what the layers of a drawing are called and coloured.
type Drawing struct {
	Title string
	Metal colour.RGB8
	// Paint gives a face its name and colour.
	Paint func(*Face) (name string, rgb colour.RGB8)
}

// SVG writes the shapes as a drawing in mm with a group for the outline, one
// for the metal, and one for each colour and print, in the order they lie on
// each other. The outline is filled with metal too, so that no hair of ground
// shows where a renderer softens the edges of two areas that touch.
func (s *Shapes) SVG(d Drawing) []byte {
	var b strings.Builder
	w, h := trimmed(s.Width), trimmed(s.Height)
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s">`+"\n", w, h, w, h)
	fmt.Fprintf(&b, "<title>%s</title>\n", html.EscapeString(d.Title))
	ids := map[string]bool{}
	s.group(&b, ids, "outline", d.Metal, s.Outline.Areas)
	s.group(&b, ids, "metal", d.Metal, s.Metal.Areas)
	for _, faces := range [][]Face{s.Enamel, s.Printed} {
		for i := range faces {
			name, rgb := d.Paint(&faces[i])
			s.group(&b, ids, name, rgb, faces[i].Areas)
		}
	}
	b.WriteString("</svg>\n")
	return []byte(b.String())
}

// group writes one layer, a path for each area.
func (s *Shapes) group(b *strings.Builder, ids map[string]bool, name string, rgb colour.RGB8, areas []Area) {
	if len(areas) == 0 {
		return
	}
	fmt.Fprintf(b, `<g id="%s" fill="%s" fill-rule="evenodd">`+"\n", idOf(name, ids), rgb.Hex())
	fmt.Fprintf(b, "<title>%s</title>\n", html.EscapeString(name))
	for _, a := range areas {
		fmt.Fprintf(b, `<path d="%s"/>`+"\n", s.PathData(a))
	}
	b.WriteString("</g>\n")
}

// idOf makes an id of plain words that no other group has.
func idOf(name string, ids map[string]bool) string {
	id := strings.Trim(strings.Map(plain, strings.ToLower(name)), "-")
	if id == "" || id[0] <= '9' { // a name of XML begins with a letter
		id = strings.Trim("colour-"+id, "-")
	}
	for n, first := 2, id; ids[id]; n++ {
		id = fmt.Sprintf("%s-%d", first, n)
	}
	ids[id] = true
	return id
}

// plain keeps what an id may hold; anything else stands as a dash.
func plain(r rune) rune {
	if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
		return r
	}
	return '-'
}

func trimmed(v unit.MM) string { return strconv.FormatFloat(float64(v), 'f', 3, 64) }
