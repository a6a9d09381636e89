// Package wall says what a die can hold of a flat drawing: how wide every metal
// line and every area of enamel is, where metal is missing between colours, and
// what the drawing looks like once missing metal is built.
package wall

import (
	"encoding/binary"
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/reduce/mask"
)

// Measured is every width of a separation along its centrelines, in working
// pixels, found once and without any size. It is not to be changed.
type Measured struct {
	s       *reduce.Separation
	v       *view
	lines   graph // centrelines of metal and enamel
	parts   *mask.Components
	area    []float64 // of each part, px2, to the true edge
	middle  [][2]float64
	boxes   [][4]float64
	touches []border
	open    []border
	gaps    []opening
	rooms   []room
	rows    []row
	// meetings are the enamels on either side of metal.
	meetings []Meeting
	round    around
	widest   []float32 // of each part, the width of the largest disc in it
	// least is, for each group, the limit in px above which a place of it fails.
	least [groups]float32
	// narrowest is the same of what was drawn, then of what recipes built, in all groups.
	narrowest [2]float32
	// shaky is how far a width may be wrong, in px.
	shaky float64
}

// point is one pixel of a centreline. Widths are in pixels.
type point struct {
	x, y  int32
	width float32 // between the two nearest edges
	tau   float32 // diameter of the largest disc that fits and covers the pixel
	bad   float32 // the limit from which the pixel is part of a finding
	hard  float32 // the limit from which that is more than a fading end
	part  int32
	class uint8
	group uint8
	mixed bool // both edges are placed by cover, finer than a pixel
}

// The groups of centrelines that are judged alike.
const (
	lineGroup = iota // metal
	rimGroup         // metal along the outline, enamel on its other side
	areaGroup        // enamel
	groups
)

// Measure finds, once and without any size, how wide every metal line and every
// enamel area is along its centreline. p may be nil.
func Measure(s *reduce.Separation, p reduce.Progress) (*Measured, error) {
	if s.W > mask.GreatestSide || s.H > mask.GreatestSide || len(s.Labels) != s.W*s.H {
		return nil, fmt.Errorf("wall: cannot measure a raster of %d x %d", s.W, s.H)
	}
	tell := func(share float64) error {
		if p == nil {
			return nil
		}
		return p(share, "measuring lines and areas")
	}
	v := newView(s)
	m := &Measured{s: s, v: v}
	if err := tell(0.1); err != nil {
		return nil, err
	}
	var eight [256]bool
	eight[metal] = true
	m.parts = mask.Connect(v.class, v.w, v.h, &eight)
	m.weighParts()
	m.lookAround()
	if err := tell(0.2); err != nil {
		return nil, err
	}
	ridge := mask.Ridge(v.class, m.parts, &v.exempt)
	if err := tell(0.5); err != nil {
		return nil, err
	}
	m.faceEachOther(ridge)
	m.lines = newGraph(m.pointsOf(append(ridge, m.middles(ridge)...)), v.w, v.h)
	if err := tell(0.8); err != nil {
		return nil, err
	}
	m.lines.settle()
	m.lines.thicken()
	m.lines.grow()
	for g := range m.least {
		m.least[g] = m.lines.least(uint8(g))
	}
	m.shaky = errorOf(m.lines.points)
	m.widestOf()
	m.borders()
	m.findRooms()
	m.findRows()
	m.findNarrowest()
	return m, tell(1)
}

// widestOf notes the width of the largest disc in each part.
func (m *Measured) widestOf() {
	m.widest = make([]float32, len(m.parts.Label))
	for i := range m.lines.points {
		p := &m.lines.points[i]
		m.widest[p.part] = greater(m.widest[p.part], p.width)
	}
}

// pointsOf measures the width at every centreline pixel.
func (m *Measured) pointsOf(ridge []mask.RidgePoint) []point {
	points := make([]point, len(ridge))
	for i := range ridge {
		r := &ridge[i]
		x, y := float64(r.X), float64(r.Y)
		a := m.v.distance(x, y, int(r.AX), int(r.AY), r.Label)
		b := m.v.distance(x, y, int(r.BX), int(r.BY), r.Label)
		points[i] = point{
			x: r.X, y: r.Y, class: r.Label,
			width: float32(a + b),
			group: m.groupOf(r),
			part:  m.parts.At(int(r.X), int(r.Y)),
			mixed: m.soft(r),
		}
	}
	return points
}

// soft says whether cover places an edge of a centreline pixel.
func (m *Measured) soft(r *mask.RidgePoint) bool {
	return m.softNear(r.AX, r.AY) && m.softNear(r.BX, r.BY)
}

func (m *Measured) softNear(x, y int32) bool {
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			if m.v.mixed(int(x)+dx, int(y)+dy) {
				return true
			}
		}
	}
	return false
}

func (m *Measured) groupOf(r *mask.RidgePoint) uint8 {
	if r.Label != metal {
		return areaGroup
	}
	a, b := m.v.at(int(r.AX), int(r.AY)) == outside, m.v.at(int(r.BX), int(r.BY)) == outside
	if a != b {
		return rimGroup
	}
	return lineGroup
}

// weighParts finds area, middle and box of every part. A pixel that holds two
// classes gives each its share.
func (m *Measured) weighParts() {
	n := len(m.parts.Label)
	m.area, m.middle, m.boxes = make([]float64, n), make([][2]float64, n), make([][4]float64, n)
	for k := range m.boxes {
		m.boxes[k] = [4]float64{float64(m.v.w), float64(m.v.h), 0, 0}
	}
	for y := 0; y < m.v.h; y++ {
		for _, r := range m.parts.Runs[m.parts.Row[y]:m.parts.Row[y+1]] {
			n := float64(r.X1 - r.X0)
			m.area[r.Comp] += n
			m.middle[r.Comp][0] += n * float64(r.X0+r.X1) / 2
			m.middle[r.Comp][1] += n * (float64(y) + 0.5)
			b := &m.boxes[r.Comp]
			b[0], b[1] = lesser(b[0], float64(r.X0)), lesser(b[1], float64(y))
			b[2], b[3] = greater(b[2], float64(r.X1)), greater(b[3], float64(y+1))
		}
	}
	for k := range m.middle {
		m.middle[k][0] /= m.area[k]
		m.middle[k][1] /= m.area[k]
	}
	m.shareMixed()
}

func (m *Measured) shareMixed() {
	w := m.v.w
	for y := range m.v.h {
		cover, run := m.s.Cover[y*w:y*w+w], m.parts.Row[y]
		for x := 0; x < w; x++ {
			if x+8 <= w && binary.LittleEndian.Uint64(cover[x:]) == math.MaxUint64 {
				x += 7 // eight whole pixels
				continue
			}
			if cover[x] == 255 || !m.v.mixed(x, y) {
				continue
			}
			for int(m.parts.Runs[run].X1) <= x {
				run++
			}
			lost := 1 - shares[cover[x]]
			m.area[m.parts.Runs[run].Comp] -= lost
			if k := m.partBeside(x, y, run, m.v.of[m.s.Beside[y*w+x]]); k >= 0 {
				m.area[k] += lost
			}
		}
	}
}

// partBeside returns the part of another class that touches a pixel of a run,
// or -1.
func (m *Measured) partBeside(x, y int, run int32, class uint8) int32 {
	for k, d := range round3[1:] {
		nx, ny := x+d[0], y+d[1]
		if nx < 0 || ny < 0 || nx >= m.v.w || ny >= m.v.h || m.v.class[ny*m.v.w+nx] != class {
			continue
		}
		switch k {
		case 0:
			return m.parts.Runs[run-1].Comp
		case 1:
			return m.parts.Runs[run+1].Comp
		}
		return m.parts.At(nx, ny)
	}
	return -1
}
