package wire

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// ShapesAsk asks for the clean curves of a version that was handed over; the
// answer comes with an SVG file of them.
type ShapesAsk struct {
	Of string `json:"of"`
}

// Shapes is a version as smooth closed curves, in mm from the upper left
// of its silhouette, y down. Neighbours share their borders exactly.
type Shapes struct {
	W unit.MM `json:"w"`
	H unit.MM `json:"h"`
	// Outline is all that is pin; the others lie in it. A hole of it is a cut-out.
	Outline Shape   `json:"outline"`
	Metal   Shape   `json:"metal"`
	CutOuts Shape   `json:"cutOuts"`
	Enamel  []Shape `json:"enamel"`
	Printed []Shape `json:"printed"` // on top of the others
	// Tolerance was held to where the drawing is fine enough; nowhere is a curve
	// further than Within from the edge as the drawing has it.
	Tolerance unit.MM `json:"tolerance"`
	Within    unit.MM `json:"within"`
	Lines     int     `json:"lines"`
	Curves    int     `json:"curves"`
	Corners   int     `json:"corners"`
	FileName  string  `json:"fileName"`
	Words     string  `json:"words"` // what the file is, for the person
}

// Shape is everything of one kind: the d of an SVG path, to be filled by the
// even-odd rule.
type Shape struct {
	Flat reduce.FlatID `json:"flat"`
	Role reduce.Role   `json:"role"`
	Name string        `json:"name"`
	RGB  colour.RGB8   `json:"rgb"`
	D    string        `json:"d"`
	// Pieces is how many closed areas it has, and Area how large they are, mm2.
	Pieces int     `json:"pieces"`
	Area   float64 `json:"area"`
}
