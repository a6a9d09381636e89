// Package deduce proposes a price list from plain quotes: "150 at 30 mm with 3
// colours: 412.50". A quote is a sum of unknown entries; what the quotes fix,
// what they leave open and between which bounds is found in exact fractions,
// within what the rounding of lines may have moved.
//
// It is taken for granted that a price a piece never rises with the quantity
// nor falls with the size (common practice, no published source), and that no
// charge is below 0.
package deduce

import (
	"fmt"
	"math/big"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// DeducedStatus is how well an entry is known.
type DeducedStatus string

// The quotes fix an entry, hold it between two figures, or say nothing of it.
const (
	Fixed   DeducedStatus = "fixed"
	Between DeducedStatus = "between"
	Unknown DeducedStatus = "unknown"
)

// DeducedEntry is one entry of the proposed list.
type DeducedEntry struct {
	Cell   string        `json:"cell"` // its place in the list, as in run.CellError
	What   string        `json:"what"`
	Status DeducedStatus `json:"status"`
	Value  run.Rate      `json:"value"` // as proposed; empty for none
	Low    run.Rate      `json:"low"`   // bounds, where they are known
	High   run.Rate      `json:"high"`
	Says   string        `json:"says"` // "EUR 0.11 a piece", "between EUR 0.00 and EUR 52.50"
}

// QuoteResidual is how far the proposed list is from a quote.
type QuoteResidual struct {
	Text string          `json:"text"` // the quote as typed
	Off  decimal.Decimal `json:"off"`  // list less quote
	Says string          `json:"says"`
}

// FurtherQuote is the quote that would settle most.
type FurtherQuote struct {
	Quote PlainQuote `json:"quote"` // without its total
	Words string     `json:"words"`
}

// Deduction is a price list deduced from quotes, and how well it is known.
type Deduction struct {
	List    run.PriceList  `json:"list"`
	Entries []DeducedEntry `json:"entries"`
	Next    *FurtherQuote  `json:"next,omitempty"`
	// Residuals are there where there are more quotes than unknowns.
	Residuals []QuoteResidual `json:"residuals"`
	// Agrees is false when no list gives these totals; the nearest is proposed.
	Agrees   bool           `json:"agrees"`
	Mistakes []PlainMistake `json:"mistakes"`
	Notes    []string       `json:"notes"`
}

// mostQuotes bounds the work (this tool's choice).
const mostQuotes = 24

// From proposes the simplest list that agrees with the quotes of a text, in the
// currency of base; name and ID are those of base too.
func From(text string, base run.PriceList) (*Deduction, error) {
	quotes, mistakes := Parse(text, base.Currency)
	if len(quotes) > mostQuotes {
		return nil, &reduce.Refusal{What: fmt.Sprintf("%d quotes are more than are looked at together.", len(quotes)), Do: fmt.Sprintf("Keep at most %d, those that differ most.", mostQuotes)}
	}
	out := &Deduction{Entries: []DeducedEntry{}, Residuals: []QuoteResidual{}, Mistakes: mistakes, Notes: []string{}}
	if mistakes == nil {
		out.Mistakes = []PlainMistake{}
	}
	if len(quotes) == 0 {
		if len(mistakes) > 0 {
			out.List = base
			return out, nil
		}
		return nil, &reduce.Refusal{What: "There are no quotes yet.", Do: example}
	}
	w := &work{base: base, quotes: quotes, digits: base.MinorDigits, out: out}
	w.deduce()
	return out, nil
}

// work is a deduction under way.
type work struct {
	base   run.PriceList
	quotes []PlainQuote
	digits int
	models []*model // those that agree with the quotes
	out    *Deduction
}

func (w *work) deduce() {
	all := candidates(w.quotes, w.digits)
	for _, m := range all {
		if m.holds() {
			w.models = append(w.models, joined(m, w.digits, false))
		}
	}
	w.out.Agrees = len(w.models) > 0
	if !w.out.Agrees {
		w.nearest(all[0])
		return
	}
	w.out.Entries = w.entries()
	w.propose(joined(w.models[0], w.digits, true))
	w.next()
	if rankOf(w.models[0]) < len(w.quotes) {
		w.residuals()
	}
	w.out.Notes = append(w.out.Notes, "Taken for granted: no charge is below 0, and a price a piece never rises with the quantity nor falls with the size.")
}

// propose puts figures into a list: for each unknown in turn the simplest that
// still agrees with the quotes, the lowest where they leave it open.
func (w *work) propose(m *model) {
	bounds := m.bounds(true)
	values := make([]*big.Rat, m.columns())
	order := []int{colour, post, hard, shipping, die}
	for j := unitFrom; j < m.columns(); j++ {
		order = append(order, j)
	}
	for _, j := range order {
		if !m.quoted(j) {
			continue
		}
		p := newProgram(m.columns(), bounds)
		if p == nil {
			return // cannot be: every figure before left room
		}
		low, high := m.span(p, j)
		if high == nil {
			high = low
		}
		v := simplest(low, high)
		values[j] = v
		up, down := make([]*big.Rat, m.columns()), make([]*big.Rat, m.columns())
		for k := range up {
			up[k], down[k] = new(big.Rat), new(big.Rat)
		}
		up[j].SetInt64(1)
		down[j].SetInt64(-1)
		bounds = append(bounds, bound{up, v}, bound{down, new(big.Rat).Neg(v)})
	}
	w.out.List = m.list(w.base, values)
	for i := range w.out.Entries {
		w.out.Entries[i].Value = at(&w.out.List, w.out.Entries[i].Cell, m, w.out.Entries[i].Value)
	}
}

// quoted says whether any quote hangs on an unknown.
func (m *model) quoted(j int) bool {
	for _, row := range m.rows {
		if row[j].Sign() != 0 {
			return true
		}
	}
	return false
}

// list is a price list of values; what has none is not known.
func (m *model) list(base run.PriceList, values []*big.Rat) run.PriceList {
	l := run.PriceList{ID: base.ID, Name: base.Name, Currency: base.Currency, MinorDigits: base.MinorDigits}.Copy()
	rate := func(j int) run.Rate {
		if values[j] == nil {
			return run.Rate{}
		}
		return exact(values[j])
	}
	charge := func(j int, by run.ChargeBy) run.Charge { return run.Charge{Rate: rate(j), By: by} }
	l.Die.Flat = rate(die)
	l.Shipping.By, l.Shipping.Flat = run.ShipFlat, rate(shipping)
	l.Colours.Included, l.Colours.Further = m.included, charge(colour, m.colourBy)
	l.Colours.Fill.Listed = []run.KindCharge{{ID: string(sizing.Hard), Charge: charge(hard, m.hardBy)}}
	l.Back.Post = charge(post, run.PerPiece)
	l.Pieces.SizeBy, l.Pieces.Together, l.Pieces.Sizes = sizing.ByLongest, run.ByVersion, append([]unit.MM{}, m.sizes...)
	for c, from := range m.counts {
		b := run.Break{From: from}
		for s := range m.sizes {
			b.Unit = append(b.Unit, rate(unitFrom+s*len(m.counts)+c))
		}
		l.Pieces.Breaks = append(l.Pieces.Breaks, b)
	}
	return l
}

// exact is a fraction as a rate, to as many places as a list's rates have.
func exact(r *big.Rat) run.Rate {
	d, _ := decimal.NewFromString(strings.TrimRight(strings.TrimRight(r.FloatString(mostDecimals), "0"), "."))
	return run.Of(d)
}

// residuals prices every quote by the proposed list.
func (w *work) residuals() {
	for i := range w.quotes {
		q := &w.quotes[i]
		total, ok := priced(w.out.List, q)
		if !ok {
			continue
		}
		off := total.Sub(q.Total)
		says := "exactly"
		if !off.IsZero() {
			word := "more"
			if off.IsNegative() {
				word = "less"
			}
			says = fmt.Sprintf("%s %s by the list", unit.Money(off.Abs(), w.base.Currency, w.digits), word)
		}
		w.out.Residuals = append(w.out.Residuals, QuoteResidual{Text: q.Text, Off: off, Says: says})
	}
}

// priced is what a list asks for a quote.
func priced(l run.PriceList, q *PlainQuote) (decimal.Decimal, bool) {
	if !q.Shipping {
		l.Shipping.Flat = run.Of(decimal.Zero)
	}
	it := run.Item{NewDie: q.Die, Longest: q.Size, Mean: q.Size, Enamels: q.Colours, Posts: q.Posts, Quantity: q.Quantity, Fill: sizing.Soft}
	if q.Hard {
		it.Fill = sizing.Hard
	}
	if l.Colours.Further.By == run.SetUp {
		it.NewDie = true // a set-up is paid with the die; one without has it in the quote all the same
		if !q.Die {
			l.Die.Flat = run.Of(decimal.Zero)
		}
	}
	got, err := run.Price(l, []run.Item{it})
	return got.Total, err == nil
}
