package deduce

import (
	"fmt"
	"math/big"
)

// expects is the least and greatest total that a model has for a quote; nil
// when it has no bound.
func (m *model) expects(p *program, q *PlainQuote) (low, high *big.Rat) {
	row, _ := m.row(q)
	if p == nil || row == nil {
		return nil, nil
	}
	high, ok := p.most(row)
	if !ok {
		return nil, nil
	}
	less := clone(row)
	scale(less, big.NewRat(-1, 1))
	low, _ = p.most(less)
	return low.Neg(low), high
}

// nearest proposes the list that is off by the least in all, when none agrees:
// the sum of all differences is as small as can be.
func (w *work) nearest(m *model) {
	n, k := m.columns(), len(m.quotes)
	wide := func(row []*big.Rat, sign int64, at int) []*big.Rat {
		out := make([]*big.Rat, n+k)
		for j := range out {
			out[j] = new(big.Rat)
			if j < len(row) {
				out[j].Mul(row[j], big.NewRat(sign, 1))
			}
		}
		if at >= 0 {
			out[n+at].SetInt64(-1)
		}
		return out
	}
	var bounds []bound
	for i, row := range m.rows {
		bounds = append(bounds, bound{wide(row, 1, i), m.totals[i]}, bound{wide(row, -1, i), new(big.Rat).Neg(m.totals[i])})
	}
	for _, b := range m.bounds(true)[2*k:] {
		bounds = append(bounds, bound{wide(b.coef, 1, -1), b.limit})
	}
	p := newProgram(n+k, bounds)
	off := wide(nil, 1, -1)
	for i := range k {
		off[n+i].SetInt64(-1)
	}
	p.most(off)
	values := p.at()[:n]
	for j := range values {
		if !m.quoted(j) {
			values[j] = nil
		}
	}
	w.out.List = m.list(w.base, values)
	w.models = []*model{m}
	w.out.Entries = w.doubtful(m, values)
	w.residuals()
	w.out.Notes = append(w.out.Notes, fmt.Sprintf("No price list gives all %d totals: the one shown is off by the least in all. Look for a quote with something in it that is not said.", k))
}

// doubtful marks every entry as open, for the quotes disagree.
func (w *work) doubtful(m *model, values []*big.Rat) (all []DeducedEntry) {
	for j := range values {
		e := DeducedEntry{Cell: m.path(j), What: m.nameOf(j), Status: Unknown, Says: "unknown"}
		if values[j] != nil {
			e.Status, e.Value, e.Says = Between, exact(values[j]), "about "+w.figure(values[j], "")
		}
		all = append(all, e)
	}
	return all
}

func (m *model) path(j int) string {
	if j < unitFrom {
		return [...]string{"die.flat", "shipping.flat", "colours.further.rate", "back.post.rate", "colours.fill.listed[0].charge.rate"}[j]
	}
	return fmt.Sprintf("pieces.breaks[%d].unit[%d]", (j-unitFrom)%len(m.counts), (j-unitFrom)/len(m.counts))
}
