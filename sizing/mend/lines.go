package mend

import (
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
)

// isMetal says whether a pixel of the drawing is metal.
func (t *spot) isMetal(x, y float64) bool {
	px, py := int(math.Floor(x)), int(math.Floor(y))
	if px < 0 || py < 0 || px >= t.s.W || py >= t.s.H {
		return false
	}
	l := t.s.Labels[py*t.s.W+px]
	return l != reduce.None && t.s.Flats[l].Role == reduce.Metal
}

func (t *spot) onMetal() bool { return t.isMetal(t.f.X, t.f.Y) }

// walls are the lines that stand beside a narrow area, to its left and to its
// right along its path, in shares of the drawing.
func (t *spot) walls() [][][2]float64 {
	var all [][][2]float64
	for _, sign := range [2]float64{-1, 1} {
		var wall [][2]float64
		for i := 2; i+1 < len(t.f.Path); i += 2 {
			x0, y0, x1, y1 := float64(t.f.Path[i-2]), float64(t.f.Path[i-1]), float64(t.f.Path[i]), float64(t.f.Path[i+1])
			for _, at := range [3]float64{0.1, 0.5, 0.9} {
				if x, y, ok := t.wallFrom(between(x0, x1, at), between(y0, y1, at), sign*(y0-y1), sign*(x1-x0)); ok {
					wall = append(wall, t.share(x, y)...)
				}
			}
		}
		if len(wall) > 1 {
			all = append(all, wall)
		}
	}
	return all
}

// wallFrom goes from a place in a direction to the first metal and returns the
// middle of it.
func (t *spot) wallFrom(x, y, dx, dy float64) (mx, my float64, ok bool) {
	l := length(dx, dy)
	if l == 0 {
		return 0, 0, false
	}
	dx, dy = dx/l, dy/l
	reach := 2 * (t.l.Area + t.l.Edge).Px(t.scale)
	begin := -1.0
	for d := 0.0; d <= reach; d += 0.5 {
		on := t.isMetal(x+float64(d*dx), y+float64(d*dy))
		switch {
		case on && begin < 0:
			begin = d
		case !on && begin >= 0:
			mid := (begin + d - 0.5) / 2
			return x + float64(mid*dx), y + float64(mid*dy), true
		}
	}
	return 0, 0, false
}

// closing is metal from one end of an opening to the other, which leaves each
// end the way its line comes.
func (t *spot) closing(words string) Offer {
	e := t.f.Ends
	if e == [4]float64{} {
		e = [4]float64{t.f.X, t.f.Y, t.f.X, t.f.Y}
	}
	points := t.bow(e)
	r := sizing.Recipe{Kind: sizing.CloseGap, Width: max(0, t.f.Typical)}
	if t.f.Kind != sizing.Gap || t.f.Typical <= t.f.Limit {
		r.Width = 0
	}
	for _, p := range points {
		r.Points = append(r.Points, t.share(p[0], p[1])...)
	}
	return Offer{Recipes: []sizing.Recipe{r}, Words: words}
}

// bowSteps is how many stretches a closing line has.
const bowSteps = 8

// bow is a cubic curve between two ends of metal along their own directions,
// and a little into both.
func (t *spot) bow(e [4]float64) [][2]float64 {
	x0, y0, x1, y1 := e[0], e[1], e[2], e[3]
	d := length(x1-x0, y1-y0)
	ux, uy, ok0 := t.runs(x0, y0, x1-x0, y1-y0)
	vx, vy, ok1 := t.runs(x1, y1, x0-x1, y0-y1)
	if !ok0 {
		ux, uy = (x1-x0)/max(d, 1e-9), (y1-y0)/max(d, 1e-9)
	}
	if !ok1 {
		vx, vy = (x0-x1)/max(d, 1e-9), (y0-y1)/max(d, 1e-9)
	}
	into := t.l.Line.Px(t.scale) / 2
	all := [][2]float64{{x0 - float64(into*ux), y0 - float64(into*uy)}}
	for k := range bowSteps + 1 {
		s := float64(k) / bowSteps
		a, b := d*s*(1-s)*(1-s), d*s*s*(1-s) // Hermite's tangents, the second as it leaves its end
		h := s * s * (3 - 2*s)
		all = append(all, [2]float64{
			between(x0, x1, h) + dot(a, b, ux, vx),
			between(y0, y1, h) + dot(a, b, uy, vy),
		})
	}
	return append(all, [2]float64{x1 - float64(into*vx), y1 - float64(into*vy)})
}

// runs returns the direction in which the line that ends at a place would go
// on: away from the middle of the metal near it. ok is false where that does
// not lead towards the other end.
func (t *spot) runs(x, y, tox, toy float64) (dx, dy float64, ok bool) {
	r := int(math.Ceil(3*t.l.Line.Px(t.scale))) + 2
	n := 0.0
	for v := -r; v <= r; v++ {
		for u := -r; u <= r; u++ {
			px, py := x+float64(u), y+float64(v)
			if u*u+v*v > r*r || dot(float64(u), float64(v), tox, toy) > 0 || !t.isMetal(px, py) {
				continue
			}
			dx, dy, n = dx-float64(u), dy-float64(v), n+1
		}
	}
	l := length(dx, dy)
	if n == 0 || l < 1e-9 {
		return 0, 0, false
	}
	dx, dy = dx/l, dy/l
	to := length(tox, toy)
	return dx, dy, to > 0 && dot(dx, dy, tox, toy) > towards*to
}

// towards is the cosine of the most that a line may turn to meet the other end
// of a gap: beyond 60 degrees it is no longer its own direction.
const towards = 0.5

func length(x, y float64) float64 { return math.Sqrt(dot(x, y, x, y)) }

func dot(x, y, u, v float64) float64 { return float64(x*u) + float64(y*v) }

// between is the place at a share of the way from a to b.
func between(a, b, share float64) float64 { return a + float64(share*(b-a)) }
