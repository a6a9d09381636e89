package wall

import (
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// crumb is the area, in px2, below which a patch of enamel is no area that was
// drawn but what a raster leaves in a sharp corner.
const crumb = 4

// tooSmall returns the enamel parts below the smallest area.
func (m *Measured) tooSmall(scale unit.PxPerMM, l sizing.Limits) []int32 {
	var parts []int32
	least := l.AreaSize * float64(scale) * float64(scale)
	side := math.Sqrt(max(0, l.AreaSize)) * float64(scale)
	under := threshold(side, m.shaky)
	for k, c := range m.parts.Label {
		if m.v.enamel[c] && m.area[k] >= crumb && (m.area[k] < least && side >= 4*m.shaky || math.Sqrt(max(0, m.area[k])) < under) {
			parts = append(parts, int32(k))
		}
	}
	return parts
}

// smallAreas reports them; their width is the side of the square of that area.
func (m *Measured) smallAreas(scale unit.PxPerMM, l sizing.Limits) []sizing.Finding {
	var found []sizing.Finding
	limit := unit.MM(math.Sqrt(max(0, l.AreaSize)))
	for _, k := range m.tooSmall(scale, l) {
		box := m.boxes[k]
		x, y := m.inside(k)
		side := scale.MM(math.Sqrt(max(0, m.area[k])))
		f := sizing.Finding{
			Kind: sizing.SmallArea, Flat: m.flatOf(k), Other: sizing.Outside, Count: 1, X: x, Y: y,
			X0: box[0], Y0: box[1], X1: box[2], Y1: box[3],
			Length:   scale.MM(math.Hypot(box[2]-box[0], box[3]-box[1])),
			Thinnest: side, Typical: side, Error: scale.MM(m.shaky), Limit: limit,
			Area: m.area[k] / (float64(scale) * float64(scale)),
		}
		m.judge(&f, scale, m.shaky)
		if f.Verdict != sizing.Holds {
			found = append(found, f)
		}
	}
	return found
}

// inside returns a point of a part: its middle, or the middle of the run of
// pixels nearest to it.
func (m *Measured) inside(k int32) (x, y float64) {
	x, y = m.middle[k][0], m.middle[k][1]
	bestX, bestY, best := x, y, math.MaxFloat64
	for row := int(m.boxes[k][1]); row < int(m.boxes[k][3]); row++ {
		for _, r := range m.parts.Runs[m.parts.Row[row]:m.parts.Row[row+1]] {
			if r.Comp != k {
				continue
			}
			px, py := min(max(x, float64(r.X0)+0.5), float64(r.X1)-0.5), float64(row)+0.5
			if d := math.Hypot(px-x, py-y); d < best {
				bestX, bestY, best = px, py, d
			}
		}
	}
	return bestX, bestY
}

func (m *Measured) flatOf(part int32) reduce.FlatID {
	c := m.parts.Label[part]
	if int(c) < len(m.s.Flats) {
		return m.s.Flats[c].ID
	}
	return 0
}
