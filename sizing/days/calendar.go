package days

import (
	"slices"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// StepRow is one step in the calendar. Days are empty for a step that takes none
// or is over.
type StepRow struct {
	Key  string `json:"key"`
	Name string `json:"name"`
	Days int    `json:"days"` // in all, rounds counted
	By   Whose  `json:"by"`
	// First and Last are the days as they would fall from today or the start.
	First Date `json:"first"`
	Last  Date `json:"last"`
	// LatestFirst and LatestLast are the latest that still make the launch day
	// with the slack kept.
	LatestFirst Date `json:"latestFirst"`
	LatestLast  Date `json:"latestLast"`
	// Spare is the working days between Last and LatestLast, below 0 when late.
	Spare int `json:"spare"`
	// Falls and Latest are the two pairs of days in words.
	Falls  string `json:"falls"`
	Latest string `json:"latest"`
	// Over names what stands still between First and Last: holidays, closures.
	Over []string `json:"over"`
	Says string   `json:"says"`
}

// WayRow is what one delivery choice comes to.
type WayRow struct {
	Name  string `json:"name"`
	Ready Date   `json:"ready"` // the first day with nothing left to do
	// Makes says that the launch day is made, and Keeps that the slack is kept
	// too; both are false without a launch day.
	Makes bool `json:"makes"`
	Keeps bool `json:"keeps"`
	// Saves is against the way in use, or the first; below 0 when it costs more.
	Saves decimal.Decimal `json:"saves"`
	Says  string          `json:"says"`
}

// Calendar is the answer to a schedule.
type Calendar struct {
	Rows  []StepRow `json:"rows"`
	Slack StepRow   `json:"slack"`
	Ready Date      `json:"ready"` // the first day with nothing left to do
	// Makes says that the launch day is made, and Keeps with the slack kept.
	Makes bool `json:"makes"`
	Keeps bool `json:"keeps"`
	// Position is where today stands, in a sentence.
	Position string   `json:"position"`
	Ways     []WayRow `json:"ways"`
	// Best is the cheapest way that makes the launch day; below 0 for none.
	Best     int      `json:"best"`
	BestSays string   `json:"bestSays"`
	Notes    []string `json:"notes"`
	Ruler    Ruler    `json:"ruler"`
	// Missing are usual closures of a maker within these days that are not among
	// the maker's days off.
	Missing []DaySpan `json:"missing"`

	ahead, latest []span
	slack         span
}

// Reckon works a schedule out. Faults come back instead of a calendar.
func Reckon(s Schedule) (*Calendar, unit.Faults) {
	p, f := s.ready()
	if len(f) > 0 {
		return nil, f
	}
	ahead, after, ok := p.forward(p.from(), p.Way)
	if !ok {
		neverWorks(&f)
		return nil, f
	}
	c := &Calendar{Rows: make([]StepRow, len(p.Steps)), Ready: after.Date(), Best: -1, Ways: []WayRow{}, Notes: []string{}, ahead: ahead}
	for i := range p.Steps {
		c.Rows[i] = p.row(i, ahead[i])
	}
	c.Slack = StepRow{Key: KeySlack, Name: "Slack", Days: p.Slack, By: Here, Over: []string{}}
	if p.has.launch {
		if !p.late(c, ahead, after) {
			neverWorks(&f)
			return nil, f
		}
	} else {
		c.Position = p.open(after)
	}
	p.compare(c)
	p.notes(c, after)
	p.draw(c, after)
	return c, nil
}

// draw fills in what the calendar is drawn from.
func (p *plan) draw(c *Calendar, after Day) {
	c.Ruler = p.ruler(c, after)
	c.Missing = p.missing(p.today, max(after, p.launch))
}

func (p *plan) row(i int, s span) StepRow {
	step := p.Steps[i]
	r := StepRow{Key: step.Key, Name: step.Name, Days: p.length(i, p.Way), By: step.By, Over: []string{}}
	if s.last >= s.first {
		r.First, r.Last, r.Falls = s.first.Date(), s.last.Date(), s.says()
		r.Over = p.counted(step.By).over(s)
	}
	return r
}

// over names the holidays and days off within a span, each once, in order.
func (r *workdays) over(s span) []string {
	all := []string{}
	for d := s.first; d <= s.last; d++ {
		if kind, name := r.why(d); kind != "" && kind != FreeWeekend && !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	return all
}

// late fills in the latest days, and what is to spare before them.
func (p *plan) late(c *Calendar, ahead []span, after Day) bool {
	latest, slack, ok := p.back(p.launch, p.Way)
	if !ok {
		return false
	}
	c.latest, c.slack = latest, slack
	c.Makes, c.Keeps = after <= p.launch, after <= slack.first
	for i, s := range latest {
		r := &c.Rows[i]
		if s.last >= s.first {
			r.LatestFirst, r.LatestLast, r.Latest = s.first.Date(), s.last.Date(), s.says()
		}
		if r.First != "" {
			r.Spare = p.counted(p.Steps[i].By).count(ahead[i].last, s.last)
			r.Says = spareWords(r.Spare, s)
		}
	}
	if slack.last >= slack.first {
		c.Slack.LatestFirst, c.Slack.LatestLast, c.Slack.Latest = slack.first.Date(), slack.last.Date(), slack.says()
	}
	c.Position = p.position(c, latest, slack, after)
	return true
}
