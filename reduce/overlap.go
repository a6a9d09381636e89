package reduce

import "badgewright/reduce/colour"

const (
	// sameFlat is the least share of the smaller of two flats that must lie on
	// the other for them to be one across a revision.
	sameFlat = 0.5
	// sameHue is how far, in CIEDE2000, a flat of the revision may be from the
	// flat it lies on: further, it is a recolouring by the artist, which counts
	// as the same flat only where nearly all of it lies on the old one.
	sameHue   = 12
	nearlyAll = 0.9
)

// plane is one of two flat drawings that are laid on each other: the flat of
// each pixel of its raster, the colour of each flat.
type plane struct {
	label []uint8
	w, h  int
	lab   []colour.Lab
}

// leafPlane is a drawing by its finest flats.
func (a *Analysis) leafPlane() plane {
	s := plane{label: a.f.label, w: a.w, h: a.h}
	for i := range a.leaves {
		s.lab = append(s.lab, a.leaves[i].rgb.Lab())
	}
	return s
}

// at is the flat at a place in shares of the canvas, the number of flats where
// there is none.
func (s *plane) at(x, y float64) int {
	if x < 0 || y < 0 || x >= 1 || y >= 1 {
		return len(s.lab)
	}
	return s.index(s.label[int(y*float64(s.h))*s.w+int(x*float64(s.w))])
}

func (s *plane) index(l uint8) int {
	if l == None {
		return len(s.lab)
	}
	return int(l)
}

// overlap counts the pixels of each two flats of two drawings that lie on each
// other; the last row and column are the background.
type overlap struct {
	was, is  plane
	laid     Laid
	n        [][]int
	old, now []int
}

// overlaps lays an old drawing on a new one, place by place of the new raster.
func overlaps(was, is plane, laid Laid) *overlap {
	o := &overlap{was: was, is: is, laid: laid, n: make([][]int, len(was.lab)+1), old: make([]int, len(was.lab)+1), now: make([]int, len(is.lab)+1)}
	for k := range o.n {
		o.n[k] = make([]int, len(is.lab)+1)
	}
	o.each(func(_, a, b int) {
		o.n[a][b]++
		o.old[a]++
		o.now[b]++
	})
	return o
}

// each calls with every pixel of the new raster, what lay there and what lies
// there.
func (o *overlap) each(with func(i, was, is int)) {
	w := o.is.w
	for i, l := range o.is.label {
		x, y := o.laid.from((float64(i%w)+0.5)/float64(w), (float64(i/w)+0.5)/float64(o.is.h))
		with(i, o.was.at(x, y), o.is.index(l))
	}
}

// matches pairs flats, those that share most first, each at most once.
func (o *overlap) matches() map[FlatID]FlatID {
	to := make(map[FlatID]FlatID)
	taken := make([]bool, len(o.is.lab))
	for range o.was.lab {
		best, a, b := 0, -1, -1
		for i := range o.was.lab {
			if _, has := to[FlatID(i)]; has {
				continue
			}
			for j := range o.is.lab {
				if n := o.n[i][j]; n > best && !taken[j] && o.same(i, j) {
					best, a, b = n, i, j
				}
			}
		}
		if a < 0 {
			break
		}
		to[FlatID(a)], taken[b] = FlatID(b), true
	}
	return to
}

// same is true for two flats that are one across a revision.
func (o *overlap) same(i, j int) bool {
	shared := float64(o.n[i][j]) / float64(min(o.old[i], o.now[j]))
	if o.apart(i, j) > sameHue {
		return shared >= nearlyAll && float64(o.n[i][j]) >= nearlyAll*float64(max(o.old[i], o.now[j]))
	}
	return shared >= sameFlat
}

// apart is how far the colours of two flats are from each other, CIEDE2000.
func (o *overlap) apart(i, j int) float64 { return colour.CIEDE2000(o.was.lab[i], o.is.lab[j]) }
