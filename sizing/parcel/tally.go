package parcel

import (
	"fmt"
	"strings"

	"badgewright/sizing/days"
	"badgewright/sizing/unit"
)

// TallyRow is the count of one version, or of all.
type TallyRow struct {
	Design   string `json:"design"`
	Version  string `json:"version"`
	Name     string `json:"name"`
	Ordered  int    `json:"ordered"`
	Received int    `json:"received"`
	Graded   int    `json:"graded"` // looked at
	Firsts   int    `json:"firsts"`
	Seconds  int    `json:"seconds"`
	Rejects  int    `json:"rejects"`
	// Known is false while the count goes on: Received is then what was ordered.
	Known bool `json:"known"`
	// Short is what is missing of the order; below 0 when more came.
	Short   int         `json:"short"`
	Flaws   []FlawCount `json:"flaws"`
	Verdict Standing    `json:"verdict"`
	Counts  string      `json:"counts"` // in words
}

// Tally is a parcel counted.
type Tally struct {
	Rows []TallyRow `json:"rows"`
	All  TallyRow   `json:"all"`
	Says string     `json:"says"`
	// Tell is the last day on which to tell the maker, and Tells says so; empty
	// without a day of arrival.
	Tell     days.Date   `json:"tell"`
	Tells    string      `json:"tells"`
	Cautions []string    `json:"cautions"`
	Money    *TallyMoney `json:"money,omitempty"`
}

// Count tallies a parcel as of today. Faults come back instead.
func Count(p Parcel, worth *Worth, today days.Date) (*Tally, unit.Faults) {
	f := p.check()
	now, _ := readDay(&f, "today", "Today", today)
	if len(f) > 0 {
		return nil, f
	}
	t := &Tally{Rows: []TallyRow{}, Cautions: []string{}}
	all, came, known := ParcelRow{Name: "All"}, 0, true
	for i := range p.Rows {
		r := &p.Rows[i]
		n, ok := p.received(r)
		t.Rows = append(t.Rows, p.row(r, n, ok))
		came += n
		known = known && ok
		all.Ordered += r.Ordered
		all.Firsts += r.Firsts
		all.Flawed = append(all.Flawed, r.Flawed...)
	}
	t.All = p.row(&all, came, known)
	t.Says = t.words()
	t.cautions()
	p.tell(t, now)
	if worth != nil && t.All.Graded > 0 {
		t.Money = worth.of(&p, t.All, &f)
	}
	return t, f
}

// row counts one version, of which some came.
func (p *Parcel) row(r *ParcelRow, came int, known bool) TallyRow {
	t := TallyRow{
		Design: r.Design, Version: r.Version, Name: r.Name, Ordered: r.Ordered, Received: came, Known: known, Graded: r.graded(),
		Firsts: r.Firsts, Seconds: r.count(Second), Rejects: r.count(Reject), Flaws: countFlaws(r.Flawed),
	}
	t.Short = t.Ordered - t.Received
	t.Verdict = judged(t.Received, t.Graded, len(r.Flawed), p.Agreed, p.Sure)
	t.Counts = t.words()
	return t
}

func (t *TallyRow) words() string {
	if t.Graded == 0 && !t.Known {
		return fmt.Sprintf("%d ordered, none counted yet", t.Ordered)
	}
	head := fmt.Sprintf("%d of %d ordered%s", t.Received, t.Ordered, shortWords(t.Short))
	if !t.Known {
		head = fmt.Sprintf("%d of %d counted so far", t.Graded, t.Ordered)
	}
	all := []string{head, plural(t.Firsts, "first"), plural(t.Seconds, "second"), plural(t.Rejects, "reject")}
	if rest := t.Received - t.Graded; rest > 0 && t.Known {
		all = append(all, fmt.Sprintf("%d not looked at", rest))
	}
	return strings.Join(all, ", ")
}

func shortWords(short int) string {
	switch {
	case short > 0:
		return fmt.Sprintf(" (%d short)", short)
	case short < 0:
		return fmt.Sprintf(" (%d over)", -short)
	}
	return ""
}

func plural(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

// words is the running verdict: on the whole first, then what is worse in a
// version than in the whole.
func (t *Tally) words() string {
	says := t.All.Verdict.Says
	if t.All.Verdict.Kind == Over || len(t.Rows) < 2 {
		return says
	}
	for _, r := range t.Rows {
		if r.Verdict.Kind == Over {
			says += fmt.Sprintf(" But of %s alone: %s", r.Name, lowerFirst(r.Verdict.Says))
		}
	}
	return says
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// cautions speaks of pieces that can hurt somebody.
func (t *Tally) cautions() {
	for _, c := range t.All.Flaws {
		if c.Serious {
			t.Cautions = append(t.Cautions, fmt.Sprintf("%s, %s. %s", capital(c.Name), pieces(c.Count), flawOf(c.Kind).Caution))
		}
	}
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// tell says by when the maker must be told.
func (p *Parcel) tell(t *Tally, now days.Day) {
	arrived, err := days.Read(p.Arrived)
	if err != nil {
		return
	}
	last := arrived + days.Day(p.Within)
	t.Tell = last.Date()
	switch left := int(last - now); {
	case left < 0:
		t.Tells = fmt.Sprintf("The %s to tell the maker ended on %s; tell them all the same.", plural(p.Within, "day"), last.Says())
	case left == 0:
		t.Tells = "Tell the maker today: it is the last day."
	default:
		t.Tells = fmt.Sprintf("Tell the maker by %s, %s from now.", last.Says(), plural(left, "day"))
	}
}
