package days

import (
	"cmp"
	"fmt"
	"slices"

	"badgewright/sizing/unit"
)

// DaySpan is a run of days, both ends among them.
type DaySpan struct {
	From Date   `json:"from"`
	To   Date   `json:"to"`
	Name string `json:"name"`
}

// Workdays says on which days somebody works.
type Workdays struct {
	// Country is the code of a country whose public holidays are kept; empty
	// for none.
	Country string `json:"country"`
	// Weekend lists the days of the week without work, 1 for Monday to 7.
	Weekend []int     `json:"weekend"`
	Off     []DaySpan `json:"off"`    // own days off, and closures
	Worked  []Date    `json:"worked"` // days worked though they would be free
}

// farthest is how many days one looks for a working day before giving up.
const farthest = 800

// workdays is Workdays made ready to be asked.
type workdays struct {
	weekend  [8]bool
	off      []feastSpan
	worked   []Day
	country  *known
	holidays map[int][]feast // by year, found when first asked for
}

type feastSpan struct {
	from, to Day
	name     string
}

// ready reads working days; field and whose name them in sentences.
func (w Workdays) ready(f *unit.Faults, field, whose string) *workdays {
	r := &workdays{holidays: map[int][]feast{}}
	free := 0
	for i, d := range w.Weekend {
		at := fmt.Sprintf("%s.weekend[%d]", field, i)
		if d < 1 || d > 7 {
			f.Say(at, "Day %d of the week %s does not exist; Monday is 1 and Sunday 7.", d, whose)
			continue
		}
		if !r.weekend[d] {
			free++
		}
		r.weekend[d] = true
	}
	if free == 7 {
		f.Say(field+".weekend", "No day of the week %s is left to work on; leave at least one.", whose)
	}
	if w.Country != "" {
		if r.country = find(w.Country); r.country == nil {
			f.Say(field+".country", "The holidays of %q %s are not known; choose a country of the list, or none and put in days off.", w.Country, whose)
		}
	}
	r.spans(f, field+".off", whose, w.Off)
	for i, d := range w.Worked {
		if day, ok := read(f, fmt.Sprintf("%s.worked[%d]", field, i), "A day that is worked "+whose, d); ok {
			r.worked = append(r.worked, day)
		}
	}
	return r
}

// spans reads days off; an end left empty is the same day as the start.
func (r *workdays) spans(f *unit.Faults, field, whose string, all []DaySpan) {
	for i, s := range all {
		at := fmt.Sprintf("%s[%d]", field, i)
		from, ok := read(f, at+".from", "A first day off "+whose, s.From)
		to := from
		if ok && s.To != "" {
			to, ok = read(f, at+".to", "A last day off "+whose, s.To)
		}
		switch {
		case !ok:
		case to < from:
			f.Say(at+".to", "Days off %s end on %s, before they begin on %s; swap the two.", whose, to.Says(), from.Says())
		case to-from >= 366:
			f.Say(at+".to", "Days off %s from %s to %s are longer than a year; shorten them.", whose, from.Says(), to.Says())
		default:
			r.off = append(r.off, feastSpan{from, to, s.Name})
		}
	}
}

// free tells why nobody works on a day; empty on a working day.
func (r *workdays) free(d Day) (why string) {
	_, why = r.why(d)
	return why
}

// why tells in one word and in a name why nobody works on a day; both are empty
// on a working day.
func (r *workdays) why(d Day) (kind FreeKind, name string) {
	if slices.Contains(r.worked, d) {
		return "", ""
	}
	for _, s := range r.off {
		if d >= s.from && d <= s.to {
			return FreeOff, cmp.Or(s.name, "day off")
		}
	}
	for _, h := range r.inYear(d.Year()) {
		if h.day == d {
			return FreeHoliday, h.name
		}
	}
	if r.weekend[d.Weekday()] {
		return FreeWeekend, weekendName
	}
	return "", ""
}

const weekendName = "weekend"

func (r *workdays) inYear(year int) []feast {
	if r.country == nil {
		return nil
	}
	all, ok := r.holidays[year]
	if !ok {
		all = r.country.in(year)
		r.holidays[year] = all
	}
	return all
}

// roll returns the nearest working day at a day or after it, or, with way -1,
// at it or before. ok is false when there is none within reach.
func (r *workdays) roll(d Day, way Day) (at Day, ok bool) {
	for range farthest {
		if r.free(d) == "" {
			return d, true
		}
		d += way
	}
	return d, false
}

// add goes n working days on, from the first working day at d or after it, or
// back for n below 0, from the last at d or before.
func (r *workdays) add(d Day, n int) (at Day, ok bool) {
	way := Day(1)
	if n < 0 {
		way, n = -1, -n
	}
	d, ok = r.roll(d, way)
	for ; ok && n > 0; n-- {
		d, ok = r.roll(d+way, way)
	}
	return d, ok
}

// count returns the working days after from up to to; below 0 when to is the
// earlier: minus the working days after to up to from.
func (r *workdays) count(from, to Day) int {
	if to < from {
		return -r.count(to, from)
	}
	n := 0
	for d := from + 1; d <= to; d++ {
		if r.free(d) == "" {
			n++
		}
	}
	return n
}

// Add goes n working days on from a day, or back; see Workdays. What cannot
// be read comes back as faults.
func (w Workdays) Add(from Date, n int) (Date, unit.Faults) {
	var f unit.Faults
	r := w.ready(&f, "workdays", "of this calendar")
	d, _ := read(&f, "from", "The day to count from", from)
	f.Whole("days", "The number of working days", n, -farthest, farthest)
	if len(f) > 0 {
		return "", f
	}
	at, ok := r.add(d, n)
	if !ok {
		f.Say("workdays", "There is no working day within %d days; take out some days off.", farthest)
		return "", f
	}
	return at.Date(), nil
}
