package days

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// table reads a published table without its header.
func table(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "reference", name))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	return rows[1:]
}

func day(t *testing.T, text string) Day {
	t.Helper()
	d, err := Read(Date(text))
	require.NoError(t, err)
	return d
}

// ISO 8601 weeks by Python's isocalendar and GNU date, which agree.
func TestWeeksAreThoseOfISO8601(t *testing.T) {
	for _, row := range table(t, "iso_week_dates.csv") {
		d := day(t, row[0])
		year, week := d.Week()
		assert.Equal(t, row[1:4], []string{strconv.Itoa(year), strconv.Itoa(week), strconv.Itoa(d.Weekday())}, row[0])
	}
}

// Lead times by numpy's busday_offset, rolling forward, or backward for
// negative ones.
func TestWorkingDaysAreCountedAsNumpyDoes(t *testing.T) {
	for _, row := range table(t, "business_day_offsets.csv") {
		w := Workdays{Weekend: Weekend()}
		for h := range strings.FieldsSeq(row[2]) {
			w.Off = append(w.Off, DaySpan{From: Date(h)})
		}
		n, err := strconv.Atoi(row[1])
		require.NoError(t, err)
		got, f := w.Add(Date(row[0]), n)
		require.Empty(t, f)
		assert.Equal(t, row[3], string(got), "%s and %d days", row[0], n)
		assert.Equal(t, row[4], strconv.Itoa(int(day(t, string(got))-day(t, row[0]))))
	}
}

// The table of new moons at UTC+8 under the rule GB/T 33661-2017, where
// calendar data of ICU has two days wrong (2027 and 2030).
func TestTheLunarNewYearIsThatOfTheTable(t *testing.T) {
	kept, err := os.ReadFile(filepath.Join("..", "..", "testdata", "reference", "chinese_new_year.csv"))
	require.NoError(t, err)
	require.Equal(t, string(kept), newYears, "the copy beside the code is the table")
	weekdays := []string{"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"}
	for _, row := range table(t, "chinese_new_year.csv") {
		y, err := strconv.Atoi(row[0])
		require.NoError(t, err)
		d, ok := LunarNewYear(y)
		require.True(t, ok)
		assert.Equal(t, row[1], string(d.Date()))
		assert.Equal(t, row[2], weekdays[d.Weekday()-1])
	}
	_, ok := LunarNewYear(2023)
	assert.False(t, ok)
	_, ok = LunarNewYear(2035)
	assert.False(t, ok)
}

func TestClosuresOutsideTheTableAreUnknown(t *testing.T) {
	c := UsualClosures(2034, 2036)
	assert.Equal(t, []DaySpan{
		{"2034-02-12", "2034-03-05", "lunar new year, Sun 19 Feb 2034"},
		{"2034-10-01", "2034-10-07", "week from 1 October"},
		{"2035-10-01", "2035-10-07", "week from 1 October"},
		{"2036-10-01", "2036-10-07", "week from 1 October"},
	}, c.Spans)
	require.Len(t, c.Unknown, 2)
	assert.Contains(t, c.Unknown[0], "2035 is not known here: ask the maker")
	assert.NotNil(t, UsualClosures(2030, 2029).Spans)
}

// Days are the same wherever the machine stands, also where a day begins at
// one in the morning because the clock was put forward at midnight.
func TestDaysDoNotHangOnTheZone(t *testing.T) {
	was := time.Local
	defer func() { time.Local = was }()
	for _, zone := range []*time.Location{time.FixedZone("east", 14*3600), time.FixedZone("west", -12*3600), time.UTC} {
		time.Local = zone
		for d := day(t, "2026-01-01"); d < day(t, "2029-01-01"); d++ {
			again := day(t, string(d.Date()))
			require.Equal(t, d, again)
		}
		all, ok := Holidays("GB", 2027)
		require.True(t, ok)
		assert.Equal(t, Date("2027-01-01"), all[0].Date)
		assert.Equal(t, Date("2027-12-28"), all[len(all)-1].Date)
	}
}

func TestWhatIsNoDayIsRefusedInWords(t *testing.T) {
	for text, want := range map[Date]string{
		"":           "No day is given",
		"2027-02-29": "is not a day of the calendar",
		"6.2.2027":   "is not a day of the calendar",
		"2027-2-6":   "is not a day of the calendar",
		"1899-01-01": "out of reach",
		"2100-01-01": "out of reach",
	} {
		_, err := Read(text)
		require.Error(t, err)
		assert.Contains(t, err.Error(), want, text)
		assert.Contains(t, err.Error(), "Give ")
	}
	assert.Equal(t, "Sat 6 Feb 2027", day(t, "2027-02-06").Says())
}

// add and count against counting on the fingers, for odd calendars.
func TestAddAndCountAgreeWithCountingByHand(t *testing.T) {
	w := Workdays{Country: "DE-BY", Weekend: []int{5, 7}, Off: []DaySpan{{"2027-03-01", "2027-03-20", ""}}, Worked: []Date{"2027-03-05"}}
	r, f := ready(w)
	require.Empty(t, f)
	for start := day(t, "2026-12-01"); start < day(t, "2027-06-01"); start += 5 {
		for n := 0; n < 40; n += 3 {
			slow := start
			for left := n; ; slow++ {
				if r.free(slow) != "" {
					continue
				}
				if left == 0 {
					break
				}
				left--
			}
			fast, ok := r.add(start, n)
			require.True(t, ok)
			require.Equal(t, slow, fast)
			first, _ := r.roll(start, 1)
			require.Equal(t, n, r.count(first, fast))
			require.Equal(t, -n, r.count(fast, first))
			back, _ := r.add(fast, -n)
			require.Equal(t, first, back)
		}
	}
}

func TestADayWorkedAnywayIsWorked(t *testing.T) {
	got, f := Workdays{Weekend: Weekend(), Worked: []Date{"2027-02-06"}}.Add("2027-02-05", 1)
	assert.Empty(t, f)
	assert.Equal(t, Date("2027-02-06"), got)
}
