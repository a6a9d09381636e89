package run

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Exchange is a rate that the person typed, of the day it was typed for.
type Exchange struct {
	Currency    string          `json:"currency"`    // ISO 4217 code of the second currency
	MinorDigits int             `json:"minorDigits"` // its decimals
	Rate        decimal.Decimal `json:"rate"`        // of the second currency for 1 of the list's
	Dated       string          `json:"dated"`       // as typed; empty when not said
}

// Converted is a total in the second currency. It is not a bill: a bank's rate
// differs, so it is marked "about".
type Converted struct {
	Currency  string          `json:"currency"`
	Total     decimal.Decimal `json:"total"`
	PerPiece  decimal.Decimal `json:"perPiece"`
	TotalSays string          `json:"totalSays"`
	EachSays  string          `json:"eachSays"`
	// RateSays is the rate and its day: "at EUR 0.92 for USD 1, of 2026-05-04".
	RateSays string `json:"rateSays"`
}

// Bounds of a rate of exchange (this tool's choice: past them it is a slip).
var (
	leastRate = decimal.New(1, -6)
	mostRate  = decimal.New(1, 6)
)

func (e *Exchange) check() error {
	digits, ok := unit.MinorDigits(e.Currency)
	switch {
	case !ok:
		return refuse(fmt.Sprintf("%q is no currency code.", e.Currency), "Type its three letters, such as EUR.")
	case e.MinorDigits < 0 || e.MinorDigits > digits:
		return refuse(fmt.Sprintf("%s has %d decimals, not %d.", e.Currency, digits, e.MinorDigits), "Correct them.")
	case e.Rate.LessThan(leastRate) || e.Rate.GreaterThan(mostRate):
		return refuse(fmt.Sprintf("%s is no rate of exchange.", e.Rate), fmt.Sprintf("Type how much %s one unit of the list's currency is.", e.Currency))
	}
	return nil
}

// Bring puts an amount of the list's currency into the second one, rounded once.
func (e *Exchange) Bring(d decimal.Decimal) (decimal.Decimal, error) {
	if err := e.check(); err != nil {
		return decimal.Zero, err
	}
	return unit.RoundMoney(d.Mul(e.Rate), e.MinorDigits), nil
}

// convert puts a quote's total into a second currency.
func (q *Quote) convert(e *Exchange) error {
	if e == nil || e.Currency == q.Currency {
		return nil
	}
	total, err := e.Bring(q.Total)
	if err != nil {
		return err
	}
	c := &Converted{Currency: e.Currency, Total: total}
	c.PerPiece = c.Total.DivRound(decimal.NewFromInt(int64(q.Pieces)), int32(e.MinorDigits)+1)
	c.TotalSays = "about " + unit.Money(c.Total, e.Currency, e.MinorDigits)
	c.EachSays = unit.About(c.PerPiece, e.Currency, e.MinorDigits)
	c.RateSays = fmt.Sprintf("at %s for %s\u00a01", unit.Money(e.Rate, e.Currency, max(e.MinorDigits, decimals(e.Rate))), q.Currency)
	if e.Dated != "" {
		c.RateSays += ", of " + e.Dated
	} else {
		c.RateSays += ", of no stated day"
	}
	q.Into = c
	return nil
}
