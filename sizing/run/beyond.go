package run

import "fmt"

// BeyondPrice is one thing beside the price in which makers may differ.
type BeyondPrice struct {
	What string   `json:"what"`
	Says []string `json:"says"` // one for each maker
	// Differs is false where all say the same.
	Differs bool `json:"differs"`
}

// notSaid stands where a list says nothing.
const notSaid = "not said"

// beyond sets what makers say beside each other.
func beyond(makers []Maker) []BeyondPrice {
	all := []BeyondPrice{}
	for _, row := range []struct {
		what string
		of   func(*PriceList) string
	}{
		{"Days of making", deliveryDays},
		{"Days of shipping", shippingDays},
		{"Fewest of a design", func(l *PriceList) string { return orNone(l.Least.Design, "any number") }},
		{"Fewest of a version", func(l *PriceList) string { return orNone(l.Least.Version, "any number") }},
		{"Colours in the price", func(l *PriceList) string { return fmt.Sprint(l.Colours.Included) }},
		{"Proof rounds in the price", func(l *PriceList) string { return orNone(l.Proofs.Included, notSaid) }},
		{"The die is kept", dieKept},
		{"Pieces that may be missing", func(l *PriceList) string { return share(l.Count.Under, l.Count.UnderBilled) }},
		{"Pieces that may be too many", func(l *PriceList) string { return share(l.Count.Over, l.Count.OverBilled) }},
		{"Faulty pieces", func(l *PriceList) string { return orNotSaid(l.Notes.Faults) }},
		{"What the maker keeps", func(l *PriceList) string { return orNotSaid(l.Notes.Keeps) }},
		{"Other", func(l *PriceList) string { return orNotSaid(l.Notes.Other) }},
	} {
		b := BeyondPrice{What: row.what, Says: []string{}}
		for i := range makers {
			b.Says = append(b.Says, row.of(&makers[i].List))
			b.Differs = b.Differs || b.Says[i] != b.Says[0]
		}
		all = append(all, b)
	}
	return all
}

func deliveryDays(l *PriceList) string {
	var all []string
	for _, c := range l.Delivery.Choices {
		if c.Days > 0 {
			all = append(all, fmt.Sprintf("%d (%s)", c.Days, c.Name))
		}
	}
	return orNotSaid(joined(all))
}

func shippingDays(l *PriceList) string {
	var all []string
	for _, c := range l.Shipping.Classes {
		if c.Days > 0 && l.Shipping.By == ShipClass {
			all = append(all, fmt.Sprintf("%d (%s)", c.Days, c.Name))
		}
	}
	return orNotSaid(joined(all))
}

func dieKept(l *PriceList) string {
	if l.Die.KeptMonths == 0 {
		return notSaid
	}
	return counted(l.Die.KeptMonths, "month", "months")
}

func share(r Rate, billed bool) string {
	switch {
	case !r.Known():
		return notSaid
	case r.free():
		return "none"
	case billed:
		return "up to " + r.String() + " %, billed"
	}
	return "up to " + r.String() + " %, not billed"
}

func orNone(n int, none string) string {
	if n == 0 {
		return none
	}
	return fmt.Sprint(n)
}

func orNotSaid(s string) string {
	if s == "" {
		return notSaid
	}
	return s
}
