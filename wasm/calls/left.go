//go:build !pin

package calls

import (
	"badgewright/sizing/left"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// leftAfter says what is left of an order after costs.
func leftAfter(_ *Session, _ Job, ask wire.LeftAsk) (Reply, error) {
	plan := ask.Plan
	if p := ask.Priced; p != nil {
		o := orderingOf(p, plan.Currency)
		total, err := o.total(p.Order.Items...)
		if err != nil {
			return Reply{}, err
		}
		plan.Bill, plan.Pieces = total, 0
		plan.Currency, plan.MinorDigits = o.currency()
		for _, it := range p.Order.Items {
			plan.Pieces += it.Quantity
		}
	}
	after, faults := left.Reckon(plan)
	return Reply{Answer: wire.Left{Faults: faultsOf(faults), Plan: plan, Left: after}}, nil
}

// faultsOf is a list of faults that is never null on the wire.
func faultsOf(f unit.Faults) []unit.Fault {
	if f == nil {
		return []unit.Fault{}
	}
	return f
}
