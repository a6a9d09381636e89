package run

import (
	"fmt"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// MetalPrices is what the metal costs on top: how it is made, its plating, its
// thickness. Struck is in the unit price unless it is listed.
type MetalPrices struct {
	Making  Kinds `json:"making"`
	Plating Kinds `json:"plating"`
	// Thick holds what thicker metal costs, from a thickness on, rising; below
	// the first it is in the price.
	Thick []Thick `json:"thick"`
}

// Thick is what metal of a thickness or more costs on top.
type Thick struct {
	From   unit.MM `json:"from"`
	Charge Charge  `json:"charge"`
}

// thickSlack is how far below a thickness metal may be and still count as it.
const thickSlack unit.MM = 0.005

func (s *sheet) metal(p *priced) {
	m, it := &s.list.Metal, p.item
	if making := it.Making; making != "" {
		c, cell := m.Making.of(string(making))
		if cell != "others.rate" || making != sizing.Struck {
			s.charge(p, KeyMaking, "Made "+string(making), c, 1, "metal.making."+cell, false)
		}
	}
	if it.Plating != "" {
		c, cell := m.Plating.of(string(it.Plating))
		s.charge(p, KeyPlating, "Plating: "+platingName(it.Plating), c, 1, "metal.plating."+cell, false)
	}
	if i := m.thick(it.Thickness); i >= 0 {
		s.charge(p, KeyThickness, "Metal "+unit.InMM(it.Thickness, 2)+" thick", m.Thick[i].Charge, 1, fmt.Sprintf("metal.thick[%d].charge.rate", i), false)
	}
}

// thick returns the row of a thickness, -1 for one in the price.
func (m *MetalPrices) thick(t unit.MM) int {
	at := -1
	for i, row := range m.Thick {
		if t >= row.From-thickSlack {
			at = i
		}
	}
	return at
}

func platingName(id sizing.PlatingID) string {
	for _, p := range sizing.Platings() {
		if p.ID == id {
			return p.Name
		}
	}
	return string(id)
}

func (v *validation) metal(m *MetalPrices) {
	v.kinds("metal.making", m.Making)
	v.kinds("metal.plating", m.Plating)
	var before unit.MM
	for i, row := range m.Thick {
		cell := fmt.Sprintf("metal.thick[%d]", i)
		switch {
		case !(row.From > 0) || row.From > mostThick:
			v.say(cell+".from", "%g mm is no thickness for a pin.", float64(row.From))
		case row.From <= before:
			v.say(cell+".from", "%s does not come after %s; thicknesses rise from one to the next.", unit.InMM(row.From, 2), unit.InMM(before, 2))
		}
		before = row.From
		v.charge(cell+".charge", row.Charge)
	}
}
