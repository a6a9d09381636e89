package wall

import (
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
	found := m.lacking(m.touches, sizing.NoLine, scale, l.Line)
	return append(found, m.lacking(m.open, sizing.NoEdge, scale, l.Edge)...)
}

// lacking reports the borders of one kind that are longer than a limit.
func (m *Measured) lacking(all []border, kind sizing.Kind, scale unit.PxPerMM, limit unit.MM) []sizing.Finding {
	var long []border
	for _, b := range all {
		if b.length >= limit.Px(scale) {
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
			Kind: kind, Flat: m.flatOf(b.a), Other: m.beyond(b.b), Count: 1, X: b.x, Y: b.y,
			X0: b.box[0], Y0: b.box[1], X1: b.box[2], Y1: b.box[3],
			Path: b.path, Length: scale.MM(b.length), Error: scale.MM(m.shaky), Limit: limit,
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
			t.length += b.length
			t.box = [4]float64{min(t.box[0], b.box[0]), min(t.box[1], b.box[1]), max(t.box[2], b.box[2]), max(t.box[3], b.box[3])}
			if b.length > longest[k] {
				longest[k] = b.length
				t.x, t.y, t.path = b.x, b.y, b.path
			}
			continue next
		}
		sums, keys, longest = append(sums, b), append(keys, key), append(longest, b.length)
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
