//go:build !pin

package calls

import (
	"slices"

	"github.com/shopspring/decimal"

	"badgewright/sizing/demand"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// bills is a bill by the number of pieces, and where it may fall.
type bills struct {
	bill     demand.Bill
	breaks   []int
	currency string // empty for a bill as typed
	digits   int
}

// in sets a stake's currency to that of the bill.
func (b bills) in(stake *demand.Stake) {
	if b.currency != "" {
		stake.Currency, stake.MinorDigits = b.currency, b.digits
	}
}

// billsOf is the bill as typed, or that of some items by a price list.
func billsOf(of wire.BillOf, stake *demand.Stake, field string) (b bills, f unit.Faults, err error) {
	if len(of.Steps) > 0 || of.Priced == nil {
		b.bill, b.breaks, f = demand.StepBill(of.Steps, stake.MinorDigits, field+".steps")
		return b, f, nil
	}
	items, f := itemsOf(of, max(1, len(of.Items)), field)
	if len(f) > 0 {
		return b, f, nil
	}
	b, err = orderingOf(of.Priced, stake.Currency).bills(items)
	return b, nil, err
}

// itemsOf is the items that some number of versions are asked for by.
func itemsOf(of wire.BillOf, versions int, field string) (items []run.Item, f unit.Faults) {
	all := of.Priced.Order.Items
	for i := range versions {
		at := i
		if i < len(of.Items) {
			at = of.Items[i]
		}
		if at < 0 || at >= len(all) {
			f.Say(field+".items", "The order has no item for version %d; add it to the order.", i+1)
			return nil, f
		}
		items = append(items, all[at])
	}
	return items, nil
}

// ordering prices items by a list, in the currency in which they are sold.
type ordering struct {
	list  run.PriceList
	terms run.Terms
	into  *run.Exchange // nil for the list's own currency
	// beside is what is ordered in any case: its bill is not counted again.
	beside []run.Item
}

// orderingOf counts in the order's second currency where that is the one asked
// for, and otherwise in the list's.
func orderingOf(p *wire.PricedOrder, currency string) *ordering {
	o := &ordering{list: p.List, terms: p.Order.Terms}
	if e := p.Order.Terms.Into; e != nil && e.Currency == currency && currency != p.List.Currency {
		o.into = e
	}
	return o
}

func (o *ordering) currency() (code string, digits int) {
	if o.into != nil {
		return o.into.Currency, o.into.MinorDigits
	}
	return o.list.Currency, o.list.MinorDigits
}

// total is the bill of the items that have pieces, and of those beside them.
func (o *ordering) total(items ...run.Item) (decimal.Decimal, error) {
	w := run.Wanted{Terms: o.terms, Items: slices.Clone(o.beside)}
	for _, it := range items {
		if it.Quantity > 0 {
			w.Items = append(w.Items, it)
		}
	}
	if len(w.Items) == 0 {
		return decimal.Zero, nil
	}
	sum, err := run.Total(o.list, w)
	if err != nil || o.into == nil {
		return sum, err
	}
	return o.into.Bring(sum)
}

// bills prices items in every number, beside what is ordered in any case.
// Several share a number by their quantities in the order.
func (o *ordering) bills(items []run.Item) (bills, error) {
	b := bills{breaks: o.breaks(items)}
	b.currency, b.digits = o.currency()
	base, err := o.total()
	if err != nil {
		return bills{}, err
	}
	shares := quantities(items)
	total := func(n int) (decimal.Decimal, error) {
		sum, err := o.total(with(items, sharedBy(shares, n))...)
		return sum.Sub(base), err
	}
	if _, err := total(o.last() * len(items)); err != nil {
		return bills{}, err // what has no price above every break and minimum has none at all
	}
	b.bill = once(total)
	return b, nil
}

// last is the largest of the list's breaks and minimums.
func (o *ordering) last() int {
	most := max(1, o.list.Least.Design, o.list.Least.Version)
	for _, row := range o.list.Pieces.Breaks {
		most = max(most, row.From)
	}
	return most
}

// breaks are the numbers at which the bill of one item may fall, rising; nil
// where several share a number, as then it may fall anywhere.
func (o *ordering) breaks(items []run.Item) []int {
	if len(items) > 1 {
		return nil
	}
	beside := 0
	for _, it := range o.beside {
		beside += it.Quantity
	}
	all := []int{o.list.Least.Design, o.list.Least.Version}
	for _, row := range o.list.Pieces.Breaks {
		all = append(all, row.From)
	}
	for _, n := range slices.Clone(all) {
		if n > beside {
			all = append(all, n-beside) // counted together with what is beside it
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// split prices so many pieces of each item.
func (o *ordering) split(items []run.Item) func([]int) (decimal.Decimal, bool) {
	return func(each []int) (decimal.Decimal, bool) {
		sum, err := o.total(with(items, each)...)
		return sum, err == nil
	}
}

// once keeps what was reckoned.
func once(total func(int) (decimal.Decimal, error)) demand.Bill {
	type priced struct {
		total decimal.Decimal
		ok    bool
	}
	known := map[int]priced{}
	return func(n int) (decimal.Decimal, bool) {
		k, ok := known[n]
		if !ok {
			sum, err := total(n)
			k = priced{sum, err == nil}
			known[n] = k
		}
		return k.total, k.ok
	}
}

// with is items in other numbers.
func with(items []run.Item, each []int) []run.Item {
	out := slices.Clone(items)
	for i := range out {
		out[i].Quantity = each[i]
	}
	return out
}

func quantities(items []run.Item) []int {
	var all []int
	for _, it := range items {
		all = append(all, max(1, it.Quantity))
	}
	return all
}

// sharedBy shares a number out by weights, by largest remainder, ties to the
// first.
func sharedBy(weights []int, n int) []int {
	sum := 0
	for _, w := range weights {
		sum += w
	}
	each, rest, left := make([]int, len(weights)), make([]int, len(weights)), n
	for i, w := range weights {
		each[i], rest[i] = n*w/sum, n*w%sum
		left -= each[i]
	}
	for ; left > 0; left-- {
		best := 0
		for i := range rest {
			if rest[i] > rest[best] {
				best = i
			}
		}
		each[best]++
		rest[best] = -1
	}
	return each
}
