package trace

// course is a trail parted into straight and curved spans by joints: spans[k]
// runs from joints[k] to joints[k+1].
type course struct {
	t      *trail
	places         // of a closed trail the first again at the end
	off    float64 // how far a curve may lie from a place that is sure, px
	joints []joint
	spans  []span
	whole  *circle // instead of joints and spans
}

// joint is where two spans meet, and how the trail arrives and leaves: the same
// way unless it is a corner. Directions are zero where they do not matter.
type joint struct {
	at      vec
	in, out vec
	sharp   bool
}

// span is a stretch of places p[i0:i1] that is straight, or else a curve.
type span struct {
	i0, i1   int
	straight bool
	c, u     vec // the line, when straight
}

// mostFit is how far, px, a curve may lie from a place of a clean soft edge,
// however coarse the tolerance: the raster is known better than that.
const mostFit = 0.25

// courseOf parts a trail; off is the tolerance in px.
func courseOf(t *trail, off float64) *course {
	c := &course{t: t, places: t.places, off: min(off, mostFit)}
	corners := t.joinSides(t.corners())
	t.doubt(corners)
	if t.closed {
		var ring bool
		if corners, ring = c.open(corners); ring {
			return c
		}
	}
	if !t.closed && len(t.p) < leastPlaces {
		c.chain()
		return c
	}
	c.joints = append(c.joints, c.first(corners))
	from, i := corner{i: -1}, 0
	if t.closed {
		from, i = corners[0], 1
	}
	for ; i < len(corners); i++ {
		c.piece(from, corners[i])
		from = corners[i]
	}
	if !t.closed {
		c.piece(from, corner{i: len(c.p)})
	}
	c.settle()
	return c
}

func (c *course) first(corners []corner) joint {
	if c.t.closed {
		return corners[0].joint()
	}
	return joint{sharp: true}
}

func (k *corner) joint() joint { return joint{at: k.at, in: k.before, out: k.after, sharp: true} }

// joinSides makes every place that must keep to the sides of its pixels a
// corner, and drops other corners next to them.
func (t *trail) joinSides(corners []corner) []corner {
	if t.rough == nil {
		return corners
	}
	var all []corner
	for i, r := range t.rough {
		if r == keepSides {
			all = append(all, corner{i: i, at: t.p[i]})
			continue
		}
		for _, k := range corners {
			if k.i == i {
				all = append(all, k)
			}
		}
	}
	return all
}

// open turns the places of a closed trail so that they begin at a corner, and
// repeats the first at the end. A trail without corners is done with at once.
func (c *course) open(corners []corner) (opened []corner, done bool) {
	if len(corners) == 0 {
		c.ring()
		return nil, true
	}
	i := corners[0].i
	c.places = c.rotated(i)
	for k := range corners {
		corners[k].i -= i
	}
	last := corners[0]
	last.i = len(c.p) - 1
	return append(corners, last), false
}

// offAt is how far a curve may lie from place i, px.
func (c *course) offAt(i int) float64 {
	off := max(c.off, c.unsure[i])
	if c.rough != nil && c.rough[i] == fitCloser {
		off *= closer
	}
	return off
}

// ring parts a closed trail without corners: a circle, straight stretches with
// curves between them, or one curve all round.
func (c *course) ring() {
	t := c.t
	if w, ok := t.round(c.off); ok && c.rough == nil {
		c.whole = &w
		return
	}
	if len(t.p) < leastPlaces {
		c.polygon()
		return
	}
	start := c.longestStraight()
	b := t.both(start, c.jointReach())
	c.places = c.rotated(start)
	c.joints = append(c.joints, joint{at: b.at, in: b.dir, out: b.dir})
	c.part(0, len(c.p), b.at, true, true)
	if s := &c.spans[0]; s.straight {
		c.joints[0] = joint{at: foot(b.at, s.c, s.u), in: s.u, out: s.u}
	}
	c.joints = append(c.joints, c.joints[0])
	c.settle()
}

// leastPlaces is the number of places from which curves are fitted.
const leastPlaces = 6

// chain joins the places of a short open trail, and its ends, by straight lines.
func (c *course) chain() {
	c.joints = append(c.joints, joint{sharp: true})
	for i, p := range c.p {
		c.joints = append(c.joints, joint{at: p, sharp: true})
		c.spans = append(c.spans, span{i0: i, i1: i, straight: true})
	}
	c.joints = append(c.joints, joint{sharp: true})
	c.spans = append(c.spans, span{i0: len(c.p), i1: len(c.p), straight: true})
}

// polygon joins the places by straight lines.
func (c *course) polygon() {
	c.places = c.rotated(0)
	for i, p := range c.p {
		c.joints = append(c.joints, joint{at: p, sharp: true})
		if i > 0 {
			c.spans = append(c.spans, span{i0: i, i1: i, straight: true})
		}
	}
}

// longestStraight returns where the longest straight stretch of a ring begins.
func (c *course) longestStraight() int {
	best, most := 0, 0.0
	for _, s := range straights(c.places) {
		if l := c.p[s.i0].to(c.p[s.i1]); l > most {
			best, most = s.i0, l
		}
	}
	return best
}

// jointReach is how far on either side of a place the trail is looked at to say
// how it runs there, px.
func (c *course) jointReach() float64 {
	reach := 6.0
	if c.t.grade.hard || c.t.grade.grain > 0.15 {
		reach = 10
	}
	return max(2, min(reach, float64(len(c.p))/8))
}

// piece adds the spans between two corners, or ends of the trail.
func (c *course) piece(a, b corner) {
	i, j := max(a.i, 0), min(b.i+1, len(c.p))
	for k := 0; k < cornerPlaces && i < j && a.i >= 0 && c.p[i].sub(a.at).dot(a.after) < c.blurOf(a); k++ {
		i++
	}
	for k := 0; k < cornerPlaces && j > i && b.i < len(c.p) && b.at.sub(c.p[j-1]).dot(b.before) < c.blurOf(b); k++ {
		j--
	}
	i, j = c.offKnots(a, b, i, j)
	if c.nub(a, b, j-i) {
		c.spans = append(c.spans, span{i0: a.i + 1, i1: b.i})
	} else {
		c.part(i, j, b.at, false, false)
	}
	end := joint{sharp: true}
	if b.i < len(c.p) {
		end = b.joint()
	}
	c.joints = append(c.joints, end)
}

// blurOf is how far from a corner, px, pixels blur its sides: further where it is
// a tip cut off.
func (c *course) blurOf(k corner) float64 { return max(cornerGap, k.at.to(c.p[k.i])+cornerGap/2) }

// nub says whether two corners are so near to each other that too few places are
// left between them, and what lies there is no straight line all the same.
func (c *course) nub(a, b corner, left int) bool {
	if left >= fewest || a.i < 0 || b.i >= len(c.p) {
		return false
	}
	for i := a.i + 1; i < b.i; i++ {
		if fromStretch(c.p[i], a.at, b.at) > nubOff {
			return true
		}
	}
	return false
}

// nubOff is how far a place between two near corners may lie off a straight line
// between them, px.
const nubOff = 0.6

// offKnots leaves out what lies too near a knot for two classes to tell.
func (c *course) offKnots(a, b corner, i, j int) (int, int) {
	if a.i < 0 {
		i = min(knotPlaces, max(0, j-2))
	}
	if b.i >= len(c.p) {
		j = max(i, j-knotPlaces)
	}
	return i, j
}

// cornerPlaces is how many places next to a corner may lie nearer than
// cornerGap, or on its other side.
const cornerPlaces = 4

// knotPlaces is how many places at the end of an arc are left out: a third
// class shares their pixels.
const knotPlaces = 1

// part parts the smooth places p[i:j], which run from the last joint to a place,
// into spans and the joints between them. Ends that are open go on smoothly.
func (c *course) part(i, j int, next vec, openStart, openEnd bool) {
	if j-i < fewest {
		c.spans = append(c.spans, span{i0: i, i1: j, straight: true}) // from joint to joint
		return
	}
	m, u, far := c.cut(i, j).line()
	if l := (straight{i0: i, c: m, u: u}); far <= 1 && !openStart && c.reaches(l, c.joints[len(c.joints)-1].at) && c.reaches(l, next) {
		c.spans = append(c.spans, span{i0: i, i1: j, straight: true, c: m, u: u})
		return
	}
	all := straights(c.cut(i, j))
	for k := range all {
		all[k].i0 += i
		all[k].i1 += i
	}
	c.between(i, j, all, next, openStart, openEnd)
}

// fewest is the number of places from which a stretch can be anything but
// straight.
const fewest = 3

// nearEnd is how many places may lie between a straight stretch and a corner,
// or the next stretch, for it to reach there.
const nearEnd = 3

// reaches says whether a straight stretch leads to a corner; where that lies at
// a knot its place is not known yet.
func (c *course) reaches(s straight, at vec) bool {
	return at == (vec{}) || fromLine(at, s.c, s.u) < reachOff+c.straightOff(s.i0)
}

// reachOff is how far a corner may lie from a line that leads to it, px, beyond
// what a place of the line may.
const reachOff = 0.6

// between adds straight stretches and the curves between them.
func (c *course) between(i, j int, all []straight, next vec, openStart, openEnd bool) {
	at := i
	for k, s := range all {
		near := s.i0 == at || s.i0-at <= nearEnd && (k > 0 || !openStart && c.reaches(s, c.joints[len(c.joints)-1].at))
		switch {
		case near && k > 0:
			c.meeting(all[k-1], s)
		case !near:
			c.spans = append(c.spans, span{i0: at, i1: s.i0 + 1})
			c.smooth(s.i0, s)
		}
		end := s.i1
		if k == len(all)-1 && j-1-end <= nearEnd && !openEnd && c.reaches(s, next) {
			end = j - 1
		}
		c.spans = append(c.spans, span{i0: s.i0, i1: end + 1, straight: true, c: s.c, u: s.u})
		at = end
		if last := k == len(all)-1; !last && all[k+1].i0-at > nearEnd || last && at < j-1 {
			c.smooth(at, s)
		}
	}
	if len(all) == 0 || at < j-1 {
		c.spans = append(c.spans, span{i0: at, i1: j})
	}
}

// smooth adds the joint at which a straight stretch goes over into a curve.
func (c *course) smooth(i int, s straight) {
	c.joints = append(c.joints, joint{at: foot(c.p[i], s.c, s.u), in: s.u, out: s.u})
}

// meeting adds the joint of two straight stretches: where their lines cross, if
// that is near, else half way.
func (c *course) meeting(a, b straight) {
	mid := half(c.p[a.i1], c.p[b.i0])
	at, ok := meet(a.c, a.u, b.c, b.u)
	if !ok || at.to(mid) > nearEnd+1 {
		at = mid
	}
	c.joints = append(c.joints, joint{at: at, in: a.u, out: b.u, sharp: true})
}

// settle moves corners to where the straight lines beside them cross, or cross
// the run of the curve on the other side.
func (c *course) settle() {
	for k := 1; k < len(c.joints)-1; k++ {
		c.settleAt(k, &c.spans[k-1], &c.spans[k])
	}
	n := len(c.joints) - 1
	if c.t.closed && n > 0 && c.joints[0].sharp {
		c.settleAt(0, &c.spans[n-1], &c.spans[0])
		c.joints[n] = c.joints[0]
	}
}

// lean moves a corner whose lines do not meet nearby onto the one that is
// straight.
func (j *joint) lean(before, after *span) {
	switch {
	case before.straight && before.u != (vec{}):
		j.at, j.in = foot(j.at, before.c, before.u), before.u
	case after.straight && after.u != (vec{}):
		j.at, j.out = foot(j.at, after.c, after.u), after.u
	}
}

func (c *course) settleAt(k int, before, after *span) {
	j := &c.joints[k]
	if !j.sharp {
		if after.straight && after.u != (vec{}) {
			j.at, j.in, j.out = foot(j.at, after.c, after.u), after.u, after.u
		}
		return
	}
	if j.in == (vec{}) {
		return // keeps to the sides of its pixels
	}
	a, u, b, v := j.at, j.in, j.at, j.out
	if before.straight && before.u != (vec{}) {
		a, u = before.c, before.u
	}
	if after.straight && after.u != (vec{}) {
		b, v = after.c, after.u
	}
	if at, ok := meet(a, u, b, v); ok && at.to(j.at) < furthestTip {
		j.at, j.in, j.out = at, u, v
	} else if a != b {
		j.lean(before, after)
	}
}
