package wall

import (
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// manyPlaces is how many borders of one kind are listed one by one; beyond it
// they are told by pairs of colours, and if those are too many, as one: a
// drawing without lines needs one repair and not a hundred flags (this tool's
// choice).
const manyPlaces = 8

// missing reports metal that is not there: between enamels, and round them.
func (m *Measured) missing(scale unit.PxPerMM, l sizing.Limits) []sizing.Finding {
	found := m.broken(scale, l)
	found = append(found, m.lacking(m.touches, sizing.NoLine, scale, l.Line)...)
	return append(found, m.lacking(m.open, sizing.NoEdge, scale, l.Edge)...)
}

// coarsePx is the width of a line, in pixels, up to which a gap shorter than a
// few pixels may be the raster's.
const coarsePx = 4

// broken reports the gaps in lines and outer edges. A gap is one at any size.
func (m *Measured) broken(scale unit.PxPerMM, l sizing.Limits) []sizing.Finding {
	var found, unsure []sizing.Finding
	for i := range m.gaps {
		o := &m.gaps[i]
		if o.width <= m.shaky {
			continue
		}
		limit := l.Line
		if o.b < 0 {
			limit = l.Edge
		}
		x, y := middleOf(o.path)
		x0, y0, x1, y1 := boxOf(o.path)
		e := &o.ends
		f := sizing.Finding{
			Kind: sizing.Gap, Flat: m.flatOf(o.a), Other: m.beyond(o.b), Count: 1, X: x, Y: y,
			X0: min(x0, e[0], e[2]), Y0: min(y0, e[1], e[3]), X1: max(x1, e[0], e[2]), Y1: max(y1, e[1], e[3]),
			Ends: *e, Path: o.path, Length: scale.MM(o.length),
			Thinnest: scale.MM(o.width), Typical: scale.MM(o.metal),
			Error: scale.MM(m.shaky), Limit: limit, Verdict: sizing.Fails,
		}
		if o.metal < coarsePx && o.width < grainPx {
			f.Verdict, f.NeedPx = sizing.CannotTell, roundedUp(float64(max(m.s.W, m.s.H))*coarsePx/o.metal)
			unsure = append(unsure, f)
			continue
		}
		found = append(found, f)
	}
	return append(found, inOne(unsure)...)
}

func boxOf(path []float32) (x0, y0, x1, y1 float64) {
	x0, y0 = math.MaxFloat64, math.MaxFloat64
	for i := 0; i < len(path); i += 2 {
		x, y := float64(path[i]), float64(path[i+1])
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
	}
	return x0, y0, x1, y1
}

// slipPx is the length in pixels up to which two enamels may touch unnoticed:
// pixels that meet where a thin line passes between them. It hangs on no size,
// so that a border is missing metal at every size or at none.
const slipPx = 3

// lacking reports the borders of one kind.
func (m *Measured) lacking(all []border, kind sizing.Kind, scale unit.PxPerMM, limit unit.MM) []sizing.Finding {
	var long []border
	for _, b := range all {
		if b.bare > slipPx {
			long = append(long, b)
		}
	}
	if len(long) > manyPlaces {
		long = summed(long, m.coloursOf)
	}
	if len(long) > manyPlaces {
		long = summed(long, func(border) [2]uint8 { return [2]uint8{} })
	}
	found := make([]sizing.Finding, 0, len(long))
	for _, b := range long {
		found = append(found, sizing.Finding{
			Kind: kind, Flat: m.flatOf(b.a), Other: m.beyond(b.b), Count: b.count, X: b.x, Y: b.y,
			X0: b.box[0], Y0: b.box[1], X1: b.box[2], Y1: b.box[3],
			Path: b.path, Length: scale.MM(b.bare), Error: scale.MM(m.shaky), Limit: limit,
			Verdict: sizing.Fails,
		})
	}
	return found
}

// beyond returns the flat of a part, Outside for what is none.
func (m *Measured) beyond(part int32) reduce.FlatID {
	if part < 0 {
		return sizing.Outside
	}
	return m.flatOf(part)
}

// summed sums borders of the same key; the longest gives the place.
func summed(all []border, keyOf func(border) [2]uint8) []border {
	var sums []border
	var keys [][2]uint8
	var longest []float64
next:
	for _, b := range all {
		key := keyOf(b)
		for k := range keys {
			if keys[k] != key {
				continue
			}
			t := &sums[k]
			t.bare += b.bare
			t.count++
			t.box = [4]float64{min(t.box[0], b.box[0]), min(t.box[1], b.box[1]), max(t.box[2], b.box[2]), max(t.box[3], b.box[3])}
			if b.bare > longest[k] {
				longest[k] = b.bare
				t.x, t.y, t.path = b.x, b.y, b.path
			}
			continue next
		}
		sums, keys, longest = append(sums, b), append(keys, key), append(longest, b.bare)
	}
	return sums
}

func (m *Measured) coloursOf(b border) [2]uint8 {
	key := [2]uint8{m.parts.Label[b.a], outside}
	if b.b >= 0 {
		key[1] = m.parts.Label[b.b]
	}
	if key[0] > key[1] {
		key[0], key[1] = key[1], key[0]
	}
	return key
}
