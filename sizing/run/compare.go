package run

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Maker is one price list to compare, and what one unit of its currency is in
// the currency compared in.
type Maker struct {
	List PriceList
	Rate decimal.Decimal
}

// Comparison holds makers against each other over the quantity of one item.
type Comparison struct {
	Currency string     `json:"currency"`
	Makers   []Compared `json:"makers"` // in the order given
	// Ranges say who is cheapest from where to where, without gaps.
	Ranges []CheapRange `json:"ranges"`
	// Beyond is what differs, or may, beside the price.
	Beyond []BeyondPrice `json:"beyond"`
}

// Compared is one maker's totals. Between two points that stand in a row the
// total is a straight line.
type Compared struct {
	List     string         `json:"list"` // ID
	Name     string         `json:"name"`
	Invented bool           `json:"invented"`
	Points   []ComparePoint `json:"points"`
	// Now is the point at the quantity asked for; Problem says why there is none.
	Now     *ComparePoint `json:"now,omitempty"`
	Problem string        `json:"problem"`
}

// ComparePoint is a total of the whole order, in the currency compared in.
type ComparePoint struct {
	Quantity  int             `json:"quantity"`
	Total     decimal.Decimal `json:"total"`
	Draw      float64         `json:"draw"` // the total, to draw and not to show
	TotalSays string          `json:"totalSays"`
	EachSays  string          `json:"eachSays"` // a piece of the whole order
}

// CheapRange is the quantities at which one maker is cheapest.
type CheapRange struct {
	From  int    `json:"from"`
	To    int    `json:"to"`
	Maker int    `json:"maker"` // place in Makers; -1 where none has a price
	Words string `json:"words"`
}

// comparing is a comparison at work.
type comparing struct {
	makers []Maker
	order  *Wanted
	at     int
	into   Exchange
}

// mostCompared bounds the quantities compared (this tool's choice).
const mostCompared = 20_000

// Compare prices an order by each maker while the quantity of item `at` runs
// from 1 to upTo. The makers' totals are brought to one currency, that of into.
func Compare(makers []Maker, o Wanted, at, upTo int, into Exchange) (Comparison, error) {
	if at < 0 || at >= len(o.Items) {
		return Comparison{}, refuse("There is nothing in the order to compare.", "Add a design.")
	}
	if upTo < 1 || upTo > mostCompared {
		return Comparison{}, refuse(fmt.Sprintf("Makers cannot be compared up to %d pieces.", upTo), fmt.Sprintf("Give 1 to %d.", mostCompared))
	}
	o.Terms.Into = nil
	c := &comparing{makers: makers, order: &o, at: at, into: into}
	out := Comparison{Currency: into.Currency, Makers: []Compared{}, Beyond: beyond(makers)}
	cuts := c.cuts(upTo)
	for i := range makers {
		one, err := c.compared(i, cuts)
		if err != nil {
			return Comparison{}, err
		}
		out.Makers = append(out.Makers, one)
	}
	out.Ranges = c.ranges(cuts)
	return out, nil
}

// compared is one maker's totals at the cuts, and at the quantity asked for.
func (c *comparing) compared(i int, cuts []int) (Compared, error) {
	m := &c.makers[i]
	e := c.into
	e.Rate = m.Rate
	if err := e.check(); err != nil {
		return Compared{}, err
	}
	out := Compared{List: m.List.ID, Name: m.List.Name, Invented: m.List.Invented, Points: []ComparePoint{}}
	if err := m.List.check(); err != nil {
		out.Problem = err.Error()
		return out, nil
	}
	for _, n := range cuts {
		if p, err := c.point(i, n); err == nil {
			out.Points = append(out.Points, p)
		}
	}
	now, err := c.point(i, c.order.Items[c.at].Quantity)
	if err != nil {
		out.Problem = err.Error()
		return out, nil
	}
	out.Now = &now
	return out, nil
}

// total is what the order costs with n pieces, by a list that has been checked.
func (c *comparing) total(i, n int) (decimal.Decimal, int, error) {
	q, err := c.makers[i].List.bill(c.order.with(c.at, func(it *Item) { it.Quantity = n }))
	if err == nil && len(q.Needs) > 0 {
		err = &Unknown{q.Needs}
	}
	return unit.RoundMoney(q.Total.Mul(c.makers[i].Rate), c.into.MinorDigits), q.Pieces, err
}

func (c *comparing) point(i, n int) (ComparePoint, error) {
	total, pieces, err := c.total(i, n)
	if err != nil {
		return ComparePoint{}, err
	}
	each := total.DivRound(decimal.NewFromInt(int64(pieces)), int32(c.into.MinorDigits)+1)
	return ComparePoint{
		Quantity: n, Total: total, Draw: total.InexactFloat64(),
		TotalSays: unit.Money(total, c.into.Currency, c.into.MinorDigits),
		EachSays:  unit.About(each, c.into.Currency, c.into.MinorDigits),
	}, nil
}

// cuts are the ends of the stretches in which every maker's total is a straight
// line: breaks, minimums, and steps of weight.
func (c *comparing) cuts(upTo int) []int {
	all := []int{1, upTo}
	from := func(n int) {
		if n > 1 && n <= upTo {
			all = append(all, n-1, n)
		}
	}
	it := &c.order.Items[c.at]
	for i := range c.makers {
		l := &c.makers[i].List
		beside := l.counted(c.order.Items, c.at) - it.Quantity
		for _, b := range l.Pieces.Breaks {
			from(b.From - beside)
		}
		from(l.Least.Version)
		from(l.Least.Design)
		for _, other := range c.order.Items {
			from(l.Least.Design - other.Quantity)
		}
		for _, n := range c.heavier(&l.Shipping, upTo) {
			from(n)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// heavier are the quantities at which the parcel reaches the next charge.
func (c *comparing) heavier(h *Shipping, upTo int) (all []int) {
	it := c.order.Items[c.at]
	rest, ok := weightOf(c.order.with(c.at, func(o *Item) { o.Quantity = 0 }).Items)
	if h.By != ShipWeight || !ok || len(h.Weights) == 0 {
		return nil
	}
	reach := func(g unit.Grams) int { return int(float64(g-rest)/float64(it.Weight)) + 1 }
	for _, row := range h.Weights {
		all = append(all, reach(row.UpTo))
	}
	for g := h.Weights[len(h.Weights)-1].UpTo; reach(g) <= upTo; g += 1000 {
		all = append(all, reach(g))
	}
	return all
}

// cheapest is the maker with the lowest total, the first of those with the
// same; -1 when none has a price.
func (c *comparing) cheapest(n int) int {
	best := -1
	var least decimal.Decimal
	for i := range c.makers {
		if c.makers[i].List.check() != nil {
			continue
		}
		if total, _, err := c.total(i, n); err == nil && (best < 0 || total.LessThan(least)) {
			best, least = i, total
		}
	}
	return best
}

// ranges follows who is cheapest over the quantity. In a stretch without a cut
// totals are straight lines, so that one who is cheapest at both ends is so all
// along; else the change is looked for by halves.
func (c *comparing) ranges(cuts []int) []CheapRange {
	var all []CheapRange
	add := func(n, maker int) {
		if k := len(all) - 1; k >= 0 && all[k].Maker == maker {
			all[k].To = n
			return
		}
		all = append(all, CheapRange{From: n, To: n, Maker: maker})
	}
	var follow func(a, b, atA, atB int)
	follow = func(a, b, atA, atB int) {
		if b-a < 2 || atA == atB {
			add(b, atB)
			return
		}
		mid := (a + b) / 2
		atMid := c.cheapest(mid)
		follow(a, mid, atA, atMid)
		follow(mid, b, atMid, atB)
	}
	before := c.cheapest(cuts[0])
	add(cuts[0], before)
	for i := 1; i < len(cuts); i++ {
		now := c.cheapest(cuts[i])
		follow(cuts[i-1], cuts[i], before, now)
		before = now
	}
	for i := range all {
		if i > 0 {
			all[i].From = all[i-1].To + 1
		}
		all[i].Words = c.words(&all[i], i == len(all)-1)
	}
	return all
}

func (c *comparing) words(r *CheapRange, last bool) string {
	where := fmt.Sprintf("%d to %d pieces", r.From, r.To)
	switch {
	case last && r.From > 1:
		where = fmt.Sprintf("From %d pieces", r.From)
	case r.From == r.To:
		where = pieces(r.From)
	}
	if r.Maker < 0 {
		return where + ": nobody here has a price."
	}
	return where + ": " + c.makers[r.Maker].List.Name + " is cheapest."
}
