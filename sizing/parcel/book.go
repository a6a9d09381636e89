package parcel

import (
	"fmt"
	"slices"

	"badgewright/sizing/days"
	"badgewright/sizing/unit"
)

// MoveKind is why pieces come into the stock or leave it.
type MoveKind string

// The moves. What a parcel brings is read off its count and is no move.
const (
	Had          MoveKind = "had"         // was there, or came back
	Replacements MoveKind = "replacement" // put aside for buyers whose piece fails
	Gifts        MoveKind = "gift"
	Wholesale    MoveKind = "wholesale"
	AtFair       MoveKind = "fair"
	Sold         MoveKind = "sold"
)

// leaving are the moves out of the stock, in the order of the table.
var leaving = []MoveKind{Replacements, Gifts, Wholesale, AtFair, Sold}

// moveWords say what cannot be done when there are too few.
var moveWords = map[MoveKind]string{
	Replacements: "put aside", Gifts: "given away", Wholesale: "sold wholesale", AtFair: "sold at the fair", Sold: "sold",
}

// StockMove is one entry of the book.
type StockMove struct {
	Day     days.Date `json:"day"`
	Design  string    `json:"design"`
	Version string    `json:"version"`
	Kind    MoveKind  `json:"kind"`
	Grade   Grade     `json:"grade"` // first or second
	Count   int       `json:"count"`
}

// StockBook is what a person enters of the pieces after the parcel.
type StockBook struct {
	Moves []StockMove `json:"moves"`
	// Weeks is how far back the pace of sales is looked at.
	Weeks int `json:"weeks"`
	// LeadDays is the days of the calendar from ordering again to having the
	// pieces carded, where no calendar of the order is given.
	LeadDays int `json:"leadDays"`
}

// What a book starts from: two months say enough of a pace and are still of now
// (this tool's choice); ordering again without drawing and proof takes 20
// working days of making, six of carriage and some of carding (common practice,
// no published source), 45 days of the calendar.
const (
	UsualWeeks    = 8
	UsualLeadDays = 45
)

// StockName is a version as it is called now.
type StockName struct {
	Design  string `json:"design"`
	Version string `json:"version"`
	Name    string `json:"name"`
}

// StockLine is what became of the pieces of one grade.
type StockLine struct {
	Grade        Grade `json:"grade"`
	Came         int   `json:"came"` // by parcels, or had
	Replacements int   `json:"replacements"`
	Gifts        int   `json:"gifts"`
	Wholesale    int   `json:"wholesale"`
	Fair         int   `json:"fair"`
	Sold         int   `json:"sold"`
	Left         int   `json:"left"`
}

// StockRow is the stock of one version.
type StockRow struct {
	Design  string    `json:"design"`
	Version string    `json:"version"`
	Name    string    `json:"name"`
	Firsts  StockLine `json:"firsts"`
	Seconds StockLine `json:"seconds"`
	Pace    *Pace     `json:"pace,omitempty"`
	// Reorder is when to order again; missing where nothing says so.
	Reorder *Reorder `json:"reorder,omitempty"`
	Says    string   `json:"says"`
}

// Stock is the book reckoned up.
type Stock struct {
	Rows  []StockRow `json:"rows"`
	Says  string     `json:"says"`
	Notes []string   `json:"notes"`
}

// change is what comes to or goes from one grade of one version on a day. at is
// its place among the moves; below 0 for a parcel.
type change struct {
	day  days.Day
	by   int
	at   int
	kind MoveKind
}

// shelf is one grade of one version with its changes.
type shelf struct {
	line    StockLine
	changes []change
}

type stocked struct {
	name            StockName
	firsts, seconds shelf
	die             days.Day // of the first order known; 0 for none
}

// Keep reckons the book up as of today. A move that would leave fewer than none
// is a fault, as is anything that cannot be read.
func Keep(b StockBook, parcels []Parcel, names []StockName, lead Lead, today days.Date) (*Stock, unit.Faults) {
	f := b.check()
	now, _ := readDay(&f, "today", "Today", today)
	for i := range parcels {
		for _, one := range parcels[i].check() {
			f.Say(fmt.Sprintf("parcels[%d].%s", i, one.Field), "%s", one.What)
		}
	}
	if len(f) > 0 {
		return nil, f
	}
	all := shelve(&b, parcels, names, now, &f)
	for i := range all {
		all[i].firsts.reckon(&f, &all[i].name)
		all[i].seconds.reckon(&f, &all[i].name)
	}
	if len(f) > 0 {
		return nil, f
	}
	out := &Stock{Rows: []StockRow{}, Notes: []string{}}
	for i := range all {
		out.Rows = append(out.Rows, all[i].row(&b, lead, now, out))
	}
	out.Says = stockSays(out.Rows)
	return out, f
}

// Bounds of a book (this tool's choice).
const (
	mostMoves = 20_000
	mostWeeks = 104
	mostLead  = 730
)

func (b *StockBook) check() unit.Faults {
	var f unit.Faults
	f.Whole("weeks", "The number of weeks looked back", b.Weeks, 1, mostWeeks)
	f.Whole("leadDays", "The number of days of a new order", b.LeadDays, 0, mostLead)
	f.Whole("moves", "The number of entries", len(b.Moves), 0, mostMoves)
	for i, m := range b.Moves {
		at := fmt.Sprintf("moves[%d]", i)
		readDay(&f, at+".day", "The day", m.Day)
		f.Whole(at+".count", "The number of pieces", m.Count, 1, mostLot)
		if m.Kind != Had && !slices.Contains(leaving, m.Kind) {
			f.Say(at+".kind", "%q is no way in which pieces come or go.", string(m.Kind))
		}
		if m.Grade != First && m.Grade != Second {
			f.Say(at+".grade", "Firsts and seconds are kept in stock, not %q.", string(m.Grade))
		}
	}
	return f
}

// shelve sorts all that came and went to its version and grade; versions stand
// in the order in which they are named, then met.
func shelve(b *StockBook, parcels []Parcel, names []StockName, now days.Day, f *unit.Faults) []stocked {
	var all []stocked
	at := func(n StockName) *stocked {
		i := slices.IndexFunc(all, func(s stocked) bool { return s.name.Design == n.Design && s.name.Version == n.Version })
		if i < 0 {
			all = append(all, stocked{name: n, firsts: shelf{line: StockLine{Grade: First}}, seconds: shelf{line: StockLine{Grade: Second}}})
			i = len(all) - 1
		}
		return &all[i]
	}
	for _, n := range names {
		at(n)
	}
	for _, p := range parcels {
		day, err := days.Read(p.Arrived)
		if err != nil {
			day = now
		}
		for i := range p.Rows {
			r := &p.Rows[i]
			s := at(StockName{r.Design, r.Version, r.Name})
			s.firsts.bring(day, r.Firsts)
			s.seconds.bring(day, r.count(Second))
			s.dated(p)
		}
	}
	for i, m := range b.Moves {
		day, _ := readDay(f, "", "", m.Day)
		if day > now {
			f.Say(fmt.Sprintf("moves[%d].day", i), "%s has not come yet; enter a move on its day or later.", day.Says())
		}
		s := at(StockName{m.Design, m.Version, "a version no longer in the order"})
		sh := &s.firsts
		if m.Grade == Second {
			sh = &s.seconds
		}
		n := m.Count
		if m.Kind != Had {
			n = -n
		}
		sh.changes = append(sh.changes, change{day, n, i, m.Kind})
	}
	return all
}

// dated keeps the earliest order of a version: its die is not older.
func (s *stocked) dated(p Parcel) {
	d, err := days.Read(p.Ordered)
	if err != nil {
		d, err = days.Read(p.Arrived)
	}
	if err == nil && (s.die == 0 || d < s.die) {
		s.die = d
	}
}

func (s *shelf) bring(day days.Day, n int) {
	if n > 0 {
		s.changes = append(s.changes, change{day, n, -1, Had})
	}
}

// reckon goes through the days, what comes on a day before what goes; at no
// time can more have gone than came.
func (s *shelf) reckon(f *unit.Faults, name *StockName) {
	slices.SortStableFunc(s.changes, func(a, b change) int {
		switch {
		case a.day != b.day:
			return int(a.day - b.day)
		case (a.by > 0) != (b.by > 0):
			return b.by - a.by
		}
		return a.at - b.at
	})
	for _, c := range s.changes {
		if s.line.Left+c.by < 0 {
			f.Say(fmt.Sprintf("moves[%d].count", c.at), "On %s %s of %s are left, so %d cannot be %s.", c.day.Says(), gradeCount(s.line.Left, s.line.Grade), name.Name, -c.by, moveWords[c.kind])
			return
		}
		s.line.take(c)
	}
}

func (l *StockLine) take(c change) {
	l.Left += c.by
	switch c.kind {
	case Had:
		l.Came += c.by
	case Replacements:
		l.Replacements -= c.by
	case Gifts:
		l.Gifts -= c.by
	case Wholesale:
		l.Wholesale -= c.by
	case AtFair:
		l.Fair -= c.by
	case Sold:
		l.Sold -= c.by
	}
}

func gradeCount(n int, g Grade) string {
	if n == 0 {
		return fmt.Sprintf("no %ss", g)
	}
	return plural(n, string(g))
}
