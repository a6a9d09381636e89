package calls

import (
	"math"

	"badgewright/sizing"
)

// hangs moves the eyes that parts hang by to where their places now are. Where
// nothing is drawn any more in or round one of them, its join is lost.
func (r *revision) hangs() sizing.Parts {
	p := r.design.Parts
	p.Joins = nil
	for _, j := range r.design.Parts.Joins {
		for _, e := range []*sizing.Eye{&j.Upper, &j.Lower} {
			e.At[0], e.At[1] = r.carried.Laid.At(e.At[0], e.At[1])
		}
		if r.drawnRound(&j.Upper) && r.drawnRound(&j.Lower) {
			p.Joins = append(p.Joins, j)
		} else {
			r.ref.Lost = append(r.ref.Lost, hangWords)
		}
	}
	return p
}

// drawnRound says whether anything is drawn under an eye and the metal round it,
// which may stand off the outline.
func (r *revision) drawnRound(e *sizing.Eye) bool {
	l := &r.design.Limits
	out := float64((l.Eye/2 + l.EyeRim).Px(sizing.ScaleFor(r.base.box, r.design.Size)))
	points := [][2]float64{e.At}
	const steps = 24
	for k := range steps + 1 {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / steps)
		points = append(points, [2]float64{e.At[0] + cos*out/float64(r.base.sep.W), e.At[1] + sin*out/float64(r.base.sep.H)})
	}
	return r.now.found.DrawnAlong(points)
}
