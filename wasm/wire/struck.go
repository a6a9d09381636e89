package wire

import (
	"badgewright/reduce"
	"badgewright/sizing"
)

// StruckAsk asks for a picked version as struck, to be handed to the second
// program.
type StruckAsk struct {
	Picked Picked `json:"picked"`
}

// Struck is a picked version with its recipes applied and all that was found of
// it. Its rasters come as bytes: labels, beside and cover of the separation, W*H
// of each, and W*H more, 1 where metal was built, when Built is set.
type Struck struct {
	// Key names it: whatever changes the version changes the key.
	Key     string         `json:"key"`
	W       int            `json:"w"` // of the rasters, working px
	H       int            `json:"h"`
	Built   bool           `json:"built"`
	Flats   []reduce.Flat  `json:"flats"` // of the rasters, as this version colours them
	Design  sizing.Design  `json:"design"`
	Version sizing.Version `json:"version"`
	Check   Check          `json:"check"`
}

// Hand says that the second program has a version at hand.
type Hand struct {
	Key string `json:"key"`
}
