// Package days reckons with whole days: working days, holidays and closures,
// and the calendar of an order from drawing to launch. It knows no clock and
// no time zone: today is passed in, and a day is a day wherever one stands.
package days

import (
	"fmt"
	"time"

	"badgewright/sizing/unit"
)

// Date is a day as it travels: "2027-02-06" (ISO 8601), or empty for none.
type Date string

// Day counts the days since 1 January 1970 in the Gregorian calendar.
type Day int

// The years that plans are made for (this tool's choice).
const (
	firstYear = 2000
	lastYear  = 2099
)

const (
	isoLayout   = "2006-01-02"
	secondsADay = 24 * 60 * 60
)

// On returns a day by its date; a day past the end of a month runs over into
// the next, as in package time.
func On(year int, month time.Month, day int) Day {
	return Day(time.Date(year, month, day, 0, 0, 0, 0, time.UTC).Unix() / secondsADay)
}

// at is the day as package time has it, at midnight in UTC, where every day
// has 24 hours.
func (d Day) at() time.Time { return time.Unix(int64(d)*secondsADay, 0).UTC() }

// Date writes the day as it travels.
func (d Day) Date() Date { return Date(d.at().Format(isoLayout)) }

// Year returns the calendar year.
func (d Day) Year() int { return d.at().Year() }

// Weekday counts from Monday, 1, to Sunday, 7 (ISO 8601).
func (d Day) Weekday() int { return (int(d.at().Weekday())+6)%7 + 1 }

// Week returns the week of ISO 8601 and the year it belongs to.
func (d Day) Week() (year, week int) { return d.at().ISOWeek() }

// Says writes the day for a person: "Sat 6 Feb 2027".
func (d Day) Says() string { return d.at().Format("Mon 2 Jan 2006") }

// Read reads a day as it travels. What is no day is a *unit.Mistake.
func Read(date Date) (Day, error) {
	const do = "Give year, month and day, such as 2027-02-06."
	if date == "" {
		return 0, &unit.Mistake{What: "No day is given.", Do: do}
	}
	t, err := time.Parse(isoLayout, string(date))
	switch {
	case err != nil:
		return 0, &unit.Mistake{What: fmt.Sprintf("%q is not a day of the calendar.", string(date)), Do: do}
	case t.Year() < firstYear || t.Year() > lastYear:
		return 0, &unit.Mistake{What: fmt.Sprintf("The year %d is out of reach.", t.Year()), Do: fmt.Sprintf("Give a day from %d to %d.", firstYear, lastYear)}
	}
	return On(t.Year(), t.Month(), t.Day()), nil
}

// read reads the day of a field; ok is false, with a sentence among the
// faults, when it is none.
func read(f *unit.Faults, field, name string, date Date) (d Day, ok bool) {
	d, err := Read(date)
	if err != nil {
		f.Say(field, "%s: %s", name, err)
	}
	return d, err == nil
}
