package run

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
)

// Delivery is the ways in which a maker delivers, the usual one first. Without
// any there is nothing to choose.
type Delivery struct {
	Choices []DeliveryChoice `json:"choices"`
}

// DeliveryChoice is one way: patient orders are cheaper, a rush is dearer.
// Where one of Off, More and Fee is known the others are nothing.
type DeliveryChoice struct {
	Name string     `json:"name"`
	Days int        `json:"days"` // working days of making; 0 when not said
	Off  Rate       `json:"off"`  // percent taken off
	More Rate       `json:"more"` // percent put on
	On   DeliveryOn `json:"on"`   // what the percents are of
	Fee  Rate       `json:"fee"`  // once an order
}

// DeliveryOn says what a share for delivery falls on.
type DeliveryOn string

// A maker discounts the pieces, not the die, as a rule (common practice, no
// published source).
const (
	OnPieces DeliveryOn = "pieces" // all that is counted by the piece
	OnAll    DeliveryOn = "all"    // dies, set-ups and proofs too; never the shipping
)

// choice finds the way asked for, the usual one for an empty name.
func (d *Delivery) choice(name string) (int, error) {
	if len(d.Choices) == 0 && name == "" {
		return -1, nil
	}
	if name == "" {
		return 0, nil
	}
	for i, c := range d.Choices {
		if c.Name == name {
			return i, nil
		}
	}
	return -1, &reduce.Refusal{What: fmt.Sprintf("This list has no delivery called %q.", name), Do: "Choose one of the list's, or add it."}
}

// delivery writes what the chosen way takes off or puts on, as shares of shown
// lines.
func (s *sheet) delivery(name string) error {
	i, err := s.list.Delivery.choice(name)
	if err != nil || i < 0 {
		return err
	}
	c := &s.list.Delivery.Choices[i]
	if !c.Off.Known() && !c.More.Known() && !c.Fee.Known() {
		s.need(fmt.Sprintf("delivery.choices[%d].off", i), "Delivery: "+c.Name)
		return nil
	}
	base := s.sum(func(l *Line) bool { return c.On == OnAll || l.byPiece })
	of := "the pieces"
	if c.On == OnAll {
		of = "all before shipping"
	}
	share := func(r Rate, word string) {
		if r.Known() && !r.free() {
			s.share(KeyDelivery, fmt.Sprintf("Delivery %s: %s %% %s, of %s", c.Name, r, word, of), r.Value(), base, word == "off")
		}
	}
	share(c.Off, "off")
	share(c.More, "more")
	if c.Fee.Known() && !c.Fee.free() {
		s.once(KeyDelivery, "Delivery "+c.Name+", once", c.Fee, 1, "")
	}
	return nil
}

// share writes a percentage of shown amounts, taken off when less.
func (s *sheet) share(key, what string, percent, base decimal.Decimal, less bool) {
	each := base.Mul(percent).Shift(-2)
	if less {
		each = each.Neg()
	}
	s.put(Line{Key: key, What: what, Count: 1, Each: each, Item: wholeOrder})
}

func (v *validation) delivery(d *Delivery) {
	if len(d.Choices) > mostRows {
		v.say("delivery.choices", "A list has at most %d ways of delivery, not %d.", mostRows, len(d.Choices))
	}
	seen := map[string]bool{}
	for i, c := range d.Choices {
		cell := fmt.Sprintf("delivery.choices[%d]", i)
		v.name(cell+".name", c.Name, seen)
		v.count(cell+".days", "The days of a delivery", c.Days, mostDays)
		v.percent(cell+".off", c.Off, whole)
		v.percent(cell+".more", c.More, absurdPercent)
		v.amount(cell+".fee", c.Fee)
		if c.On != OnPieces && c.On != OnAll {
			v.say(cell+".on", "A share for delivery falls on the pieces or on all, not on %q.", string(c.On))
		}
	}
}
