package wall

import "badgewright/reduce"

// Touch is what lies under a point.
type Touch struct {
	Label uint8   // index into the flats; None off the pin
	Area  float64 // px2, of the one closed area or of all the metal joined to it
	Width float64 // px, of the largest disc that fits there and covers the point
	Built bool    // metal that a recipe added
}

// At says what lies under a point, in working pixels.
func (m *Measured) At(x, y float64) Touch {
	px, py := int(x), int(y)
	if !(x >= 0 && y >= 0) || px >= m.s.W || py >= m.s.H {
		return Touch{Label: reduce.None}
	}
	i := py*m.s.W + px
	t := Touch{Label: m.s.Labels[i]}
	if t.Label == reduce.None {
		return t
	}
	part := m.parts.At(px, py)
	t.Area = m.area[part]
	t.Width = m.widthAt(x-0.5, y-0.5, part)
	t.Built = m.s.Built != nil && m.s.Built[i]
	return t
}

// widthAt returns the width of the widest disc of a part that covers a point,
// or where none does (a corner), of the disc that comes nearest.
func (m *Measured) widthAt(x, y float64, part int32) float64 {
	widest, nearest, least := 0.0, 0.0, -1.0
	for i := range m.lines.points {
		p := &m.lines.points[i]
		if p.part != part {
			continue
		}
		dx, dy, r := float64(p.x)-x, float64(p.y)-y, float64(p.width)/2
		gap := sqrt(dx*dx+dy*dy) - r
		if gap <= 0.5 && 2*r > widest {
			widest = 2 * r
		}
		if least < 0 || gap < least {
			least, nearest = gap, 2*r
		}
	}
	if widest > 0 {
		return widest
	}
	return nearest
}
