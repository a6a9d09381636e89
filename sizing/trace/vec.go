package trace

import "math"

// vec is a place or a direction in working pixels: pixel (x, y) covers x..x+1
// and y..y+1, y down.
type vec struct{ x, y float64 }

func (a vec) add(b vec) vec              { return vec{a.x + b.x, a.y + b.y} }
func (a vec) sub(b vec) vec              { return vec{a.x - b.x, a.y - b.y} }
func (a vec) mul(k float64) vec          { return vec{float64(a.x * k), float64(a.y * k)} }
func (a vec) dot(b vec) float64          { return float64(a.x*b.x) + float64(a.y*b.y) }
func (a vec) cross(b vec) float64        { return float64(a.x*b.y) - float64(a.y*b.x) }
func (a vec) len() float64               { return math.Sqrt(a.dot(a)) }
func (a vec) to(b vec) float64           { return b.sub(a).len() }
func (a vec) along(d vec, t float64) vec { return a.add(d.mul(t)) }

// unit returns the direction of a; of no length, it stays as it is.
func (a vec) unit() vec {
	if l := a.len(); l > 0 {
		return vec{a.x / l, a.y / l}
	}
	return a
}

// half returns the place half way between two.
func half(a, b vec) vec { return vec{(a.x + b.x) / 2, (a.y + b.y) / 2} }

// meet returns where the line through a along u crosses that through b along
// v; ok is false when they are all but parallel.
func meet(a, u, b, v vec) (p vec, ok bool) {
	d := u.cross(v)
	if math.Abs(d) < 1e-3 {
		return vec{}, false
	}
	return a.along(u, b.sub(a).cross(v)/d), true
}

// fromLine returns how far p lies from the line through c along the unit u.
func fromLine(p, c, u vec) float64 { return math.Abs(p.sub(c).cross(u)) }

// foot returns the place of the line through c along the unit u nearest to p.
func foot(p, c, u vec) vec { return c.along(u, p.sub(c).dot(u)) }

// fromStretch returns how far p lies from the straight stretch from a to b.
func fromStretch(p, a, b vec) float64 {
	d, q := b.sub(a), p.sub(a)
	t := 0.0
	if l := d.dot(d); l > 0 {
		t = min(1, max(0, q.dot(d)/l))
	}
	return q.sub(d.mul(t)).len()
}
