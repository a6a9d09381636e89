package trace

import "math"

// corner is a place where a trail turns at once.
type corner struct {
	i      int // the place nearest to it
	at     vec
	before vec // how the trail arrives, a unit vector
	after  vec // how it leaves
}

// What makes a corner. A sharp one is seen through the pixels, which round it
// over about one px on either side (cornerGap); what matters is how the trail
// runs beyond that.
const (
	cornerGap = 1.0
	// leastCorner is the least angle, radians, that a trail turns at a corner
	// (25 degrees), and leastHardCorner where steps of pixels are all there is.
	leastCorner     = 0.44
	leastHardCorner = 0.61
	// A place is looked at closer when the trail turns there by at least
	// suspect radians (15 degrees) within suspectReach places.
	suspect      = 0.26
	suspectReach = 4
	// cornerOwn is how much of the turn on both sides of a corner it must
	// have itself: a small circle turns evenly.
	cornerOwn = 0.6
	// cornerApart, px along the trail, is how near to another a corner is the
	// same one, found twice.
	cornerApart = 3
	// furthestTip is how far a sharp tip may lie beyond the last place, px.
	furthestTip = 2.0
	// tipTurn is the turn, radians (110 degrees), from which a corner is a tip.
	tipTurn = 1.9
	// cutOfHalf times the sine of half the turn is what pixels cut off a corner,
	// px: the places on either side lie within a pixel of it. hardCut is the same
	// where steps of pixels are all there is.
	cutOfHalf = 1.0
	hardCut   = 1.2
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
	var best corner
	bestOff := math.Inf(1)
	for i := range t.p {
		if !t.suspicious(i) {
			continue
		}
		c, ok := t.cornerAt(i)
		if !ok {
			continue
		}
		off := c.at.to(t.p[i])
		if !math.IsInf(bestOff, 1) && i-best.i > cornerApart {
			all = append(all, best)
			bestOff = math.Inf(1)
		}
		if off < bestOff {
			best, bestOff = c, off
		}
	}
	if !math.IsInf(bestOff, 1) {
		all = append(all, best)
	}
	return t.oneRound(all)
}

// oneRound drops the last corner of a closed trail when it is the first, found
// again.
func (t *trail) oneRound(all []corner) []corner {
	n := len(all)
	if !t.closed || n < 2 || all[0].i+len(t.p)-all[n-1].i > cornerApart {
		return all
	}
	if all[0].at.to(t.p[all[0].i]) <= all[n-1].at.to(t.p[all[n-1].i]) {
		return all[:n-1]
	}
	return all[1:]
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
	if g.hard {
		least = leastHardCorner
	}
	if turn < least || turn < cornerOwn*(math.Asin(min(1, before.turn))+math.Asin(min(1, after.turn))) {
		return c, false
	}
	at, ok := meet(before.at, before.dir, after.at, after.dir)
	if !ok || t.offTrail(at, i) > g.mostCut(turn) {
		return c, false
	}
	return corner{i: i, at: at, before: before.dir, after: after.dir}, true
}

// mostCut is how far off the trail, px, the tip of a corner may lie that turns
// by an angle: pixels cut off a sharp corner about so much, and a round one is
// cut off by more.
func (g grade) mostCut(turn float64) float64 {
	switch {
	case turn > tipTurn:
		return furthestTip
	case g.hard:
		return hardCut
	}
	return cutOfHalf * math.Sin(turn/2)
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
