package left

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Bounds past which a figure is a slip of the keys (this tool's choice).
const (
	mostPieces   = 20_000
	mostChannels = 20
	mostClasses  = 40
	mostGrams    = 30_000
	mostMM       = 1000
)

var (
	absurd  = decimal.NewFromInt(100_000_000)
	hundred = decimal.NewFromInt(100)
)

// checker gathers what is wrong with a plan.
type checker struct{ unit.Faults }

func (p Selling) check() unit.Faults {
	var c checker
	if digits, ok := unit.MinorDigits(p.Currency); !ok {
		c.Say("currency", "%q is no currency code; it has three capital letters, such as EUR.", p.Currency)
	} else if p.MinorDigits < 0 || p.MinorDigits > digits {
		c.Say("minorDigits", "%s has %d decimals, not %d.", p.Currency, digits, p.MinorDigits)
	}
	c.Whole("pieces", "The number of pieces", p.Pieces, 1, mostPieces)
	c.amount("bill", "The bill", p.Bill)
	c.amount("price", "The price", p.Price)
	c.percent("secondsShare", "The share of pieces with a flaw", p.SecondsShare)
	c.percent("secondsOff", "What pieces with a flaw are cheaper", p.SecondsOff)
	if p.SecondsBy >= len(p.Channels) {
		c.Say("secondsBy", "There is no channel number %d for pieces with a flaw.", p.SecondsBy+1)
	}
	c.percent("tax.percent", "The tax on sales", p.Tax.Percent)
	c.measure("grams", "The weight of a piece", p.Grams, mostGrams)
	c.measure("mm", "The thickness of a piece", p.MM, mostMM)
	c.packing(p.Packing)
	c.classes(p.Classes)
	c.channels(p)
	return c.Faults
}

func (c *checker) amount(field, name string, d decimal.Decimal) {
	switch {
	case d.IsNegative():
		c.Say(field, "%s is %s; it cannot be below 0.", name, d)
	case d.GreaterThanOrEqual(absurd):
		c.Say(field, "%s is %s, which is too much; look for a missing decimal point.", name, d)
	}
}

func (c *checker) percent(field, name string, d decimal.Decimal) {
	if d.IsNegative() || d.GreaterThan(hundred) {
		c.Say(field, "%s is %s percent; it runs from 0 to 100.", name, d)
	}
}

// measure refuses what is below 0, too much, or no number at all.
func (c *checker) measure(field, name string, v, most float64) {
	if !(v >= 0 && v <= most) {
		c.Say(field, "%s is %g; it runs from 0 to %g.", name, v, most)
	}
}

func (c *checker) packing(p Wrapping) {
	c.amount("packing.envelope", "The envelope", p.Envelope)
	c.amount("packing.card", "The backing card", p.Card)
	c.amount("packing.bag", "The bag", p.Bag)
	c.measure("packing.envelopeGrams", "The weight of the envelope", p.EnvelopeGrams, mostGrams)
	c.measure("packing.cardGrams", "The weight of the backing card", p.CardGrams, mostGrams)
	c.measure("packing.bagGrams", "The weight of the bag", p.BagGrams, mostGrams)
	c.measure("packing.envelopeMM", "The thickness of the packing", p.EnvelopeMM, mostMM)
}

func (c *checker) classes(all []PostClass) {
	if len(all) > mostClasses {
		c.Say("classes", "%d classes of post are more than %d; leave some out.", len(all), mostClasses)
	}
	for i, p := range all {
		at := fmt.Sprintf("classes[%d]", i)
		c.measure(at+".grams", "What "+p.Name+" may weigh", p.Grams, mostGrams)
		c.measure(at+".mm", "How thick "+p.Name+" may be", p.MM, mostMM)
		c.amount(at+".price", "The price of "+p.Name, p.Price)
	}
}

func (c *checker) channels(p Selling) {
	if len(p.Channels) > mostChannels {
		c.Say("channels", "%d channels are more than %d; join some.", len(p.Channels), mostChannels)
	}
	sum := decimal.Zero
	for i, ch := range p.Channels {
		c.channel(fmt.Sprintf("channels[%d]", i), ch)
		sum = sum.Add(ch.Share)
	}
	if sum.GreaterThan(hundred) {
		c.Say("channels", "The shares of the channels add up to %s percent; they cannot be more than 100.", sum)
	}
}

func (c *checker) channel(at string, ch Channel) {
	switch ch.Kind {
	case Online, Fair, Wholesale, Consignment, Set, Gift, Cause:
	default:
		c.Say(at+".kind", "%q is no kind of channel.", string(ch.Kind))
	}
	of := " of " + ch.Name
	c.percent(at+".share", "The share"+of, ch.Share)
	c.amount(at+".price", "The price"+of, ch.Price)
	c.Whole(at+".pieces", "The number of pieces in a sale"+of, ch.Pieces, 0, mostPieces)
	c.percent(at+".cut", "What the shop keeps"+of, ch.Cut)
	c.percent(at+".feePercent", "The fee"+of, ch.FeePercent)
	c.amount(at+".feeFixed", "The fixed fee"+of, ch.FeeFixed)
	c.amount(at+".once", "What is paid once"+of, ch.Once)
	c.amount(at+".postPaid", "The posting paid by buyers"+of, ch.PostPaid)
	c.amount(at+".others", "The rest of a set"+of, ch.Others)
	c.measure(at+".othersGrams", "The weight of the rest of a set"+of, ch.OthersGrams, mostGrams)
	c.percent(at+".given", "What is passed on"+of, ch.Given)
	if ch.Given.IsPositive() && ch.GivenOf != OfPrice && ch.GivenOf != OfLeft {
		c.Say(at+".givenOf", "What is passed on%s is a share of the price or of what is left, not of %q.", of, string(ch.GivenOf))
	}
}
