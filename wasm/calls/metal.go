package calls

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/fastener"
	"badgewright/sizing/fit"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

// check gives everything that follows from a picked version: flats, trouble
// spots, posts and price.
func check(s *Session, job Job, ask wire.CheckAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	answer, err := u.check(job.Progress)
	return Reply{Answer: answer}, err
}

// check finds everything that follows from the version.
func (u *subject) check(p reduce.Progress) (wire.Check, error) {
	drawn, err := u.base.widths(p)
	if err != nil {
		return wire.Check{}, err
	}
	k, err := u.measured(p)
	if err != nil {
		return wire.Check{}, err
	}
	back, err := u.back()
	if err != nil {
		return wire.Check{}, err
	}
	size, limits := u.design.Size, u.design.Limits
	findings, err := u.findings(k, &back, p)
	if err != nil {
		return wire.Check{}, err
	}
	holds := u.holdsFrom(drawn, limits)
	sizes, err := u.shapeHolds(limits, p)
	if err != nil {
		return wire.Check{}, err
	}
	both := holdsAll(holds, sizes)
	if len(both) > 0 {
		holds = both[0].From
	}
	answer := wire.Check{
		Flats: recoloured(flatsOf(u.base), u.version), W: k.badge.Width(), H: k.badge.Height(),
		Longest: k.badge.Longest(), Mean: k.badge.Mean(), Scale: k.badge.Scale, Outline: k.badge.Outline,
		Shown:    measuresOf(k.badge),
		Findings: findings, Lettering: u.lettered(k), HoldsFrom: holds, Back: back, Places: fromBehind(back.Posts, k.badge),
		Fixings: u.fixings(k.badge.Scale, back.Chosen), Cautions: u.cautions(k.badge.Scale, findings),
	}
	if holds > size.MM {
		answer.GrowTo = unit.Shown(holds)
	}
	if n := len(both); n > 0 && both[n-1].To < outline.Greatest && size.MM > both[n-1].To {
		answer.ShrinkTo = unit.Shown(both[n-1].To)
	}
	u.stamp(&answer, k.badge.Scale)
	if answer.Parts, err = u.parts(k, p); err != nil {
		return wire.Check{}, err
	}
	answer.Verdict, answer.Words = fit.Verdict(findings, size, holds)
	if answer.Proposal, err = u.proposal(k.badge.Scale, p); err != nil {
		return wire.Check{}, err
	}
	if j, ok := u.next(); ok {
		answer.Next = &wire.Next{Joining: j, Words: fit.NextWords(j, answer.Flats.Flats)}
	}
	if answer.Quote, err = u.quote(p); err != nil {
		answer.QuoteProblem = err.Error()
	}
	return answer, nil
}

// findings lists the trouble spots of what is struck, in the order in which they
// are numbered; it is a list on the wire, even when empty.
func (u *subject) findings(k *struck, back *fastener.Advice, p reduce.Progress) ([]sizing.Finding, error) {
	all := append([]sizing.Finding{}, k.measured.Findings(k.badge.Scale, u.design.Limits)...)
	all = append(all, u.markedSpots(k, all)...)
	all = append(all, back.Findings(k.badge.Scale, k.badge.Outline)...)
	shape, err := u.outlineSpots(k, p)
	if err != nil {
		return nil, err
	}
	all = append(all, shape...)
	worstFirst(all)
	for i := range all {
		if all[i].Path == nil {
			all[i].Path = []float32{} // a list on the wire, even when empty
		}
	}
	return all, nil
}

// measuresOf puts the measures of a badge into words.
func measuresOf(b *sizing.Badge) wire.Measures {
	m := wire.Measures{W: unit.Shown(b.Width()), H: unit.Shown(b.Height()), Longest: unit.Shown(b.Longest()), Mean: unit.Shown(b.Mean())}
	m.InMM, m.InInches = unit.ShownBy(b.Width(), b.Height())
	return m
}

// widths returns the measures of what is struck, found once.
func (k *struck) widths(p reduce.Progress) error {
	if k.measured != nil {
		return nil
	}
	m, err := wall.Measure(k.badge.Sep, p)
	k.measured = m
	return err
}

// touch says what lies under a place of the picture.
func touch(s *Session, job Job, ask wire.TouchAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := u.measured(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	t := k.measured.At(ask.X, ask.Y)
	answer := wire.Touch{
		Gap:   gapAt(k.badge, ask.X, ask.Y),
		Lines: wall.HandLines(u.design.Recipes, u.design.Limits, k.badge.Scale, k.badge.Sep.W),
	}
	if t.Label != reduce.None {
		scale := float64(k.badge.Scale)
		answer.Hit, answer.Flat, answer.Built = true, k.badge.Sep.Flats[t.Label].ID, t.Built
		answer.Area, answer.Width = t.Area/(scale*scale), k.badge.Scale.MM(t.Width)
	}
	return Reply{Answer: answer}, nil
}

// gapAt finds where a fill at a place would leak; metal is not filled.
func gapAt(b *sizing.Badge, x, y float64) *wire.Gap {
	px, py := int(x), int(y)
	if px < 0 || py < 0 || px >= b.Sep.W || py >= b.Sep.H {
		return nil
	}
	if l := b.Sep.Labels[py*b.Sep.W+px]; l != reduce.None && b.Sep.Flats[l].Role != reduce.Enamel {
		return nil
	}
	g, ok := b.Sep.GapAt(px, py)
	if !ok {
		return nil
	}
	w, h := float64(b.Sep.W), float64(b.Sep.H)
	return &wire.Gap{
		Ends:  [4]float64{g.X0 / w, g.Y0 / h, g.X1 / w, g.Y1 / h},
		Width: unit.Shown(b.Scale.MM(g.Width)), Open: g.Open,
	}
}
