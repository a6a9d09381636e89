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

// The kinds of trouble spot.
const (
	ThinLine   Kind = "thin-line"   // metal narrower than Limits.Line
	NarrowArea Kind = "narrow-area" // enamel narrower than Limits.Area
	SmallArea  Kind = "small-area"  // one closed area of enamel below Limits.AreaSize (Thinnest, Limit: side of the square of that area)
	FadesOut   Kind = "fades-out"   // a line or an area that runs out to a point over a long way: nothing breaks (verdict Holds), but its end comes out shorter, by Length
	NoLine     Kind = "no-line"     // two enamels touch with no metal between
	NoEdge     Kind = "no-edge"     // enamel reaches the outline without outer edge
)

// Finding is a trouble spot: where a limit is broken, what was measured there
// and what the limit is. Places are in working pixels of the separation.
type Finding struct {
	Kind Kind          `json:"kind"`
	Flat reduce.FlatID `json:"flat"`
	// X and Y are the worst place; the box holds the whole spot.
	X  float64 `json:"x"`
	Y  float64 `json:"y"`
	X0 float64 `json:"x0"`
	Y0 float64 `json:"y0"`
	X1 float64 `json:"x1"`
	Y1 float64 `json:"y1"`
	// Path is the centreline of the spot, x and y in turn, thinned for drawing.
	Path     []float32 `json:"path"`
	Length   unit.MM   `json:"length"`   // of the centreline
	Thinnest unit.MM   `json:"thinnest"` // the least width measured
	Typical  unit.MM   `json:"typical"`  // the median width
	Error    unit.MM   `json:"error"`    // half-width of what the measurement cannot tell
	Limit    unit.MM   `json:"limit"`
	Verdict  Verdict   `json:"verdict"`
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
