package run

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Amount prints an amount in the quote's currency: "EUR 33.00".
func Amount(d decimal.Decimal, q Quote) string { return unit.Money(d, q.Currency, q.MinorDigits) }

// About prints a figure for one piece, marked as derived: "about EUR 1.234".
func About(d decimal.Decimal, q Quote) string { return unit.About(d, q.Currency, q.MinorDigits) }

// say puts a quote's amounts into words.
func (q *Quote) say() {
	q.TotalSays, q.EachSays = Amount(q.Total, *q), About(q.PerPiece, *q)
	for i := range q.Lines {
		l := &q.Lines[i]
		l.Says = Amount(l.Amount, *q)
		if l.Count > 1 {
			l.SumSays = fmt.Sprintf("%d\u00a0× %s", l.Count, unit.Money(l.Each, q.Currency, max(q.MinorDigits, decimals(l.Each))))
		}
	}
}

// decimals counts the digits behind the point of an exact rate.
func decimals(d decimal.Decimal) int {
	_, behind, _ := strings.Cut(d.String(), ".")
	return len(behind)
}

// Step puts the difference between two quotes of the same order into words:
// "about EUR 0.11 a piece, EUR 33.00 in all", or that there is none.
func Step(from, to Quote) string {
	piece, total := difference(from, to)
	if total.IsZero() && piece.IsZero() {
		return "nothing more to pay"
	}
	signed := func(d decimal.Decimal, digits int) string {
		if d.IsNegative() {
			return unit.Money(d.Neg(), to.Currency, digits) + " less"
		}
		return unit.Money(d, to.Currency, digits)
	}
	return fmt.Sprintf("about %s a piece, %s in all", signed(piece, placesFor(piece, to.MinorDigits)), signed(total, to.MinorDigits))
}

// placesFor returns how many decimals show an amount a piece: those of the
// currency, and one more where that is not 0.
func placesFor(piece decimal.Decimal, digits int) int {
	if piece.Equal(piece.Truncate(int32(digits))) {
		return digits
	}
	return digits + 1
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

// counted says a number of things: "1 ring", "2 rings".
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func pieces(n int) string { return counted(n, "piece", "pieces") }

func are(n int) string {
	if n == 1 {
		return "1 is"
	}
	return fmt.Sprintf("%d are", n)
}

// joined lists words: "a, b and c".
func joined(all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}
