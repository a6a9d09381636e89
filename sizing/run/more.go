package run

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// More is a larger quantity that costs less in all.
type More struct {
	Item     Item            // as it stands
	Quantity int             // the larger number of pieces
	Total    decimal.Decimal // of the whole order with it
	Saves    decimal.Decimal // against the order as it stands, above 0
}

// CheaperMore looks, item by item, for the larger quantity that makes the
// order cheapest, and returns those that beat the quantity asked for: prices
// hold from one break to the next, so a little under a break can cost more
// than the break itself.
func CheaperMore(l PriceList, items []Item) []More {
	now, err := bill(l, items)
	if err != nil {
		return nil
	}
	var out []More
	for i, it := range items {
		best := More{Item: it, Total: now.Total}
		for _, b := range l.Breaks {
			if b.From <= it.Quantity {
				continue
			}
			other := append([]Item(nil), items...)
			other[i].Quantity = b.From
			if then, err := bill(l, other); err == nil && then.Total.LessThan(best.Total) {
				best.Quantity, best.Total = b.From, then.Total
			}
		}
		if best.Quantity > 0 {
			best.Saves = now.Total.Sub(best.Total)
			out = append(out, best)
		}
	}
	return out
}

// Words says it; named tells the design when there are several items.
func (m More) Words(q Quote, named bool) string {
	of := ""
	if named && m.Item.Design != "" {
		of = " of " + m.Item.Design
	}
	return fmt.Sprintf("%d pieces%s cost less in all than %d: %s instead of %s, and you get %d more.",
		m.Quantity, of, m.Item.Quantity, Amount(m.Total, q), Amount(m.Total.Add(m.Saves), q), m.Quantity-m.Item.Quantity)
}
