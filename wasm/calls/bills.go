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

// billsOf is the bill as typed, or that of one item by a price list: the item of
// a version. A further version that has its die in common with the first does
// not pay for it.
func billsOf(of wire.BillOf, version, digits int, field string) (b bills, f unit.Faults, err error) {
	if len(of.Steps) > 0 || of.Priced == nil {
		b.bill, b.breaks, f = demand.StepBill(of.Steps, digits, field+".steps")
		return b, f, nil
	}
	all := of.Priced.Order.Items
	chosen := func(i int) int {
		if i < len(of.Items) {
			return of.Items[i]
		}
		return i
	}
	first, own := chosen(0), chosen(version)
	if first < 0 || first >= len(all) || own < 0 || own >= len(all) {
		f.Say(field+".items", "The order has no item for version %d; add it to the order.", version+1)
		return b, f, nil
	}
	it := all[own]
	if version > 0 && dieOf(it) == dieOf(all[first]) {
		it.NewDie, it.DieAge = false, 0
	}
	b, err = priceBills(of.Priced, it)
	return b, nil, err
}

// dieOf names the die of an item: the design's, unless it is told.
func dieOf(it run.Item) string {
	if it.Die != "" {
		return it.Die
	}
	return it.Design
}

// priceBills prices an item in every quantity. A bill is reckoned once.
func priceBills(p *wire.PricedOrder, it run.Item) (bills, error) {
	b := bills{currency: p.List.Currency, digits: p.List.MinorDigits, breaks: []int{p.List.Least.Design, p.List.Least.Version}}
	for _, row := range p.List.Pieces.Breaks {
		b.breaks = append(b.breaks, row.From)
	}
	slices.Sort(b.breaks)
	total := func(n int) (decimal.Decimal, error) {
		it.Quantity = n
		return run.Total(p.List, run.Wanted{Items: []run.Item{it}, Terms: p.Order.Terms})
	}
	if _, err := total(b.breaks[len(b.breaks)-1]); err != nil {
		return bills{}, err // what has no price above every break and minimum has none at all
	}
	known := map[int]priced{}
	b.bill = func(n int) (decimal.Decimal, bool) {
		k, ok := known[n]
		if !ok {
			sum, err := total(n)
			k = priced{sum, err == nil}
			known[n] = k
		}
		return k.total, k.ok
	}
	return b, nil
}

type priced struct {
	total decimal.Decimal
	ok    bool
}

// in sets a stake's currency to that of the bill.
func (b bills) in(stake *demand.Stake) {
	if b.currency != "" {
		stake.Currency, stake.MinorDigits = b.currency, b.digits
	}
}
