package demand

import (
	"math"
	"slices"
)

// peak is the order worth most so far; of equals the smallest.
type peak struct {
	n     int
	worth float64
	ok    bool
}

// try looks at one order, and says what it costs when it can be placed.
func (s *search) try(p *peak, n int) (bill float64, ok bool) {
	b, ok := s.bill(n)
	if !ok {
		return 0, false
	}
	if w := s.worth(n, b); !p.ok || w > p.worth || w == p.worth && n < p.n {
		*p = peak{n, w, true}
	}
	return b.InexactFloat64(), true
}

// bestByBreaks finds the same as looking at every order, with few bills: no
// order between two others of one price step can cost less than the smaller
// of them, so what the pieces bring less that bill bounds what it is worth.
func (s *search) bestByBreaks(least int) (n int, ok bool) {
	var p peak
	ends := append(slices.Clone(s.Breaks), least, s.Most+1)
	slices.Sort(ends)
	ends = slices.Compact(ends)
	for i := 0; i+1 < len(ends); i++ {
		if lo, hi := ends[i], ends[i+1]-1; lo >= least && hi <= s.Most {
			cost, can := s.try(&p, lo)
			s.try(&p, hi)
			s.within(&p, lo, hi, cost, can)
		}
	}
	return p.n, p.ok
}

// within looks between two orders, halving as long as the bound lets hope.
func (s *search) within(p *peak, lo, hi int, cost float64, known bool) {
	if hi-lo < 2 {
		return
	}
	if !known {
		cost = 0
	}
	bound := math.Inf(-1)
	for k := lo + 1; k < hi; k++ {
		bound = max(bound, s.brings(k)-cost)
	}
	if p.ok && (bound < p.worth || bound == p.worth && lo >= p.n) {
		return
	}
	mid := lo + (hi-lo)/2
	then, can := s.try(p, mid)
	s.within(p, lo, mid, cost, known)
	if can {
		cost, known = then, true
	}
	s.within(p, mid, hi, cost, known)
}
