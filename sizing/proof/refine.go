package proof

import (
	"math"
	"slices"

	"badgewright/sizing/unit"
)

// searchMM is how far off an edge is looked for in each round of refining, and
// leastSearch how far at least, in px of the picture.
var searchMM = []unit.MM{0.9, 0.6, 0.45, 0.35, 0.28, 0.25, 0.25}

const leastSearch = 2.0

// stepsOut is into how many steps a search is cut to either side.
const stepsOut = 14

// leastStep is the least difference of two colours, in encoded channels, whose
// border is looked for.
const leastStep = 26.0

// refine lays the pin by its edges: each is looked for along its normal, and the
// laying moved so that all come nearest, those far off counting less.
func (h *held) refine(k freedom, from int) {
	for _, mm := range searchMM[min(from, len(searchMM)-1):] {
		h.learn()
		found := h.offsets(mm)
		if len(found) < leastFound {
			return
		}
		h.move(found, k)
	}
}

// refineSurely refines a laying, and again with the metal's colour taken from the
// rim where that did not come out well: while a pin lies half a mm off, the middles
// of fine lines show what lies beside them.
func (h *held) refineSurely(k freedom, from int) Fit {
	before := h.w
	h.refine(k, from)
	f := h.quality()
	rim, ok := h.rimColour(before)
	if f.Good || !ok {
		return f
	}
	g := hold(h.a, h.p, before, h.bare)
	for i := from; i < from+rimRounds; i++ {
		g.learn()
		g.shown[metal], g.known[metal] = rim, true
		if found := g.offsets(searchMM[min(i, len(searchMM)-1)]); len(found) >= leastFound {
			g.move(found, k)
		}
	}
	g.refine(k, from)
	if better := g.quality(); better.worth() > f.worth() {
		*h, f = *g, better
	}
	return f
}

// rimRounds is how many rounds the rim's colour stands for the metal's.
const rimRounds = 4

// How far from its place the rim is looked for, and how deep in it its colour is
// taken, mm.
const (
	rimSearch unit.MM = 1.2
	rimDepth  unit.MM = 0.2
)

// rimColour is the colour just inside of where ground turns to something else, by
// the outline as a map has it.
func (h *held) rimColour(w Warp) (rgb, bool) {
	g := hold(h.a, h.p, w, h.bare)
	var list medians
	far, step := h.a.px(rimSearch), max(0.5, 0.5/g.ppx)
	l := &h.a.loops[h.a.large]
	every := max(1, len(l.at)/400)
	for i := 0; i < len(l.at); i += every {
		p, n := l.at[i], l.out[i]
		for t := far; t > -far; t -= step {
			if c := g.see(p.X+float64(n.X*t), p.Y+float64(n.Y*t)); c.far2(&h.bare) > leastStep*leastStep {
				t -= h.a.px(rimDepth)
				list.add(g.see(p.X+float64(n.X*t), p.Y+float64(n.Y*t)))
				break
			}
		}
	}
	return list.median(), list.n > leastFound
}

// leastFound is how many edges must be found for a laying to be moved.
const leastFound = 40

// offset is how far off an edge was found, px of the picture, along its normal
// there.
type offset struct {
	edge   int
	at, n  Point // in the picture
	off    float64
	weight float64
}

func (h *held) offsets(mm unit.MM) []offset {
	search := max(leastSearch, float64(mm)*h.perMM())
	var found []offset
	for i := range h.a.edges {
		e := &h.a.edges[i]
		if !h.known[e.in] || !h.known[e.out] || h.shown[e.in].far2(&h.shown[e.out]) < leastStep*leastStep {
			continue
		}
		o := offset{edge: i, weight: 1}
		o.at.X, o.at.Y = h.w.At(e.at.X, e.at.Y)
		o.n = h.normal(e.at, e.n)
		var ok bool
		if o.off, ok = h.seek(e, o.at, o.n, search); ok {
			found = append(found, o)
		}
	}
	return found
}

// normal maps a normal: across the way that the border takes in the picture.
func (h *held) normal(at, n Point) Point {
	ux, vx, uy, vy := h.w.moved(at.X, at.Y)
	tx, ty := -n.Y, n.X
	t := Point{float64(ux*tx) + float64(uy*ty), float64(vx*tx) + float64(vy*ty)}
	m := Point{t.Y, -t.X}
	gu, gv := float64(ux*n.X)+float64(uy*n.Y), float64(vx*n.X)+float64(vy*n.Y)
	k := math.Sqrt(float64(m.X*m.X) + float64(m.Y*m.Y))
	if k == 0 {
		return Point{1, 0}
	}
	if float64(m.X*gu)+float64(m.Y*gv) < 0 {
		k = -k
	}
	return Point{m.X / k, m.Y / k}
}

// seek finds where along the normal the picture passes most steeply from the one
// colour to the other, finer than a step.
func (h *held) seek(e *edge, at, n Point, search float64) (off float64, ok bool) {
	from, to := h.shown[e.in], h.shown[e.out]
	d2 := from.far2(&to)
	var s [2*stepsOut + 3]float64 // how far from the one to the other: 0..1
	step := search / stepsOut
	for i := range s {
		t := step * float64(i-stepsOut-1)
		c := h.p.at(at.X+float64(n.X*t), at.Y+float64(n.Y*t))
		for k := range c {
			s[i] += float64((c[k]-from[k])*(to[k]-from[k])) / d2
		}
		s[i] = min(1.2, max(-0.2, s[i]))
	}
	best, most := 0, leastRise
	for i := 1; i < len(s)-1; i++ {
		t := float64(i-stepsOut-1) / stepsOut
		if g := (s[i+1] - s[i-1]) * (1 - 0.4*t*t); g > most {
			best, most = i, g
		}
	}
	if best <= 1 || best >= len(s)-2 {
		return 0, false
	}
	l, m, r := s[best]-s[best-2], s[best+1]-s[best-1], s[best+2]-s[best]
	shift := 0.0
	if bow := l - 2*m + r; bow < 0 {
		shift = min(0.6, max(-0.6, 0.5*(l-r)/bow))
	}
	return step * (float64(best-stepsOut-1) + shift), true
}

// leastRise is the least share of the way between its colours that an edge takes
// within two steps.
const leastRise = 0.12

// move lays the pin anew by the offsets, weighing those far off less (Tukey's
// biweight), twice.
func (h *held) move(found []offset, k freedom) {
	pin := make([]Point, len(found))
	for i, o := range found {
		pin[i] = h.a.edges[o.edge].at
	}
	f := frameOf(pin)
	to := f.warp(h.w.Mirrored())
	back, _ := to.Inverse()
	now := h.w.after(&back) // from about -1..1 to the picture
	q := normal{n: int(k)}
	weigh(found)
	for i, o := range found {
		x, y := to.At(pin[i].X, pin[i].Y)
		u, v := now.At(x, y)
		den := float64(now[6]*x) + float64(now[7]*y) + 1
		ru, rv := k.rows(x, y, u, v)
		var row [8]float64
		for j := range row {
			row[j] = (float64(o.n.X*ru[j]) + float64(o.n.Y*rv[j])) / den
		}
		q.add(&row, o.off, o.weight)
	}
	for j := range q.n {
		q.m[j][j] += damping * float64(len(found))
	}
	x, ok := q.solve()
	if !ok {
		return
	}
	now = k.plus(now, x)
	h.w = now.after(&to)
}

// damping keeps what edges do not fix, as the turn of a plain disc, where it is.
const damping = 1e-4

// plus changes a map by small steps of its free values, in the order of build.
func (k freedom) plus(w Warp, x [8]float64) Warp {
	d := k.build(x)
	d[8] = 0
	for i := range w {
		w[i] += d[i]
	}
	return w
}

// weigh sets Tukey's weights by the median of what the offsets are.
func weigh(found []offset) {
	list := make([]float64, len(found))
	for i, o := range found {
		list[i] = math.Abs(o.off)
	}
	slices.Sort(list)
	c := max(leastBreadth, 4.685*1.4826*list[len(list)/2])
	for i := range found {
		t := found[i].off / c
		found[i].weight = 0
		if t2 := t * t; t2 < 1 {
			found[i].weight = (1 - t2) * (1 - t2)
		}
	}
}

// leastBreadth is how far off, in px of the picture, an edge counts in any case.
const leastBreadth = 0.8
