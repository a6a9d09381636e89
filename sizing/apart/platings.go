package apart

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
)

// Platings ranks the platings for a design by the enamels beside its metal: the
// more of where they meet is told apart by colour the better, then by lightness,
// then by the enamel that comes nearest. What cannot go with the fill comes last.
func Platings(pairs []Pair, s *Scene, fill sizing.Fill, t *Thresholds) []Ranked {
	var all []Ranked
	for _, p := range sizing.Platings() {
		r := s.rankOf(pairs, &p, t)
		r.Chosen, r.Fits = p.ID == s.Plating.ID, !p.SoftOnly || fill != sizing.Hard
		all = append(all, r)
	}
	slices.SortStableFunc(all, func(a, b Ranked) int {
		return cmp.Or(
			cmp.Compare(btoi(b.Fits), btoi(a.Fits)),
			cmp.Compare(b.Share, a.Share),
			cmp.Compare(len(a.Dim), len(b.Dim)),
			cmp.Compare(b.Nearest, a.Nearest),
		)
	})
	return all
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// rankOf says how a plating goes with the enamels beside the metal.
func (s *Scene) rankOf(pairs []Pair, p *sizing.Plating, t *Thresholds) Ranked {
	r := Ranked{Plating: p.ID, Name: p.Name, Fail: []reduce.FlatID{}, Dim: []reduce.FlatID{}, Share: 1, Decides: reduce.BuiltMetal}
	nearest, length, apart := math.Inf(1), 0.0, 0.0
	for i := range pairs {
		pair := &pairs[i]
		if pair.Kind != BesideLine {
			continue
		}
		seen := besideMetal(s.colourOf(pair.A, 0), p, colour.Normal, t)
		if seen.Colour < nearest {
			nearest, r.Decides, r.Nearest = seen.Colour, pair.A, seen.Colour
		}
		length += float64(pair.Length)
		if seen.ByColour == sizing.Holds {
			apart += float64(pair.Length)
		} else {
			r.Fail = append(r.Fail, pair.A)
		}
		if seen.ByLightness == sizing.Fails {
			r.Dim = append(r.Dim, pair.A)
		}
	}
	if length > 0 {
		r.Share = apart / length
	}
	r.Words = s.platingWords(&r)
	return r
}

func (s *Scene) platingWords(r *Ranked) string {
	switch {
	case r.Decides == reduce.BuiltMetal:
		return "no enamel lies beside the metal"
	case len(r.Fail) == 0:
		return fmt.Sprintf("told from every colour; %s comes nearest", s.nameOf(r.Decides))
	}
	names := make([]string, len(r.Fail))
	for i, id := range r.Fail {
		names[i] = s.nameOf(id)
	}
	return "reads as one with " + listed(names)
}

// listed joins names as one says them.
func listed(names []string) string {
	if n := len(names) - 1; n > 0 {
		return strings.Join(names[:n], ", ") + " and " + names[n]
	}
	return strings.Join(names, "")
}
