package wire

import (
	"badgewright/sizing"
	"badgewright/sizing/fastener"
	"badgewright/sizing/unit"
)

// Place is a place on the back as seen from behind, to the half millimetre:
// from the left and the top of the silhouette, and from its middle.
type Place struct {
	// No is what it is called by: from the left as seen from behind, or from the
	// top where they stand more above each other than side by side; from 1.
	No   int         `json:"no"`
	Left unit.Length `json:"left"`
	Top  unit.Length `json:"top"`
	// Beside is right of the middle as seen from behind, Below below it; mm below
	// 0 are left of it and above it.
	Beside unit.Length `json:"beside"`
	Below  unit.Length `json:"below"`
	// FromMiddle says Beside and Below in words, in mm and in inches: "4.5 mm left,
	// 3 mm above".
	FromMiddle       string `json:"fromMiddle"`
	FromMiddleInches string `json:"fromMiddleInches"`
}

// BackUsual is the usual value of everything about the back that can be changed.
type BackUsual struct {
	Hold    sizing.Hold    `json:"hold"`
	Depths  sizing.Depths  `json:"depths"`
	Packing sizing.Packing `json:"packing"`
}

// HangAsk asks how the picked version hangs with posts at some places, as one
// of them is moved: quick enough for every frame of a drag.
type HangAsk struct {
	Picked Picked `json:"picked"`
	// Posts are in mm from the left and top of the silhouette as seen from the FRONT.
	Posts []sizing.Post `json:"posts"`
	// Moved is the one that is being moved, which snaps to lines of symmetry; -1
	// for none.
	Moved int `json:"moved"`
}

// Hung is how it hangs so.
type Hung struct {
	// Hand is the places as a design keeps them, after snapping; those of Back
	// are the same in mm.
	Hand   [][2]float64    `json:"hand"`
	Back   fastener.Advice `json:"back"`
	Places []Place         `json:"places"`
}

// BackMarkAsk comes with the pixels of the artist's own mark (RGBA, straight
// alpha, 4*W*H bytes).
type BackMarkAsk struct {
	W int `json:"w"`
	H int `json:"h"`
}

// BackMark is what of them is struck on the back.
type BackMark struct {
	Mark  sizing.Mark `json:"mark"`
	Words string      `json:"words"`
}
