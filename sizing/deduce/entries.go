package deduce

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// known is what one model says of one unknown.
type known struct {
	status    DeducedStatus
	low, high *big.Rat // high is nil for no bound
	by        run.ChargeBy
}

// of judges one unknown by a model.
func (m *model) of(e *echelon, p *program, j int, by run.ChargeBy) known {
	k := known{status: Unknown, by: by}
	if !m.quoted(j) && j < unitFrom {
		return k
	}
	k.low, k.high = m.span(p, j)
	switch {
	case k.high == nil:
	case e.settled(j):
		k.status = Fixed
		v := simplest(k.low, k.high)
		k.low, k.high = v, v
	case k.low.Cmp(k.high) == 0:
		k.status = Fixed
	default:
		k.status = Between
	}
	return k
}

// entries says of every entry what all models that agree have in common.
func (w *work) entries() []DeducedEntry {
	type judged struct {
		*model
		e *echelon
		p *program
	}
	var all []judged
	for _, m := range w.models {
		e, _ := m.echelon()
		all = append(all, judged{m, e, newProgram(m.columns(), m.bounds(true))})
	}
	over := func(of func(m judged) known) (ks []known) {
		for _, m := range all {
			ks = append(ks, of(m))
		}
		return ks
	}
	out := []DeducedEntry{}
	single := func(cell, what string, j int, by func(*model) run.ChargeBy) {
		out = append(out, w.entry(cell, what, over(func(m judged) known { return m.of(m.e, m.p, j, by(m.model)) })))
	}
	none := func(*model) run.ChargeBy { return "" }
	single("die.flat", "Die", die, none)
	single("shipping.flat", "Shipping", shipping, none)
	out = append(out, w.includedEntry())
	single("colours.further.rate", "Each further colour", colour, func(m *model) run.ChargeBy { return m.colourBy })
	single("colours.fill.listed[0].charge.rate", "Hard instead of soft", hard, func(m *model) run.ChargeBy { return m.hardBy })
	single("back.post.rate", "Each further post", post, func(*model) run.ChargeBy { return run.PerPiece })
	s := plainShape(w.quotes)
	for i, size := range s.sizes {
		for c, count := range s.counts {
			q := &PlainQuote{Size: size, Quantity: count}
			what := fmt.Sprintf("Price a piece for %d at %s", count, unit.InMM(size, 2))
			if least, _ := colourRange(w.quotes); least > 0 {
				what += fmt.Sprintf(" with up to %d colours", w.models[0].included)
			}
			out = append(out, w.entry(fmt.Sprintf("pieces.breaks[%d].unit[%d]", c, i), what, over(func(m judged) known {
				j, _, _ := m.cell(q)
				return m.of(m.e, m.p, j, "")
			})))
		}
	}
	return out
}

// entry joins what the models say: it is fixed only where all say the same.
func (w *work) entry(cell, what string, all []known) DeducedEntry {
	out := DeducedEntry{Cell: cell, What: what, Status: Unknown, Says: "unknown"}
	first := all[0]
	same, oneWay, bounded := true, true, true
	low, high := first.low, first.high
	for _, k := range all {
		oneWay = oneWay && k.by == first.by
		bounded = bounded && k.high != nil
		same = same && k.status == Fixed && k.low.Cmp(first.low) == 0
		if bounded && low.Cmp(k.low) > 0 {
			low = k.low
		}
		if bounded && high.Cmp(k.high) < 0 {
			high = k.high
		}
	}
	switch {
	case !bounded:
	case !oneWay:
		out.Status, out.Says = Between, w.ways(all)
	case same && first.status == Fixed:
		out.Status, out.Value = Fixed, exact(first.low)
		out.Says = w.figure(first.low, first.by)
	default:
		out.Status, out.Low, out.High = Between, exact(low), exact(high)
		out.Says = fmt.Sprintf("between %s and %s", w.figure(low, ""), w.figure(high, first.by))
	}
	return out
}

// ways lists what a charge may be, counted in one way or another.
func (w *work) ways(all []known) string {
	var parts []string
	for _, k := range all {
		part := w.figure(k.low, k.by)
		if k.status != Fixed {
			part = fmt.Sprintf("%s to %s", w.figure(k.low, ""), w.figure(k.high, k.by))
		}
		if !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, ", or ")
}

func (w *work) figure(r *big.Rat, by run.ChargeBy) string {
	d := exact(r).Value().Round(6)
	places := max(w.digits, int(-d.Exponent()))
	for places > w.digits && d.Equal(d.Round(int32(places-1))) {
		places--
	}
	switch by {
	case run.Percent:
		return d.String() + " %"
	case run.PerPiece:
		return unit.Money(d, w.base.Currency, places) + " a piece"
	case run.SetUp:
		return unit.Money(d, w.base.Currency, places) + " once"
	}
	return unit.Money(d, w.base.Currency, places)
}

// includedEntry says how many colours may be in the price.
func (w *work) includedEntry() DeducedEntry {
	out := DeducedEntry{Cell: "colours.included", What: "Colours in the price", Status: Fixed}
	var counts []int
	for _, m := range w.models {
		counts = append(counts, m.included)
	}
	low, high := slices.Min(counts), slices.Max(counts)
	out.Says = fmt.Sprint(low)
	least, most := colourRange(w.quotes)
	switch {
	case most <= least:
		out.Status, out.Says = Unknown, fmt.Sprintf("all quotes are for %d", least)
		if least == 0 {
			out.Says = "no quote says how many colours it is for"
		}
	case low == least:
		out.Status, out.Says = Between, fmt.Sprintf("%d or fewer", high)
	case low != high:
		out.Status, out.Says = Between, fmt.Sprintf("%d to %d", low, high)
	}
	return out
}

// at is the figure that the proposed list has for an entry; sizes and breaks of
// the list may be fewer than those quoted.
func at(l *run.PriceList, cell string, m *model, was run.Rate) run.Rate {
	var c, s int
	switch cell {
	case "die.flat":
		return l.Die.Flat
	case "shipping.flat":
		return l.Shipping.Flat
	case "colours.further.rate":
		return l.Colours.Further.Rate
	case "colours.fill.listed[0].charge.rate":
		return l.Colours.Fill.Listed[0].Charge.Rate
	case "back.post.rate":
		return l.Back.Post.Rate
	}
	if _, err := fmt.Sscanf(cell, "pieces.breaks[%d].unit[%d]", &c, &s); err == nil {
		plain := plainShape(m.quotes)
		_, size, count := m.cell(&PlainQuote{Size: plain.sizes[s], Quantity: plain.counts[c]})
		return l.Pieces.Breaks[count].Unit[size]
	}
	return was
}
