package run

import "fmt"

// NamedCharge is a charge of any other name that falls on every order.
type NamedCharge struct {
	Name string  `json:"name"`
	Rate Rate    `json:"rate"`
	By   NamedBy `json:"by"`
}

// NamedBy says what a named charge is counted by.
type NamedBy string

// A named charge falls once an order, on every piece, on every enamel of every
// piece, or once a design.
const (
	NamedOrder  NamedBy = "order"
	NamedPiece  NamedBy = "piece"
	NamedColour NamedBy = "colour" // once for each enamel of a version
	NamedDesign NamedBy = "design"
)

// named writes the charges that fall on one item.
func (s *sheet) named(p *priced) {
	for i, n := range s.list.Named {
		cell := fmt.Sprintf("named[%d].rate", i)
		switch n.By {
		case NamedPiece:
			s.charge(p, KeyNamed, n.Name, Charge{n.Rate, PerPiece}, 1, cell, true)
		case NamedColour:
			if p.item.Enamels > 0 {
				s.onceFor(p, KeyNamed, n.Name+", "+counted(p.item.Enamels, "colour", "colours"), n.Rate, p.item.Enamels, cell)
			}
		case NamedDesign:
			if p.firstOfDesign {
				s.onceFor(p, KeyNamed, n.Name+", once", n.Rate, 1, cell)
			}
		}
	}
}

// namedByOrder writes those that fall once an order.
func (s *sheet) namedByOrder() {
	for i, n := range s.list.Named {
		if n.By == NamedOrder {
			s.once(KeyNamed, n.Name+", once", n.Rate, 1, fmt.Sprintf("named[%d].rate", i))
		}
	}
}

func (v *validation) named(all []NamedCharge) {
	if len(all) > mostRows {
		v.say("named", "A list has at most %d charges of other names, not %d.", mostRows, len(all))
	}
	seen := map[string]bool{}
	for i, n := range all {
		cell := fmt.Sprintf("named[%d]", i)
		v.name(cell+".name", n.Name, seen)
		v.amount(cell+".rate", n.Rate)
		switch n.By {
		case NamedOrder, NamedPiece, NamedColour, NamedDesign:
		default:
			v.say(cell+".by", "A charge falls on the order, the piece, the colour or the design, not on %q.", string(n.By))
		}
	}
}
