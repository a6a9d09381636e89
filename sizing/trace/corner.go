package trace

import (
	"math"
	"slices"
)

// corner is a place where a trail turns at once.
type corner struct {
	i      int // the place nearest to it
	at     vec
	before vec // how the trail arrives, a unit vector
	after  vec // how it leaves
	// own is by how much more it turns than its sides do, radians.
	own float64
}

// What makes a corner. A sharp one is seen through the pixels, which round it
// over about one px on either side (cornerGap); what matters is how the trail
// runs beyond that.
const (
	cornerGap = 1.5
	// leastCorner is the least angle, radians, that a trail turns at a corner
	// (25 degrees), and leastHardCorner where steps of pixels are all there is.
	leastCorner     = 0.44
	leastHardCorner = 0.61
	// leastShortCorner is the same (57 degrees) where a side is too short to tell
	// whether it bends.
	leastShortCorner = 1.0
	// A place is looked at closer when the trail turns there by at least
	// suspect radians (15 degrees) within suspectReach places.
	suspect      = 0.26
	suspectReach = 4
	// cornerOwn is how much of the turn on both sides of a corner it must
	// have itself: a small circle turns evenly.
	cornerOwn = 0.9
	// cornerApart is how many places from another a corner is the same one, found
	// twice.
	cornerApart = 4
	// furthestTip is how far a sharp tip may lie beyond the trail, px; cutAny of
	// that is allowed at any corner, and cutHard more where steps of pixels are
	// all there is.
	furthestTip = 3.0
	cutAny      = 0.5
	cutHard     = 0.4
	// roundGap is how far from a corner, px, its sides are looked at again, and
	// roundTurn by how much more it may turn then, radians (9 degrees).
	roundGap  = 3.2
	roundTurn = 0.15
	// leastLoop is the length in sides of pixels below which a closed arc has
	// no corners that the raster could tell.
	leastLoop = 20
)

// The reaches, px, over which the two sides of a corner are laid.
var (
	softReaches = []float64{2.5, 4, 6, 9}
	hardReaches = []float64{4, 6, 9, 13}
)

func (g grade) reaches() []float64 {
	if g.hard || g.grain > 0.15 {
		return hardReaches
	}
	return softReaches
}

// corners finds the corners of a trail, in order.
func (t *trail) corners() []corner {
	if t.closed && len(t.p) < leastLoop {
		return nil
	}
	var all []corner
	for i := range t.p {
		if !t.suspicious(i) {
			continue
		}
		c, ok := t.cornerAt(i)
		if !ok {
			continue
		}
		all = append(all, c)
	}
	slices.SortStableFunc(all, func(a, b corner) int { return a.i - b.i })
	return t.hairpins(t.tips(t.peaks(all)))
}

// peaks keeps those corners that are surer than any other near by.
func (t *trail) peaks(all []corner) []corner {
	var kept []corner
	n := len(all)
	for k := range all {
		best := true
		for _, step := range []int{-1, 1} {
			for j := k + step; best && j >= 0 && j < n && t.apart(all[k].i, all[j].i) <= cornerApart; j += step {
				best = all[k].surer(&all[j]) || all[k].own == all[j].own && step > 0
			}
		}
		if best {
			kept = append(kept, all[k])
		}
	}
	return t.oneRound(kept)
}

// apart is how many places lie between two, the shorter way round.
func (t *trail) apart(i, j int) int {
	d := max(i-j, j-i)
	if t.closed {
		d = min(d, len(t.p)-d)
	}
	return d
}

// surer says whether a corner is seen better than another near by: seen from the
// wrong side, the pixels at the corner bend the sides.
func (c *corner) surer(o *corner) bool { return c.own > o.own }

// oneRound drops the last corner of a closed trail when it is the first, found
// again.
func (t *trail) oneRound(all []corner) []corner {
	n := len(all)
	if n < 2 || t.apart(all[0].i, all[n-1].i) > cornerApart {
		return all
	}
	if all[0].surer(&all[n-1]) {
		return all[:n-1]
	}
	return all[1:]
}

// tipPlaces is how many places may lie between the two corners that pixels make
// of one sharp tip.
const tipPlaces = 6

// tips puts two corners together that are the two ends of a tip cut off.
func (t *trail) tips(all []corner) []corner {
	for k := 0; k < len(all); k++ {
		next := k + 1
		if next == len(all) {
			if next = 0; !t.closed || k == 0 {
				break
			}
		}
		if c, ok := t.tip(all[k], all[next]); ok {
			all[k] = c
			all = slices.Delete(all, next, next+1)
			k--
		}
	}
	slices.SortFunc(all, func(a, b corner) int { return a.i - b.i })
	return all
}

func (t *trail) tip(a, b corner) (c corner, ok bool) {
	n := b.i - a.i
	if n <= 0 {
		n += len(t.p)
	}
	if n > tipPlaces || a.before.cross(a.after)*b.before.cross(b.after) <= 0 {
		return c, false
	}
	turn := angle(a.before, b.after)
	at, ok := meet(a.at, a.before, b.at, b.after)
	if !ok || turn < angle(a.before, a.after) || turn < angle(b.before, b.after) {
		return c, false
	}
	c = corner{i: t.nearestTo(at, (a.i+n/2)%len(t.p)), at: at, before: a.before, after: b.after, own: turn}
	for k := range n + 1 {
		if t.offTrail(at, (a.i+k)%len(t.p)) <= t.grade.mostCut(turn) {
			return c, true
		}
	}
	return c, false
}

func (t *trail) suspicious(i int) bool {
	a, ok := t.at(i - suspectReach)
	b, ok2 := t.at(i + suspectReach)
	if !ok || !ok2 {
		a, ok = t.at(i - 2)
		b, ok2 = t.at(i + 2)
	}
	if !ok || !ok2 {
		return false
	}
	u, v := t.p[i].sub(a), b.sub(t.p[i])
	return u.dot(v) < 0 || math.Abs(u.cross(v)) > suspect*u.dot(v)
}

// cornerAt lays a bend on either side of place i; they meet in a corner when
// they differ there by more than they turn themselves.
func (t *trail) cornerAt(i int) (c corner, ok bool) {
	g := t.grade
	off := max(0.08, min(g.unsure(), hardUnsure))
	before := t.side(i, -1, cornerGap, off, g.reaches())
	after := t.side(i, 1, cornerGap, off, g.reaches())
	if before.n < 2 || after.n < 2 || before.off > 2*off || after.off > 2*off {
		return c, false
	}
	turn := angle(before.dir, after.dir)
	least := leastCorner
	switch {
	case min(before.n, after.n) < linearBelow:
		least = leastShortCorner
	case g.hard:
		least = leastHardCorner
	}
	sides := math.Asin(min(1, before.turn)) + math.Asin(min(1, after.turn))
	if turn < least || turn < cornerOwn*sides {
		return c, false
	}
	at, ok := meet(before.at, before.dir, after.at, after.dir)
	if !ok || t.offTrail(at, i) > g.mostCut(turn) || t.rounded(i, turn, off) {
		return c, false
	}
	return corner{i: t.nearestTo(at, i), at: at, before: before.dir, after: after.dir, own: turn - sides}, true
}

// rounded says whether a corner turns by more when it is seen from further off:
// then its sides begin to bend before it.
func (t *trail) rounded(i int, turn, off float64) bool {
	if t.grade.hard || t.grade.blurred {
		return false
	}
	before := t.side(i, -1, roundGap, off, t.grade.reaches()[1:])
	after := t.side(i, 1, roundGap, off, t.grade.reaches()[1:])
	if before.n < linearBelow || after.n < linearBelow || max(before.off, after.off) > off {
		return false
	}
	return angle(before.dir, after.dir) > turn+roundTurn
}

// mostCut is how far off the trail, px, the tip of a corner may lie that turns
// by an angle: pixels cut off a corner where it is less than a pixel wide, and a
// round one is cut off by more.
func (g grade) mostCut(turn float64) float64 {
	cut := cutAny + math.Tan(min(turn, math.Pi-0.01)/2)/2
	if g.hard {
		cut += cutHard
	}
	return min(cut, furthestTip)
}

// nearestTo returns the place nearest to a corner, among those round place i.
func (t *trail) nearestTo(at vec, i int) int {
	best, least := i, math.Inf(1)
	for k := i - tipPlaces; k <= i+tipPlaces; k++ {
		if p, ok := t.at(k); ok && p.to(at) < least {
			best, least = k, p.to(at)
		}
	}
	return (best + len(t.p)) % len(t.p)
}

// offTrail is how far a place lies from the trail near place i.
func (t *trail) offTrail(p vec, i int) float64 {
	far := math.Inf(1)
	for k := -2; k < 2; k++ {
		a, ok := t.at(i + k)
		b, ok2 := t.at(i + k + 1)
		if ok && ok2 {
			far = min(far, fromStretch(p, a, b))
		}
	}
	return far
}

// angle returns by how much two directions differ, 0..pi. It only ever decides,
// never places, so that the last bit of an arc tangent does not matter.
func angle(u, v vec) float64 { return math.Abs(math.Atan2(u.cross(v), u.dot(v))) }
