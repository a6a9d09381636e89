package outline

import (
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// eyeNear is within how many of its widths from where two parts come nearest a
// drawn hole is taken for an eye to hang them by.
const eyeNear = 1.5

// drawnEyes finds the holes by which two parts were drawn to hang: one in each,
// near where the parts come nearest.
func (m *Measured) drawnEyes(w *way) (from, to int32, ok bool) {
	from = m.eyeBy(w.from, w.ends[0], w.ends[1])
	to = m.eyeBy(w.to, w.ends[2], w.ends[3])
	return from, to, from >= 0 && to >= 0
}

func (m *Measured) eyeBy(part int32, x, y float64) int32 {
	best, pick := math.MaxFloat64, int32(-1)
	for k := range m.holes {
		h := &m.holes[k]
		if h.Part != part {
			continue
		}
		far := length(h.DiscX-x, h.DiscY-y) - h.Across/2
		if far <= eyeNear*h.Across && far < best {
			best, pick = far, int32(k)
		}
	}
	return pick
}

// Joins proposes how the parts hang from each other: by holes that were drawn
// for it, or by eyes added where there is room. ok is false when some part finds
// no place for an eye.
func (m *Measured) Joins(at At) (joins []sizing.Join, ok bool) {
	ok = true
	for i := range m.ways {
		w := &m.ways[i]
		if m.parts[w.to].Area < at.px2(speckMM2) {
			continue
		}
		j, fits := m.join(w, &at)
		if !fits {
			ok = false
			continue
		}
		joins = append(joins, j)
	}
	return joins, ok
}

func (m *Measured) join(w *way, at *At) (sizing.Join, bool) {
	upper, lower := w.from, w.to
	if m.parts[lower].Y < m.parts[upper].Y {
		upper, lower = lower, upper
	}
	var j sizing.Join
	if a, b, ok := m.drawnEyes(w); ok {
		if upper != w.from {
			a, b = b, a
		}
		j.Upper, j.Lower = m.drawn(a), m.drawn(b)
		m.reach(&j, at)
		return j, true
	}
	// A part hangs straight from a point above its centre.
	e := eyeRoom{at: at, r: at.Limits.Eye.Px(at.Scale) / 2, rim: at.Limits.EyeRim.Px(at.Scale), x: m.parts[lower].X}
	for _, upperOffs := range [2][]float64{e.offs(), e.inside()} {
		e.other = nil
		p, ok := m.place(upper, lower, 1, upperOffs, &e)
		if !ok {
			continue
		}
		e.other = &p
		if q, ok := m.place(lower, upper, -1, e.offs(), &e); ok {
			j.Upper, j.Lower = m.added(p), m.added(q)
			m.reach(&j, at)
			return j, true
		}
	}
	return j, false
}

// reach sets the links of a join to how far apart its eyes were drawn.
func (m *Measured) reach(j *sizing.Join, at *At) {
	a, b := m.HoleOf(&j.Upper, at), m.HoleOf(&j.Lower, at)
	j.Reach(at.Scale.MM(length(b.X-a.X, b.Y-a.Y) - (a.Across+b.Across)/2))
}

func (m *Measured) drawn(hole int32) sizing.Eye {
	h := &m.holes[hole]
	return sizing.Eye{At: m.share(h.DiscX, h.DiscY), Drawn: true}
}

func (m *Measured) added(p [2]float64) sizing.Eye { return sizing.Eye{At: m.share(p[0], p[1])} }

func (m *Measured) share(x, y float64) [2]float64 {
	return [2]float64{x / float64(m.v.w), y / float64(m.v.h)}
}

const (
	// proud is how far the hole of an ear stands off the outline it is added to, as
	// a share of the metal round it: all of the drawing stays, and the ear still
	// has a wide foot.
	proud = 0.25
	// leanMM is how far from straight below or above a part may hang before
	// another way to make its eye is tried first (this tool's choice).
	leanMM unit.MM = 0.5
)

// eyeRoom is what the place of an eye is looked for by, in pixels.
type eyeRoom struct {
	at     *At
	r, rim float64 // of the hole, and of metal round it
	x      float64 // the column it should be in
	other  *[2]float64
}

// offs are how far off the edge of a part its eye may be: as an ear on it, round
// the very end of it, or as a hole inside.
func (e *eyeRoom) offs() []float64 { return append([]float64{e.r + proud*e.rim, 0}, e.inside()...) }

// inside is a hole with metal all round, grainPx deeper than it must be.
func (e *eyeRoom) inside() []float64 { return []float64{-(e.r + e.rim + grainPx)} }

// place finds room for an eye of a part, at its lower side (down 1) or upper
// (down -1), as near to the column as may be: near it in any of the ways, then
// farther off.
func (m *Measured) place(part, other int32, down float64, offs []float64, e *eyeRoom) (p [2]float64, ok bool) {
	b := &m.parts[part]
	lean, wide := leanMM.Px(e.at.Scale), b.X1-b.X0
	for _, reach := range [2]float64{min(lean, wide), wide} {
		for _, off := range offs {
			if p, ok = m.placeAlong(part, other, down, reach, off, e); ok {
				return p, true
			}
		}
	}
	return p, false
}

// placeAlong tries places off the edge of a part, from the column outward.
func (m *Measured) placeAlong(part, other int32, down, reach, off float64, e *eyeRoom) (p [2]float64, ok bool) {
	for far := 0.0; far <= reach; far += max(1, e.rim/4) {
		for _, px := range [2]float64{e.x - far, e.x + far} {
			y, hit := m.edgeIn(part, other, px, down)
			if !hit {
				continue
			}
			p = [2]float64{px, y + float64(down*off)}
			if m.fits(p, part, off >= 0, e) {
				return p, true
			}
		}
	}
	return p, false
}

// edgeIn returns where a part ends in a column, at its lower or upper side, as
// seen from the middle of the other part.
func (m *Measured) edgeIn(part, other int32, x, down float64) (y float64, hit bool) {
	b, o := &m.parts[part], &m.parts[other]
	px := int(x)
	if px < int(b.X0) || px >= int(b.X1) {
		return 0, false
	}
	from, to, by := max(int(b.Y0), int(o.Y)), int(b.Y1), 1
	if down > 0 {
		from, to, by = min(int(b.Y1)-1, int(o.Y)), int(b.Y0)-1, -1
	}
	for row := from; row != to && (to-row)*by > 0; row += by {
		if m.v.at(px, row) != solid || m.partOf[m.comps.At(px, row)] != part {
			continue
		}
		if down > 0 {
			row++
		}
		return float64(row), row != from || row == int(b.Y0) || row == int(b.Y1)
	}
	return 0, false
}

// fits says whether a hole with metal round it can be put at a place: clear of
// the other part, its eye and of holes, and, for an ear, on enough of its own
// part to hold as a bridge does; inside, with metal all round.
func (m *Measured) fits(p [2]float64, part int32, ear bool, e *eyeRoom) bool {
	out := e.r + e.rim
	switch {
	case p[0] < 0 || p[1] < 0 || p[0] >= float64(m.v.w) || p[1] >= float64(m.v.h):
		return false
	case e.other != nil && length(p[0]-e.other[0], p[1]-e.other[1]) < 2*out+grainPx:
		return false
	}
	const steps = 72
	foot := 0
	for k := range steps {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / steps)
		for _, far := range [3]float64{e.r, out, out + grainPx} {
			x, y := int(math.Floor(p[0]+float64(cos*far))), int(math.Floor(p[1]+float64(sin*far)))
			on := m.v.at(x, y) == solid
			switch {
			case on && m.partOf[m.comps.At(x, y)] != part, far <= out && m.holeAt(x, y) >= 0:
				return false
			case on && far == out:
				foot++
			}
		}
	}
	if !ear {
		return foot == steps
	}
	return 2*math.Pi*out*float64(foot)/steps >= e.at.Limits.Bridge.Px(e.at.Scale)
}

// eyeAt returns the hole at a place given in shares, or near it; -1 for none.
func (m *Measured) eyeAt(e *sizing.Eye) int32 {
	x, y := e.At[0]*float64(m.v.w), e.At[1]*float64(m.v.h)
	if k := m.holeAt(int(x), int(y)); k >= 0 {
		return k
	}
	for k := range m.holes {
		if h := &m.holes[k]; length(h.DiscX-x, h.DiscY-y) <= h.Across/2 {
			return int32(k)
		}
	}
	return -1
}

// weakEyes finds the eyes of a dangle with too little metal round them, and
// those that are no hole at all.
func (m *Measured) weakEyes(at *At) []sizing.Finding {
	var found []sizing.Finding
	if at.Parts.Choice != sizing.PartsDangle {
		return nil
	}
	done := map[int32]bool{}
	for i := range at.Parts.Joins {
		j := &at.Parts.Joins[i]
		if f, ok := m.grownTogether(j, at); ok {
			found = append(found, f)
		}
		for _, e := range []*sizing.Eye{&j.Upper, &j.Lower} {
			k := m.eyeAt(e)
			if k >= 0 && done[k] {
				continue
			}
			done[k] = true
			if f := m.weakEye(e, k, at); f.Verdict != sizing.Holds {
				found = append(found, f)
			}
		}
	}
	return found
}

func (m *Measured) weakEye(e *sizing.Eye, hole int32, at *At) sizing.Finding {
	x, y := e.At[0]*float64(m.v.w), e.At[1]*float64(m.v.h)
	f := sizing.Finding{
		Kind: sizing.WeakEye, Flat: m.flatNear(x, y), Other: sizing.Outside, Count: 1, X: x, Y: y, X0: x, Y0: y, X1: x, Y1: y,
		Error: at.Scale.MM(m.shaky), Limit: at.Limits.EyeRim,
	}
	if hole < 0 {
		f.Verdict = sizing.Fails
		return f
	}
	h := &m.holes[hole]
	out := h.Rim
	f.X, f.Y, f.X0, f.Y0, f.X1, f.Y1 = h.DiscX, h.DiscY, h.X0-out, h.Y0-out, h.X1+out, h.Y1+out
	f.Thinnest, f.Typical, f.Flat = at.Scale.MM(h.Rim), at.Scale.MM(h.Across), m.v.s.Flats[h.side].ID
	if hole := at.Scale.MM(h.Across); hole < at.Limits.Eye && hole >= at.Limits.CutOut { // smaller is too small to cut
		f.Thinnest, f.Limit, f.Error = hole, at.Limits.Eye, at.Scale.MM(2*m.shaky)
		if m.judge(&f, at.Scale, 2*m.shaky); f.Verdict != sizing.Holds {
			return f
		}
		f.Thinnest, f.Limit, f.Error = at.Scale.MM(h.Rim), at.Limits.EyeRim, at.Scale.MM(m.shaky)
	}
	if h.Rim == 0 { // in metal so wide that no way across it was measured
		f.Verdict = sizing.Holds
		return f
	}
	m.judge(&f, at.Scale, m.shaky)
	return f
}
