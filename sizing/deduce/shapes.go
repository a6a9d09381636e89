package deduce

import (
	"math/big"
	"slices"

	"badgewright/sizing/run"
)

// plainShape takes nothing together: every size and quantity that was quoted
// has a price of its own.
func plainShape(quotes []PlainQuote) shape {
	s := shape{colourBy: run.PerPiece, hardBy: run.PerPiece}
	for _, q := range quotes {
		s.sizes, s.counts = append(s.sizes, q.Size), append(s.counts, q.Quantity)
	}
	slices.Sort(s.sizes)
	slices.Sort(s.counts)
	s.sizes, s.counts = slices.Compact(s.sizes), slices.Compact(s.counts)
	return s
}

// build writes quotes as a model of a shape, with the prices that its
// percentages are of.
func build(s shape, quotes []PlainQuote, digits int) *model {
	s.price = settledPrices(s, quotes, digits)
	return newModel(s, quotes, digits)
}

// holds says whether a model's quotes agree with each other and with sense.
func (m *model) holds() bool {
	if m == nil {
		return false
	}
	_, agree := m.echelon()
	return agree && newProgram(m.columns(), m.bounds(true)) != nil
}

// joined takes neighbouring quantities, then sizes, together wherever the
// quotes speak for it: they agree although fewer prices leave less to be told
// apart. With force it is enough that they do not speak against it.
func joined(m *model, digits int, force bool) *model {
	m = together(m, len(m.counts), force, func(s *shape, from, n int) shape {
		other := *s
		other.counts = slices.Delete(slices.Clone(s.counts), from+1, from+n) // the least of a run stands for it
		return other
	}, digits)
	return together(m, len(m.sizes), force, func(s *shape, from, n int) shape {
		other := *s
		other.sizes = slices.Delete(slices.Clone(s.sizes), from, from+n-1) // the greatest stands for it
		return other
	}, digits)
}

// together joins runs of n classes, the longest first.
func together(m *model, classes int, force bool, join func(s *shape, from, n int) shape, digits int) *model {
	for n := classes; n > 1; n-- {
		for from := 0; from+n <= classes; {
			o := build(join(&m.shape, from, n), m.quotes, digits)
			if o == nil || !force && !spokenFor(m, o, from, n, join, digits) || !o.holds() {
				from++
				continue
			}
			m = o
			classes -= n - 1
		}
	}
	return m
}

// spokenFor says whether a run as a whole leaves less to be told apart than it
// does without its first or its last class.
func spokenFor(m, run *model, from, n int, join func(s *shape, from, n int) shape, digits int) bool {
	rank := rankOf(run)
	if n == 2 {
		return rank < rankOf(m)
	}
	for _, at := range []int{from, from + 1} {
		if part := build(join(&m.shape, at, n-1), m.quotes, digits); part != nil && rank >= rankOf(part) {
			return false
		}
	}
	return true
}

func rankOf(m *model) int {
	e, _ := m.echelon()
	return len(e.rows)
}

// candidates are the models that the quotes may come of, the simplest first: by
// what surcharges are counted by, and by how many colours may be in the price.
func candidates(quotes []PlainQuote, digits int) (all []*model) {
	least, most := colourRange(quotes)
	included := []int{least}
	for n := least + 1; n < most; n++ { // more were quoted than are in the price
		included = append(included, n)
	}
	colourWays := []run.ChargeBy{run.PerPiece}
	if most > least {
		colourWays = append(colourWays, run.Percent, run.SetUp)
	}
	hardWays := []run.ChargeBy{run.PerPiece}
	if anyHard(quotes) {
		hardWays = append(hardWays, run.Percent)
	}
	for _, c := range colourWays {
		for _, h := range hardWays {
			for _, n := range included {
				s := plainShape(quotes)
				s.included, s.colourBy, s.hardBy = n, c, h
				if m := build(s, quotes, digits); m != nil {
					all = append(all, m)
				}
			}
		}
	}
	return all
}

// colourRange is the fewest and most colours of any quote; one that does not
// say counts as the fewest.
func colourRange(quotes []PlainQuote) (least, most int) {
	for _, q := range quotes {
		if q.Colours > 0 && (least == 0 || q.Colours < least) {
			least = q.Colours
		}
		most = max(most, q.Colours)
	}
	return least, most
}

func anyHard(quotes []PlainQuote) bool {
	return slices.ContainsFunc(quotes, func(q PlainQuote) bool { return q.Hard })
}

// settledPrices are the prices a piece that quotes without a percentage settle
// by themselves.
func settledPrices(s shape, quotes []PlainQuote, digits int) func(size, count int) *big.Rat {
	bare := slices.DeleteFunc(slices.Clone(quotes), func(q PlainQuote) bool {
		return q.Hard && s.hardBy == run.Percent || q.Colours > s.included && s.colourBy == run.Percent
	})
	var prices map[int]*big.Rat
	return func(size, count int) *big.Rat {
		if prices == nil {
			plain := s
			plain.price = func(int, int) *big.Rat { return nil }
			prices = pricesOf(plain, bare, digits)
		}
		return prices[unitFrom+size*len(s.counts)+count]
	}
}

func pricesOf(s shape, quotes []PlainQuote, digits int) map[int]*big.Rat {
	prices := map[int]*big.Rat{}
	m := newModel(s, quotes, digits)
	e, agree := m.echelon()
	p := newProgram(m.columns(), m.bounds(true))
	if !agree || p == nil {
		return prices
	}
	for j := unitFrom; j < m.columns(); j++ {
		if e.settled(j) {
			low, high := m.span(p, j)
			prices[j] = simplest(low, high)
		}
	}
	return prices
}

// simplest is the figure with the fewest decimals between two, the lowest of
// them.
func simplest(low, high *big.Rat) *big.Rat {
	ten := big.NewInt(1)
	for range mostDecimals {
		up := ceil(new(big.Rat).Mul(low, new(big.Rat).SetInt(ten)))
		v := new(big.Rat).SetFrac(up, ten)
		if v.Cmp(high) <= 0 {
			return v
		}
		ten = new(big.Int).Mul(ten, big.NewInt(10))
	}
	return new(big.Rat).Set(low)
}

// mostDecimals is how fine a rate of a list is looked for.
const mostDecimals = 7

func ceil(r *big.Rat) *big.Int {
	q, rest := new(big.Int).DivMod(r.Num(), r.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		q.Add(q, big.NewInt(1))
	}
	return q
}
