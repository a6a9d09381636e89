package card

import (
	"fmt"
	"math"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// What a card of paper board and a print shop bear (common practice, no
// published source).
const (
	leastToEdge = unit.MM(3) // board between a hole and any edge
	leastPoints = 5          // type smaller than this fills in or is not read
	goodPPI     = 250        // px an inch; below, a picture looks soft
	poorPPI     = 150        // and here its pixels are seen
)

// A starting card: its type, and how far up its base line lies.
const (
	startPoints         = 12
	startUp     unit.MM = 12
)

var ink = colour.RGB8{R: 0x22, G: 0x22, B: 0x22}

// CardWarning is what would spoil on a card, and where.
type CardWarning struct {
	// Note says that it can be printed so all the same.
	Note bool       `json:"note"`
	What string     `json:"what"`
	Box  [4]unit.MM `json:"box"`
}

type checker struct {
	c      *BackingCard
	l      *LaidCard
	p      *Pin
	faults []CardWarning
	notes  []CardWarning
}

func warnings(c *BackingCard, l *LaidCard, p *Pin) []CardWarning {
	k := &checker{c: c, l: l, p: p}
	k.pin()
	k.holes()
	k.hang()
	for i := range l.Texts {
		k.text(i)
	}
	k.picture()
	return append(append([]CardWarning{}, k.faults...), k.notes...)
}

func (k *checker) fault(b box, what string, args ...any) {
	k.faults = append(k.faults, CardWarning{What: fmt.Sprintf(what, args...), Box: b})
}

func (k *checker) note(b box, what string, args ...any) {
	k.notes = append(k.notes, CardWarning{Note: true, What: fmt.Sprintf(what, args...), Box: b})
}

func (k *checker) card() box { return box{0, 0, k.l.W, k.l.H} }

func (k *checker) pinBox() box { return boxOf(k.l.Pin.X, k.l.Pin.Y, k.l.PinW, k.l.PinH) }

func (k *checker) pin() {
	b := k.pinBox()
	switch {
	case k.l.PinW > k.l.W || k.l.PinH > k.l.H:
		k.fault(b, "The pin is larger than the card: %s by %s on %s by %s.", unit.InMM(k.l.PinW, 1), unit.InMM(k.l.PinH, 1), unit.InMM(k.l.W, 2), unit.InMM(k.l.H, 2))
	case !b.within(k.card()):
		k.fault(b, "The pin stands out over the edge of the card.")
	}
}

func (k *checker) holes() {
	for i, h := range k.l.Holes {
		b := boxOf(h.X-h.Across/2, h.Y-h.Across/2, h.Across, h.Across)
		left := min(b[0], b[1], k.l.W-b[2], k.l.H-b[3])
		switch {
		case left < 0:
			k.fault(b, "Hole %d lies off the card.", h.No)
		case left < leastToEdge:
			k.fault(b, "Hole %d is only %s from the edge; the card may tear. Keep %s.", h.No, unit.InMM(left, 1), unit.InMM(leastToEdge, 1))
		}
		for _, o := range k.l.Holes[:i] {
			gap := unit.MM(math.Sqrt(float64((h.X-o.X)*(h.X-o.X))+float64((h.Y-o.Y)*(h.Y-o.Y)))) - h.Across
			if gap < h.Across {
				k.fault(b, "Holes %d and %d leave only %s of card between them.", o.No, h.No, unit.InMM(max(gap, 0), 1))
			}
		}
	}
}

// HangBox is the box of the hole to hang by: x0, y0, x1, y1.
func (l *LaidCard) HangBox() [4]unit.MM {
	return boxOf(l.W/2-l.Hang.W/2, l.Hang.Down-l.Hang.H/2, l.Hang.W, l.Hang.H)
}

func (k *checker) hang() {
	if k.l.Hang == nil {
		return
	}
	b := box(k.l.HangBox())
	if left := min(b[0], b[1], k.l.W-b[2], k.l.H-b[3]); left < leastToEdge {
		k.fault(b, "The hole to hang by is only %s from the edge; the card may tear there. Keep %s.", unit.InMM(max(left, 0), 1), unit.InMM(leastToEdge, 1))
	}
	if k.p.under(b, k.l.Pin) {
		k.fault(b, "The pin covers the hole to hang by.")
	}
	for _, h := range k.l.Holes {
		if b.grown(leastToEdge).meets(boxOf(h.X-h.Across/2, h.Y-h.Across/2, h.Across, h.Across)) {
			k.fault(b, "The hole to hang by and hole %d lie too close to each other.", h.No)
		}
	}
}

// pierced says which hole a box lies over: its words, empty for none.
func (k *checker) pierced(b box) string {
	for _, h := range k.l.Holes {
		if b.meets(boxOf(h.X-h.Across/2, h.Y-h.Across/2, h.Across, h.Across)) {
			return fmt.Sprintf("hole %d", h.No)
		}
	}
	if k.l.Hang != nil && b.meets(k.l.HangBox()) {
		return "the hole to hang by"
	}
	return ""
}

func (k *checker) text(i int) {
	t, b := &k.c.Texts[i], box(k.l.Texts[i].Box)
	if b[2] <= b[0] {
		return
	}
	over := k.pierced(b)
	switch {
	case k.p.under(b, k.l.Pin):
		k.fault(b, "“%s” lies under the pin.", t.Words)
	case over != "":
		k.fault(b, "“%s” runs over %s.", t.Words, over)
	}
	if safe := k.card().grown(-k.l.Safe); !b.within(safe) {
		k.fault(b, "“%s” comes nearer to the cut than the safe margin of %s.", t.Words, unit.InMM(k.l.Safe, 1))
	}
	if t.Points < leastPoints {
		k.fault(b, "“%s” is set in %.3g points; print fills in below %d.", t.Words, t.Points, leastPoints)
	}
}

func (k *checker) picture() {
	p := k.c.Picture
	if p == nil {
		return
	}
	b := boxOf(p.X, p.Y, p.Wide, p.High())
	over := k.pierced(b)
	switch {
	case k.pinBox().within(b) && b[0] <= 0 && b[2] >= k.l.W:
		// It is the ground of the card.
		k.note(b, "Your picture runs on behind the pin; what is there is not seen.")
	case k.p.under(b, k.l.Pin):
		k.fault(b, "Part of your picture lies under the pin.")
	case over != "":
		k.fault(b, "Your picture runs over %s.", over)
	}
	k.sliver(b)
	ppi := float64(p.W) / (float64(p.Wide) / unit.MMPerInch)
	switch {
	case ppi < poorPPI:
		k.fault(b, "Your picture has only %.0f pixels an inch at this size; its pixels will be seen. Bring a larger one.", ppi)
	case ppi < goodPPI:
		k.note(b, "Your picture has %.0f pixels an inch at this size; printers ask for 300.", ppi)
	}
}

// sliver warns of a picture that ends at the cut or in the bleed: the least slip
// of the knife leaves a bare edge.
func (k *checker) sliver(b box) {
	c, out := k.card(), k.card().grown(k.l.Bleed)
	const slack = 0.01 // mm, of what a hand can place
	ends := func(edge, cut, bleed unit.MM) bool {
		near := cut + (cut-bleed)/3 // so far inside, a slip shows too
		low, high := min(near, bleed)+slack, max(near, bleed)-slack
		return edge > low && edge < high
	}
	if !b.meets(c) || k.l.Bleed == 0 {
		return
	}
	if ends(b[0], c[0], out[0]) || ends(b[1], c[1], out[1]) || ends(b[2], c[2], out[2]) || ends(b[3], c[3], out[3]) {
		k.fault(b, "Your picture ends at the cut; let it run %s over it, or end well inside.", unit.InMM(k.l.Bleed, 1))
	}
}
