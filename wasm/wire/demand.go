//go:build !pin

package wire

import (
	"badgewright/sizing/demand"
	"badgewright/sizing/unit"
)

// BillOf is a bill by the number of pieces: steps as typed, or, without any,
// what a price list says of one item of an order in every quantity.
type BillOf struct {
	Steps  []demand.BillStep `json:"steps"`
	Priced *PricedOrder      `json:"priced,omitempty"`
	// Items says which of the order's items: one for each version that is asked
	// for, in their order where it is empty; or those that share the pieces of a
	// pre-sale by their quantities, the first where it is empty.
	Items []int `json:"items"`
}

// DemandAsk asks how many pieces to order.
type DemandAsk struct {
	Bill     BillOf                `json:"bill"`
	Versions []demand.VersionGuess `json:"versions"`
	// Stake's currency is taken from the price list where that is used, unless it
	// is the order's second one.
	Stake demand.Stake `json:"stake"`
	Most  int          `json:"most"` // largest order to look at; 0 is the usual
	Look  []int        `json:"look"` // further orders to tell of; price breaks are told of in any case
	// Apart asks for one version after another, each beside those before it: for a
	// list whose breaks go by version. Otherwise they are one order, of which each
	// further piece goes to the version likeliest to sell it.
	Apart bool `json:"apart"`
}

// Demand is the answer: one for all versions together, or one for each; or
// what is wrong with the question.
type Demand struct {
	Faults  []unit.Fault     `json:"faults"`
	Answers []demand.HowMany `json:"answers"`
	Says    string           `json:"says"` // all of them in a sentence
}

// GoalAsk is a further design of a pre-sale: its first run and its bill.
type GoalAsk struct {
	Name     string `json:"name"`
	Quantity int    `json:"quantity"`
	Bill     BillOf `json:"bill"`
}

// PresaleAsk asks how many paid pre-orders cover the bill.
type PresaleAsk struct {
	Name  string        `json:"name"`
	Bill  BillOf        `json:"bill"`
	Stake demand.Stake  `json:"stake"`
	Goals []GoalAsk     `json:"goals"`
	Most  int           `json:"most"` // 0 is the usual
	Guess *demand.Guess `json:"guess,omitempty"`
}

// Presale is the answer, or what is wrong with the question.
type Presale struct {
	Faults []unit.Fault  `json:"faults"`
	Goals  *demand.Goals `json:"goals,omitempty"`
}
