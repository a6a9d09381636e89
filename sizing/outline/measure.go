package outline

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/reduce/mask"
)

// Measured is what a silhouette is made of, found once and without any size.
// It is not to be changed.
type Measured struct {
	v     *silhouette
	comps *mask.Components
	parts []Part
	holes []Hole
	ways  []way // from each part to the nearest that came before
	g     *graph
	tree  tree
	tips  []tip
	// lever is, for each node, how far the tip reaches that lies farthest beyond it,
	// px, and farTip which tip that is.
	lever  []float64
	farTip []int32
	soft   int // centreline pixels between edges that cover places
	// shaky is how far a width may be wrong, in px.
	shaky float64
	// holeOf is, for each connected part of the raster, its hole, and partOf its
	// part; -1 for none.
	holeOf, partOf []int32
}

// A width between two edges that cover places finer than a pixel is right to
// within softError pixels, one between hard edges to within hardError.
const (
	softError = 0.25
	hardError = 0.5
)

// Measure finds the parts, holes, thin places, tips and arms of a silhouette.
// p may be nil.
func Measure(s *reduce.Separation, p reduce.Progress) (*Measured, error) {
	if s.W > mask.GreatestSide || s.H > mask.GreatestSide || s.W < 1 || s.H < 1 || len(s.Labels) != s.W*s.H {
		return nil, fmt.Errorf("outline: cannot measure a raster of %d x %d", s.W, s.H)
	}
	m := &Measured{v: newSilhouette(s)}
	m.comps = mask.Connect(m.v.in, s.W, s.H, &[256]bool{solid: true})
	for _, step := range []struct {
		share float64
		do    func()
	}{{0.1, m.sortOut}, {0.3, m.measureHoles}, {0.5, m.newGraph}, {0.8, m.plant}, {0.9, m.measureParts}} {
		if p != nil {
			if err := p(step.share, "measuring the outline"); err != nil {
				return nil, err
			}
		}
		step.do()
	}
	return m, nil
}

// holeAt returns the hole that a pixel lies in, -1 for none.
func (m *Measured) holeAt(x, y int) int32 {
	if x < 0 || y < 0 || x >= m.v.w || y >= m.v.h {
		return -1
	}
	return m.holeOf[m.comps.At(x, y)]
}

// crumb is the area, in px, below which a part or a hole is nothing that was
// drawn but what a raster leaves of a soft edge.
const crumb = 4

// sortOut tells parts and holes from the background, in reading order.
func (m *Measured) sortOut() {
	c := m.comps
	n := len(c.Label)
	m.holeOf, m.partOf = make([]int32, n), make([]int32, n)
	open := make([]bool, n)
	for _, r := range c.Runs[:c.Row[1]] {
		open[r.Comp] = true
	}
	for y := range c.H {
		first, last := c.Runs[c.Row[y]], c.Runs[c.Row[y+1]-1]
		open[first.Comp], open[last.Comp] = true, true
	}
	for _, r := range c.Runs[c.Row[c.H-1]:] {
		open[r.Comp] = true
	}
	for k, label := range c.Label {
		m.holeOf[k], m.partOf[k] = -1, -1
		switch {
		case c.Area[k] < crumb:
		case label == solid:
			m.partOf[k] = int32(len(m.parts))
			m.parts = append(m.parts, Part{comp: int32(k)})
		case !open[k]:
			m.holeOf[k] = int32(len(m.holes))
			m.holes = append(m.holes, Hole{comp: int32(k), Part: -1})
		}
	}
	m.weigh()
}

// weigh finds area, middle and box of every part and hole, to whole pixels for
// holes; the area of parts counts mixed pixels by their share.
func (m *Measured) weigh() {
	for y := range m.comps.H {
		for _, r := range m.comps.Runs[m.comps.Row[y]:m.comps.Row[y+1]] {
			if k := m.partOf[r.Comp]; k >= 0 {
				m.parts[k].add(y, &r)
			}
			if k := m.holeOf[r.Comp]; k >= 0 {
				m.holes[k].add(y, &r)
			}
		}
	}
	for k := range m.parts {
		m.parts[k].settle()
	}
	for k := range m.holes {
		m.holes[k].settle()
	}
}

// spread is how a connected part lies on the raster.
type spread struct {
	Area           float64 // px2
	X, Y           float64 // centre of its area
	X0, Y0, X1, Y1 float64 // box
	sumX, sumY     float64
}

func (s *spread) add(y int, r *mask.Run) {
	n := float64(r.X1 - r.X0)
	if s.Area == 0 {
		s.X0, s.Y0, s.X1 = float64(r.X0), float64(y), float64(r.X1)
	}
	s.Area += n
	s.sumX += n * float64(r.X0+r.X1) / 2
	s.sumY += n * (float64(y) + 0.5)
	s.X0, s.X1, s.Y1 = min(s.X0, float64(r.X0)), max(s.X1, float64(r.X1)), float64(y+1)
}

func (s *spread) settle() { s.X, s.Y = s.sumX/s.Area, s.sumY/s.Area }
