package reduce

import (
	"cmp"
	"math"
	"slices"

	"badgewright/reduce/colour"
)

// leaf is one of the finest flats found in a drawing.
type leaf struct {
	rgb  colour.RGB8
	lab  colour.OKLab
	area int  // pixels
	role Role // guessed
}

func leafOf(rgb colour.RGB8) leaf { return leaf{rgb: rgb, lab: rgb.OKLab(), role: Enamel} }

const (
	// mostLeaves bounds the finest flats of flat art; a drawing with more is
	// grouped as a painting.
	mostLeaves = 48
	// tailRadius, in radii, and tailShare: a small peak so near a great one is
	// its stain, unless tailSolid of it is solid.
	tailRadius = 1.8
	tailShare  = 0.04
	tailSolid  = 0.35
	// bandSolid is the share of a peak's pixels that must be solid: bands along
	// soft edges have fewer.
	bandSolid = 0.03
	// plainSolid is the share from which a colour stands although it lies
	// between two others: the mixes along an edge never gather like that.
	plainSolid = 0.05
)

const (
	// leastAlone solid pixels are enough for a colour unlike all others, at
	// least unlikeFar away in OKLab: an eye or a lamp in a stained picture.
	leastAlone = 4
	unlikeFar  = 0.1
)

// leastSolid is how many solid pixels a colour needs, by grade: 4 is a dot of
// 4 x 4 in exact art; stain makes small calm patches of its own.
var leastSolid = [...]int{exact: 3, wandering: 12, grainy: 60}

// flatsOf keeps the peaks that are true flats and returns, for each peak, its
// leaf, or loose when it is none.
func (s *survey) flatsOf(peaks []peak) ([]leaf, []uint8) {
	order := make([]int, len(peaks))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(peaks[b].n, peaks[a].n) })
	of := make([]uint8, len(peaks))
	var kept []int
	var leaves []leaf
	for _, k := range order {
		of[k] = loose
		if host := s.hostOf(peaks, kept, k); host >= 0 {
			of[k] = of[host]
		} else if s.standsAlone(peaks, kept, k) && len(leaves) < int(loose) {
			of[k] = uint8(len(leaves))
			leaves = append(leaves, leafOf(rgbOf(peaks[k].rgb)))
			kept = append(kept, k)
		}
	}
	return leaves, of
}

// hostOf returns the nearest greater peak whose stain this one is, or -1.
func (s *survey) hostOf(peaks []peak, kept []int, k int) int {
	p := &peaks[k]
	at, least := -1, math.Inf(1)
	for _, j := range kept {
		if d := peaks[j].lab.Distance2(p.lab); d < least {
			at, least = j, d
		}
	}
	if at < 0 {
		return -1
	}
	own, tail := trusts[s.grade].radius, trusts[s.grade].radius*tailRadius
	stain := s.grade != exact && float64(p.n) < tailShare*float64(peaks[at].n) && float64(p.solid) < tailSolid*float64(p.n)
	if least < own*own || stain && least < tail*tail {
		return at
	}
	return -1
}

func (s *survey) standsAlone(peaks []peak, kept []int, k int) bool {
	p := &peaks[k]
	least := leastSolid[s.grade]
	if s.unlike(peaks, kept, p) {
		least = min(least, leastAlone)
	}
	if p.solid < least || float64(p.solid) < bandSolid*float64(p.n) {
		return false
	}
	return float64(p.solid) >= plainSolid*float64(p.n) || !s.mixOfTwo(peaks, kept, p)
}

// unlike is true when a peak is far from the ground and every greater peak.
func (s *survey) unlike(peaks []peak, kept []int, p *peak) bool {
	far := p.lab.Distance2(s.ground.OKLab()) > unlikeFar*unlikeFar
	for _, j := range kept {
		far = far && p.lab.Distance2(peaks[j].lab) > unlikeFar*unlikeFar
	}
	return far
}

// mixOfTwo is true when a peak lies on the line between two greater ones.
func (s *survey) mixOfTwo(peaks []peak, kept []int, p *peak) bool {
	t := s.grade.toneOf(rgbOf(p.rgb))
	tones := []tone{s.grade.toneOf(s.ground)}
	for _, j := range kept {
		tones = append(tones, s.grade.toneOf(rgbOf(peaks[j].rgb)))
	}
	most := int32(trusts[s.grade].mix * trusts[s.grade].mix)
	for a := range tones {
		for b := range a {
			if part, off := share(&t, &tones[a], &tones[b]); off < most && part > 20 && part < 235 {
				return true
			}
		}
	}
	return false
}
