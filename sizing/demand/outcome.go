package demand

import (
	"fmt"
	"math"

	"github.com/shopspring/decimal"
)

// fine is the parts of one in chances and averages as they travel.
const fine = 1e6

// shown rounds so, and has one zero only.
func shown(v float64) float64 { return math.Round(v*fine)/fine + 0 }

// amount rounds an average to minor units.
func (s *search) amount(v float64) decimal.Decimal {
	scale := math.Pow10(s.Stake.MinorDigits)
	return decimal.New(int64(math.Round(v*scale)), -int32(s.Stake.MinorDigits))
}

// outcome tells everything of an order that can be placed.
func (s *search) outcome(n int) OrderOutcome {
	bill, _ := s.bill(n)
	good := s.sellable(n)
	sold := s.spread.soldOf(good)
	o := OrderOutcome{
		Quantity: n, Bill: bill, Left: s.amount(s.left(n, bill)), Worth: s.amount(s.worth(n, bill)), Good: good,
		Sold: shown(sold), Leftover: shown(float64(good) - sold), Missed: shown(s.spread.mean() - sold),
		Versions: s.versions(n, good),
	}
	o.LeftSays = s.Stake.money(o.Left)
	selling := s.spread.selling(good)
	o.SellOut, o.TenthLeft = shown(selling.AtLeast(good)), shown(selling.AtMost(tenthLeft(good)))
	need, beyond := s.Stake.covering(n, bill)
	switch {
	case beyond:
		o.Covering, o.Lose = -1, 1
	default:
		o.Covering, o.Lose = need, shown(selling.AtMost(need-1))
	}
	return o
}

// tenthLeft is the most that can be sold with more than a tenth of all left.
func tenthLeft(good int) int {
	if good == 0 {
		return -1
	}
	return good - good/10 - 1
}

func (s *search) versions(n, good int) []VersionOutcome {
	each, ordered := s.spread.of(good), s.spread.ordered(good, n)
	out := make([]VersionOutcome, len(each))
	for i, v := range s.Versions {
		d := s.spread.wanted[i]
		out[i] = VersionOutcome{
			Name: v.Name, Quantity: ordered[i], Good: each[i], Sold: shown(d.Sold(each[i])),
			SellOut: shown(d.AtLeast(each[i])), TenthLeft: shown(d.AtMost(tenthLeft(each[i]))),
		}
	}
	return out
}

// points are for a chart: evenly spread up to well past the best order and all
// that may be wanted, with the orders asked for among them.
func (s *search) points(best int) []LeftAt {
	end := best + best/2
	for _, d := range s.spread.wanted {
		end = max(end, d.Quantile(0.999))
	}
	end = min(end, s.Most)
	want := map[int]bool{best: true}
	for i := range chartPoints + 1 {
		want[end*i/chartPoints] = true
	}
	for _, k := range s.Look {
		want[k] = true
		want[k-1] = true // the eve of a price break
	}
	all := []LeftAt{}
	for n := 0; n <= end; n++ {
		if !want[n] {
			continue
		}
		if bill, can := s.bill(n); can {
			all = append(all, LeftAt{n, s.amount(s.left(n, bill))})
		}
	}
	return all
}

// say puts the answer into words.
func (s *search) say(a *HowMany) {
	b := a.Best
	switch {
	case b.Quantity == 0:
		a.Says = "Ordering nothing leaves most on average: what a piece brings does not cover the bill."
	default:
		a.Says = fmt.Sprintf("%s leave most on average: about %s. All sell with a chance of %s; more than a tenth is left with one of %s; money is lost with one of %s.",
			piecesOf(b.Quantity), b.LeftSays, percent(b.SellOut), percent(b.TenthLeft), percent(b.Lose))
	}
	if b.Quantity == s.Most {
		a.Notes = append(a.Notes, fmt.Sprintf("%s is the largest order that was looked at; a larger one may leave more.", piecesOf(s.Most)))
	}
	if len(s.Versions) > 1 {
		a.Notes = append(a.Notes, s.together())
	}
}

// together says what is taken for granted of several versions.
func (s *search) together() string {
	if s.Split != nil {
		return "Of each number of pieces, the version likeliest to sell one more gets the next. The versions are taken to bring the same, and to sell independently of one another."
	}
	return "The versions are taken to cost the same, to be priced by their number together, and to sell independently of one another."
}

// percent rounds a chance to whole percents, without calling the unlikely
// impossible.
func percent(p float64) string {
	switch {
	case p > 0 && p < 0.01:
		return "under 1 %"
	case p < 1 && p > 0.99:
		return "over 99 %"
	}
	return fmt.Sprintf("%.0f %%", p*100)
}
