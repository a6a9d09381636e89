package deduce

import (
	"math/big"
	"slices"

	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// The unknowns of every model, by their column; the prices a piece follow, size
// by size.
const (
	die = iota
	shipping
	colour // each further enamel
	post   // each further post
	hard   // hard instead of soft
	unitFrom
)

// shape is what a model takes for granted of the list: how many colours are in
// the price, what surcharges are counted by, and which quantities and sizes
// share a price.
type shape struct {
	included int
	colourBy run.ChargeBy
	hardBy   run.ChargeBy
	sizes    []unit.MM // greatest of each class, rising
	counts   []int     // least of each break, rising
	// price is the unit price of a size and quantity where it is settled, for
	// surcharges in percent of it.
	price func(size, count int) *big.Rat
}

// model is quotes as sums of unknowns.
type model struct {
	shape
	quotes []PlainQuote
	rows   [][]*big.Rat
	totals []*big.Rat
	slack  []*big.Rat // how far rounding may have moved a total
}

func (s *shape) columns() int { return unitFrom + len(s.sizes)*len(s.counts) }

// cell is the column of the price a piece of a quote.
func (s *shape) cell(q *PlainQuote) (column, size, count int) {
	size, _ = slices.BinarySearch(s.sizes, q.Size)
	for count+1 < len(s.counts) && s.counts[count+1] <= q.Quantity {
		count++
	}
	return unitFrom + size*len(s.counts) + count, size, count
}

// newModel writes quotes as rows; nil when a percentage is asked of a price
// that is not settled.
func newModel(s shape, quotes []PlainQuote, digits int) *model {
	m := &model{shape: s, quotes: quotes}
	half := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Mul(big.NewInt(2), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(digits)), nil)))
	for i := range quotes {
		row, lines := m.row(&quotes[i])
		if row == nil {
			return nil
		}
		m.rows = append(m.rows, row)
		m.totals = append(m.totals, quotes[i].Total.Rat())
		m.slack = append(m.slack, new(big.Rat).Mul(half, big.NewRat(int64(lines), 1)))
	}
	return m
}

// row is one quote as a sum, and the number of its lines that may have been
// rounded.
func (m *model) row(q *PlainQuote) (row []*big.Rat, lines int) {
	row = make([]*big.Rat, m.columns())
	for j := range row {
		row[j] = new(big.Rat)
	}
	n := int64(q.Quantity)
	at, size, count := m.cell(q)
	row[at].SetInt64(n)
	lines = 1
	if q.Die {
		row[die].SetInt64(1)
	}
	if q.Shipping {
		row[shipping].SetInt64(1)
	}
	put := func(column int, by run.ChargeBy, times int64) bool {
		lines++
		switch by {
		case run.SetUp:
			row[column].SetInt64(times)
		case run.Percent:
			price := m.price(size, count)
			if price == nil {
				return false
			}
			row[column].Mul(price, big.NewRat(times*n, 100))
		default:
			row[column].SetInt64(times * n)
		}
		return true
	}
	if extra := q.Colours - m.included; extra > 0 && !put(colour, m.colourBy, int64(extra)) {
		return nil, 0
	}
	if q.Hard && !put(hard, m.hardBy, 1) {
		return nil, 0
	}
	if q.Posts > 1 {
		put(post, run.PerPiece, int64(q.Posts-1))
	}
	return row, lines
}

// echelon is the model's rows as a staircase, and whether what they say twice
// agrees within what rounding may have moved.
func (m *model) echelon() (e *echelon, agree bool) {
	e, agree = &echelon{}, true
	for i, row := range m.rows {
		came := make([]*big.Rat, len(m.rows))
		for k := range came {
			came[k] = new(big.Rat)
		}
		came[i].SetInt64(1)
		fresh, of := e.add(row, came)
		if fresh {
			continue
		}
		off, may, tmp := new(big.Rat), new(big.Rat), new(big.Rat)
		for k, f := range of {
			off.Add(off, tmp.Mul(f, m.totals[k]))
			may.Add(may, tmp.Mul(tmp.Abs(f), m.slack[k]))
		}
		agree = agree && off.Abs(off).Cmp(may) <= 0
	}
	return e, agree
}

// bounds are what the quotes and common sense say of the unknowns: totals
// within their rounding, and prices that never rise with the quantity nor fall
// with the size.
func (m *model) bounds(steady bool) (all []bound) {
	for i, row := range m.rows {
		less := clone(row)
		scale(less, big.NewRat(-1, 1))
		all = append(all,
			bound{row, new(big.Rat).Add(m.totals[i], m.slack[i])},
			bound{less, new(big.Rat).Sub(m.slack[i], m.totals[i])})
	}
	if !steady {
		return all
	}
	order := func(low, high int) { // low is no more than high
		row := make([]*big.Rat, m.columns())
		for j := range row {
			row[j] = new(big.Rat)
		}
		row[low].SetInt64(1)
		row[high].SetInt64(-1)
		all = append(all, bound{row, new(big.Rat)})
	}
	for s := range m.sizes {
		for c := range m.counts {
			at := unitFrom + s*len(m.counts) + c
			if c > 0 {
				order(at, at-1)
			}
			if s > 0 {
				order(at-len(m.counts), at)
			}
		}
	}
	return all
}

// span is the least and greatest value of one unknown; high is nil when nothing
// bounds it.
func (m *model) span(p *program, j int) (low, high *big.Rat) {
	coef := make([]*big.Rat, m.columns())
	for k := range coef {
		coef[k] = new(big.Rat)
	}
	coef[j].SetInt64(1)
	high, ok := p.most(coef)
	if !ok {
		high = nil
	}
	coef[j].SetInt64(-1)
	low, _ = p.most(coef)
	return low.Neg(low), high
}
