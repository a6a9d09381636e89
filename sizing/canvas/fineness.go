package canvas

import (
	"fmt"
	"math"

	"badgewright/sizing/unit"
)

// Fineness says whether a canvas is fine enough for its limits.
type Fineness string

// The three answers.
const (
	Fine   Fineness = "fine"
	Rough  Fineness = "rough"  // can be judged, but a pixel is a large step
	Coarse Fineness = "coarse" // cannot be judged
)

// surePx is how many pixels a limit must be to be judged whatever the edges are
// like: a hard edge is known to half a pixel, and that may be a quarter of the
// limit (sizing.Judge). Below easyPx one pixel more or less is a fifth of the
// limit (this tool's choice).
const (
	surePx = 2
	easyPx = 5
)

// Fineness judges a canvas.
func (p *Plan) Fineness(c Canvas) Fineness {
	switch n := p.thinnest().Px(c.Scale); {
	case n < surePx:
		return Coarse
	case n < easyPx:
		return Rough
	}
	return Fine
}

// needless is how many pixels wide a line at the limit is on a canvas that only
// makes a file slow (this tool's choice).
const needless = 24

// Says tells how a canvas serves the plan, in a sentence or two.
func (p *Plan) Says(c Canvas) string {
	line := p.thinnest()
	n := line.Px(c.Scale)
	wide := fmt.Sprintf("%s is %s wide here", unit.InMM(line, 2), tenth(n))
	better := p.recommended().W
	switch f := p.Fineness(c); {
	case f == Coarse:
		return fmt.Sprintf("Too coarse: %s, so nobody could tell whether a line holds. Draw on at least %d px, better on %d px.", wide, p.sureSide(c), better)
	case f == Rough:
		return fmt.Sprintf("It will do, but %s: one pixel more or less is %s. Better draw on %d px.", wide, unit.InMM(c.Scale.MM(1), 2), better)
	case n > needless:
		return fmt.Sprintf("Finer than it need be: %s. %d px would do, and make a lighter file.", wide, better)
	}
	return fmt.Sprintf("Fine enough: %s, so one pixel more or less does no harm.", wide)
}

// Why tells why the recommended canvas is recommended.
func (p *Plan) Why(c Canvas) string {
	return fmt.Sprintf("%.0f px to the millimetre (%.0f to the inch): the thinnest thing that the maker holds, %s, is then %s wide. %d would do for the tool to judge it by; more makes it easy to draw, and much more only makes a heavy file.",
		float64(c.Scale), c.PerInch(), unit.InMM(p.thinnest(), 2), tenth(p.thinnest().Px(c.Scale)), surePx)
}

// sureSide is the long side, in full tens, at which a canvas of these
// proportions can be judged.
func (p *Plan) sureSide(c Canvas) int {
	const step = 10
	times := surePx / p.thinnest().Px(c.Scale)
	return int(math.Ceil(float64(max(c.W, c.H))*times/step)) * step
}

// tenth prints pixels to a tenth, if there is one.
func tenth(n float64) string {
	if math.Abs(n-math.Round(n)) < 0.05 {
		return fmt.Sprintf("%.0f px", n)
	}
	return fmt.Sprintf("%.1f px", n)
}
