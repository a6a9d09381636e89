package run

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Choice is what one change costs from where the design stands.
type Choice struct {
	Key   string `json:"key"` // colour+, colour-, size+, size-, fill, post, quantity
	What  string `json:"what"`
	Known bool   `json:"known"` // false when the list has no price for it; Words says why
	// PerPiece and Total are differences, negative when the change saves.
	PerPiece decimal.Decimal `json:"perPiece"`
	Total    decimal.Decimal `json:"total"`
	Words    string          `json:"words"`
}

// choiceStep is how far a size is moved to show what size costs.
const choiceStep unit.MM = 3

// Choices returns what each change near at hand would cost. It is empty when
// the item itself cannot be priced.
func Choices(l PriceList, item Item) []Choice {
	now, err := bill(l, []Item{item})
	if err != nil {
		return []Choice{}
	}
	out := []Choice{}
	try := func(key, what string, other Item) {
		out = append(out, weigh(l, now, key, what, other))
	}
	with := func(change func(*Item)) Item { o := item; change(&o); return o }

	try("colour+", "one colour more", with(func(o *Item) { o.Enamels++ }))
	if item.Enamels > 1 {
		try("colour-", "one colour fewer", with(func(o *Item) { o.Enamels-- }))
	}
	size := l.measure(item)
	try("size+", fmt.Sprintf("%s larger", unit.InMM(choiceStep, 1)), with(func(o *Item) { o.grow((size + choiceStep) / size) }))
	if size > choiceStep {
		try("size-", fmt.Sprintf("%s smaller", unit.InMM(choiceStep, 1)), with(func(o *Item) { o.grow((size - choiceStep) / size) }))
	}
	switch item.Fill {
	case sizing.Soft:
		try("fill", "hard enamel instead of soft", with(func(o *Item) { o.Fill = sizing.Hard }))
	case sizing.Hard:
		try("fill", "soft enamel instead of hard", with(func(o *Item) { o.Fill = sizing.Soft }))
	}
	if item.Posts > 1 {
		try("post", "one post instead of "+fmt.Sprint(item.Posts), with(func(o *Item) { o.Posts = 1 }))
	} else {
		try("post", "a second post", with(func(o *Item) { o.Posts = 2 }))
	}
	if next, ok := l.nextBreak(item.Quantity); ok {
		try("quantity", pieces(next)+" instead of "+fmt.Sprint(item.Quantity), with(func(o *Item) { o.Quantity = next }))
	}
	return out
}

// grow scales both measures of an item; factor is above 0.
func (it *Item) grow(factor unit.MM) { it.Longest, it.Mean = it.Longest*factor, it.Mean*factor }

func weigh(l PriceList, now Quote, key, what string, other Item) Choice {
	then, err := bill(l, []Item{other})
	if err != nil {
		return Choice{Key: key, What: what, Words: err.Error()}
	}
	c := Choice{Key: key, What: what, Known: true}
	c.PerPiece, c.Total = difference(now, then)
	c.Words = stepWords(c.PerPiece, c.Total, l.MinorDigits)
	return c
}

// nextBreak returns the least quantity above the one given at which the unit
// price changes; ok is false past the last row.
func (l PriceList) nextBreak(quantity int) (from int, ok bool) {
	for _, b := range l.Breaks {
		if b.From > quantity {
			return b.From, true
		}
	}
	return 0, false
}

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
