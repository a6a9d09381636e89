package days

import (
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// order is a calendar without holidays: Monday to Friday on both ends.
func order() Schedule {
	w := Workdays{Weekend: Weekend()}
	return Schedule{Today: "2027-03-01", Launch: "2027-05-14", Here: w, Maker: w, Steps: Usual(), Slack: 5, Way: -1}
}

func reckon(t *testing.T, s Schedule) *Calendar {
	t.Helper()
	c, f := Reckon(s)
	require.Empty(t, f)
	return c
}

// Counted back with a paper calendar; 1 March 2027 is a Monday.
func TestStepsAreCountedBackFromTheLaunch(t *testing.T) {
	c := reckon(t, order())
	var latest, ahead [][2]Date
	for _, r := range c.Rows {
		latest = append(latest, [2]Date{r.LatestFirst, r.LatestLast})
		ahead = append(ahead, [2]Date{r.First, r.Last})
	}
	assert.Equal(t, [2]Date{"2027-05-07", "2027-05-13"}, [2]Date{c.Slack.LatestFirst, c.Slack.LatestLast})
	assert.Equal(t, [][2]Date{
		{"2027-03-11", "2027-03-17"}, // drawing, 5
		{"2027-03-18", "2027-03-25"}, // two proof rounds of 3
		{"2027-03-26", "2027-04-22"}, // making, 20
		{"2027-04-23", "2027-04-30"}, // carriage, 6
		{"2027-05-03", "2027-05-05"}, // carding, 3
		{"2027-05-06", "2027-05-06"}, // listing
	}, latest)
	assert.Equal(t, [][2]Date{
		{"2027-03-01", "2027-03-05"},
		{"2027-03-08", "2027-03-15"},
		{"2027-03-16", "2027-04-12"},
		{"2027-04-13", "2027-04-20"},
		{"2027-04-21", "2027-04-23"},
		{"2027-04-26", "2027-04-26"},
	}, ahead)
	assert.Equal(t, Date("2027-04-27"), c.Ready)
	assert.True(t, c.Makes)
	assert.True(t, c.Keeps)
	assert.Equal(t, "Drawing can wait 8 working days, until Thu 11 Mar 2027 at the latest.", c.Position)
	assert.Equal(t, "8 working days to spare: over by Thu 6 May 2027 at the latest", c.Rows[5].Says)
}

func TestTodayStandsSomewhere(t *testing.T) {
	for _, c := range []struct {
		today Date
		doing string
		done  int
		want  string
	}{
		{"2027-03-11", "", 0, "Drawing must go on now to make Fri 14 May 2027."},
		{"2027-03-12", "", 0, "Fri 14 May 2027 is made, but of the slack of 5 working days only 4 are left."},
		{"2027-03-18", "", 0, "Fri 14 May 2027 is made, but none of the slack is left."},
		{"2027-03-19", "", 0, "1 working day too late for Fri 14 May 2027: all is ready on Sat 15 May 2027."},
		{"2027-03-16", KeyDrawing, 3, "Drawing must go on now to make Fri 14 May 2027."},
		{"2027-03-15", KeyDrawing, 3, "Drawing can wait 1 working day, until Tue 16 Mar 2027 at the latest."},
		{"2027-04-01", KeyMaking, 5, "Making can wait 1 working day, until Fri 2 Apr 2027 at the latest."},
		{"2027-05-13", KeyListing, 1, "Fri 14 May 2027 is made, but of the slack of 5 working days only 1 is left."},
		{"2027-05-20", "", 0, "The launch day, Fri 14 May 2027, is not to be made any more: all is ready on Fri 16 Jul 2027."},
	} {
		s := order()
		s.Today, s.Doing, s.Done = c.today, c.doing, c.done
		assert.Equal(t, c.want, reckon(t, s).Position, "%s %s", c.today, c.doing)
	}
}

// A start a day after the latest one eats into the slack; at the latest one it
// does not. Random calendars, with holidays, closures and slack.
func TestTheLatestDayIsTheLatest(t *testing.T) {
	const seed = 7
	r := rand.New(rand.NewPCG(seed, seed))
	countries := Countries()
	for range 120 {
		s := order()
		s.Launch = (On(2026, 6, 1) + Day(r.IntN(1500))).Date()
		s.Here.Country = countries[r.IntN(len(countries))].Code
		s.Maker.Weekend = []int{7}
		s.Maker.Off = UsualClosures(2025, 2031).Spans
		s.Slack = r.IntN(8)
		for i := range s.Steps {
			s.Steps[i].Days = r.IntN(15)
		}
		s.Steps[0].Days++
		s.Steps[r.IntN(len(s.Steps))].By = Every
		s.Today = "2025-01-01"
		latest := reckon(t, s).Rows[0].LatestFirst
		s.Today = latest
		on := reckon(t, s)
		require.True(t, on.Keeps, "seed %d: %+v", seed, s)
		for i, row := range on.Rows {
			require.GreaterOrEqual(t, row.Spare, 0, "seed %d, step %d", seed, i)
		}
		s.Today = (day(t, string(latest)) + 1).Date()
		after := reckon(t, s)
		require.False(t, after.Keeps, "seed %d: %+v", seed, s)
		require.GreaterOrEqual(t, after.Ready, on.Ready)
	}
}

func TestAClosureIsWaitedFor(t *testing.T) {
	s := order()
	s.Today, s.Launch, s.LunarYear = "2027-01-11", "", true
	s.Maker.Off = UsualClosures(2027, 2027).Spans
	c := reckon(t, s)
	assert.Equal(t, []string{"lunar new year, Sat 6 Feb 2027"}, c.Rows[2].Over)
	assert.Equal(t, Date("2027-03-15"), c.Rows[2].Last, "20 working days from 26 January, 30 January to 20 February left out")
	assert.Contains(t, c.Position, "All is ready on ")
	assert.Empty(t, c.Notes)
	s.Today = "2035-01-08"
	require.Len(t, reckon(t, s).Notes, 1)
	assert.Contains(t, reckon(t, s).Notes[0], "2035 is not known here")
	s.Maker.Off = []DaySpan{{"2035-02-01", "2035-02-20", "as the maker says"}}
	assert.Empty(t, reckon(t, s).Notes)
}

func TestTheCheapestWayThatMakesTheDayIsFound(t *testing.T) {
	s := order()
	s.Currency, s.MinorDigits, s.Way = "EUR", 2, 0
	s.Ways = []DeliveryWay{
		{"express", 12, 3, decimal.RequireFromString("412.50")},
		{"usual", 0, 0, decimal.RequireFromString("368.00")},
		{"slow", 32, 12, decimal.RequireFromString("331.20")},
	}
	c := reckon(t, s)
	assert.Equal(t, 1, c.Best)
	assert.Equal(t, "usual still makes Fri 14 May 2027 and saves EUR\u00a044.50 against express.", c.BestSays)
	assert.Equal(t, []bool{true, true, false}, []bool{c.Ways[0].Makes, c.Ways[1].Makes, c.Ways[2].Makes})
	assert.Equal(t, "ready Fri 21 May 2027, misses the day, EUR\u00a081.30 less than express", c.Ways[2].Says)
	assert.Equal(t, "-44.5", decimal.RequireFromString("0").Sub(c.Ways[1].Saves).String())
	s.Today = "2027-04-30"
	c = reckon(t, s)
	assert.Equal(t, -1, c.Best)
	assert.Equal(t, "No delivery choice makes Fri 14 May 2027.", c.BestSays)
}

func TestWhatCanBePromised(t *testing.T) {
	s := order()
	s.Launch = ""
	p, f := Promised(s, PresaleDays{Closes: "2027-03-28", Payout: 14, Posting: 3, Carriage: 7})
	require.Empty(t, f)
	// Paid out Sunday 11 April; making from the 12th to 7 May, carriage to the
	// 17th, carding to the 20th; slack of 5 and 3 days of posting to 1 June.
	assert.Equal(t, PromisedDays{
		Closes: "2027-03-28", Paid: "2027-04-11", Ready: "2027-05-21", Posted: "2027-06-01", Date: "2027-06-08",
		Says: "Promise posting by Tue 1 Jun 2027: paid out Sun 11 Apr 2027, ready Fri 21 May 2027 at the earliest, 5 working days kept free.",
		Rows: p.Rows,
	}, *p)
	require.Len(t, p.Rows, 3)
	assert.Equal(t, Date("2027-04-12"), p.Rows[0].First)
	assert.Equal(t, Date("2027-05-07"), p.Rows[0].Last)
	s.Steps = s.Steps[:2]
	_, f = Promised(s, PresaleDays{Closes: "", Payout: -1})
	require.Len(t, f, 3)
	assert.Equal(t, "presale.closes", f[0].Field)
	assert.Equal(t, "The number of days until the money is paid out is -1; it cannot be below 0.", f[1].What)
}

func TestBadSchedulesAreRefusedFieldByField(t *testing.T) {
	s := order()
	s.Today, s.Start = "yesterday", "2027-02-30"
	s.Slack, s.Doing, s.Way = -1, "gilding", 3
	s.Here = Workdays{Country: "XX", Weekend: []int{1, 2, 3, 4, 5, 6, 7}, Off: []DaySpan{{"2027-03-05", "2027-03-01", ""}}}
	s.Maker = Workdays{Weekend: []int{0}, Worked: []Date{"never"}, Off: []DaySpan{{"2027-01-01", "2029-01-01", ""}}}
	s.Steps[1].Days, s.Steps[2].By, s.Steps[3].Key = 4000, "moon", KeyMaking
	s.Ways = []DeliveryWay{{"slow", -1, 0, decimal.RequireFromString("-4")}}
	c, f := Reckon(s)
	assert.Nil(t, c)
	fields := map[string]string{}
	for _, x := range f {
		fields[x.Field] = x.What
	}
	for _, want := range []string{
		"today", "start", "slack", "doing", "way", "here.country", "here.weekend", "here.off[0].to", "maker.weekend[0]", "maker.worked[0]",
		"maker.off[0].to", "steps[1].days", "steps[2].by", "steps[3].key", "ways[0].making", "ways[0].total", "currency",
	} {
		assert.NotEmpty(t, fields[want], want)
	}
	assert.Len(t, f, 17)
	assert.Equal(t, "Days off here end on Mon 1 Mar 2027, before they begin on Fri 5 Mar 2027; swap the two.", fields["here.off[0].to"])
	_, f = ICS("", s)
	assert.Len(t, f, 17)
}

// Closures without end leave no day: a sentence, not an endless search.
func TestACalendarWithoutWorkingDaysIsRefused(t *testing.T) {
	s := order()
	for y := 2027; y < 2031; y++ {
		s.Here.Off = append(s.Here.Off, DaySpan{On(y, 1, 1).Date(), On(y, 12, 31).Date(), ""})
	}
	_, f := Reckon(s)
	require.Len(t, f, 1)
	assert.Contains(t, f[0].What, "not enough working days")
}
