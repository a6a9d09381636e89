package calls

import (
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// quote gives the price alone.
func quote(s *Session, job Job, ask wire.QuoteAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	q, err := u.quote()
	return Reply{Answer: q}, err
}

// quote prices the picked version by the list in use.
func (u *subject) quote() (run.Quote, error) {
	list, item, err := u.priced()
	if err != nil {
		return run.Quote{}, err
	}
	return run.Price(list, []run.Item{item})
}
