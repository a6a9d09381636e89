// Package fit puts the rooms of sizing together: what a design is as an item
// of an order, whether it can be made, and what each colour buys.
package fit

import (
	"fmt"
	"strconv"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// Item is a version of a design as one item of an order; posts is the number
// the back gets.
func Item(d *sizing.Design, v *sizing.Version, b *sizing.Badge, posts int) run.Item {
	item := run.Item{
		Design: d.Name, Version: v.Name, Die: d.ID, NewDie: !d.Extras.Reorder, DieAge: d.Extras.DieAge,
		Longest: b.Longest(), Mean: b.Mean(),
		Fill: d.Fill, Making: d.Making, Plating: v.Plating, Thickness: d.Thickness,
		Posts: posts, Fastening: d.Back.Fastening, Stamped: d.Back.Stamp.Asked(),
		FurtherDies: d.Extras.FurtherDies, Dome: d.Extras.Dome, Packaging: d.Extras.Packaging, Card: d.Extras.Card,
		Quantity: v.Quantity,
	}
	hang(&item, &d.Parts)
	count(&item, v, b.Sep.Flats)
	return item
}

// hang notes in an item the parts that hang from each other, and by what: one
// ring, or a chain with a ring at either end.
func hang(item *run.Item, p *sizing.Parts) {
	if p.Choice != sizing.PartsDangle {
		return
	}
	item.Parts = 1 + len(p.Joins)
	for _, j := range p.Joins {
		item.Rings++
		if j.Links > 0 {
			item.Rings++
			item.Chains++
		}
	}
}

// count notes in an item what of its flats is charged for: enamels, those of
// them that a version sets apart, and colours printed on top.
func count(item *run.Item, v *sizing.Version, flats []reduce.Flat) {
	item.Enamels, item.Printed, item.Fancy = 0, 0, nil
	for _, f := range flats {
		switch f.Role {
		case reduce.Enamel:
			item.Enamels++
			if fill := v.FinishOf(f); fill != sizing.Plain {
				item.Fancy = append(item.Fancy, fill)
			}
		case reduce.Printed:
			item.Printed++
		}
	}
}

// Verdict says in one line whether what was found can be made at the size.
// holds is the smallest size at which the drawing as it is holds, 0 for none.
func Verdict(findings []sizing.Finding, size sizing.Size, holds unit.MM) (sizing.Verdict, string) {
	fails, unsure, need := tally(findings)
	at := number(size.MM) + " mm"
	switch {
	case fails == 0 && unsure == 0:
		return sizing.Holds, "Can be made at " + at + "."
	case fails == 0:
		return sizing.CannotTell, fmt.Sprintf("%s cannot be judged from this drawing; bring one of at least %d px.", places(unsure), need)
	case holds > size.MM:
		return sizing.Fails, fmt.Sprintf("%s will not hold at %s; as drawn, lines and areas hold from %s mm.", places(fails), at, number(holds))
	default:
		return sizing.Fails, fmt.Sprintf("%s will not hold at %s.", places(fails), at)
	}
}

// tally counts what fails and what cannot be told, and the largest drawing asked for.
func tally(findings []sizing.Finding) (fails, unsure, need int) {
	for _, f := range findings {
		switch f.Verdict {
		case sizing.Fails:
			fails++
		case sizing.CannotTell:
			unsure++
			need = max(need, f.NeedPx)
		}
	}
	return fails, unsure, need
}

func places(n int) string {
	if n == 1 {
		return "1 place"
	}
	return strconv.Itoa(n) + " places"
}

// number prints millimetres to at most one decimal.
func number(mm unit.MM) string {
	return strconv.FormatFloat(float64(mm), 'f', -1, 64)
}
