package run

import (
	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// wholeOrder is the item of a line that belongs to no one item.
const wholeOrder = -1

// sheet is a quote being written.
type sheet struct {
	list  *PriceList
	lines []Line
	needs []OpenEntry
	// without is what the total leaves out because the list does not say it.
	without []string
}

// priced is an item with its unit price.
type priced struct {
	item          *Item
	at            int // its place in the order
	price         Rate
	named         string // tells its lines from those of other items; empty for the only one
	firstOfDesign bool
	paysDie       bool // a die is cut for it, and no earlier item of the order shares it
}

// put adds a line, rounded once.
func (s *sheet) put(l Line) {
	l.Amount = unit.RoundMoney(l.Each.Mul(decimal.NewFromInt(int64(l.Count))), s.list.MinorDigits)
	s.lines = append(s.lines, l)
}

// once adds what is paid n times by the order.
func (s *sheet) once(key, what string, r Rate, n int, cell string) {
	if !r.Known() {
		s.need(cell, what)
		return
	}
	s.put(Line{Key: key, What: what, Count: 1, Each: r.Value().Mul(decimal.NewFromInt(int64(n))), Item: wholeOrder})
}

// onceFor is once for one item, which the line names.
func (s *sheet) onceFor(p *priced, key, what string, r Rate, n int, cell string) {
	before := len(s.lines)
	s.once(key, what, r, n, cell)
	s.belong(p, before)
}

// belong names the lines since a mark after an item.
func (s *sheet) belong(p *priced, since int) {
	for i := since; i < len(s.lines); i++ {
		s.lines[i].Item = p.at
		s.lines[i].What += p.named
	}
}

// setUp adds what is paid once for a version on a new die; what is free is not
// listed.
func (s *sheet) setUp(p *priced, key, what string, r Rate, n int, cell string) {
	if p.item.NewDie && !r.free() {
		s.onceFor(p, key, what, r, n, cell)
	}
}

// charge adds a charge that falls n times on an item.
func (s *sheet) charge(p *priced, key, what string, c Charge, n int, cell string, evenFree bool) {
	t := tally{price: p.price}
	t.add(c, n, cell)
	s.write(p, key, what, &t, evenFree)
}

// write adds the lines of a tally: by the piece, and once. evenFree lists what
// costs nothing too.
func (s *sheet) write(p *priced, key, what string, t *tally, evenFree bool) {
	for _, cell := range t.missing {
		s.need(cell, what)
	}
	if t.byPiece && !t.priceWanted && (evenFree || !t.each.IsZero()) {
		s.put(Line{Key: key, What: what + p.named, Count: p.item.Quantity, Each: t.each, Item: p.at, byPiece: true})
	}
	if t.atOnce && p.item.NewDie && (evenFree || !t.once.IsZero()) {
		s.put(Line{Key: key, What: what + ", set-up" + p.named, Count: 1, Each: t.once, Item: p.at})
	}
}

// need notes an unknown cell, once.
func (s *sheet) need(cell, what string) {
	for _, n := range s.needs {
		if n.Cell == cell {
			return
		}
	}
	s.needs = append(s.needs, OpenEntry{Cell: cell, What: what, Says: "The list does not say what this costs: " + what + "."})
}

// sum adds up the shown amounts of some lines.
func (s *sheet) sum(of func(*Line) bool) decimal.Decimal {
	var all decimal.Decimal
	for i := range s.lines {
		if of(&s.lines[i]) {
			all = all.Add(s.lines[i].Amount)
		}
	}
	return all
}
