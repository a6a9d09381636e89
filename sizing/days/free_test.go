package days

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A December by a paper calendar: 25 December 2027 is a Saturday, so that
// England keeps Christmas on Monday and Tuesday (gov.uk, substitute days).
func TestFreeDaysAreListedAsRuns(t *testing.T) {
	w := Workdays{Country: "GB", Weekend: Weekend(), Off: []DaySpan{{"2027-12-29", "2028-01-02", "away"}}, Worked: []Date{"2027-12-19"}}
	r, f := ready(w)
	require.Empty(t, f)
	assert.Equal(t, []FreeRun{
		{"2027-12-18", "2027-12-18", FreeWeekend, "weekend"},
		{"2027-12-25", "2027-12-26", FreeWeekend, "weekend"},
		{"2027-12-27", "2027-12-27", FreeHoliday, "Christmas Day"},
		{"2027-12-28", "2027-12-28", FreeHoliday, "Boxing Day"},
		{"2027-12-29", "2028-01-02", FreeOff, "away"},
		{"2028-01-03", "2028-01-03", FreeHoliday, "New Year's Day"},
	}, r.runs(day(t, "2027-12-13"), day(t, "2028-01-07")))
}

// The slow twin asks day by day.
func TestRunsHoldTheFreeDaysAndNoOthers(t *testing.T) {
	for _, country := range []string{"", "DE-BY", "JP", "US"} {
		r, f := ready(Workdays{Country: country, Weekend: []int{5, 7}, Off: UsualClosures(2027, 2028).Spans})
		require.Empty(t, f)
		from, to := day(t, "2027-01-01"), day(t, "2028-12-31")
		in := map[Day]string{}
		last := from - 1
		for _, run := range r.runs(from, to) {
			first := day(t, string(run.From))
			require.Greater(t, first, last, "in order, and apart")
			last = day(t, string(run.To))
			for d := first; d <= last; d++ {
				in[d] = run.Name
			}
		}
		for d := from; d <= to; d++ {
			require.Equal(t, r.free(d), in[d], "%s %s", country, d.Date())
		}
	}
}

func TestTheRulerHoldsWholeWeeksAndAllThatIsDrawn(t *testing.T) {
	s := order()
	c := reckon(t, s)
	assert.Equal(t, [2]Date{"2027-03-01", "2027-05-16"}, [2]Date{c.Ruler.From, c.Ruler.To})
	s.Today = "2027-04-14" // too late: the latest days lie before today
	c = reckon(t, s)
	assert.Equal(t, [2]Date{"2027-03-08", "2027-06-13"}, [2]Date{c.Ruler.From, c.Ruler.To})
	s.Doing = KeyCarriage // what is over is not drawn
	assert.Equal(t, Date("2027-04-12"), reckon(t, s).Ruler.From)
	s.Launch, s.Doing = "2099-06-01", ""
	c = reckon(t, s)
	assert.Equal(t, Date("2030-04-11"), c.Ruler.To, "no more than three years")
	assert.Less(t, len(c.Ruler.Here), 400)
}

func TestAClosureThatIsNotPutInIsNamed(t *testing.T) {
	s := order()
	s.Today, s.Launch, s.LunarYear = "2027-01-04", "2027-12-10", true
	usual := UsualClosures(2027, 2027).Spans
	assert.Equal(t, usual, reckon(t, s).Missing)
	s.Maker.Off = []DaySpan{{"2027-02-03", "2027-02-12", "as the maker says"}}
	assert.Equal(t, usual[1:], reckon(t, s).Missing)
	s.LunarYear = false
	assert.Empty(t, reckon(t, s).Missing)
	s.LunarYear, s.Today, s.Launch = true, "2027-03-01", "2027-09-30"
	assert.Empty(t, reckon(t, s).Missing, "both lie outside")
}

func TestDaysAreSaidWithoutRepeating(t *testing.T) {
	for _, c := range [][3]string{
		{"2027-03-01", "2027-03-01", "Mon 1 Mar 2027"},
		{"2027-03-01", "2027-03-05", "Mon 1 to Fri 5 Mar 2027"},
		{"2027-03-30", "2027-04-02", "Tue 30 Mar to Fri 2 Apr 2027"},
		{"2027-12-30", "2028-01-04", "Thu 30 Dec 2027 to Tue 4 Jan 2028"},
	} {
		assert.Equal(t, c[2], span{day(t, c[0]), day(t, c[1])}.says())
	}
	c := reckon(t, order())
	assert.Equal(t, "Mon 1 to Fri 5 Mar 2027", c.Rows[0].Falls)
	assert.Equal(t, "Thu 11 to Wed 17 Mar 2027", c.Rows[0].Latest)
	assert.Equal(t, "Fri 7 to Thu 13 May 2027", c.Slack.Latest)
}

// Without prices the days of each way count, and nothing is said of money.
func TestWaysWithoutPricesSayNothingOfMoney(t *testing.T) {
	s := order()
	s.Unpriced, s.Way = true, 0
	s.Ways = []DeliveryWay{{Name: "usual"}, {Name: "express", Making: 12}, {Name: "slow", Making: 60}}
	c := reckon(t, s)
	assert.Equal(t, 1, c.Best, "the first that is ready")
	assert.Empty(t, c.BestSays)
	assert.Equal(t, "ready Thu 15 Apr 2027, makes the day with all its slack", c.Ways[1].Says)
	s.Today = "2027-05-03"
	assert.Equal(t, "No delivery choice makes Fri 14 May 2027.", reckon(t, s).BestSays)
}
