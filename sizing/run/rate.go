package run

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// Rate is an exact figure of a price list that may be unknown; its zero value
// is. On the wire it is text, empty for unknown.
type Rate struct {
	value decimal.Decimal
	known bool
}

// Of makes a known rate.
func Of(d decimal.Decimal) Rate { return Rate{value: d, known: true} }

// Value is the figure; 0 when it is unknown.
func (r Rate) Value() decimal.Decimal { return r.value }

// Known says whether the list states it.
func (r Rate) Known() bool { return r.known }

// free says that it is known to be nothing.
func (r Rate) free() bool { return r.known && r.value.IsZero() }

func (r Rate) String() string {
	if !r.known {
		return ""
	}
	return r.value.String()
}

// MarshalText writes the figure, or nothing.
func (r Rate) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what MarshalText writes.
func (r *Rate) UnmarshalText(text []byte) error {
	*r = Rate{}
	if len(text) == 0 {
		return nil
	}
	d, err := decimal.NewFromString(string(text))
	if err != nil {
		return fmt.Errorf("run: %q is no figure: %w", text, err)
	}
	*r = Of(d)
	return nil
}

// ChargeBy says what a charge is counted by.
type ChargeBy string

// The ways to charge what comes on top of the unit price.
const (
	PerPiece ChargeBy = "piece"   // an amount a piece
	Percent  ChargeBy = "percent" // a share of the unit price, in percent
	SetUp    ChargeBy = "set-up"  // an amount once for each version made on a new die
)

// Charge is a rate and what it is counted by.
type Charge struct {
	Rate Rate     `json:"rate"`
	By   ChargeBy `json:"by"`
}

// KindCharge is one kind of a thing and what it costs on top.
type KindCharge struct {
	ID     string `json:"id"`
	Charge Charge `json:"charge"`
}

// Kinds is what the kinds of one thing cost on top of the unit price: those
// listed, and every other one.
type Kinds struct {
	Listed []KindCharge `json:"listed"`
	Others Charge       `json:"others"`
}

// OtherKinds stands for every kind that is not listed, where kinds are named.
const OtherKinds = "every other"

// of returns the charge for a kind, and its cell below the cell of the kinds.
func (k Kinds) of(id string) (c Charge, cell string) {
	for i, one := range k.Listed {
		if one.ID == id {
			return one.Charge, fmt.Sprintf("listed[%d].charge.rate", i)
		}
	}
	return k.Others, "others.rate"
}

// tally adds up charges on one item: what is paid by the piece, and once.
type tally struct {
	price       Rate // the unit price
	each, once  decimal.Decimal
	byPiece     bool
	atOnce      bool
	missing     []string // cells that would have to be known
	priceWanted bool     // a percentage of a unit price that is not known
}

// add counts a charge n times.
func (t *tally) add(c Charge, n int, cell string) {
	if n <= 0 {
		return
	}
	times := decimal.NewFromInt(int64(n))
	switch {
	case !c.Rate.Known():
		t.missing = append(t.missing, cell)
	case c.By == SetUp:
		t.once, t.atOnce = t.once.Add(c.Rate.Value().Mul(times)), true
	case c.By == Percent:
		t.priceWanted = t.priceWanted || !t.price.Known() && !c.Rate.free()
		t.each, t.byPiece = t.each.Add(t.price.Value().Mul(c.Rate.Value()).Shift(-2).Mul(times)), true
	default:
		t.each, t.byPiece = t.each.Add(c.Rate.Value().Mul(times)), true
	}
}
