// Package canvas says, before anything is drawn, what a pin of a size asks of
// the drawing: how large a canvas, and every limit of the maker in its pixels.
// It draws the guide that an artist lays under the drawing.
package canvas

import (
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Plan is a pin that is not drawn yet.
type Plan struct {
	Size   unit.MM       `json:"size"` // of its longer side
	Making sizing.Making `json:"making"`
	Fill   sizing.Fill   `json:"fill"`
	Limits sizing.Limits `json:"limits"`
	// W and H are the canvas that the artist has, px; 0 takes the one recommended.
	W int `json:"w"`
	H int `json:"h"`
}

// Canvas is a canvas with the pin's box on it: the box that the pin is to fill
// along its longer side. What lies round it is left for rulers and samples.
type Canvas struct {
	W, H  int
	Scale unit.PxPerMM
	// X0, Y0, X1 and Y1 are the box, whole px.
	X0, Y0, X1, Y1 int
}

// What is taken for a canvas: smaller ones are icons, larger ones than are
// opened again are of no use, and on a narrow strip no pin lies (this tool's
// bounds).
const (
	leastSide    = 64
	widestCanvas = 4
)

// marginMM is what is left round the pin's box for rulers and samples.
const marginMM unit.MM = 6

// marginShare is the most of the shorter side that they may take at each end.
const marginShare = 0.2

// Canvas returns the canvas of a plan: the artist's own, or the one recommended.
func (p *Plan) Canvas() (Canvas, error) {
	if err := (sizing.Size{MM: p.Size}).Check(); err != nil {
		return Canvas{}, err
	}
	if p.W == 0 && p.H == 0 {
		return p.recommended(), nil
	}
	if err := check(p.W, p.H); err != nil {
		return Canvas{}, err
	}
	return laid(p.W, p.H, p.Size), nil
}

// check refuses a canvas that is none, in words.
func check(w, h int) error {
	short, long := min(w, h), max(w, h)
	switch {
	case short < leastSide:
		return &reduce.Refusal{
			What: fmt.Sprintf("A canvas of %d × %d px is too small to draw on.", w, h),
			Do:   fmt.Sprintf("Give at least %d px each way.", leastSide),
		}
	case long > widestCanvas*short:
		return &reduce.Refusal{
			What: fmt.Sprintf("A canvas of %d × %d px is a strip.", w, h),
			Do:   fmt.Sprintf("Give one at most %d times as long as it is wide.", widestCanvas),
		}
	case int64(w)*int64(h) > reduce.MostPixels:
		return &reduce.Refusal{
			What: fmt.Sprintf("A canvas of %d × %d px has %d megapixels; no drawing of more than %d is opened.", w, h, int64(w)*int64(h)/1e6, reduce.MostPixels/1_000_000),
			Do:   "Give a smaller one; the recommended one is fine enough.",
		}
	}
	return nil
}

// laid places the pin's box on a canvas that the artist has, as large as the
// rulers and samples beside it let it be.
func laid(w, h int, size unit.MM) Canvas {
	short, long := float64(min(w, h)), float64(max(w, h))
	margin := int(math.Round(min(float64(marginMM)*long/float64(size+2*marginMM), marginShare*short)))
	return boxed(w, h, max(w, h)-2*margin, size)
}

// boxed places a box whose longer side has some pixels. It lies on whole
// pixels, and the scale is what that side then has.
func boxed(w, h, long int, size unit.MM) Canvas {
	margin := (max(w, h) - long) / 2
	return Canvas{
		W: w, H: h, X0: margin, Y0: margin, X1: w - margin, Y1: h - margin,
		Scale: unit.PxPerMM(float64(max(w, h)-2*margin) / float64(size)),
	}
}

// BoxW and BoxH are the pin's box in millimetres.
func (c Canvas) BoxW() unit.MM { return c.Scale.MM(float64(c.X1 - c.X0)) }
func (c Canvas) BoxH() unit.MM { return c.Scale.MM(float64(c.Y1 - c.Y0)) }

// PerInch is the scale in px per inch, as paint programs ask for it.
func (c Canvas) PerInch() float64 { return float64(c.Scale) * unit.MMPerInch }

// comfortablePx is how many pixels wide a line at the limit is on the
// recommended canvas: one more or less is then an eighth of the limit, half of
// what can still be judged, and a soft brush looks like a line (this tool's
// choice).
const comfortablePx = 8

// A recommended canvas has a round number of pixels, and to the millimetre as
// well, so that brushes come out in whole pixels; and it is no larger than any
// tablet paints on (this tool's choice).
const (
	roundSide    = 100
	roundScale   = 10
	greatestSide = 4000
)

// recommended returns the square canvas that is fine enough and not needlessly
// large.
func (p *Plan) recommended() Canvas {
	perMM := up(comfortablePx/float64(p.thinnest()), roundScale)
	side := int(up(float64(p.Size+2*marginMM)*perMM, roundSide))
	if side > greatestSide {
		return laid(greatestSide, greatestSide, p.Size)
	}
	// The margins are of whole pixels, so the box has an even number like the canvas.
	return boxed(side, side, 2*int(math.Round(float64(p.Size)*perMM/2)), p.Size)
}

// up rounds up to a multiple; what a sum of floats leaves does not count.
func up(v, step float64) float64 { return math.Ceil(v/step-hair) * step }

// noLimit stands in for a limit of nothing, mm: what no maker holds.
const noLimit unit.MM = 0.05

// thinnest is the finest width that the maker's limits speak of.
func (p *Plan) thinnest() unit.MM {
	return max(noLimit, min(p.Limits.Line, p.Limits.Area, p.Limits.Edge))
}
