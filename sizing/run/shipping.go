package run

import (
	"fmt"
	"math"
	"strconv"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// Shipping is carriage, once an order.
type Shipping struct {
	By   ShippingBy `json:"by"`
	Flat Rate       `json:"flat"`
	// Weights holds the charge of a parcel up to a weight, rising; Further is
	// each kilogram begun past the last.
	Weights []ByWeight      `json:"weights"`
	Further Rate            `json:"further"`
	Classes []ShippingClass `json:"classes"`
}

// ShippingBy is what carriage goes by.
type ShippingBy string

// The ways to charge carriage.
const (
	ShipFlat   ShippingBy = "flat"
	ShipWeight ShippingBy = "weight"
	ShipClass  ShippingBy = "class"
)

// ByWeight is the charge of a parcel up to a weight.
type ByWeight struct {
	UpTo unit.Grams `json:"upTo"`
	Rate Rate       `json:"rate"`
}

// ShippingClass is one carrier or service.
type ShippingClass struct {
	Name string `json:"name"`
	Days int    `json:"days"` // working days; 0 when not said
	Rate Rate   `json:"rate"`
}

// shipping writes the line of carriage.
func (s *sheet) shipping(class string, items []Item) error {
	h := &s.list.Shipping
	switch h.By {
	case ShipWeight:
		return s.byWeight(h, items)
	case ShipClass:
		return s.byClass(h, class)
	}
	s.once(KeyShipping, "Shipping", h.Flat, 1, "shipping.flat")
	return nil
}

func (s *sheet) byClass(h *Shipping, name string) error {
	for i, c := range h.Classes {
		if c.Name == name || name == "" {
			s.once(KeyShipping, "Shipping, "+c.Name, c.Rate, 1, fmt.Sprintf("shipping.classes[%d].rate", i))
			return nil
		}
	}
	return refuse(fmt.Sprintf("This list has no shipping called %q.", name), "Choose one of the list's, or add it.")
}

func (s *sheet) byWeight(h *Shipping, items []Item) error {
	grams, ok := weightOf(items)
	if !ok {
		return &reduce.Refusal{What: "Shipping goes by weight here, and the weight of a piece is not known.", Do: "Give the weight, or a flat charge for shipping."}
	}
	for i, row := range h.Weights {
		if grams <= row.UpTo {
			s.once(KeyShipping, "Shipping, up to "+inGrams(row.UpTo), row.Rate, 1, fmt.Sprintf("shipping.weights[%d].rate", i))
			return nil
		}
	}
	last := len(h.Weights) - 1
	more := int(math.Ceil(float64(grams-h.Weights[last].UpTo) / 1000))
	what := fmt.Sprintf("Shipping, %s and %s", inGrams(h.Weights[last].UpTo), counted(more, "kilogram more", "kilograms more"))
	rate := h.Weights[last].Rate
	if rate.Known() && h.Further.Known() {
		rate = Of(rate.Value().Add(h.Further.Value().Mul(decimal.NewFromInt(int64(more)))))
		s.once(KeyShipping, what, rate, 1, "")
		return nil
	}
	cell := "shipping.further"
	if h.Further.Known() {
		cell = fmt.Sprintf("shipping.weights[%d].rate", last)
	}
	s.need(cell, what)
	return nil
}

// weightOf is what a parcel of all pieces weighs; ok is false when it is not
// known of one of them.
func weightOf(items []Item) (unit.Grams, bool) {
	var all unit.Grams
	for _, it := range items {
		if !(it.Weight > 0) {
			return 0, false
		}
		all += unit.Grams(float64(it.Weight) * float64(it.Quantity))
	}
	return all, true
}

func inGrams(g unit.Grams) string { return strconv.FormatFloat(float64(g), 'f', -1, 64) + " g" }

func (v *validation) shipping(h *Shipping) {
	switch h.By {
	case ShipFlat:
	case ShipWeight:
		if len(h.Weights) == 0 {
			v.say("shipping.weights", "Shipping goes by weight, and no weight has a charge.")
		}
	case ShipClass:
		if len(h.Classes) == 0 {
			v.say("shipping.classes", "Shipping goes by class, and there is none.")
		}
	default:
		v.say("shipping.by", "Shipping is flat, by weight or by class, not by %q.", string(h.By))
	}
	v.amount("shipping.flat", h.Flat)
	v.amount("shipping.further", h.Further)
	if len(h.Weights) > mostRows || len(h.Classes) > mostRows {
		v.say("shipping.weights", "A list has at most %d charges for shipping.", mostRows)
	}
	var before unit.Grams
	for i, row := range h.Weights {
		cell := fmt.Sprintf("shipping.weights[%d]", i)
		switch {
		case !(row.UpTo > 0) || row.UpTo > mostGrams:
			v.say(cell+".upTo", "%g g is no weight for a parcel.", float64(row.UpTo))
		case row.UpTo <= before:
			v.say(cell+".upTo", "%s does not come after %s; weights rise from one to the next.", inGrams(row.UpTo), inGrams(before))
		}
		before = row.UpTo
		v.amount(cell+".rate", row.Rate)
	}
	seen := map[string]bool{}
	for i, c := range h.Classes {
		cell := fmt.Sprintf("shipping.classes[%d]", i)
		v.name(cell+".name", c.Name, seen)
		v.count(cell+".days", "The days of shipping", c.Days, mostDays)
		v.amount(cell+".rate", c.Rate)
	}
}
