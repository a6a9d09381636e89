package calls

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/mend"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

// mostMended is the greatest size that the search for what holds as repaired
// looks at, mm: past it nobody calls it a pin.
const mostMended unit.MM = 120

// building is a design at its size, ready for repairs to be tried.
func (u *subject) building() (*mend.Drawing, error) {
	scale, err := scaleOf(u.design, u.base)
	if err != nil {
		return nil, err
	}
	if u.base.builder == nil {
		u.base.builder = wall.NewBuilder(u.base.sep)
	}
	return &mend.Drawing{Builder: u.base.builder, Recipes: u.design.Struck(), Scale: scale, Limits: u.design.Limits}, nil
}

// offers finds the repairs of one trouble spot, and draws its place as it is and
// as each leaves it.
func offers(s *Session, job Job, ask wire.OffersAsk) (Reply, error) {
	if err := checkSide(ask.Side); err != nil {
		return Reply{}, err
	}
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := u.struck()
	if err != nil {
		return Reply{}, err
	}
	d, err := u.building()
	if err != nil {
		return Reply{}, err
	}
	found, why, err := u.repairs(d, ask.Finding, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	answer := wire.Offers{Offers: []wire.MendOffer{}}
	states := []*reduce.Separation{k.badge.Sep}
	for _, o := range found {
		answer.Offers = append(answer.Offers, wire.MendOffer{Recipes: o.Recipes, Words: o.Words, Gentle: o.Gentle, Change: o.Change})
		states = append(states, o.Struck)
	}
	if len(found) == 0 {
		answer.Why = why
	}
	if ask.Side == 0 || len(found) == 0 {
		return Reply{Answer: answer}, nil
	}
	at := closeUp(&ask.Finding, k.badge)
	answer.Side, answer.Across = ask.Side, unit.Shown(k.badge.Scale.MM(at.side))
	pixels, err := u.closeUps(states, at, k.badge.Scale, ask.Side)
	return Reply{Answer: answer, Bytes: pixels}, err
}

// mendAll repairs everything that fails.
func mendAll(s *Session, job Job, ask wire.MendAllAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	d, err := u.building()
	if err != nil {
		return Reply{}, err
	}
	k, err := u.measured(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	d.Found = append([]sizing.Finding{}, k.measured.Findings(k.badge.Scale, d.Limits)...)
	at := outline.Of(u.design, d.Scale)
	d.Outline = &at
	o, err := mend.All(d, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: wire.MendAll{Recipes: o.Recipes, Before: o.Before, Left: o.Left, Change: o.Change}}, nil
}

// mendedFrom tries one size more for the smallest that holds as repaired.
func mendedFrom(s *Session, job Job, ask wire.MendedFromAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	d, err := u.building()
	if err != nil {
		return Reply{}, err
	}
	search := mend.Begin(mostMended)
	if ask.Search != nil {
		search = *ask.Search
	}
	sized := &mend.Sized{Builder: d.Builder, Recipes: d.Recipes, Box: u.base.box, By: u.design.Size.By, Limits: d.Limits}
	if search, err = search.Step(sized, job.Progress); err != nil {
		return Reply{}, err
	}
	return Reply{Answer: wire.MendedFrom{Search: search, Share: search.Share(), Size: unit.Shown(search.Size())}}, nil
}
