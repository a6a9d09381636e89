package trace

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// Shapes are the curves of a badge, in mm from the upper left of its
// silhouette's box, y down. It is not to be changed.
type Shapes struct {
	Width, Height unit.MM
	// Tolerance was asked for. Within is what came out: nowhere does a curve lie
	// further than that from the edge as the raster has it. Where the raster
	// cannot tell the edge as finely as was asked, Within is the greater.
	Tolerance, Within unit.MM
	Arcs              []Arc
	Outline           Face   // all that is pin; an area for each part
	Metal             Face   // all metal as one
	Enamel            []Face // in the order of the flats, those that have an area
	CutOuts           Face   // the holes of the outline
	// Printed lies on top of the others and has arcs of its own.
	Printed []Face
	Counts  Counts
}

// Counts is what the arcs are made of.
type Counts struct {
	Areas, Lines, Curves, Corners int
}

// Face is everything of one kind.
type Face struct {
	Role  reduce.Role
	Flat  reduce.FlatID // of the first flat that it holds
	Name  string
	RGB   colour.RGB8
	Areas []Area
}

// Point is a place in mm, rounded to Grid.
type Point struct{ X, Y unit.MM }

// Grid is what places are rounded to, mm: a tenth of a micrometre.
const Grid unit.MM = 1e-4

// Arc is a border that two faces share.
type Arc struct {
	Start Point
	Segs  []Segment
	// Area is what the arc adds to the area of the face on its right, mm2.
	Area float64
}

// Segment is a cubic to a place, or a straight line, in which the inner points
// say nothing.
type Segment struct {
	C1, C2, To Point
	Line       bool
}

// Walker is told of a path, one step after the other.
type Walker struct {
	Move  func(to Point)
	Line  func(to Point)
	Curve func(c1, c2, to Point)
	Close func()
}

// Walk follows every border of the areas.
func (s *Shapes) Walk(w Walker, areas ...Area) {
	for _, a := range areas {
		for _, l := range a {
			s.walkLoop(&w, l)
		}
	}
}

func (s *Shapes) walkLoop(w *Walker, l Loop) {
	w.Move(s.startOf(l[0]))
	for k, side := range l {
		s.walkArc(w, side, k == len(l)-1)
	}
	w.Close()
}

func (s *Shapes) startOf(side Side) Point {
	a := &s.Arcs[side.Arc]
	if side.Back && len(a.Segs) > 0 {
		return a.Segs[len(a.Segs)-1].To
	}
	return a.Start
}

// walkArc leaves out a last line: closing the path draws it.
func (s *Shapes) walkArc(w *Walker, side Side, last bool) {
	a := &s.Arcs[side.Arc]
	n := len(a.Segs)
	for k := range n {
		i := k
		if side.Back {
			i = n - 1 - k
		}
		g := &a.Segs[i]
		c1, c2, to := g.C1, g.C2, g.To
		if side.Back {
			c1, c2, to = c2, c1, a.Start
			if i > 0 {
				to = a.Segs[i-1].To
			}
		}
		switch {
		case !g.Line:
			w.Curve(c1, c2, to)
		case !last || k < n-1:
			w.Line(to)
		}
	}
}

// Area returns the area in mm2 of areas.
func (s *Shapes) Area(areas ...Area) float64 {
	sum := 0.0
	for _, a := range areas {
		for _, l := range a {
			for _, side := range l {
				if side.Back {
					sum -= s.Arcs[side.Arc].Area
				} else {
					sum += s.Arcs[side.Arc].Area
				}
			}
		}
	}
	return sum
}

// areaOf returns the integral of x dy along an arc; that of a cubic is exact.
func (a *Arc) areaOf() float64 {
	sum := 0.0
	from := a.Start
	for i := range a.Segs {
		g := &a.Segs[i]
		if g.Line {
			sum += float64((from.X + g.To.X) * (g.To.Y - from.Y) / 2)
		} else {
			sum += cubicArea(from, g.C1, g.C2, g.To)
		}
		from = g.To
	}
	return sum
}

func cubicArea(a, b, c, d Point) float64 {
	return float64(a.X*(-10*a.Y+6*b.Y+3*c.Y+d.Y)+b.X*(-6*a.Y+3*c.Y+3*d.Y)+
		c.X*(-3*a.Y-3*b.Y+6*d.Y)+d.X*(-a.Y-3*b.Y-6*c.Y+10*d.Y)) / 20
}
