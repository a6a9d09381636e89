package days

import "badgewright/sizing/unit"

// span is the days that a step takes; it is empty when last is before first.
type span struct{ first, last Day }

// forward lays the steps one after another from a day on, beginning with the
// one in hand; steps that are over get no days. after is the first day on which
// nothing is left to do. ok is false when somebody never works.
func (p *plan) forward(from Day, way int) (spans []span, after Day, ok bool) {
	spans = make([]span, len(p.Steps))
	for i := range p.Steps {
		n := p.length(i, way)
		if i == p.doing {
			n = max(0, n-p.Done)
		}
		if i < p.doing || n == 0 {
			spans[i] = span{from, from - 1}
			continue
		}
		w := p.counted(p.Steps[i].By)
		if spans[i].first, ok = w.roll(from, 1); !ok {
			return nil, 0, false
		}
		if spans[i].last, ok = w.add(spans[i].first, n-1); !ok {
			return nil, 0, false
		}
		from = spans[i].last + 1
	}
	return spans, from, true
}

// back lays the steps so that they are over on the eve of a day, the slack
// included: the latest days there are.
func (p *plan) back(launch Day, way int) (spans []span, slack span, ok bool) {
	spans = make([]span, len(p.Steps))
	eve := launch - 1
	slack, ok = p.ending(eve, p.Slack, p.here)
	for i := len(p.Steps) - 1; ok && i >= 0; i-- {
		before := slack
		if i+1 < len(spans) {
			before = spans[i+1]
		}
		spans[i], ok = p.ending(before.first-1, p.length(i, way), p.counted(p.Steps[i].By))
	}
	return spans, slack, ok
}

// ending is the latest n working days that are over by a day.
func (p *plan) ending(by Day, n int, w *workdays) (span, bool) {
	if n == 0 {
		return span{by + 1, by}, true
	}
	last, ok := w.roll(by, -1)
	if !ok {
		return span{}, false
	}
	first, ok := w.add(last, 1-n)
	return span{first, last}, ok
}

// from is the day on which work can go on.
func (p *plan) from() Day {
	if p.has.start {
		return max(p.start, p.today)
	}
	return p.today
}

// neverWorks is the fault of a calendar in which a step finds no day.
func neverWorks(f *unit.Faults) {
	f.Say("here", "There are not enough working days within reach; take out some days off.")
}
