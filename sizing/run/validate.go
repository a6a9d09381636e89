package run

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// CellError is a sentence about one cell of a price list.
type CellError struct {
	Cell string `json:"cell"` // its place in the list, such as "breaks[1].unit[0]"
	What string `json:"what"`
}

// Bounds past which a figure is a slip of the keys, not a price (this tool's choice).
const (
	mostPieces   = 1_000_000
	mostClasses  = 40
	mostBreaks   = 40
	mostIncluded = 100
)

var (
	absurdPrice   = decimal.NewFromInt(100_000_000) // an amount no pin costs in any currency
	absurdPercent = decimal.NewFromInt(1000)
)

// Validate looks at every cell and returns a sentence for each that cannot be
// used, in the order of the list; none when the list can price an order.
func (l PriceList) Validate() []CellError {
	v := &validation{cells: []CellError{}}
	v.currency(l)
	v.amount("die", l.Die)
	v.sizes(l)
	v.breaks(l)
	if l.Included < 0 || l.Included > mostIncluded {
		v.say("included", "The number of colours in the price runs from 0 to %d, not %d.", mostIncluded, l.Included)
	}
	v.charge("extraColour", l.ExtraColour)
	v.charge("hard", l.Hard)
	v.charge("fancy", l.Fancy)
	v.charge("printed", l.Printed)
	v.amount("printSetUp", l.PrintSetUp)
	v.amount("secondPost", l.SecondPost)
	v.amount("backStamp", l.BackStamp)
	v.amount("shipping", l.Shipping)
	if l.Minimum < 0 || l.Minimum > mostPieces {
		v.say("minimum", "The least number of pieces runs from 0 to %d, not %d.", mostPieces, l.Minimum)
	}
	return v.cells
}

// check is Validate as one error.
func (l PriceList) check() error {
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

func (v *validation) currency(l PriceList) {
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

func (v *validation) amount(cell string, d decimal.Decimal) {
	switch {
	case d.IsNegative():
		v.say(cell, "%s is below zero; a charge is 0 or more.", d)
	case d.GreaterThanOrEqual(absurdPrice):
		v.say(cell, "%s is too much for one charge; look for a missing decimal point.", d)
	}
}

func (v *validation) charge(cell string, c Charge) {
	switch c.By {
	case PerPiece:
		v.amount(cell+".rate", c.Rate)
	case Percent:
		if c.Rate.IsNegative() || c.Rate.GreaterThan(absurdPercent) {
			v.say(cell+".rate", "%s percent is no surcharge; it runs from 0 to %s.", c.Rate, absurdPercent)
		}
	default:
		v.say(cell+".by", "%q is no way to charge; it is by the piece or in percent of the unit price.", c.By)
	}
}

func (v *validation) sizes(l PriceList) {
	if l.SizeBy != sizing.ByLongest && l.SizeBy != sizing.ByMean {
		v.say("sizeBy", "Sizes go by the longest side or by the mean of width and height, not by %q.", l.SizeBy)
	}
	if len(l.Sizes) == 0 || len(l.Sizes) > mostClasses {
		v.say("sizes", "A list has 1 to %d sizes, not %d.", mostClasses, len(l.Sizes))
		return
	}
	var before unit.MM
	for i, m := range l.Sizes {
		cell := fmt.Sprintf("sizes[%d]", i)
		switch {
		case !(m > 0) || m > 1000:
			v.say(cell, "%g mm is no size for a pin.", float64(m))
		case m <= before:
			v.say(cell, "%s does not come after %s; sizes rise from one to the next.", unit.InMM(m, 2), unit.InMM(before, 2))
		}
		before = m
	}
}

func (v *validation) breaks(l PriceList) {
	if len(l.Breaks) == 0 || len(l.Breaks) > mostBreaks {
		v.say("breaks", "A list has 1 to %d rows of prices, not %d.", mostBreaks, len(l.Breaks))
		return
	}
	before := 0
	for i, b := range l.Breaks {
		cell := fmt.Sprintf("breaks[%d]", i)
		switch {
		case b.From < 1 || b.From > mostPieces:
			v.say(cell+".from", "A row of prices starts at 1 to %d pieces, not %d.", mostPieces, b.From)
		case b.From == before:
			v.say(cell+".from", "Two rows start at %d pieces; keep one of them.", b.From)
		case b.From < before:
			v.say(cell+".from", "%d pieces does not come after %d; rows rise from one to the next.", b.From, before)
		}
		before = b.From
		v.prices(l, cell, b)
	}
}

func (v *validation) prices(l PriceList, cell string, b Break) {
	for j := range max(len(l.Sizes), len(b.Unit)) {
		at := fmt.Sprintf("%s.unit[%d]", cell, j)
		switch {
		case j >= len(b.Unit):
			v.say(at, "There is no price for %d pieces up to %s.", b.From, unit.InMM(l.Sizes[j], 2))
		case j >= len(l.Sizes):
			v.say(at, "This price belongs to no size; add a size or take it out.")
		case b.Unit[j].IsZero():
			v.say(at, "There is no price for %d pieces up to %s; nothing is free.", b.From, unit.InMM(l.Sizes[j], 2))
		default:
			v.amount(at, b.Unit[j])
		}
	}
}
