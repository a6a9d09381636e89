// Package unit gives numbers with a unit a type of their own.
package unit

// MM is a length in millimetres.
type MM float64

// PxPerMM is a scale: working pixels per millimetre.
type PxPerMM float64

// Grams is a mass.
type Grams float64

// MMPerInch is exact by definition (international inch, 1959).
const MMPerInch = 25.4

// Px returns the length in pixels at the scale.
func (m MM) Px(s PxPerMM) float64 { return float64(m) * float64(s) }

// MM returns the length of a number of pixels at the scale (which must not be 0).
func (s PxPerMM) MM(px float64) MM { return MM(px / float64(s)) }

// Inches returns the length in inches.
func (m MM) Inches() float64 { return float64(m) / MMPerInch }
