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
	part   Part     // what the raster shows of the canvas
	pix    []uint32 // as seen, laid on the ground
	leaves []leaf   // by falling area
	f      fates
	// painted is true when the drawing has no flats of its own and was grouped.
	painted bool
	// blend names for each leaf the first leaf of the gradient it belongs to.
	blend []int
	line  *[256]bool // the leaves that are line work, or nil
	inked bool       // the lines came on a picture of their own

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
	a := &Analysis{w: d.W, h: d.H, part: d.part(), pix: s.seen}
	label, leaves := s.flats()
	if err := tell(0.5, "following edges"); err != nil {
		return nil, err
	}
	a.follow(s, leaves, label)
	if err := tell(0.9, "looking for lines"); err != nil {
		return nil, err
	}
	a.order()
	a.line = lineWork(a.leaves, a.blend, a.f.label, a.w, a.h, meetingsOf(a.f.label, a.w, a.h))
	for k := range a.leaves {
		if a.line != nil && a.line[k] {
			a.leaves[k].role = Metal
		}
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
// when its flats do not explain it.
func (a *Analysis) follow(s *survey, leaves []leaf, label []uint8) {
	drawn := inDrawing(label)
	if len(leaves) == 0 || len(leaves) > mostLeaves || 100*inFlats(label) < leastFlat*drawn {
		a.paint(s)
		return
	}
	a.blend = blends(leaves, label, s)
	e := newEdger(s, leaves, label)
	found := e.patches(e.settleEdges())
	e.learn(found)
	hair := e.hairlines(e.open)
	e.learn(hair)
	found = append(found, hair...)
	if 100*len(e.open) > mostLost*drawn {
		a.paint(s)
		return
	}
	copy(e.grip, e.f.label)
	e.sweep((*edger).nearestAt)
	e.unspeck()
	e.f.agree(a.w, a.h)
	a.leaves, a.f = append(leaves, found...), e.f
	for k := len(a.blend); k < len(a.leaves); k++ {
		a.blend = append(a.blend, k)
	}
}

// paint groups the drawing as a painting.
func (a *Analysis) paint(s *survey) {
	a.painted = true
	a.leaves, a.f = s.paint()
	e := &edger{survey: s, trust: trusts[s.grade], f: a.f}
	e.speck = 1 + len(s.pix)/paintedSpeck
	e.unspeck()
	a.blend = alone(len(a.leaves))
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
	leaves := make([]leaf, 0, len(by))
	for k, old := range by {
		to[old] = uint8(k)
		if a.leaves[old].area > 0 {
			leaves = append(leaves, a.leaves[old])
		}
	}
	a.leaves, a.blend = leaves, regroup(a.blend, by, len(leaves))
	for i, l := range a.f.label {
		a.f.label[i] = to[l]
	}
	for i, l := range a.f.beside {
		if a.f.beside[i] = to[l]; int(to[l]) >= len(leaves) && to[l] != None {
			a.f.beside[i], a.f.cover[i] = a.f.label[i], 255
		}
	}
	a.f.seal()
}

func alone(n int) []int {
	s := make([]int, n)
	for i := range s {
		s[i] = i
	}
	return s
}

// regroup renumbers gradients after leaves were put in the order by: each is
// named by its first leaf.
func regroup(blend, by []int, n int) []int {
	first := make(map[int]int)
	out := make([]int, n)
	for k := range out {
		g := blend[by[k]]
		if _, ok := first[g]; !ok {
			first[g] = k
		}
		out[k] = first[g]
	}
	return out
}
