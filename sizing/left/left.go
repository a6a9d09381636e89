package left

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// ChannelRow is what one channel comes to.
type ChannelRow struct {
	Name   string          `json:"name"`
	Kind   ChannelKind     `json:"kind"` // empty for pieces that are kept
	Flawed bool            `json:"flawed"`
	Count  int             `json:"count"` // pieces
	Sales  int             `json:"sales"` // parcels, sets, hands
	Class  string          `json:"class"` // of post, for a full parcel; empty when not posted
	Lines  []Money         `json:"lines"`
	Left   decimal.Decimal `json:"left"` // the sum of the lines
	// PerPiece is Left by Count to one place more than the currency ("about").
	PerPiece decimal.Decimal `json:"perPiece"`
	// Before is what a piece leaves before the maker's bill and before what is
	// paid once, as LeftAfter's Each is over all channels.
	Before   decimal.Decimal `json:"before"`
	LeftSays string          `json:"leftSays"`
	EachSays string          `json:"eachSays"`
}

// LeftWhen is what is left when some number of pieces is sold or given.
type LeftWhen struct {
	Pieces int             `json:"pieces"`
	Left   decimal.Decimal `json:"left"`
}

// LeftAfter is what is left of an order.
type LeftAfter struct {
	Rows  []ChannelRow `json:"rows"`
	Total ChannelRow   `json:"total"` // lines summed by their key
	Out   int          `json:"out"`   // pieces that find their people
	Says  string       `json:"says"`
	// Covers is the number of pieces from which on nothing is lost any more, when
	// they go to the channels in their shares; below 0 when not even all do.
	Covers     int        `json:"covers"`
	CoversSays string     `json:"coversSays"`
	Points     []LeftWhen `json:"points"` // for a chart, rising
	// Each and Second are what a piece, and one with a flaw, leaves before the
	// maker's bill and before what is paid once; Once is the latter. They are
	// what the question of how many to order starts from.
	Each   decimal.Decimal `json:"each"`
	Second decimal.Decimal `json:"second"`
	Once   decimal.Decimal `json:"once"`
	Notes  []string        `json:"notes"`
}

// ratePlaces is the places of a rate, as in a price list.
const ratePlaces = 6

// Reckon works out a plan. Faults come back instead of an answer.
func Reckon(p Selling) (*LeftAfter, unit.Faults) {
	f := p.check()
	if len(f) == 0 {
		p.posts(&f)
	}
	if len(f) > 0 {
		return nil, f
	}
	p.Channels = p.going()
	c := p.count()
	a := &LeftAfter{Rows: []ChannelRow{}, Total: ChannelRow{Name: "All", Count: p.Pieces, Lines: []Money{}}, Notes: p.postNotes(), Once: p.once()}
	making := sharer{bill: p.Bill, pieces: p.Pieces, digits: p.MinorDigits}
	for i, n := range c.each {
		a.add(&p, p.row(&p.Channels[i], n, &making))
	}
	if c.seconds > 0 {
		ch := p.seconds()
		r := p.row(&ch, c.seconds, &making)
		r.Flawed = true
		a.add(&p, r)
	}
	if kept := p.Pieces - c.out(); kept > 0 {
		a.add(&p, p.row(&Channel{Name: "Kept"}, kept, &making))
	}
	p.total(a)
	a.Out = c.out()
	a.Each, a.Second = p.before(c)
	p.chart(a, c)
	return a, f
}

// row makes the lines of one channel.
func (p *Selling) row(ch *Channel, n int, making *sharer) ChannelRow {
	r := ChannelRow{Name: ch.Name, Kind: ch.Kind, Count: n}
	l := ledger{digits: p.MinorDigits}
	if ch.Kind != "" {
		l = p.moneyOf(ch, n, making)
		r.Sales = ch.sales(n)
		if k, ok := p.parcelOf(ch, ch.perSale()); ch.Posted && ok {
			r.Class = p.Classes[k.class].Name
		}
	}
	if n > 0 {
		r.Before = l.sum.Add(unit.RoundMoney(ch.Once, p.MinorDigits)).DivRound(decimal.NewFromInt(int64(n)), ratePlaces)
	}
	l.add(KeyMaking, making.next(n).Neg())
	r.Lines, r.Left = l.lines, l.sum
	return p.said(r)
}

// said puts the amounts of a row into words.
func (p *Selling) said(r ChannelRow) ChannelRow {
	if r.Lines == nil {
		r.Lines = []Money{}
	}
	for i := range r.Lines {
		r.Lines[i].What, r.Lines[i].Says = words[r.Lines[i].Key], p.money(r.Lines[i].Amount)
	}
	r.LeftSays, r.EachSays = p.money(r.Left), ""
	if r.Count > 0 {
		r.PerPiece = r.Left.DivRound(decimal.NewFromInt(int64(r.Count)), int32(p.MinorDigits)+1)
		r.EachSays = unit.About(r.PerPiece, p.Currency, p.MinorDigits)
	}
	return r
}

// sharer shares the bill out among pieces so that the parts add up to it.
type sharer struct {
	bill                 decimal.Decimal
	pieces, past, digits int
}

// exact is the share of some pieces, not rounded to minor units.
func (s *sharer) exact(n int) decimal.Decimal {
	return s.bill.Mul(decimal.NewFromInt(int64(n))).DivRound(decimal.NewFromInt(int64(s.pieces)), taxPlaces)
}

// next is the share of the next pieces: the difference of two rounded sums.
func (s *sharer) next(n int) decimal.Decimal {
	before := unit.RoundMoney(s.exact(s.past), s.digits)
	s.past += n
	return unit.RoundMoney(s.exact(s.past), s.digits).Sub(before)
}

// add keeps a row and sums its lines up by their key.
func (a *LeftAfter) add(p *Selling, r ChannelRow) {
	a.Rows = append(a.Rows, r)
	a.Total.Sales += r.Sales
	a.Total.Left = a.Total.Left.Add(r.Left)
	for _, m := range r.Lines {
		found := false
		for i := range a.Total.Lines {
			if t := &a.Total.Lines[i]; t.Key == m.Key {
				t.Amount, found = t.Amount.Add(m.Amount), true
			}
		}
		if !found {
			a.Total.Lines = append(a.Total.Lines, Money{Key: m.Key, Amount: m.Amount})
		}
	}
}

func (p *Selling) total(a *LeftAfter) {
	a.Total = p.said(a.Total)
	switch {
	case a.Total.Left.IsNegative():
		a.Says = fmt.Sprintf("%s short of the costs when all goes to plan, %s a piece.", p.money(a.Total.Left.Neg()), unit.About(a.Total.PerPiece.Neg(), p.Currency, p.MinorDigits))
	default:
		a.Says = fmt.Sprintf("%s left after costs when all goes to plan, %s a piece.", p.money(a.Total.Left), a.Total.EachSays)
	}
}

func (p *Selling) once() decimal.Decimal {
	sum := decimal.Zero
	for _, ch := range p.Channels {
		sum = sum.Add(unit.RoundMoney(ch.Once, p.MinorDigits))
	}
	return sum
}

// before is what a piece leaves before the bill, over the channels by their
// pieces, and the same for one with a flaw. What is given of what is left
// counts as the plan has it.
func (p *Selling) before(c counts) (each, second decimal.Decimal) {
	making := sharer{bill: p.Bill, pieces: p.Pieces, digits: p.MinorDigits}
	sum, n := decimal.Zero, 0
	for i, k := range c.each {
		ch := &p.Channels[i]
		sum = sum.Add(p.moneyOf(ch, k, &making).sum).Add(unit.RoundMoney(ch.Once, p.MinorDigits))
		n += k
	}
	if n > 0 {
		each = sum.DivRound(decimal.NewFromInt(int64(n)), ratePlaces)
	}
	if c.seconds > 0 {
		ch := p.seconds()
		second = p.moneyOf(&ch, c.seconds, &making).sum.DivRound(decimal.NewFromInt(int64(c.seconds)), ratePlaces)
	}
	return each, second
}
