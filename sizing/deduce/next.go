package deduce

import (
	"fmt"
	"strings"

	"badgewright/sizing/unit"
)

// next looks for the further quote that would settle most entries, and tell
// most of the models that agree apart.
func (w *work) next() {
	best, words := 0, ""
	var quote PlainQuote
	for _, q := range w.further() {
		names := w.settles(&q)
		apart := w.tellsApart(&q)
		if gain := len(names) + apart; gain > best {
			best, quote = gain, q
			if apart > 0 {
				names = append(names, "how further colours or hard enamel are charged")
			}
			words = fmt.Sprintf("Ask what %s cost: that settles %s.", q.words(), inWords(names))
		}
	}
	if best > 0 {
		quote.Text = quote.words()
		w.out.Next = &FurtherQuote{Quote: quote, Words: words}
	}
}

// further are quotes near those at hand, one change at a time.
func (w *work) further() (all []PlainQuote) {
	seen := map[PlainQuote]bool{}
	key := func(q PlainQuote) PlainQuote {
		q.Text, q.Total = "", w.quotes[0].Total
		return q
	}
	for _, q := range w.quotes {
		seen[key(q)] = true
	}
	add := func(q PlainQuote, change func(*PlainQuote)) {
		change(&q)
		if !seen[key(q)] {
			seen[key(q)] = true
			all = append(all, q)
		}
	}
	least, most := colourRange(w.quotes)
	for _, q := range []PlainQuote{w.quotes[0], w.quotes[len(w.quotes)-1]} {
		add(q, func(q *PlainQuote) { q.Die = !q.Die })
		for n := least + 1; n <= most+1 && least > 0; n++ {
			add(q, func(q *PlainQuote) { q.Colours = n })
		}
		add(q, func(q *PlainQuote) { q.Hard = !q.Hard })
		add(q, func(q *PlainQuote) { q.Posts = 3 - min(q.Posts, 2) })
		add(q, func(q *PlainQuote) { q.Shipping = !q.Shipping })
	}
	s := plainShape(w.quotes)
	for _, size := range s.sizes {
		for _, count := range s.counts {
			add(w.quotes[0], func(q *PlainQuote) { q.Size, q.Quantity = size, count })
		}
	}
	return all
}

// settles names the entries that a further quote would fix in the simplest model.
func (w *work) settles(q *PlainQuote) (names []string) {
	m := w.models[0]
	row, _ := m.row(q)
	if row == nil {
		return nil
	}
	before, _ := m.echelon()
	more := *m
	more.rows = append(append(more.rows[:0:0], m.rows...), row)
	more.quotes = append(append(more.quotes[:0:0], m.quotes...), *q)
	more.totals = append(append(more.totals[:0:0], m.totals...), q.Total.Rat())
	more.slack = append(append(more.slack[:0:0], m.slack...), m.slack[0])
	after, _ := more.echelon()
	for j := range m.columns() {
		if after.settled(j) && !before.settled(j) {
			names = append(names, m.nameOf(j))
		}
	}
	return names
}

func (m *model) nameOf(j int) string {
	if j < unitFrom {
		return [...]string{"the die", "the shipping", "the charge for a further colour", "the charge for a further post", "the charge for hard enamel"}[j]
	}
	s, c := (j-unitFrom)/len(m.counts), (j-unitFrom)%len(m.counts)
	return fmt.Sprintf("the price for %d at %s", m.counts[c], unit.InMM(m.sizes[s], 2))
}

// tellsApart counts the models that expect another total than the first one.
func (w *work) tellsApart(q *PlainQuote) (n int) {
	row, _ := w.models[0].row(q)
	if row == nil {
		return 0
	}
	first := newProgram(w.models[0].columns(), w.models[0].bounds(true))
	low, high := w.models[0].expects(first, q)
	for _, m := range w.models[1:] {
		p := newProgram(m.columns(), m.bounds(true))
		if a, b := m.expects(p, q); a != nil && low != nil && (a.Cmp(high) > 0 || b.Cmp(low) < 0) {
			n++
		}
	}
	return n
}

func (q *PlainQuote) words() string {
	parts := []string{fmt.Sprintf("%d at %s", q.Quantity, unit.InMM(q.Size, 2))}
	if q.Colours == 1 {
		parts = append(parts, "with 1 colour")
	} else if q.Colours > 1 {
		parts = append(parts, fmt.Sprintf("with %d colours", q.Colours))
	}
	if q.Hard {
		parts = append(parts, "hard")
	}
	if q.Posts > 1 {
		parts = append(parts, fmt.Sprintf("%d posts", q.Posts))
	}
	if !q.Die {
		parts = append(parts, "without die")
	}
	if q.Shipping {
		parts = append(parts, "with shipping")
	}
	return strings.Join(parts, " ")
}

// mostNamed is how many entries a sentence names.
const mostNamed = 3

func inWords(names []string) string {
	if n := len(names) - mostNamed; n > 0 {
		names = append(names[:mostNamed:mostNamed], fmt.Sprintf("%d more", n))
	}
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
