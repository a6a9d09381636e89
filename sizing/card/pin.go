package card

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// CardPlace is a place in mm.
type CardPlace struct {
	X unit.MM `json:"x"`
	Y unit.MM `json:"y"`
}

// Pin is what a card needs to know of a pin, in mm from the upper left of its
// silhouette as seen from the FRONT.
type Pin struct {
	Name string
	W, H unit.MM
	// Loops are the borders of its silhouette as closed rows of places, holes too.
	Loops [][]CardPlace
	// D is the same as the d of an SVG path.
	D string
	// Pierced is where it pierces the card, and No what each is called behind.
	Pierced []CardPlace
	No      []int
	// Fastening and Bar are as in the advice on its back.
	Fastening sizing.Fastening
	Bar       unit.MM
	Upright   bool
}

// needleIn is how far from the ends of a pin bar its needle goes through the
// card, mm (common practice, no published source: the hinge and the catch lie
// there).
const needleIn unit.MM = 3

// Pierces is where a pin with some fastening goes through a card: each post, both
// ends of a bar's needle, nowhere for a magnet.
func Pierces(f sizing.Fastening, posts []sizing.Post, bar unit.MM, upright bool) []CardPlace {
	var all []CardPlace
	for _, p := range posts {
		switch {
		case f == sizing.MagnetBack:
		case f != sizing.PinBar:
			all = append(all, CardPlace(p))
		case upright:
			all = append(all, CardPlace{p.X, p.Y - bar/2 + needleIn}, CardPlace{p.X, p.Y + bar/2 - needleIn})
		default:
			all = append(all, CardPlace{p.X - bar/2 + needleIn, p.Y}, CardPlace{p.X + bar/2 - needleIn, p.Y})
		}
	}
	return all
}

// box is an upright box: x0, y0, x1, y1.
type box [4]unit.MM

func boxOf(x, y, w, h unit.MM) box { return box{x, y, x + w, y + h} }

func (b box) grown(by unit.MM) box { return box{b[0] - by, b[1] - by, b[2] + by, b[3] + by} }

func (b box) meets(o box) bool {
	return b[0] < o[2] && o[0] < b[2] && b[1] < o[3] && o[1] < b[3]
}

func (b box) within(o box) bool {
	return b[0] >= o[0] && b[1] >= o[1] && b[2] <= o[2] && b[3] <= o[3]
}

func (b box) has(p CardPlace) bool { return p.X > b[0] && p.X < b[2] && p.Y > b[1] && p.Y < b[3] }

// under says whether any of a box on the card lies under the pin there.
func (p *Pin) under(b box, at CardPlace) bool {
	b = box{b[0] - at.X, b[1] - at.Y, b[2] - at.X, b[3] - at.Y}
	if !b.meets(box{0, 0, p.W, p.H}) {
		return false
	}
	for _, loop := range p.Loops {
		for i, q := range loop {
			if b.has(q) || crosses(b, loop[(i+len(loop)-1)%len(loop)], q) {
				return true
			}
		}
	}
	return p.covers(CardPlace{(b[0] + b[2]) / 2, (b[1] + b[3]) / 2})
}

// covers says whether a place lies on the silhouette, by the even-odd rule.
func (p *Pin) covers(q CardPlace) bool {
	in := false
	for _, loop := range p.Loops {
		for i, b := range loop {
			a := loop[(i+len(loop)-1)%len(loop)]
			if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(b.X-a.X)*(q.Y-a.Y)/(b.Y-a.Y) {
				in = !in
			}
		}
	}
	return in
}

// crosses says whether a straight line crosses a box.
func crosses(b box, p, q CardPlace) bool {
	t0, t1 := 0.0, 1.0
	for axis, ends := range [2][2]float64{{float64(p.X), float64(q.X)}, {float64(p.Y), float64(q.Y)}} {
		low, high, d := float64(b[axis]), float64(b[axis+2]), ends[1]-ends[0]
		if d == 0 {
			if ends[0] <= low || ends[0] >= high {
				return false
			}
			continue
		}
		from, to := (low-ends[0])/d, (high-ends[0])/d
		t0, t1 = max(t0, min(from, to)), min(t1, max(from, to))
	}
	return t0 < t1
}
