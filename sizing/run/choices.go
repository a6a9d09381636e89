package run

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Choice is what one change costs from where the design stands.
type Choice struct {
	Key  string `json:"key"` // colour+, colour-, size+, size-, fill, fancy+, fancy-, printed+, printed-, post+, post-, card, quantity
	What string `json:"what"`
	// Known is false when the list has no price for it; Why says why.
	Known bool   `json:"known"`
	Why   string `json:"why"`
	// PerPiece and Total are differences, negative when the change saves.
	PerPiece decimal.Decimal `json:"perPiece"`
	Total    decimal.Decimal `json:"total"`
	// The same as shown: "EUR 0.11 more", "the same".
	PieceSays string `json:"pieceSays"`
	TotalSays string `json:"totalSays"`
}

// Sized returns an item at another size, by the measure of the price list: a
// larger pin may want another post.
type Sized func(size unit.MM) (Item, error)

// choiceStep is how far a size is moved to show what size costs.
const choiceStep unit.MM = 3

// mostPosts is the greatest number of posts that a choice speaks of.
const mostPosts = 3

// change is one step away from an item.
type change struct {
	key, what string
	item      Item
	err       error
}

// Choices returns what each change near at hand to one item of an order would
// cost, the others staying as they are. It is empty when the order itself
// cannot be priced.
func Choices(l PriceList, o Wanted, i int, at Sized) []Choice {
	out := []Choice{}
	if i < 0 || i >= len(o.Items) {
		return out
	}
	now, err := bill(&l, &o)
	if err != nil || len(now.Needs) > 0 {
		return out
	}
	item := o.Items[i]
	changes := append(colourChanges(item), sizeChanges(l, item, at)...)
	changes = append(changes, fillChanges(item)...)
	changes = append(changes, fancyChanges(item)...)
	changes = append(changes, printChanges(item)...)
	changes = append(changes, postChanges(item)...)
	changes = append(changes, cardChange(item))
	beside := l.counted(o.Items, i) - item.Quantity
	if next, ok := l.nextBreak(item.Quantity + beside); ok {
		other := item
		other.Quantity = next - beside
		next = other.Quantity
		changes = append(changes, change{key: "quantity", what: pieces(next) + " instead of " + fmt.Sprint(item.Quantity), item: other})
	}
	for _, c := range changes {
		out = append(out, weigh(&l, &o, i, now, c))
	}
	return out
}

// colourChanges are none for a pin without fill: it has no enamel to count.
func colourChanges(item Item) []change {
	var all []change
	if item.Fill == sizing.Unfilled {
		return all
	}
	if item.Enamels < reduce.MaxCount {
		other := item
		other.Enamels++
		all = append(all, change{key: "colour+", what: "one colour more", item: other})
	}
	if item.Enamels > 1 {
		other := item
		other.Enamels--
		other.Fancy = item.Fancy[:min(len(item.Fancy), other.Enamels)]
		all = append(all, change{key: "colour-", what: "one colour fewer", item: other})
	}
	return all
}

func sizeChanges(l PriceList, item Item, at Sized) []change {
	size := l.measure(&item)
	var all []change
	if size+choiceStep <= sizing.GreatestSize {
		all = append(all, sizeChange("size+", "larger", item, size+choiceStep, at))
	}
	if size-choiceStep >= sizing.LeastSize {
		all = append(all, sizeChange("size-", "smaller", item, size-choiceStep, at))
	}
	return all
}

func sizeChange(key, word string, item Item, size unit.MM, at Sized) change {
	c := change{key: key, what: unit.InMM(choiceStep, 1) + " " + word}
	c.item, c.err = at(size)
	if c.err == nil && c.item.Posts != item.Posts {
		c.what += ", which takes " + posts(c.item.Posts)
	}
	return c
}

func fillChanges(item Item) []change {
	other := item
	switch item.Fill {
	case sizing.Soft:
		other.Fill = sizing.Hard
		return []change{{key: "fill", what: "hard enamel instead of soft", item: other}}
	case sizing.Hard:
		other.Fill = sizing.Soft
		return []change{{key: "fill", what: "soft enamel instead of hard", item: other}}
	}
	return nil
}

// fancyChanges are none for a pin without fill.
func fancyChanges(item Item) []change {
	var all []change
	n := item.fancies()
	if item.Fill != sizing.Unfilled && n < item.Enamels {
		other := item
		other.Fancy = append(slices.Clone(item.Fancy), sizing.Glitter)
		all = append(all, change{key: "fancy+", what: "one colour more in a fancy fill", item: other})
	}
	if n > 0 {
		other := item
		other.Fancy = item.Fancy[:n-1]
		all = append(all, change{key: "fancy-", what: "one colour fewer in a fancy fill", item: other})
	}
	return all
}

func printChanges(item Item) []change {
	more := item
	more.Printed++
	all := []change{{key: "printed+", what: "one colour more printed on top", item: more}}
	if item.Printed > 0 {
		fewer := item
		fewer.Printed--
		all = append(all, change{key: "printed-", what: "one colour fewer printed on top", item: fewer})
	}
	return all
}

func postChanges(item Item) []change {
	var all []change
	for _, step := range []struct {
		key string
		by  int
	}{{"post+", 1}, {"post-", -1}} {
		other := item
		other.Posts += step.by
		if other.Posts < 1 || other.Posts > mostPosts {
			continue
		}
		all = append(all, change{key: step.key, what: fmt.Sprintf("%s instead of %s", posts(other.Posts), number(item.Posts)), item: other})
	}
	return all
}

func cardChange(item Item) change {
	other := item
	other.Card = !item.Card
	if item.Card {
		return change{key: "card", what: "without a backing card", item: other}
	}
	return change{key: "card", what: "with a backing card", item: other}
}

// number says a small number in a word.
func number(n int) string {
	if words := [...]string{"no", "one", "two", "three"}; n >= 0 && n < len(words) {
		return words[n]
	}
	return fmt.Sprint(n)
}

func posts(n int) string {
	if n == 1 {
		return "one post"
	}
	return number(n) + " posts"
}

func weigh(l *PriceList, o *Wanted, i int, now Quote, c change) Choice {
	out := Choice{Key: c.key, What: c.what}
	if c.err != nil {
		out.Why = c.err.Error()
		return out
	}
	then, err := l.bill(o.with(i, func(other *Item) { *other = c.item }))
	if err == nil && len(then.Needs) > 0 {
		err = &Unknown{then.Needs}
	}
	if err != nil {
		out.Why = err.Error()
		return out
	}
	out.Known = true
	out.PerPiece, out.Total = difference(now, then)
	out.PieceSays = moreWords(out.PerPiece, l.Currency, placesFor(out.PerPiece, l.MinorDigits))
	out.TotalSays = moreWords(out.Total, l.Currency, l.MinorDigits)
	if out.PerPiece.IsZero() && !out.Total.IsZero() {
		out.PieceSays = "nearly the same"
	}
	return out
}

// moreWords says a difference: "EUR 0.11 more", "EUR 0.24 less", "the same".
func moreWords(d decimal.Decimal, currency string, digits int) string {
	switch {
	case d.IsZero():
		return "the same"
	case d.IsNegative():
		return unit.Money(d.Neg(), currency, digits) + " less"
	}
	return unit.Money(d, currency, digits) + " more"
}

// nextBreak returns the least quantity above the one given at which the unit
// price changes; ok is false past the last row.
func (l PriceList) nextBreak(quantity int) (from int, ok bool) {
	for _, b := range l.Pieces.Breaks {
		if b.From > quantity {
			return b.From, true
		}
	}
	return 0, false
}
