//go:build !pin

package wire

import "badgewright/sizing/run"

// PricedOrder is an order and the price list that prices it: all that the
// calls of the order need to know of pins.
type PricedOrder struct {
	List  run.PriceList `json:"list"`
	Order run.Wanted    `json:"order"`
}
