package card

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// CardPaper is what cards are printed on.
type CardPaper string

// The papers; the empty one is a sheet of the card's own, for a print shop.
const (
	Alone  CardPaper = ""
	A4     CardPaper = "a4"
	Letter CardPaper = "letter"
)

// CardSheet is how cards lie on paper.
type CardSheet struct {
	Paper  CardPaper `json:"paper,omitempty"`
	Gutter unit.MM   `json:"gutter,omitempty"` // between the cuts of two cards; twice the bleed at least
}

// Marks of the cut: thin lines outside the bleed.
const (
	MarkLong  unit.MM = 4
	MarkOff   unit.MM = 1 // from the bleed, or the cut where there is no bleed
	MarkThick unit.MM = 0.1
	// paperRim is what office printers leave bare (common practice).
	paperRim unit.MM = 4
)

// Imposed is cards on one sheet: the upper left of each cut card, and the marks
// of the cuts, x1, y1, x2, y2 each.
type Imposed struct {
	W      unit.MM      `json:"w"`
	H      unit.MM      `json:"h"`
	Places []CardPlace  `json:"places"`
	Marks  [][4]unit.MM `json:"marks"`
	Gutter unit.MM      `json:"gutter"`
	Says   string       `json:"says"`
}

// Impose lays as many cards as go on a sheet, the sheet upright or lying; upright
// when as many go on it.
func Impose(l *LaidCard, s CardSheet) (*Imposed, error) {
	rim := l.Bleed + MarkOff + MarkLong
	if s.Paper == Alone {
		m := &Imposed{W: l.W + 2*(rim+1), H: l.H + 2*(rim+1)}
		m.fill(l, 1, 1)
		m.Says = fmt.Sprintf("One card on a sheet of its own, %s by %s.", unit.InMM(m.W, 1), unit.InMM(m.H, 1))
		return m, nil
	}
	w, h := unit.MM(210), unit.MM(297) // ISO 216
	name := "A4"
	if s.Paper == Letter {
		w, h, name = 215.9, 279.4, "Letter" // ANSI/ASME Y14.1, size A
	}
	gutter := max(s.Gutter, 2*l.Bleed)
	many := func(paper, card unit.MM) int {
		return int((paper - 2*(rim+paperRim) + gutter + 1e-9) / (card + gutter))
	}
	up := many(w, l.W) * many(h, l.H)
	across := many(h, l.W) * many(w, l.H)
	if max(up, across) < 1 {
		return nil, &reduce.Refusal{What: fmt.Sprintf("A card this large does not go on %s with its marks.", name), Do: "Print it on a sheet of its own."}
	}
	stands := "upright"
	if across > up {
		w, h, stands = h, w, "lying"
	}
	m := &Imposed{W: w, H: h, Gutter: gutter}
	m.fill(l, many(w, l.W), many(h, l.H))
	m.Says = fmt.Sprintf("%d cards on %s, %s, %s apart.", len(m.Places), name, stands, unit.InMM(gutter, 1))
	return m, nil
}

// fill lays rows of cards in the middle of the sheet.
func (m *Imposed) fill(l *LaidCard, cols, rows int) {
	wide := l.W*unit.MM(cols) + m.Gutter*unit.MM(cols-1)
	high := l.H*unit.MM(rows) + m.Gutter*unit.MM(rows-1)
	x0, y0 := (m.W-wide)/2, (m.H-high)/2
	for r := range rows {
		for c := range cols {
			m.Places = append(m.Places, CardPlace{x0 + (l.W+m.Gutter)*unit.MM(c), y0 + (l.H+m.Gutter)*unit.MM(r)})
		}
	}
	off := l.Bleed + MarkOff
	for c := range cols {
		for _, x := range []unit.MM{m.Places[c].X, m.Places[c].X + l.W} {
			m.mark(x, y0-off-MarkLong, x, y0-off)
			m.mark(x, y0+high+off, x, y0+high+off+MarkLong)
		}
	}
	for r := range rows {
		for _, y := range []unit.MM{m.Places[r*cols].Y, m.Places[r*cols].Y + l.H} {
			m.mark(x0-off-MarkLong, y, x0-off, y)
			m.mark(x0+wide+off, y, x0+wide+off+MarkLong, y)
		}
	}
}

// mark adds a line once: cards without a gutter share a cut.
func (m *Imposed) mark(x1, y1, x2, y2 unit.MM) {
	for _, o := range m.Marks {
		if near(o, [4]unit.MM{x1, y1, x2, y2}) {
			return
		}
	}
	m.Marks = append(m.Marks, [4]unit.MM{x1, y1, x2, y2})
}

func near(a, b [4]unit.MM) bool {
	for i := range a {
		if d := a[i] - b[i]; d > 1e-6 || d < -1e-6 {
			return false
		}
	}
	return true
}
