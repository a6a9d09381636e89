package eye

import (
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// Viewing is how a pin is looked at.
type Viewing struct {
	Distance unit.MM `json:"distance"` // from the eye
	// Acuity is decimal visual acuity (ISO 8596): 1 for a normal eye, 0.5 for one
	// that needs everything twice as large.
	Acuity float64 `json:"acuity"`
}

// The distances and acuities that can be asked for. No eye focuses nearer than
// a hand's breadth, past 20 m a pin is a dot; the acuities go a little beyond
// the series of ISO 8596 on either side (this tool's bounds).
const (
	LeastDistance    unit.MM = 100
	GreatestDistance unit.MM = 20000
	LeastAcuity              = 0.05
	GreatestAcuity           = 3
)

// The distances of the job.
const (
	InTheHand      unit.MM = 400
	OnTheLapel     unit.MM = 1000
	AcrossTheTable unit.MM = 2000
)

// Check refuses a distance or an acuity that is none, in words.
func (v Viewing) Check() error {
	if !(v.Distance >= LeastDistance && v.Distance <= GreatestDistance) {
		return &reduce.Refusal{
			What: fmt.Sprintf("Nobody looks at a pin from %.4g mm.", float64(v.Distance)),
			Do:   fmt.Sprintf("Give a distance from %.0f mm to %.0f m.", float64(LeastDistance), float64(GreatestDistance)/1000),
		}
	}
	if !(v.Acuity >= LeastAcuity && v.Acuity <= GreatestAcuity) {
		return &reduce.Refusal{
			What: fmt.Sprintf("No eye has an acuity of %.4g.", v.Acuity),
			Do:   fmt.Sprintf("Give a decimal acuity from %.2f to %.0f; 1 is a normal eye.", LeastAcuity, float64(GreatestAcuity)),
		}
	}
	return nil
}

// Near is the distance from which a normal eye sees as much: the distance over
// the acuity. That is this tool's convention, and exact for what is told apart
// by angle alone.
func (v Viewing) Near() unit.MM { return unit.MM(float64(v.Distance) / v.Acuity) }

// degree in radians.
const degree = math.Pi / 180

// Size is how large a thing is that subtends an angle (minutes of arc) for a
// normal eye: 2 D tan(angle/2), at the distance that acuity makes of it.
func (v Viewing) Size(arcmin float64) unit.MM {
	return unit.MM(2 * float64(v.Near()) * math.Tan(arcmin/120*degree))
}

// Arcmin is the angle that a length subtends, for a normal eye.
func (v Viewing) Arcmin(size unit.MM) float64 {
	return 120 / degree * math.Atan(float64(size)/(2*float64(v.Near())))
}

// SamplesPerDegree is how many pixels of a pitch (mm) come to a degree: one
// over the angle of a pixel, as the S-CIELAB authors' code has it.
func (v Viewing) SamplesPerDegree(pitch unit.MM) float64 {
	return degree / math.Atan(float64(pitch)/float64(v.Near()))
}
