package wall

import "badgewright/reduce/mask"

// middles returns centreline points in the middles of parts whose centreline
// misses it: in a disc of just so many pixels the nearest places of neighbours
// never lie on opposite sides.
func (m *Measured) middles(ridge []mask.RidgePoint) (extra []mask.RidgePoint) {
	widest := make([]int32, len(m.parts.Label))
	for i := range ridge {
		q := &ridge[i]
		k := m.parts.At(int(q.X), int(q.Y))
		widest[k] = max(widest[k], q.D2)
	}
	for k, c := range m.parts.Label {
		if m.v.exempt[c] || m.parts.Area[k] < crumb {
			continue
		}
		if q, ok := m.middleOf(int32(k)); ok && q.D2 > widest[k] {
			extra = append(extra, q)
		}
	}
	return extra
}

// middleOf returns the middle of a part as a point of a centreline, if it lies
// in the part.
func (m *Measured) middleOf(k int32) (q mask.RidgePoint, ok bool) {
	x, y := floor(m.middle[k][0]), floor(m.middle[k][1])
	if m.v.class[y*m.v.w+x] != m.parts.Label[k] || m.parts.At(x, y) != k {
		return q, false
	}
	q = mask.RidgePoint{X: int32(x), Y: int32(y), Label: m.parts.Label[k]}
	q.AX, q.AY, q.D2 = m.nearestEdge(k, x, y, 0, 0)
	q.BX, q.BY, _ = m.nearestEdge(k, x, y, q.AX-q.X, q.AY-q.Y)
	return q, true
}

// nearestEdge returns the pixel nearest to (x, y), of part k, that is of another
// part, and its squared distance; of those away from a direction, unless that is 0.
func (m *Measured) nearestEdge(k int32, x, y int, ux, uy int32) (bx, by, d2 int32) {
	bx, by, d2 = int32(x), int32(y), 1<<30
	try := func(sx, sy int32) {
		dx, dy := sx-int32(x), sy-int32(y)
		if d := dx*dx + dy*dy; d < d2 && (ux == 0 && uy == 0 || dx*ux+dy*uy < 0) {
			bx, by, d2 = sx, sy, d
		}
	}
	for dy := 0; int32(dy*dy) < d2 && dy <= m.v.h; dy++ {
		for _, yy := range [2]int{y - dy, y + dy} {
			if yy < 0 || yy >= m.v.h {
				try(int32(x), int32(yy))
				continue
			}
			r := &m.parts.Runs[m.runFrom(yy, int32(x))]
			if r.Comp != k {
				try(int32(x), int32(yy))
				continue
			}
			try(r.X0-1, int32(yy))
			try(r.X1, int32(yy))
		}
	}
	return bx, by, d2
}
