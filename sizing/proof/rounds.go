package proof

import (
	"fmt"

	"badgewright/sizing/unit"
)

// PairState is what became of a difference.
type PairState string

// The states, of a difference in two rounds or in two makers' proofs.
const (
	Done PairState = "done" // asked for, and no longer there
	Open PairState = "open" // asked for, and still there
	New  PairState = "new"  // not there before

	InBoth    PairState = "both"
	FirstOnly PairState = "first"
	OtherOnly PairState = "other"
)

// DeviationPair is a difference in two pictures: of two rounds, or of two makers. One of
// the two may be absent.
type DeviationPair struct {
	State PairState  `json:"state"`
	First *Deviation `json:"first,omitempty"`
	Other *Deviation `json:"other,omitempty"`
	Words string     `json:"words"`
}

// sameMM is how near each other the same difference lies in two pictures.
const sameMM unit.MM = 1.5

// Rounds holds what was asked to be changed in one round against what the next
// round shows; perMM is px of the pin per mm, of both.
func Rounds(asked, now []Deviation, perMM float64) []DeviationPair {
	list := pairs(asked, now, perMM)
	for i := range list {
		p := &list[i]
		switch {
		case p.Other == nil:
			p.State, p.Words = Done, "Done: "+p.First.Words
		case p.First == nil:
			p.State, p.Words = New, "New in this round: "+p.Other.Words
		default:
			p.State, p.Words = Open, "Still so: "+p.Other.Words
		}
	}
	return list
}

// Beside holds two makers' proofs of one design against each other.
func Beside(first, other []Deviation, perMM float64) []DeviationPair {
	list := pairs(first, other, perMM)
	for i := range list {
		p := &list[i]
		switch {
		case p.Other == nil:
			p.State, p.Words = FirstOnly, "In the first alone: "+p.First.Words
		case p.First == nil:
			p.State, p.Words = OtherOnly, "In the other alone: "+p.Other.Words
		default:
			p.State, p.Words = InBoth, fmt.Sprintf("In both: %s The other: %s", p.First.Words, p.Other.Words)
		}
	}
	return list
}

// pairs matches differences of one family that lie on one place, each once, in the
// order of the first; what is left of the other follows.
func pairs(first, other []Deviation, perMM float64) []DeviationPair {
	var list []DeviationPair
	taken := make([]bool, len(other))
	for i := range first {
		p := DeviationPair{First: &first[i]}
		for k := range other {
			if !taken[k] && same(&first[i], &other[k], float64(sameMM)*perMM) {
				p.Other, taken[k] = &other[k], true
				break
			}
		}
		list = append(list, p)
	}
	for k := range other {
		if !taken[k] {
			list = append(list, DeviationPair{Other: &other[k]})
		}
	}
	return list
}

// family is what kinds of difference may turn into each other between pictures.
func (k DeviationKind) family() DeviationKind {
	switch k {
	case LineThinner, AreasMerged:
		return LineMissing
	case AreaSplit, PatchAdded:
		return LineAdded
	case SizeDrawn:
		return SizeStated
	case PostMissing:
		return PostMoved
	}
	return k
}

func same(x, y *Deviation, near float64) bool {
	if x.Kind.family() != y.Kind.family() || x.Flat != y.Flat && x.Kind == AreaRecoloured {
		return false
	}
	a, b := x.Box, y.Box
	return a[0]-near <= b[2] && b[0]-near <= a[2] && a[1]-near <= b[3] && b[1]-near <= a[3]
}

// SayPairs sums pairs up in a sentence.
func SayPairs(list []DeviationPair) string {
	n := map[PairState]int{}
	for _, p := range list {
		n[p.State]++
	}
	if n[InBoth]+n[FirstOnly]+n[OtherOnly] > 0 {
		return fmt.Sprintf("%d in both proofs, %d in the first alone, %d in the other alone.", n[InBoth], n[FirstOnly], n[OtherOnly])
	}
	if len(list) == 0 {
		return "Nothing was asked to be changed, and nothing differs."
	}
	return fmt.Sprintf("%d done, %d still open, %d new in this round.", n[Done], n[Open], n[New])
}
