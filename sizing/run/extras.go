package run

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/sizing"
)

// extras are the charges that few orders have: fills set apart, a stamp on the
// back, and colours printed on top. What is ordered is listed even where it is free.
func (l PriceList) extras(it Item, price decimal.Decimal) []Line {
	var lines []Line
	times := func(each decimal.Decimal, n int) decimal.Decimal { return each.Mul(decimal.NewFromInt(int64(n))) }
	if fancy := it.fancies(); len(fancy) > 0 {
		lines = append(lines, l.charge(KeyFancy, fancyFills(fancy), it.Quantity, times(l.Fancy.on(price), len(fancy))))
	}
	if it.Stamped && it.NewDie {
		lines = append(lines, l.charge(KeyStamp, "Stamp on the back, once", 1, l.BackStamp))
	}
	if it.Printed == 0 {
		return lines
	}
	if it.NewDie && !l.PrintSetUp.IsZero() {
		lines = append(lines, l.charge(KeyPrintSetUp, printSetUp(it.Printed), 1, times(l.PrintSetUp, it.Printed)))
	}
	return append(lines, l.charge(KeyPrinted, printedColours(it.Printed), it.Quantity, times(l.Printed.on(price), it.Printed)))
}

// fancies are the fills set apart; a pin without fill has none.
func (it Item) fancies() []sizing.Finish {
	if it.Fill == sizing.Unfilled {
		return nil
	}
	return it.Fancy
}

// fancyFills lists fills, each kind once: "Fancy fills: 2 glitter, pearl".
func fancyFills(all []sizing.Finish) string {
	var kinds []string
	for i, f := range all {
		if slices.Index(all, f) != i {
			continue
		}
		n := 0
		for _, g := range all {
			if g == f {
				n++
			}
		}
		kind := string(f)
		if n > 1 {
			kind = fmt.Sprintf("%d %s", n, f)
		}
		kinds = append(kinds, kind)
	}
	if len(all) == 1 {
		return "Fancy fill: " + kinds[0]
	}
	return "Fancy fills: " + strings.Join(kinds, ", ")
}

func printedColours(n int) string {
	if n == 1 {
		return "1 colour printed on top"
	}
	return fmt.Sprintf("%d colours printed on top", n)
}

func printSetUp(n int) string {
	if n == 1 {
		return "Print set-up, once"
	}
	return fmt.Sprintf("Print set-up for %d colours, once", n)
}
