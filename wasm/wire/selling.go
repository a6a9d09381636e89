//go:build !pin

package wire

import (
	"github.com/shopspring/decimal"

	"badgewright/sizing/days"
	"badgewright/sizing/demand"
	"badgewright/sizing/left"
)

// SellingPlan is what the person states of selling an order. What is absent
// is as the tool proposes it.
type SellingPlan struct {
	// Left is how pieces reach people. Its bill and pieces are the order's, and a
	// weight of 0 is that of the pin.
	Left    *left.Selling `json:"left,omitempty"`
	Guesses []VersionWish `json:"guesses,omitempty"`
	Stake   OwnStake      `json:"stake,omitempty,omitzero"`
	Presale *PresalePlan  `json:"presale,omitempty"`
}

// VersionWish is the demand thought of for one version, by the IDs of its
// design and its own.
type VersionWish struct {
	Design  string       `json:"design"`
	Version string       `json:"version"`
	Guess   demand.Guess `json:"guess"`
}

// OwnStake is what the person says that a piece brings; what is absent follows
// from what is left after costs.
type OwnStake struct {
	Each     *decimal.Decimal `json:"each,omitempty"`
	Second   *decimal.Decimal `json:"second,omitempty"`
	Leftover *decimal.Decimal `json:"leftover,omitempty"`
	Missed   *decimal.Decimal `json:"missed,omitempty"`
	Free     int              `json:"free,omitempty"`
}

// PresalePlan is a pre-sale as the person wants it.
type PresalePlan struct {
	Days days.PresaleDays `json:"days"`
	// Each is what a paid pre-order leaves; absent, it follows from what is left
	// online.
	Each  *decimal.Decimal `json:"each,omitempty"`
	Goals []PresaleGoal    `json:"goals"`
}

// PresaleGoal is a further design: priced by the list as the one on the sheet
// is, with a die of its own, or by a bill of one step as typed.
type PresaleGoal struct {
	Name     string          `json:"name"`
	Quantity int             `json:"quantity"` // its first run
	Alike    bool            `json:"alike"`    // by the list
	Each     decimal.Decimal `json:"each"`
	Once     decimal.Decimal `json:"once"`
}
