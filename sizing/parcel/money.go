package parcel

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/left"
	"badgewright/sizing/unit"
)

// Worth is what is known of the money of an order: the bill, and how its pieces
// are to be sold where that was planned.
type Worth struct {
	Currency    string          `json:"currency"`
	MinorDigits int             `json:"minorDigits"`
	Bill        decimal.Decimal `json:"bill"` // of the maker, landed
	// Selling is how the pieces were to be sold; its bill and pieces are the order's.
	Selling *left.Selling `json:"selling,omitempty"`
}

// TallyMoney is what a count does to the money.
type TallyMoney struct {
	// Each is what a first costs as it came, and Agreed what one would cost had
	// all that was ordered come with just the share agreed flawed.
	EachSays   string `json:"eachSays"`
	AgreedSays string `json:"agreedSays"`
	Says       string `json:"says"`
	// LeftSays compares what is left after costs with the plan; empty without one.
	LeftSays string `json:"leftSays"`
}

// of reckons with a count. While some pieces are not looked at it says so and
// gives no figures: they would be those of another parcel.
func (w *Worth) of(p *Parcel, all TallyRow, f *unit.Faults) *TallyMoney {
	if digits, ok := unit.MinorDigits(w.Currency); !ok || w.MinorDigits < 0 || w.MinorDigits > digits || w.Bill.IsNegative() {
		f.Say("worth", "The bill cannot be reckoned with: %s in %q.", w.Bill, w.Currency)
		return nil
	}
	m := &TallyMoney{}
	if all.Graded < all.Received {
		m.Says = "What a good piece costs is known once the last one is looked at."
		if left := all.Received - all.Graded; left > 1 {
			m.Says = fmt.Sprintf("What a good piece costs is known once the other %d are looked at.", left)
		}
		return m
	}
	planned := all.Ordered - allowed(all.Ordered, p.Agreed)
	m.EachSays, m.AgreedSays = w.each(all.Firsts), w.each(planned)
	switch {
	case all.Firsts == 0:
		m.Says = "There is no first in the parcel to share the bill."
	case planned <= 0:
		m.Says = fmt.Sprintf("A first costs %s.", m.EachSays)
	default:
		m.Says = fmt.Sprintf("A first costs %s; as agreed it would be %s.", m.EachSays, m.AgreedSays)
	}
	m.LeftSays = w.left(all)
	return m
}

// each is the bill shared among some pieces, "about EUR 2.345"; empty for none.
func (w *Worth) each(n int) string {
	if n <= 0 {
		return ""
	}
	return unit.About(w.Bill.DivRound(decimal.NewFromInt(int64(n)), int32(w.MinorDigits)+1), w.Currency, w.MinorDigits)
}

// sharePlaces are enough for a share of pieces to come out whole again.
const sharePlaces = 10

// left holds the plan of selling against what came of it: firsts by its
// channels, seconds as it sells those, rejects by nobody.
func (w *Worth) left(all TallyRow) string {
	if w.Selling == nil || all.Firsts+all.Seconds == 0 {
		return ""
	}
	plan := *w.Selling
	plan.Currency, plan.MinorDigits, plan.Bill, plan.Pieces = w.Currency, w.MinorDigits, w.Bill, all.Ordered
	planned, faults := left.Reckon(plan)
	if len(faults) > 0 {
		return ""
	}
	plan.Pieces = all.Firsts + all.Seconds
	plan.SecondsShare = decimal.NewFromInt(int64(100*all.Seconds)).DivRound(decimal.NewFromInt(int64(plan.Pieces)), sharePlaces)
	now, faults := left.Reckon(plan)
	if len(faults) > 0 {
		return ""
	}
	money := func(d decimal.Decimal) string { return unit.Money(d, plan.Currency, plan.MinorDigits) }
	less := planned.Total.Left.Sub(now.Total.Left)
	says := fmt.Sprintf("When all goes to plan, %s is left after costs instead of %s", money(now.Total.Left), money(planned.Total.Left))
	switch {
	case less.IsPositive():
		return fmt.Sprintf("%s: %s less.", says, money(less))
	case less.IsNegative():
		return fmt.Sprintf("%s: %s more.", says, money(less.Neg()))
	}
	return fmt.Sprintf("When all goes to plan, %s is left after costs, as planned.", money(now.Total.Left))
}
