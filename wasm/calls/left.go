//go:build !pin

package calls

import (
	"badgewright/sizing/left"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// leftAfter says what is left of an order after costs.
func leftAfter(_ *Session, _ Job, ask wire.LeftAsk) (Reply, error) {
	plan := ask.Plan
	if p := ask.Priced; p != nil {
		total, err := run.Total(p.List, p.Order)
		if err != nil {
			return Reply{}, err
		}
		plan.Currency, plan.MinorDigits, plan.Bill, plan.Pieces = p.List.Currency, p.List.MinorDigits, total, 0
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
