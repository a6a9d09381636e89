package unit

import "fmt"

// CSSPxPerMM is the scale a style sheet pretends to: 96 px to the inch (CSS
// Values and Units, absolute lengths). A real screen is seldom true to it.
const CSSPxPerMM = 96 / MMPerInch

// The bank card against which a screen is checked: ISO/IEC 7810, ID-1.
const (
	CardWidth  MM = 85.60
	CardHeight MM = 53.98
)

// DevicePxPerMM is the scale of a screen: its own pixels per millimetre of glass.
type DevicePxPerMM float64

// A screen outside these bounds is a slip of the hand, not a screen: a large
// television has about 1.4 device px per mm, the densest phone about 32.
const (
	coarsestScreen DevicePxPerMM = 1
	finestScreen   DevicePxPerMM = 40
)

// Calibrate returns the scale of a screen on which an object of known width
// covers some device pixels; what cannot be a screen is a *Mistake.
func Calibrate(devicePx float64, object MM) (DevicePxPerMM, error) {
	if !(object > 0) || !(devicePx > 0) {
		return 0, &Mistake{What: "The check has no width.", Do: "Lay the card or ruler on the screen and pull the frame to its edges."}
	}
	scale := DevicePxPerMM(devicePx / float64(object))
	if err := scale.Check(); err != nil {
		return 0, err
	}
	return scale, nil
}

// Check refuses a scale no screen has, in words.
func (s DevicePxPerMM) Check() error {
	switch {
	case !(s >= coarsestScreen):
		return &Mistake{What: fmt.Sprintf("A screen with %.2g pixels per mm is coarser than any made.", float64(s)), Do: "Pull the frame to the edges of the card and try again."}
	case s > finestScreen:
		return &Mistake{What: fmt.Sprintf("A screen with %.0f pixels per mm is finer than any made.", float64(s)), Do: "Pull the frame to the edges of the card and try again."}
	}
	return nil
}

// GuessScreen is the scale of a screen nobody has checked, from its ratio of
// device pixels to CSS pixels at no zoom. It must be said to be a guess.
func GuessScreen(ratio float64) DevicePxPerMM { return DevicePxPerMM(ratio * CSSPxPerMM) }

// CSSPx returns how many CSS pixels show a length at true size, when ratio is
// the device pixels in one CSS pixel now (page zoom is in it) and pinch the
// scale of the visual viewport (1 when nothing is pinched). Both above 0.
func (s DevicePxPerMM) CSSPx(m MM, ratio, pinch float64) float64 {
	return float64(m) * float64(s) / (ratio * pinch)
}
