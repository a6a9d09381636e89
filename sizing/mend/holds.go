package mend

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// finest is how far apart sizes are tried, mm.
const finest unit.MM = 0.5

// HoldsFrom returns the smallest size, to half a millimetre, at which nothing
// fails once everything is repaired; 0 when nothing up to most holds. What
// holds as repaired at one size might not at a larger, so the sizes from there
// up are not promised: of those that were tried, all held. p may be nil; its
// error stops the search.
func HoldsFrom(b *wall.Builder, recipes []sizing.Recipe, box [4]float64, by sizing.SizeBy, l sizing.Limits, most unit.MM, p reduce.Progress) (unit.MM, error) {
	s := &search{b: b, recipes: recipes, box: box, by: by, l: l, p: p}
	lo, hi := int(sizing.LeastSize/finest), int(most/finest)
	for n := hi - lo; n > 0; n /= 2 {
		s.steps++
	}
	s.steps++
	ok, err := s.holds(hi)
	if err != nil || !ok {
		return 0, err
	}
	for lo < hi {
		mid := (lo + hi) / 2
		ok, err := s.holds(mid)
		switch {
		case err != nil:
			return 0, err
		case ok:
			hi = mid
		default:
			lo = mid + 1
		}
	}
	return unit.MM(hi) * finest, nil
}

// search tries one size after another.
type search struct {
	b       *wall.Builder
	recipes []sizing.Recipe
	box     [4]float64
	by      sizing.SizeBy
	l       sizing.Limits
	p       reduce.Progress
	steps   int
	step    int
}

// holds says whether nothing fails at a size once everything is repaired.
func (s *search) holds(size int) (bool, error) {
	at := func(share float64, _ string) error {
		if s.p == nil {
			return nil
		}
		return s.p((float64(s.step)+min(1, share))/float64(s.steps), "trying sizes")
	}
	scale := sizing.ScaleFor(s.box, sizing.Size{MM: unit.MM(size) * finest, By: s.by})
	o, err := All(&Drawing{Builder: s.b, Recipes: s.recipes, Scale: scale, Limits: s.l}, at)
	if err != nil {
		return false, err
	}
	s.step++
	return len(o.Left) == 0, nil
}
