package card

import (
	"fmt"

	"badgewright/sizing/unit"
)

// Ruler sets a line of words: as the d of an SVG path from 0, 0 on, the base line
// at 0, and how far it reaches: right, above and below its base line.
type Ruler interface {
	Set(words string, points float64, strong bool) Line
}

// Line is a line of words as set.
type Line struct {
	D           string
	W, Up, Down unit.MM
}

// CardHole is a round hole in the card.
type CardHole struct {
	X      unit.MM `json:"x"`
	Y      unit.MM `json:"y"`
	Across unit.MM `json:"across"`
	No     int     `json:"no"` // what the post is called as seen from behind
}

// CardSet is a line of words in its place.
type CardSet struct {
	X   unit.MM    `json:"x"` // left end of its base line
	Y   unit.MM    `json:"y"`
	D   string     `json:"d"`   // from X, Y on
	Box [4]unit.MM `json:"box"` // x0, y0, x1, y1
}

// LaidCard is a card as it is to be printed, cut and pierced.
type LaidCard struct {
	W     unit.MM `json:"w"`
	H     unit.MM `json:"h"`
	Bleed unit.MM `json:"bleed"`
	Safe  unit.MM `json:"safe"`
	// Pin is the upper left of the silhouette, PinW and PinH its sides, Outline
	// its borders from there on.
	Pin     CardPlace  `json:"pin"`
	PinW    unit.MM    `json:"pinW"`
	PinH    unit.MM    `json:"pinH"`
	Outline string     `json:"outline"`
	Holes   []CardHole `json:"holes"`
	Hang    *CardHang  `json:"hang,omitempty"`
	Texts   []CardSet  `json:"texts"`
	// Warnings are what would spoil, the worst first.
	Warnings []CardWarning `json:"warnings"`
	Says     string        `json:"says"`
}

// Lay puts everything in its place.
func Lay(c *BackingCard, p *Pin, r Ruler) (*LaidCard, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	l := &LaidCard{Bleed: c.BleedUsed(), Safe: c.SafeUsed(), PinW: p.W, PinH: p.H, Outline: p.D, Holes: []CardHole{}, Texts: []CardSet{}}
	l.W, l.H = c.Size()
	if h := c.HangUsed(); h.Kind != NoHang {
		l.Hang = &h
	}
	l.Pin = c.pinAt(l)
	for i, q := range p.Pierced {
		l.Holes = append(l.Holes, CardHole{X: l.Pin.X + q.X, Y: l.Pin.Y + q.Y, Across: c.HoleUsed(), No: p.No[i]})
	}
	for _, t := range c.Texts {
		l.Texts = append(l.Texts, set(&t, r))
	}
	l.Warnings = warnings(c, l, p)
	l.Says = l.says(c, p)
	return l, nil
}

// foot is the share of an upright card's height that is left for words below
// the pin (this tool's choice).
const foot = 0.25

// pinAt is the upper left of the silhouette: where it was put, or in the middle
// of the room between the hole to hang by and the words, which on a card that
// lies stand on the right.
func (c *BackingCard) pinAt(l *LaidCard) CardPlace {
	if c.Pin != nil {
		return CardPlace{c.Pin[0] - l.PinW/2, c.Pin[1] - l.PinH/2}
	}
	if l.W > l.H && len(c.Texts) > 0 {
		return c.pinBeside(l)
	}
	top, end := l.Safe, l.H*(1-foot)
	if l.Hang != nil {
		top = max(top, l.Hang.Down+l.Hang.H/2+leastToEdge)
	}
	if end-top < l.PinH { // no room for words as well
		end = l.H - l.Safe
	}
	return CardPlace{(l.W - l.PinW) / 2, (top+end)/2 - l.PinH/2}
}

// pinBeside puts the pin in the left half of a card that lies, clear of the hole
// to hang by.
func (c *BackingCard) pinBeside(l *LaidCard) CardPlace {
	at := CardPlace{max(l.Safe, (l.W/2-l.PinW)/2), (l.H - l.PinH) / 2}
	if l.Hang == nil || at.X+l.PinW < l.W/2-l.Hang.W/2 {
		return at
	}
	top := l.Hang.Down + l.Hang.H/2
	at.Y = max(at.Y, min(top+1, l.H-l.Safe-l.PinH))
	return at
}

func set(t *CardText, r Ruler) CardSet {
	line := r.Set(t.Words, t.Points, t.Strong)
	s := CardSet{X: t.X, Y: t.Y, D: line.D}
	switch t.Align {
	case Middle:
		s.X -= line.W / 2
	case Right:
		s.X -= line.W
	}
	s.Box = box{s.X, s.Y - line.Up, s.X + line.W, s.Y + line.Down}
	return s
}

// says is the card in a sentence.
func (l *LaidCard) says(c *BackingCard, p *Pin) string {
	stands := "upright"
	if l.W > l.H {
		stands = "lying"
	}
	name := fmt.Sprintf("%s by %s", unit.InMM(l.W, 2), unit.InMM(l.H, 2))
	holes := "no hole to punch for the pin"
	switch n := len(l.Holes); n {
	case 0:
	case 1:
		holes = fmt.Sprintf("one hole of %s for the post", unit.InMM(l.Holes[0].Across, 2))
	default:
		holes = fmt.Sprintf("%d holes of %s", n, unit.InMM(l.Holes[0].Across, 2))
	}
	return fmt.Sprintf("A card of %s, %s, with %s.", name, stands, holes)
}

// Starting is a card with the name of the pin on it, to begin with.
func Starting(name string) BackingCard {
	c := BackingCard{Hang: CardHang{Kind: RoundHang}}
	w, h := c.Size()
	c.Texts = []CardText{{Words: name, Points: startPoints, Strong: true, X: w / 2, Y: h - startUp, RGB: ink}}
	return c
}
