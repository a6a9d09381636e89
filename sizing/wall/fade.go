package wall

import (
	"cmp"
	"math"
	"slices"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

const (
	// manyEnds is how many ends that fade out are listed one by one, of metal and
	// of enamel each; the shorter ones are told as one.
	manyEnds = 6
	// longEnd is how many limits long a point of enamel is at least to be listed:
	// wedges of up to 16 degrees, while nearly every corner of a drawing is a
	// shorter one (both are this tool's choice).
	longEnd = 3
)

// fades says whether all of a piece is nothing more than a fading end below a
// limit in px.
func (m *Measured) fades(p piece, under float32) bool {
	for _, i := range p {
		if m.lines.points[i].hard < under {
			return false
		}
	}
	return true
}

// fadingEnds reports ends that fade out; in says which points are part of
// spots.
func (m *Measured) fadingEnds(spots []spot, in []bool, walk *walker, limits [groups]unit.MM, scale unit.PxPerMM) []sizing.Finding {
	var ends [2][]sizing.Finding // of enamel, of metal
	for i := range spots {
		s := &spots[i]
		f, _ := m.describe(s, walk, limits[s.group], scale)
		f.Kind, f.Verdict = sizing.FadesOut, sizing.Holds
		f.Ends = m.endsOf(s, in)
		ends[ofMetal(s.group)] = append(ends[ofMetal(s.group)], f)
	}
	var found []sizing.Finding
	for k, all := range ends {
		slices.SortStableFunc(all, func(a, b sizing.Finding) int { return cmp.Compare(b.Length, a.Length) })
		found = append(found, longest(all, longEnd*float64(1-k))...)
	}
	return found
}

func ofMetal(group uint8) int {
	if group == areaGroup {
		return 0
	}
	return 1
}

// longest keeps those of the longest ends that are as many limits long, and sums
// up the rest in the one after.
func longest(all []sizing.Finding, limits float64) []sizing.Finding {
	n := 0
	for n < min(len(all), manyEnds) && float64(all[n].Length) >= limits*float64(all[n].Limit) {
		n++
	}
	if n < len(all) {
		all[n].Count = len(all) - n
		n++
	}
	return all[:n]
}

// endsOf returns where an end passes the limit, then its tip: the free end
// that is thinnest, and of the places where it goes on the one farthest from
// there. A pixel of the centreline that is missing before the tip is not made up.
func (m *Measured) endsOf(s *spot, in []bool) [4]float64 {
	points := m.lines.points
	tip := s.all[0]
	for _, i := range s.all {
		free, was := len(m.lines.of(i)) <= 1, len(m.lines.of(tip)) <= 1
		if free && !was || free == was && points[i].tau < points[tip].tau {
			tip = i
		}
	}
	pass, best := tip, -1.0
	for _, i := range s.all {
		for _, n := range m.lines.of(i) {
			if in[n] && points[n].group == s.group {
				continue
			}
			if d := math.Hypot(float64(points[i].x-points[tip].x), float64(points[i].y-points[tip].y)); d > best {
				pass, best = i, d
			}
		}
	}
	return [4]float64{
		float64(points[pass].x) + 0.5, float64(points[pass].y) + 0.5,
		float64(points[tip].x) + 0.5, float64(points[tip].y) + 0.5,
	}
}
