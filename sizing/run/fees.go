package run

import (
	"github.com/shopspring/decimal"
)

// Fees are what is paid beside the maker's bill: duty and tax where the order
// comes in, and the bank. One that is not known is left out, and the quote says
// so.
type Fees struct {
	Duty Rate `json:"duty"` // percent
	// DutyOnShipping is true where duty falls on the goods with their carriage.
	DutyOnShipping bool `json:"dutyOnShipping"`
	Tax            Rate `json:"tax"`         // percent of goods, carriage and duty
	BankFee        Rate `json:"bankFee"`     // once an order
	BankPercent    Rate `json:"bankPercent"` // percent of goods and carriage
}

// fees writes duty, tax and bank, in this order, as shares of shown lines.
func (s *sheet) fees() {
	f := &s.list.Fees
	goods := s.sum(func(l *Line) bool { return l.Key != KeyShipping })
	landed := s.sum(func(*Line) bool { return true })
	on, of := goods, "of the goods"
	if f.DutyOnShipping {
		on, of = landed, "of goods and shipping"
	}
	s.percent(KeyDuty, "Duty", f.Duty, on, of)
	s.percent(KeyTax, "Tax", f.Tax, s.sum(func(*Line) bool { return true }), "of goods, shipping and duty")
	s.percent(KeyBank, "Bank", f.BankPercent, landed, "of goods and shipping")
	switch {
	case !f.BankFee.Known():
		if !f.BankPercent.Known() {
			s.without = append(s.without, "bank fee")
		}
	case !f.BankFee.free():
		s.once(KeyBank, "Bank fee, once", f.BankFee, 1, "")
	}
}

// percent writes a share that a list states, and notes one that it does not.
func (s *sheet) percent(key, what string, r Rate, on decimal.Decimal, of string) {
	switch {
	case !r.Known() && key != KeyBank:
		s.without = append(s.without, map[string]string{KeyDuty: "duty", KeyTax: "tax"}[key])
	case r.Known() && !r.free():
		s.share(key, what+", "+r.String()+" % "+of, r.Value(), on, false)
	}
}

func (v *validation) fees(f *Fees) {
	v.percent("fees.duty", f.Duty, absurdPercent)
	v.percent("fees.tax", f.Tax, absurdPercent)
	v.percent("fees.bankPercent", f.BankPercent, whole)
	v.amount("fees.bankFee", f.BankFee)
}
