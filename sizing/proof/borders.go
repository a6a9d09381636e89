package proof

import (
	"fmt"
	"math"

	"badgewright/sizing/unit"
)

// borderSearch is how far the outline is looked for from its place; what lies
// further is told as "more than".
const borderSearch unit.MM = 2

// borderStep is about how far apart along the outline it is looked for.
const borderStep unit.MM = 0.1

// How the outline was found at a place.
const (
	borderFound  = iota
	borderGone   // nothing of the pin within reach inwards
	borderBeyond // something of the picture all the way out
	borderBlind  // cannot be seen here
)

// border is the outline at a place of a loop.
type border struct {
	at, out Point
	off     float64 // mm, outwards
	how     int
}

// outlineMoved finds where the outline lies elsewhere.
func (d *differ) outlineMoved() {
	h := d.h
	if h.shown[metal].far2(&h.bare) < leastStep*leastStep {
		d.note("The edge of the pin can hardly be told from what it lies on, so the outline was not compared.")
		return
	}
	for i := range h.a.loops {
		l := &h.a.loops[i]
		list := d.borders(l)
		if d.partGone(l, list) || i != h.a.large && !l.hole && d.partMoved(list) {
			continue
		}
		d.runsOf(list)
	}
}

func (d *differ) borders(l *loop) []border {
	step := max(1, int(d.h.a.px(borderStep)))
	var list []border
	for i := 0; i < len(l.at); i += step {
		b := border{at: l.at[i], out: l.out[i]}
		d.seekBorder(&b)
		list = append(list, b)
	}
	return smoothed(list)
}

// seekBorder looks along the normal for where ground turns to pin, nearest to its
// place.
func (d *differ) seekBorder(b *border) {
	h := d.h
	out := h.clear(b.at, b.out, true)
	in := h.clear(b.at, Point{-b.out.X, -b.out.Y}, false)
	step := max(0.5/h.ppx, h.a.px(borderSearch)/120)
	half := 0.5 * math.Sqrt(h.shown[metal].far2(&h.bare))
	best, found := math.Inf(1), false
	was, first, any := 0.0, true, false
	for t := out; t >= -in; t -= step {
		c := h.see(b.at.X+float64(b.out.X*t), b.at.Y+float64(b.out.Y*t))
		s := math.Sqrt(c.far2(&h.bare))
		if s > half {
			any = true
		}
		if !first && was <= half && s > half {
			if at := t + step*(s-half)/(s-was); math.Abs(at) < math.Abs(best) {
				best, found = at, true
			}
		}
		was, first = s, false
	}
	switch {
	case found:
		b.off = float64(h.a.mm(best))
	case !any:
		b.how, b.off = borderGone, -float64(h.a.mm(in))
	default:
		b.how, b.off = borderBeyond, float64(h.a.mm(out))
	}
}

// clear is how far from a border one can go and stay outside, or inside, of the
// pin as asked for, px: to half of what lies there.
func (h *held) clear(at, dir Point, out bool) float64 {
	most := h.a.px(borderSearch)
	for t := 2.0; t < most; t++ {
		if (h.a.classAt(at.X+float64(dir.X*t), at.Y+float64(dir.Y*t)) == outside) != out {
			return t / 2
		}
	}
	return most
}

// smoothed takes the median of three neighbours, so that a speck is no place.
func smoothed(list []border) []border {
	n := len(list)
	if n < 3 {
		return list
	}
	off := make([]float64, n)
	for i := range list {
		a, b, c := list[(i+n-1)%n].off, list[i].off, list[(i+1)%n].off
		off[i] = max(min(a, b), min(max(a, b), c))
	}
	for i := range list {
		list[i].off = off[i]
	}
	return list
}

// partGone says whether next to nothing of a loop is there, and notes it.
func (d *differ) partGone(l *loop, list []border) bool {
	gone := 0
	for _, b := range list {
		if b.how == borderGone {
			gone++
		}
	}
	if l.hole || 10*gone < 8*len(list) {
		return false
	}
	x := d.new(PartMissing, pathOf(list))
	x.Asked, x.Shown = "a part of the pin", "nothing there"
	x.Words = "A part of the pin is not in the picture where it should be."
	d.add(x)
	return true
}

// partMoved says whether a further part of the pin lies elsewhere as a whole, as on
// a chain that is longer or shorter, and notes it.
func (d *differ) partMoved(list []border) bool {
	q := normal{n: 2}
	var found []border
	for _, b := range list {
		if b.how == borderFound {
			q.add(&[8]float64{b.out.X, b.out.Y}, b.off, 1)
			found = append(found, b)
		}
	}
	by, ok := q.solve()
	far := math.Sqrt(float64(by[0]*by[0]) + float64(by[1]*by[1]))
	if !ok || 10*len(found) < 6*len(list) || far <= float64(d.t.Outline) {
		return false
	}
	offs := make([]float64, len(found))
	for i, b := range found {
		offs[i] = math.Abs(b.off - float64(by[0]*b.out.X) - float64(by[1]*b.out.Y))
	}
	if trimmedRms(offs) > wholeMove*far {
		return false
	}
	x := d.new(PartMoved, pathOf(list))
	x.ShownMM = unit.MM(far)
	x.Asked, x.Shown = "this part where it was drawn", fmt.Sprintf("%.2f mm off: %.2f mm %s and %.2f mm %s", far, math.Abs(by[1]), way(by[1], "lower", "higher"), math.Abs(by[0]), way(by[0], "further right", "further left"))
	x.Words = fmt.Sprintf("A part of the pin hangs %s. If it hangs from a chain, look at the chain's length.", x.Shown)
	d.add(x)
	return true
}

// wholeMove is the share of a move that the outline of a part may miss it by, and
// still have moved as a whole.
const wholeMove = 0.3

func way(v float64, up, down string) string {
	if v > 0 {
		return up
	}
	return down
}

// runsOf finds stretches of a loop that lie further off than is tolerated.
func (d *differ) runsOf(list []border) {
	n := len(list)
	limit := max(float64(d.t.Outline), 0.8/d.h.perMM())
	side := func(i int) int {
		switch b := &list[i%n]; {
		case b.how == borderBeyond && b.off <= limit:
			return 0
		case b.off > limit:
			return 1
		case b.off < -limit:
			return -1
		}
		return 0
	}
	start := 0
	for start < n && side(start) != 0 {
		start++
	}
	if start == n {
		d.moved(list)
		return
	}
	for i := start; i < start+n; {
		s := side(i)
		if s == 0 {
			i++
			continue
		}
		end, calm := i, 0
		for j := i; j < start+n && calm < 3; j++ {
			if side(j) == s {
				end, calm = j, 0
			} else {
				calm++
			}
		}
		d.moved(wrapped(list, i, end+1))
		i = end + 1
	}
}

func wrapped(list []border, from, to int) []border {
	out := make([]border, 0, to-from)
	for i := from; i < to; i++ {
		out = append(out, list[i%len(list)])
	}
	return out
}

// leaderMM is how wide a leader or an arrow may be where it meets the outline: what
// is narrower and reaches out of sight is one of these.
const leaderMM = 2.0

// moved notes a stretch of outline that lies elsewhere, unless it is too short or
// is a leader that touches the pin.
func (d *differ) moved(run []border) {
	length := 0.0
	for i := 1; i < len(run); i++ {
		length += float64(d.h.a.mm(dist(run[i-1].at, run[i].at)))
	}
	if length < float64(d.t.OutlineRun) {
		return
	}
	beyond := 0
	offs := make([]float64, 0, len(run))
	for _, b := range run {
		offs = append(offs, b.off)
		if b.how == borderBeyond {
			beyond++
		}
	}
	if beyond > 0 && length < leaderMM || 10*beyond > 6*len(run) {
		return
	}
	_ = middle(offs) // puts them in order
	by := offs[len(offs)*9/10]
	if by < 0 {
		by = offs[len(offs)/10]
	}
	x := d.new(OutlineMoved, pathOf(run))
	x.Length, x.ShownMM = unit.MM(length), unit.MM(by)
	way := "further out"
	if by < 0 {
		way = "further in"
	}
	x.Asked, x.Shown = "the outline as drawn", fmt.Sprintf("%.2f mm %s", math.Abs(by), way)
	x.Words = fmt.Sprintf("The outline lies %.2f mm %s than drawn, along %.1f mm.", math.Abs(by), way, length)
	d.add(x)
}

func pathOf(run []border) []Point {
	out := make([]Point, len(run))
	for i, b := range run {
		out[i] = b.at
	}
	return out
}
