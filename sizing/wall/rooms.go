package wall

import (
	"math"

	"badgewright/reduce/mask"
)

// room is what lies outside and yet within the pin: a hole through it, or a
// bay behind a narrow opening. Places and lengths are in pixels.
type room struct {
	open  bool       // a bay
	part  int32      // of a hole, the part of the raster it is
	x, y  float64    // of a hole the middle of its largest disc, of a bay the middle of its opening
	width float64    // of the largest disc in a hole; of the opening of a bay
	ends  [4]float64 // the two sides of the opening
	area  float64
	box   [4]float64
}

// findRooms looks at what lies outside between parts of the pin: only there
// are holes and bays, and many badges have neither.
func (m *Measured) findRooms() {
	x0, y0, x1, y1 := m.within()
	if x0 >= x1 {
		return
	}
	r := newRoomer(m, x0, y0, x1, y1)
	r.holes()
	r.bays()
}

// within returns the box of the pin, with a margin, if anything outside has the
// pin on both hands in its row; x0 >= x1 if not.
func (m *Measured) within() (x0, y0, x1, y1 int) {
	x0, y0 = m.v.w, m.v.h
	between := false
	for y := range m.v.h {
		row := m.parts.Runs[m.parts.Row[y]:m.parts.Row[y+1]]
		for i := range row {
			r := &row[i]
			if r.Label == outside {
				between = between || i > 0 && i+1 < len(row)
				continue
			}
			x0, y0, x1, y1 = min(x0, int(r.X0)), min(y0, y), max(x1, int(r.X1)), max(y1, y+1)
		}
	}
	if !between {
		return 0, 0, 0, 0
	}
	const margin = 2
	return max(x0-margin, 0), max(y0-margin, 0), min(x1+margin, m.v.w), min(y1+margin, m.v.h)
}

// roomer goes over the centrelines of what lies outside, in a cutting of the
// raster.
type roomer struct {
	m      *Measured
	x0, y0 int32
	ridge  []mask.RidgePoint // places on the whole raster
	inside []bool            // both its sides are the pin's, and not the end of the cutting
	g      graph
}

func newRoomer(m *Measured, x0, y0, x1, y1 int) *roomer {
	w, h := x1-x0, y1-y0
	label := make([]uint8, w*h)
	for y := range h {
		from := m.v.class[(y+y0)*m.v.w+x0:][:w]
		to := label[y*w:][:w]
		for x, c := range from {
			if c == outside {
				to[x] = 1
			}
		}
	}
	var eight, skip [256]bool
	skip[0] = true
	r := &roomer{m: m, x0: int32(x0), y0: int32(y0)}
	r.ridge = mask.Ridge(label, mask.Connect(label, w, h, &eight), &skip)
	r.inside = make([]bool, len(r.ridge))
	points := make([]point, len(r.ridge))
	off := func(x, y int32) bool { return x < 0 || y < 0 || int(x) >= w || int(y) >= h }
	for i := range r.ridge {
		q := &r.ridge[i]
		points[i] = point{x: q.X, y: q.Y}
		r.inside[i] = !off(q.AX, q.AY) && !off(q.BX, q.BY)
		q.X, q.AX, q.BX = q.X+r.x0, q.AX+r.x0, q.BX+r.x0
		q.Y, q.AY, q.BY = q.Y+r.y0, q.AY+r.y0, q.BY+r.y0
	}
	r.g = newGraph(points, w, h) // in reading order, as the ridge is
	return r
}

// holes notes the parts outside that the pin closes in, with the largest disc
// in each. One too small for a centreline is as wide as the square of its area.
func (r *roomer) holes() {
	widest := map[int32]mask.RidgePoint{}
	for _, q := range r.ridge {
		k := r.m.parts.At(int(q.X), int(q.Y))
		if r.m.round.by[k]&byFrame == 0 && q.D2 > widest[k].D2 {
			widest[k] = q
		}
	}
	for i, c := range r.m.parts.Label {
		k := int32(i)
		if c != outside || r.m.round.by[k]&byFrame != 0 {
			continue
		}
		h := room{part: k, area: r.m.area[k], box: r.m.boxes[k], width: math.Sqrt(max(0, r.m.area[k]))}
		h.x, h.y = r.m.middle[k][0], r.m.middle[k][1]
		q := widest[k]
		if middle, ok := r.m.middleOf(k); ok && middle.D2 > q.D2 {
			q = middle
		}
		if q.D2 > 0 {
			h.x, h.y, h.width = float64(q.X)+0.5, float64(q.Y)+0.5, r.m.roomAt(&q)
		}
		r.m.rooms = append(r.m.rooms, h)
	}
}

// roomAt returns the width outside at a point, to the true edges.
func (m *Measured) roomAt(q *mask.RidgePoint) float64 {
	x, y := float64(q.X), float64(q.Y)
	return m.v.distance(x, y, int(q.AX), int(q.AY), outside) + m.v.distance(x, y, int(q.BX), int(q.BY), outside)
}
