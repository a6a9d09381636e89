package pricefile

import (
	"fmt"
	"strconv"
	"strings"

	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// setDie reads the charge for a die of any size, or for one up to a size; those
// follow the order of the sizes.
func setDie(r *reader, l row) {
	value := r.amount(l.at(atValue), r.list.Currency)
	d := &r.list.Die
	if l.cell(atWhich) == "" {
		r.keep("die.flat", l.at(atValue))
		d.Flat = value
		return
	}
	if !r.has("die.bySize") {
		d.BySize = nil
	}
	r.keep("die.bySize", l.at(atWhich))
	r.keep(fmt.Sprintf("die.bySize[%d]", len(d.BySize)), l.at(atValue))
	r.dieSizes = append(r.dieSizes, sized{r.size(l.at(atWhich)), l.at(atWhich)})
	d.BySize = append(d.BySize, value)
}

// sized is a size that a die's charge was given for.
type sized struct {
	size unit.MM
	at   place
}

// checkDieSizes holds the sizes of dies against those of the pieces.
func (r *reader) checkDieSizes() {
	for i, d := range r.dieSizes {
		if !r.blamed(d.at) && (i >= len(r.list.Pieces.Sizes) || d.size != r.list.Pieces.Sizes[i]) {
			r.problem(d.at, "Charges for dies by size stand in the order of the sizes of the pieces, one for each.")
		}
	}
}

func dieLines(l *run.PriceList) [][]string {
	all := oneLine("", l.Die.Flat.String())
	for i, r := range l.Die.BySize {
		size := ""
		if i < len(l.Pieces.Sizes) {
			size = "up to " + inMM(l.Pieces.Sizes[i])
		}
		all = append(all, []string{size, r.String()})
	}
	return all
}

func inMM(m unit.MM) string { return strconv.FormatFloat(float64(m), 'f', -1, 64) + " mm" }

func setThick(r *reader, l row) {
	m := &r.list.Metal
	if !r.has("metal.thick") {
		m.Thick = nil
	}
	at := fmt.Sprintf("metal.thick[%d]", len(m.Thick))
	r.keep("metal.thick", l.at(0))
	r.keep(at+".from", l.at(atWhich))
	m.Thick = append(m.Thick, run.Thick{From: r.size(l.at(atWhich)), Charge: r.charge(at+".charge", l)})
}

func thickLines(l *run.PriceList) (all [][]string) {
	for _, t := range l.Metal.Thick {
		all = append(all, []string{"from " + inMM(t.From), t.Charge.Rate.String(), string(t.Charge.By)})
	}
	return all
}

// setDelivery reads one way of delivery: its days, and what its shares fall on.
func setDelivery(r *reader, l row) {
	c, path := r.choice(l)
	if r.has(path + ".days") {
		r.problem(l.at(atWhich), fmt.Sprintf("%q stands here twice; keep one of them.", l.cell(atWhich)))
	}
	r.keep(path+".days", l.at(atValue))
	r.keep(path+".on", l.at(atBy))
	c.Days = r.count(l.at(atValue))
	c.On = run.DeliveryOn(r.word(l.at(atBy), []string{"pieces", "all"}))
}

// choice finds the way of delivery that a line speaks of, or adds it.
func (r *reader) choice(l row) (*run.DeliveryChoice, string) {
	d := &r.list.Delivery
	i := 0
	for i < len(d.Choices) && d.Choices[i].Name != l.cell(atWhich) {
		i++
	}
	path := fmt.Sprintf("delivery.choices[%d]", i)
	if i == len(d.Choices) {
		d.Choices = append(d.Choices, run.DeliveryChoice{Name: l.cell(atWhich), On: run.OnPieces})
	}
	r.keep(path, l.at(0))
	r.keep(path+".name", l.at(atWhich))
	return &d.Choices[i], path
}

func deliveryRate(name, beside string, of func(*run.DeliveryChoice) *run.Rate) entry {
	return entry{
		cells: 3,
		set: func(r *reader, l row) {
			c, path := r.choice(l)
			r.keep(path+"."+name, l.at(atValue))
			*of(c) = r.amount(l.at(atValue), r.beside(beside))
		},
		get: func(l *run.PriceList) (all [][]string) {
			for i := range l.Delivery.Choices {
				c := &l.Delivery.Choices[i]
				all = append(all, oneLine(c.Name, of(c).String())...)
			}
			return all
		},
	}
}

func deliveryLines(l *run.PriceList) (all [][]string) {
	for _, c := range l.Delivery.Choices {
		all = append(all, []string{c.Name, number(c.Days), string(c.On)})
	}
	return all
}

func number(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// setWeight reads the charge of a parcel up to a weight in g or kg.
func setWeight(r *reader, l row) {
	h := &r.list.Shipping
	if !r.has("shipping.weights") {
		h.Weights = nil
	}
	path := fmt.Sprintf("shipping.weights[%d]", len(h.Weights))
	r.keep("shipping.weights", l.at(0))
	r.keep(path+".upTo", l.at(atWhich))
	r.keep(path+".rate", l.at(atValue))
	h.Weights = append(h.Weights, run.ByWeight{UpTo: r.weight(l.at(atWhich)), Rate: r.amount(l.at(atValue), r.list.Currency)})
}

// weight reads grams, or kilograms where it says so.
func (r *reader) weight(at place) unit.Grams {
	text := strings.ToLower(at.text)
	times := 1.0
	if bare, ok := strings.CutSuffix(text, "kg"); ok {
		text, times = bare, 1000
	}
	d, err := unit.ParseAmount(strings.TrimSpace(strings.TrimSuffix(text, "g")), "")
	if err != nil {
		r.problem(at, fmt.Sprintf("%q cannot be read as a weight. Type one such as 500 g.", at.text))
	}
	return unit.Grams(d.InexactFloat64() * times)
}

func weightLines(l *run.PriceList) (all [][]string) {
	for _, w := range l.Shipping.Weights {
		all = append(all, []string{strconv.FormatFloat(float64(w.UpTo), 'f', -1, 64) + " g", w.Rate.String()})
	}
	return all
}

func setClass(r *reader, l row) {
	c, path := r.class(l)
	if r.has(path + ".rate") {
		r.problem(l.at(atWhich), fmt.Sprintf("%q stands here twice; keep one of them.", l.cell(atWhich)))
	}
	r.keep(path+".rate", l.at(atValue))
	c.Rate = r.amount(l.at(atValue), r.list.Currency)
}

func setClassDays(r *reader, l row) {
	c, path := r.class(l)
	r.keep(path+".days", l.at(atValue))
	c.Days = r.count(l.at(atValue))
}

// class finds the class of shipping that a line speaks of, or adds it.
func (r *reader) class(l row) (*run.ShippingClass, string) {
	h := &r.list.Shipping
	i := 0
	for i < len(h.Classes) && h.Classes[i].Name != l.cell(atWhich) {
		i++
	}
	path := fmt.Sprintf("shipping.classes[%d]", i)
	if i == len(h.Classes) {
		h.Classes = append(h.Classes, run.ShippingClass{Name: l.cell(atWhich)})
	}
	r.keep(path, l.at(0))
	r.keep(path+".name", l.at(atWhich))
	return &h.Classes[i], path
}

func classLines(l *run.PriceList) (all [][]string) {
	for _, c := range l.Shipping.Classes {
		all = append(all, []string{c.Name, c.Rate.String()})
	}
	return all
}

func classDayLines(l *run.PriceList) (all [][]string) {
	for _, c := range l.Shipping.Classes {
		all = append(all, oneLine(c.Name, number(c.Days))...)
	}
	return all
}

// setNamed reads a charge of any other name; one that the list has is changed.
func setNamed(r *reader, l row) {
	name := l.cell(atWhich)
	i := 0
	for i < len(r.list.Named) && (r.list.Named[i].Name != name || r.has(fmt.Sprintf("named[%d].name", i))) {
		i++
	}
	path := fmt.Sprintf("named[%d]", i)
	r.keep(path+".name", l.at(atWhich))
	r.keep(path+".rate", l.at(atValue))
	n := run.NamedCharge{
		Name: name, Rate: r.amount(l.at(atValue), r.list.Currency),
		By: run.NamedBy(r.word(l.at(atBy), []string{"order", "piece", "colour", "design"})),
	}
	if i == len(r.list.Named) {
		r.list.Named = append(r.list.Named, n)
	} else {
		r.list.Named[i] = n
	}
}

func namedLines(l *run.PriceList) (all [][]string) {
	for _, n := range l.Named {
		all = append(all, []string{n.Name, n.Rate.String(), string(n.By)})
	}
	return all
}

func setNote(r *reader, l row) {
	n := &r.list.Notes
	switch r.word(l.at(atWhich), []string{"other", "faults", "keeps"}) {
	case "faults":
		n.Faults = l.cell(atValue)
	case "keeps":
		n.Keeps = l.cell(atValue)
	default:
		n.Other = l.cell(atValue)
	}
}

func noteLines(l *run.PriceList) [][]string {
	all := oneLine("faults", l.Notes.Faults)
	all = append(all, oneLine("keeps", l.Notes.Keeps)...)
	return append(all, oneLine("other", l.Notes.Other)...)
}
