package left

import (
	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Keys of the lines of a channel.
const (
	KeySold     = "sold"
	KeyCut      = "cut"
	KeyPostPaid = "post paid"
	KeyTax      = "tax"
	KeyFee      = "fee"
	KeyFeeFixed = "fixed fee"
	KeyPostage  = "postage"
	KeyEnvelope = "envelope"
	KeyCard     = "card"
	KeyBag      = "bag"
	KeyOthers   = "others"
	KeyOnce     = "once"
	KeyMaking   = "making"
	KeyGiven    = "given"
)

// words are the keys as a person reads them.
var words = map[string]string{
	KeySold: "Paid by buyers", KeyCut: "Kept by the shop", KeyPostPaid: "Posting paid by buyers", KeyTax: "Tax on sales",
	KeyFee: "Fees", KeyFeeFixed: "Fixed fees", KeyPostage: "Postage", KeyEnvelope: "Envelopes", KeyCard: "Backing cards",
	KeyBag: "Bags", KeyOthers: "Rest of the sets", KeyOnce: "Paid once", KeyMaking: "Share of the maker's bill", KeyGiven: "Passed on",
}

// Money is one line: what comes in, above 0, or goes out, below. It is rounded
// once, half away from zero, to minor units.
type Money struct {
	Key    string          `json:"key"`
	What   string          `json:"what"`
	Amount decimal.Decimal `json:"amount"`
	Says   string          `json:"says"`
}

// perSale is how many pieces go into one sale.
func (ch *Channel) perSale() int { return max(1, ch.Pieces) }

// sales is how many sales some pieces make; of a set only whole ones.
func (ch *Channel) sales(pieces int) int {
	if ch.Kind == Set {
		return pieces / ch.perSale()
	}
	return (pieces + ch.perSale() - 1) / ch.perSale()
}

// priceOf is what one piece, or one set, is sold for.
func (p *Selling) priceOf(ch *Channel) decimal.Decimal {
	switch {
	case ch.Kind == Gift:
		return decimal.Zero
	case ch.Price.IsZero():
		return p.Price
	}
	return ch.Price
}

// ledger gathers lines, each rounded once.
type ledger struct {
	digits int
	lines  []Money
	sum    decimal.Decimal
}

func (l *ledger) add(key string, exact decimal.Decimal) {
	amount := unit.RoundMoney(exact, l.digits)
	if amount.IsZero() {
		return
	}
	l.lines = append(l.lines, Money{Key: key, Amount: amount})
	l.sum = l.sum.Add(amount)
}

// moneyOf is what some pieces of a channel bring and cost, without the maker's
// bill; making tells their share of it.
func (p *Selling) moneyOf(ch *Channel, pieces int, making *sharer) ledger {
	l := ledger{digits: p.MinorDigits}
	sales := decimal.NewFromInt(int64(ch.sales(pieces)))
	n := decimal.NewFromInt(int64(pieces))
	if ch.Kind == Set {
		n = sales
	}
	listed := p.priceOf(ch).Mul(n)
	cut := share(listed, ch.Cut)
	paid := sales.Mul(ch.PostPaid)
	within, onTop := p.taxed(ch, listed.Sub(cut), paid)
	l.add(KeySold, listed)
	l.add(KeyCut, cut.Neg())
	l.add(KeyPostPaid, paid)
	l.add(KeyTax, within.Neg())
	l.add(KeyFee, share(listed.Sub(cut).Add(paid).Add(onTop), ch.FeePercent).Neg())
	l.add(KeyFeeFixed, sales.Mul(ch.FeeFixed).Neg())
	p.packs(&l, ch, pieces, sales)
	l.add(KeyOnce, ch.Once.Neg())
	if ch.Given.IsPositive() {
		p.gives(&l, ch, listed.Sub(cut), making.exact(pieces))
	}
	return l
}

// packs adds what packing and posting cost.
func (p *Selling) packs(l *ledger, ch *Channel, pieces int, sales decimal.Decimal) {
	n := decimal.NewFromInt(int64(pieces))
	if ch.Posted {
		l.add(KeyPostage, p.postage(ch, pieces).Neg())
		l.add(KeyEnvelope, sales.Mul(p.Packing.Envelope).Neg())
	}
	l.add(KeyCard, n.Mul(p.Packing.Card).Neg())
	l.add(KeyBag, n.Mul(p.Packing.Bag).Neg())
	l.add(KeyOthers, sales.Mul(ch.Others).Neg())
}

// gives adds what is passed on: of the price without tax, or of what is left.
func (p *Selling) gives(l *ledger, ch *Channel, price, making decimal.Decimal) {
	of := l.sum.Sub(making)
	if ch.GivenOf == OfPrice {
		of = price.Sub(p.priceTax(ch, price))
	}
	if of.IsPositive() {
		l.add(KeyGiven, share(of, ch.Given).Neg())
	}
}

// taxed is the tax within what buyers pay, or on top of it.
func (p *Selling) taxed(ch *Channel, price, posting decimal.Decimal) (within, onTop decimal.Decimal) {
	if !ch.Taxed {
		return decimal.Zero, decimal.Zero
	}
	base := price
	if p.Tax.OnPosting {
		base = base.Add(posting)
	}
	if p.Tax.Included {
		return p.taxWithin(base), decimal.Zero
	}
	return decimal.Zero, share(base, p.Tax.Percent)
}

// priceTax is the tax within a price.
func (p *Selling) priceTax(ch *Channel, price decimal.Decimal) decimal.Decimal {
	if !ch.Taxed || !p.Tax.Included {
		return decimal.Zero
	}
	return p.taxWithin(price)
}

// taxPlaces is far finer than any rounding that follows.
const taxPlaces = 16

func (p *Selling) taxWithin(base decimal.Decimal) decimal.Decimal {
	return base.Mul(p.Tax.Percent).DivRound(hundred.Add(p.Tax.Percent), taxPlaces)
}

// share takes a percentage, exactly.
func share(of, percent decimal.Decimal) decimal.Decimal { return of.Mul(percent).Shift(-2) }

func (p *Selling) money(d decimal.Decimal) string { return unit.Money(d, p.Currency, p.MinorDigits) }
