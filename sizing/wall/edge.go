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
	for k := range c {
		c[k] = v.cover(x+k%3-1, y+k/3-1, class)
	}
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

// alongSlack is how far along the edge, in pixels, the nearest pixel beyond it
// may lie from the foot of the perpendicular; past it the edge ends or bends.
const alongSlack = 0.75

// distance returns how far the centre of a pixel lies from the edge, within the
// class; never below 0.
func (e *edge) distance(x, y float64) float64 {
	dx, dy := x-e.x, y-e.y
	if e.nx == 0 && e.ny == 0 {
		return max(0, math.Sqrt(float64(dx*dx)+float64(dy*dy))-0.5)
	}
	across := float64(dx*e.nx) + float64(dy*e.ny)
	along := math.Abs(float64(dy*e.nx)-float64(dx*e.ny)) - alongSlack
	if along <= 0 {
		return max(0, across)
	}
	return math.Sqrt(float64(across*across) + float64(along*along))
}

// either is distance for a place on either side of the edge.
func (e *edge) either(x, y float64) float64 {
	dx, dy := x-e.x, y-e.y
	if e.nx == 0 && e.ny == 0 {
		return math.Sqrt(float64(dx*dx) + float64(dy*dy))
	}
	across := float64(dx*e.nx) + float64(dy*e.ny)
	along := max(0, math.Abs(float64(dy*e.nx)-float64(dx*e.ny))-alongSlack)
	return math.Sqrt(float64(across*across) + float64(along*along))
}
