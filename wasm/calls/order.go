package calls

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// quote gives the price alone.
func quote(s *Session, job Job, ask wire.QuoteAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	q, err := u.quote(job.Progress)
	return Reply{Answer: q}, err
}

// quote prices the picked version by the list in use.
func (u *subject) quote(p reduce.Progress) (run.Quote, error) {
	list, order, err := u.priced(p)
	if err != nil {
		return run.Quote{}, err
	}
	return run.PriceOrder(list, order)
}

// choices says what each change near at hand costs.
func choices(s *Session, job Job, ask wire.ChoicesAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	list, order, i, err := u.pricedWithin(ask.Order, ask.Item, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	at := func(size unit.MM) (run.Item, error) {
		return u.item(sizing.Size{MM: size, By: list.Pieces.SizeBy}, job.Progress)
	}
	return Reply{Answer: wire.Choices{Rows: run.Choices(list, order, i, at)}}, nil
}

// orderItems is every version of every design of a project as an order.
func orderItems(s *Session, job Job, ask wire.OrderItemsAsk) (Reply, error) {
	p := &ask.Project
	answer := wire.OrderItems{Places: []wire.OrderPlace{}, Left: []string{}}
	answer.Order = run.Wanted{Items: []run.Item{}, Terms: p.Order.Terms}
	for i := range p.Order.Designs {
		d := &p.Order.Designs[i]
		if len(d.Drawings) == 0 {
			answer.Left = append(answer.Left, d.Name+" has no drawing yet.")
			continue
		}
		for j := range d.Versions {
			u, err := s.subject(&wire.Picked{Project: *p, Design: i, Version: j}, job.Progress)
			if err != nil {
				return Reply{}, err
			}
			item, err := u.item(d.Size, job.Progress)
			if err != nil {
				return Reply{}, err
			}
			answer.Order.Items = append(answer.Order.Items, item)
			answer.Places = append(answer.Places, wire.OrderPlace{Design: i, Version: j})
		}
	}
	return Reply{Answer: answer}, nil
}
