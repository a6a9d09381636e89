package wire

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// JoinsAsk asks how the parts of a picked version could hang from each other.
type JoinsAsk struct {
	Picked Picked `json:"picked"`
}

// Joins is a place for an eye in each part, to be made the design's Parts: holes
// that were drawn for it, or eyes to add where there is room.
type Joins struct {
	Joins []sizing.Join `json:"joins"`
	// Drops is how far apart the middles of the two eyes of each join hang.
	Drops []unit.Length `json:"drops"`
	// Fits is false when some part finds no room for an eye.
	Fits  bool   `json:"fits"`
	Words string `json:"words"`
}
