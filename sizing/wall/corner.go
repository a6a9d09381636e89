package wall

import (
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// worthNoting is the area in mm2 that corners lose in all before it is said:
// as much as the smallest area that is filled (this tool's choice).
const worthNoting = 0.25

// corners sums up what is too short to be a spot: the tips of corners, of metal
// and of enamel. in says which points are part of spots. Corners of more than 75
// degrees have no centreline and lose next to nothing.
func (m *Measured) corners(in, gone []bool, walk *walker, limits [groups]unit.MM, scale unit.PxPerMM) (f sizing.Finding, some bool) {
	var half [groups]float64
	for g, mm := range limits {
		half[g] = mm.Px(scale) / 2
	}
	short := make([]bool, len(m.lines.points))
	for i := range m.lines.points {
		p := &m.lines.points[i]
		short[i] = !in[i] && !gone[p.part] && float64(p.tau) < 2*half[p.group]-m.shaky
	}
	f = sizing.Finding{Kind: sizing.RoundedCorners, Other: sizing.Outside, Error: scale.MM(m.shaky), Limit: limits[lineGroup], Verdict: sizing.Holds}
	f.X0, f.Y0 = math.MaxFloat64, math.MaxFloat64
	most := 0.0
	for _, p := range m.lines.pieces(short) {
		q := &m.lines.points[p[0]]
		length := walk.length(p)
		if length <= grainPx || !m.goesOn(p, short) {
			continue
		}
		lost := lostAt(length+spare, half[q.group])
		f.Count, f.Area = f.Count+1, f.Area+lost
		x, y := float64(q.x)+0.5, float64(q.y)+0.5
		f.X0, f.Y0, f.X1, f.Y1 = min(f.X0, x), min(f.Y0, y), max(f.X1, x), max(f.Y1, y)
		if lost > most {
			most, f.X, f.Y, f.Flat = lost, x, y, m.flatAt(int(q.x), int(q.y))
			f.Length = scale.MM(length)
		}
	}
	f.Area = areaMM(f.Area, scale)
	return f, f.Area >= worthNoting
}

// goesOn says whether a piece leads on to something wider.
func (m *Measured) goesOn(p piece, short []bool) bool {
	for _, i := range p {
		for _, n := range m.lines.of(i) {
			if !short[n] {
				return true
			}
		}
	}
	return false
}

// lostAt returns the area of a corner that no disc of radius r covers, given
// how far the tip lies from the disc. Where the sides make an angle of 2a, the
// middle of the disc is r/sin a from the tip: the kite between tip, middle and
// the points of touch, less the sector of the disc in it.
func lostAt(beyond, r float64) float64 {
	if !(r > 0) {
		return 0
	}
	s := r / (beyond + r)
	a := math.Asin(s)
	return float64(r*r) * (math.Sqrt(1-s*s)/s - math.Pi/2 + a)
}
