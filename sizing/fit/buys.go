package fit

import (
	"fmt"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/apart"
	"badgewright/sizing/run"
)

// Buy is one count of enamels: what is lost to the eye and what it costs.
type Buy struct {
	reduce.Loss
	Total, PerPiece string  // money as shown; empty when the list cannot say
	Each            float64 // a piece, to draw; 0 when the list cannot say
	Words           string  // the step from the count before
	// Seen is what an eye loses, when that was asked for.
	Seen *apart.Loss
}

// Sight is what an eye sees of every count, and where from: "on the lapel".
type Sight struct {
	Losses []apart.Loss
	Where  string
}

// Buys prices an order at every count of one version, its item at a place, for
// which the loss is known. sight may be nil.
func Buys(list run.PriceList, o run.Wanted, at int, v *sizing.Version, losses []reduce.Loss, sight *Sight) []Buy {
	o.Items = slices.Clone(o.Items)
	item := &o.Items[at]
	rows := make([]Buy, 0, len(losses))
	var before *run.Quote
	for i, l := range losses {
		row := Buy{Loss: l}
		count(item, v, l.Flats)
		item.Enamels = l.Count
		q, err := run.PriceOrder(list, o)
		if err == nil {
			row.Total, row.PerPiece, row.Each = q.TotalSays, q.EachSays, q.PerPiece.InexactFloat64()
		}
		where := ""
		if sight != nil {
			row.Seen = &sight.Losses[i]
			if row.Seen.Unseen {
				where = sight.Where
			}
		}
		if i > 0 {
			row.Words = step(losses[i-1], l, before, &q, err, where)
		}
		rows = append(rows, row)
		before = nil
		if err == nil {
			before = &q
		}
	}
	return rows
}

// step puts into words what one more enamel costs and what it brings; unseen is
// from where nobody could see that, empty when one does.
func step(from, to reduce.Loss, before, now *run.Quote, err error, unseen string) string {
	cost, brings := "price not known", gain(from, to)
	known := before != nil && err == nil
	if known {
		cost = run.Step(*before, *now)
	}
	if unseen != "" && brings != nothingMore {
		brings = "nobody could see it " + unseen
		if known && before.TotalSays != now.TotalSays {
			brings += ", so it is not worth its price"
		}
	}
	return fmt.Sprintf("%s enamel: %s; %s", ordinal(to.Count), cost, brings)
}

// nothingMore is said once every colour is as it was drawn.
const nothingMore = "nothing more to see"

// The words for how much closer the worst-matched tenth of the picture comes
// change at these ratios of loss (this tool's choice).
const (
	noBetter     = 0.97
	littleCloser = 0.80
	closer       = 0.60
)

// sameToTheEye is a CIEDE2000 difference under which two flat colours side by
// side are seldom told apart (this tool's choice, near the usual "just
// noticeable" of about 1).
const sameToTheEye = 1.0

func gain(from, to reduce.Loss) string {
	if from.Worst < sameToTheEye {
		return nothingMore
	}
	if to.Worst < sameToTheEye {
		return "now every colour is as you drew it"
	}
	switch r := to.Worst / from.Worst; {
	case r > noBetter:
		return "hardly anything to see"
	case r > littleCloser:
		return "the worst-matched tenth of the picture gets a little closer"
	case r > closer:
		return "the worst-matched tenth of the picture gets clearly closer"
	default:
		return "the worst-matched tenth of the picture gets " + times(from.Worst/to.Worst) + " as close"
	}
}

func times(ratio float64) string {
	switch {
	case ratio < 2.5:
		return "twice"
	default:
		return fmt.Sprintf("%.0f times", ratio)
	}
}

var ordinals = []string{"no", "A first", "A second", "A third", "A fourth", "A fifth", "A sixth", "A seventh", "An eighth", "A ninth", "A tenth", "An eleventh", "A twelfth"}

func ordinal(n int) string {
	if n < len(ordinals) {
		return ordinals[n]
	}
	return fmt.Sprintf("Number %d", n)
}
