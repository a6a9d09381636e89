package run

import "github.com/shopspring/decimal"

// Total is the total of PriceOrder alone, for whoever asks for many: without
// notes, words or what else is derived from it.
func Total(l PriceList, o Wanted) (decimal.Decimal, error) {
	q, err := bill(&l, &o)
	if err == nil && len(q.Needs) > 0 {
		err = &Unknown{q.Needs}
	}
	return q.Total, err
}
