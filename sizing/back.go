package sizing

import (
	"slices"
	"strings"

	"badgewright/sizing/unit"
)

// Range is what a figure may be, least and most: the two differ where
// something it hangs on is not known better.
type Range struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Mid is the middle of a range.
func (r Range) Mid() float64 { return (r.Low + r.High) / 2 }

// Answer is the answer to a yes-or-no question over a range.
type Answer string

// The answers. Either means that it flips inside the range.
const (
	Yes    Answer = "yes"
	No     Answer = "no"
	Either Answer = "either"
)

// UpTo says whether a figure stays at or below a limit over its whole range.
func (r Range) UpTo(limit float64) Answer {
	switch {
	case r.High <= limit:
		return Yes
	case r.Low > limit:
		return No
	default:
		return Either
	}
}

// Fastening is what holds a pin to cloth.
type Fastening string

// The fastenings of the trade; the empty one is a post and clutch.
const (
	PostAndClutch Fastening = ""
	MagnetBack    Fastening = "magnet"
	PinBar        Fastening = "bar"
	ScrewBack     Fastening = "screw"
)

// Buyers is the youngest that a pin is meant for, as the maker of it says.
type Buyers string

// The buyers that rules tell apart; the empty one is grown-ups.
const (
	Adults     Buyers = ""
	FromTeens  Buyers = "teens"    // 13 and 14 years and up
	FromEight  Buyers = "eight"    // 8 years and up
	FromThree  Buyers = "three"    // 3 years and up
	UnderThree Buyers = "toddlers" // under 3 years too
)

// Hold is what is not known of cloth and clutch. Nothing is published on them:
// the usual values are common practice, tried by hand, and can be changed.
type Hold struct {
	// Press is the force with which a clutch presses itself and the back of the
	// pin on the cloth between them, N.
	Press Range `json:"press"`
	// Friction is the coefficient of friction of clutch and back on cloth.
	Friction Range `json:"friction"`
	// Stiffness is the torque with which cloth resists the tilt of one clutch,
	// N mm for each radian.
	Stiffness Range `json:"stiffness"`
	// Cloth is the thickness of the cloth, mm.
	Cloth Range `json:"cloth"`
}

// UsualHold runs from a thin knit with a slack clutch to a stiff jacket with a
// tight one (common practice, no published source).
func UsualHold() Hold {
	return Hold{
		Press:     Range{0.1, 1},
		Friction:  Range{0.2, 0.5},
		Stiffness: Range{0.5, 5},
		Cloth:     Range{0.3, 1.5},
	}
}

// Depths is how deep a pin is cut and how far it is filled.
type Depths struct {
	Recess Range `json:"recess"` // depth of a colour area below the metal's top, mm
	Sunk   Range `json:"sunk"`   // how far soft fill stays below the metal's top, mm
	Resin  Range `json:"resin"`  // density of the fill, g/cm3
}

// UsualDepths are cells 0.4 to 0.5 mm deep, soft fill a little below the metal
// (common practice, no published source), and resin of 1.1 to 1.4 g/cm3 (epoxy,
// cured: Budinski, Engineering Materials, and tables beside it).
func UsualDepths() Depths {
	return Depths{Recess: Range{0.4, 0.5}, Sunk: Range{0.1, 0.2}, Resin: Range{1.1, 1.4}}
}

// Packing is what a pin is posted with.
type Packing struct {
	CardW     unit.MM `json:"cardW"`
	CardH     unit.MM `json:"cardH"`
	CardGSM   float64 `json:"cardGSM"`   // of the card's board, g/m2; 0 for no card
	CardThick unit.MM `json:"cardThick"` // of the board
	Sleeve    Range   `json:"sleeve"`    // mass of a clear sleeve, g; 0 for none
}

// UsualPacking is a backing card in a clear sleeve (common practice, no
// published source).
func UsualPacking() Packing {
	return Packing{CardW: 55, CardH: 85, CardGSM: 350, CardThick: 0.45, Sleeve: Range{0.3, 0.7}}
}

// Back is what the person wishes of the back; its zero value leaves all of it
// to the tool.
type Back struct {
	Fastening Fastening `json:"fastening,omitempty"`
	// Hand is the places of posts set by hand, in shares (0..1) of the
	// silhouette's width and height as seen from the FRONT, so that they outlive
	// another size.
	Hand   [][2]float64 `json:"hand,omitempty"`
	Buyers Buyers       `json:"buyers,omitempty"`
	// These are nil for the usual values.
	Hold    *Hold    `json:"hold,omitempty"`
	Depths  *Depths  `json:"depths,omitempty"`
	Packing *Packing `json:"packing,omitempty"`
	Stamp   *Stamp   `json:"stamp,omitempty"`
}

// Stamp is what stands on the back: the artist's own mark, lettering below it,
// its lines from the top, or one of the two.
type Stamp struct {
	Lines  []string `json:"lines"`
	Height unit.MM  `json:"height"` // of capitals; 0 for as large as there is room, up to a usual height
	Raised bool     `json:"raised"` // raised metal, else cut in
	// Least is the lowest capitals that the maker holds on a back; 0 for the usual.
	Least unit.MM `json:"least,omitempty"`
	Mark  *Mark   `json:"mark,omitempty"`
}

// Asked says whether there is anything to strike; s may be nil.
func (s *Stamp) Asked() bool {
	return s != nil && (s.Mark != nil || slices.ContainsFunc(s.Lines, func(l string) bool { return strings.TrimSpace(l) != "" }))
}
