package sizing

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// Making is how the metal is made.
type Making string

// Fill is what the recesses take.
type Fill string

// The makings and fills of the trade.
const (
	Struck Making = "struck"
	Cast   Making = "cast"

	Soft     Fill = "soft"
	Hard     Fill = "hard"
	Unfilled Fill = "none"
)

// SizeBy says which measure of the outline a size is.
type SizeBy string

// The measures by which a size can be given.
const (
	ByWidth   SizeBy = "width"
	ByHeight  SizeBy = "height"
	ByLongest SizeBy = "longest"
	ByMean    SizeBy = "mean" // the mean of width and height
)

// Size is the size asked for, of the silhouette without its background.
type Size struct {
	MM unit.MM `json:"mm"`
	By SizeBy  `json:"by"`
}

// RecipeKind names a built or mended detail with a width.
type RecipeKind string

// The recipes.
const (
	OuterEdge  RecipeKind = "outer-edge"  // metal along the whole outline where the art has none
	BuildLines RecipeKind = "build-lines" // metal between enamels that touch
	DrawLine   RecipeKind = "draw-line"   // metal along Points
	EraseLine  RecipeKind = "erase-line"  // no metal along Points
)

// Recipe is a change with a width in mm, applied by wall at a size. Width 0
// means: as thin as the limits allow.
type Recipe struct {
	Kind  RecipeKind `json:"kind"`
	Width unit.MM    `json:"width"`
	// Points of a line drawn or erased by hand, in shares (0..1) of the
	// drawing's width and height, so that they outlive a change of raster.
	Points [][2]float64 `json:"points,omitempty"`
	// Proposed is true while the tool proposes it and the person has not said yes.
	Proposed bool `json:"proposed,omitempty"`
}

// PostCount is the person's choice of posts: 0 leaves it to the tool.
type PostCount int

// Design is one die: a drawing with its revisions, the flat drawing made of
// it, and everything that is the same for all its versions.
type Design struct {
	ID       string        `json:"id"`
	Name     string        `json:"name"`
	Drawings []DrawingRef  `json:"drawings"` // the one on the sheet last
	Colours  int           `json:"colours"`  // enamels asked for, 1..12
	Edits    []reduce.Edit `json:"edits"`
	Recipes  []Recipe      `json:"recipes"`
	// Lettering is the capitals that the person marked, to be told how they hold.
	Lettering []LetterMark `json:"lettering,omitempty"`
	Parts     Parts        `json:"parts,omitempty,omitzero"`
	Size      Size         `json:"size"`
	Making    Making       `json:"making"`
	Fill      Fill         `json:"fill"`
	Limits    Limits       `json:"limits"`
	Base      BaseMetal    `json:"base"`
	Thickness unit.MM      `json:"thickness"`
	Posts     PostCount    `json:"posts"`
	Back      Back         `json:"back,omitempty"`
	Extras    Extras       `json:"extras,omitempty,omitzero"`
	Versions  []Version    `json:"versions"`
}

// Version is one way to colour and plate a design.
type Version struct {
	ID      string    `json:"id"`
	Name    string    `json:"name"`
	Plating PlatingID `json:"plating"`
	// Colours replaces the colours of flats in this version only, and holds their maker's codes.
	Colours  []VersionColour `json:"colours"`
	Quantity int             `json:"quantity"` // pieces
}

// VersionColour is what one flat is ordered as in one version.
type VersionColour struct {
	Flat reduce.FlatID `json:"flat"`
	// RGB takes the place of the drawing's colour; without it that stays.
	RGB *colour.RGB8 `json:"rgb,omitempty"`
	// Code is what a maker's colour list calls it, and Named the name beside the code.
	Code  string `json:"code,omitempty"`
	Named string `json:"named,omitempty"`
	// Finish sets the fill, or the metal, apart from the plain one.
	Finish Finish `json:"finish,omitempty"`
}

// The sizes that can be asked for: below 5 mm nothing holds, and past 150 mm a
// thing is no longer a pin (this tool's bounds).
const (
	LeastSize    unit.MM = 5
	GreatestSize unit.MM = 150
)

// Check refuses a size that is no size for a pin, in words.
func (s Size) Check() error {
	if !(s.MM >= LeastSize && s.MM <= GreatestSize) {
		return &reduce.Refusal{
			What: fmt.Sprintf("A size of %.4g mm is not one a pin can have.", float64(s.MM)),
			Do:   fmt.Sprintf("Give a size from %.0f to %.0f mm.", float64(LeastSize), float64(GreatestSize)),
		}
	}
	return nil
}
