//go:build !pin

package calls

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/days"
	"badgewright/sizing/demand"
	"badgewright/sizing/left"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// mostYears and mostLists bound what is listed at one time.
const (
	mostYears = 12
	mostLists = 8
)

// orderUsual says what an order's days and sales start from.
func orderUsual(_ *Session, _ Job, ask wire.OrderUsualAsk) (Reply, error) {
	if ask.To < ask.From || ask.To-ask.From >= mostYears || len(ask.Countries) > mostLists {
		return Reply{}, &reduce.Refusal{What: "That is too much to list at one time.", Do: "Ask for fewer years or countries."}
	}
	answer := wire.OrderUsual{
		Countries: days.Countries(), Holidays: []wire.HolidaysOf{}, Closures: days.UsualClosures(ask.From, ask.To),
		Steps: days.Usual(), Slack: days.UsualSlack, Weekend: days.Weekend(), Prior: demand.UsualPrior(),
		Selling: left.Usual(), Guess: demand.UsualGuess(), Presale: days.UsualPresale(),
	}
	for _, code := range ask.Countries {
		of := wire.HolidaysOf{Code: code, Known: true, Holidays: []days.Holiday{}}
		for y := ask.From; y <= ask.To; y++ {
			all, ok := days.Holidays(code, y)
			of.Known = of.Known && ok
			of.Holidays = append(of.Holidays, all...)
		}
		answer.Holidays = append(answer.Holidays, of)
	}
	return Reply{Answer: answer}, nil
}

// calendar works out an order's days.
func calendar(_ *Session, _ Job, ask wire.DaysAsk) (Reply, error) {
	schedule := ask.Schedule
	unpriced := ""
	if ask.Priced != nil {
		unpriced = deliveries(&schedule, ask.Priced)
	}
	c, faults := days.Reckon(schedule)
	return Reply{Answer: wire.Days{Faults: faultsOf(faults), Schedule: schedule, Calendar: c, Unpriced: unpriced}}, nil
}

// deliveries makes the ways of delivery from a price list: what the order costs
// by each, the one in use being the order's. Where the list does not say what
// one costs, its days count all the same, and unpriced is why.
func deliveries(s *days.Schedule, p *wire.PricedOrder) (unpriced string) {
	s.Currency, s.MinorDigits = p.List.Currency, p.List.MinorDigits
	s.Ways, s.Way, s.Unpriced = []days.DeliveryWay{}, -1, false
	for i, c := range p.List.Delivery.Choices {
		o := p.Order
		o.Terms.Delivery = c.Name
		total, err := run.Total(p.List, o)
		if err != nil {
			unpriced, s.Unpriced = err.Error(), true
		}
		s.Ways = append(s.Ways, days.DeliveryWay{Name: c.Name, Making: c.Days, Total: total})
		if c.Name == p.Order.Terms.Delivery || i == 0 && p.Order.Terms.Delivery == "" {
			s.Way = i
		}
	}
	return unpriced
}

// promise says what day can be promised to those who pay ahead.
func promise(_ *Session, _ Job, ask wire.PromiseAsk) (Reply, error) {
	schedule := ask.Schedule
	if ask.Priced != nil {
		deliveries(&schedule, ask.Priced)
	}
	p, faults := days.Promised(schedule, ask.Presale)
	return Reply{Answer: wire.Promise{Faults: faultsOf(faults), Promise: p}}, nil
}

// calendarFile writes the days as iCalendar.
func calendarFile(_ *Session, _ Job, ask wire.CalendarFileAsk) (Reply, error) {
	file, faults := days.ICS(ask.Name, ask.Schedule)
	answer := wire.CalendarFile{Faults: faultsOf(faults)}
	if len(faults) == 0 {
		answer.FileName, answer.Type = fileNamed(&sizing.Design{Name: ask.Name})+"-calendar.ics", "text/calendar"
	}
	return Reply{Answer: answer, Bytes: file}, nil
}
