package calls

import (
	"badgewright/sizing"
	"badgewright/sizing/fit"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// quote gives the price alone.
func quote(s *Session, job Job, ask wire.QuoteAsk) (Reply, error) {
	d, v, err := picked(&ask.Picked)
	if err != nil {
		return Reply{}, err
	}
	_, b, _, err := s.designBase(d, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	scale, err := scaleOf(d, b)
	if err != nil {
		return Reply{}, err
	}
	list, err := listOf(&ask.Picked.Project)
	if err != nil {
		return Reply{}, err
	}
	back, err := s.backOf(d, b, scale)
	if err != nil {
		return Reply{}, err
	}
	q, err := run.Price(list, []run.Item{fit.Item(d, v, &sizing.Badge{Sep: b.sep, Scale: scale, Outline: b.box}, back.Chosen)})
	if err != nil {
		return Reply{}, err
	}
	return Reply{Answer: q}, nil
}
