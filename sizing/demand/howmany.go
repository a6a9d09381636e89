package demand

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// VersionGuess is what is thought of the demand for one version.
type VersionGuess struct {
	Name  string `json:"name"`
	Guess Guess  `json:"guess"`
}

// Question asks how many pieces to order.
type Question struct {
	Versions []VersionGuess
	Stake    Stake
	// Bill goes by the number of pieces in all. Split, where it is given, takes
	// its place: it prices so many pieces of each version, flaws included.
	Bill  Bill
	Split func(each []int) (total decimal.Decimal, ok bool)
	// Most is the largest order that is looked at, and Look lists further orders
	// to tell of, such as price breaks.
	Most int
	Look []int
	// Breaks are the orders at which the bill may fall, rising: between two of
	// them a larger one costs no less, which saves asking for most bills. Nil
	// when that is not known.
	Breaks []int
}

// VersionOutcome is what an order holds of one version.
type VersionOutcome struct {
	Name     string  `json:"name"`
	Quantity int     `json:"quantity"` // to order, flaws included
	Good     int     `json:"good"`     // of these to sell
	Sold     float64 `json:"sold"`     // on average
	// SellOut is the chance that all sell, TenthLeft that more than a tenth of
	// those to sell is left.
	SellOut   float64 `json:"sellOut"`
	TenthLeft float64 `json:"tenthLeft"`
}

// OrderOutcome is what an order of some size comes to. Chances run from 0 to 1.
type OrderOutcome struct {
	Quantity int             `json:"quantity"`
	Bill     decimal.Decimal `json:"bill"`
	// Left is what is left on average when all is paid, Worth the same less the
	// good will of buyers who found none: the best order has the highest Worth.
	Left      decimal.Decimal  `json:"left"`
	Worth     decimal.Decimal  `json:"worth"`
	Good      int              `json:"good"`
	Sold      float64          `json:"sold"`
	Leftover  float64          `json:"leftover"`
	Missed    float64          `json:"missed"`
	SellOut   float64          `json:"sellOut"`
	TenthLeft float64          `json:"tenthLeft"`
	Lose      float64          `json:"lose"`
	Covering  int              `json:"covering"` // least number sold that loses nothing; below 0 when not even all
	LeftSays  string           `json:"leftSays"`
	Versions  []VersionOutcome `json:"versions"`
}

// HowMany is the answer.
type HowMany struct {
	Best OrderOutcome `json:"best"`
	// Rows are the orders asked for that can be placed, by their size.
	Rows   []OrderOutcome `json:"rows"`
	Points []LeftAt       `json:"points"` // for a chart, by the number ordered
	Mean   float64        `json:"mean"`   // wanted on average
	Likely [2]int         `json:"likely"` // wanted with a chance of 8 in 10, for one version
	Names  []string       `json:"names"`  // what the distributions are called, one for each version
	Says   string         `json:"says"`
	Notes  []string       `json:"notes"`
}

// LeftAt is one point of a chart.
type LeftAt struct {
	Quantity int             `json:"quantity"`
	Left     decimal.Decimal `json:"left"`
}

// Most is how many pieces a usual search goes up to.
const Most = 5000

const (
	mostVersions = 20
	chartPoints  = 60
	mostLook     = 60
)

// search is a question that was found sound.
type search struct {
	Question
	spread                         *spread
	flaws                          flaws
	each, leftover, second, missed float64
}

// Ask finds the order that leaves most on average. Faults come back instead.
func Ask(q Question) (*HowMany, unit.Faults) {
	s, f := q.ready()
	if len(f) > 0 {
		return nil, f
	}
	best, ok := s.best()
	if !ok {
		f.Say("bill", "No order up to %d pieces can be placed: nothing has a price.", q.Most)
		return nil, f
	}
	a := &HowMany{Best: s.outcome(best), Rows: []OrderOutcome{}, Mean: shown(s.spread.mean()), Names: []string{}, Notes: []string{}}
	for _, n := range s.looks() {
		a.Rows = append(a.Rows, s.outcome(n))
	}
	for _, v := range q.Versions {
		a.Names = append(a.Names, v.Guess.Names())
	}
	if d := s.spread.wanted; len(d) == 1 {
		a.Likely = [2]int{d[0].Quantile(0.1), d[0].Quantile(0.9)}
	}
	a.Points = s.points(best)
	s.say(a)
	return a, f
}

func (q Question) ready() (*search, unit.Faults) {
	var f unit.Faults
	s := &search{Question: q}
	if q.Split != nil {
		s.Breaks = nil // a version may reach a break at any number in all
	}
	q.Stake.check(&f)
	f.Whole("most", "The largest order to look at", q.Most, 1, MostWanted)
	if n := len(q.Versions); n == 0 || n > mostVersions {
		f.Say("versions", "An order has 1 to %d versions, not %d.", mostVersions, n)
	}
	if len(q.Look) > mostLook {
		f.Say("look", "%d orders are more than %d to tell of; leave some out.", len(q.Look), mostLook)
	}
	for i, n := range q.Look {
		f.Whole(fmt.Sprintf("look[%d]", i), "The order to tell of", n, 0, MostWanted)
	}
	var wanted []Distribution
	for i, v := range q.Versions {
		d, g := v.Guess.Distribution(fmt.Sprintf("versions[%d].guess", i))
		f = append(f, g...)
		wanted = append(wanted, d)
	}
	s.spread = newSpread(wanted)
	if len(f) > 0 {
		return s, f
	}
	s.flaws = q.Stake.flaws()
	s.each, s.leftover = q.Stake.Each.InexactFloat64(), q.Stake.Leftover.InexactFloat64()
	s.second, s.missed = q.Stake.Second.InexactFloat64(), q.Stake.Missed.InexactFloat64()
	return s, f
}

// bill is what an order costs; nothing ordered costs nothing.
func (s *search) bill(n int) (decimal.Decimal, bool) {
	switch {
	case n == 0:
		return decimal.Zero, true
	case s.Split != nil:
		return s.Split(s.spread.ordered(s.sellable(n), n))
	}
	return s.Bill(n)
}

// sellable is the stake's, without its exact share being read each time.
func (s *search) sellable(n int) int { return max(0, n-s.flaws.of(n)-s.Stake.Free) }

// earns is what an order brings on average, in money, before the bill.
func (s *search) earns(n int) float64 {
	good := s.sellable(n)
	sold := s.spread.soldOf(good)
	v := float64(s.each * sold)
	v += float64(s.leftover * (float64(good) - sold))
	return v + float64(s.second*float64(s.flaws.of(n)))
}

// brings is earns less the good will of those who found none.
func (s *search) brings(n int) float64 {
	short := s.spread.mean() - s.spread.soldOf(s.sellable(n))
	return s.earns(n) - float64(s.missed*short)
}

// left is what an order leaves on average, in money.
func (s *search) left(n int, bill decimal.Decimal) float64 {
	return s.earns(n) - bill.InexactFloat64()
}

// worth is left less the good will of those who found none.
func (s *search) worth(n int, bill decimal.Decimal) float64 {
	return s.brings(n) - bill.InexactFloat64()
}

// best looks at every order that has a piece for each one paid for; none
// ordered is one of them, unless something has been paid.
func (s *search) best() (n int, ok bool) { return s.bestFrom(s.paid()) }

// bestFrom looks at every order from a number on; a larger one has to be worth
// more.
func (s *search) bestFrom(least int) (n int, ok bool) {
	if s.Breaks != nil {
		return s.bestByBreaks(least)
	}
	var p peak
	for k := least; k <= s.Most; k++ {
		s.try(&p, k)
	}
	return p.n, p.ok
}

// paid is the least order that has a piece for every order that came in.
func (s *search) paid() int {
	owed := 0
	for _, v := range s.Versions {
		if v.Guess.Kind == ByOrders {
			owed += v.Guess.Orders
		}
	}
	n := owed
	for owed > 0 && n < s.Most && s.sellable(n) < owed {
		n++
	}
	return n
}

// looks are the orders to tell of that can be placed, rising, each once.
func (s *search) looks() []int {
	all := slices.Clone(s.Look)
	slices.Sort(all)
	return slices.DeleteFunc(slices.Compact(all), func(n int) bool {
		_, can := s.bill(n)
		return !can
	})
}
