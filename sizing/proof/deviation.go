package proof

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// DeviationKind is the kind of a difference between what was asked for and what is shown.
type DeviationKind string

// The kinds of difference.
const (
	Mirrored DeviationKind = "mirrored" // the art is shown left for right
	// SizeStated is a size that the proof states and that was not asked for;
	// SizeDrawn the same by a measure marked in the picture.
	SizeStated DeviationKind = "size-stated"
	SizeDrawn  DeviationKind = "size-drawn"
	Stretched  DeviationKind = "stretched" // wider or higher than its other side allows

	// OutlineMoved is outline that lies further out (Shown above 0) or in than asked
	// for, by ShownMM, along Length.
	OutlineMoved DeviationKind = "outline-moved"
	PartMissing  DeviationKind = "part-missing"   // a part of the pin that is not there
	PartMoved    DeviationKind = "part-moved"     // a part that hangs elsewhere: the chain is longer or shorter
	CutOutFilled DeviationKind = "cut-out-filled" // a hole that is not there

	LineMissing DeviationKind = "line-missing"
	LineAdded   DeviationKind = "line-added"
	LineThinner DeviationKind = "line-thinner"
	LineThicker DeviationKind = "line-thicker"

	// AreasMerged is a line that is missing between two areas that have one colour
	// now; AreaSplit an area that a line not asked for parts.
	AreasMerged    DeviationKind = "areas-merged"
	AreaSplit      DeviationKind = "area-split"
	AreaRecoloured DeviationKind = "area-recoloured" // one area, or all of a colour (Whole)
	PatchAdded     DeviationKind = "patch-added"     // something in an area that was not asked for

	PostMissing DeviationKind = "post-missing"
	PostMoved   DeviationKind = "post-moved"
	PostAdded   DeviationKind = "post-added"

	// AreaUnfilled is an area that shows bare metal, and ColoursSwapped two colours of
	// a finished pin that have changed places.
	AreaUnfilled   DeviationKind = "area-unfilled"
	ColoursSwapped DeviationKind = "colours-swapped"
)

// Deviation is one place where a picture shows something else than was asked for.
type Deviation struct {
	Number int           `json:"number"`
	Kind   DeviationKind `json:"kind"`
	// X and Y are its place in working px of the pin, Left and Top in mm from the
	// left and the top of the silhouette as seen from the front, and Box in px what
	// it takes.
	X    float64    `json:"x"`
	Y    float64    `json:"y"`
	Left unit.MM    `json:"left"`
	Top  unit.MM    `json:"top"`
	Box  [4]float64 `json:"box"`
	// Path follows it, x and y in turn, in working px; empty where the box says all.
	Path []float32 `json:"path,omitempty"`
	// Behind says that it lies on the view from behind.
	Behind bool `json:"behind,omitempty"`
	// Flat is the colour concerned, sizing.Outside for none; Other the second one.
	Flat  reduce.FlatID `json:"flat"`
	Other reduce.FlatID `json:"other"`
	Whole bool          `json:"whole,omitempty"` // every area of the flat
	// Asked and Shown in words, and as what they are: a length in mm, a colour.
	Asked    string       `json:"asked"`
	Shown    string       `json:"shown"`
	AskedMM  unit.MM      `json:"askedMM,omitempty"`
	ShownMM  unit.MM      `json:"shownMM,omitempty"`
	AskedRGB *colour.RGB8 `json:"askedRGB,omitempty"`
	ShownRGB *colour.RGB8 `json:"shownRGB,omitempty"`
	DeltaE   float64      `json:"deltaE,omitempty"` // CIEDE2000
	Length   unit.MM      `json:"length,omitempty"`
	// Verdict is Fails where the two differ by more than the tolerance, CannotTell
	// where the picture is too coarse to say.
	Verdict sizing.Verdict `json:"verdict"`
	Words   string         `json:"words"`
}

// Tolerances say from when on a picture counts as showing something else. They
// are this tool's choice and the person's to change.
type Tolerances struct {
	// Outline is how far the outline may lie off its place, mm, over OutlineRun mm.
	Outline    unit.MM `json:"outline"`
	OutlineRun unit.MM `json:"outlineRun"`
	// A line may be wider or narrower by Line mm, and by LineShare of its width,
	// over LineRun mm; and be missing over LineGone mm.
	Line      unit.MM `json:"line"`
	LineShare float64 `json:"lineShare"`
	LineRun   unit.MM `json:"lineRun"`
	LineGone  unit.MM `json:"lineGone"`
	// Colour is how far a colour may lie off, CIEDE2000.
	Colour float64 `json:"colour"`
	// Added is the least length, mm, of something that was not asked for.
	Added unit.MM `json:"added"`
	// Post is how far a post may stand off its place, mm.
	Post unit.MM `json:"post"`
	// Stated and Drawn are the shares by which a size that is stated, or is measured
	// in the picture, may be off; Stretch that by which width and height may be.
	Stated  float64 `json:"stated"`
	Drawn   float64 `json:"drawn"`
	Stretch float64 `json:"stretch"`
}

// Usual are the usual tolerances. An outline off by 0.2 mm shows when two pins
// are laid on each other; a colour off by 3.5 is plainly another beside the first.
func Usual() Tolerances {
	return Tolerances{
		Outline: 0.2, OutlineRun: 0.8,
		Line: 0.09, LineShare: 0.3, LineRun: 1, LineGone: 0.6,
		Colour: 3.5, Added: 0.8, Post: 1,
		Stated: 0.015, Drawn: 0.03, Stretch: 0.015,
	}
}

// HeldAgainst is everything in which a picture differs from what was asked for.
type HeldAgainst struct {
	Fit         Fit         `json:"fit"`
	Tolerances  Tolerances  `json:"tolerances"`
	Differences []Deviation `json:"differences"`
	// Colours shows each flat beside what is shown of it, differing or not.
	Colours []ColourShown `json:"colours"`
	Metal   colour.RGB8   `json:"metal"` // as shown
	// Back says that a view from behind was found in the picture.
	Back bool `json:"back"`
	// Notes say what could not be looked at, and why.
	Notes []string `json:"notes"`
	Words string   `json:"words"`
}

// ColourShown is a flat as asked for and as shown.
type ColourShown struct {
	Flat   reduce.FlatID `json:"flat"`
	Name   string        `json:"name"`
	Asked  colour.RGB8   `json:"asked"`
	Shown  colour.RGB8   `json:"shown"`
	DeltaE float64       `json:"deltaE"`
	Seen   bool          `json:"seen"` // false where its areas are too small in the picture
}
