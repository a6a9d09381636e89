package calls

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/fit"
	"badgewright/sizing/run"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

// check gives everything that follows from a picked version: flats, trouble
// spots, posts and price.
func check(s *Session, job Job, ask wire.CheckAsk) (Reply, error) {
	d, v, err := picked(&ask.Picked)
	if err != nil {
		return Reply{}, err
	}
	_, b, key, err := s.designBase(d, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	drawn, err := b.widths(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := s.strike(d, b, key)
	if err != nil {
		return Reply{}, err
	}
	if err := k.widths(job.Progress); err != nil {
		return Reply{}, err
	}
	back, err := s.backOf(d, b, k.badge.Scale)
	if err != nil {
		return Reply{}, err
	}
	findings := append([]sizing.Finding{}, k.measured.Findings(k.badge.Scale, d.Limits)...) // a list on the wire, even when empty
	holds := drawn.HoldsFrom(b.box, d.Size.By, d.Limits)
	answer := wire.Check{
		Flats: recoloured(flatsOf(b), v), W: k.badge.Width(), H: k.badge.Height(),
		Longest: k.badge.Longest(), Mean: k.badge.Mean(), Scale: k.badge.Scale, Outline: b.box,
		Findings: findings, HoldsFrom: holds, Back: back,
	}
	answer.Verdict, answer.Words = fit.Verdict(findings, d.Size, holds)
	list, err := listOf(&ask.Picked.Project)
	if err == nil {
		answer.Quote, err = run.Price(list, []run.Item{fit.Item(d, v, k.badge, back.Chosen)})
	}
	if err != nil {
		answer.QuoteProblem = err.Error()
	}
	return Reply{Answer: answer}, nil
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
	d, _, err := picked(&ask.Picked)
	if err != nil {
		return Reply{}, err
	}
	_, b, key, err := s.designBase(d, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := s.strike(d, b, key)
	if err != nil {
		return Reply{}, err
	}
	if err := k.widths(job.Progress); err != nil {
		return Reply{}, err
	}
	t := k.measured.At(ask.X, ask.Y)
	if t.Label == reduce.None {
		return Reply{Answer: wire.Touch{}}, nil
	}
	scale := float64(k.badge.Scale)
	flat := k.badge.Sep.Flats[t.Label]
	return Reply{Answer: wire.Touch{
		Hit: true, Flat: flat.ID, Area: t.Area / (scale * scale), Width: k.badge.Scale.MM(t.Width), Built: t.Built,
	}}, nil
}
