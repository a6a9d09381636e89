package reduce

import "badgewright/reduce/colour"

// Op is the kind of a change made by hand to the flat drawing.
type Op string

// The changes a person can make. Each is replayed, in order, at every count.
const (
	SetRole   Op = "role"     // Flat gets Role
	SetLock   Op = "lock"     // Flat is kept at every count (Locked true or false)
	SetColour Op = "recolour" // Flat is shown and made in RGB
	SetName   Op = "name"     // Flat is called Name
	Join      Op = "join"     // Flat joins With, at every count
	Apart     Op = "apart"    // Flat and With stay two colours at every count
	Fill      Op = "fill"     // the area under (X, Y) gets RGB, or Role, or both: that of a flat which has them, or a new one
	Split     Op = "split"    // the area of Flat under (X, Y) becomes a flat of its own, in RGB if given
)

// Edit is one change made by hand. X and Y are shares (0..1) of the drawing's
// width and height, so that they outlive a change of raster.
type Edit struct {
	Op     Op           `json:"op"`
	Flat   FlatID       `json:"flat"`
	With   FlatID       `json:"with,omitempty"`
	Role   Role         `json:"role,omitempty"`
	Locked bool         `json:"locked,omitempty"`
	RGB    *colour.RGB8 `json:"rgb,omitempty"`
	Name   string       `json:"name,omitempty"`
	X      float64      `json:"x,omitempty"`
	Y      float64      `json:"y,omitempty"`
	// Count is the number of enamels shown when the edit was made: a split takes
	// the area seen at that count; a role or a join goes to all that the flat
	// held at that count. 0 means the finest flats.
	Count int `json:"count,omitempty"`
	// Gap closes an area that is open, for a fill: the two ends of a straight
	// cut, x0 y0 x1 y1, in shares of width and height.
	Gap *[4]float64 `json:"gap,omitempty"`
	// Lines are those drawn or erased by hand before a fill, in order: it does
	// not cross what is drawn, and does cross what is erased.
	Lines []HandLine `json:"lines,omitempty"`
}

// HandLine is a line drawn or erased by hand as a fill meets it. Points are in shares of
// the drawing's width and height, Width in shares of its width.
type HandLine struct {
	Points [][2]float64 `json:"points"`
	Width  float64      `json:"width"`
	Erased bool         `json:"erased,omitempty"`
}

// Options of a reduction.
type Options struct {
	// Count is the number of enamel flats wanted, 1..12 (MaxCount); fewer are
	// given when the drawing has fewer.
	Count int `json:"count"`
	// RolesOff treats every flat as an enamel, lines included, so that Count
	// is the number of flats in all (1..MaxFlats).
	RolesOff bool   `json:"rolesOff,omitempty"`
	Edits    []Edit `json:"edits"`
}

// MaxCount is the greatest number of enamels offered: makers' charts and
// prices stop being sensible beyond it (common practice, no published source).
const MaxCount = 12
