package pricefile

import (
	"fmt"
	"strings"

	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// Cells of an entry's line, by their place.
const (
	atWhich = 1 // which one of several
	atValue = 2
	atBy    = 3 // what it is counted by, or falls on
)

// entry is one kind of line: how it is read, and written.
type entry struct {
	cells int // how many cells it may have
	set   func(r *reader, l row)
	// get gives the lines of a list, each without the entry's name.
	get func(l *run.PriceList) [][]string
}

// unknown is what an empty figure is written as.
const unknown = ""

// rateEntry is one figure of money, or of percent.
func rateEntry(path, beside string, of func(*run.PriceList) *run.Rate) entry {
	return entry{
		cells: 3,
		set: func(r *reader, l row) {
			r.keep(path, l.at(atValue))
			*of(&r.list) = r.amount(l.at(atValue), r.beside(beside))
		},
		get: func(l *run.PriceList) [][]string { return oneLine("", of(l).String()) },
	}
}

// beside is what may stand beside a figure: the currency, unless it is percent.
func (r *reader) beside(fixed string) string {
	if fixed == "" {
		return r.list.Currency
	}
	return fixed
}

// chargeEntry is a rate and what it is counted by.
func chargeEntry(path string, of func(*run.PriceList) *run.Charge) entry {
	return entry{
		cells: 4,
		set: func(r *reader, l row) {
			*of(&r.list) = r.charge(path, l)
		},
		get: func(l *run.PriceList) [][]string { return chargeLine("", *of(l)) },
	}
}

// charge reads a rate with what it is counted by: said, or percent where the
// figure says so, or else the piece.
func (r *reader) charge(path string, l row) run.Charge {
	value, by := l.at(atValue), l.at(atBy)
	r.keep(path+".rate", value)
	r.keep(path+".by", by)
	c := run.Charge{By: run.PerPiece}
	switch word := strings.ToLower(by.text); {
	case word == "" && strings.HasSuffix(value.text, "%"), word == "%":
		c.By = run.Percent
	case word != "":
		c.By = run.ChargeBy(word)
	}
	beside := r.list.Currency
	if c.By == run.Percent {
		beside = "%"
	}
	c.Rate = r.amount(value, beside)
	if by.text == "" && value.text == "" {
		c.By = ""
	}
	return c
}

// kindsEntry is a charge for each kind of a thing, and for every other.
func kindsEntry(path string, of func(*run.PriceList) *run.Kinds) entry {
	return entry{
		cells: 4,
		set: func(r *reader, l row) {
			k, id := of(&r.list), l.cell(atWhich)
			if id == run.OtherKinds {
				k.Others = r.charge(path+".others", l)
				return
			}
			i := 0
			for i < len(k.Listed) && (k.Listed[i].ID != id || r.has(fmt.Sprintf("%s.listed[%d].id", path, i))) {
				i++
			}
			at := fmt.Sprintf("%s.listed[%d]", path, i)
			r.keep(at+".id", l.at(atWhich))
			one := run.KindCharge{ID: id, Charge: r.charge(at+".charge", l)}
			if i == len(k.Listed) {
				k.Listed = append(k.Listed, one)
			} else {
				k.Listed[i] = one
			}
		},
		get: func(l *run.PriceList) (all [][]string) {
			k := of(l)
			for _, one := range k.Listed {
				all = append(all, chargeLine(one.ID, one.Charge)...)
			}
			return append(all, chargeLine(run.OtherKinds, k.Others)...)
		},
	}
}

// countEntry is a whole number; an empty cell is 0.
func countEntry(path string, of func(*run.PriceList) *int) entry {
	return entry{
		cells: 3,
		set: func(r *reader, l row) {
			r.keep(path, l.at(atValue))
			*of(&r.list) = r.count(l.at(atValue))
		},
		get: func(l *run.PriceList) [][]string {
			if *of(l) == 0 {
				return nil
			}
			return oneLine("", fmt.Sprint(*of(l)))
		},
	}
}

func (r *reader) count(at place) int {
	if at.text == "" {
		return 0
	}
	n, err := unit.ParseCount(at.text, "")
	if err != nil {
		r.problem(at, err.Error())
	}
	return n
}

// wordEntry is one of a few words.
func wordEntry(path string, words []string, of func(*run.PriceList) string, set func(*run.PriceList, string)) entry {
	return entry{
		cells: 3,
		set: func(r *reader, l row) {
			at := l.at(atValue)
			r.keep(path, at)
			set(&r.list, r.word(at, words))
		},
		get: func(l *run.PriceList) [][]string { return oneLine("", of(l)) },
	}
}

// word reads one of a few words, the first for an empty cell.
func (r *reader) word(at place, words []string) string {
	said := entryName(at.text)
	for _, w := range words {
		if said == w {
			return w
		}
	}
	if said != "" {
		r.problem(at, fmt.Sprintf("%q is not understood here; it is one of: %s.", at.text, strings.Join(words, ", ")))
	}
	return words[0]
}

// keep remembers where a cell of the list was read.
func (r *reader) keep(path string, at place) { r.places[path] = at }

func (r *reader) has(path string) bool {
	_, ok := r.places[path]
	return ok
}

// oneLine is a line with a figure, or none for what is not known.
func oneLine(which, value string) [][]string {
	if value == unknown {
		return nil
	}
	return [][]string{{which, value}}
}

func chargeLine(which string, c run.Charge) [][]string {
	if !c.Rate.Known() && c.By == "" && (which == "" || which == run.OtherKinds) {
		return nil
	}
	return [][]string{{which, c.Rate.String(), string(c.By)}}
}
