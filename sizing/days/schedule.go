package days

import (
	"fmt"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// Whose says whose days a step is counted in.
type Whose string

// Whose days count.
const (
	Here  Whose = "here"  // working days of the person who orders
	Maker Whose = "maker" // working days of the maker
	Every Whose = "every" // days of the calendar
)

// Keys of the steps that a delivery choice changes, and of the one before
// which a pre-sale must be paid out.
const (
	KeyDrawing  = "drawing"
	KeyProof    = "proof"
	KeyMaking   = "making"
	KeyCarriage = "carriage"
	KeyCarding  = "carding"
	KeyListing  = "listing"
	KeySlack    = "slack" // kept free before the launch
	KeyPosting  = "posting"
)

// OrderStep is one step of an order; the next begins on the day after it ends.
type OrderStep struct {
	Key   string `json:"key"`
	Name  string `json:"name"`
	Days  int    `json:"days"`
	Times int    `json:"times"` // rounds, for proofs; 0 is once
	By    Whose  `json:"by"`
}

// DeliveryWay is one delivery choice of a maker. Its days take the place of those of
// making and carriage; 0 leaves them.
type DeliveryWay struct {
	Name     string          `json:"name"`
	Making   int             `json:"making"`
	Carriage int             `json:"carriage"`
	Total    decimal.Decimal `json:"total"` // what the whole order costs with it
}

// Schedule is an order's calendar as a person sets it. With a launch day the
// steps are counted back from it; they are counted forward in any case, from
// the start or from today, whichever is later.
type Schedule struct {
	Today  Date        `json:"today"`
	Launch Date        `json:"launch"` // empty when open
	Start  Date        `json:"start"`  // empty for today
	Here   Workdays    `json:"here"`
	Maker  Workdays    `json:"maker"`
	Steps  []OrderStep `json:"steps"`
	// Slack is the working days here that are kept free before the launch.
	Slack int `json:"slack"`
	// Doing is the key of the step in hand, those before it being done, and
	// Done how many of its days are over. Empty is the first step.
	Doing string `json:"doing"`
	Done  int    `json:"done"`
	// Ways are the delivery choices there are, and Way the one in use; below 0
	// for none.
	Ways []DeliveryWay `json:"ways"`
	Way  int           `json:"way"`
	// Unpriced says that what the ways cost is not known: nothing is said of it.
	Unpriced bool `json:"unpriced,omitempty"`
	// Currency and MinorDigits are for what a delivery choice saves.
	Currency    string `json:"currency"`
	MinorDigits int    `json:"minorDigits"`
	// LunarYear says that the maker closes round the lunar new year, so that a
	// year without known day is spoken of.
	LunarYear bool `json:"lunarYear"`
}

// Usual returns steps to start from (common practice, no published source):
// two proof rounds of three working days, making 20, carriage 6.
func Usual() []OrderStep {
	return []OrderStep{
		{Key: KeyDrawing, Name: "Drawing", Days: 5, By: Here},
		{Key: KeyProof, Name: "Proof rounds", Days: 3, Times: 2, By: Maker},
		{Key: KeyMaking, Name: "Making", Days: 20, By: Maker},
		{Key: KeyCarriage, Name: "Carriage", Days: 6, By: Here},
		{Key: KeyCarding, Name: "Counting and carding", Days: 3, By: Here},
		{Key: KeyListing, Name: "Listing", Days: 1, By: Here},
	}
}

// UsualSlack is the working days kept free to start with (this tool's choice).
const UsualSlack = 5

// Weekend is the free days of a week in most places.
func Weekend() []int { return []int{6, 7} }

// Bounds past which a number of days is a slip of the keys (this tool's choice).
const (
	mostDays  = 365
	mostTimes = 20
	mostSteps = 30
	mostWays  = 20
)

// plan is a schedule that has been read and found sound.
type plan struct {
	Schedule
	today, launch, start Day
	has                  struct{ launch, start bool }
	here, maker          *workdays
	doing                int // index of the step in hand
}

func (s Schedule) ready() (*plan, unit.Faults) {
	var f unit.Faults
	p := &plan{Schedule: s}
	p.today, _ = read(&f, "today", "Today", s.Today)
	if s.Launch != "" {
		p.launch, p.has.launch = read(&f, "launch", "The launch day", s.Launch)
	}
	if s.Start != "" {
		p.start, p.has.start = read(&f, "start", "The start", s.Start)
	}
	p.here = s.Here.ready(&f, "here", "here")
	p.maker = s.Maker.ready(&f, "maker", "at the maker's")
	f.Whole("slack", "The slack", s.Slack, 0, mostDays)
	p.steps(&f)
	p.ways(&f)
	return p, f
}

func (p *plan) steps(f *unit.Faults) {
	if len(p.Steps) == 0 || len(p.Steps) > mostSteps {
		f.Say("steps", "A calendar has 1 to %d steps, not %d.", mostSteps, len(p.Steps))
	}
	seen := map[string]bool{}
	for i, s := range p.Steps {
		at := fmt.Sprintf("steps[%d]", i)
		f.Whole(at+".days", "The number of days for "+s.Name, s.Days, 0, mostDays)
		f.Whole(at+".times", "The number of rounds of "+s.Name, s.Times, 0, mostTimes)
		if s.By != Here && s.By != Maker && s.By != Every {
			f.Say(at+".by", "The days of %s are counted here, at the maker's, or every day, not %q.", s.Name, s.By)
		}
		if s.Key == "" || s.Key == KeySlack || seen[s.Key] {
			f.Say(at+".key", "Two steps cannot be told apart: the key %q is taken or empty.", s.Key)
		}
		seen[s.Key] = true
		if s.Key == p.Doing {
			p.doing = i
			f.Whole("done", "The number of days done of "+s.Name, p.Done, 0, mostDays*mostTimes)
		}
	}
	if p.Doing != "" && !seen[p.Doing] {
		f.Say("doing", "There is no step %q to be at.", p.Doing)
	}
	if p.Doing == "" && p.Done != 0 {
		f.Say("done", "%d days are done, but no step is in hand; say which.", p.Done)
	}
}

func (p *plan) ways(f *unit.Faults) {
	if len(p.Ways) > mostWays {
		f.Say("ways", "%d delivery choices are more than %d; leave some out.", len(p.Ways), mostWays)
	}
	if p.Way >= len(p.Ways) {
		f.Say("way", "There is no delivery choice number %d.", p.Way+1)
	}
	for i, w := range p.Ways {
		at := fmt.Sprintf("ways[%d]", i)
		f.Whole(at+".making", "The number of days of making by "+w.Name, w.Making, 0, mostDays)
		f.Whole(at+".carriage", "The number of days of carriage by "+w.Name, w.Carriage, 0, mostDays)
		if w.Total.IsNegative() {
			f.Say(at+".total", "The order costs %s by %s; a price is 0 or more.", w.Total, w.Name)
		}
	}
	if len(p.Ways) > 0 && !p.Unpriced {
		if _, ok := unit.MinorDigits(p.Currency); !ok || p.MinorDigits < 0 || p.MinorDigits > 4 {
			f.Say("currency", "%q is no currency code; it has three capital letters, such as EUR.", p.Currency)
		}
	}
}

// length is the days of a step in all, by one of the ways.
func (p *plan) length(i, way int) int {
	s := p.Steps[i]
	n := s.Days
	if way >= 0 {
		w := p.Ways[way]
		switch {
		case s.Key == KeyMaking && w.Making > 0:
			n = w.Making
		case s.Key == KeyCarriage && w.Carriage > 0:
			n = w.Carriage
		}
	}
	return n * max(1, s.Times)
}

// counted is who works on a step.
func (p *plan) counted(by Whose) *workdays {
	switch by {
	case Here:
		return p.here
	case Maker:
		return p.maker
	}
	return everyDay
}

var everyDay = &workdays{}
