package wire

import (
	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
)

// PartsAsk asks what a choice for the parts of a picked version brings with it.
type PartsAsk struct {
	Picked Picked             `json:"picked"`
	Choice sizing.PartsChoice `json:"choice"`
}

// PartsChosen is what to make of the design: eyes to hang the parts by, or
// bridges of metal that join them.
type PartsChosen struct {
	Parts   sizing.Parts    `json:"parts"`
	Recipes []sizing.Recipe `json:"recipes"` // all of the design's, bridges added or taken out
	// Fits is false when some part found no room for an eye, or no bridge that does.
	Fits  bool   `json:"fits"`
	Words string `json:"words"`
}

// EyesAsk asks how the parts of a picked version hang by some joins, as an eye is
// moved: quick enough for every frame of a drag.
type EyesAsk struct {
	Picked Picked        `json:"picked"`
	Joins  []sizing.Join `json:"joins"`
}

// HeldParts is how a pin that is drawn in several parts holds together.
type HeldParts struct {
	Count int `json:"count"` // as drawn, specks left out
	// Choice is what the person said; where nothing was said of parts that bridges
	// join, they are one.
	Choice sizing.PartsChoice `json:"choice"`
	Joins  []Hanging          `json:"joins"`
	// Loose is how many parts nothing joins to the rest.
	Loose int    `json:"loose"`
	Says  string `json:"says"`
}

// Hanging is one join as it hangs.
type Hanging struct {
	Upper HangingEye `json:"upper"`
	Lower HangingEye `json:"lower"`
	// Ring and Links are as they are used, and Drop is how far apart the middles of
	// the eyes then hang.
	Ring  unit.Length   `json:"ring"`
	Links int           `json:"links"`
	Drop  unit.Length   `json:"drop"`
	Loops []sizing.Loop `json:"loops"`
	Says  string        `json:"says"`
	// Problem is what keeps it from hanging so; empty when nothing does.
	Problem string `json:"problem"`
}

// HangingEye is one eye on the pin.
type HangingEye struct {
	X      float64 `json:"x"` // working px
	Y      float64 `json:"y"`
	Across float64 `json:"across"` // of the hole, px
	Rim    float64 `json:"rim"`    // metal that is added round it, px; 0 of a drawn one
	Drawn  bool    `json:"drawn"`
	// Left and Top are of its middle, from the left and the top of the drawn
	// outline as seen from the front.
	Left unit.Length  `json:"left"`
	Top  unit.Length  `json:"top"`
	Room outline.Room `json:"room"`
	// Problem says what is wrong with its place; empty when nothing is.
	Problem string `json:"problem"`
}
