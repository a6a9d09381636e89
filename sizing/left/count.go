package left

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"
)

// counts is how many pieces go where.
type counts struct {
	each    []int // by channel
	seconds int   // with a flaw, sold as such
}

func (c counts) out() int {
	n := c.seconds
	for _, k := range c.each {
		n += k
	}
	return n
}

// flawed is how many pieces have a flaw, half up.
func (p *Selling) flawed() int {
	return int(share(p.SecondsShare, decimal.NewFromInt(int64(p.Pieces))).Round(0).IntPart())
}

// count shares the pieces out. Whole sets only; what does not fill one is kept.
func (p *Selling) count() counts {
	good := p.Pieces - p.flawed()
	a := p.apportion()
	for range a.target(good) {
		a.next()
	}
	c := counts{each: a.got}
	for i, ch := range p.Channels {
		if ch.Kind == Set {
			c.each[i] -= c.each[i] % ch.perSale()
		}
	}
	if p.SecondsBy >= 0 {
		c.seconds = p.flawed()
		if ch := p.seconds(); ch.Kind == Set {
			c.seconds -= c.seconds % ch.perSale()
		}
	}
	return c
}

// going is the channels as they are gone to: where no piece has a share and no
// second sells, nothing is paid once either.
func (p *Selling) going() []Channel {
	all := slices.Clone(p.Channels)
	for i := range all {
		if !all[i].Share.IsPositive() && i != p.SecondsBy {
			all[i].Once = decimal.Zero
		}
	}
	return all
}

// seconds is the channel of pieces with a flaw: cheaper, and without what is
// paid once, which the channel itself has paid.
func (p *Selling) seconds() Channel {
	ch := p.Channels[p.SecondsBy]
	ch.Price = p.priceOf(&ch)
	ch.Price = ch.Price.Sub(share(ch.Price, p.SecondsOff))
	ch.Name, ch.Once = "Seconds, "+ch.Name, decimal.Zero
	if ch.Price.IsZero() {
		ch.Kind = Gift // given away
	}
	return ch
}

// apportioner hands out pieces one by one by Webster's method: the next piece
// goes to the channel whose share by twice its pieces and one is highest, ties
// to the first. No channel ever loses a piece as the number grows, and shares
// that come out whole come out exactly (Balinski & Young, Fair Representation,
// 2nd ed. 2001).
type apportioner struct {
	shares []int64 // in millionths of a percent
	sum    int64
	got    []int
}

func (p *Selling) apportion() *apportioner {
	a := &apportioner{got: make([]int, len(p.Channels))}
	for _, ch := range p.Channels {
		s := ch.Share.Shift(ratePlaces).Round(0).IntPart()
		a.shares = append(a.shares, s)
		a.sum += s
	}
	return a
}

// target is how many of some pieces have a channel, half up.
func (a *apportioner) target(good int) int {
	const all = 100_000_000
	return int((a.sum*int64(good) + all/2) / all)
}

// next hands out one piece, and says to which channel.
func (a *apportioner) next() int {
	best := -1
	for i, s := range a.shares {
		if s > 0 && (best < 0 || s*int64(2*a.got[best]+1) > a.shares[best]*int64(2*a.got[i]+1)) {
			best = i
		}
	}
	a.got[best]++
	return best
}

const chartPoints = 60

// chart finds what is left for every number of pieces that find their people:
// those without flaw first, then the others.
func (p *Selling) chart(a *LeftAfter, c counts) {
	making := sharer{bill: p.Bill, pieces: p.Pieces, digits: p.MinorDigits}
	all := []decimal.Decimal{}
	left := p.Bill.Round(int32(p.MinorDigits)).Neg()
	net := make([]decimal.Decimal, len(p.Channels)+1)
	for i := range p.Channels {
		net[i] = p.moneyOf(&p.Channels[i], 0, &making).sum
		left = left.Add(net[i])
	}
	all = append(all, left)
	step := func(i, n int, ch *Channel) {
		now := p.moneyOf(ch, n, &making).sum
		left, net[i] = left.Add(now.Sub(net[i])), now
		all = append(all, left)
	}
	order := p.apportion()
	for order.left(c) {
		if i := order.next(); order.got[i] <= c.each[i] {
			step(i, order.got[i], &p.Channels[i])
		}
	}
	if c.seconds > 0 {
		ch := p.seconds()
		for n := 1; n <= c.seconds; n++ {
			step(len(p.Channels), n, &ch)
		}
	}
	p.covers(a, all)
	end := len(all) - 1
	last := -1
	for k := range chartPoints + 1 {
		if n := end * k / chartPoints; n != last {
			a.Points = append(a.Points, LeftWhen{n, all[n]})
			last = n
		}
	}
}

// left says whether some channel has not got all of its pieces.
func (a *apportioner) left(c counts) bool {
	for i, n := range c.each {
		if a.got[i] < n {
			return true
		}
	}
	return false
}

// covers finds the number from which on nothing is lost.
func (p *Selling) covers(a *LeftAfter, all []decimal.Decimal) {
	n := len(all)
	for n > 0 && !all[n-1].IsNegative() {
		n--
	}
	a.Covers = n
	switch {
	case n == len(all):
		a.Covers = -1
		a.CoversSays = fmt.Sprintf("Even when all %s go to plan, the costs are not covered.", piecesOf(len(all)-1))
	case n == 0:
		a.CoversSays = "The costs are covered before a piece is sold."
	default:
		a.CoversSays = fmt.Sprintf("The costs are covered from %s on, when they go to the channels in their shares.", piecesOf(n))
	}
}
