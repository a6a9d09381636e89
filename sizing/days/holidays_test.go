package days

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/unit"
)

func ready(w Workdays) (*workdays, unit.Faults) {
	var f unit.Faults
	return w.ready(&f, "here", "here"), f
}

// Public holidays that fall on Monday to Friday, 2026 to 2028, of 30 countries
// and parts of countries, by npm's date-holidays 3.37.0, which shares nothing
// with the library used here. differ holds where the two part, and why.
func TestHolidaysAreThoseOfAnotherLibrary(t *testing.T) {
	differ := map[string]string{
		"RO 2026": "+2026-01-02", // not in the other, though the labour code has 1 and 2 January
		"US 2028": "+2028-11-10", // a Saturday's holiday is kept on Friday (5 U.S.C. 6103)
	}
	for _, row := range table(t, "public_holidays.csv") {
		year, err := strconv.Atoi(row[1])
		require.NoError(t, err)
		all, ok := Holidays(row[0], year)
		require.True(t, ok, row[0])
		var got, off []string
		for _, h := range all {
			if day(t, string(h.Date)).Weekday() < 6 {
				got = append(got, string(h.Date))
			}
		}
		theirs := strings.Fields(row[2])
		for _, d := range got {
			if !strings.Contains(row[2], d) {
				off = append(off, "+"+d)
			}
		}
		for _, d := range theirs {
			if !strings.Contains(strings.Join(got, " "), d) {
				off = append(off, "-"+d)
			}
		}
		assert.Equal(t, differ[row[0]+" "+row[1]], strings.Join(off, " "), "%s %s", row[0], row[1])
	}
}

// Spot checks by hand: the Easter of 2027 is 28 March (Butcher's algorithm, as
// in Meeus, Astronomical Algorithms, ch. 8).
func TestHolidaysByHand(t *testing.T) {
	r, f := ready(Workdays{Country: "GB", Weekend: Weekend()})
	require.Empty(t, f)
	for date, want := range map[string]string{
		"2027-03-26": "Good Friday",
		"2027-03-29": "Easter Monday",
		"2027-12-27": "Christmas Day", // the 25th is a Saturday
		"2027-12-28": "Boxing Day",
		"2027-08-30": "Summer Bank Holiday",
		"2027-03-27": weekendName,
		"2027-03-30": "",
	} {
		assert.Equal(t, want, r.free(day(t, date)), date)
	}
	// A new year's day on a Saturday is kept in the old year.
	us, ok := Holidays("US", 2027)
	require.True(t, ok)
	assert.Equal(t, Date("2027-12-31"), us[len(us)-1].Date)
}

func TestCountriesAreListedOnceByName(t *testing.T) {
	all := Countries()
	assert.Len(t, all, len(countries))
	seen := map[string]bool{}
	for i, c := range all {
		assert.False(t, seen[c.Code], c.Code)
		seen[c.Code] = true
		holidays, ok := Holidays(c.Code, 2027)
		require.True(t, ok)
		assert.GreaterOrEqual(t, len(holidays), 7, c.Code)
		if i > 0 {
			assert.Less(t, all[i-1].Name, c.Name)
		}
	}
	none, ok := Holidays("CN", 2027)
	assert.False(t, ok)
	assert.NotNil(t, none)
}
