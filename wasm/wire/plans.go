//go:build !pin

package wire

import (
	"badgewright/sizing/card"
	"badgewright/sizing/days"
	"badgewright/sizing/parcel"
)

// Plans is what the person states of selling, days, papers and parcels: kept
// with the project, and read by the second program alone. The page leaves it
// out of what it asks of the pin's.
type Plans struct {
	Selling SellingPlan `json:"selling,omitempty,omitzero"`
	// Card is the backing card, and Papers what was chosen for the papers.
	Card   *card.BackingCard `json:"card,omitempty"`
	Papers PapersPlan        `json:"papers,omitempty,omitzero"`
	// Parcels are what came, as counted, and Ledger what became of the pieces.
	Parcels []parcel.Parcel   `json:"parcels,omitempty"`
	Ledger  *parcel.StockBook `json:"ledger,omitempty"`
	// Calendar is without today and without delivery choices: these go along
	// with every question.
	Calendar *days.Schedule `json:"calendar,omitempty"`
	// Proofs are the makers' proofs, in the order they came.
	Proofs []ProofRound `json:"proofs,omitempty"`
	// Quotes are makers' quotes as they were typed, one a line, and Rates the
	// exchange that makers are compared at.
	Quotes string      `json:"quotes,omitempty"`
	Rates  []MakerRate `json:"rates,omitempty"`
}
