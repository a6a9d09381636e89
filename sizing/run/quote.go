package run

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// Line is one line of a quote. Amount is rounded once, half away from zero, to
// the currency's minor units.
type Line struct {
	Key   string          `json:"key"`  // stable: see the Key constants; more than one line may have it
	What  string          `json:"what"` // in words
	Item  int             `json:"item"` // place of its item in the order; -1 for the order's own
	Count int             `json:"count"`
	Each  decimal.Decimal `json:"each"` // exact rate, not rounded
	// Amount is below 0 where a delivery takes something off.
	Amount decimal.Decimal `json:"amount"`
	// As shown: "EUR 33.00", and "300 × EUR 0.11" for what is charged by the piece.
	Says    string `json:"says"`
	SumSays string `json:"sumSays"`

	byPiece bool
}

// OpenEntry is an unknown entry of a price list that an order hangs on.
type OpenEntry struct {
	Cell string `json:"cell"` // its place in the list, as in CellError
	What string `json:"what"` // what it would pay for
	Says string `json:"says"` // as a sentence
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
	// Needs is what has to be known first; the total leaves it out.
	Needs []OpenEntry `json:"needs"`
	// Into is the total in the second currency, and Landed what a piece costs
	// once flaws and gifts are off.
	Into   *Converted `json:"into,omitempty"`
	Landed *Landed    `json:"landed,omitempty"`
}

// Unknown is the error of an order that hangs on entries the list does not have.
type Unknown struct{ Needs []OpenEntry }

func (u *Unknown) Error() string {
	more := ""
	if n := len(u.Needs) - 1; n > 0 {
		more = fmt.Sprintf(" It leaves open %d more.", n)
	}
	return u.Needs[0].Says + more + " Ask the maker, and put it into the price list."
}
