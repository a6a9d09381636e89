package days

import (
	"fmt"
)

// counted puts a number of working days into words.
func counted(n int) string {
	if n == 1 {
		return "1 working day"
	}
	return fmt.Sprintf("%d working days", n)
}

// says writes the days of a span, without naming a month or a year twice.
func (s span) says() string {
	from, to := s.first.at(), s.last.at()
	switch {
	case s.first == s.last:
		return s.last.Says()
	case from.Year() != to.Year():
		return from.Format("Mon 2 Jan 2006") + " to " + s.last.Says()
	case from.Month() != to.Month():
		return from.Format("Mon 2 Jan") + " to " + s.last.Says()
	}
	return from.Format("Mon 2") + " to " + s.last.Says()
}

func spareWords(spare int, s span) string {
	switch {
	case spare < 0:
		return fmt.Sprintf("%s late: over by %s at the latest", counted(-spare), s.last.Says())
	case spare == 0:
		return fmt.Sprintf("nothing to spare: over by %s at the latest", s.last.Says())
	}
	return fmt.Sprintf("%s to spare: over by %s at the latest", counted(spare), s.last.Says())
}

// open is the position when no launch day is set.
func (p *plan) open(after Day) string {
	return fmt.Sprintf("All is ready on %s; with %s kept free, launch from %s.", after.Says(), counted(p.Slack), p.kept(after).Says())
}

// kept is the first day with the slack behind it.
func (p *plan) kept(after Day) Day {
	if p.Slack == 0 {
		return after
	}
	last, ok := p.here.add(after, p.Slack-1)
	if !ok {
		return after
	}
	return last + 1
}

// position says how today stands to the launch day.
func (p *plan) position(c *Calendar, latest []span, slack span, after Day) string {
	launch := p.launch.Says()
	switch {
	case p.launch <= p.today && after > p.launch:
		return fmt.Sprintf("The launch day, %s, is not to be made any more: all is ready on %s.", launch, after.Says())
	case !c.Makes:
		return fmt.Sprintf("%s too late for %s: all is ready on %s.", counted(max(1, p.here.count(p.launch-1, after-1))), launch, after.Says())
	case !c.Keeps:
		return fmt.Sprintf("%s is made, but %s.", launch, p.eaten(slack, after))
	}
	i, name := p.next()
	if i < 0 {
		return fmt.Sprintf("Nothing is left to do before %s.", launch)
	}
	by := p.must(latest[i], i)
	if n := p.counted(p.Steps[i].By).count(p.from(), by); n > 0 {
		return fmt.Sprintf("%s can wait %s, until %s at the latest.", name, counted(n), by.Says())
	}
	return fmt.Sprintf("%s must go on now to make %s.", name, launch)
}

// eaten says how much of the slack is used up.
func (p *plan) eaten(slack span, after Day) string {
	left := 0
	for d := after; d < p.launch; d++ {
		if p.here.free(d) == "" {
			left++
		}
	}
	if left == 0 {
		return "none of the slack is left"
	}
	if left == 1 {
		return fmt.Sprintf("of the slack of %s only 1 is left", counted(p.Slack))
	}
	return fmt.Sprintf("of the slack of %s only %d are left", counted(p.Slack), left)
}

// next is the first step with something left to do.
func (p *plan) next() (int, string) {
	for i := p.doing; i < len(p.Steps); i++ {
		n := p.length(i, p.Way)
		if i == p.doing {
			n -= p.Done
		}
		if n > 0 {
			return i, p.Steps[i].Name
		}
	}
	return -1, ""
}

// must is the latest day on which a step has to begin, or to go on when some
// of its days are over.
func (p *plan) must(s span, i int) Day {
	if i != p.doing || p.Done == 0 {
		return s.first
	}
	d, ok := p.counted(p.Steps[i].By).add(s.first, p.Done)
	if !ok {
		return s.first
	}
	return d
}

// notes are sentences about what is easily overlooked.
func (p *plan) notes(c *Calendar, after Day) {
	say := func(format string, args ...any) { c.Notes = append(c.Notes, fmt.Sprintf(format, args...)) }
	if p.has.start && p.start < p.today {
		say("The start, %s, has passed: days are counted from today.", p.start.Says())
	}
	if p.has.launch {
		if why := p.here.free(p.launch); why != "" {
			say("The launch day, %s, is no working day here: %s.", p.launch.Says(), why)
		}
	}
	if p.LunarYear {
		p.unknownYears(c, after)
	}
}

// unknownYears speaks of the new years between today and the end whose day is
// not known, unless the person has put in a closure for them.
func (p *plan) unknownYears(c *Calendar, after Day) {
	end := after
	if p.has.launch {
		end = max(end, p.launch)
	}
	for y := p.today.Year(); y <= end.Year(); y++ {
		first, last := On(y, 1, 20), On(y, 2, 22) // the day lies between these
		if _, ok := LunarNewYear(y); ok || first > end || last < p.today || p.maker.closedWithin(first, last) {
			continue
		}
		c.Notes = append(c.Notes, unknownYear(y))
	}
}

func (r *workdays) closedWithin(first, last Day) bool {
	for _, s := range r.off {
		if s.from <= last && s.to >= first {
			return true
		}
	}
	return false
}
