//go:build !pin

package wire

import (
	"badgewright/sizing/left"
	"badgewright/sizing/unit"
)

// LeftAsk asks what is left of an order after costs.
type LeftAsk struct {
	Plan left.Selling `json:"plan"`
	// Priced, where it is given, fills in currency, pieces and bill of the plan. A
	// plan in the order's second currency keeps it, and the bill is brought to it.
	Priced *PricedOrder `json:"priced,omitempty"`
}

// Left is what is left, or what is wrong with the plan; Plan has its fields
// filled in.
type Left struct {
	Faults []unit.Fault    `json:"faults"`
	Plan   left.Selling    `json:"plan"`
	Left   *left.LeftAfter `json:"left,omitempty"`
}
