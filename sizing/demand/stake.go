package demand

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Bill is what a number of pieces costs in all, landed; ok is false for a
// number that cannot be ordered, as below a maker's minimum. None costs nothing
// and is not asked for.
type Bill func(pieces int) (total decimal.Decimal, ok bool)

// Stake is what a piece brings. Money in exact decimals, of one currency.
type Stake struct {
	Currency    string `json:"currency"`
	MinorDigits int    `json:"minorDigits"`
	// Each is what a good piece leaves when it is sold, before the maker's bill:
	// price less fees, posting and packing.
	Each decimal.Decimal `json:"each"`
	// Second is the same for a piece with a small flaw, of which there are
	// SecondsShare percent; all of them find a buyer.
	Second       decimal.Decimal `json:"second"`
	SecondsShare decimal.Decimal `json:"secondsShare"`
	// Leftover is what a good piece brings that found no buyer, such as by a
	// later clearance; often 0.
	Leftover decimal.Decimal `json:"leftover"`
	// Missed is what a buyer who finds none costs in good will; it counts for
	// what is best, not for what is lost in money.
	Missed decimal.Decimal `json:"missed"`
	// Free is the number of good pieces that are given away in any case.
	Free int `json:"free"`
}

// Bounds past which a figure is a slip of the keys (this tool's choice).
var (
	absurd  = decimal.NewFromInt(100_000_000)
	hundred = decimal.NewFromInt(100)
)

func (s Stake) check(f *unit.Faults) {
	if digits, ok := unit.MinorDigits(s.Currency); !ok || s.MinorDigits < 0 || s.MinorDigits > max(digits, 2) {
		f.Say("stake.currency", "%q with %d decimals is no currency; it has three capital letters, such as EUR.", s.Currency, s.MinorDigits)
	}
	for _, m := range []struct {
		at, name string
		d        decimal.Decimal
		negative bool
	}{
		{"each", "What a piece leaves", s.Each, true},
		{"second", "What a piece with a flaw leaves", s.Second, true},
		{"leftover", "What a leftover piece brings", s.Leftover, false},
		{"missed", "What a missed buyer costs", s.Missed, false},
	} {
		switch {
		case m.d.Abs().GreaterThanOrEqual(absurd):
			f.Say("stake."+m.at, "%s is %s, which is too much for a piece; look for a missing decimal point.", m.name, m.d)
		case m.d.IsNegative() && !m.negative:
			f.Say("stake."+m.at, "%s is %s; it cannot be below 0.", m.name, m.d)
		}
	}
	if s.SecondsShare.IsNegative() || s.SecondsShare.GreaterThan(hundred) {
		f.Say("stake.secondsShare", "The share of pieces with a flaw is %s percent; it runs from 0 to 100.", s.SecondsShare)
	}
	if s.Leftover.GreaterThan(s.Each) && !s.Leftover.IsNegative() {
		f.Say("stake.each", "A piece sold leaves %s, less than the %s that one left over brings; raise its price or lower its costs.", s.Each, s.Leftover)
	}
	f.Whole("stake.free", "The number of pieces given away", s.Free, 0, MostWanted)
}

// flaws is the share of pieces with a flaw in millionths of a percent: rates
// have six places at most.
type flaws int64

const allFlawed = 100_000_000

func (s Stake) flaws() flaws { return flaws(s.SecondsShare.Shift(6).Round(0).IntPart()) }

// of is how many of a number have a flaw, rounded to a whole one, half up.
func (f flaws) of(pieces int) int { return int((int64(f)*int64(pieces) + allFlawed/2) / allFlawed) }

// flawed is how many of a number have a flaw.
func (s Stake) flawed(pieces int) int { return s.flaws().of(pieces) }

// sellable is how many good pieces there are to sell.
func (s Stake) sellable(pieces int) int { return max(0, pieces-s.flawed(pieces)-s.Free) }

// brought is what pieces bring when a number is wanted, before the bill.
func (s Stake) brought(pieces, wanted int) decimal.Decimal {
	good := s.sellable(pieces)
	sold := min(good, wanted)
	n := func(k int) decimal.Decimal { return decimal.NewFromInt(int64(k)) }
	return s.Each.Mul(n(sold)).Add(s.Leftover.Mul(n(good - sold))).Add(s.Second.Mul(n(s.flawed(pieces))))
}

// covering is the least number wanted at which nothing is lost; beyond is true
// when not even selling all covers the bill.
func (s Stake) covering(pieces int, bill decimal.Decimal) (wanted int, beyond bool) {
	good := s.sellable(pieces)
	short := bill.Sub(s.brought(pieces, 0))
	if !short.IsPositive() {
		return 0, false
	}
	gain := s.Each.Sub(s.Leftover)
	if !gain.IsPositive() {
		return 0, true
	}
	n := short.Div(gain).Ceil()
	for n.Sub(decimal.NewFromInt(1)).Mul(gain).GreaterThanOrEqual(short) {
		n = n.Sub(decimal.NewFromInt(1)) // the division was rounded
	}
	for n.Mul(gain).LessThan(short) {
		n = n.Add(decimal.NewFromInt(1))
	}
	if n.GreaterThan(decimal.NewFromInt(int64(good))) {
		return 0, true
	}
	return int(n.IntPart()), false
}

func (s Stake) money(d decimal.Decimal) string { return unit.Money(d, s.Currency, s.MinorDigits) }

// pieces puts a number of pieces into words.
func piecesOf(n int) string {
	if n == 1 {
		return "1 piece"
	}
	return fmt.Sprintf("%d pieces", n)
}
