package outline

import (
	"math"
	"slices"

	"badgewright/reduce/mask"
)

// Hole is one opening through the pin with metal or enamel all round it.
type Hole struct {
	spread
	comp int32
	// Part is the part it goes through.
	Part int32
	// Across is the diameter of the largest disc that fits through, px, and
	// DiscX, DiscY the disc's middle.
	Across       float64
	DiscX, DiscY float64
	// Rim is the least way from the hole to the outline or another hole, px; 0
	// when there is none to measure.
	Rim  float64
	side uint8 // the label that most of its edge is
}

// CutOuts counts the holes that a maker would cut.
func (m *Measured) CutOuts(at At) int {
	n := 0
	for _, h := range m.holes {
		if h.Across >= noHole*at.Limits.CutOut.Px(at.Scale) {
			n++
		}
	}
	return n
}

// measureHoles finds how wide every hole is and what stands round it.
func (m *Measured) measureHoles() {
	if len(m.holes) == 0 {
		return
	}
	for k := range m.holes {
		m.widest(int32(k))
		m.round(int32(k))
	}
}

// discs are how many of the best places on the raster the largest disc in a hole
// is looked for at, and nudges how far round each, in pixels.
const discs = 24

var nudges = [5]float64{0, -0.25, 0.25, -0.5, 0.5}

// widest finds the largest disc in a hole: distances are found in its box.
func (m *Measured) widest(k int32) {
	h := &m.holes[k]
	x0, y0 := int(h.X0), int(h.Y0)
	w, high := int(h.X1)-x0, int(h.Y1)-y0
	in := make([]uint8, w*high)
	m.inBox(h, func(x, y int) { in[(y-y0)*w+x-x0] = 1 })
	f := mask.Others(in, w, high, &[256]bool{0: true})
	keys := make([]uint32, len(f.D2))
	for i, d2 := range f.D2 {
		keys[i] = math.MaxUint32 - uint32(d2)
	}
	order := mask.Order(keys)
	for _, i := range order[:min(len(order), discs)] {
		if f.D2[i] > 0 {
			m.nudge(h, f, int(i)%w, int(i)/w)
		}
	}
}

// nudge looks for the largest disc round one pixel of a hole's box, to the true
// edge: the edges nearest to the pixels round it are those that may be nearest.
func (m *Measured) nudge(h *Hole, f *mask.Field, px, py int) {
	x0, y0 := int(h.X0), int(h.Y0)
	var sites [][2]int
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			x, y := px+dx, py+dy
			if x < 0 || y < 0 || x >= f.W || y >= f.H || f.D2[y*f.W+x] == 0 {
				continue
			}
			sx, sy := f.Site(x, y)
			if s := [2]int{sx + x0, sy + y0}; !slices.Contains(sites, s) {
				sites = append(sites, s)
			}
		}
	}
	for _, dy := range nudges {
		for _, dx := range nudges {
			x, y := float64(px+x0)+dx, float64(py+y0)+dy
			d := math.MaxFloat64
			for _, s := range sites {
				d = lesser(d, 2*m.v.distanceFrom(x, y, s[0], s[1]))
			}
			if d > h.Across {
				h.Across, h.DiscX, h.DiscY = d, x+0.5, y+0.5
			}
		}
	}
}

func (m *Measured) inBox(h *Hole, with func(x, y int)) {
	for y := int(h.Y0); y < int(h.Y1); y++ {
		for _, r := range m.comps.Runs[m.comps.Row[y]:m.comps.Row[y+1]] {
			for x := r.X0; r.Comp == h.comp && x < r.X1; x++ {
				with(int(x), y)
			}
		}
	}
}

// round says which part a hole goes through and what stands round it.
func (m *Measured) round(k int32) {
	h := &m.holes[k]
	var sides [256]int
	m.inBox(h, func(x, y int) {
		for n := 0; n < len(ring); n += 2 {
			if px, py := x+ring[n][0], y+ring[n][1]; m.v.at(px, py) == solid {
				sides[m.v.s.Labels[py*m.v.w+px]]++
				h.Part = m.partOf[m.comps.At(px, py)]
			}
		}
	})
	for l, n := range sides {
		if n > sides[h.side] {
			h.side = uint8(l)
		}
	}
}

// rims finds the thinnest metal between each hole and what lies beyond.
func (m *Measured) rims() {
	for i := range m.g.nodes {
		n := &m.g.nodes[i]
		if n.sideA == n.sideB {
			continue
		}
		for _, k := range [2]int32{n.sideA, n.sideB} {
			if k >= 0 && (m.holes[k].Rim == 0 || n.width < m.holes[k].Rim) {
				m.holes[k].Rim = n.width
			}
		}
	}
}
