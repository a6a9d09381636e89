package calls

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// picked finds the design and the version a request speaks of.
func picked(p *wire.Picked) (*sizing.Design, *sizing.Version, error) {
	designs := p.Project.Order.Designs
	if p.Design < 0 || p.Design >= len(designs) {
		return nil, nil, &reduce.Refusal{What: "This order has no such design."}
	}
	d := &designs[p.Design]
	if p.Version < 0 || p.Version >= len(d.Versions) {
		return nil, nil, &reduce.Refusal{What: "This design has no such version."}
	}
	return d, &d.Versions[p.Version], nil
}

// listOf finds the price list in use.
func listOf(p *wire.Project) (run.PriceList, error) {
	for _, l := range p.Order.PriceLists {
		if l.ID == p.Order.PriceList {
			return l, nil
		}
	}
	return run.PriceList{}, &reduce.Refusal{What: "This order has no price list.", Do: "Choose or type one under Order."}
}

// platingOf finds the plating of a version; the first there is stands in for
// one that this tool does not know.
func platingOf(id sizing.PlatingID) sizing.Plating {
	all := sizing.Platings()
	for _, p := range all {
		if p.ID == id {
			return p
		}
	}
	return all[0]
}
