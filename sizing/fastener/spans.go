package fastener

import (
	"math"

	"badgewright/reduce/mask"
)

type point struct{ x, y float64 }

// length is the length of a vector, to the same bits on every machine (the
// library's own differs between them).
func length(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }

// spans returns the widest and the narrowest distance between two parallel
// lines that hold the shape between them, in mm: over the convex hull of the
// cells more than half metal.
func (g *silhouette) spans(share []float64) (widest, narrowest float64) {
	hull := convex(g.ends(share))
	if len(hull) < 3 {
		return 0, 0
	}
	for i, a := range hull {
		for _, b := range hull[i+1:] {
			widest = max(widest, length(a.x-b.x, a.y-b.y))
		}
	}
	narrowest = widest
	for i, a := range hull {
		narrowest = min(narrowest, reach(hull, a, hull[(i+1)%len(hull)]))
	}
	return widest * g.cell, narrowest * g.cell
}

// hullsOf returns the convex hulls of parts of a raster, in cells, that of one
// of them first.
func hullsOf(c *mask.Components, parts []int32, first int32) [][]point {
	ends := make(map[int32][]point, len(parts))
	for _, k := range parts {
		ends[k] = nil
	}
	for y := range c.H {
		row := c.Runs[c.Row[y]:c.Row[y+1]]
		for _, r := range row {
			if _, has := ends[r.Comp]; has {
				ends[r.Comp] = append(ends[r.Comp], cornersOf(float64(r.X0), float64(r.X1), float64(y))...)
			}
		}
	}
	var out [][]point
	for _, k := range parts {
		if k == first {
			out = append([][]point{convex(ends[k])}, out...)
		} else {
			out = append(out, convex(ends[k]))
		}
	}
	return out
}

// cornersOf are the corners of a run of cells on one row.
func cornersOf(x0, x1, y float64) []point {
	return []point{{x0, y}, {x1, y}, {x0, y + 1}, {x1, y + 1}}
}

// ends lists the corners of the first and last metal cell of each row, in
// cells, by rising y and then x.
func (g *silhouette) ends(share []float64) []point {
	var out []point
	for y := range g.h {
		first, last := -1, -1
		for x, s := range share[y*g.w : y*g.w+g.w] {
			if s >= mostly {
				if first < 0 {
					first = x
				}
				last = x + 1
			}
		}
		if first < 0 {
			continue
		}
		out = append(out, cornersOf(float64(first), float64(last), float64(y))...)
	}
	return out
}

// reach is how far the hull lies from the line through two of its points.
func reach(hull []point, a, b point) float64 {
	long := length(b.x-a.x, b.y-a.y)
	var far float64
	for _, p := range hull {
		far = max(far, math.Abs(turn(a, b, p))/long)
	}
	return far
}

// turn is twice the signed area of a triangle.
func turn(a, b, c point) float64 {
	return float64((b.x-a.x)*(c.y-a.y)) - float64((b.y-a.y)*(c.x-a.x))
}

// convex returns the hull of points that come by rising y (Andrew's monotone
// chain, with x and y changed over).
func convex(points []point) []point {
	half := func(from, to, step int) []point {
		var h []point
		for i := from; i != to; i += step {
			for len(h) > 1 && turn(h[len(h)-2], h[len(h)-1], points[i]) <= 0 {
				h = h[:len(h)-1]
			}
			h = append(h, points[i])
		}
		return h
	}
	if len(points) < 3 {
		return points
	}
	byRow(points)
	there, back := half(0, len(points), 1), half(len(points)-1, -1, -1)
	return append(there[:len(there)-1], back[:len(back)-1]...)
}

// byRow sorts points, already nearly in order, by y and then x.
func byRow(p []point) {
	for i := 1; i < len(p); i++ {
		for j := i; j > 0 && (p[j].y < p[j-1].y || p[j].y == p[j-1].y && p[j].x < p[j-1].x); j-- {
			p[j], p[j-1] = p[j-1], p[j]
		}
	}
}
