package sheet

import (
	"strconv"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing/csvfile"
	"badgewright/sizing/left"
	pricing "badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// The lists are tables with a head, figures without their units, which the head
// names, and text that no spreadsheet runs (csvfile).

// List is a table, its head first.
type List [][]string

func (l *List) row(cells ...string) { *l = append(*l, cells) }

// File is the list as CSV.
func (l List) File() []byte { return csvfile.WithMark(l) }

func figure(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }

// lengthIn is the head of a column of lengths, and length a figure for it.
func (u Units) lengthIn(what string) string {
	if u == Inches {
		return what + ", in"
	}
	return what + ", mm"
}

func (u Units) length(m unit.MM) string {
	if u == Inches {
		return figure(m.Inches(), 4)
	}
	return figure(float64(m), 3)
}

// ColourList lists the colours of versions.
func ColourList(all []Asked) List {
	l := List{}
	l.row("design", "version", "no", "colour", "becomes", "hex", "red", "green", "blue", "L*", "a*", "b*", "maker's code", "maker's name", "finish", "share of the drawing, %")
	for _, a := range all {
		for _, c := range a.Colours {
			lab := c.RGB.Lab()
			becomes := string(c.Role)
			if c.Role == reduce.Metal {
				becomes = "metal: " + a.Plating
			}
			l.row(a.Design, a.Version, strconv.Itoa(c.No), c.Name, becomes, c.RGB.Hex(),
				strconv.Itoa(int(c.RGB.R)), strconv.Itoa(int(c.RGB.G)), strconv.Itoa(int(c.RGB.B)),
				figure(lab.L, 1), figure(lab.A, 1), figure(lab.B, 1), c.Code, c.Named, finishWords(c.Finish), figure(100*c.Share, 1))
		}
	}
	return l
}

// SpotList lists the trouble spots of versions.
func SpotList(all []Asked, u Units) List {
	l := List{}
	l.row("design", "version", "no", "what", "colour", "measured", "limit", "measured to", "verdict", "places",
		u.lengthIn("from the left"), u.lengthIn("from the top"), "bring a drawing of, px")
	for _, a := range all {
		for i := range a.Spots {
			s := &a.Spots[i]
			need := ""
			if s.NeedPx > 0 {
				need = strconv.Itoa(s.NeedPx)
			}
			l.row(a.Design, a.Version, strconv.Itoa(s.No), SpotName(&s.Finding), s.Colour, SpotMeasured(&s.Finding, u), SpotLimit(&s.Finding, u),
				"± "+u.Say(s.Error), verdictNames[s.Verdict], strconv.Itoa(max(s.Count, 1)), u.length(s.Left), u.length(s.Top), need)
		}
	}
	return l
}

// QuoteList lists a quote line by line, its total last.
func QuoteList(q *pricing.Quote, o *pricing.Wanted, maker string) List {
	l := List{}
	money := func(d decimal.Decimal) string { return d.StringFixed(int32(q.MinorDigits)) }
	l.row("maker", "design", "version", "what", "count", "rate", "amount", "currency")
	for _, line := range q.Lines {
		design, version := "", ""
		if line.Item >= 0 && line.Item < len(o.Items) {
			design, version = o.Items[line.Item].Design, o.Items[line.Item].Version
		}
		l.row(maker, design, version, line.What, strconv.Itoa(line.Count), line.Each.String(), money(line.Amount), q.Currency)
	}
	for _, n := range q.Needs {
		l.row(maker, "", "", "not known: "+n.What, "", "", "", q.Currency)
	}
	l.row(maker, "", "", "in all", strconv.Itoa(q.Pieces), "", money(q.Total), q.Currency)
	return l
}

// LeftList lists what is left after costs, channel by channel and line by line.
func LeftList(a *left.LeftAfter, currency string, digits int) List {
	l := List{}
	money := func(d decimal.Decimal) string { return d.StringFixed(int32(digits)) }
	l.row("channel", "pieces", "sales", "what", "amount", "currency")
	put := func(r *left.ChannelRow) {
		for _, m := range r.Lines {
			l.row(r.Name, "", "", m.What, money(m.Amount), currency)
		}
		l.row(r.Name, strconv.Itoa(r.Count), strconv.Itoa(r.Sales), "left", money(r.Left), currency)
	}
	for i := range a.Rows {
		put(&a.Rows[i])
	}
	put(&a.Total)
	return l
}
