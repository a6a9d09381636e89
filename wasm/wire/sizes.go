package wire

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// SizesAsk asks at which sizes a picked design holds as it is drawn.
type SizesAsk struct {
	Picked Picked `json:"picked"`
	// WhatIf asks for these limits alone, in place of all others.
	WhatIf *sizing.Limits `json:"whatIf,omitempty"`
}

// Sizes is the sizes that hold, for each making.
type Sizes struct {
	By sizing.SizeBy `json:"by"` // the measure of all sizes here
	// Curves begin at From and go on in steps of a millimetre.
	From unit.MM    `json:"from"`
	To   unit.MM    `json:"to"`
	Rows []SizesFor `json:"rows"`
}

// SizesFor is the sizes that hold for one making and fill.
type SizesFor struct {
	Making sizing.Making `json:"making"`
	Fill   sizing.Fill   `json:"fill"`
	Limits sizing.Limits `json:"limits"`
	Name   string        `json:"name"`
	// Now is true for the one that the design stands at.
	Now bool `json:"now"`
	// Ranges are the sizes that hold, rising; none when no size does.
	Ranges []SizeRange `json:"ranges"`
	Says   string      `json:"says"`
	// Lacks is true where metal is missing, which no size mends.
	Lacks bool `json:"lacks"`
	// Curve is the share that fails at each size: of the length of all metal
	// lines, and of the area of all enamel.
	Curve []wall.Shares `json:"curve"`
}

// SizeRange is the sizes from one to another. A To of 0 mm is no end.
type SizeRange struct {
	From unit.Length `json:"from"`
	To   unit.Length `json:"to"`
}
