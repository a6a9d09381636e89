package run

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Keys of the lines of a quote.
const (
	KeyDie        = "die"
	KeyFurtherDie = "further die"
	KeyPieces     = "pieces"
	KeyMaking     = "making"
	KeyPlating    = "plating"
	KeyThickness  = "thickness"
	KeyColours    = "colours"
	KeyHard       = "hard" // the fill, where it is charged for
	KeyFancy      = "fancy"
	KeyPrinted    = "printed"
	KeyPrintSetUp = "print set-up"
	KeyCutOuts    = "cut-outs"
	KeyParts      = "parts"
	KeyRings      = "rings"
	KeyChains     = "chains"
	KeyPost       = "post"
	KeyFastening  = "fastening"
	KeyStamp      = "back stamp"
	KeyDome       = "dome"
	KeyPackaging  = "packaging"
	KeyCard       = "card"
	KeyCardSetUp  = "card set-up"
	KeyNamed      = "named"
	KeyProofs     = "proofs"
	KeyDelivery   = "delivery"
	KeyShipping   = "shipping"
	KeyDuty       = "duty"
	KeyTax        = "tax"
	KeyBank       = "bank"
)

// sizeSlack is how far above the greatest size of a class a badge may measure
// and still belong to it: sizes are shown to a tenth of a millimetre.
const sizeSlack unit.MM = 0.05

// Price returns what items cost by a list, ordered on its usual terms.
func Price(l PriceList, items []Item) (Quote, error) { return PriceOrder(l, Wanted{Items: items}) }

// PriceOrder returns what an order costs by a list: every line shown and
// rounded once, the total their sum. What the list cannot price is a
// *reduce.Refusal, and what it leaves open an *Unknown, never a wrong total.
func PriceOrder(l PriceList, o Wanted) (Quote, error) {
	q, err := Known(l, o)
	if err == nil && len(q.Needs) > 0 {
		err = &Unknown{q.Needs}
	}
	if err != nil {
		return Quote{}, err
	}
	return q, nil
}

// Known is PriceOrder for a list that may leave entries open: the quote then
// holds the lines that are known, and Needs the others.
func Known(l PriceList, o Wanted) (Quote, error) {
	q, err := bill(&l, &o)
	if err != nil {
		return Quote{}, err
	}
	if len(q.Needs) == 0 {
		for _, m := range CheaperMore(l, o) {
			q.Notes = append(q.Notes, m.Words(q, len(o.Items) > 1))
		}
	}
	if err := q.convert(o.Terms.Into); err != nil {
		return Quote{}, err
	}
	if q.Landed, err = landed(&l, &o, &q); err != nil {
		return Quote{}, err
	}
	q.say()
	return q, nil
}

// bill is Known without its notes and words.
func bill(l *PriceList, o *Wanted) (Quote, error) {
	if err := l.check(); err != nil {
		return Quote{}, err
	}
	return l.bill(o)
}

// bill is what an order costs by a list that has been checked.
func (l *PriceList) bill(o *Wanted) (Quote, error) {
	if len(o.Items) == 0 {
		return Quote{}, refuse("There is nothing in the order yet.", "Add a design.")
	}
	if err := l.minimums(o.Items); err != nil {
		return Quote{}, err
	}
	s := &sheet{list: l}
	if err := s.order(o); err != nil {
		return Quote{}, err
	}
	q := Quote{Currency: l.Currency, MinorDigits: l.MinorDigits, Invented: l.Invented, Notes: []string{}, Lines: s.lines, Needs: append([]OpenEntry{}, s.needs...)}
	for _, it := range o.Items {
		q.Pieces += it.Quantity
	}
	q.Total = s.sum(func(*Line) bool { return true })
	q.PerPiece = q.Total.DivRound(decimal.NewFromInt(int64(q.Pieces)), int32(l.MinorDigits)+1)
	if len(s.without) > 0 {
		q.Notes = append(q.Notes, "Without "+joined(s.without)+", of which the price list says nothing.")
	}
	return q, nil
}

// order writes the lines of every item, then those of the whole.
func (s *sheet) order(o *Wanted) error {
	cut, designs, dies := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for i := range o.Items {
		it := &o.Items[i]
		shares := s.list.Die.shares(it)
		p := &priced{item: it, at: i, firstOfDesign: !designs[it.die()]}
		if len(o.Items) > 1 {
			p.named = named(it)
		}
		p.paysDie = !cut[shares] && s.list.Die.cut(it)
		if err := s.item(p, o.Items); err != nil {
			return err
		}
		if p.paysDie {
			cut[shares], dies[it.die()] = true, true
		}
		designs[it.die()] = true
	}
	s.proofs(o.Terms.Rounds, len(dies))
	s.namedByOrder()
	if err := s.delivery(o.Terms.Delivery); err != nil {
		return err
	}
	if err := s.shipping(o.Terms.Shipping, o.Items); err != nil {
		return err
	}
	s.fees()
	return nil
}

// item writes what one item adds to a quote.
func (s *sheet) item(p *priced, all []Item) error {
	l, it := s.list, p.item
	if err := it.check(); err != nil {
		return err
	}
	class, err := l.class(it)
	if err != nil {
		return err
	}
	row, err := l.row(l.counted(all, p.at))
	if err != nil {
		return err
	}
	s.dies(p, class)
	s.pieces(p, row, class)
	s.metal(p)
	s.colours(p)
	s.shape(p)
	s.fixing(p)
	s.pack(p)
	s.named(p)
	return nil
}

// pieces writes the line of the unit price.
func (s *sheet) pieces(p *priced, row, class int) {
	l := s.list
	p.price = l.Pieces.Breaks[row].Unit[class]
	what := fmt.Sprintf("Pieces up to %s, price from %s", unit.InMM(l.Pieces.Sizes[class], 1), pieces(l.Pieces.Breaks[row].From))
	s.charge(p, KeyPieces, what, Charge{p.price, PerPiece}, 1, fmt.Sprintf("pieces.breaks[%d].unit[%d]", row, class), true)
}

// named tells the lines of one item from those of the others.
func named(it *Item) string {
	label := it.Design
	if it.Version != "" {
		label = strings.TrimPrefix(label+", "+it.Version, ", ")
	}
	if label == "" {
		return ""
	}
	return " (" + label + ")"
}

// minimums refuses a design, or a version, of which too few are asked for.
func (l *PriceList) minimums(items []Item) error {
	of := map[string]int{}
	for _, it := range items {
		if it.Quantity < 1 {
			return refuse("The order has no number of pieces.", "Say how many pieces you want.")
		}
		if it.Quantity > mostPieces {
			return refuse(fmt.Sprintf("%d pieces are more than a price list is made for.", it.Quantity), fmt.Sprintf("Give at most %d.", mostPieces))
		}
		of[it.die()] += it.Quantity
	}
	for _, it := range items {
		for _, m := range []struct {
			n, least int
			of       string
		}{{of[it.die()], l.Least.Design, "design"}, {it.Quantity, l.Least.Version, "version"}} {
			if m.n < m.least {
				return refuse(fmt.Sprintf("This maker takes no order below %d pieces of a %s, and %s asked for.", m.least, m.of, are(m.n)), fmt.Sprintf("Order %d or more, or use another price list.", m.least))
			}
		}
	}
	return nil
}

// measure is the size of an item by which the list's classes go.
func (l *PriceList) measure(it *Item) unit.MM {
	if l.Pieces.SizeBy == sizing.ByMean {
		return it.Mean
	}
	return it.Longest
}

// class returns the size class of an item: the first it fits into.
func (l *PriceList) class(it *Item) (int, error) {
	m := l.measure(it)
	if !(m > 0) {
		return 0, refuse("The design has no size yet.", "Give it one.")
	}
	for i, most := range l.Pieces.Sizes {
		if m <= most+sizeSlack {
			return i, nil
		}
	}
	last := unit.InMM(l.Pieces.Sizes[len(l.Pieces.Sizes)-1], 1)
	return 0, refuse(fmt.Sprintf("This list has no price above %s, and the design is %s by its %s.", last, unit.InMM(m, 1), l.measureName()), "Make it smaller, or add a size to the list.")
}

func (l *PriceList) measureName() string {
	if l.Pieces.SizeBy == sizing.ByMean {
		return "mean of width and height"
	}
	return "longest side"
}

// counted is the number of pieces by which an item reaches a break.
func (l *PriceList) counted(items []Item, at int) int {
	n := 0
	for i := range items {
		switch {
		case i == at, l.Pieces.Together == ByOrder,
			l.Pieces.Together == ByDesign && items[i].die() == items[at].die():
			n += items[i].Quantity
		}
	}
	return n
}

// row returns the quantity break that holds for a number of pieces.
func (l *PriceList) row(quantity int) (int, error) {
	at := -1
	for i, b := range l.Pieces.Breaks {
		if quantity >= b.From {
			at = i
		}
	}
	if at < 0 {
		from := l.Pieces.Breaks[0].From
		return 0, refuse(fmt.Sprintf("This list has no price below %s, and %s asked for.", pieces(from), are(quantity)), fmt.Sprintf("Order %d or more, or add a row for fewer.", from))
	}
	return at, nil
}

func refuse(what, do string) error { return &reduce.Refusal{What: what, Do: do} }
