package days

import (
	"bytes"
	"strings"
	"testing"
	"time"

	other "github.com/arran4/golang-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The file is read back by a library other than the one that wrote it.
func TestTheCalendarFileIsReadBack(t *testing.T) {
	s := order()
	s.Steps[0].Name = "Drawing; with the harbour, the buoy \\ and the lighthouse of Skerry Light in every colour, äöü 灯台 灯台 灯台"
	file, f := ICS("Skerry Light\r\nEND:VCALENDAR", s)
	require.Empty(t, f)
	cal, err := other.ParseCalendar(bytes.NewReader(file))
	require.NoError(t, err)
	events := cal.Events()
	c := reckon(t, s)
	require.Len(t, events, len(s.Steps)+2)
	seen := map[string]bool{}
	for i, e := range events[:len(s.Steps)] {
		first, err := e.GetAllDayStartAt()
		require.NoError(t, err)
		after, err := e.GetAllDayEndAt()
		require.NoError(t, err)
		assert.Equal(t, c.Rows[i].LatestFirst, Date(first.Format(isoLayout)))
		assert.Equal(t, c.Rows[i].LatestLast, Date(after.AddDate(0, 0, -1).Format(isoLayout)))
		assert.False(t, seen[e.Id()])
		seen[e.Id()] = true
		stamp, err := e.GetDtStampTime()
		require.NoError(t, err)
		assert.Equal(t, time.Date(2027, 3, 1, 0, 0, 0, 0, time.UTC), stamp.UTC())
	}
	title := events[0].GetProperty(other.ComponentPropertySummary).Value
	assert.Equal(t, "Skerry Light  END:VCALENDAR: "+s.Steps[0].Name, other.FromText(title))
	last := events[len(events)-1]
	day, err := last.GetAllDayStartAt()
	require.NoError(t, err)
	assert.Equal(t, s.Launch, Date(day.Format(isoLayout)))
}

// RFC 5545 section 3.1: lines end in CR LF and have at most 75 octets, and none
// is broken within a letter.
func TestLinesAreFolded(t *testing.T) {
	file, f := ICS(strings.Repeat("灯台 Skerry ", 40), order())
	require.Empty(t, f)
	for line := range strings.SplitSeq(strings.TrimSuffix(string(file), "\r\n"), "\r\n") {
		assert.LessOrEqual(t, len(line), 75)
		assert.NotContains(t, line, "\n")
		assert.Equal(t, line, strings.ToValidUTF8(line, "?"))
	}
	again, _ := ICS(strings.Repeat("灯台 Skerry ", 40), order())
	assert.Equal(t, file, again, "the same order gives the same file")
}

func TestWithoutALaunchTheFileHasTheDaysAhead(t *testing.T) {
	s := order()
	s.Launch, s.Doing, s.Done = "", KeyCarding, 2
	file, f := ICS("", s)
	require.Empty(t, f)
	assert.Equal(t, 2, strings.Count(string(file), "BEGIN:VEVENT"))
	assert.Contains(t, string(file), "DTSTART;VALUE=DATE:20270301\r\n")
	assert.Contains(t, string(file), "DTEND;VALUE=DATE:20270302\r\n")
	s.Doing, s.Done = KeyListing, 1
	_, f = ICS("", s)
	require.Len(t, f, 1)
	assert.Contains(t, f[0].What, "nothing to put into a calendar")
}
