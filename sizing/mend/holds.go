package mend

import (
	"math/bits"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// finest is how far apart sizes are tried, mm.
const finest unit.MM = 0.5

// Sized is a drawing whose size is looked for.
type Sized struct {
	Builder *wall.Builder
	Recipes []sizing.Recipe
	Box     [4]float64 // of the silhouette, px
	By      sizing.SizeBy
	Limits  sizing.Limits
}

// Search is how far the search for the smallest size that holds as repaired has
// come: between two sizes, in steps of half a millimetre. It is taken one size
// at a time, so that other questions can be answered in between.
type Search struct {
	Least int `json:"least"`
	Most  int `json:"most"`
	Tried int `json:"tried"` // sizes
	// Found is true once Most is known to hold; Done when nothing is left to try.
	Found bool `json:"found"`
	Done  bool `json:"done"`
}

// Begin is a search that has tried nothing, up to a size.
func Begin(most unit.MM) Search {
	return Search{Least: int(sizing.LeastSize / finest), Most: int(most / finest)}
}

// Share is how much of the search is done, 0..1.
func (s Search) Share() float64 {
	if s.Done {
		return 1
	}
	left := bits.Len(uint(max(0, s.Most-s.Least)))
	if !s.Found {
		left++
	}
	return float64(s.Tried) / float64(s.Tried+left)
}

// Size is the smallest size that holds, as far as it is known; 0 when none does.
// What holds as repaired at one size might not at a larger, so sizes that were
// not tried are not promised.
func (s Search) Size() unit.MM {
	if !s.Found {
		return 0
	}
	return unit.MM(s.Most) * finest
}

// Step tries one size more: the greatest first, then the middle of what is left.
// p may be nil; its error stops the step, and the search is as it was.
func (s Search) Step(d *Sized, p reduce.Progress) (Search, error) {
	if s.Done {
		return s, nil
	}
	at := s.next()
	ok, err := d.holds(unit.MM(at)*finest, p)
	if err != nil {
		return s, err
	}
	return s.tried(at, ok), nil
}

// next is the size to be tried.
func (s Search) next() int {
	if s.Found {
		return (s.Least + s.Most) / 2
	}
	return s.Most
}

// tried is the search once it is known whether a size holds.
func (s Search) tried(at int, holds bool) Search {
	s.Tried++
	switch {
	case holds:
		s.Most, s.Found = at, true
	case s.Found:
		s.Least = at + 1
	default:
		s.Done = true
	}
	s.Done = s.Done || s.Least >= s.Most
	return s
}

// holds says whether nothing fails at a size once everything is repaired.
func (d *Sized) holds(size unit.MM, p reduce.Progress) (bool, error) {
	scale := sizing.ScaleFor(d.Box, sizing.Size{MM: size, By: d.By})
	o, err := All(&Drawing{Builder: d.Builder, Recipes: d.Recipes, Scale: scale, Limits: d.Limits}, p)
	return err == nil && len(o.Left) == 0, err
}

// HoldsFrom searches to the end. p may be nil; its error stops the search.
func HoldsFrom(d *Sized, most unit.MM, p reduce.Progress) (unit.MM, error) {
	s := Begin(most)
	for !s.Done {
		within := func(share float64, _ string) error {
			if p == nil {
				return nil
			}
			return p(s.Share(), "trying sizes")
		}
		var err error
		if s, err = s.Step(d, within); err != nil {
			return 0, err
		}
	}
	return s.Size(), nil
}
