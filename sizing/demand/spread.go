package demand

// spread is how good pieces of an order are shared out among its versions: each
// next piece goes to the version most likely to sell it, which leaves most on
// average for every total, as what a version sells flattens as it grows.
type spread struct {
	wanted []Distribution
	each   []int     // good pieces of each version so far
	sold   []float64 // sold[n] is how many of n good pieces sell on average, over all versions
	order  []int     // order[n] is the version that gets piece n+1
}

func newSpread(wanted []Distribution) *spread {
	return &spread{wanted: wanted, each: make([]int, len(wanted)), sold: []float64{0}}
}

// upTo shares out as many pieces as asked for.
func (s *spread) upTo(good int) {
	for len(s.order) < good {
		i := s.next()
		s.each[i]++
		s.order = append(s.order, i)
		sum := 0.0
		for v, d := range s.wanted {
			sum += d.Sold(s.each[v])
		}
		s.sold = append(s.sold, sum)
	}
}

// next is the version likeliest to sell one more; ties go to the one with the
// fewest pieces, then to the first.
func (s *spread) next() int {
	best, chance := 0, s.wanted[0].AtLeast(s.each[0]+1)
	for i := 1; i < len(s.wanted); i++ {
		c := s.wanted[i].AtLeast(s.each[i] + 1)
		if c > chance || c == chance && s.each[i] < s.each[best] {
			best, chance = i, c
		}
	}
	return best
}

// soldOf is how many of some good pieces sell on average, over all versions.
func (s *spread) soldOf(good int) float64 {
	s.upTo(good)
	return s.sold[good]
}

// of is how many of some good pieces each version gets.
func (s *spread) of(good int) []int {
	s.upTo(good)
	each := make([]int, len(s.wanted))
	for _, i := range s.order[:good] {
		each[i]++
	}
	return each
}

// mean is how many are wanted on average, over all versions.
func (s *spread) mean() float64 {
	sum := 0.0
	for _, d := range s.wanted {
		sum += d.Mean()
	}
	return sum
}

// selling is how likely each number of sold pieces is, when the versions sell
// independently of one another.
func (s *spread) selling(good int) Distribution {
	each := s.of(good)
	all := s.wanted[0].upTo(each[0])
	for i := 1; i < len(each); i++ {
		all = all.plus(s.wanted[i].upTo(each[i]))
	}
	return all
}

// upTo is the lesser of what is wanted and a number of pieces.
func (d Distribution) upTo(n int) Distribution {
	if n <= d.first {
		return weighted(n, []float64{1})
	}
	last := min(n, d.Last())
	w := make([]float64, last-d.first+1)
	for i := range w {
		w[i] = d.weight(i)
	}
	if i := len(w) - 1; last == n {
		w[i] = d.total() - d.cum[i-1]
	}
	return weighted(d.first, w)
}

func (d Distribution) weight(i int) float64 {
	if i == 0 {
		return d.cum[0]
	}
	return d.cum[i] - d.cum[i-1]
}

// plus is the sum of two independent numbers.
func (d Distribution) plus(o Distribution) Distribution {
	w := make([]float64, len(d.cum)+len(o.cum)-1)
	for i := range d.cum {
		p := d.weight(i) / d.total()
		for j := range o.cum {
			w[i+j] += float64(p * o.weight(j))
		}
	}
	for j := range w {
		w[j] /= o.total()
	}
	return weighted(d.first+o.first, w)
}

// ordered shares an order out among the versions: their good pieces, and of
// the pieces with flaws and those given away each its share, by largest
// remainder.
func (s *spread) ordered(good, pieces int) []int {
	each := s.of(good)
	extra := pieces - good
	out := make([]int, len(each))
	rest := make([]int, len(each))
	left := extra
	for i, n := range each {
		out[i] = n
		if good > 0 {
			out[i] += extra * n / good
			rest[i] = extra * n % good
			left -= extra * n / good
		}
	}
	for ; left > 0; left-- {
		best := 0
		for i := range rest {
			if rest[i] > rest[best] {
				best = i
			}
		}
		out[best]++
		rest[best] = -1
	}
	return out
}
