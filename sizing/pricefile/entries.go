package pricefile

import (
	"fmt"
	"slices"
	"strings"

	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// order is the entries as they are written.
var order = []string{
	"price list", "invented", "currency", "decimals", "size by", "counted together", "least",
	"die", "further die", "die for each version", "months a die is kept",
	"making", "plating", "thickness",
	"colours in the price", "further colour", "fill", "fancy fill", "printed colour", "print set-up",
	"cut-outs in the price", "cut-out", "further part", "ring", "chain",
	"further post", "fastening", "back stamp", "dome", "packaging", "card set-up", "card",
	"proof rounds in the price", "further proof round",
	"delivery", "delivery off", "delivery more", "delivery fee",
	"shipping by", "shipping", "shipping up to", "shipping further kg", "shipping class", "shipping class days",
	"duty", "duty on shipping", "tax", "bank fee", "bank percent",
	"over-run", "over-run billed", "under-run", "under-run billed",
	"charge", "note",
}

var entries map[string]entry

func init() {
	entries = map[string]entry{
		"price list":                {3, setName, func(l *run.PriceList) [][]string { return [][]string{{"", l.Name}} }},
		"currency":                  {3, setCurrency, func(l *run.PriceList) [][]string { return [][]string{{"", l.Currency}} }},
		"decimals":                  {3, setDigits, func(l *run.PriceList) [][]string { return [][]string{{"", fmt.Sprint(l.MinorDigits)}} }},
		"invented":                  flagEntry(func(l *run.PriceList) *bool { return &l.Invented }),
		"size by":                   wordEntry("pieces.sizeBy", []string{"longest", "mean"}, func(l *run.PriceList) string { return string(l.Pieces.SizeBy) }, func(l *run.PriceList, w string) { l.Pieces.SizeBy = sizing.SizeBy(w) }),
		"counted together":          wordEntry("pieces.together", []string{"version", "design", "order"}, func(l *run.PriceList) string { return string(l.Pieces.Together) }, func(l *run.PriceList, w string) { l.Pieces.Together = run.Together(w) }),
		"least":                     {3, setLeast, leastLines},
		"die":                       {3, setDie, dieLines},
		"further die":               rateEntry("die.further", "", func(l *run.PriceList) *run.Rate { return &l.Die.Further }),
		"die for each version":      flagEntry(func(l *run.PriceList) *bool { return &l.Die.EachVersion }),
		"months a die is kept":      countEntry("die.keptMonths", func(l *run.PriceList) *int { return &l.Die.KeptMonths }),
		"making":                    kindsEntry("metal.making", func(l *run.PriceList) *run.Kinds { return &l.Metal.Making }),
		"plating":                   kindsEntry("metal.plating", func(l *run.PriceList) *run.Kinds { return &l.Metal.Plating }),
		"thickness":                 {4, setThick, thickLines},
		"colours in the price":      countEntry("colours.included", func(l *run.PriceList) *int { return &l.Colours.Included }),
		"further colour":            chargeEntry("colours.further", func(l *run.PriceList) *run.Charge { return &l.Colours.Further }),
		"fill":                      kindsEntry("colours.fill", func(l *run.PriceList) *run.Kinds { return &l.Colours.Fill }),
		"fancy fill":                kindsEntry("colours.fancy", func(l *run.PriceList) *run.Kinds { return &l.Colours.Fancy }),
		"printed colour":            chargeEntry("colours.printed", func(l *run.PriceList) *run.Charge { return &l.Colours.Printed }),
		"print set-up":              rateEntry("colours.printSetUp", "", func(l *run.PriceList) *run.Rate { return &l.Colours.PrintSetUp }),
		"cut-outs in the price":     countEntry("shape.cutOutsFree", func(l *run.PriceList) *int { return &l.Shape.CutOutsFree }),
		"cut-out":                   chargeEntry("shape.cutOut", func(l *run.PriceList) *run.Charge { return &l.Shape.CutOut }),
		"further part":              chargeEntry("shape.part", func(l *run.PriceList) *run.Charge { return &l.Shape.Part }),
		"ring":                      chargeEntry("shape.ring", func(l *run.PriceList) *run.Charge { return &l.Shape.Ring }),
		"chain":                     chargeEntry("shape.chain", func(l *run.PriceList) *run.Charge { return &l.Shape.Chain }),
		"further post":              chargeEntry("back.post", func(l *run.PriceList) *run.Charge { return &l.Back.Post }),
		"fastening":                 kindsEntry("back.kinds", func(l *run.PriceList) *run.Kinds { return &l.Back.Kinds }),
		"back stamp":                chargeEntry("back.stamp", func(l *run.PriceList) *run.Charge { return &l.Back.Stamp }),
		"dome":                      chargeEntry("pack.dome", func(l *run.PriceList) *run.Charge { return &l.Pack.Dome }),
		"packaging":                 kindsEntry("pack.packaging", func(l *run.PriceList) *run.Kinds { return &l.Pack.Packaging }),
		"card set-up":               rateEntry("pack.cardSetUp", "", func(l *run.PriceList) *run.Rate { return &l.Pack.CardSetUp }),
		"card":                      chargeEntry("pack.card", func(l *run.PriceList) *run.Charge { return &l.Pack.Card }),
		"proof rounds in the price": countEntry("proofs.included", func(l *run.PriceList) *int { return &l.Proofs.Included }),
		"further proof round":       rateEntry("proofs.further", "", func(l *run.PriceList) *run.Rate { return &l.Proofs.Further }),
		"delivery":                  {4, setDelivery, deliveryLines},
		"delivery off":              deliveryRate("off", "%", func(c *run.DeliveryChoice) *run.Rate { return &c.Off }),
		"delivery more":             deliveryRate("more", "%", func(c *run.DeliveryChoice) *run.Rate { return &c.More }),
		"delivery fee":              deliveryRate("fee", "", func(c *run.DeliveryChoice) *run.Rate { return &c.Fee }),
		"shipping by":               wordEntry("shipping", []string{"flat", "weight", "class"}, func(l *run.PriceList) string { return string(l.Shipping.By) }, func(l *run.PriceList, w string) { l.Shipping.By = run.ShippingBy(w) }),
		"shipping":                  rateEntry("shipping.flat", "", func(l *run.PriceList) *run.Rate { return &l.Shipping.Flat }),
		"shipping up to":            {3, setWeight, weightLines},
		"shipping further kg":       rateEntry("shipping.further", "", func(l *run.PriceList) *run.Rate { return &l.Shipping.Further }),
		"shipping class":            {3, setClass, classLines},
		"shipping class days":       {3, setClassDays, classDayLines},
		"duty":                      rateEntry("fees.duty", "%", func(l *run.PriceList) *run.Rate { return &l.Fees.Duty }),
		"duty on shipping":          flagEntry(func(l *run.PriceList) *bool { return &l.Fees.DutyOnShipping }),
		"tax":                       rateEntry("fees.tax", "%", func(l *run.PriceList) *run.Rate { return &l.Fees.Tax }),
		"bank fee":                  rateEntry("fees.bankFee", "", func(l *run.PriceList) *run.Rate { return &l.Fees.BankFee }),
		"bank percent":              rateEntry("fees.bankPercent", "%", func(l *run.PriceList) *run.Rate { return &l.Fees.BankPercent }),
		"over-run":                  rateEntry("count.over", "%", func(l *run.PriceList) *run.Rate { return &l.Count.Over }),
		"over-run billed":           flagEntry(func(l *run.PriceList) *bool { return &l.Count.OverBilled }),
		"under-run":                 rateEntry("count.under", "%", func(l *run.PriceList) *run.Rate { return &l.Count.Under }),
		"under-run billed":          flagEntry(func(l *run.PriceList) *bool { return &l.Count.UnderBilled }),
		"charge":                    {4, setNamed, namedLines},
		"note":                      {3, setNote, noteLines},
	}
}

func flagEntry(of func(*run.PriceList) *bool) entry {
	return entry{
		cells: 3,
		set: func(r *reader, l row) {
			*of(&r.list) = r.word(l.at(atValue), []string{"no", "yes"}) == "yes"
		},
		get: func(l *run.PriceList) [][]string {
			if !*of(l) {
				return nil
			}
			return [][]string{{"", "yes"}}
		},
	}
}

// setName takes the name from the third cell or the second, where people put it.
func setName(r *reader, l row) {
	if r.list.Name = l.cell(atValue); r.list.Name == "" {
		r.list.Name = l.cell(atWhich)
	}
}

func setCurrency(r *reader, l row) {
	at := l.at(atValue)
	if at.text == "" {
		at = l.at(atWhich)
	}
	r.keep("currency", at)
	code, err := unit.ParseCurrency(at.text)
	if err != nil {
		r.problem(at, err.Error())
		return
	}
	r.list.Currency = code
	r.list.MinorDigits, _ = unit.MinorDigits(code)
}

func setDigits(r *reader, l row) {
	r.keep("minorDigits", l.at(atValue))
	r.list.MinorDigits = r.count(l.at(atValue))
}

func setLeast(r *reader, l row) {
	n := r.count(l.at(atValue))
	if r.word(l.at(atWhich), []string{"design", "version"}) == "version" {
		r.keep("least.version", l.at(atValue))
		r.list.Least.Version = n
		return
	}
	r.keep("least.design", l.at(atValue))
	r.list.Least.Design = n
}

func leastLines(l *run.PriceList) (all [][]string) {
	for _, one := range []struct {
		which string
		n     int
	}{{"design", l.Least.Design}, {"version", l.Least.Version}} {
		if one.n != 0 {
			all = append(all, []string{one.which, fmt.Sprint(one.n)})
		}
	}
	return all
}

// nearEntry offers an entry whose name shares a word.
func nearEntry(name string) string {
	words := strings.Fields(name)
	for _, e := range order {
		for _, w := range words {
			if len(w) > 2 && slices.Contains(strings.Fields(e), w) {
				return fmt.Sprintf(" Is it %q?", e)
			}
		}
	}
	return ` Start a line with its name, such as "die" or "shipping".`
}
