package wall

import (
	"math"
	"math/bits"
)

// opening is a gap in metal: a short border between two parts with metal at
// both of its ends. Places and lengths are in pixels.
type opening struct {
	a, b   int32 // parts, as of a border
	ends   [4]float64
	width  float64 // of the opening
	metal  float64 // width of the metal at its ends
	length float64 // of the border in it
	path   []float32
}

// How long an opening is at most, in widths of the metal at its ends, to be a
// gap and not a missing line: where two ends of lines point at one another,
// where the end of a line points at the side of another, and where two sides
// face one another (this tool's choices: the eye goes on along a line for
// several of its widths, and sees no line where there is none).
const (
	endsApart  = 8
	endAtSide  = 6
	sidesApart = 1.5
)

// The greatest angles, as cosines, between an opening and the line that ends
// there (30 degrees) or the side that faces it (45 degrees).
const (
	cosAlong  = 0.866
	cosFacing = 0.707
)

// nearMetal is how far from the end of a border, in pixels, its metal may lie.
const nearMetal = 2

// metalEnd is the metal at one end of a border.
type metalEnd struct {
	x, y   float64 // a pixel of it
	cx, cy float64 // of its centreline
	width  float64
	ends   bool    // it is the end of a line
	dx, dy float64 // unit vector from the metal into the opening
}

// openingAt says whether a stretch of border from one place to another is a gap
// in metal. Which way it leads is told by the centrelines, for the border may
// run askew through an opening that is shorter than the line is wide.
func (m *Measured) openingAt(x0, y0, x1, y1 float64) (o opening, ok bool) {
	mx, my := (x0+x1)/2, (y0+y1)/2
	a, okA := m.metalEndAt(x0, y0, [4]float64{mx, my, x0 - mx, y0 - my})
	b, okB := m.metalEndAt(x1, y1, [4]float64{mx, my, x1 - mx, y1 - my})
	ux, uy := unitOf(b.cx-a.cx, b.cy-a.cy)
	if !okA || !okB || ux == 0 && uy == 0 {
		return o, false
	}
	m.face(&a, [4]float64{mx, my, -ux, -uy})
	m.face(&b, [4]float64{mx, my, ux, uy})
	o.metal = (a.width + b.width) / 2
	most := shortest(&a, &b, ux, uy) * o.metal
	if most == 0 || math.Hypot(x1-x0, y1-y0) > most+o.metal+2*nearMetal {
		return o, false
	}
	o.ends = m.closest(&a, &b, [4]float64{mx, my, ux, uy})
	o.width = m.bare(&o.ends)
	return o, o.width <= most+nearMetal
}

// shortest returns how many widths of metal an opening between two ends may be
// long, 0 when they have nothing to do with one another.
func shortest(a, b *metalEnd, ux, uy float64) float64 {
	alongA, alongB := float64(a.dx*ux)+float64(a.dy*uy), -float64(b.dx*ux)-float64(b.dy*uy)
	lineA, lineB := a.ends && alongA >= cosAlong, b.ends && alongB >= cosAlong
	switch {
	case lineA && lineB:
		return endsApart
	case alongA < cosFacing || alongB < cosFacing:
		return 0
	case lineA || lineB:
		return endAtSide
	}
	return sidesApart
}

// metalEndAt looks at the metal at a corner of pixels where a border ends.
func (m *Measured) metalEndAt(x, y float64, hand [4]float64) (e metalEnd, ok bool) {
	e.x, e.y, ok = m.metalBeside(x, y)
	if ok {
		e.width, e.cx, e.cy = m.metalWidth(e.x, e.y, hand)
	}
	return e, ok
}

// face finds whether metal is the end of a line, and which way it faces. Seen
// from its centreline, metal goes on one way from the end of a line. Only what
// lies on its own hand of the opening counts.
func (m *Measured) face(e *metalEnd, hand [4]float64) {
	on, many := m.compass(e.cx, e.cy, 1.25*e.width+nearMetal, hand)
	if e.ends = many == 1 && bits.OnesCount64(on) <= compassPoints/3; e.ends {
		e.dx, e.dy = opposite(on)
		return
	}
	e.dx, e.dy = m.awayFromMetal(e.x, e.y, min(max(3, e.width/2), 12), hand)
}

// metalBeside returns the middle of the metal pixel nearest to a corner of pixels.
func (m *Measured) metalBeside(x, y float64) (px, py float64, ok bool) {
	best := float64(nearMetal*nearMetal) + 0.5
	for v := int(y) - nearMetal; v < int(y)+nearMetal; v++ {
		for u := int(x) - nearMetal; u < int(x)+nearMetal; u++ {
			dx, dy := float64(u)+0.5-x, float64(v)+0.5-y
			if d := float64(dx*dx) + float64(dy*dy); d < best && m.v.at(u, v) == metal {
				px, py, best, ok = float64(u)+0.5, float64(v)+0.5, d, true
			}
		}
	}
	return px, py, ok
}

// metalReach is how far from its edge, in pixels, the centreline of metal is
// looked for: half the width of what still counts as a line.
const metalReach = 48

// metalWidth returns the thickness of the metal at a place on its edge, and the
// point of its centreline there: of the discs that reach as far as the corner of
// a blunt end the largest, for the corner has a thin centreline of its own, and
// of those alike the nearest.
func (m *Measured) metalWidth(x, y float64, hand [4]float64) (width, cx, cy float64) {
	g, best := &m.lines, -math.MaxFloat64
	for v := max(int32(y)-metalReach, 0); v <= min(int32(y)+metalReach, int32(len(g.row))-2); v++ {
		for k := g.from(g.row[v], g.row[v+1], int32(x)-metalReach); k < g.row[v+1] && g.points[k].x <= int32(x)+metalReach; k++ {
			p := &g.points[k]
			px, py, wide := float64(p.x)+0.5, float64(p.y)+0.5, float64(p.width)
			far := math.Hypot(px-x, py-y)
			if p.class == metal && wide-far/2 > best && far <= 0.75*wide+nearMetal && onHand(px, py, hand) {
				best, width, cx, cy = wide-far/2, float64(p.tau), px, py
			}
		}
	}
	if width == 0 {
		return 1, x, y
	}
	return width, cx, cy
}

// onHand says whether a place lies on one hand of a line, which is given by a
// point of it and the way to that hand.
func onHand(x, y float64, hand [4]float64) bool {
	return float64((x-hand[0])*hand[2])+float64((y-hand[1])*hand[3]) > 0
}

// compassPoints is in how many directions the metal round a place is looked at.
const compassPoints = 64

// compass looks round a place at a distance: one bit for each direction in
// which there is metal, and how many arcs they make. Only what lies on one hand
// counts.
func (m *Measured) compass(x, y, r float64, hand [4]float64) (on uint64, arcs int) {
	for k := range rose {
		px, py := x+float64(r*rose[k][0]), y+float64(r*rose[k][1])
		if onHand(px, py, hand) && m.v.at(floor(px), floor(py)) == metal {
			on |= 1 << k
		}
	}
	return on, bits.OnesCount64(on &^ bits.RotateLeft64(on, 1))
}

var rose = func() (t [compassPoints][2]float64) {
	for k := range t {
		t[k][1], t[k][0] = math.Sincos(2 * math.Pi * float64(k) / compassPoints)
	}
	return t
}()

// opposite returns the unit vector away from the middle of the directions that are on.
func opposite(on uint64) (dx, dy float64) {
	for k := range rose {
		if on>>k&1 != 0 {
			dx, dy = dx-rose[k][0], dy-rose[k][1]
		}
	}
	return unitOf(dx, dy)
}

func unitOf(dx, dy float64) (ux, uy float64) {
	l := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if l == 0 {
		return 0, 0
	}
	return dx / l, dy / l
}

func floor(x float64) int { return int(math.Floor(x)) }

// awayFromMetal returns the unit vector away from the metal within a reach, on
// this hand of the middle of the opening.
func (m *Measured) awayFromMetal(x, y, r float64, hand [4]float64) (dx, dy float64) {
	for v := floor(y - r); v <= floor(y+r); v++ {
		for u := floor(x - r); u <= floor(x+r); u++ {
			ex, ey := float64(u)+0.5-x, float64(v)+0.5-y
			if float64(ex*ex)+float64(ey*ey) <= float64(r*r) && onHand(x+ex, y+ey, hand) && m.v.at(u, v) == metal {
				dx, dy = dx-ex, dy-ey
			}
		}
	}
	return unitOf(dx, dy)
}

// closest returns where the metal at the two ends comes closest, each on its own
// hand of the middle, which is given with the way from the first to the second.
func (m *Measured) closest(a, b *metalEnd, across [4]float64) [4]float64 {
	reach := math.Hypot(b.x-a.x, b.y-a.y)/2 + max(a.width, b.width)/2 + nearMetal
	back := [4]float64{across[0], across[1], -across[2], -across[3]}
	bx, by := m.nearestMetal(a.x, a.y, reach, across)
	ax, ay := m.nearestMetal(bx, by, reach, back)
	bx, by = m.nearestMetal(ax, ay, reach, across)
	return [4]float64{ax, ay, bx, by}
}

// nearestMetal returns the metal pixel nearest to a place, on one hand and within
// reach of the point that hand is counted from.
func (m *Measured) nearestMetal(x, y, reach float64, hand [4]float64) (bx, by float64) {
	bx, by = x, y
	best := math.MaxFloat64
	for v := floor(hand[1] - reach); v <= floor(hand[1]+reach); v++ {
		for u := floor(hand[0] - reach); u <= floor(hand[0]+reach); u++ {
			px, py := float64(u)+0.5, float64(v)+0.5
			d := float64((px-x)*(px-x)) + float64((py-y)*(py-y))
			if d < best && m.v.at(u, v) == metal && onHand(px, py, hand) {
				bx, by, best = px, py, d
			}
		}
	}
	return bx, by
}

// bareStep is the step, in pixels, in which an opening is measured.
const bareStep = 0.25

// bare returns how much of the way between two metal pixels is not metal; the
// cover of the pixels there says it finer than a pixel.
func (m *Measured) bare(e *[4]float64) float64 {
	far := math.Hypot(e[2]-e[0], e[3]-e[1])
	if far == 0 {
		return 0
	}
	ux, uy := (e[2]-e[0])/far, (e[3]-e[1])/far
	n := int(math.Round((far + 2*nearMetal) / bareStep))
	sum := 0.0
	for k := range n {
		at := (float64(k)+0.5)*bareStep - nearMetal
		sum += (1 - m.v.cover(floor(e[0]+float64(at*ux)), floor(e[1]+float64(at*uy)), metal)) * bareStep
	}
	return min(sum, far)
}
