package wall

import (
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// tiny reports what is too small to stay, part by part, and notes in gone the
// parts that need no further looking at: specks of metal, pinholes, areas.
func (m *Measured) tiny(scale unit.PxPerMM, l sizing.Limits, gone []bool) []sizing.Finding {
	areas, pinholes := m.smallAreas(scale, l, gone)
	holes, cuts := m.smallHoles(scale, l)
	found := append(areas, inOne(cuts)...)
	found = append(found, inOne(append(pinholes, holes...))...)
	return append(found, inOne(m.specks(scale, l, gone))...)
}

// inOne sums up findings of a kind that are too many to be listed one by one:
// a brush that leaves specks needs one repair. The smallest gives the place.
func inOne(all []sizing.Finding) []sizing.Finding {
	if len(all) <= manyPlaces {
		return all
	}
	s := slices.MinFunc(all, func(a, b sizing.Finding) int { return worse(a, b) })
	s.Count, s.Area = 0, 0
	for i := range all {
		f := &all[i]
		s.X0, s.Y0, s.X1, s.Y1 = min(s.X0, f.X0), min(s.Y0, f.Y0), max(s.X1, f.X1), max(s.Y1, f.Y1)
		s.Count, s.Area = s.Count+f.Count, s.Area+f.Area
	}
	return []sizing.Finding{s}
}

// part reports one whole part.
func (m *Measured) whole(k int32, kind sizing.Kind, width float64, limit unit.MM, scale unit.PxPerMM) sizing.Finding {
	box := m.boxes[k]
	x, y := m.inside(k)
	f := sizing.Finding{
		Kind: kind, Flat: m.flatAt(int(x), int(y)), Other: sizing.Outside, Count: 1, X: x, Y: y,
		X0: box[0], Y0: box[1], X1: box[2], Y1: box[3],
		Length:   scale.MM(math.Hypot(box[2]-box[0], box[3]-box[1])),
		Thinnest: scale.MM(width), Typical: scale.MM(width), Error: scale.MM(m.shaky), Limit: limit,
		Area: areaMM(m.area[k], scale),
	}
	m.judge(&f, scale, m.shaky)
	return f
}

func areaMM(px2 float64, scale unit.PxPerMM) float64 { return px2 / (float64(scale) * float64(scale)) }

// speckLimits is how many limits long metal that stands alone is at most to be
// a speck and no line (this tool's choice).
const speckLimits = 3

// specks reports metal that stands alone in enamel and is nowhere as wide as a
// line must be.
func (m *Measured) specks(scale unit.PxPerMM, l sizing.Limits, gone []bool) []sizing.Finding {
	limit := l.Line.Px(scale)
	under := threshold(limit, m.shaky)
	var found []sizing.Finding
	for k, c := range m.parts.Label {
		if c != metal || gone[k] || m.round.by[k]&(byOutside|byFrame) != 0 || m.area[k] < crumb {
			continue
		}
		box := m.boxes[k]
		width := m.widthOf(int32(k))
		if width >= under || math.Hypot(box[2]-box[0], box[3]-box[1]) >= speckLimits*limit {
			continue
		}
		gone[k] = true
		if f := m.whole(int32(k), sizing.MetalIsland, width, l.Line, scale); f.Verdict != sizing.Holds {
			found = append(found, f)
		}
	}
	return found
}

// widthOf returns the width of a part at its widest, in pixels; a part too small
// for a centreline is as wide as the square of its area.
func (m *Measured) widthOf(part int32) float64 {
	if m.widest[part] > 0 {
		return float64(m.widest[part])
	}
	return math.Sqrt(max(0, m.area[part]))
}

// smallHoles reports holes through the pin that are too small to cut, and of
// those pinholes in metal apart.
func (m *Measured) smallHoles(scale unit.PxPerMM, l sizing.Limits) (pinholes, cuts []sizing.Finding) {
	for i := range m.rooms {
		r := &m.rooms[i]
		if r.open || r.area < crumb {
			continue
		}
		side := math.Sqrt(r.area)
		if m.round.by[r.part] == byMetal && side < threshold(l.Line.Px(scale), m.shaky) {
			if f := m.whole(r.part, sizing.Pinhole, side, l.Line, scale); f.Verdict != sizing.Holds {
				pinholes = append(pinholes, f)
				continue
			}
		}
		if r.width >= threshold(l.CutOut.Px(scale), m.shaky) {
			continue
		}
		f := m.whole(r.part, sizing.SmallCutOut, r.width, l.CutOut, scale)
		f.X, f.Y = r.x, r.y
		if f.Verdict != sizing.Holds {
			cuts = append(cuts, f)
		}
	}
	return pinholes, cuts
}

// bays reports rooms that are open to the outside through an opening too narrow
// to cut.
func (m *Measured) bays(scale unit.PxPerMM, l sizing.Limits) []sizing.Finding {
	var found []sizing.Finding
	for i := range m.rooms {
		r := &m.rooms[i]
		if !r.open || r.width >= threshold(l.CutOut.Px(scale), m.shaky) {
			continue
		}
		e := &r.ends
		found = append(found, sizing.Finding{
			Kind: sizing.OpenArea, Flat: m.flatAt(floor(e[0]), floor(e[1])), Other: sizing.Outside, Count: 1,
			X: r.x, Y: r.y, X0: r.box[0], Y0: r.box[1], X1: r.box[2], Y1: r.box[3], Ends: *e,
			Path:   []float32{float32(e[0]), float32(e[1]), float32(e[2]), float32(e[3])},
			Length: scale.MM(r.width), Thinnest: scale.MM(r.width), Typical: scale.MM(r.width), Area: areaMM(r.area, scale),
			Error: scale.MM(m.shaky), Limit: l.CutOut, Verdict: sizing.Fails,
		})
	}
	return found
}

// solids reports metal so wide that it may want something in it.
func (m *Measured) solids(scale unit.PxPerMM, l sizing.Limits) []sizing.Finding {
	wide := float32(l.Solid.Px(scale))
	if !(wide > 0) {
		return nil
	}
	in := make([]bool, len(m.lines.points))
	some := false
	for i := range m.lines.points {
		p := &m.lines.points[i]
		in[i] = p.class == metal && p.width >= wide
		some = some || in[i]
	}
	if !some {
		return nil
	}
	var found []sizing.Finding
	walk := newWalker(&m.lines)
	for _, p := range m.lines.pieces(in) {
		found = append(found, m.solid(p, walk, scale, l.Solid))
	}
	return inOne(found)
}

func (m *Measured) solid(p piece, walk *walker, scale unit.PxPerMM, limit unit.MM) sizing.Finding {
	points := m.lines.points
	top, sum := p[0], 0.0
	for _, i := range p {
		sum += float64(points[i].width)
		if points[i].width > points[top].width {
			top = i
		}
	}
	s := m.spotOf(p, walk)
	q := &points[top]
	wide, half := float64(q.width), float64(q.width)/2
	// Along the centreline and half a disc at each end.
	area := float64(s.length*sum)/float64(len(p)) + float64(wide*wide)*math.Pi/4
	return sizing.Finding{
		Kind: sizing.SolidMetal, Flat: m.flatAt(int(q.x), int(q.y)), Other: sizing.Outside, Count: 1,
		X: float64(q.x) + 0.5, Y: float64(q.y) + 0.5,
		X0: float64(s.box[0]) + 0.5 - half, Y0: float64(s.box[1]) + 0.5 - half,
		X1: float64(s.box[2]) + 0.5 + half, Y1: float64(s.box[3]) + 0.5 + half,
		Length: scale.MM(s.length), Thinnest: scale.MM(wide), Typical: scale.MM(sum / float64(len(p))),
		Area: areaMM(area, scale), Error: scale.MM(m.shaky), Limit: limit, Verdict: sizing.Holds,
	}
}

// flatAt returns the flat of a pixel, Outside for what is none.
func (m *Measured) flatAt(x, y int) reduce.FlatID {
	if x < 0 || y < 0 || x >= m.s.W || y >= m.s.H {
		return sizing.Outside
	}
	l := m.s.Labels[y*m.s.W+x]
	if int(l) >= len(m.s.Flats) {
		return sizing.Outside
	}
	return m.s.Flats[l].ID
}
