package outline

import (
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// HoleOf is the hole of an eye: as it was drawn, or as it is to be added.
func (m *Measured) HoleOf(e *sizing.Eye, at *At) sizing.Hole {
	if k := m.eyeAt(e); k >= 0 && e.Drawn {
		h := &m.holes[k]
		return sizing.Hole{X: h.DiscX, Y: h.DiscY, Across: h.Across}
	}
	return sizing.Hole{X: e.At[0] * float64(m.v.w), Y: e.At[1] * float64(m.v.h), Across: at.Limits.Eye.Px(at.Scale)}
}

// joined lists, for every part, the parts that joins hang it to.
func (m *Measured) joined(p sizing.Parts) map[int32][]int32 {
	all := map[int32][]int32{}
	if p.Choice != sizing.PartsDangle {
		return all
	}
	for i := range p.Joins {
		a, b := m.eyeAt(&p.Joins[i].Upper), m.eyeAt(&p.Joins[i].Lower)
		if a >= 0 && b >= 0 && m.holes[a].Part != m.holes[b].Part {
			u, l := m.holes[a].Part, m.holes[b].Part
			all[u], all[l] = append(all[u], l), append(all[l], u)
		}
	}
	return all
}

// hung says which parts hang together with the largest, as the person chose.
func (m *Measured) hung(p sizing.Parts) map[int32]bool {
	joined, all := m.joined(p), map[int32]bool{}
	if len(joined) == 0 || len(m.ways) == 0 {
		return all
	}
	list := []int32{m.ways[0].from}
	all[list[0]] = true
	for k := 0; k < len(list); k++ {
		for _, n := range joined[list[k]] {
			if !all[n] {
				all[n] = true
				list = append(list, n)
			}
		}
	}
	return all
}

// grownTogether says whether the two eyes of a join lie in one piece of metal.
func (m *Measured) grownTogether(j *sizing.Join, at *At) (f sizing.Finding, is bool) {
	a, b := m.eyeAt(&j.Upper), m.eyeAt(&j.Lower)
	if a < 0 || b < 0 || m.holes[a].Part != m.holes[b].Part {
		return f, false
	}
	p, q := &m.holes[a], &m.holes[b]
	far := at.Scale.MM(length(q.DiscX-p.DiscX, q.DiscY-p.DiscY))
	return sizing.Finding{
		Kind: sizing.GrownTogether, Flat: m.v.s.Flats[q.side].ID, Other: sizing.Outside, Count: 1,
		X: (p.DiscX + q.DiscX) / 2, Y: (p.DiscY + q.DiscY) / 2,
		X0: min(p.X0, q.X0), Y0: min(p.Y0, q.Y0), X1: max(p.X1, q.X1), Y1: max(p.Y1, q.Y1),
		Ends: [4]float64{p.DiscX, p.DiscY, q.DiscX, q.DiscY}, Thinnest: far, Typical: far,
		Error: at.Scale.MM(hardError), Verdict: sizing.Fails,
	}, true
}

// Room is what an added eye finds at its place.
type Room string

// What it can find.
const (
	RoomThere   Room = ""        // its part holds it, and nothing is in its way
	RoomOff     Room = "off"     // it stands on no part
	RoomThin    Room = "thin"    // it hangs on its part by less than a bridge must be
	RoomTouches Room = "touches" // its metal comes up to another part
	RoomHole    Room = "hole"    // it breaks into a hole
)

// RoomFor says what an eye that is to be added finds at its place on the drawing,
// before it is: quick enough for every frame of a drag.
func (m *Measured) RoomFor(e *sizing.Eye, at At) Room {
	r, rim := at.Limits.Eye.Px(at.Scale)/2, at.Limits.EyeRim.Px(at.Scale)
	n := m.around(e.At[0]*float64(m.v.w), e.At[1]*float64(m.v.h), r, rim)
	switch {
	case n.holes:
		return RoomHole
	case n.part < 0:
		return RoomOff
	case n.others:
		return RoomTouches
	case n.share < 1 && float64(2*math.Pi*(r+rim))*n.share < at.Limits.Bridge.Px(at.Scale):
		return RoomThin
	}
	return RoomThere
}

// neighbours are what stands round an eye.
type neighbours struct {
	part          int32   // that most of its edge stands on; -1 for none
	share         float64 // of its edge that does
	others, holes bool    // whether its metal comes up to another part, or a hole
}

// around looks along the edge of the metal round an eye, and a little outside.
func (m *Measured) around(x, y, r, rim float64) neighbours {
	const steps = 96
	n := neighbours{part: -1}
	counts := make([]int, len(m.parts))
	touched := make([]bool, len(m.parts))
	for k := range steps {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / steps)
		for _, far := range [3]float64{r, r + rim, r + rim + grainPx} {
			px, py := int(math.Floor(x+float64(cos*far))), int(math.Floor(y+float64(sin*far)))
			if m.v.at(px, py) != solid {
				n.holes = n.holes || far <= r+rim && m.holeAt(px, py) >= 0
				continue
			}
			if p := m.partOf[m.comps.At(px, py)]; p >= 0 {
				touched[p] = true
				if far == r+rim {
					counts[p]++
				}
			}
		}
	}
	for p, c := range counts {
		if c > 0 && (n.part < 0 || c > counts[n.part]) {
			n.part, n.share = int32(p), float64(c)/steps
		}
	}
	for p, t := range touched {
		n.others = n.others || t && int32(p) != n.part && m.parts[p].Area >= crumb
	}
	return n
}

// PartsAt is how many parts a pin of a scale is in, specks left out.
func (m *Measured) PartsAt(at At) int {
	n := 0
	for k := range m.parts {
		if m.parts[k].Area >= at.px2(speckMM2) {
			n++
		}
	}
	return n
}

// Apart says whether a pin of a scale is in several of them.
func (m *Measured) Apart(scale unit.PxPerMM) bool { return m.PartsAt(At{Scale: scale}) > 1 }

// LooseAt is how many of them neither hang from nor are joined to the rest.
func (m *Measured) LooseAt(at At) int {
	n := 0
	for _, f := range m.looseParts(&at) {
		if f.Area >= speckMM2 && f.Verdict != sizing.Holds {
			n++
		}
	}
	return n
}

// JoinsParts says whether a bridge leads from one part, as drawn, to another.
func (m *Measured) JoinsParts(r *sizing.Recipe) bool {
	if r.Kind != sizing.BuildBridge || len(r.Points) < 2 {
		return false
	}
	a, b := m.partNear(r.Points[0]), m.partNear(r.Points[len(r.Points)-1])
	return a >= 0 && b >= 0 && a != b
}

// partNear is the part at a place in shares, or right beside it; -1 for none.
func (m *Measured) partNear(p [2]float64) int32 {
	x, y := int(p[0]*float64(m.v.w)), int(p[1]*float64(m.v.h))
	for _, o := range [9][2]int{{}, {-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {1, -1}, {-1, 1}, {1, 1}} {
		if px, py := x+o[0], y+o[1]; m.v.at(px, py) == solid {
			return m.partOf[m.comps.At(px, py)]
		}
	}
	return -1
}
