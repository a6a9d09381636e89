package wall

import (
	"math"

	"badgewright/reduce"
)

// patch is a box of a separation that one repair works on, seen as a drafter
// sees it. Places in it are pixels of the box, pixel (x, y) reaching from x to
// x+1 and y to y+1.
type patch struct {
	s      *reduce.Separation // the whole, which is changed
	x0, y0 int
	v      *view // of the box, as it was
	metal  uint8 // label of metal that is laid
}

// patchRound cuts out the box that reaches some pixels past a line; ok is false
// when nothing of it lies on the raster.
func (b *Builder) patchRound(s *reduce.Separation, line []place, reach float64, label uint8) (p *patch, ok bool) {
	x0, y0, x1, y1 := boxRound(line, reach, s.W, s.H)
	if x0 >= x1 || y0 >= y1 {
		return nil, false
	}
	return &patch{s: s, x0: x0, y0: y0, v: newView(Cut(s, x0, y0, x1, y1)), metal: label}, true
}

// boxRound is the box of a line and some pixels round it, on a raster.
func boxRound(line []place, reach float64, w, h int) (x0, y0, x1, y1 int) {
	left, top, right, bottom := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range line {
		left, top, right, bottom = min(left, p.x), min(top, p.y), max(right, p.x), max(bottom, p.y)
	}
	if !(left <= right && top <= bottom) { // no points, or what is no number
		return 0, 0, 0, 0
	}
	on := func(v float64, most int) int { return int(min(max(v, 0), float64(most))) }
	return on(left-reach, w), on(top-reach, h), on(right+reach+1, w), on(bottom+reach+1, h)
}

// Cut returns a copy of a box of a separation, pixels x0..x1-1 and y0..y1-1.
func Cut(s *reduce.Separation, x0, y0, x1, y1 int) *reduce.Separation {
	w := x1 - x0
	t := reduce.NewSeparation(w, y1-y0)
	t.Flats = s.Flats
	for y := y0; y < y1; y++ {
		from, to := y*s.W+x0, (y-y0)*w
		copy(t.Labels[to:to+w], s.Labels[from:])
		copy(t.Beside[to:to+w], s.Beside[from:])
		copy(t.Cover[to:to+w], s.Cover[from:])
	}
	return t
}

// in brings places of the whole into the box.
func (p *patch) in(line []place) []place {
	all := make([]place, len(line))
	for i, q := range line {
		all[i] = place{q.x - float64(p.x0), q.y - float64(p.y0)}
	}
	return all
}

// whole returns the index in the whole of a pixel of the box.
func (p *patch) whole(i int) int { return (i/p.v.w+p.y0)*p.s.W + i%p.v.w + p.x0 }

// classAt returns the class of the pixel that a place lies in; off the box it
// is outside.
func (p *patch) classAt(x, y float64) uint8 {
	return p.v.at(int(math.Floor(x)), int(math.Floor(y)))
}

// labelOf returns the label that stands for a class when it is laid.
func (p *patch) labelOf(class uint8) uint8 {
	if class == metal {
		return p.metal
	}
	return class // of enamel, print and outside the class is the label
}

// share returns how much of a pixel of the whole, 0..255, is of a class.
func (p *patch) share(i int, class uint8) uint8 {
	own, beside, cover := p.v.of[p.s.Labels[i]] == class, p.v.of[p.s.Beside[i]] == class, p.s.Cover[i]
	switch {
	case own && (beside || cover == 255):
		return 255
	case own:
		return cover
	case beside:
		return 255 - cover
	}
	return 0
}

// lay gives at least a part of a pixel of the whole, 0..255, to a class. What
// lies outside is taken only when over is true.
func (p *patch) lay(i int, class, part uint8, over bool) {
	if part <= p.share(i, class) {
		return
	}
	s := p.s
	own, beside := s.Labels[i], s.Beside[i]
	out := p.v.of[own] == outside || p.v.of[beside] == outside && s.Cover[i] < 255
	if out && !over {
		if part >= 128 {
			p.replace(i, class)
		}
		return
	}
	label, other := p.labelOf(class), own
	if p.v.of[own] == class {
		label, other = own, beside
	} else if p.v.of[beside] == class {
		label = beside
	}
	switch {
	case part == 255:
		s.Labels[i], s.Beside[i], s.Cover[i] = label, label, 255
	case part >= 128:
		s.Labels[i], s.Beside[i], s.Cover[i] = label, other, part
	default:
		s.Labels[i], s.Beside[i], s.Cover[i] = other, label, 255-part
	}
	p.noteBuilt(i, own)
}

// replace gives a class the part of a pixel that the pin has in it.
func (p *patch) replace(i int, class uint8) {
	s := p.s
	own := s.Labels[i]
	for _, l := range [2]*uint8{&s.Labels[i], &s.Beside[i]} {
		if c := p.v.of[*l]; c != outside && c != class {
			*l = p.labelOf(class)
		}
	}
	if s.Labels[i] == s.Beside[i] {
		s.Cover[i] = 255
	}
	p.noteBuilt(i, own)
}

// noteBuilt keeps the marks of what became metal, given what a pixel was.
func (p *patch) noteBuilt(i int, was uint8) {
	if p.s.Built == nil {
		return
	}
	is := p.v.of[p.s.Labels[i]] == metal
	if is != (p.v.of[was] == metal) {
		p.s.Built[i] = is
	}
}

// hand gives all that a pixel of the whole has of one class to another.
func (p *patch) hand(i int, from, to uint8) {
	s := p.s
	own, label := s.Labels[i], p.labelOf(to)
	for _, l := range [2]*uint8{&s.Labels[i], &s.Beside[i]} {
		if p.v.of[*l] == from {
			*l = label
		}
	}
	if s.Labels[i] == s.Beside[i] {
		s.Cover[i] = 255
	}
	p.noteBuilt(i, own)
}
