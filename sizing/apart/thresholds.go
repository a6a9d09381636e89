package apart

import (
	"fmt"

	"badgewright/reduce"
)

// Thresholds is what counts as told apart: data the person can change.
type Thresholds struct {
	// Gap is the least angle, minutes of arc, that a normal eye parts.
	Gap float64 `json:"gap"`
	// Letter and LetterBest are the least and the preferred height of capitals,
	// minutes of arc.
	Letter     float64 `json:"letter"`
	LetterBest float64 `json:"letterBest"`
	// Noticed is the S-CIELAB difference from which a detail is noticed.
	Noticed float64 `json:"noticed"`
	// Colour is the CIEDE2000 from which two enamels are told apart, and Metal
	// the same for an enamel and each reflection of the metal beside it.
	Colour float64 `json:"colour"`
	Metal  float64 `json:"metal"`
	// Lightness is the WCAG 2 contrast ratio from which two colours are told
	// apart by lightness alone, standing in for dim light.
	Lightness float64 `json:"lightness"`
}

// The usual thresholds.
const (
	gapArcmin  = 1  // ISO 8596: the gap of the ring that acuity 1 sees
	letterMin  = 16 // ISO 9241-303: the least height of characters
	letterBest = 20 // the same: 20 to 22 preferred
	ratioWCAG  = 3  // WCAG 2.1, 1.4.11, for graphics; dim light is this tool's reading of it
	// noticedDE is twice the 2.3 that is often called just noticeable in CIELAB
	// (from memory): nobody is looking for it (this tool's choice).
	noticedDE = 5
	// colourDE: half of it is two shades of one colour side by side (this tool's choice).
	colourDE = 10
	// metalDE is twice that, because a metal's colour is never still. Gold beside
	// yellow, silver beside pale grey and black nickel beside black then read as
	// one (common practice, no published source; the figure is this tool's choice).
	metalDE = 20
)

// Usual returns the usual thresholds.
func Usual() Thresholds {
	return Thresholds{Gap: gapArcmin, Letter: letterMin, LetterBest: letterBest, Noticed: noticedDE, Colour: colourDE, Metal: metalDE, Lightness: ratioWCAG}
}

// Check refuses thresholds that are none, in words.
func (t Thresholds) Check() error {
	for _, f := range []struct {
		what               string
		v, least, greatest float64
	}{
		{"gap of %.4g minutes of arc", t.Gap, 0.1, 60},
		{"least letter height of %.4g minutes of arc", t.Letter, 1, 300},
		{"preferred letter height of %.4g minutes of arc", t.LetterBest, 1, 300},
		{"noticed difference of %.4g", t.Noticed, 0.1, 100},
		{"colour difference of %.4g", t.Colour, 0.1, 100},
		{"difference from metal of %.4g", t.Metal, 0.1, 100},
		{"lightness ratio of %.4g to 1", t.Lightness, 1.01, 21},
	} {
		if !(f.v >= f.least && f.v <= f.greatest) {
			return &reduce.Refusal{
				What: fmt.Sprintf("A "+f.what+" tells nothing apart.", f.v),
				Do:   fmt.Sprintf("Give one from %.4g to %.4g.", f.least, f.greatest),
			}
		}
	}
	if t.LetterBest < t.Letter {
		return &reduce.Refusal{What: "The preferred letter height is less than the least.", Do: "Give a preferred height no less than the least."}
	}
	return nil
}
