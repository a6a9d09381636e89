package run

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Item is one version of one design in an order, as far as a price depends on it.
type Item struct {
	Design  string      `json:"design"`
	Version string      `json:"version"`
	NewDie  bool        `json:"newDie"` // false on a reorder, and for further versions of one die
	Longest unit.MM     `json:"longest"`
	Mean    unit.MM     `json:"mean"`
	Enamels int         `json:"enamels"` // enamel flats; metal is not one
	Fill    sizing.Fill `json:"fill"`
	// Fancy is the finish of each enamel that is set apart, and Printed the
	// number of colours printed on top.
	Fancy   []sizing.Finish `json:"fancy"`
	Printed int             `json:"printed"`
	Posts   int             `json:"posts"`
	// Stamped says that the back bears lettering or a mark.
	Stamped bool `json:"stamped"`
	// Quantity picks the quantity break, version by version.
	Quantity int `json:"quantity"`
}

// Keys of the lines of a quote.
const (
	KeyDie        = "die"
	KeyPieces     = "pieces"
	KeyColours    = "colours"
	KeyHard       = "hard"
	KeyFancy      = "fancy"
	KeyPrinted    = "printed"
	KeyPrintSetUp = "print set-up"
	KeyPost       = "post"
	KeyStamp      = "back stamp"
	KeyShipping   = "shipping"
)

// sizeSlack is how far above the greatest size of a class a badge may measure
// and still belong to it: sizes are shown to a tenth of a millimetre.
const sizeSlack unit.MM = 0.05

// Price returns what an order costs by a list: every line shown and rounded
// once, the total their sum. What the list cannot price is a *reduce.Refusal,
// never a wrong total.
func Price(l PriceList, items []Item) (Quote, error) {
	q, err := bill(l, items)
	if err != nil {
		return Quote{}, err
	}
	for _, m := range CheaperMore(l, items) {
		q.Notes = append(q.Notes, m.Words(q, len(items) > 1))
	}
	q.say()
	return q, nil
}

// bill is Price without its notes and words.
func bill(l PriceList, items []Item) (Quote, error) {
	if err := l.check(); err != nil {
		return Quote{}, err
	}
	if len(items) == 0 {
		return Quote{}, refuse("There is nothing in the order yet.", "Add a design.")
	}
	q := Quote{Currency: l.Currency, MinorDigits: l.MinorDigits, Invented: l.Invented, Notes: []string{}}
	if err := l.minimums(items); err != nil {
		return Quote{}, err
	}
	for _, it := range items {
		lines, err := l.lines(it)
		if err != nil {
			return Quote{}, err
		}
		if len(items) > 1 {
			name(lines, it)
		}
		q.Pieces += it.Quantity
		q.Lines = append(q.Lines, lines...)
	}
	q.Lines = append(q.Lines, l.charge(KeyShipping, "Shipping", 1, l.Shipping))
	for _, line := range q.Lines {
		q.Total = q.Total.Add(line.Amount)
	}
	q.PerPiece = q.Total.DivRound(decimal.NewFromInt(int64(q.Pieces)), int32(l.MinorDigits)+1)
	return q, nil
}

// name tells the lines of one item from those of the others.
func name(lines []Line, it Item) {
	label := it.Design
	if it.Version != "" {
		label = strings.TrimPrefix(label+", "+it.Version, ", ")
	}
	if label == "" {
		return
	}
	for i := range lines {
		lines[i].What += " (" + label + ")"
	}
}

// minimums refuses a design of which too few pieces are asked for.
func (l PriceList) minimums(items []Item) error {
	of := map[string]int{}
	for _, it := range items {
		if it.Quantity < 1 {
			return refuse("The order has no number of pieces.", "Say how many pieces you want.")
		}
		if it.Quantity > mostPieces {
			return refuse(fmt.Sprintf("%d pieces are more than a price list is made for.", it.Quantity), fmt.Sprintf("Give at most %d.", mostPieces))
		}
		of[it.Design] += it.Quantity
	}
	for _, it := range items {
		if n := of[it.Design]; n < l.Minimum {
			return refuse(fmt.Sprintf("This maker takes no order below %d pieces of a design, and %s asked for.", l.Minimum, are(n)), fmt.Sprintf("Order %d or more, or use another price list.", l.Minimum))
		}
	}
	return nil
}

// lines returns what one item adds to a quote.
func (l PriceList) lines(it Item) ([]Line, error) {
	class, err := l.class(it)
	if err != nil {
		return nil, err
	}
	row, err := l.row(it.Quantity)
	if err != nil {
		return nil, err
	}
	if it.Enamels < 0 || it.Posts < 0 || it.Printed < 0 {
		return nil, refuse("An order cannot have fewer than no colours or posts.", "Correct the design.")
	}
	price := l.Breaks[row].Unit[class]
	var lines []Line
	if it.NewDie {
		lines = append(lines, l.charge(KeyDie, "Die, once", 1, l.Die))
	}
	lines = append(lines, l.charge(KeyPieces, fmt.Sprintf("Pieces up to %s, price from %s", unit.InMM(l.Sizes[class], 1), pieces(l.Breaks[row].From)), it.Quantity, price))
	if extra := l.extraColours(it); extra > 0 {
		each := l.ExtraColour.on(price).Mul(decimal.NewFromInt(int64(extra)))
		lines = append(lines, l.charge(KeyColours, furtherColours(extra), it.Quantity, each))
	}
	if it.Fill == sizing.Hard && !l.Hard.Rate.IsZero() {
		lines = append(lines, l.charge(KeyHard, "Hard enamel instead of soft", it.Quantity, l.Hard.on(price)))
	}
	lines = append(lines, l.extras(it, price)...)
	if it.Posts > 1 {
		each := l.SecondPost.Mul(decimal.NewFromInt(int64(it.Posts - 1)))
		lines = append(lines, l.charge(KeyPost, furtherPosts(it.Posts-1), it.Quantity, each))
	}
	return lines, nil
}

// extraColours counts the enamels that are charged for.
func (l PriceList) extraColours(it Item) int {
	if it.Fill == sizing.Unfilled {
		return 0
	}
	return max(0, it.Enamels-l.Included)
}

// on returns what a charge is on a piece of the unit price, exactly.
func (c Charge) on(price decimal.Decimal) decimal.Decimal {
	if c.By == Percent {
		return price.Mul(c.Rate).Shift(-2)
	}
	return c.Rate
}

// charge makes a line, rounded once.
func (l PriceList) charge(key, what string, count int, each decimal.Decimal) Line {
	amount := unit.RoundMoney(each.Mul(decimal.NewFromInt(int64(count))), l.MinorDigits)
	return Line{Key: key, What: what, Count: count, Each: each, Amount: amount}
}

// measure is the size of an item by which the list's classes go.
func (l PriceList) measure(it Item) unit.MM {
	if l.SizeBy == sizing.ByMean {
		return it.Mean
	}
	return it.Longest
}

// class returns the size class of an item: the first it fits into.
func (l PriceList) class(it Item) (int, error) {
	m := l.measure(it)
	if !(m > 0) {
		return 0, refuse("The design has no size yet.", "Give it one.")
	}
	for i, most := range l.Sizes {
		if m <= most+sizeSlack {
			return i, nil
		}
	}
	last := unit.InMM(l.Sizes[len(l.Sizes)-1], 1)
	return 0, refuse(fmt.Sprintf("This list has no price above %s, and the design is %s by its %s.", last, unit.InMM(m, 1), l.measureName()), "Make it smaller, or add a size to the list.")
}

func (l PriceList) measureName() string {
	if l.SizeBy == sizing.ByMean {
		return "mean of width and height"
	}
	return "longest side"
}

// row returns the quantity break that holds for a number of pieces.
func (l PriceList) row(quantity int) (int, error) {
	at := -1
	for i, b := range l.Breaks {
		if quantity >= b.From {
			at = i
		}
	}
	if at < 0 {
		from := l.Breaks[0].From
		return 0, refuse(fmt.Sprintf("This list has no price below %s, and %s asked for.", pieces(from), are(quantity)), fmt.Sprintf("Order %d or more, or add a row for fewer.", from))
	}
	return at, nil
}

func refuse(what, do string) error { return &reduce.Refusal{What: what, Do: do} }

func pieces(n int) string {
	if n == 1 {
		return "1 piece"
	}
	return fmt.Sprintf("%d pieces", n)
}

func are(n int) string {
	if n == 1 {
		return "1 is"
	}
	return fmt.Sprintf("%d are", n)
}

func furtherColours(n int) string {
	if n == 1 {
		return "1 further colour"
	}
	return fmt.Sprintf("%d further colours", n)
}

func furtherPosts(n int) string {
	if n == 1 {
		return "Second post"
	}
	return fmt.Sprintf("%d further posts", n)
}
