package sizing

import "badgewright/sizing/unit"

// Limits is what the maker can hold: data the person can change, in mm unless
// said otherwise. The defaults are common practice, with no published source.
type Limits struct {
	Line     unit.MM `json:"line"`     // thinnest metal line
	Area     unit.MM `json:"area"`     // narrowest colour area that still takes a fill
	Edge     unit.MM `json:"edge"`     // outer edge
	AreaSize float64 `json:"areaSize"` // smallest colour area, mm2
	CutOut   unit.MM `json:"cutOut"`   // smallest through cut-out
	Bridge   unit.MM `json:"bridge"`   // narrowest bridge of metal that will not bend
	// Least height of capitals, raised (metal in enamel) and sunk (enamel in
	// metal); 0 when lettering is not to be looked for.
	Lettering     unit.MM `json:"lettering"`
	LetteringSunk unit.MM `json:"letteringSunk"`
	// Solid is how wide bare metal may be, each way, before it is noted that it
	// may want texture or a fill; 0 for never.
	Solid unit.MM `json:"solid"`
	// The hole that a jump ring goes through, and the metal round it.
	Eye    unit.MM `json:"eye,omitempty"`
	EyeRim unit.MM `json:"eyeRim,omitempty"`
	// Tip is the least radius of an outward tip; one that encloses fewer degrees
	// than TipAngle is noted. 0 for no look at them.
	Tip      unit.MM `json:"tip,omitempty"`
	TipAngle float64 `json:"tipAngle,omitempty"`
	// Push is the force in newtons of a finger at the end of an arm, which the arm
	// must stand without staying bent; 0 for no look at arms.
	Push float64 `json:"push,omitempty"`
}

// solidMM is the usual Limits.Solid: bare metal wider than this shows every
// scratch and ripple of its polish (common practice, no published source; the
// figure is this tool's).
const solidMM unit.MM = 5

// DefaultLimits returns the trade's usual limits for a making and a fill
// (common practice, no published source).
func DefaultLimits(m Making, f Fill) Limits {
	l := metalLimits(m, f)
	l.Eye, l.EyeRim, l.Tip, l.TipAngle, l.Push = eyeMM, eyeRimMM, tipMM, tipDegrees, pushN
	return l
}

// The usual limits of eyes, tips and arms, the same for every making (common
// practice, no published source).
const (
	eyeMM      unit.MM = 1.5
	eyeRimMM   unit.MM = 1.0
	tipMM      unit.MM = 0.3
	tipDegrees         = 40
	pushN              = 5
)

func metalLimits(m Making, f Fill) Limits {
	switch {
	case m == Cast:
		return Limits{Line: 0.30, Area: 0.40, Edge: 0.40, AreaSize: 0.40, CutOut: 1.2, Bridge: 1.5, Lettering: 2.0, LetteringSunk: 2.2, Solid: solidMM}
	case f == Hard:
		return Limits{Line: 0.25, Area: 0.35, Edge: 0.40, AreaSize: 0.30, CutOut: 1.5, Bridge: 1.5, Lettering: 1.8, LetteringSunk: 2.0, Solid: solidMM}
	default:
		return Limits{Line: 0.20, Area: 0.30, Edge: 0.30, AreaSize: 0.25, CutOut: 1.5, Bridge: 1.5, Lettering: 1.5, LetteringSunk: 2.0, Solid: solidMM}
	}
}
