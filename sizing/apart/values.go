package apart

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Detail is the kind of a thing that is to be read.
type Detail string

// The details.
const (
	Line      Detail = "line"      // metal between two areas
	Edge      Detail = "edge"      // metal along the outline
	Area      Detail = "area"      // enamel: the gap between two lines
	Lettering Detail = "lettering" // a row that was found, or a capital that was marked
)

// Reading is one detail that is not surely parted from a distance: places are
// in working pixels. What is wide enough everywhere is not told.
type Reading struct {
	Detail Detail        `json:"detail"`
	Flat   reduce.FlatID `json:"flat"`
	// Beside is what lies on either side at the worst place: flats, or sizing.Outside.
	Beside [2]reduce.FlatID `json:"beside"`
	X      float64          `json:"x"`
	Y      float64          `json:"y"`
	X0     float64          `json:"x0"`
	Y0     float64          `json:"y0"`
	X1     float64          `json:"x1"`
	Y1     float64          `json:"y1"`
	Path   []float32        `json:"path"`
	Length unit.MM          `json:"length"`
	// Measured is the least width, or the height of capitals, and Arcmin the angle
	// it subtends; Error is the half-width of what the measurement cannot tell.
	Measured unit.MM `json:"measured"`
	Arcmin   float64 `json:"arcmin"`
	Error    unit.MM `json:"error"`
	// Need is what would be parted; Better, of lettering, what is preferred, else 0.
	Need   unit.MM `json:"need"`
	Better unit.MM `json:"better"`
	// Parted says whether it is told from what is beside it.
	Parted sizing.Verdict `json:"parted"`
	// PartedFrom is the size, by the design's measure, from which it is; its mm
	// are 0 when no pin is large enough.
	PartedFrom unit.Length `json:"partedFrom"`
	// Difference is what leaving it out would change, S-CIELAB, and Noticed whether
	// that is seen. NoticedFrom is the size from which it is, as PartedFrom.
	Difference  float64        `json:"difference"`
	Noticed     sizing.Verdict `json:"noticed"`
	NoticedFrom unit.Length    `json:"noticedFrom"`
	// NeedPx is the long side of a drawing that could tell; 0 unless a verdict is
	// CannotTell.
	NeedPx int `json:"needPx"`
	// Built is true of metal that a recipe built: it is as wide at every size.
	Built bool `json:"built"`
}

// PairKind says how two colours meet.
type PairKind string

// The ways in which colours meet.
const (
	Touching   PairKind = "touching"    // two enamels with no metal between
	AcrossLine PairKind = "across-line" // two enamels on either side of a line
	BesideLine PairKind = "metal"       // an enamel and the metal beside it
)

// Pair is two colours that meet. In a pair with metal, B is sizing.Outside's
// neighbour BuiltMetal, whatever metal flats the drawing has: all are plated alike.
type Pair struct {
	Kind PairKind      `json:"kind"`
	A    reduce.FlatID `json:"a"`
	B    reduce.FlatID `json:"b"`
	// X, Y is a place where they meet, working px.
	X float64 `json:"x"`
	Y float64 `json:"y"`
	// Length is how far they meet in all; Width that of the line between, else 0.
	Length unit.MM `json:"length"`
	Width  unit.MM `json:"width"`
	// Seen is by the normal eye first, then by each deficiency.
	Seen []Seen `json:"seen"`
}

// Seen is a pair as one kind of eye sees it.
type Seen struct {
	Vision colour.Vision `json:"vision"`
	// Colour is CIEDE2000 and Lightness the WCAG 2 ratio: with metal, the lesser
	// at its dark and its bright reflection.
	Colour    float64 `json:"colour"`
	Lightness float64 `json:"lightness"`
	// Dark and Bright are the two reflections; absent without metal.
	Dark   *Contrast `json:"dark,omitempty"`
	Bright *Contrast `json:"bright,omitempty"`
	// ByColour and ByLightness say whether the two are told apart.
	ByColour    sizing.Verdict `json:"byColour"`
	ByLightness sizing.Verdict `json:"byLightness"`
}

// Contrast is how far two colours are apart by both measures.
type Contrast struct {
	Colour    float64 `json:"colour"`
	Lightness float64 `json:"lightness"`
}

// Ranked is a plating as it suits a design.
type Ranked struct {
	Plating sizing.PlatingID `json:"plating"`
	Name    string           `json:"name"`
	// Chosen is the plating of the version; Fits is false where it cannot go
	// with the fill.
	Chosen bool `json:"chosen"`
	Fits   bool `json:"fits"`
	// Fail is the enamels that read as one with it, by colour, and Dim those that
	// do by lightness alone.
	Fail []reduce.FlatID `json:"fail"`
	Dim  []reduce.FlatID `json:"dim"`
	// Share of where enamel meets metal that is told apart by colour, 0..1.
	Share float64 `json:"share"`
	// Decides is the enamel that comes nearest to it, and by how much, CIEDE2000.
	Decides reduce.FlatID `json:"decides"`
	Nearest float64       `json:"nearest"`
	Words   string        `json:"words"`
}

// Idea is a change that keeps the design and tells a pair apart: one of
// Recipe, Edit and Plating is there.
type Idea struct {
	// Pair is its place in the list of pairs.
	Pair    int              `json:"pair"`
	Recipe  *sizing.Recipe   `json:"recipe,omitempty"`
	Edit    *reduce.Edit     `json:"edit,omitempty"`
	Plating sizing.PlatingID `json:"plating,omitempty"`
	// Shift is how far a colour moves, CIEDE2000; 0 for the others.
	Shift float64 `json:"shift"`
	// Fixes and Breaks count the pairs that it parts by colour, and that it makes
	// read as one.
	Fixes  int    `json:"fixes"`
	Breaks int    `json:"breaks"`
	Words  string `json:"words"`
}
