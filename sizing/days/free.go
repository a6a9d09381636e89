package days

// FreeKind says why nobody works on a day.
type FreeKind string

// Why nobody works; what is not free has none.
const (
	FreeWeekend FreeKind = "weekend"
	FreeHoliday FreeKind = "holiday"
	FreeOff     FreeKind = "off" // own days off, and closures
)

// FreeRun is a run of days without work, both ends among them.
type FreeRun struct {
	From Date     `json:"from"`
	To   Date     `json:"to"`
	Kind FreeKind `json:"kind"`
	Name string   `json:"name"`
}

// Ruler is the days that a calendar is drawn over, whole weeks from Monday to
// Sunday, and what is free of them at both ends.
type Ruler struct {
	From  Date      `json:"from"`
	To    Date      `json:"to"`
	Here  []FreeRun `json:"here"`
	Maker []FreeRun `json:"maker"`
}

// mostDrawn is how many days are drawn; what comes later is not (this tool's
// choice: three years).
const mostDrawn = 3 * 365

// ruler reaches from today, or the earliest latest day of what is left to do, to
// all being over.
func (p *plan) ruler(c *Calendar, after Day) Ruler {
	first, last := p.today, after
	if p.has.launch {
		last = max(last, p.launch)
		for _, s := range append([]span{c.slack}, c.latest[p.doing:]...) {
			if s.last >= s.first {
				first = min(first, s.first)
			}
		}
	}
	first -= Day(first.Weekday() - 1)
	last += Day(7 - last.Weekday())
	last = min(last, first+mostDrawn)
	return Ruler{From: first.Date(), To: last.Date(), Here: p.here.runs(first, last), Maker: p.maker.runs(first, last)}
}

// runs lists the free days from one to another, those that belong together as one.
func (r *workdays) runs(from, to Day) []FreeRun {
	all := []FreeRun{}
	joins := false
	for d := from; d <= to; d++ {
		kind, name := r.why(d)
		if kind == "" {
			joins = false
			continue
		}
		if n := len(all) - 1; joins && all[n].Kind == kind && all[n].Name == name {
			all[n].To = d.Date()
			continue
		}
		joins = true
		all = append(all, FreeRun{From: d.Date(), To: d.Date(), Kind: kind, Name: name})
	}
	return all
}

// missing lists the usual closures within the days of a plan that no day off
// of the maker touches.
func (p *plan) missing(from, to Day) []DaySpan {
	all := []DaySpan{}
	if !p.LunarYear {
		return all
	}
	for _, s := range UsualClosures(from.Year(), to.Year()).Spans {
		first, _ := Read(s.From)
		last, _ := Read(s.To)
		if first <= to && last >= from && !p.maker.closedWithin(first, last) {
			all = append(all, s)
		}
	}
	return all
}
