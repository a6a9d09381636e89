package wire

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/reduce/colourlist"
)

// ColourListAsk comes with the bytes of a maker's colour list.
type ColourListAsk struct {
	FileName string `json:"fileName"` // empty for pasted rows
	// White is that of CIELAB values in a list that does not say; empty leaves it open.
	White colourlist.White `json:"white"`
}

// ColourListRead is what was read of a list. With no entries in it, the list
// in use should stay.
type ColourListRead struct {
	List     colourlist.ColourList    `json:"list"`
	Problems []colourlist.LineProblem `json:"problems"`
	More     int                      `json:"more"` // problems that are not listed
	Notes    []string                 `json:"notes"`
	// NeedsWhite is true when the list has to be read again with a White.
	NeedsWhite bool   `json:"needsWhite"`
	Words      string `json:"words"` // how it went, in a sentence
}

// CodesAsk asks which entries of a list the colours of a picked version are near to.
type CodesAsk struct {
	Picked Picked                `json:"picked"`
	List   colourlist.ColourList `json:"list"`
}

// Codes is the colours of a version beside a maker's list.
type Codes struct {
	// Rows has every flat that is filled or printed, in the order of the flats.
	Rows []FlatCodes `json:"rows"`
	// Shared has the codes that more than one flat falls on.
	Shared []SharedCode `json:"shared"`
	// Apart gives every flat a code of its own; none when nothing is shared, or
	// when the list has too few.
	Apart      []ApartCode `json:"apart"`
	ApartWords string      `json:"apartWords"`
}

// FlatCodes is one flat beside a list.
type FlatCodes struct {
	Flat reduce.FlatID `json:"flat"`
	Name string        `json:"name"`
	// RGB is the flat's own colour, before that of any code.
	RGB     colour.RGB8            `json:"rgb"`
	Nearest []colourlist.CodeMatch `json:"nearest"`
	Taken   *TakenCode             `json:"taken,omitempty"`
}

// TakenCode is the code a flat has taken.
type TakenCode struct {
	Code  string `json:"code"`
	Named string `json:"named"`
	// Recoloured is true when the flat is shown in the code's colour.
	Recoloured bool `json:"recoloured"`
	// Match is missing when the list has no such code.
	Match *colourlist.CodeMatch `json:"match,omitempty"`
}

// SharedCode is a code that more than one flat falls on.
type SharedCode struct {
	Code  string          `json:"code"`
	Flats []reduce.FlatID `json:"flats"`
	Words string          `json:"words"`
}

// FlatCode is the maker's code of one flat, and the name beside it, if any.
type FlatCode struct {
	Flat  reduce.FlatID `json:"flat"`
	Code  string        `json:"code"`
	Named string        `json:"named"`
	// Drawn is the colour of the flat in the drawing, whatever the version makes of it.
	Drawn colour.RGB8 `json:"drawn"`
}

// ApartCode is the code of its own that a flat could have.
type ApartCode struct {
	Flat  reduce.FlatID        `json:"flat"`
	Match colourlist.CodeMatch `json:"match"`
}
