package reduce

import "badgewright/reduce/colour"

// fates is what becomes of every pixel: the two flats it lies between and how
// much of it is the first.
type fates struct {
	label, beside, cover []uint8
	mixed                []int32 // the pixels of two flats, once sealed
}

// seal lists the mixed pixels: few, so that every relabelling need look at
// these alone for a second flat.
func (f *fates) seal() {
	f.mixed = f.mixed[:0:0]
	for i, l := range f.label {
		if f.beside[i] != l || f.cover[i] != 255 {
			f.mixed = append(f.mixed, int32(i))
		}
	}
}

// edger finds what the pixels between flats are made of.
type edger struct {
	*survey
	trust
	tones  [256]tone // of each leaf, and of the background under None
	lights [256]tone // the same as linear light
	n      int       // leaves
	f      fates
	grip   []uint8 // what was known before the current sweep
	open   []int32 // pixels still loose, in reading order
	rings  [farReach + 1][]int
	cut    []int
}

const (
	// farReach is how far, px, the flats of a soft edge are looked for when
	// the nearer ones do not explain a pixel.
	farReach = 4
	// mostNear bounds the flats that may meet at one pixel.
	mostNear = 6
	// between mixes count only where the picture really passes from one flat
	// to the other: some neighbour is nearer each end by this much of 255.
	passing = 6
	// growSweeps carry a flat out to its last unmixed pixel.
	growSweeps = 2
)

func newEdger(s *survey, leaves []leaf, label []uint8) *edger {
	e := &edger{survey: s, trust: trusts[s.grade], n: len(leaves)}
	for k := range leaves {
		e.colour(k, leaves[k].rgb)
	}
	e.colour(int(None), s.ground)
	e.f.label = label
	for i, l := range label {
		if l == loose {
			e.open = append(e.open, int32(i))
		}
	}
	return e
}

// spread gives every loose pixel a flat and, where it mixes two, both.
func (e *edger) settleEdges() (lost []int32) {
	for range growSweeps {
		e.grow()
	}
	n := len(e.f.label)
	e.f.beside, e.f.cover = make([]uint8, n), make([]uint8, n)
	copy(e.f.beside, e.f.label)
	for i := range e.f.cover {
		e.f.cover[i] = 255
	}
	e.grip = make([]uint8, n)
	copy(e.grip, e.f.label)
	e.sweep((*edger).fromBeside)
	copy(e.grip, e.f.label)
	e.sweep((*edger).thin)
	return e.open
}

// sweep tries each loose pixel; those that try leaves loose stay open.
func (e *edger) sweep(try func(*edger, int) bool) {
	keep := e.open[:0]
	for _, i := range e.open {
		if !try(e, int(i)) {
			keep = append(keep, i)
		}
	}
	e.open = keep
}

// grow takes loose pixels of a flat's own colour into the flat beside them.
func (e *edger) grow() {
	var took []uint8
	keep := e.open[:0]
	var gone []int32
	for _, i := range e.open {
		if l := e.ownBeside(int(i)); l != loose {
			gone, took = append(gone, i), append(took, l)
			continue
		}
		keep = append(keep, i)
	}
	for k, i := range gone {
		e.f.label[i] = took[k]
	}
	e.open = keep
}

// ownBeside returns the label among the eight neighbours whose colour the
// pixel has, or loose.
func (e *edger) ownBeside(i int) uint8 {
	if e.pix[i]>>24 < 255 && e.back[i] > 0 {
		return loose // white art fades into a white page: its alpha must speak
	}
	p := e.grade.tone(e.pix[i])
	best, most := loose, int32(e.pure*e.pure+1)
	for _, o := range e.ring(i, 1) {
		l := e.f.label[i+o]
		if l == loose || l == best || l == None && !e.mayFade(i) {
			continue
		}
		if d := p.apart2(&e.tones[l]); d < most {
			best, most = l, d
		}
	}
	return best
}

// ring returns, as steps from pixel i, the pixels at Chebyshev distance r from
// it, in reading order; off the raster there are none. The slice is good until
// the next call.
func (e *edger) ring(i, r int) []int {
	x, y := i%e.w, i/e.w
	if x >= r && y >= r && x+r < e.w && y+r < e.h {
		if e.rings[r] == nil {
			e.rings[r] = ringSteps(nil, e.w, r, func(int, int) bool { return true })
		}
		return e.rings[r]
	}
	e.cut = ringSteps(e.cut[:0], e.w, r, func(dx, dy int) bool {
		return x+dx >= 0 && y+dy >= 0 && x+dx < e.w && y+dy < e.h
	})
	return e.cut
}

func ringSteps(to []int, w, r int, on func(dx, dy int) bool) []int {
	for dy := -r; dy <= r; dy++ {
		for dx := -r; dx <= r; dx++ {
			if max(dx, -dx, dy, -dy) == r && on(dx, dy) {
				to = append(to, dy*w+dx)
			}
		}
	}
	return to
}

// near collects the flats known within reach of a pixel, nearest first.
type near struct {
	label [mostNear]uint8
	n     int
}

func (c *near) add(l uint8) {
	if l == loose || c.n == mostNear {
		return
	}
	for _, k := range c.label[:c.n] {
		if k == l {
			return
		}
	}
	c.label[c.n] = l
	c.n++
}

// mayFade is true when pixel i can be part background: on a clear ground a
// solid pixel cannot, whatever its colour.
func (e *edger) mayFade(i int) bool { return !e.clear || e.back[i] > 0 }

// collect adds the labels at distance r from pixel i.
func (e *edger) collect(i, r int, label []uint8, c *near) {
	fade := e.mayFade(i)
	last := loose
	for _, o := range e.ring(i, r) {
		if l := label[i+o]; l != last && (l != None || fade) {
			c.add(l)
			last = l
		}
	}
}

func (c *near) has(l uint8) bool {
	for _, k := range c.label[:c.n] {
		if k == l {
			return true
		}
	}
	return false
}

// fromBeside explains a pixel by the flats beside it, looking further only
// while they do not.
func (e *edger) fromBeside(i int) bool {
	var c near
	p := e.grade.tone(e.pix[i])
	for r := 1; r <= farReach; r++ {
		before := c.n
		e.collect(i, r, e.grip, &c)
		if c.n == before && r > 1 {
			continue
		}
		if e.pix[i]>>24 < 255 && e.veil(i, &c, &p) {
			return true
		}
		if e.explain(i, &c, &p) {
			return true
		}
	}
	return false
}

// veilSlack is how much nearer, squared, a flat further off must come before it
// is taken for a see-through pixel: its colour is known only to rounding.
const veilSlack = 48

// veil settles a see-through pixel at the rim of a clear background: its
// alpha says how much of it is drawing, and so what colour each flat would give.
// It leaves the pixel to others when no flat near gives that colour.
func (e *edger) veil(i int, c *near, p *tone) bool {
	if !c.has(None) {
		return false
	}
	alpha := int32(255 - e.back[i])
	best, least := loose, int32(e.mix*e.mix)
	for _, l := range c.label[:c.n] {
		if l == None {
			continue
		}
		off := p.apart2(e.tones[l].over(&e.tones[None], alpha))
		if best == loose && off <= least || off+veilSlack < least {
			best, least = l, off
		}
	}
	if best == loose {
		return false
	}
	e.set(i, best, None, alpha)
	return true
}

// veilOfAny does as veil, with every flat of the drawing: a line may be too
// thin to be known anywhere near.
func (e *edger) veilOfAny(i int, c *near, p *tone) bool {
	if !c.has(None) {
		return false
	}
	alpha := int32(255 - e.back[i])
	best, least := loose, int32(e.mix*e.mix)+1
	for l := 0; l < e.n; l++ {
		if off := p.apart2(e.tones[l].over(&e.tones[None], alpha)); off < least {
			best, least = uint8(l), off
		}
	}
	if best == loose {
		return false
	}
	e.set(i, best, None, alpha)
	return true
}

// explain finds the pair of near flats on whose line the pixel lies.
func (e *edger) explain(i int, c *near, p *tone) bool {
	most := int32(e.mix * e.mix)
	var a, b uint8 = loose, loose
	var part int32
	for x := 0; x < c.n; x++ {
		for y := x + 1; y < c.n; y++ {
			s, off := share(p, &e.tones[c.label[x]], &e.tones[c.label[y]])
			if off < most {
				a, b, part, most = c.label[x], c.label[y], s, off
			}
		}
	}
	if a == loose || !e.passes(i, a, b, part) {
		return false
	}
	e.set(i, a, b, part)
	return true
}

// passes is true when the picture goes on towards both flats round pixel i.
func (e *edger) passes(i int, a, b uint8, part int32) bool {
	ta, tb := &e.tones[a], &e.tones[b]
	toA, toB := false, false
	for _, o := range e.ring(i, 1) {
		toA = toA || e.grip[i+o] == a
		toB = toB || e.grip[i+o] == b
	}
	if toA && toB {
		return true
	}
	for _, o := range e.ring(i, 1) {
		q := e.grade.tone(e.pix[i+o])
		s, _ := share(&q, ta, tb)
		toA = toA || s >= part+passing
		toB = toB || s <= part-passing
	}
	return toA && toB
}

// colour sets what a label looks like.
func (e *edger) colour(label int, c colour.RGB8) {
	e.tones[label] = e.grade.toneOf(c)
	e.lights[label] = lit(packed(c))
}

// set writes a mix of a (part of 255) and b, the greater first. A lens mixes
// light, not its encoding, so in a photograph the part is found again as light:
// a dark line beside paper is else half a pixel too thin on either side.
func (e *edger) set(i int, a, b uint8, part int32) {
	if e.grade == grainy && a != b {
		p := lit(e.pix[i])
		part, _ = share(&p, &e.lights[a], &e.lights[b])
	}
	if part < 128 {
		a, b, part = b, a, 255-part
	}
	if a == b || part >= 253 {
		b, part = a, 255
	}
	e.f.label[i], e.f.beside[i], e.f.cover[i] = a, b, uint8(part)
}

// nearestAt settles what nothing explained: the known flat nearest in colour.
func (e *edger) nearestAt(i int) bool {
	p := e.grade.tone(e.pix[i])
	var c near
	for r := 1; r <= farReach; r++ {
		e.collect(i, r, e.f.label, &c)
	}
	best, least := loose, int32(1<<30)
	for _, l := range c.label[:c.n] {
		if d := p.apart2(&e.tones[l]); d < least {
			best, least = l, d
		}
	}
	for l := 0; l < e.n; l++ {
		if d := 2 * p.apart2(&e.tones[l]); d < least { // one from further off must fit twice as well
			best, least = uint8(l), d
		}
	}
	if best == loose {
		best = None
	}
	e.set(i, best, best, 255)
	return true
}
