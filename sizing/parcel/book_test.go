package parcel

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/days"
)

var gold = []StockName{{"d1", "v1", "Lighthouse, gold"}}

func move(day days.Date, kind MoveKind, grade Grade, n int) StockMove {
	return StockMove{Day: day, Design: "d1", Version: "v1", Kind: kind, Grade: grade, Count: n}
}

// came is a parcel of 54 firsts and 6 seconds on 3 March, ordered on 25 January.
func came() []Parcel { return []Parcel{skerry(0, 54, flawed(6, Second, "dust"))} }

func kept(t *testing.T, now days.Date, lead Lead, moves ...StockMove) *Stock {
	t.Helper()
	got, f := Keep(StockBook{Moves: moves, Weeks: UsualWeeks, LeadDays: UsualLeadDays}, came(), gold, lead, now)
	require.Empty(t, f)
	return got
}

func TestABookSaysWhatIsLeft(t *testing.T) {
	got := kept(t, "2027-03-30", Lead{Days: 45},
		move("2027-03-04", Replacements, First, 3), move("2027-03-05", Gifts, Second, 2), move("2027-03-10", Wholesale, First, 5),
		move("2027-03-13", AtFair, First, 4), move("2027-03-20", Sold, First, 3), move("2027-03-21", Sold, Second, 1))
	r := got.Rows[0]
	assert.Equal(t, StockLine{First, 54, 3, 0, 5, 4, 3, 39}, r.Firsts)
	assert.Equal(t, StockLine{Second, 6, 0, 2, 0, 0, 1, 3}, r.Seconds)
	assert.Equal(t, []int{12, 28}, []int{r.Pace.Sold, r.Pace.Days}, "since the parcel came, as that is shorter than eight weeks")
	assert.InDelta(t, 3, r.Pace.PerWeek, 1e-12)
	// 39 at 3 a week last 91 days: to 29 June; 45 days before is 15 May.
	assert.Equal(t, []days.Date{"2027-06-29", "2027-05-15"}, []days.Date{r.Reorder.Out, r.Reorder.By})
	assert.Less(t, r.Reorder.Early, r.Reorder.By)
	assert.Greater(t, r.Reorder.Late, r.Reorder.By)
	assert.Regexp(t, `^At the fast end of the pace order by \w+ \d+ \w+ 2027, at the slow end by .* 2027\.$`, r.Reorder.Ends)
	assert.Equal(t, "39 firsts left; at 3 a week, order again by Sat 15 May 2027.", got.Says)
	assert.True(t, r.Reorder.Die)
	assert.Equal(t, 2, r.Reorder.DieAge, "25 January to 30 March is two whole months")
}

func TestAMoveThatWouldLeaveFewerThanNoneIsRefused(t *testing.T) {
	_, f := Keep(StockBook{Weeks: 8, Moves: []StockMove{move("2027-03-10", Sold, First, 50), move("2027-03-12", AtFair, First, 5)}}, came(), gold, Lead{}, "2027-03-30")
	require.Len(t, f, 1)
	assert.Equal(t, "moves[1].count", f[0].Field)
	assert.Equal(t, "On Fri 12 Mar 2027 4 firsts of Lighthouse, gold are left, so 5 cannot be sold at the fair.", f[0].What)
	_, f = Keep(StockBook{Weeks: 8, Moves: []StockMove{move("2027-03-01", Gifts, Second, 1)}}, came(), gold, Lead{}, "2027-03-30")
	require.Len(t, f, 1, "what has not come cannot go")
	assert.Contains(t, f[0].What, "no seconds of Lighthouse, gold are left")
	_, f = Keep(StockBook{Weeks: 8, Moves: []StockMove{move("2027-03-03", Sold, First, 54)}}, came(), gold, Lead{}, "2027-03-30")
	assert.Empty(t, f, "what comes on a day can go on it")
}

// However moves fall, either the book is refused or every sum adds up.
func TestABookNeverHoldsFewerThanNone(t *testing.T) {
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 2))
	kinds := append([]MoveKind{Had}, leaving...)
	for range 300 {
		var moves []StockMove
		for range r.IntN(12) {
			moves = append(moves, move(days.On(2027, 2, 20+r.IntN(30)).Date(), kinds[r.IntN(len(kinds))], []Grade{First, Second}[r.IntN(2)], 1+r.IntN(20)))
		}
		got, f := Keep(StockBook{Moves: moves, Weeks: 8}, came(), gold, Lead{}, "2027-04-30")
		if len(f) > 0 {
			continue
		}
		for _, l := range []StockLine{got.Rows[0].Firsts, got.Rows[0].Seconds} {
			assert.Equal(t, l.Came, l.Left+l.Replacements+l.Gifts+l.Wholesale+l.Fair+l.Sold)
			assert.GreaterOrEqual(t, l.Left, 0)
		}
	}
}

func TestWithoutSalesThereIsNoPace(t *testing.T) {
	got := kept(t, "2027-03-30", Lead{}, move("2027-03-05", Gifts, First, 4))
	assert.Equal(t, "50 firsts left; none went to buyers lately, so there is no pace to reckon with.", got.Says)
	assert.Nil(t, got.Rows[0].Reorder)
	got = kept(t, "2027-06-30", Lead{}, move("2027-03-05", Sold, First, 4))
	assert.Nil(t, got.Rows[0].Reorder, "sales before the weeks looked at are no pace")
	got = kept(t, "2027-04-20", Lead{}, move("2027-04-05", Sold, First, 1))
	assert.Contains(t, got.Says, "more than three years", "53 at one in seven weeks")
}

func TestTheFirstDaysAreNoPace(t *testing.T) {
	sold := move("2027-03-04", Sold, First, 12)
	got := kept(t, "2027-03-15", Lead{Days: 45}, sold)
	assert.Equal(t, "42 firsts left; it is too early for a pace, which is reckoned from 14 days on.", got.Says)
	assert.NotNil(t, kept(t, "2027-03-16", Lead{Days: 45}, sold).Rows[0].Reorder)
}

func TestOrderNowWhenTheDayIsPast(t *testing.T) {
	got := kept(t, "2027-03-30", Lead{Days: 45}, move("2027-03-20", Sold, First, 40))
	assert.True(t, got.Rows[0].Reorder.Now)
	assert.Contains(t, got.Says, "order again now")
}

// By the order's calendar: making 20 days at the maker's, carriage 6, carding 3
// and listing 1 here, 5 days of slack, no weekends: 35 working days, counted
// back by hand from Tuesday 29 June 2027, whose eve is the last of them.
func TestACalendarCountsTheDaysOfANewOrder(t *testing.T) {
	week := days.Workdays{Weekend: days.Weekend()}
	s := days.Schedule{Today: "2027-03-30", Here: week, Maker: week, Steps: days.Usual(), Slack: days.UsualSlack, Way: -1}
	moves := []StockMove{move("2027-03-04", Replacements, First, 3), move("2027-03-10", Sold, First, 12)}
	got := kept(t, "2027-03-30", Lead{Days: 45, Schedule: &s}, moves...)
	assert.Equal(t, days.Date("2027-06-29"), got.Rows[0].Reorder.Out)
	assert.Equal(t, days.Date("2027-05-11"), got.Rows[0].Reorder.By)
	assert.Empty(t, got.Notes)
	s.Steps = []days.OrderStep{{Key: days.KeyProof, Name: "Proof", Days: 1, By: days.Maker}}
	got = kept(t, "2027-03-30", Lead{Days: 45, Schedule: &s}, moves...)
	assert.Len(t, got.Notes, 1, "a calendar that cannot be used is told, once")
	assert.Equal(t, days.Date("2027-05-15"), got.Rows[0].Reorder.By)
}

func TestMakersOverParcels(t *testing.T) {
	late := skerry(0, 50, flawed(8, Second, "dust"))
	early := skerry(0, 60)
	early.Arrived = "2027-02-27"
	other := skerry(0, 30)
	other.Maker, other.Due = "Harbour stamping", ""
	uncounted := skerry(0, 0)
	all := Makers([]Parcel{late, other, early, uncounted})
	require.Len(t, all, 2)
	m := all[0]
	assert.Equal(t, []any{"Skerry die works", 2, 118, 110, 2}, []any{m.Maker, m.Parcels, m.Graded, m.Firsts, m.Short})
	assert.Equal(t, []int{2, -2}, m.Late)
	lo, hi := ShareBetween(110, 118, 95)
	assert.InDelta(t, 100*lo, m.Lo, 1e-9)
	assert.InDelta(t, 100*hi, m.Hi, 1e-9)
	assert.Equal(t, "2 parcels; 93 percent firsts of 118 looked at (87 to 97); late 1 of 2 times, by 2 days at most; 2 short in all.", m.Says)
	assert.Equal(t, "1 parcel; 100 percent firsts of 30 looked at (88 to 100); 30 short in all.", all[1].Says)
}

func TestABookThatCannotBeIsRefusedInWords(t *testing.T) {
	bad := move("soon", "lost", Reject, 0)
	_, f := Keep(StockBook{Moves: []StockMove{bad}}, came(), gold, Lead{}, "2027-03-30")
	fields := []string{}
	for _, one := range f {
		fields = append(fields, one.Field)
	}
	assert.Equal(t, []string{"weeks", "moves[0].day", "moves[0].count", "moves[0].kind", "moves[0].grade"}, fields)
	_, f = Keep(StockBook{Weeks: 8, Moves: []StockMove{move("2027-04-01", Sold, First, 1)}}, came(), gold, Lead{}, "2027-03-30")
	require.Len(t, f, 1)
	assert.Equal(t, "Thu 1 Apr 2027 has not come yet; enter a move on its day or later.", f[0].What)
}
