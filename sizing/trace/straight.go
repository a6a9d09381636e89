package trace

import "math"

// straight is a stretch of a trail that is a straight line: places i0..i1, and
// the line through them.
type straight struct {
	i0, i1 int
	c, u   vec
}

// The limits of a straight line.
const (
	// leastStraight is the length, px, from which a straight stretch inside a
	// smooth one is kept straight where the raster is sure; where its places may
	// be further off, it must be longer in that measure.
	leastStraight = 20
	// straightSag is the part of what may be off that the stretch may bend by as
	// a whole: the longest stretch of a wide circle bends by all of it.
	straightSag = 0.35
	// straightEnds is the part of what may be off up to which the ends of a
	// stretch belong to it.
	straightEnds = 0.6
)

// moments sum up places for a line by least squares.
type moments struct {
	o                   vec
	n, x, y, xx, xy, yy float64
}

func (m *moments) put(p vec) {
	if m.n == 0 {
		m.o = p
	}
	p = p.sub(m.o)
	m.n++
	m.x, m.y = m.x+p.x, m.y+p.y
	m.xx, m.xy, m.yy = m.xx+float64(p.x*p.x), m.xy+float64(p.x*p.y), m.yy+float64(p.y*p.y)
}

// line returns the middle of the places and the direction in which they lie,
// by total least squares.
func (m *moments) line() (c, u vec) {
	k := 1 / m.n
	cx, cy := float64(m.x*k), float64(m.y*k)
	a := float64(m.xx*k) - float64(cx*cx)
	b := float64(m.xy*k) - float64(cx*cy)
	d := float64(m.yy*k) - float64(cy*cy)
	// The larger eigenvector of (a b; b d).
	h := (a - d) / 2
	r := vec{h, b}.len()
	if h >= 0 {
		u = vec{h + r, b}
	} else {
		u = vec{b, r - h}
	}
	if u == (vec{}) {
		u = vec{1, 0}
	}
	return m.o.add(vec{cx, cy}), u.unit()
}

// line lays a line through the places; u goes the way they go, and far is the
// greatest distance of one from it as a part of what it may be.
func (s places) line() (c, u vec, far float64) {
	var m moments
	for _, q := range s.p {
		m.put(q)
	}
	c, u = m.line()
	if s.p[len(s.p)-1].sub(s.p[0]).dot(u) < 0 {
		u = u.mul(-1)
	}
	for i, q := range s.p {
		far = max(far, fromLine(q, c, u)/s.straightOff(i))
	}
	return c, u, far
}

// sag is by how much the middle of a stretch lies off the line of its ends,
// taken from thirds.
func sag(p []vec, u vec) float64 {
	k := len(p) / 3
	if k == 0 {
		return 0
	}
	mean := func(q []vec) (s vec) {
		for _, v := range q {
			s = s.add(v)
		}
		return s.mul(1 / float64(len(q)))
	}
	a, b, c := mean(p[:k]), mean(p[k:len(p)-k]), mean(p[len(p)-k:])
	d := b.sub(half(a, c)).cross(u)
	if d < 0 {
		d = -d
	}
	return d * sagOfThirds
}

// sagOfThirds is the sag of a parabola by the offset of the mean of its middle
// third from those of the outer two: x^2 over -1..1 gives 1/27 and 13/27.
const sagOfThirds = 9.0 / 4

// straights finds the straight stretches among places, which are smooth.
func straights(s places) []straight {
	var all []straight
	for i := 0; i+2 < len(s.p); {
		j := furthest(i+2, len(s.p)-1, func(j int) bool {
			_, _, far := s.cut(i, j+1).line()
			return far <= 1
		})
		line, ok := s.straightOf(i, j)
		if ok && !bends(s.p, line) && (len(all) == 0 || line.i0 >= all[len(all)-1].i1) {
			all = s.lengthen(all, line)
			i = line.i1
			continue
		}
		i += max(1, (j-i)/4)
	}
	return all
}

// lengthen adds a stretch, or lets the last one reach to its end when they are
// one and the same line.
func (s places) lengthen(all []straight, l straight) []straight {
	if n := len(all) - 1; n >= 0 && l.i0-all[n].i1 <= nearEnd {
		if c, u, far := s.cut(all[n].i0, l.i1+1).line(); far <= 1 {
			all[n] = straight{i0: all[n].i0, i1: l.i1, c: c, u: u}
			return all
		}
	}
	return append(all, l)
}

// straightOf trims a stretch to what keeps well to its middle part, and says
// whether it is straight.
func (s places) straightOf(i, j int) (l straight, ok bool) {
	p, off := s.p, s.straightOff((i+j)/2)
	least := leastStraight * off / straightOff
	if p[i].to(p[j]) < least {
		return l, false
	}
	trim := (j - i) / 8
	c, u, _ := s.cut(i+trim, j-trim+1).line()
	for i < j && fromLine(p[i], c, u) > s.straightOff(i)*straightEnds {
		i++
	}
	for j > i && fromLine(p[j], c, u) > s.straightOff(j)*straightEnds {
		j--
	}
	if p[i].to(p[j]) < least {
		return l, false
	}
	c, u, _ = s.cut(i, j+1).line()
	if sag(p[i:j+1], u) > off*straightSag {
		return l, false
	}
	return straight{i0: i, i1: j, c: c, u: u}, true
}

// bends says whether a stretch is but a facet of a curve: with half its length
// more on either side it still is one even bend. (Renderers draw a circle as a
// polygon, and the raster tells.)
func bends(p []vec, s straight) bool {
	more := (s.i1 - s.i0) / 2
	i, j := max(0, s.i0-more), min(len(p)-1, s.i1+more)
	if j-i < (s.i1-s.i0)*5/4 {
		return false // nearly all there is between two corners
	}
	sag, off := parabola(p[i : j+1])
	return off <= facetOff && sag > facetSag
}

const (
	// facetOff is how far, px, places may lie from an even bend whose facets
	// they are, and facetSag by how much that bends at least.
	facetOff = 0.3
	facetSag = 0.2
)

// parabola lays one over the chord of p and says by how much it sags and how
// far the furthest place lies from it.
func parabola(p []vec) (sag, off float64) {
	o, u := half(p[0], p[len(p)-1]), p[len(p)-1].sub(p[0]).unit()
	var s1, s2, s3, s4 float64
	var v0, v1, v2 vec
	for _, q := range p {
		s, h := q.sub(o).dot(u), vec{y: u.cross(q.sub(o))}
		ss := float64(s * s)
		s1, s2, s3, s4 = s1+s, s2+ss, s3+float64(ss*s), s4+float64(ss*ss)
		v0, v1, v2 = v0.add(h), v1.along(h, s), v2.along(h, ss)
	}
	c0, c1, c2 := solve3(float64(len(p)), s1, s2, s3, s4, v0, v1, v2)
	for _, q := range p {
		s, h := q.sub(o).dot(u), u.cross(q.sub(o))
		off = max(off, math.Abs(h-c0.along(c1, s).along(c2, float64(s*s)).y))
	}
	reach := p[0].to(p[len(p)-1]) / 2
	return math.Abs(c2.y) * float64(reach*reach), off
}

// furthest returns the greatest j from lo to hi for which ok holds, by leaps
// and halving, taking it that what holds for one holds for those below; lo is
// taken to hold.
func furthest(lo, hi int, ok func(int) bool) int {
	good, leap := lo, 4
	bad := hi + 1
	for good+leap <= hi {
		if !ok(good + leap) {
			bad = good + leap
			break
		}
		good += leap
		leap *= 2
	}
	if bad > hi && good < hi && ok(hi) {
		return hi
	}
	for bad-good > 1 {
		mid := (good + bad) / 2
		if mid <= hi && ok(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	return good
}
