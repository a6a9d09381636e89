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
func CheaperMore(l PriceList, o Wanted) []More {
	now, err := bill(&l, &o)
	if err != nil || len(now.Needs) > 0 {
		return nil
	}
	var out []More
	for i, it := range o.Items {
		best := More{Item: it, Total: now.Total}
		beside := l.counted(o.Items, i) - it.Quantity
		for _, b := range l.Pieces.Breaks {
			if b.From-beside <= it.Quantity {
				continue
			}
			then, err := l.bill(o.with(i, func(other *Item) { other.Quantity = b.From - beside }))
			if err == nil && len(then.Needs) == 0 && then.Total.LessThan(best.Total) {
				best.Quantity, best.Total = b.From-beside, then.Total
			}
		}
		if best.Quantity > 0 {
			best.Saves = now.Total.Sub(best.Total)
			out = append(out, best)
		}
	}
	return out
}

// with is an order with one item changed.
func (o *Wanted) with(i int, change func(*Item)) *Wanted {
	other := *o
	other.Items = append([]Item(nil), o.Items...)
	change(&other.Items[i])
	return &other
}

// Words says it; named tells the design when there are several items.
func (m More) Words(q Quote, several bool) string {
	of := ""
	if several {
		of = named(&m.Item)
	}
	return fmt.Sprintf("%d pieces%s cost less in all than %d: %s instead of %s, and you get %d more.",
		m.Quantity, of, m.Item.Quantity, Amount(m.Total, q), Amount(m.Total.Add(m.Saves), q), m.Quantity-m.Item.Quantity)
}
