//go:build !pin

package wire

import (
	"badgewright/sizing/days"
	"badgewright/sizing/demand"
	"badgewright/sizing/left"
	"badgewright/sizing/unit"
)

// OrderUsualAsk asks for what an order's days and sales start from, for the
// years from one to another.
type OrderUsualAsk struct {
	From      int      `json:"from"`
	To        int      `json:"to"`
	Countries []string `json:"countries"` // whose holidays to list
}

// HolidaysOf is the public holidays of one country over the years asked for.
type HolidaysOf struct {
	Code     string         `json:"code"`
	Known    bool           `json:"known"`
	Holidays []days.Holiday `json:"holidays"`
}

// OrderUsual is what an order's days and sales start from.
type OrderUsual struct {
	Countries []days.Country     `json:"countries"` // all whose holidays are known
	Holidays  []HolidaysOf       `json:"holidays"`
	Closures  days.Closures      `json:"closures"` // of a maker
	Steps     []days.OrderStep   `json:"steps"`
	Slack     int                `json:"slack"`
	Weekend   []int              `json:"weekend"`
	Prior     demand.DemandPrior `json:"prior"`
	// Selling, Guess and Presale are invented figures.
	Selling left.Selling     `json:"selling"`
	Guess   demand.Guess     `json:"guess"`
	Presale days.PresaleDays `json:"presale"`
}

// DaysAsk asks for the calendar of an order.
type DaysAsk struct {
	Schedule days.Schedule `json:"schedule"`
	// Priced, where it is given, fills in the ways of delivery with their days
	// and totals from the price list, and the one in use from the order.
	Priced *PricedOrder `json:"priced,omitempty"`
}

// Days is the calendar, or what is wrong with the schedule; Schedule has its
// fields filled in.
type Days struct {
	Faults   []unit.Fault   `json:"faults"`
	Schedule days.Schedule  `json:"schedule"`
	Calendar *days.Calendar `json:"calendar,omitempty"`
	// Unpriced is why nothing is said of what a delivery choice saves; mostly empty.
	Unpriced string `json:"unpriced,omitempty"`
}

// PromiseAsk asks what day can be promised to those who pay ahead.
type PromiseAsk struct {
	Schedule days.Schedule    `json:"schedule"`
	Presale  days.PresaleDays `json:"presale"`
	// Priced, where it is given, fills in the ways of delivery as for the calendar.
	Priced *PricedOrder `json:"priced,omitempty"`
}

// Promise is that day, or what is wrong with the question.
type Promise struct {
	Faults  []unit.Fault       `json:"faults"`
	Promise *days.PromisedDays `json:"promise,omitempty"`
}

// CalendarFileAsk asks for the calendar as an iCalendar file.
type CalendarFileAsk struct {
	Name     string        `json:"name"` // of the order
	Schedule days.Schedule `json:"schedule"`
}

// CalendarFile comes with the file's bytes, or says what is wrong.
type CalendarFile struct {
	Faults   []unit.Fault `json:"faults"`
	FileName string       `json:"fileName"`
	Type     string       `json:"type"` // text/calendar
}
