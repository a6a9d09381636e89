package trace

import (
	"errors"
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// DefaultTolerance is how far a curve may lie from the edge as the raster has
// it: both edges of a line then take no more than 0.02 mm of its width.
const DefaultTolerance unit.MM = 0.01

// GreatestSide is the greatest width and height of a raster, px.
const GreatestSide = 16000

// Trace finds the curves of a badge. A tolerance of 0 is the default. p may be
// nil; its error stops the work.
func Trace(b *sizing.Badge, tolerance unit.MM, p reduce.Progress) (*Shapes, error) {
	if err := check(b, tolerance); err != nil {
		return nil, err
	}
	if tolerance == 0 {
		tolerance = DefaultTolerance
	}
	t := &tracing{b: b, off: tolerance.Px(b.Scale), out: &Shapes{Width: b.Width(), Height: b.Height(), Tolerance: tolerance}}
	t.tell = func(share float64) error {
		if p == nil {
			return nil
		}
		return p(share, "tracing clean curves")
	}
	if err := t.struck(); err != nil {
		return nil, err
	}
	if err := t.print(); err != nil {
		return nil, err
	}
	t.out.Within = b.Scale.MM(t.worst) + Grid
	return t.out, t.tell(1)
}

func check(b *sizing.Badge, tolerance unit.MM) error {
	s := b.Sep
	switch {
	case s.W < 1 || s.H < 1 || s.W > GreatestSide || s.H > GreatestSide || len(s.Labels) != s.W*s.H:
		return fmt.Errorf("trace: cannot trace a raster of %d x %d", s.W, s.H)
	case !(b.Scale > 0) || math.IsInf(float64(b.Scale), 0):
		return fmt.Errorf("trace: cannot trace at %g px per mm", float64(b.Scale))
	case !(tolerance >= 0) || math.IsInf(float64(tolerance), 0):
		return errors.New("trace: a tolerance is a length, or 0 for the usual one")
	}
	return nil
}

// tracing is one run of Trace.
type tracing struct {
	b     *sizing.Badge
	off   float64 // tolerance, px
	tell  func(float64) error
	out   *Shapes
	worst float64
}

// struck traces metal and enamel.
func (t *tracing) struck() error {
	m := newPlanar(struckGrid(t.b.Sep))
	if err := t.draw(m, func(share float64) error { return t.tell(0.1 + 0.8*share) }); err != nil {
		return err
	}
	solid, empty := everyClass(true), everyClass(false)
	solid[void], empty[void] = false, true
	t.out.Outline = Face{Name: "outline", Role: reduce.Metal, Flat: reduce.BuiltMetal, Areas: m.areas(solid)}
	t.out.CutOuts = Face{Name: "cut-outs", Role: reduce.CutOut, Flat: firstOf(t.b.Sep, reduce.CutOut), Areas: m.areas(empty)}
	only := everyClass(false)
	only[metal] = true
	t.out.Metal = Face{Name: "metal", Role: reduce.Metal, Flat: firstOf(t.b.Sep, reduce.Metal), Areas: m.areas(only)}
	t.out.Enamel = t.faces(m, reduce.Enamel)
	return nil
}

// print traces print, whose arcs come after the others.
func (t *tracing) print() error {
	g, ok := printGrid(t.b.Sep)
	if !ok {
		return nil
	}
	m := newPlanar(g)
	before := len(t.out.Arcs)
	if err := t.draw(m, func(share float64) error { return t.tell(0.9 + 0.1*share) }); err != nil {
		return err
	}
	t.out.Printed = t.faces(m, reduce.Printed)
	for _, f := range t.out.Printed {
		for _, a := range f.Areas {
			for _, l := range a {
				for k := range l {
					l[k].Arc += before
				}
			}
		}
	}
	return nil
}

func everyClass(in bool) *[256]bool {
	var t [256]bool
	for c := range t {
		t[c] = in
	}
	return &t
}

// firstOf returns the first flat of a role; metal and cut-outs may have none.
func firstOf(s *reduce.Separation, r reduce.Role) reduce.FlatID {
	for _, f := range s.Flats {
		if f.Role == r {
			return f.ID
		}
	}
	if r == reduce.Metal {
		return reduce.BuiltMetal
	}
	return sizing.Outside
}

// faces returns those of the flats of a role that have an area.
func (t *tracing) faces(m *planar, role reduce.Role) []Face {
	var all []Face
	in := everyClass(false)
	for l, f := range t.b.Sep.Flats {
		if f.Role != role || uint8(l) >= metal {
			continue
		}
		in[l] = true
		if areas := m.areas(in); len(areas) > 0 {
			all = append(all, Face{Role: role, Flat: f.ID, Name: f.Name, RGB: f.RGB, Areas: areas})
			t.out.Counts.Areas += len(areas)
		}
		in[l] = false
	}
	return all
}

// draw draws the arcs of a map and takes them over in mm.
func (t *tracing) draw(m *planar, tell func(float64) error) error {
	d := newDrawer(m, t.off)
	if err := d.drawAll(tell); err != nil {
		return err
	}
	for i := range d.paths {
		t.out.Arcs = append(t.out.Arcs, t.arcOf(&d.paths[i]))
		t.count(d.courses[i], &d.paths[i])
	}
	t.worst = max(t.worst, d.pen.worst)
	return nil
}

func (t *tracing) count(c *course, p *path) {
	for k := range p.segs {
		if p.segs[k].line {
			t.out.Counts.Lines++
		} else {
			t.out.Counts.Curves++
		}
	}
	for k := range c.joints {
		if c.joints[k].sharp && (k > 0 || !c.t.closed) && (c.t.closed || k > 0 && k+1 < len(c.joints)) {
			t.out.Counts.Corners++
		}
	}
}

func (t *tracing) arcOf(p *path) Arc {
	a := Arc{Start: t.point(p.start), Segs: make([]Segment, 0, len(p.segs))}
	for k := range p.segs {
		s := &p.segs[k]
		g := Segment{To: t.point(s.to), Line: s.line}
		if !s.line {
			g.C1, g.C2 = t.point(s.c1), t.point(s.c2)
		}
		a.Segs = append(a.Segs, g)
	}
	a.Area = a.areaOf()
	return a
}

// point returns a place in mm.
func (t *tracing) point(v vec) Point {
	return Point{t.rounded(v.x - t.b.Outline[0]), t.rounded(v.y - t.b.Outline[1])}
}

// perGrid is how many steps of the grid there are in a mm.
const perGrid = 10000

func (t *tracing) rounded(px float64) unit.MM {
	return unit.MM(math.Round(px/float64(t.b.Scale)*perGrid)) / perGrid
}
