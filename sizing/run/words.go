package run

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Amount prints an amount in the quote's currency: "EUR 33.00".
func Amount(d decimal.Decimal, q Quote) string { return unit.Money(d, q.Currency, q.MinorDigits) }

// About prints a figure for one piece, marked as derived: "about EUR 1.234".
func About(d decimal.Decimal, q Quote) string { return unit.About(d, q.Currency, q.MinorDigits) }

// Step puts the difference between two quotes of the same order into words:
// "about 0.11 a piece, 33.00 in all", or that there is none. The place beyond
// the currency's own is left out when it is 0.
func Step(from, to Quote) string {
	piece, total := difference(from, to)
	return stepWords(piece, total, to.MinorDigits)
}

func stepWords(piece, total decimal.Decimal, digits int) string {
	if total.IsZero() && piece.IsZero() {
		return "nothing more to pay"
	}
	places := digits
	if !piece.Equal(piece.Truncate(int32(digits))) {
		places++
	}
	return fmt.Sprintf("about %s a piece, %s in all", signed(piece, places), signed(total, digits))
}

func signed(d decimal.Decimal, digits int) string {
	if d.IsNegative() {
		return unit.Figure(d.Neg(), digits) + " less"
	}
	return unit.Figure(d, digits)
}

// difference returns how much dearer one quote is than another, a piece (from
// the shown totals, rounded once, to one place more than the currency) and in all.
func difference(from, to Quote) (piece, total decimal.Decimal) {
	n1, n2 := decimal.NewFromInt(int64(from.Pieces)), decimal.NewFromInt(int64(to.Pieces))
	total = to.Total.Sub(from.Total)
	if n1.IsZero() || n2.IsZero() {
		return decimal.Zero, total
	}
	piece = to.Total.Mul(n1).Sub(from.Total.Mul(n2)).DivRound(n1.Mul(n2), int32(to.MinorDigits)+1)
	return piece, total
}
