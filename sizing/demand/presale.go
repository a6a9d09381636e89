package demand

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Goal is a further design that is made once the paid pre-orders cover it too:
// a first run of some pieces, with a bill of its own.
type Goal struct {
	Name     string
	Quantity int
	Bill     Bill
}

// Presale asks how many pre-orders have to be paid before the die is cut.
type Presale struct {
	Name  string
	Stake Stake // Each is what one paid pre-order brings, fees and posting taken off
	Bill  Bill
	Goals []Goal
	Most  int
	// Guess is for the chance of getting so many; nil for none.
	Guess *Guess
}

// GoalRow is one goal of a pre-sale, the first being the design itself.
type GoalRow struct {
	Name string `json:"name"`
	// Paid is the least number of paid pre-orders that covers the bill, and
	// Always the number from which on it is always covered: just under a price
	// break a bill can be dearer. Both are below 0 when there is none.
	Paid   int `json:"paid"`
	Always int `json:"always"`
	// Order is how many pieces are then ordered, Bill what all designs so far
	// cost, and Over what is left of the money.
	Order  int             `json:"order"`
	Bill   decimal.Decimal `json:"bill"`
	Over   decimal.Decimal `json:"over"`
	Chance float64         `json:"chance"` // of Paid or more; below 0 when nothing is guessed
	Says   string          `json:"says"`
}

// Goals is the answer to a pre-sale.
type Goals struct {
	Rows []GoalRow `json:"rows"`
	Says string    `json:"says"`
}

// Cover finds the pre-orders that each goal needs. Goals are met in their
// order, all from the same money: every pre-order pays for a piece of the
// first design, and what is over buys the first run of the next.
func Cover(p Presale) (*Goals, unit.Faults) {
	var f unit.Faults
	p.Stake.check(&f)
	f.Whole("most", "The largest order to look at", p.Most, 1, MostWanted)
	chance := func(int) float64 { return -1 }
	if p.Guess != nil {
		d, g := p.Guess.Distribution("guess")
		if f = append(f, g...); len(g) == 0 {
			chance = func(n int) float64 { return shown(d.AtLeast(n)) }
		}
	}
	further := p.further(&f)
	if len(f) > 0 {
		return nil, f
	}
	all := &Goals{Rows: []GoalRow{}}
	orders := p.orders()
	for i, more := range further {
		r := p.row(i, orders, more)
		if r.Chance = -1; r.Paid >= 0 {
			r.Chance = chance(r.Paid)
		}
		r.Says = p.words(r)
		all.Rows = append(all.Rows, r)
	}
	all.Says = all.Rows[0].Says
	return all, f
}

// further is what the goals up to each one cost beyond the first design.
func (p Presale) further(f *unit.Faults) []decimal.Decimal {
	sums := []decimal.Decimal{decimal.Zero}
	if len(p.Goals) > mostVersions {
		f.Say("goals", "%d goals are more than %d; leave some out.", len(p.Goals), mostVersions)
		return sums
	}
	for i, g := range p.Goals {
		at := fmt.Sprintf("goals[%d].quantity", i)
		if g.Quantity < 1 || g.Quantity > MostWanted {
			f.Whole(at, "The first run of "+g.Name, g.Quantity, 1, MostWanted)
			continue
		}
		bill, ok := g.Bill(g.Quantity)
		if !ok {
			f.Say(at, "%s of %s have no price; give a number that can be ordered.", piecesOf(g.Quantity), g.Name)
			continue
		}
		sums = append(sums, sums[len(sums)-1].Add(bill))
	}
	return sums
}

// priced is what is ordered for a number of pre-orders.
type priced struct {
	order int
	bill  decimal.Decimal
}

// orders are the least orders with a good piece for each of 1, 2, 3 and more
// buyers, as far as they can be placed.
func (p Presale) orders() []priced {
	var all []priced
	for order := 1; order <= MostWanted && len(all) < p.Most; order++ {
		if p.Stake.sellable(order) <= len(all) {
			continue
		}
		bill, ok := p.Bill(order)
		for ok && len(all) < min(p.Most, p.Stake.sellable(order)) {
			all = append(all, priced{order, bill})
		}
	}
	return all
}

// row looks at every number of pre-orders for the first that covers, and for
// the last that does not. Pieces that nobody has paid for yet bring nothing.
func (p Presale) row(i int, orders []priced, further decimal.Decimal) GoalRow {
	r := GoalRow{Name: p.Name, Paid: -1, Always: -1}
	if i > 0 {
		r.Name = p.Goals[i-1].Name
	}
	short := len(orders)
	for at, o := range orders {
		bill := o.bill.Add(further)
		over := p.Stake.Each.Mul(decimal.NewFromInt(int64(at + 1))).Sub(bill)
		switch {
		case over.IsNegative():
			short = at
		case r.Paid < 0:
			r.Paid, r.Order, r.Bill, r.Over = at+1, o.order, bill, over
		}
	}
	if r.Paid > 0 && short == len(orders) {
		r.Always = r.Paid
	} else if r.Paid > 0 && short+2 <= len(orders) {
		r.Always = short + 2
	}
	return r
}

func (p Presale) words(r GoalRow) string {
	if r.Paid < 0 {
		return fmt.Sprintf("%s: no number of pre-orders up to %d covers the bill.", r.Name, p.Most)
	}
	says := fmt.Sprintf("%s: %d paid pre-orders cover the bill of %s, for %s.", r.Name, r.Paid, p.Stake.money(r.Bill), piecesOf(r.Order))
	if r.Always > r.Paid {
		says += fmt.Sprintf(" A few more can fall short again, up to %d: there the price of fewer pieces still holds.", r.Always-1)
	}
	if r.Chance >= 0 {
		says += fmt.Sprintf(" As many come with a chance of %s.", percent(r.Chance))
	}
	return says
}
