package sheet

import (
	"fmt"
	"strings"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// fact is one line of what the pin is: what is said, and of what.
type fact struct{ of, says string }

// facts are what the pin is.
func (s *Spec) facts() []fact {
	a := &s.Asked
	all := []fact{
		{"Size", fmt.Sprintf("%s wide, %s high (%s × %s)", unit.InMM(a.W, 2), unit.InMM(a.H, 2), unit.InInches(a.W), unit.InInches(a.H))},
		{"The size is", sizeNamed(a)},
		{"Thickness", unit.InMM(a.Thickness, 2)},
		{"Making", s.making()},
		{"Fill", s.fill()},
		{"Plating", a.Plating},
		{"Cut-outs", s.holes()},
		{"Parts", s.parts()},
		{fastening, s.holder()},
		{"Back stamp", orNone(a.Stamp)},
		{"Quantity", s.quantity()},
	}
	if options := s.options(); options != "" {
		all = append(all, fact{"Options", options})
	}
	if s.Back.Weight > 0 {
		all = append(all, fact{"Weight", fmt.Sprintf("about %.1f g, the pin alone", float64(s.Back.Weight))})
	}
	if s.Drawing != "" {
		all = append(all, fact{"Made from", s.Drawing})
	}
	if s.Note != "" {
		all = append(all, fact{"Note", s.Note})
	}
	return all
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

// sizeNamed says which measure the size is.
func sizeNamed(a *Asked) string {
	by := map[sizing.SizeBy]string{
		sizing.ByWidth: "the width", sizing.ByHeight: "the height", sizing.ByLongest: "the longest side",
		sizing.ByMean: "the mean of width and height",
	}[a.Size.By]
	if by == "" {
		by = "the longest side"
	}
	return fmt.Sprintf("%s: %s", by, unit.InBoth(a.Size.MM))
}

func (s *Spec) making() string {
	words := string(s.Asked.Making)
	if s.Asked.Base != "" {
		words += ", of " + string(s.Asked.Base)
	}
	return words
}

func (s *Spec) fill() string {
	words := fillWords(s.Asked.Item.Fill)
	if s.Asked.Item.Dome {
		words += ", under a clear dome"
	}
	return words
}

func (s *Spec) holes() string {
	n := s.Asked.Item.CutOuts
	if n == 0 {
		return "none"
	}
	return amount(n, "cut-out") + " right through, crossed on the front"
}

func (s *Spec) parts() string {
	it := &s.Asked.Item
	if it.Parts < 2 {
		return "one piece, no chain"
	}
	words := fmt.Sprintf("%d, hanging by %s", it.Parts, ringWords(it.Rings, it.Chains))
	if it.FurtherDies > 0 {
		words += ", " + amount(it.FurtherDies, "further die")
	}
	if len(s.Hanging) > 0 {
		words += ". " + strings.Join(s.Hanging, " ")
	}
	return words
}

func (s *Spec) quantity() string {
	var all []string
	total := 0
	for _, v := range s.Versions {
		total += v.Quantity
		words := amount(v.Quantity, "piece")
		if len(s.Versions) > 1 {
			words = fmt.Sprintf("%s, %s: %s", v.Name, v.Plating, words)
			if v.This {
				words += " (this sheet)"
			}
		}
		all = append(all, words)
	}
	if len(all) == 0 {
		return amount(s.Asked.Item.Quantity, "piece")
	}
	words := strings.Join(all, "; ")
	if len(all) > 1 {
		words += fmt.Sprintf("; %d in all, from one die", total)
	}
	return words
}

func (s *Spec) options() string {
	it := &s.Asked.Item
	var all []string
	if it.Packaging != "" {
		all = append(all, "packed: "+it.Packaging)
	}
	if it.Card {
		all = append(all, "backing card printed by the maker")
	}
	if !it.NewDie {
		all = append(all, fmt.Sprintf("reorder: the die was cut about %s ago", amount(it.DieAge, "month")))
	}
	return strings.Join(all, "; ")
}

// fastening is what the fact of posts is called.
const fastening = "Fastening"

// factOf is how wide what a fact is of is set.
const factOf unit.MM = 19

func (d *drafting) facts() []fact {
	all := d.s.facts()
	for i := range all {
		if all[i].of == fastening && !d.postsBeside() {
			all[i].says += ". From behind, to the middle of each: " + strings.Join(d.s.postLines(), " ")
		}
	}
	return all
}

func (d *drafting) factWide() unit.MM { return (d.wide-gutter)/2 - factOf }

// factLines are the lines of a fact, the last shortened where it has too many
// for the first page, and whether it was: the whole stands behind then.
func (d *drafting) factLines(f fact) (lines []string, long bool) {
	const most = 4
	lines = d.Wrap(body, d.factWide(), f.says)
	if long = len(lines) > most; long {
		const more = " (whole behind)"
		lines = append(lines[:most-1], d.Cut(body, d.factWide()-d.Width(body, more), lines[most-1]+"…")+more)
	}
	return lines, long
}

// halves parts facts in two columns as even as may be, in their order.
func (d *drafting) halves(all []fact) (high unit.MM, left int) {
	heights := make([]int, len(all))
	total := 0
	for i, f := range all {
		lines, _ := d.factLines(f)
		heights[i] = len(lines)
		total += heights[i]
	}
	sum, most := 0, total
	for i, h := range heights {
		sum += h
		if m := max(sum, total-sum); m < most {
			most, left = m, i+1
		}
	}
	return unit.MM(most)*body.Leading() + 3, left
}

func (d *drafting) factsHigh(all []fact) unit.MM {
	high, _ := d.halves(all)
	return high + 2
}

func (d *drafting) factsBlock(all []fact) {
	d.rule()
	high, left := d.halves(all)
	for i, column := range [][]fact{all[:left], all[left:]} {
		x, y := margin+unit.MM(i)*(factOf+d.factWide()+gutter), d.y+4
		for _, f := range column {
			d.Text(x, y, small, f.of)
			lines, long := d.factLines(f)
			if long {
				d.long = append(d.long, f)
			}
			for _, l := range lines {
				d.Text(x+factOf, y, body, l)
				y += body.Leading()
			}
		}
	}
	d.y += high + 2
}

// rulesText is what may and what must not be changed.
func (d *drafting) rulesText() [2]string {
	return [2]string{
		"The grain of polishing and plating, inner corners rounded by the width of your graver, and the thickness of metal within a tenth of a millimetre.",
		"Outline and size; any line or gap, moved, thickened, joined or left out; colours and where they go; lettering; number and places of what holds it (within 0.5 mm). Front and back must not be mirrored. Whatever you would do otherwise, show it in the proof and ask.",
	}
}

var rulesHeads = [2]string{"May change", "Must not change"}

func (d *drafting) rulesHigh(text [2]string) unit.MM {
	lines := 0
	for _, s := range text {
		lines += len(d.Wrap(body, d.wide-ruleOf, s))
	}
	return unit.MM(lines)*body.Leading() + 4.5
}

const ruleOf unit.MM = 28

func (d *drafting) rulesBlock(text [2]string) {
	d.rule()
	y := d.y + 4
	for i, s := range text {
		d.Text(margin, y, heading, rulesHeads[i])
		y = d.Block(margin+ruleOf, y, d.wide-ruleOf, body, s)
	}
	d.y = y
}
