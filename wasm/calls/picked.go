package calls

import (
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/fit"
	"badgewright/sizing/outline"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// subject is the picked version that a request speaks of, and its flat drawing.
type subject struct {
	session *Session
	project *wire.Project
	design  *sizing.Design
	version *sizing.Version
	opened  *opened
	base    *base
	key     string // of the base
}

// subject finds the picked design and version and reduces its drawing.
func (s *Session) subject(p *wire.Picked, progress reduce.Progress) (*subject, error) {
	designs := p.Project.Order.Designs
	if p.Design < 0 || p.Design >= len(designs) {
		return nil, &reduce.Refusal{What: "This order has no such design."}
	}
	d := &designs[p.Design]
	if p.Version < 0 || p.Version >= len(d.Versions) {
		return nil, &reduce.Refusal{What: "This design has no such version."}
	}
	if len(d.Drawings) == 0 {
		return nil, &reduce.Refusal{What: "This design has no drawing yet.", Do: "Choose, paste or photograph one."}
	}
	ref := d.Drawings[len(d.Drawings)-1]
	o, err := s.drawing(ref.ID, ref.Ground, progress)
	if err != nil {
		return nil, err
	}
	b, key, err := s.baseOf(o, reduce.Options{Count: d.Colours, Edits: d.Edits})
	if err != nil {
		return nil, err
	}
	return &subject{s, &p.Project, d, &d.Versions[p.Version], o, b, key}, nil
}

// next is what happens with one enamel fewer, in the version's own colours.
func (u *subject) next() (reduce.Joining, bool) {
	j, ok := u.opened.found.Next(reduce.Options{Count: u.design.Colours, Edits: u.design.Edits})
	given := recolours(u.version)
	if !ok || len(given) == 0 {
		return j, ok
	}
	if c, has := given[j.Keep]; has {
		j.Becomes = c
	}
	for _, f := range recoloured(flatsOf(u.base), u.version).Flats {
		if f.ID == j.Goes {
			j.Shift = colour.CIEDE2000(f.RGB.Lab(), j.Becomes.Lab())
		}
	}
	return j, ok
}

// drawn is the flat drawing at a size, before any recipe.
func (u *subject) drawn(size sizing.Size) (*sizing.Badge, error) {
	if err := size.Check(); err != nil {
		return nil, err
	}
	return &sizing.Badge{Sep: u.base.sep, Scale: sizing.ScaleFor(u.base.box, size), Outline: u.base.box}, nil
}

// struck is the design with its recipes applied.
func (u *subject) struck() (*struck, error) {
	return u.session.strike(u.design, u.base, u.key)
}

// measured is what is struck, with its widths.
func (u *subject) measured(p reduce.Progress) (*struck, error) {
	k, err := u.struck()
	if err != nil {
		return nil, err
	}
	return k, k.widths(p)
}

// priced is the price list in use and the picked version as the only one of an
// order, on the project's terms.
func (u *subject) priced(p reduce.Progress) (run.PriceList, run.Wanted, error) {
	list, err := listOf(u.project)
	if err != nil {
		return run.PriceList{}, run.Wanted{}, err
	}
	item, err := u.item(u.design.Size, p)
	return list, run.Wanted{Items: []run.Item{item}, Terms: u.project.Order.Terms}, err
}

// pricedWithin is the price list in use, and all that is ordered with the picked
// version, its item made anew; without an order it is ordered alone.
func (u *subject) pricedWithin(all *run.Wanted, at int, p reduce.Progress) (run.PriceList, run.Wanted, int, error) {
	list, alone, err := u.priced(p)
	if all == nil || err != nil {
		return list, alone, 0, err
	}
	if at < 0 || at >= len(all.Items) {
		return list, alone, 0, &reduce.Refusal{What: "This version is not in the order.", Do: "Ask for the order again."}
	}
	order := run.Wanted{Items: slices.Clone(all.Items), Terms: alone.Terms}
	order.Items[at] = alone.Items[0]
	return list, order, at, nil
}

// item is the picked version as one of an order, at a size.
func (u *subject) item(size sizing.Size, p reduce.Progress) (run.Item, error) {
	b, err := u.drawn(size)
	if err != nil {
		return run.Item{}, err
	}
	back, err := u.backAt(size, &u.design.Back)
	if err != nil {
		return run.Item{}, err
	}
	shape, err := u.base.shape(p)
	if err != nil {
		return run.Item{}, err
	}
	item := fit.Item(u.design, u.version, b, back.Chosen)
	item.CutOuts, item.Weight = shape.CutOuts(outline.Of(u.design, b.Scale)), back.Weight
	return item, nil
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
