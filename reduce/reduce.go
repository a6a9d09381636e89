package reduce

import (
	"cmp"
	"slices"
)

// Analysis is what was found in a drawing on its ground: the finest flats
// (leaves) and the leaf of every pixel. Every count and every edit is a cheap
// relabelling of it. Use it from one goroutine at a time.
type Analysis struct {
	w, h   int
	pix    []uint32 // as seen, laid on the ground
	leaves []leaf   // by falling area
	f      fates
	meet   *meetings
	// painted is true when the drawing has no flats of its own and was grouped.
	painted bool
	// blend names for each leaf the first leaf of the gradient it belongs to.
	blend []int
	line  int // the leaf that is line work, or -1

	split  splitMemo
	losses *lossBook
}

// Analyse finds the flats of a drawing. It is the expensive step, done once
// for a drawing and its ground.
func Analyse(d *Drawing, g *Ground, p Progress) (*Analysis, error) {
	tell := func(share float64, doing string) error {
		if p == nil {
			return nil
		}
		return p(share, doing)
	}
	if err := tell(0, "looking for calm places"); err != nil {
		return nil, err
	}
	s := look(d, g)
	if err := tell(0.3, "looking for colours"); err != nil {
		return nil, err
	}
	a := &Analysis{w: d.W, h: d.H, pix: s.seen}
	label, leaves := s.flats()
	if err := tell(0.5, "following edges"); err != nil {
		return nil, err
	}
	a.follow(s, leaves, label)
	if err := tell(0.9, "looking for lines"); err != nil {
		return nil, err
	}
	a.order()
	a.meet = meetingsOf(a.f.label, a.w, a.h)
	a.line = lineWork(a.leaves, a.f.label, a.w, a.h, a.meet)
	if a.line >= 0 {
		a.leaves[a.line].role = Metal
	}
	return a, nil
}

// flats finds the true flats and labels their calm pixels.
func (s *survey) flats() ([]uint8, []leaf) {
	shades := shadesOf(s.pix, s.takes())
	peaks, of := peaksOf(shades, trusts[s.grade].radius)
	label := s.plant(tableOf(shades, of))
	countSolid(label, s.w, s.h, peaks)
	leaves, leafAt := s.flatsOf(peaks)
	var to [256]uint8
	for l := range to {
		to[l] = uint8(l)
	}
	copy(to[:], leafAt)
	for i, l := range label {
		label[i] = to[l]
	}
	return label, leaves
}

// takes marks the calm pixels of the drawing itself.
func (s *survey) takes() []uint8 {
	take := make([]uint8, len(s.calm))
	back := s.back[:len(take)]
	for i, c := range s.calm {
		if back[i] < 255 {
			take[i] = c
		}
	}
	return take
}

// follow gives every pixel its leaf, or regroups the drawing as a painting
// when the flats hold too little of it.
func (a *Analysis) follow(s *survey, leaves []leaf, label []uint8) {
	if len(leaves) == 0 || len(leaves) > mostLeaves || 100*inFlats(label) < leastFlat*inDrawing(label) {
		a.painted = true
		a.leaves, a.f = s.paint()
		e := &edger{survey: s, trust: trusts[wandering], f: a.f}
		e.speck = paintedSpeck
		e.grade = wandering
		e.unspeck()
		a.blend = alone(len(a.leaves))
		return
	}
	a.blend = blends(leaves, label, s)
	e := newEdger(s, leaves, label)
	lost := e.settleEdges()
	found := e.hairlines(lost)
	e.learn(found)
	copy(e.grip, e.f.label)
	e.sweep((*edger).nearestAt)
	e.unspeck()
	e.f.agree(a.w, a.h)
	a.leaves, a.f = append(leaves, found...), e.f
	for k := len(a.blend); k < len(a.leaves); k++ {
		a.blend = append(a.blend, k)
	}
}

func inFlats(label []uint8) int {
	n := 0
	for _, l := range label {
		if l < loose {
			n++
		}
	}
	return n
}

func inDrawing(label []uint8) int {
	n := 0
	for _, l := range label {
		if l != None {
			n++
		}
	}
	return n
}

// order numbers the leaves by falling area and drops those without pixels.
func (a *Analysis) order() {
	for k := range a.leaves {
		a.leaves[k].area = 0
	}
	for _, l := range a.f.label {
		if l != None {
			a.leaves[l].area++
		}
	}
	by := alone(len(a.leaves))
	slices.SortStableFunc(by, func(x, y int) int { return cmp.Compare(a.leaves[y].area, a.leaves[x].area) })
	var to [256]uint8
	to[None] = None
	at := make([]int, len(by))
	leaves := make([]leaf, 0, len(by))
	for k, old := range by {
		to[old], at[old] = uint8(k), k
		if a.leaves[old].area > 0 {
			leaves = append(leaves, a.leaves[old])
		}
	}
	blend := alone(len(by))
	for k, old := range by {
		blend[k] = at[a.blend[old]]
	}
	a.leaves, a.blend = leaves, blend[:len(leaves)]
	for i, l := range a.f.label {
		a.f.label[i] = to[l]
	}
	for i, l := range a.f.beside {
		if a.f.beside[i] = to[l]; int(to[l]) >= len(leaves) && to[l] != None {
			a.f.beside[i], a.f.cover[i] = a.f.label[i], 255
		}
	}
}

func alone(n int) []int {
	s := make([]int, n)
	for i := range s {
		s[i] = i
	}
	return s
}

// blendRadii is how near, in radii, two steps of one gradient lie.
const blendRadii = 3

// blends finds gradients: flats whose calm pixels touch, which flats with an
// edge between them never do.
func blends(leaves []leaf, label []uint8, s *survey) []int {
	m := meetingsOf(label, s.w, s.h)
	r := trusts[s.grade].radius * blendRadii
	of := alone(len(leaves))
	for k := range leaves {
		for j := range k {
			if int(m[k][j]) > leastBlend(leaves, m, k, j) && leaves[k].lab.Distance2(leaves[j].lab) < r*r {
				from, to := of[k], of[j]
				for i := range of {
					if of[i] == from {
						of[i] = to
					}
				}
			}
		}
	}
	return of
}

// leastBlend is how many calm sides two flats must share to be steps of one
// gradient: a good part of the smaller one's rim.
func leastBlend(leaves []leaf, m *meetings, k, j int) int {
	return max(24, min(m.of(uint8(k)), m.of(uint8(j)))/8)
}
