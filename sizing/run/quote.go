package run

import "github.com/shopspring/decimal"

// Line is one line of a quote. Amount is rounded once, half away from zero, to
// the currency's minor units.
type Line struct {
	Key    string          `json:"key"`  // stable: see the Key constants
	What   string          `json:"what"` // in words
	Count  int             `json:"count"`
	Each   decimal.Decimal `json:"each"` // exact rate, not rounded
	Amount decimal.Decimal `json:"amount"`
	// As shown: "EUR 33.00", and "300 × EUR 0.11" for what is charged by the piece.
	Says    string `json:"says"`
	SumSays string `json:"sumSays"`
}

// Quote is what an order costs by one price list.
type Quote struct {
	Currency    string `json:"currency"`
	MinorDigits int    `json:"minorDigits"`
	Invented    bool   `json:"invented"`
	Pieces      int    `json:"pieces"`
	Lines       []Line `json:"lines"`
	// Total is the sum of the shown amounts.
	Total decimal.Decimal `json:"total"`
	// PerPiece is Total by Pieces to one place more than the currency ("about").
	PerPiece decimal.Decimal `json:"perPiece"`
	// As shown: "EUR 339.00", "about EUR 3.390".
	TotalSays string `json:"totalSays"`
	EachSays  string `json:"eachSays"`
	// Notes are sentences that matter to the choice, such as a larger quantity
	// that costs less in all.
	Notes []string `json:"notes"`
}
