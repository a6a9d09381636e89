// Package card lays out the backing card that a pin is sold on: its size, where
// the pin sits and its posts go through, the hole it hangs by, the person's own
// picture and words, and how many go on a sheet. It also says what would spoil
// in print.
//
// Everything is in mm from the upper left of the cut card, y down, as the card
// is seen from the FRONT with the pin on it. Posts are numbered as seen from
// behind; here they stand where they pierce the front.
package card

import (
	"encoding/base64"
	"fmt"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// CardKind is a size of card.
type CardKind string

// The sizes of card; the empty one is a European business card.
const (
	Business       CardKind = ""
	Bank           CardKind = "bank"
	BusinessInches CardKind = "inches"
	Free           CardKind = "free"
)

// CardSize is a kind with its sides as it lies.
type CardSize struct {
	Kind CardKind `json:"kind"`
	Name string   `json:"name"`
	W    unit.MM  `json:"w"`
	H    unit.MM  `json:"h"`
}

// Kinds are the sizes with a name. The bank card is ID-1 of ISO/IEC 7810; the
// others are business cards as printers name them (common practice).
func Kinds() []CardSize {
	return []CardSize{
		{Business, "business card, 85 × 55 mm", 85, 55},
		{BusinessInches, "business card, 3.5 × 2 in", 3.5 * unit.MMPerInch, 2 * unit.MMPerInch},
		{Bank, "bank card, 85.60 × 53.98 mm", 85.60, 53.98},
	}
}

// BackingCard is what the person chose of a backing card; its zero value is an upright
// business card, blank, with the pin where the tool puts it.
type BackingCard struct {
	Kind   CardKind `json:"kind,omitempty"`
	Across bool     `json:"across,omitempty"` // lying, wider than high
	// W and H are the sides of a free card as it is seen.
	W unit.MM `json:"w,omitempty"`
	H unit.MM `json:"h,omitempty"`
	// Corner is the radius that its corners are rounded to; 0 for square.
	Corner unit.MM      `json:"corner,omitempty"`
	Ground *colour.RGB8 `json:"ground,omitempty"` // printed over all of it; nil for bare board

	// Pin is where the middle of the silhouette's box sits; nil for where the tool
	// puts it.
	Pin *[2]unit.MM `json:"pin,omitempty"`
	// NoAid leaves out the light outline by which the pin is placed.
	NoAid bool `json:"noAid,omitempty"`
	// Hole is how wide the holes of the posts are; 0 for the usual.
	Hole unit.MM  `json:"hole,omitempty"`
	Hang CardHang `json:"hang,omitempty,omitzero"`

	// Bleed is how far print runs over the cut, and Safe how far inside it words
	// keep; nil for the usual.
	Bleed *unit.MM `json:"bleed,omitempty"`
	Safe  *unit.MM `json:"safe,omitempty"`

	Texts   []CardText `json:"texts,omitempty"`
	Picture *CardArt   `json:"picture,omitempty"`
	Sheet   CardSheet  `json:"sheet,omitempty,omitzero"`
}

// HangKind is the hole that a card hangs by.
type HangKind string

// The holes to hang by; the empty one is none.
const (
	NoHang    HangKind = ""
	RoundHang HangKind = "round"
	SlotHang  HangKind = "slot" // longer than high, with round ends
)

// CardHang is the hole to hang by. It lies in the middle of the card's width.
type CardHang struct {
	Kind HangKind `json:"kind,omitempty"`
	// W and H are its width and height, W alone for a round one; 0 for the usual.
	W unit.MM `json:"w,omitempty"`
	H unit.MM `json:"h,omitempty"`
	// Down is from the top of the card to the middle of the hole; 0 for the usual.
	Down unit.MM `json:"down,omitempty"`
}

// Align says which end of a line stands at its place.
type Align string

// The ways to set a line; the empty one has its middle there.
const (
	Middle Align = ""
	Left   Align = "left"
	Right  Align = "right"
)

// CardText is one line of the person's own.
type CardText struct {
	Words  string      `json:"words"`
	Points float64     `json:"points"` // size of type, 1/72 inch
	Strong bool        `json:"strong,omitempty"`
	Align  Align       `json:"align,omitempty"`
	X      unit.MM     `json:"x"` // of its left end, middle or right end
	Y      unit.MM     `json:"y"` // of its base line
	RGB    colour.RGB8 `json:"rgb"`
}

// CardArt is the person's own picture on the card.
type CardArt struct {
	Type string `json:"type"` // image/png or image/jpeg
	Data string `json:"data"` // the file, in base64 (RFC 4648, section 4)
	W    int    `json:"w"`    // px
	H    int    `json:"h"`
	// X and Y are its upper left, Wide its width on the card.
	X    unit.MM `json:"x"`
	Y    unit.MM `json:"y"`
	Wide unit.MM `json:"wide"`
}

// File is the picture as a file.
func (p *CardArt) File() ([]byte, error) {
	file, err := base64.StdEncoding.DecodeString(p.Data)
	if err != nil {
		return nil, &reduce.Refusal{What: "The picture on the card is damaged.", Do: "Bring it again."}
	}
	return file, nil
}

// High is its height on the card.
func (p *CardArt) High() unit.MM {
	return unit.MM(float64(p.Wide) * float64(p.H) / float64(max(p.W, 1)))
}

// Usual values, all common practice with no published source.
const (
	UsualHole  unit.MM = 1.5 // a post is about 1.1 mm thick
	usualRound unit.MM = 6
	usualSlotW unit.MM = 30
	usualSlotH unit.MM = 6
	usualDown  unit.MM = 7
	UsualBleed unit.MM = 3
	UsualSafe  unit.MM = 4
)

// BankCorner is the radius of a bank card's corners (ISO/IEC 7810: 3.18 mm,
// give or take 0.30).
const BankCorner unit.MM = 3.18

// Bounds of what can be asked for, mm (this tool's).
const (
	leastSide  unit.MM = 25
	mostSide   unit.MM = 200
	leastHole  unit.MM = 0.8
	mostHole   unit.MM = 6
	mostMargin unit.MM = 12
	mostHang   unit.MM = 60
	mostTexts          = 12
	mostBytes          = 8 << 20 // of a picture, as base64
	mostPoints         = 96
)

// Size is the width and height of the card as it is seen.
func (c *BackingCard) Size() (w, h unit.MM) {
	if c.Kind == Free {
		return c.W, c.H
	}
	for _, k := range Kinds() {
		if k.Kind == c.Kind {
			w, h = k.W, k.H
		}
	}
	if !c.Across {
		w, h = h, w
	}
	return w, h
}

func orUsual(v, usual unit.MM) unit.MM {
	if v == 0 {
		return usual
	}
	return v
}

func orGiven(v *unit.MM, usual unit.MM) unit.MM {
	if v == nil {
		return usual
	}
	return *v
}

// HoleUsed, BleedUsed and SafeUsed are what is in force.
func (c *BackingCard) HoleUsed() unit.MM  { return orUsual(c.Hole, UsualHole) }
func (c *BackingCard) BleedUsed() unit.MM { return orGiven(c.Bleed, UsualBleed) }
func (c *BackingCard) SafeUsed() unit.MM  { return orGiven(c.Safe, UsualSafe) }

// HangUsed is the hole to hang by, with every measure.
func (c *BackingCard) HangUsed() CardHang {
	h := c.Hang
	switch h.Kind {
	case RoundHang:
		h.W = orUsual(h.W, usualRound)
		h.H = h.W
	case SlotHang:
		h.W, h.H = orUsual(h.W, usualSlotW), orUsual(h.H, usualSlotH)
	}
	h.Down = orUsual(h.Down, max(usualDown, h.H/2+leastToEdge))
	return h
}

// Check refuses in words what is no card.
func (c *BackingCard) Check() error {
	w, h := c.Size()
	hang := c.HangUsed()
	switch {
	case !in(w, leastSide, mostSide) || !in(h, leastSide, mostSide):
		return refuse("A card of %s by %s cannot be laid out.", w, h, fmt.Sprintf("Give sides of %.0f to %.0f mm.", leastSide, mostSide))
	case !in(c.HoleUsed(), leastHole, mostHole):
		return refuseOne("Holes of %s do not go round a post.", c.HoleUsed(), fmt.Sprintf("Give %.1f to %.0f mm.", leastHole, mostHole))
	case !in(c.BleedUsed(), 0, mostMargin) || !in(c.SafeUsed(), 0, mostMargin) || !in(c.Corner, 0, min(w, h)/2):
		return &reduce.Refusal{What: "The card's bleed, safe margin or corners cannot be drawn.", Do: fmt.Sprintf("Keep each from 0 to %.0f mm.", mostMargin)}
	case hang.Kind != NoHang && (!in(hang.W, leastHole, min(mostHang, w)) || !in(hang.H, leastHole, min(mostHang, h)) || !in(hang.Down, 0, h)):
		return &reduce.Refusal{What: "The hole to hang by does not fit on the card.", Do: "Give it a width and height that do, and a place within the card."}
	case !in(c.Sheet.Gutter, 0, mostMargin*2):
		return refuseOne("Cards %s apart waste the sheet.", c.Sheet.Gutter, fmt.Sprintf("Give 0 to %.0f mm.", 2*mostMargin))
	}
	return c.checkPrinted()
}

func (c *BackingCard) checkPrinted() error {
	if len(c.Texts) > mostTexts {
		return &reduce.Refusal{What: fmt.Sprintf("%d lines of text are more than a card holds.", len(c.Texts)), Do: fmt.Sprintf("Keep to %d.", mostTexts)}
	}
	for _, t := range c.Texts {
		if !(t.Points > 0 && t.Points <= mostPoints) || !in(t.X, -mostSide, 2*mostSide) || !in(t.Y, -mostSide, 2*mostSide) {
			return &reduce.Refusal{What: fmt.Sprintf("The line %q cannot be set so.", t.Words), Do: fmt.Sprintf("Give it a size up to %d points and a place on the card.", mostPoints)}
		}
	}
	p := c.Picture
	if p == nil {
		return nil
	}
	if p.W < 1 || p.H < 1 || len(p.Data) > mostBytes || !in(p.Wide, 1, 3*mostSide) || !in(p.High(), 1, 3*mostSide) || !in(p.X, -3*mostSide, 3*mostSide) || !in(p.Y, -3*mostSide, 3*mostSide) {
		return &reduce.Refusal{What: "The picture cannot be placed on the card so.", Do: "Bring it again."}
	}
	return nil
}

func in(v, least, most unit.MM) bool { return v >= least && v <= most }

func refuse(what string, a, b unit.MM, do string) error {
	return &reduce.Refusal{What: fmt.Sprintf(what, unit.InMM(a, 2), unit.InMM(b, 2)), Do: do}
}

func refuseOne(what string, a unit.MM, do string) error {
	return &reduce.Refusal{What: fmt.Sprintf(what, unit.InMM(a, 2)), Do: do}
}
