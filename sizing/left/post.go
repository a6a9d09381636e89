package left

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// parcel is what one parcel weighs, in grams, how thick it is, in mm, and the
// class it goes by.
type parcel struct {
	grams, mm float64
	class     int
}

// parcelOf packs pieces side by side, in one layer. ok is false when no class
// takes it.
func (p *Selling) parcelOf(ch *Channel, pieces int) (k parcel, ok bool) {
	k.grams = float64(float64(pieces)*(p.Grams+p.Packing.CardGrams+p.Packing.BagGrams)) + p.Packing.EnvelopeGrams + ch.OthersGrams
	k.mm = p.MM + p.Packing.EnvelopeMM
	k.class = -1
	for i, c := range p.Classes {
		if k.grams > c.Grams || k.mm > c.MM {
			continue
		}
		if k.class < 0 || c.Price.LessThan(p.Classes[k.class].Price) {
			k.class = i
		}
	}
	return k, k.class >= 0
}

// postage is what posting some pieces costs, as many to a parcel as a sale
// has. The last parcel may hold fewer.
func (p *Selling) postage(ch *Channel, pieces int) decimal.Decimal {
	per := ch.perSale()
	sum := decimal.Zero
	if full := pieces / per; full > 0 {
		sum = sum.Add(p.parcelPrice(ch, per).Mul(decimal.NewFromInt(int64(full))))
	}
	if rest := pieces % per; rest > 0 && ch.Kind != Set {
		sum = sum.Add(p.parcelPrice(ch, rest))
	}
	return sum
}

// parcelPrice is the price of a parcel that was found to have a class.
func (p *Selling) parcelPrice(ch *Channel, pieces int) decimal.Decimal {
	k, ok := p.parcelOf(ch, pieces)
	if !ok {
		return decimal.Zero // a lighter parcel than the one that was checked
	}
	return p.Classes[k.class].Price
}

// posts refuses parcels that no class takes.
func (p *Selling) posts(f *unit.Faults) {
	for i := range p.Channels {
		ch := &p.Channels[i]
		if !ch.Posted {
			continue
		}
		if k, ok := p.parcelOf(ch, ch.perSale()); !ok {
			f.Say(fmt.Sprintf("channels[%d].posted", i), "A parcel of %s with %s weighs %s and is %s thick: no class of post takes it.",
				ch.Name, piecesOf(ch.perSale()), grams(k.grams), unit.InMM(unit.MM(k.mm), 1))
		}
	}
}

// postNotes says where a thinner parcel would be cheaper: a clutch and a card
// often leave the cheapest letter (common practice, no published source).
func (p *Selling) postNotes() []string {
	notes := []string{}
	for i := range p.Channels {
		ch := &p.Channels[i]
		if !ch.Posted {
			continue
		}
		k, ok := p.parcelOf(ch, ch.perSale())
		if !ok {
			continue
		}
		thin := -1
		for j, c := range p.Classes {
			if k.grams <= c.Grams && k.mm > c.MM && c.Price.LessThan(p.Classes[k.class].Price) && (thin < 0 || c.Price.LessThan(p.Classes[thin].Price)) {
				thin = j
			}
		}
		if thin >= 0 {
			saves := p.Classes[k.class].Price.Sub(p.Classes[thin].Price)
			notes = append(notes, fmt.Sprintf("%s: a parcel is %s thick and goes by %s; at most %s thick it would go by %s and cost %s less.",
				ch.Name, unit.InMM(unit.MM(k.mm), 1), p.Classes[k.class].Name, unit.InMM(unit.MM(p.Classes[thin].MM), 1), p.Classes[thin].Name, p.money(saves)))
		}
	}
	return notes
}

func grams(g float64) string { return fmt.Sprintf("%.0f g", g) }

func piecesOf(n int) string {
	if n == 1 {
		return "1 piece"
	}
	return fmt.Sprintf("%d pieces", n)
}
