package run

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// CellError is a sentence about one cell of a price list.
type CellError struct {
	Cell string `json:"cell"` // its place in the list, such as "pieces.breaks[1].unit[0]"
	What string `json:"what"`
}

// Bounds past which a figure is a slip of the keys, not a price (this tool's choice).
const (
	mostPieces              = 1_000_000
	mostClasses             = 40
	mostBreaks              = 40
	mostIncluded            = 100
	mostRows                = 60
	mostDays                = 1000
	mostMonths              = 1200
	mostName                = 200
	mostThick    unit.MM    = 20
	mostGrams    unit.Grams = 1_000_000
)

var (
	absurdPrice   = decimal.NewFromInt(100_000_000) // an amount no pin costs in any currency
	absurdPercent = decimal.NewFromInt(1000)
	whole         = decimal.NewFromInt(100)
)

// Validate looks at every cell and returns a sentence for each that cannot be
// used, in the order of the list; none when the list can price an order.
func (l PriceList) Validate() []CellError {
	v := &validation{cells: []CellError{}}
	v.currency(&l)
	v.sizes(&l.Pieces)
	v.breaks(&l.Pieces)
	v.count("least.design", "The least number of pieces", l.Least.Design, mostPieces)
	v.count("least.version", "The least number of pieces", l.Least.Version, mostPieces)
	v.die(&l)
	v.metal(&l.Metal)
	v.colours(&l.Colours)
	v.shape(&l.Shape)
	v.fixing(&l.Back)
	v.pack(&l.Pack)
	v.proofs(&l.Proofs)
	v.delivery(&l.Delivery)
	v.shipping(&l.Shipping)
	v.fees(&l.Fees)
	v.counting(&l.Count)
	v.named(l.Named)
	return v.cells
}

// check is Validate as one error.
func (l *PriceList) check() error {
	cells := l.Validate()
	if len(cells) == 0 {
		return nil
	}
	do := "Correct it in the price list."
	if n := len(cells) - 1; n > 0 {
		do = fmt.Sprintf("Correct it in the price list, and %d more.", n)
	}
	return &reduce.Refusal{What: cells[0].What, Do: do}
}

type validation struct{ cells []CellError }

func (v *validation) say(cell, format string, args ...any) {
	v.cells = append(v.cells, CellError{Cell: cell, What: fmt.Sprintf(format, args...)})
}

func (v *validation) currency(l *PriceList) {
	digits, ok := unit.MinorDigits(l.Currency)
	switch {
	case !ok:
		v.say("currency", "%q is no currency code; it has three capital letters, such as EUR.", l.Currency)
	case l.MinorDigits < 0 || l.MinorDigits > 4:
		v.say("minorDigits", "A currency has 0 to 4 decimals, not %d.", l.MinorDigits)
	case l.MinorDigits > digits:
		v.say("minorDigits", "%s has %d decimals, so a bill with %d cannot be paid.", l.Currency, digits, l.MinorDigits)
	}
}

// amount looks at an amount; one that is not known is in order.
func (v *validation) amount(cell string, r Rate) {
	switch d := r.Value(); {
	case d.IsNegative():
		v.say(cell, "%s is below zero; a charge is 0 or more.", d)
	case d.GreaterThanOrEqual(absurdPrice):
		v.say(cell, "%s is too much for one charge; look for a missing decimal point.", d)
	}
}

func (v *validation) percent(cell string, r Rate, most decimal.Decimal) {
	if d := r.Value(); d.IsNegative() || d.GreaterThan(most) {
		v.say(cell, "%s percent cannot be; it runs from 0 to %s.", d, most)
	}
}

func (v *validation) count(cell, what string, n, most int) {
	if n < 0 || n > most {
		v.say(cell, "%s runs from 0 to %d, not %d.", what, most, n)
	}
}

func (v *validation) charge(cell string, c Charge) {
	switch c.By {
	case PerPiece, SetUp:
		v.amount(cell+".rate", c.Rate)
	case Percent:
		v.percent(cell+".rate", c.Rate, absurdPercent)
	case "":
		if c.Rate.Known() {
			v.say(cell+".by", "%s is charged, and nothing says by what: the piece, in percent of the unit price, or once as a set-up.", c.Rate)
		}
	default:
		v.say(cell+".by", "%q is no way to charge; it is by the piece, in percent of the unit price, or once as a set-up.", string(c.By))
	}
}

func (v *validation) kinds(cell string, k Kinds) {
	if len(k.Listed) > mostRows {
		v.say(cell+".listed", "A list has at most %d kinds of one thing, not %d.", mostRows, len(k.Listed))
	}
	seen := map[string]bool{}
	for i, one := range k.Listed {
		at := fmt.Sprintf("%s.listed[%d]", cell, i)
		v.name(at+".id", one.ID, seen)
		if one.ID == OtherKinds {
			v.say(at+".id", "%q stands for all that are not listed; give this one another name.", OtherKinds)
		}
		v.charge(at+".charge", one.Charge)
	}
	v.charge(cell+".others", k.Others)
}

// name looks at a name that must be there, and differ from those seen.
func (v *validation) name(cell, name string, seen map[string]bool) {
	switch {
	case strings.TrimSpace(name) == "":
		v.say(cell, "This has no name; give it one.")
	case len(name) > mostName:
		v.say(cell, "This name is longer than %d letters; shorten it.", mostName)
	case seen[name]:
		v.say(cell, "%q stands here twice; keep one of them.", name)
	}
	seen[name] = true
}

func (v *validation) sizes(p *PiecePrices) {
	if p.SizeBy != sizing.ByLongest && p.SizeBy != sizing.ByMean {
		v.say("pieces.sizeBy", "Sizes go by the longest side or by the mean of width and height, not by %q.", string(p.SizeBy))
	}
	switch p.Together {
	case "", ByVersion, ByDesign, ByOrder:
	default:
		v.say("pieces.together", "Pieces are counted together by version, by design or by order, not by %q.", string(p.Together))
	}
	if len(p.Sizes) == 0 || len(p.Sizes) > mostClasses {
		v.say("pieces.sizes", "A list has 1 to %d sizes, not %d.", mostClasses, len(p.Sizes))
		return
	}
	var before unit.MM
	for i, m := range p.Sizes {
		cell := fmt.Sprintf("pieces.sizes[%d]", i)
		switch {
		case !(m > 0) || m > 1000:
			v.say(cell, "%g mm is no size for a pin.", float64(m))
		case m <= before:
			v.say(cell, "%s does not come after %s; sizes rise from one to the next.", unit.InMM(m, 2), unit.InMM(before, 2))
		}
		before = m
	}
}

func (v *validation) breaks(p *PiecePrices) {
	if len(p.Breaks) == 0 || len(p.Breaks) > mostBreaks {
		v.say("pieces.breaks", "A list has 1 to %d rows of prices, not %d.", mostBreaks, len(p.Breaks))
		return
	}
	before := 0
	for i, b := range p.Breaks {
		cell := fmt.Sprintf("pieces.breaks[%d]", i)
		switch {
		case b.From < 1 || b.From > mostPieces:
			v.say(cell+".from", "A row of prices starts at 1 to %d pieces, not %d.", mostPieces, b.From)
		case b.From == before:
			v.say(cell+".from", "Two rows start at %d pieces; keep one of them.", b.From)
		case b.From < before:
			v.say(cell+".from", "%d pieces does not come after %d; rows rise from one to the next.", b.From, before)
		}
		before = b.From
		v.prices(p, cell, b)
	}
}

func (v *validation) prices(p *PiecePrices, cell string, b Break) {
	for j := range max(len(p.Sizes), len(b.Unit)) {
		at := fmt.Sprintf("%s.unit[%d]", cell, j)
		switch {
		case j >= len(b.Unit):
			v.say(at, "There is no price for %d pieces up to %s.", b.From, unit.InMM(p.Sizes[j], 2))
		case j >= len(p.Sizes):
			v.say(at, "This price belongs to no size; add a size or take it out.")
		case b.Unit[j].free():
			v.say(at, "There is no price for %d pieces up to %s; nothing is free.", b.From, unit.InMM(p.Sizes[j], 2))
		default:
			v.amount(at, b.Unit[j])
		}
	}
}
