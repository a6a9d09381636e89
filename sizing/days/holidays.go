//go:build !pin

package days

import (
	"slices"
	"time"

	"github.com/rickar/cal/v2"
)

// The library makes its days at midnight of a place; in UTC no day is short.
func init() { cal.DefaultLoc = time.UTC }

// Holidays returns the public holidays of a year, in order of their days, each
// on the day it is kept: a Monday for a Sunday where the law says so. ok is
// false for a country that is not covered.
func Holidays(code string, year int) (all []Holiday, ok bool) {
	k := find(code)
	if k == nil {
		return []Holiday{}, false
	}
	found := k.in(year)
	all = make([]Holiday, len(found))
	for i, h := range found {
		all[i] = Holiday{Date: h.day.Date(), Name: h.name}
	}
	return all, true
}

func find(code string) *known {
	for i := range countries {
		if countries[i].Code == code {
			return &countries[i]
		}
	}
	return nil
}

// in finds the holidays of a year. One may be kept in the year before its own,
// as when 1 January is a Saturday.
func (k *known) in(year int) []feast {
	var all []feast
	for _, h := range k.holidays {
		if h.Type == cal.ObservanceOther {
			continue // a day that is marked but worked
		}
		for y := year; y <= year+1; y++ {
			_, kept := h.Calc(y)
			if kept.IsZero() || kept.Year() != year {
				continue
			}
			all = append(all, feast{day: On(kept.Year(), kept.Month(), kept.Day()), name: h.Name})
		}
	}
	slices.SortStableFunc(all, func(a, b feast) int { return int(a.day - b.day) })
	return slices.CompactFunc(all, func(a, b feast) bool { return a.day == b.day })
}
