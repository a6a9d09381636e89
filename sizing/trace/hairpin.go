package trace

import (
	"math"
	"slices"
)

// A thin line ends in two corners so near to each other that neither has a side
// to be seen by. Its end is found as a whole: two sides that run back by each
// other, and a cap across them.
const (
	// hairpinTurn is the cosine of the least turn of such an end (140 degrees).
	hairpinTurn = -0.766
	// hairpinWidth is up to which width, px, an end is found so.
	hairpinWidth = 4.0
	// hairpinGap is how far from the middle of the end, px, its sides begin.
	hairpinGap = 2.5
	// hairpinPlaces is how many places on either side belong to the end.
	hairpinPlaces = 4
)

// hairpins replaces what corners were found at the ends of thin lines.
func (t *trail) hairpins(all []corner) []corner {
	if t.closed && len(t.p) < leastLoop {
		return all
	}
	for i := 0; i < len(t.p); i++ {
		a, b, ok := t.hairpinAt(i)
		if !ok {
			continue
		}
		if slices.ContainsFunc(all, func(c corner) bool { return t.apart(c.i, i) <= hairpinPlaces && c.sharpest() }) {
			continue
		}
		all = slices.DeleteFunc(all, func(c corner) bool { return t.apart(c.i, i) <= hairpinPlaces+1 })
		all = append(all, a, b)
		i += hairpinPlaces
	}
	slices.SortStableFunc(all, func(a, b corner) int { return a.i - b.i })
	return all
}

// sharpest says whether a corner alone explains an end: the sides run together
// into it.
func (c *corner) sharpest() bool { return angle(c.before, c.after) > tipTurn }

// tipTurn is the turn, radians (125 degrees), from which a corner is a tip.
const tipTurn = 2.18

// hairpinAt finds the two corners of an end whose middle is place i.
func (t *trail) hairpinAt(i int) (a, b corner, ok bool) {
	if !t.turnsBack(i) {
		return a, b, false
	}
	before := t.side(i, -1, hairpinGap, straightOff, t.grade.reaches())
	after := t.side(i, 1, hairpinGap, straightOff, t.grade.reaches())
	if before.n < 2 || after.n < 2 || before.dir.dot(after.dir) > hairpinTurn {
		return a, b, false
	}
	axis := before.dir.sub(after.dir).unit()
	across := vec{-axis.y, axis.x}
	wide := after.at.sub(before.at).dot(across)
	if math.Abs(wide) > hairpinWidth {
		return a, b, false
	}
	if wide < 0 {
		across = across.mul(-1)
	}
	mid, ok := t.tipAlong(i, axis)
	if !ok {
		return a, b, false
	}
	tip, _ := t.at(mid)
	a.at, ok = meet(before.at, before.dir, tip, across)
	if !ok {
		return a, b, false
	}
	if b.at, ok = meet(after.at, after.dir, tip, across); !ok || b.at.sub(a.at).dot(across) <= 0 {
		return a, b, false
	}
	n := len(t.p)
	a.i, a.before, a.after = (mid+n)%n, before.dir, across
	b.i, b.before, b.after = (mid+1)%n, across, after.dir
	return a, b, true
}

// turnsBack says whether a trail runs back by itself round place i.
func (t *trail) turnsBack(i int) bool {
	a, ok := t.at(i - hairpinPlaces)
	b, ok2 := t.at(i + hairpinPlaces)
	return ok && ok2 && a.to(b) < hairpinWidth+1 && t.p[i].sub(a).dot(b.sub(t.p[i])) < 0
}

// tipAlong returns which place lies furthest along an axis, of those round place
// i; ok is true when that is place i itself, or its neighbour.
func (t *trail) tipAlong(i int, axis vec) (at int, ok bool) {
	best, most := 0, math.Inf(-1)
	for k := -hairpinPlaces; k <= hairpinPlaces; k++ {
		if p, on := t.at(i + k); on && p.dot(axis) > most {
			best, most = k, p.dot(axis)
		}
	}
	return i + best, best >= -1 && best <= 1
}
