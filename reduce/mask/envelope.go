package mask

import "math"

// stretch is a row of sites side by side, columns a..b of row v, that lie g2
// (squared) above or below the row looked at; it holds the nearest sites from
// column start on, until the next stretch does.
type stretch struct {
	a, b, v, start int32
	g2             int32
	best           int32 // squared distance at start
}

// far2 returns the squared distance from column x to the nearest site.
func (s *stretch) far2(x int) int {
	d := int(s.a) - x
	if d < 0 {
		d = max(x-int(s.b), 0)
	}
	return d*d + int(s.g2)
}

// site returns the column of the nearest site of column x.
func (s *stretch) site(x int) int { return min(max(x, int(s.a)), int(s.b)) }

// envelope says for one row which sites are nearest: the lower envelope of
// their distances (Meijster, Roerdink and Hesselink 2000; Felzenszwalb and
// Huttenlocher 2012), with sites side by side taken together. Of two sites
// equally near, the one further left counts.
type envelope struct {
	k       *columns
	singles []int32 // columns in which a label is one pixel high, from the left
	all     []stretch
	first   []int32 // the i-th run of the row has all[first[i]:first[i+1]]
}

func newEnvelope(k *columns) *envelope {
	w := len(k.near)
	return &envelope{k: k, all: make([]stretch, 3*w+4), first: make([]int32, 0, w+1)}
}

func (e *envelope) of(run int) []stretch { return e.all[e.first[run]:e.first[run+1]] }

// others looks at every run of row y but those of labels to be skipped: the
// pixels on either side of a run are sites, so nothing beyond them matters.
func (e *envelope) others(y int, runs []Run, skip *[256]bool) {
	e.singles = append(e.singles[:0], e.k.singles...)
	e.first = append(e.first[:0], 0)
	rest := e.all
	for i := range runs {
		if r := &runs[i]; !skip[r.Label] {
			rest[0] = stretch{a: r.X0 - 1, b: r.X0 - 1, v: int32(y)}
			n := 1 + e.k.list(rest[1:], y, int(r.X0), int(r.X1))
			rest[n] = stretch{a: r.X1, b: r.X1, v: int32(y)}
			rest = rest[e.lowest(rest[:n+1], y, int(r.X0), int(r.X1)):]
		}
		e.first = append(e.first, int32(len(e.all)-len(rest)))
	}
}

// sites looks at the whole row y at once; runs of label 1 are sites.
func (e *envelope) sites(y int, runs []Run) {
	n := 0
	for i := range runs {
		if r := &runs[i]; r.Label == 1 {
			e.all[n] = stretch{a: r.X0, b: r.X1 - 1, v: int32(y)}
			n++
		} else {
			n += e.k.list(e.all[n:], y, int(r.X0), int(r.X1))
		}
	}
	n = e.lowest(e.all[:n], y, 0, len(e.k.near))
	e.first = append(e.first[:0], 0, int32(n))
}

// lowest keeps of the stretches in s, from left to right, those that are
// nearest somewhere in columns x0..x1-1 of row y, in place, and returns how
// many. Sites above that are nearest nowhere between the pixels either are
// dropped for good: the places nearest to a site are a convex shape round it,
// so further down it is nearest nowhere.
func (e *envelope) lowest(s []stretch, y, x0, x1 int) int {
	n := 0
	for i := range s {
		u := &s[i]
		start := x0
		for n > 0 {
			t := &s[n-1]
			at := int(t.start)
			if int(t.best) <= u.far2(at) {
				d, gap := int(t.g2)-int(u.g2), int(u.a)-int(t.b)
				if -gap*gap < d && d <= gap*gap {
					start = meet(int(t.b), int(u.a), d) // between the two
				} else {
					start = u.beats(t, d)
				}
				break
			}
			if int(t.v) < y && u.far2(at-1) <= t.far2(at-1) {
				e.k.drop(t)
			}
			n--
		}
		switch {
		case start < x1:
			best := u.far2(start)
			t := &s[n]
			t.a, t.b, t.v, t.g2 = u.a, u.b, u.v, u.g2 // one by one, as they were written: faster
			t.start, t.best = int32(start), int32(best)
			n++
		case int(u.v) < y && start > x1:
			e.k.drop(u)
		}
	}
	return n
}

// beats returns the first column in which u is nearer than s, which lies left
// of it and is as near in some column: over s or before it where d, by how much
// s is further away, is above 0, else over u or beyond it.
func (u *stretch) beats(s *stretch, d int) int {
	p, q := int(s.b), int(u.a) // the ends of the two that count
	if d > 0 {
		if p = int(s.a); s.a < s.b {
			if x := q - wholeRoot(d-1); x > p {
				return x
			}
		}
		return meet(p, q, d)
	}
	if q = int(u.b); u.a < u.b {
		if x := p + wholeRoot(-d) + 1; x < q {
			return x
		}
	}
	return meet(p, q, d)
}

// meet returns the first column nearer to a site in column q than to one in
// column p, left of it, which is further away by d, squared. Neither side of
// the fraction is below 0, and unsigned is quicker in WebAssembly.
func meet(p, q, d int) int {
	return 1 + int(uint((q-p)*(q+p)-d)/uint(2*(q-p)))
}

// wholeRoot returns the greatest whole number whose square is not above n.
func wholeRoot(n int) int { return int(math.Sqrt(float64(n))) }
