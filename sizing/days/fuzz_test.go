package days

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzReckon looks for schedules that slip past the check: whatever is asked,
// there is a sentence for a field, or a calendar whose steps follow each other.
func FuzzReckon(f *testing.F) {
	f.Add("2027-03-01", "2027-05-14", "", "GB", 6, 5, 20, 2, 5, "making", 3)
	f.Add("2099-12-31", "", "2099-12-31", "", 1, 365, 365, 20, 365, "", 0)
	f.Add("x", "0000-00-00", "2027-02-30", "??", 9, -5, 1<<40, -1, -1, "gilding", -9)
	f.Fuzz(func(t *testing.T, today, launch, start, country string, free, drawing, making, times, slack int, doing string, done int) {
		s := order()
		s.Today, s.Launch, s.Start = Date(today), Date(launch), Date(start)
		s.Here.Country, s.Maker.Weekend = country, []int{free}
		s.Steps[0].Days, s.Steps[2].Days, s.Steps[2].Times = drawing, making, times
		s.Slack, s.Doing, s.Done, s.LunarYear = slack, doing, done, true
		c, faults := Reckon(s)
		if len(faults) > 0 {
			require.Nil(t, c)
			for _, x := range faults {
				require.NotEmpty(t, x.Field)
				require.NotEmpty(t, x.What)
			}
			return
		}
		before := Date("")
		for _, r := range c.Rows {
			if r.First == "" {
				continue
			}
			require.Greater(t, r.First, before)
			require.GreaterOrEqual(t, r.Last, r.First)
			before = r.Last
		}
		require.Greater(t, c.Ready, before)
		require.NotEmpty(t, c.Position)
	})
}
