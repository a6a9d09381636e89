package wall

import "math"

// edge is the true edge of a class near a pixel, as a straight line: a point
// on it and the unit normal that points into the class. Places are in pixels,
// pixel (x, y) having its centre at (x, y) here.
type edge struct {
	x, y   float64
	nx, ny float64
}

// edgeNear finds the edge of a class at pixel (x, y), which lies just beyond it.
// The normal is the gradient of the cover over 3 x 3 pixels (after Gustavson
// and Strand 2011); along the axis that the edge faces most, the cover of
// three pixels summed is exactly where a straight edge crosses.
func (v *view) edgeNear(x, y int, class uint8) edge {
	var c [9]float64
	v.covers(x, y, class, &c)
	gx := (c[2] - c[0]) + math.Sqrt2*(c[5]-c[3]) + (c[8] - c[6])
	gy := (c[6] - c[0]) + math.Sqrt2*(c[7]-c[1]) + (c[8] - c[2])
	g := math.Sqrt(float64(gx*gx) + float64(gy*gy))
	e := edge{x: float64(x), y: float64(y)}
	if g < 1e-9 {
		return e
	}
	e.nx, e.ny = gx/g, gy/g
	if math.Abs(gx) >= math.Abs(gy) {
		e.x += side(c[3], c[4], c[5], gx)
	} else {
		e.y += side(c[1], c[4], c[7], gy)
	}
	return e
}

// side returns where the edge crosses the axis, counted from the middle pixel.
func side(before, middle, after, gradient float64) float64 {
	if gradient > 0 {
		return 1.5 - (before + middle + after)
	}
	return before + middle + after - 1.5
}

// alongSlack is how far along the edge, in pixels, the pixel beyond it may lie
// from the foot of the perpendicular; past it the edge is looked up again
// nearer to the foot, and if there is none there, it ends or bends.
const alongSlack = 0.75

// parts splits the way from the edge to a place into across and along it.
func (e *edge) parts(x, y float64) (across, along float64) {
	dx, dy := x-e.x, y-e.y
	across = float64(dx*e.nx) + float64(dy*e.ny)
	along = float64(dy*e.nx) - float64(dx*e.ny)
	return across, along
}

// distance returns how far a place lies from the edge, on either side of it.
func (e *edge) distance(x, y float64) float64 {
	if e.nx == 0 && e.ny == 0 {
		dx, dy := x-e.x, y-e.y
		return over(math.Sqrt(float64(dx*dx)+float64(dy*dy)), 0.5)
	}
	across, along := e.parts(x, y)
	along = over(math.Abs(along), alongSlack)
	return math.Sqrt(float64(across*across) + float64(along*along))
}

// over returns by how much x is above a limit, 0 below.
func over(x, limit float64) float64 {
	if x < limit {
		return 0
	}
	return x - limit
}

// foot returns the pixel at the foot of the perpendicular from a place to the
// edge, and whether that is another than the edge was found at.
func (e *edge) foot(x, y float64) (fx, fy int, moved bool) {
	across, along := e.parts(x, y)
	if math.Abs(along) <= alongSlack || e.nx == 0 && e.ny == 0 {
		return 0, 0, false
	}
	return int(math.Round(x - across*e.nx)), int(math.Round(y - across*e.ny)), true
}

// round3 are a pixel and those round it, the nearest first.
var round3 = [9][2]int{{0, 0}, {-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {1, -1}, {-1, 1}, {1, 1}}

// beyondEdge finds a pixel at or round (x, y) that lies just beyond the edge of
// a class, in one of those that may lie there.
func (v *view) beyondEdge(x, y int, class uint8, may *[256]bool) (bx, by int, ok bool) {
	for _, d := range &round3 {
		bx, by = x+d[0], y+d[1]
		if c := v.at(bx, by); c == class || !may[c] {
			continue
		}
		for _, n := range round3[1:5] {
			if v.at(bx+n[0], by+n[1]) == class {
				return bx, by, true
			}
		}
	}
	return 0, 0, false
}

// anything is every class.
var anything = func() (t [256]bool) {
	for c := range t {
		t[c] = true
	}
	return t
}()

// distance returns how far a place lies from the true edge of a class, given
// the nearest pixel beyond it.
func (v *view) distance(x, y float64, sx, sy int, class uint8) float64 {
	e := v.edgeNear(sx, sy, class)
	d := e.distance(x, y)
	fx, fy, moved := e.foot(x, y)
	if !moved {
		return d
	}
	bx, by, ok := v.beyondEdge(fx, fy, class, &anything)
	if !ok {
		return d
	}
	e = v.edgeNear(bx, by, class)
	return lesser(d, e.distance(x, y))
}

// distance is view.distance for many places, to edges with certain classes
// beyond them: what the line of an edge meets further on may be another's.
func (c *edges) distance(x, y float64, sx, sy int, class uint8) float64 {
	e := c.at(sx, sy, class).edge
	d := e.distance(x, y)
	fx, fy, moved := e.foot(x, y)
	if !moved {
		return d
	}
	bx, by, ok := c.v.beyondEdge(fx, fy, class, c.beyond)
	if !ok {
		return d
	}
	return lesser(d, c.at(bx, by, class).distance(x, y))
}

// edges keeps the edge of each class at each pixel it was asked for.
type edges struct {
	v      *view
	beyond *[256]bool // the classes that lie beyond the edges
	index  []int32
	all    []knownEdge
}

type knownEdge struct {
	edge
	class uint8
	tag   int16 // the caller's; 0 when new
	next  int32 // another class's at the same pixel, -1 for none
}

func newEdges(v *view, beyond *[256]bool) *edges {
	return &edges{v: v, beyond: beyond, index: make([]int32, (v.w+2)*(v.h+2))}
}

// at returns the edge of a class at a pixel, which may lie just off the raster.
// The pointer serves until the next call.
func (c *edges) at(x, y int, class uint8) *knownEdge {
	k := (y+1)*(c.v.w+2) + x + 1
	for i := c.index[k] - 1; i >= 0; i = c.all[i].next {
		if c.all[i].class == class {
			return &c.all[i]
		}
	}
	c.all = append(c.all, knownEdge{edge: c.v.edgeNear(x, y, class), class: class, next: c.index[k] - 1})
	c.index[k] = int32(len(c.all))
	return &c.all[len(c.all)-1]
}
