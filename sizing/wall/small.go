package wall

import (
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// crumb is the area, in px2, below which a patch is nothing that was drawn but
// what a raster leaves in a sharp corner.
const crumb = 4

// fringePx is the width, in pixels, up to which enamel along metal, with
// something else on its other hand, is what soft edges leave there.
const fringePx = 1.5

// isGrain says whether a part of enamel is none: too few pixels, or a fringe.
func (m *Measured) isGrain(k int32) bool {
	if !m.v.enamel[m.parts.Label[k]] {
		return false
	}
	by := m.round.by[k]
	return m.area[k] < crumb || by&byMetal != 0 && by&(byEnamel|byOutside) != 0 && m.widest[k] <= fringePx
}

// tooSmall says whether an enamel part is below the smallest area.
func (m *Measured) tooSmall(k int32, scale unit.PxPerMM, l sizing.Limits) bool {
	least := l.AreaSize * float64(scale) * float64(scale)
	side := math.Sqrt(max(0, l.AreaSize)) * float64(scale)
	area := m.area[k]
	return !m.isGrain(k) && (area < least && side >= 4*m.shaky || math.Sqrt(max(0, area)) < threshold(side, m.shaky))
}

// smallAreas reports the enamel parts below the smallest area, and of those the
// pinholes in metal apart.
func (m *Measured) smallAreas(scale unit.PxPerMM, l sizing.Limits, gone []bool) (areas, pinholes []sizing.Finding) {
	for i, c := range m.parts.Label {
		k := int32(i)
		if !m.v.enamel[c] || gone[k] || !m.tooSmall(k, scale, l) {
			continue
		}
		gone[k] = true
		side := math.Sqrt(max(0, m.area[k]))
		if m.round.by[k] == byMetal && side < l.Line.Px(scale)-m.shaky {
			pinholes = append(pinholes, m.whole(k, sizing.Pinhole, side, l.Line, scale))
			continue
		}
		if f := m.smallArea(k, scale, l); f.Verdict != sizing.Holds {
			areas = append(areas, f)
		}
	}
	return areas, pinholes
}

// smallArea reports one enamel part; its width is the side of the square of its
// area.
func (m *Measured) smallArea(k int32, scale unit.PxPerMM, l sizing.Limits) sizing.Finding {
	return m.whole(k, sizing.SmallArea, math.Sqrt(max(0, m.area[k])), unit.MM(math.Sqrt(max(0, l.AreaSize))), scale)
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
