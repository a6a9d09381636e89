package days

import (
	"fmt"

	"badgewright/sizing/unit"
)

// PresaleDays is the days of a pre-sale: the die is cut when its money is there.
type PresaleDays struct {
	Closes Date `json:"closes"` // last day on which an order is taken
	// Payout is the days of the calendar until the money arrives.
	Payout int `json:"payout"`
	// Posting is the working days here that it takes to pack and post all
	// orders, and Carriage the days of the calendar until the last one arrives.
	Posting  int `json:"posting"`
	Carriage int `json:"carriage"`
}

// UsualPresale is days to start from (this tool's choice).
func UsualPresale() PresaleDays { return PresaleDays{Payout: 14, Posting: 3, Carriage: 7} }

// PromisedDays is the day that can honestly be named to those who pay ahead.
type PromisedDays struct {
	Closes Date `json:"closes"`
	Paid   Date `json:"paid"`  // the money is there
	Ready  Date `json:"ready"` // counted and carded: packing begins
	Posted Date `json:"posted"`
	// Date is when the last buyer has the pin, the slack of the schedule
	// included: posting is promised by Posted, arrival by Date.
	Date Date   `json:"date"`
	Says string `json:"says"`
	// Rows are the steps that follow the money.
	Rows []StepRow `json:"rows"`
}

// Promised works out what can be promised: making begins once the pre-sale is
// paid out, drawing and proofs being over by then. Listing is no step of it.
func Promised(s Schedule, pre PresaleDays) (*PromisedDays, unit.Faults) {
	p, f := s.ready()
	closes, _ := read(&f, "presale.closes", "The end of the pre-sale", pre.Closes)
	f.Whole("presale.payout", "The number of days until the money is paid out", pre.Payout, 0, mostDays)
	f.Whole("presale.posting", "The number of days of posting", pre.Posting, 0, mostDays)
	f.Whole("presale.carriage", "The number of days until the last parcel arrives", pre.Carriage, 0, mostDays)
	p.fromMaking(&f)
	if len(f) > 0 {
		return nil, f
	}
	paid := max(closes, p.today) + Day(pre.Payout)
	ahead, after, ok := p.forward(paid+1, p.Way)
	if !ok {
		neverWorks(&f)
		return nil, f
	}
	posted, ok := p.posted(after, pre.Posting)
	if !ok {
		neverWorks(&f)
		return nil, f
	}
	out := &PromisedDays{Closes: closes.Date(), Paid: paid.Date(), Ready: after.Date(), Posted: posted.Date(), Date: (posted + Day(pre.Carriage)).Date(), Rows: []StepRow{}}
	for i := range p.Steps {
		if r := p.row(i, ahead[i]); r.First != "" {
			out.Rows = append(out.Rows, r)
		}
	}
	out.Says = fmt.Sprintf("Promise posting by %s: paid out %s, ready %s at the earliest, %s kept free.", posted.Says(), paid.Says(), after.Says(), counted(p.Slack))
	return out, f
}

// fromMaking leaves the steps from making on, without listing.
func (p *plan) fromMaking(f *unit.Faults) {
	var left []OrderStep
	for _, s := range p.Steps {
		if (s.Key == KeyMaking || len(left) > 0) && s.Key != KeyListing {
			left = append(left, s)
		}
	}
	if len(left) == 0 {
		f.Say("steps", "There is no making among the steps, so nothing can be promised.")
	}
	p.Steps, p.doing, p.Done = left, 0, 0
}

// posted is the day the last order is posted, the slack before it.
func (p *plan) posted(after Day, posting int) (Day, bool) {
	n := p.Slack + posting
	if n == 0 {
		return after, true
	}
	return p.here.add(after, n-1)
}
