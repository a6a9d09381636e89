package run

import (
	"fmt"
	"slices"
	"strings"

	"badgewright/sizing"
)

// ColourPrices is what colour costs.
type ColourPrices struct {
	Included int    `json:"included"` // enamels in the unit price
	Further  Charge `json:"further"`  // each further enamel
	Fill     Kinds  `json:"fill"`     // hard, none; soft is in the unit price unless it is listed
	Fancy    Kinds  `json:"fancy"`    // each enamel with a fill set apart: glitter, pearl and the like
	Printed  Charge `json:"printed"`  // each colour printed on top
	// PrintSetUp is paid once a version on a new die, for each colour printed.
	PrintSetUp Rate `json:"printSetUp"`
}

// extra counts the enamels that are charged for.
func (c *ColourPrices) extra(it *Item) int {
	if it.Fill == sizing.Unfilled {
		return 0
	}
	return max(0, it.Enamels-c.Included)
}

func (s *sheet) colours(p *priced) {
	c, it := &s.list.Colours, p.item
	if n := c.extra(it); n > 0 {
		s.charge(p, KeyColours, furtherColours(n), c.Further, n, "colours.further.rate", true)
	}
	if it.Fill != "" {
		by, cell := c.Fill.of(string(it.Fill))
		if cell != "others.rate" || it.Fill != sizing.Soft {
			s.charge(p, KeyHard, fillWords(it.Fill), by, 1, "colours.fill."+cell, false)
		}
	}
	s.fancy(p)
	if it.Printed > 0 {
		s.setUp(p, KeyPrintSetUp, printSetUp(it.Printed), c.PrintSetUp, it.Printed, "colours.printSetUp")
		s.charge(p, KeyPrinted, printedColours(it.Printed), c.Printed, it.Printed, "colours.printed.rate", true)
	}
}

// fancies counts the fills set apart; a pin without fill has none.
func (it *Item) fancies() int {
	if it.Fill == sizing.Unfilled {
		return 0
	}
	return len(it.Fancy)
}

// fancy lists the fills set apart in one line, even where they are free.
func (s *sheet) fancy(p *priced) {
	if p.item.fancies() == 0 {
		return
	}
	t := tally{price: p.price}
	for _, f := range p.item.Fancy {
		c, cell := s.list.Colours.Fancy.of(string(f))
		t.add(c, 1, "colours.fancy."+cell)
	}
	s.write(p, KeyFancy, fancyFills(p.item.Fancy), &t, true)
}

func (v *validation) colours(c *ColourPrices) {
	v.count("colours.included", "The number of colours in the price", c.Included, mostIncluded)
	v.charge("colours.further", c.Further)
	v.kinds("colours.fill", c.Fill)
	v.kinds("colours.fancy", c.Fancy)
	v.charge("colours.printed", c.Printed)
	v.amount("colours.printSetUp", c.PrintSetUp)
}

func fillWords(f sizing.Fill) string {
	switch f {
	case sizing.Hard:
		return "Hard enamel instead of soft"
	case sizing.Unfilled:
		return "Without fill"
	}
	return "Soft enamel"
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
	return counted(n, "colour printed on top", "colours printed on top")
}

func furtherColours(n int) string { return counted(n, "further colour", "further colours") }

func printSetUp(n int) string {
	if n == 1 {
		return "Print set-up, once"
	}
	return fmt.Sprintf("Print set-up for %d colours, once", n)
}
