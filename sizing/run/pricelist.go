// Package run holds an order and what it costs: price lists and quotes. Rates
// are exact decimals; every line of a quote is rounded once.
package run

import (
	"github.com/shopspring/decimal"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// ChargeBy says what a charge is counted by.
type ChargeBy string

// The ways to charge what comes on top of the unit price.
const (
	PerPiece ChargeBy = "piece"   // an amount a piece
	Percent  ChargeBy = "percent" // a share of the unit price, in percent
)

// Charge is a rate and what it is counted by.
type Charge struct {
	Rate decimal.Decimal `json:"rate"`
	By   ChargeBy        `json:"by"`
}

// Break is one row of unit prices: it holds from a number of pieces up to the
// next row.
type Break struct {
	From int `json:"from"` // pieces, 1 or more
	// Unit holds one price a piece for each size class, for soft enamel.
	Unit []decimal.Decimal `json:"unit"`
}

// PriceList is one maker's prices.
type PriceList struct {
	ID          string          `json:"id"`
	Name        string          `json:"name"`
	Invented    bool            `json:"invented"`    // made up for the demo; the page says so
	Currency    string          `json:"currency"`    // ISO 4217 code
	MinorDigits int             `json:"minorDigits"` // decimals of the currency
	Die         decimal.Decimal `json:"die"`         // once a design
	// Sizes holds the greatest size, in mm, of each size class, rising; SizeBy
	// says which measure counts (longest or mean).
	Sizes       []unit.MM       `json:"sizes"`
	SizeBy      sizing.SizeBy   `json:"sizeBy"`
	Breaks      []Break         `json:"breaks"`
	Included    int             `json:"included"`    // enamels in the unit price
	ExtraColour Charge          `json:"extraColour"` // each further enamel
	Hard        Charge          `json:"hard"`        // hard instead of soft enamel
	Fancy       Charge          `json:"fancy"`       // each enamel with a fill set apart: glitter, pearl and the like
	Printed     Charge          `json:"printed"`     // each colour printed on top
	PrintSetUp  decimal.Decimal `json:"printSetUp"`  // once a design, each colour printed on top
	SecondPost  decimal.Decimal `json:"secondPost"`  // a piece
	BackStamp   decimal.Decimal `json:"backStamp"`   // once a design, lettering or a mark on the back
	Shipping    decimal.Decimal `json:"shipping"`    // once an order
	Minimum     int             `json:"minimum"`     // least pieces a design
}
