package days

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// newYears is a copy of a table of the lunar new year's days at UTC+8 (rule
// GB/T 33661-2017). It is carried because general calendar data has some of
// its days wrong: 2027 and 2030 a day late and early.
//
//go:embed chinese_new_year.csv
var newYears string

// How long a maker is closed round the lunar new year, with the days when
// nothing moves yet or any more: common practice, no published source.
const (
	closedBefore = 7  // days before the new year's day
	closedAfter  = 14 // days after it
)

// The week from 1 October, in which the same makers close (common practice, no
// published source).
const (
	autumnMonth = time.October
	autumnDays  = 7
)

// Closures is when a maker is likely to be closed: a start for ranges that the
// person corrects.
type Closures struct {
	Spans []DaySpan `json:"spans"`
	// Unknown holds a sentence for each year whose new year's day the table
	// does not have.
	Unknown []string `json:"unknown"`
}

// LunarNewYear returns the day of the lunar new year; ok is false outside the
// years of the table.
func LunarNewYear(year int) (d Day, ok bool) {
	d, ok = lunar()[year]
	return d, ok
}

// lunar reads the embedded table; its own text cannot be wrong but by our
// fault, which a test would show.
func lunar() map[int]Day {
	rows, err := csv.NewReader(strings.NewReader(newYears)).ReadAll()
	if err != nil {
		panic("days: the table of new years: " + err.Error())
	}
	all := map[int]Day{}
	for _, row := range rows[1:] {
		year, err1 := strconv.Atoi(row[0])
		d, err2 := Read(Date(row[1]))
		if err1 != nil || err2 != nil {
			panic("days: the table of new years, row " + row[0])
		}
		all[year] = d
	}
	return all
}

// UsualClosures returns the likely closures of the years from one to another,
// in order of their days.
func UsualClosures(from, to int) Closures {
	c := Closures{Spans: []DaySpan{}, Unknown: []string{}}
	known := lunar()
	for y := max(from, firstYear); y <= min(to, lastYear); y++ {
		if d, ok := known[y]; ok {
			c.Spans = append(c.Spans, DaySpan{(d - closedBefore).Date(), (d + closedAfter).Date(), fmt.Sprintf("lunar new year, %s", d.Says())})
		} else {
			c.Unknown = append(c.Unknown, unknownYear(y))
		}
		first := On(y, autumnMonth, 1)
		c.Spans = append(c.Spans, DaySpan{first.Date(), (first + autumnDays - 1).Date(), "week from 1 October"})
	}
	return c
}

func unknownYear(y int) string {
	return fmt.Sprintf("The day of the lunar new year %d is not known here: ask the maker when they close.", y)
}
