package run

import (
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Counting is how far the pieces that come may differ from those ordered, percent.
type Counting struct {
	Over       Rate `json:"over"`
	OverBilled bool `json:"overBilled"` // pieces too many are billed
	Under      Rate `json:"under"`
	// UnderBilled is true of a maker who bills pieces that did not come.
	UnderBilled bool `json:"underBilled"`
}

// Landed is what a piece costs once it is here: the total over the pieces
// without flaws, and over those of them that are sold and not given away.
type Landed struct {
	Good int `json:"good"`
	Sold int `json:"sold"`
	// PerGood and PerSold are derived ("about").
	PerGood decimal.Decimal `json:"perGood"`
	PerSold decimal.Decimal `json:"perSold"`
	// As shown; SoldSays is empty when nothing is left to sell.
	GoodSays string `json:"goodSays"`
	SoldSays string `json:"soldSays"`
	// Short is the same when as few come as the maker may send; absent when none
	// may be missing.
	Short *Landed `json:"short,omitempty"`
	// Words says how it was counted.
	Words string `json:"words"`
}

// landed shares a total out over what can be sold.
func landed(l *PriceList, o *Wanted, q *Quote) (*Landed, error) {
	t := &o.Terms
	if !(t.Seconds >= 0 && t.Seconds <= 100) {
		return nil, refuse(fmt.Sprintf("%g in a hundred cannot be seconds.", t.Seconds), "Give 0 to 100.")
	}
	if t.Free < 0 {
		return nil, refuse("Fewer than no pieces cannot be given away.", "Give 0 or more.")
	}
	all := q.shared(q.Pieces, q.Total, t)
	if n := missing(l, o.Items); n > 0 {
		total := q.Total
		if !l.Count.UnderBilled {
			total = total.Sub(q.unbilled(n))
		}
		all.Short = q.shared(q.Pieces-n, total, t)
		all.Short.Words = fmt.Sprintf("If %s missing: ", are(n)) + all.Short.Words
	}
	return all, nil
}

// missing is how many pieces may fail to come, version by version.
func missing(l *PriceList, items []Item) int {
	n := 0
	for _, it := range items {
		share := l.Count.Under.Value().Mul(decimal.NewFromInt(int64(it.Quantity))).Shift(-2)
		n += int(share.Floor().IntPart())
	}
	return n
}

// unbilled is what n pieces fewer take off the bill: their share of what is
// counted by the piece.
func (q *Quote) unbilled(n int) decimal.Decimal {
	var byPiece decimal.Decimal
	for i := range q.Lines {
		if q.Lines[i].byPiece {
			byPiece = byPiece.Add(q.Lines[i].Amount)
		}
	}
	share := byPiece.Mul(decimal.NewFromInt(int64(n))).DivRound(decimal.NewFromInt(int64(q.Pieces)), int32(q.MinorDigits)+4)
	return unit.RoundMoney(share, q.MinorDigits)
}

// shared shares a total out over the pieces that came.
func (q *Quote) shared(came int, total decimal.Decimal, t *Terms) *Landed {
	flawed := int(math.Ceil(float64(came)*t.Seconds/100 - 1e-9))
	l := &Landed{Good: came - flawed}
	l.Sold = max(0, l.Good-t.Free)
	l.PerGood, l.GoodSays = q.over(total, l.Good)
	l.PerSold, l.SoldSays = q.over(total, l.Sold)
	l.Words = fmt.Sprintf("%s came, %d set aside for flaws, %d given away, %d to sell.", pieces(came), flawed, min(t.Free, l.Good), l.Sold)
	return l
}

func (q *Quote) over(total decimal.Decimal, n int) (decimal.Decimal, string) {
	if n <= 0 {
		return decimal.Zero, ""
	}
	each := total.DivRound(decimal.NewFromInt(int64(n)), int32(q.MinorDigits)+1)
	return each, About(each, *q)
}

func (v *validation) counting(c *Counting) {
	v.percent("count.over", c.Over, whole)
	v.percent("count.under", c.Under, whole)
}
