//go:build !pin

package wire

import (
	"github.com/shopspring/decimal"

	"badgewright/sizing/pricefile"
	"badgewright/sizing/run"
)

// OrderQuoteAsk asks what an order costs by a list. What the list leaves open
// stands in the quote's needs, and its total is without them.
type OrderQuoteAsk struct {
	List  run.PriceList `json:"list"`
	Order run.Wanted    `json:"order"`
}

// MakersAsk compares price lists for an order over the quantity of one item.
type MakersAsk struct {
	Lists []run.PriceList `json:"lists"`
	Order run.Wanted      `json:"order"`
	Item  int             `json:"item"` // its place in the order
	UpTo  int             `json:"upTo"` // the most pieces looked at, 1..20000
	// Currency is the one to compare in; that of the first list when empty.
	Currency string `json:"currency"`
	// Rates bring the lists' other currencies to it.
	Rates []MakerRate `json:"rates"`
}

// MakerRate is what 1 of a currency is in the one compared in.
type MakerRate struct {
	Currency string          `json:"currency"`
	Rate     decimal.Decimal `json:"rate"`
	Dated    string          `json:"dated"`
}

// ListCheckAsk asks what is wrong in a price list.
type ListCheckAsk struct {
	List run.PriceList `json:"list"`
}

// ListCheck is a sentence for each cell that cannot be used; none when the list
// can price an order.
type ListCheck struct {
	Cells []run.CellError `json:"cells"`
}

// PriceFileAsk reads a price list from text, or from the bytes of a file beside
// the request.
type PriceFileAsk struct {
	Text string `json:"text"` // pasted; empty for a file
	// Into is the list that a pasted block changes. A text that starts with a
	// "price list" line is a list of its own, and keeps only the ID.
	Into run.PriceList `json:"into"`
}

// PriceFileRead is what was read. A list with problems must not be used.
type PriceFileRead struct {
	List     run.PriceList       `json:"list"`
	Problems []pricefile.Problem `json:"problems"`
	Notes    []string            `json:"notes"`
	Words    string              `json:"words"` // in one sentence
}

// PriceFileWriteAsk writes a price list as CSV; the answer comes with its bytes.
type PriceFileWriteAsk struct {
	List run.PriceList `json:"list"`
}

// PriceFileWritten names the file.
type PriceFileWritten struct {
	FileName string `json:"fileName"`
}

// FromQuotesAsk proposes a price list from plain quotes, one a line: "150 at 30
// mm with 3 colours: 412.50".
type FromQuotesAsk struct {
	Text string `json:"text"`
	// Base gives the proposed list its ID, name, currency and decimals.
	Base run.PriceList `json:"base"`
}

// NewListAsk asks for a price list of which nothing is known yet.
type NewListAsk struct {
	Project  Project `json:"project"`
	Name     string  `json:"name"`
	Currency string  `json:"currency"`
}

// NewList is a list with an ID that the project does not have.
type NewList struct {
	List run.PriceList `json:"list"`
}
