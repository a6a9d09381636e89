package sizing

import (
	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// Verdict is one of three answers.
type Verdict string

// The three verdicts.
const (
	Holds      Verdict = "holds"
	Fails      Verdict = "fails"
	CannotTell Verdict = "cannot-tell" // the working raster is too coarse to say
)

// Kind is the kind of a trouble spot.
type Kind string

// The kinds of trouble spot. What a field of Finding means for one kind alone
// is said here.
const (
	// ThinLine is metal narrower than Limits.Line, or along the outline than
	// Limits.Edge, over more than one limit.
	ThinLine Kind = "thin-line"
	// NarrowArea is enamel narrower than Limits.Area over more than one limit.
	NarrowArea Kind = "narrow-area"
	// FadesOut is a line or an area that runs out to a point over a long way:
	// nothing breaks (verdict Holds), but its end comes out shorter, by Length.
	// Ends is where it passes the limit, then its tip. The longest are told one by
	// one; Count is more than 1 where the rest are summed up in the longest of them.
	FadesOut Kind = "fades-out"
	// RoundedCorners sums what is too short to be one of the three above: corners
	// that come out round (verdict Holds). Area is lost in all, of metal and
	// enamel; Count corners lose some; X, Y is the one that loses most.
	RoundedCorners Kind = "rounded-corners"

	// NoLine is where two enamels touch with no metal between, over Length.
	NoLine Kind = "no-line"
	// NoEdge is where enamel reaches the outline without outer edge, over Length.
	NoEdge Kind = "no-edge"
	// Gap is a short opening in a line or an outer edge, with metal at both ends,
	// through which two enamels, or an enamel and what lies outside, meet. Ends
	// are the two ends of the metal, Thinnest is the way between them, Typical the
	// width of the metal there. It is one at every size, or in a line a pixel or two
	// wide cannot be told at any.
	Gap Kind = "gap"
	// OpenArea is room that metal or enamel closes in but for a narrow opening to
	// the outside (below Limits.CutOut): it is background and will be cut away.
	// Ends are the two sides of the opening, Thinnest its width, Area the room's.
	// X, Y lies in the opening; Flat is what stands beside it.
	OpenArea Kind = "open-area"

	// SmallArea is one closed area of enamel below Limits.AreaSize; Thinnest,
	// Typical and Limit are sides of squares of such areas.
	SmallArea Kind = "small-area"
	// Pinhole is a hole in metal that is smaller than the thinnest line is wide:
	// an area of enamel or of background that nobody would miss. Thinnest is the
	// side of the square of its area, Limit is Limits.Line.
	Pinhole Kind = "pinhole"
	// MetalIsland is metal that stands alone in enamel with no place as wide as
	// Limits.Line and no longer than a few of them: a speck that will not stay.
	MetalIsland Kind = "metal-island"
	// SolidMetal is metal without a line or colour in it, over more than
	// Limits.Solid each way (verdict Holds): Thinnest is the diameter of the
	// largest disc, Area is of what is as wide as the limit.
	SolidMetal Kind = "solid-metal"
	// SmallLettering is a row of small parts of like height, lower than
	// Limits.Lettering (metal in enamel) or Limits.LetteringSunk (enamel in
	// metal). Thinnest and Typical are the height of its capitals, Count the
	// parts, Length the row's; Path is its base line. It is also one capital that
	// the person marked: then Path is the mark, and Length its height.
	SmallLettering Kind = "small-lettering"
	// SmallCutOut is a hole through the pin in which no disc of Limits.CutOut fits.
	SmallCutOut Kind = "small-cut-out"
	// ClutchShows is a fastening that stands out beyond the edge or over a cut-out
	// (verdict Holds: the pin can be made). X, Y is its middle, Thinnest the metal
	// round that, Limit the metal that would hide it, Typical by how much it shows.
	ClutchShows Kind = "clutch-shows"

	// LoosePart is a part of the pin that nothing joins to the rest. Ends are the
	// nearest places, of the rest and then of the part, Thinnest is the way between
	// them, Area the part's. Verdict Holds when it hangs by eyes that were drawn,
	// and Count is more than 1 where specks are summed up.
	LoosePart Kind = "loose-part"
	// GrownTogether is two eyes by which a part should hang that lie in one piece of
	// metal, so that nothing swings. Ends are the middles of the two, Thinnest is the
	// way between them.
	GrownTogether Kind = "grown-together"
	// WeakEye is a hole for a jump ring with less metal round it than
	// Limits.EyeRim, or none: Thinnest is that metal, Typical the width of the hole.
	// Where the hole is smaller than Limits.Eye, that is the limit and both are its
	// width; both are 0 where there is no hole.
	WeakEye Kind = "weak-eye"
	// ThinBridge is where the pin itself, not a line on it, is narrower than
	// Limits.Bridge: between two wider parts of it, or over a stretch so long that
	// it bends though it ends freely.
	ThinBridge Kind = "thin-bridge"
	// SharpTip is an outward tip: Thinnest is its radius, Angle what its sides
	// enclose. Verdict Holds where it is only a note that the tip is pointed.
	SharpTip Kind = "sharp-tip"
	// LongArm is an arm that a finger bends: Force at its tip, X, Y, is enough,
	// which is less than Limits.Push. Ends is where it bends, then its tip;
	// Length lies between them, Thinnest is the width where it bends, Typical the
	// mean of the arm, Limit the width that would do.
	LongArm Kind = "long-arm"
)

// Missing says whether a kind tells of metal that is not there: no size mends it.
func (k Kind) Missing() bool {
	switch k {
	case NoLine, NoEdge, Gap, OpenArea:
		return true
	}
	return false
}

// Outside stands in Finding.Other for what is no part of the pin.
const Outside reduce.FlatID = -2

// Finding is a trouble spot: where a limit is broken, what was measured there
// and what the limit is. Places are in working pixels of the separation.
type Finding struct {
	Kind Kind          `json:"kind"`
	Flat reduce.FlatID `json:"flat"`
	// Other is what lies on the other side of NoLine, NoEdge and Gap: a flat or
	// Outside, which it is for every other kind.
	Other reduce.FlatID `json:"other"`
	// X and Y are the worst place; the box holds the whole spot.
	X  float64 `json:"x"`
	Y  float64 `json:"y"`
	X0 float64 `json:"x0"`
	Y0 float64 `json:"y0"`
	X1 float64 `json:"x1"`
	Y1 float64 `json:"y1"`
	// Ends are two places, x and y in turn, for Gap, OpenArea, FadesOut, LoosePart,
	// GrownTogether and LongArm; 0 for every other kind.
	Ends [4]float64 `json:"ends"`
	// Path is the centreline of the spot, x and y in turn, thinned for drawing.
	Path     []float32 `json:"path"`
	Length   unit.MM   `json:"length"`   // of the centreline
	Thinnest unit.MM   `json:"thinnest"` // the least width measured
	Typical  unit.MM   `json:"typical"`  // the median width
	// Area in mm2, of the kinds that say so; 0 for the others.
	Area float64 `json:"area"`
	// Angle in degrees, of SharpTip, and Force in newtons, of LongArm; 0 for the others.
	Angle float64 `json:"angle,omitempty"`
	Force float64 `json:"force,omitempty"`
	// Count is how many places or parts one finding sums up, at least 1.
	Count   int     `json:"count"`
	Error   unit.MM `json:"error"` // half-width of what the measurement cannot tell
	Limit   unit.MM `json:"limit"`
	Verdict Verdict `json:"verdict"`
	// NeedPx is the long side in pixels of a drawing that could tell; 0 unless
	// the verdict is CannotTell.
	NeedPx int `json:"needPx"`
}

// coarse is the share of the limit that an error may reach before a measure
// close to the limit can no longer be judged: at a quarter, a line of 0.2 mm
// is known to 0.05 mm (this tool's choice).
const coarse = 0.25

// Judge compares a measured width with a limit. Within the error of the limit
// a fine measure holds, so that a line drawn at the limit does not fail by the
// raster's grain, and a coarse one cannot tell.
func Judge(measured, err, limit unit.MM) Verdict {
	near := measured+err >= limit && measured-err < limit
	switch {
	case near && err > coarse*limit:
		return CannotTell
	case measured+err >= limit:
		return Holds
	default:
		return Fails
	}
}
