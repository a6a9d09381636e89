package proof

import (
	"fmt"
	"math"

	"badgewright/sizing/unit"
)

// crossShown is a way across a line as the picture shows it.
type crossShown struct {
	asked, shown float64 // mm
	seen         bool
	kind         DeviationKind // "" where nothing differs
}

// profileSteps bounds the places a profile is read at.
const profileSteps = 72

// leastContrast is the least difference in encoded channels between a line and
// what lies beside it for the line to be seen.
const leastContrast = 34.0

// A line finer than finePx px of the picture must differ in lightness by
// fineContrast: JPEG keeps no colour that fine.
const (
	finePx       = 6.0
	fineContrast = 40.0
)

// light is about how light a colour is, 0..255: the Y of JPEG (ITU-R BT.601).
func (c *rgb) light() float64 {
	return float64(0.299*c[0]) + float64(0.587*c[1]) + float64(0.114*c[2])
}

// lines measures every metal line across and gathers where it differs.
func (d *differ) lines() {
	a := d.h.a
	list := make([]crossShown, len(a.lines))
	blind, all := 0, 0
	for i := range a.lines {
		list[i] = d.measure(&a.lines[i])
		all++
		if !list[i].seen {
			blind++
		}
		d.judge(&list[i])
	}
	if all > 0 && 4*blind > all {
		d.note(fmt.Sprintf("%.0f percent of the lines could not be measured: too fine in this picture, or of about the colour of what lies beside them.", 100*float64(blind)/float64(all)))
	}
	for _, k := range []DeviationKind{LineMissing, LineThinner, LineThicker} {
		d.gather(k, list)
	}
}

// measure fits a line between two colours to the profile as shown, and to the
// profile as asked for, by the same means.
func (d *differ) measure(c *cross) (s crossShown) {
	h := d.h
	if d.photo != nil && (d.cells[c.a].class == outside || d.cells[c.b].class == outside) {
		return s // what a pin lies on has no one colour in a photograph
	}
	ca, cb, m := d.sideColour(c.a), d.sideColour(c.b), h.shown[metal]
	if min(ca.far2(&m), cb.far2(&m)) < leastContrast*leastContrast {
		return s
	}
	if c.wide*h.ppx < finePx && min(math.Abs(ca.light()-m.light()), math.Abs(cb.light()-m.light())) < fineContrast {
		return s
	}
	half := c.wide / 2
	side := h.a.px(sideMM)
	fa, fb := half+min(side, 0.75*c.roomA), half+min(side, 0.75*c.roomB)
	if min(fa, fb)-half < 0.9/h.ppx {
		return s
	}
	step := max(0.45/h.ppx, (fa+fb)/profileSteps)
	n := int((fa+fb)/step) + 1
	f := newLineFit(n, ca, m, cb)
	for i := range n {
		t := -fa + step*float64(i)
		f.add(h.see(c.at.X+float64(c.dir.X*t), c.at.Y+float64(c.dir.Y*t)))
	}
	shown := f.width() * step
	f = newLineFit(n, ca, m, cb)
	for i := range n {
		t := -fa + step*float64(i)
		f.add(d.asIf(c.at.X+float64(c.dir.X*t), c.at.Y+float64(c.dir.Y*t)))
	}
	s.asked, s.shown, s.seen = float64(h.a.mm(f.width()*step)), float64(h.a.mm(shown)), true
	return s
}

// sideColour is what is shown beside a line: an area's colour, or the ground.
func (d *differ) sideColour(cell int32) rgb {
	if d.cells[cell].class == outside {
		return d.h.bare
	}
	return d.cells[cell].shown
}

// asIf is the colour a place would have in this picture if it showed what was
// asked for.
func (d *differ) asIf(x, y float64) rgb {
	a := d.h.a
	s := a.Badge.Sep
	x, y = min(max(x-0.5, 0), float64(s.W-1)), min(max(y-0.5, 0), float64(s.H-1))
	x0, y0 := int(x), int(y)
	x1, y1 := min(x0+1, s.W-1), min(y0+1, s.H-1)
	fx, fy := x-float64(x0), y-float64(y0)
	p, q := d.tintOf(y0*s.W+x0), d.tintOf(y0*s.W+x1)
	r, t := d.tintOf(y1*s.W+x0), d.tintOf(y1*s.W+x1)
	var out rgb
	for k := range out {
		top := p[k] + float64(fx*(q[k]-p[k]))
		low := r[k] + float64(fx*(t[k]-r[k]))
		out[k] = top + float64(fy*(low-top))
	}
	return out
}

func (d *differ) tintOf(i int) rgb {
	a := d.h.a
	s := a.Badge.Sep
	own := d.tint(a.of[s.Labels[i]], a.cell[i])
	if s.Cover[i] == 255 {
		return own
	}
	beside := d.h.shown[a.of[s.Beside[i]]]
	k := float64(s.Cover[i]) / 255
	for n := range own {
		own[n] = beside[n] + float64(k*(own[n]-beside[n]))
	}
	return own
}

func (d *differ) tint(class uint8, cell int32) rgb {
	if class == metal || class == outside {
		return d.h.shown[class]
	}
	return d.cells[cell].shown
}

// lineFit fits two edges to a profile: one colour, the line, another colour.
type lineFit struct {
	n       int
	a, m, b rgb
	// Sums of squared differences to each colour over the first so many places.
	sa, sm, sb []float64
	list       []rgb
}

func newLineFit(n int, a, m, b rgb) *lineFit {
	f := &lineFit{a: a, m: m, b: b}
	f.sa, f.sm, f.sb = make([]float64, 1, n+1), make([]float64, 1, n+1), make([]float64, 1, n+1)
	return f
}

func (f *lineFit) add(c rgb) {
	f.sa = append(f.sa, f.sa[f.n]+c.far2(&f.a))
	f.sm = append(f.sm, f.sm[f.n]+c.far2(&f.m))
	f.sb = append(f.sb, f.sb[f.n]+c.far2(&f.b))
	f.list = append(f.list, c)
	f.n++
}

// width is that of the line where the profile suits best, in places.
func (f *lineFit) width() float64 {
	best, from, to := math.Inf(1), 0, 0
	for i := 0; i <= f.n; i++ {
		for j := i; j <= f.n; j++ {
			if c := f.sa[i] + f.sm[j] - f.sm[i] + f.sb[f.n] - f.sb[j]; c < best {
				best, from, to = c, i, j
			}
		}
	}
	if to == from {
		return f.trace(from)
	}
	return f.metalIn(from, to)
}

// trace is what there is of metal about a place where one colour passes to the
// other: what no mixture of the two accounts for. A line finer than a pixel of the
// picture leaves no more.
func (f *lineFit) trace(at int) float64 {
	var u, n rgb
	uu, un := 0.0, 0.0
	for k := range u {
		u[k], n[k] = f.b[k]-f.a[k], f.m[k]-f.a[k]
		uu += float64(u[k] * u[k])
		un += float64(u[k] * n[k])
	}
	nn := 0.0
	for k := range n {
		if uu > 0 {
			n[k] -= float64(u[k] * un / uu)
		}
		nn += float64(n[k] * n[k])
	}
	if nn < leastStep*leastStep {
		return 0
	}
	sum := 0.0
	for i := max(0, at-softEnds-1); i < min(f.n, at+softEnds+1); i++ {
		dot := 0.0
		for k := range n {
			dot += float64((f.list[i][k] - f.a[k]) * n[k])
		}
		sum += min(1, max(0, dot/nn))
	}
	return sum
}

// softEnds is how many places beyond its ends a line may soften into.
const softEnds = 2

// metalIn counts the share of metal in every place of a line and beside it: finer
// than a place.
func (f *lineFit) metalIn(from, to int) float64 {
	sum := 0.0
	for i := max(0, from-softEnds); i < min(f.n, to+softEnds); i++ {
		side := &f.a
		if 2*i >= from+to {
			side = &f.b
		}
		dot, all := 0.0, 0.0
		for k, v := range f.m {
			dot += float64((f.list[i][k] - side[k]) * (v - side[k]))
			all += float64((v - side[k]) * (v - side[k]))
		}
		sum += min(1, max(0, dot/all))
	}
	return sum
}

// judge says whether a line differs at a place.
func (d *differ) judge(s *crossShown) {
	if !s.seen || s.asked <= 0 {
		return
	}
	off := s.shown - s.asked
	least := max(float64(d.t.Line), d.t.LineShare*s.asked, leastOffPx/d.h.perMM())
	switch {
	case s.shown < goneShare*s.asked && s.asked > leastLinePx/d.h.perMM():
		s.kind = LineMissing
	case off > least:
		s.kind = LineThicker
	case -off > least:
		s.kind = LineThinner
	}
}

const (
	// goneShare is the share of its width below which a line is not there.
	goneShare = 0.3
	// leastLinePx is how wide a line must be in the picture to be missed.
	leastLinePx = 1.0
	// leastOffPx is by how much a width must be off in px of the picture.
	leastOffPx = 0.8
)

// gather joins places of one kind that lie beside each other.
func (d *differ) gather(k DeviationKind, list []crossShown) {
	a := d.h.a
	var at []int
	for i := range list {
		if list[i].kind == k {
			at = append(at, i)
		}
	}
	near := max(float64(2*a.every)+1, a.px(joinMM))
	for _, group := range clusters(at, a.lines, near) {
		d.lineOff(k, group, list)
	}
}

// joinMM is how far apart places of one kind may lie and be one difference.
const joinMM unit.MM = 0.3

// clusters groups places that lie near each other, in order of the first of each.
func clusters(at []int, lines []cross, near float64) [][]int {
	group := make([]int, len(at))
	var out [][]int
	for i := range group {
		group[i] = -1
	}
	for i := range at {
		if group[i] >= 0 {
			continue
		}
		todo := []int{i}
		group[i] = len(out)
		var own []int
		for len(todo) > 0 {
			j := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			own = append(own, at[j])
			for k := range at {
				if group[k] < 0 && dist(lines[at[k]].at, lines[at[j]].at) <= near {
					group[k] = len(out)
					todo = append(todo, k)
				}
			}
		}
		out = append(out, own)
	}
	return out
}

// lineOff notes a stretch of line that differs, if it is long enough.
func (d *differ) lineOff(k DeviationKind, group []int, list []crossShown) {
	a := d.h.a
	path := inOrder(group, a.lines)
	length := float64(a.mm(float64(len(group)*a.every))) * 1.1
	least := float64(d.t.LineRun)
	if k == LineMissing {
		least = float64(d.t.LineGone)
	}
	if length < least {
		return
	}
	var asked, shown []float64
	for _, i := range group {
		asked, shown = append(asked, list[i].asked), append(shown, list[i].shown)
	}
	x := d.new(k, path)
	was, now := middle(asked), middle(shown)
	x.AskedMM, x.ShownMM, x.Length = unit.MM(was), unit.MM(now), unit.MM(length)
	x.Asked = fmt.Sprintf("a line %.2f mm wide", was)
	switch k {
	case LineMissing:
		x.Shown, x.ShownMM = "no line", 0
		x.Words = fmt.Sprintf("A line is missing over %.1f mm.", length)
		d.merges(&x, group)
	case LineThinner:
		x.Shown = fmt.Sprintf("%.2f mm", now)
		x.Words = fmt.Sprintf("A line is %.2f mm wide instead of %.2f mm, over %.1f mm.", now, was, length)
	default:
		x.Shown = fmt.Sprintf("%.2f mm", now)
		x.Words = fmt.Sprintf("A line is %.2f mm wide instead of %.2f mm, over %.1f mm.", now, was, length)
	}
	d.add(x)
}

// merges makes a missing line two areas run together, where these have one colour
// now and had not.
func (d *differ) merges(x *Deviation, group []int) {
	c := &d.h.a.lines[group[len(group)/2]]
	p, q := &d.cells[c.a], &d.cells[c.b]
	if p.class == outside || q.class == outside || c.a == c.b {
		return
	}
	flats := d.h.a.Badge.Sep.Flats
	x.Flat, x.Other = flats[p.class].ID, flats[q.class].ID
	if p.class != q.class && p.seen && q.seen && differs(p.shown, q.shown) < alikeE {
		x.Kind = AreasMerged
		x.Asked, x.Shown = "two areas with a line between", "one area"
		x.Words = fmt.Sprintf("%s and %s run into one area; the line between them is missing.", flats[p.class].Name, flats[q.class].Name)
	}
}

// inOrder walks through places from one end to the nearest next.
func inOrder(group []int, lines []cross) []Point {
	left := make([]Point, len(group))
	for i, g := range group {
		left[i] = lines[g].at
	}
	at := farthest(left, left[0])
	var path []Point
	p := left[at]
	for len(left) > 0 {
		best := 0
		for i := range left {
			if dist(left[i], p) < dist(left[best], p) {
				best = i
			}
		}
		p = left[best]
		path = append(path, p)
		left[best] = left[len(left)-1]
		left = left[:len(left)-1]
	}
	return path
}

func farthest(list []Point, from Point) int {
	best := 0
	for i := range list {
		if dist(list[i], from) > dist(list[best], from) {
			best = i
		}
	}
	return best
}
