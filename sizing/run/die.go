package run

import "fmt"

// DiePrices is what cutting dies costs. It is not discounted with the pieces (common
// practice, no published source).
type DiePrices struct {
	// Flat is paid for a die of any size, unless BySize holds a charge for each
	// size class.
	Flat   Rate   `json:"flat"`
	BySize []Rate `json:"bySize"`
	// EachVersion is true of a maker who cuts a die for every version; as a rule
	// the versions of a design share one.
	EachVersion bool `json:"eachVersion"`
	// Further is each die beside the first that one design needs.
	Further Rate `json:"further"`
	// KeptMonths is how long a die is kept for reorders; 0 for always, or when
	// the maker does not say.
	KeptMonths int `json:"keptMonths"`
}

// in returns the charge for a size class and its cell.
func (d DiePrices) in(class int) (Rate, string) {
	if class < len(d.BySize) {
		return d.BySize[class], fmt.Sprintf("die.bySize[%d]", class)
	}
	return d.Flat, "die.flat"
}

// cut says whether an item needs a die cut for it: a first order does, and one
// that comes again after the die has been thrown away.
func (d DiePrices) cut(it *Item) bool {
	return it.NewDie || d.KeptMonths > 0 && it.DieAge > d.KeptMonths
}

// shares names the die of an item, the same for those that share it.
func (d DiePrices) shares(it *Item) string {
	if d.EachVersion {
		return it.die() + "\x00" + it.Version
	}
	return it.die()
}

// dies writes the lines of what is cut for an item.
func (s *sheet) dies(p *priced, class int) {
	if !p.paysDie {
		return
	}
	it, what := p.item, "Die, once"
	if !it.NewDie {
		what = fmt.Sprintf("Die, cut again after %d months", it.DieAge)
	}
	rate, cell := s.list.Die.in(class)
	s.onceFor(p, KeyDie, what, rate, 1, cell)
	if n := it.FurtherDies; n > 0 {
		what := "Second die, once"
		if n > 1 {
			what = fmt.Sprintf("%d further dies, once", n)
		}
		s.onceFor(p, KeyFurtherDie, what, s.list.Die.Further, n, "die.further")
	}
}

func (v *validation) die(l *PriceList) {
	d := &l.Die
	v.amount("die.flat", d.Flat)
	for i, r := range d.BySize {
		v.amount(fmt.Sprintf("die.bySize[%d]", i), r)
	}
	if n := len(d.BySize); n > 0 && n != len(l.Pieces.Sizes) {
		v.say("die.bySize", "There are %d die charges for %d sizes; give one for each, or one for all.", n, len(l.Pieces.Sizes))
	}
	v.amount("die.further", d.Further)
	v.count("die.keptMonths", "The months that a die is kept", d.KeptMonths, mostMonths)
}
