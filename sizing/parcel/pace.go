package parcel

import (
	"fmt"
	"math"
	"strconv"

	"badgewright/sizing/days"
)

// Pace is how fast firsts go to buyers: all that were sold, at the fair and
// wholesale too, over the last weeks, taken together as one rate. Between is
// the exact interval of a count that comes at one rate (Garwood), 90 percent.
type Pace struct {
	Sold    int     `json:"sold"`
	Days    int     `json:"days"` // looked at
	PerWeek float64 `json:"perWeek"`
	Slow    float64 `json:"slow"` // a week
	Fast    float64 `json:"fast"`
	Says    string  `json:"says"`
}

// paceSure is how sure the interval of a pace is.
const paceSure Sure = 90

// leastPace is the days of sales below which nothing is reckoned from a pace:
// the first day of a launch is no week (this tool's choice).
const leastPace = 14

// Reorder is when to order a version again.
type Reorder struct {
	// Out is the day the last first goes at the pace, By the last day to order so
	// that new ones are there then; Early is By at the fast end of the pace, Late at the
	// slow end.
	Out   days.Date `json:"out"`
	By    days.Date `json:"by"`
	Early days.Date `json:"early"`
	Late  days.Date `json:"late,omitempty"` // empty when out of sight
	Ends  string    `json:"ends"`           // Early and Late in words
	Now   bool      `json:"now"`            // By is past
	// Die says that the order can use the die that was cut; DieAge is its age in
	// whole months.
	Die    bool   `json:"die"`
	DieAge int    `json:"dieAge"`
	Says   string `json:"says"`
}

// Lead is how long a new order takes: by an order's calendar, where there is
// one, else by days of the calendar.
type Lead struct {
	Days     int
	Schedule *days.Schedule
}

// inSight is how far ahead a stock is followed, days: what lasts longer needs no
// date (this tool's choice).
const inSight = 3 * 365

func (s *stocked) row(b *StockBook, lead Lead, now days.Day, out *Stock) StockRow {
	r := StockRow{Design: s.name.Design, Version: s.name.Version, Name: s.name.Name, Firsts: s.firsts.line, Seconds: s.seconds.line}
	r.Pace = s.firsts.pace(b.Weeks, now)
	if r.Pace != nil && r.Pace.Sold > 0 && r.Pace.Days >= leastPace {
		r.Reorder = s.reorder(r.Firsts.Left, *r.Pace, lead, now, out)
	}
	r.Says = r.words()
	return r
}

// pace looks at the last weeks, or at all the time since the first pieces came
// where that is shorter; nothing when none ever came.
func (s *shelf) pace(weeks int, now days.Day) *Pace {
	if len(s.changes) == 0 || s.changes[0].day > now {
		return nil
	}
	from := max(s.changes[0].day, now-days.Day(7*weeks)+1)
	p := &Pace{Days: int(now-from) + 1}
	for _, c := range s.changes {
		if c.day >= from && c.day <= now && (c.kind == Sold || c.kind == AtFair || c.kind == Wholesale) {
			p.Sold -= c.by
		}
	}
	week := func(n float64) float64 { return float64(n*7) / float64(p.Days) }
	lo, hi := CountBetween(p.Sold, paceSure)
	p.PerWeek, p.Slow, p.Fast = week(float64(p.Sold)), week(lo), week(hi)
	p.Says = fmt.Sprintf("%s went to buyers in the last %s: %s a week, %s to %s with 90 percent confidence if they go at one steady rate.", pieces(p.Sold), plural(p.Days, "day"), few(p.PerWeek), few(p.Slow), few(p.Fast))
	return p
}

// few writes a rate with as many places as it needs.
func few(v float64) string {
	if v >= 10 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(math.Round(float64(v*10))/10, 'f', -1, 64)
}

// reorder finds the days; nothing when the stock lasts out of sight.
func (s *stocked) reorder(stock int, p Pace, lead Lead, now days.Day, out *Stock) *Reorder {
	gone, ok := lasts(stock, p.PerWeek, now)
	if !ok {
		return nil
	}
	r := &Reorder{Out: gone.Date()}
	by := lead.before(gone, now, out)
	r.By, r.Now = by.Date(), by <= now
	if fast, ok := lasts(stock, p.Fast, now); ok {
		day := max(now, lead.before(fast, now, out))
		r.Early, r.Ends = day.Date(), "At the fast end of the pace order by "+day.Says()
	}
	if slow, ok := lasts(stock, p.Slow, now); ok {
		day := max(now, lead.before(slow, now, out))
		r.Late = day.Date()
		r.Ends += ", at the slow end by " + day.Says()
	}
	r.Ends += "."
	if s.die != 0 && s.die <= now {
		r.Die, r.DieAge = true, months(s.die, now)
	}
	r.Says = r.words(by, gone)
	return r
}

// lasts is the day on which a stock is gone at a rate.
func lasts(stock int, perWeek float64, now days.Day) (days.Day, bool) {
	if perWeek <= 0 {
		return 0, false
	}
	n := math.Floor(float64(float64(stock)*7) / perWeek)
	return now + days.Day(min(n, inSight+1)), n <= inSight
}

// before is the last day to order so that pieces are there by a day. A new
// order on the kept die needs neither drawing nor proof.
func (l Lead) before(gone, now days.Day, out *Stock) days.Day {
	plain := gone - days.Day(l.Days)
	if l.Schedule == nil {
		return plain
	}
	s := *l.Schedule
	s.Today, s.Launch, s.Start, s.Doing, s.Done = now.Date(), gone.Date(), "", "", 0
	s.Steps, s.Ways, s.Way = nil, nil, -1
	for _, step := range l.Schedule.Steps {
		if step.Key != days.KeyDrawing && step.Key != days.KeyProof {
			s.Steps = append(s.Steps, step)
		}
	}
	c, faults := days.Reckon(s)
	if len(faults) > 0 {
		out.note("The calendar of the order cannot be used (" + faults[0].What + "), so " + plural(l.Days, "day") + " are reckoned with.")
		return plain
	}
	for _, r := range c.Rows {
		if d, err := days.Read(r.LatestFirst); err == nil {
			return d
		}
	}
	return plain
}

func (s *Stock) note(text string) {
	for _, n := range s.Notes {
		if n == text {
			return
		}
	}
	s.Notes = append(s.Notes, text)
}

// months counts the whole months between two days.
func months(from, to days.Day) int {
	y1, m1, d1 := parts(from)
	y2, m2, d2 := parts(to)
	n := 12*(y2-y1) + m2 - m1
	if d2 < d1 {
		n--
	}
	return max(0, n)
}

// parts reads year, month and day off the way a day travels.
func parts(d days.Day) (year, month, day int) {
	text := string(d.Date())
	return whole(text[:4]), whole(text[5:7]), whole(text[8:])
}

func (r *Reorder) words(by, gone days.Day) string {
	if r.Now {
		return fmt.Sprintf("order again now: they are gone by %s, and %s was the day", gone.Says(), by.Says())
	}
	return "order again by " + by.Says()
}

// words is the answer for one version.
func (r *StockRow) words() string {
	left := gradeCount(r.Firsts.Left, First) + " left"
	switch {
	case r.Firsts.Came == 0:
		return "none came yet"
	case r.Firsts.Left == 0:
		return left
	case r.Pace == nil || r.Pace.Sold == 0:
		return left + "; none went to buyers lately, so there is no pace to reckon with"
	case r.Pace.Days < leastPace:
		return fmt.Sprintf("%s; it is too early for a pace, which is reckoned from %d days on", left, leastPace)
	case r.Reorder == nil:
		return fmt.Sprintf("%s; at %s a week they last more than three years", left, few(r.Pace.PerWeek))
	}
	return fmt.Sprintf("%s; at %s a week, %s", left, few(r.Pace.PerWeek), r.Reorder.Says)
}

// stockSays leads with the version that has to be ordered first.
func stockSays(rows []StockRow) string {
	best, total := -1, 0
	for i, r := range rows {
		total += r.Firsts.Left
		if r.Reorder != nil && (best < 0 || r.Reorder.By < rows[best].Reorder.By) {
			best = i
		}
	}
	switch {
	case len(rows) == 1:
		return capital(rows[0].Says) + "."
	case best < 0:
		return capital(gradeCount(total, First)) + " left in all."
	}
	return fmt.Sprintf("%s left in all. %s first: %s.", capital(gradeCount(total, First)), rows[best].Name, rows[best].Says)
}
