package deduce

import (
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/sizing/run"
)

// FuzzParse holds what must be true of any text at all that is pasted as quotes: no
// line is lost, and what is read is something that could be ordered.
func FuzzParse(f *testing.F) {
	f.Add("150 at 30 mm with 3 colours: 412.50\n300 at 1 1/4\" with 2 posts, hard: £1,020")
	f.Add("100 pins of 25,4mm, without die, delivered: 2,10 each\r\n\r\n50: x")
	f.Add("1' 000 at 3 cm (reorder) : 1.000,00")
	f.Add("9999999999999999999 at 1/0 in: 1e999999999")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1<<12 {
			return
		}
		all, mistakes := Parse(text, "GBP")
		for _, q := range all {
			require.Positive(t, q.Quantity, "%q", q.Text)
			require.Positive(t, float64(q.Size), "%q", q.Text)
			require.False(t, q.Total.IsNegative(), "%q", q.Text)
			require.Less(t, q.Total.NumDigits(), 100, "%q", q.Text)
		}
		for _, m := range mistakes {
			require.Positive(t, m.Line)
			require.NotEmpty(t, m.What)
		}
		again, same := Parse(text, "GBP")
		require.Equal(t, all, again)
		require.Equal(t, mistakes, same)
	})
}

// FuzzFrom goes all the way to a price list.
func FuzzFrom(f *testing.F) {
	f.Add("150 at 30 mm with 3 colours: 412.50\n300 at 30 mm with 3 colours: 720\n150 at 40 mm with 5 colours: 512.50")
	f.Add("100 at 25 mm: 210\n100 at 25 mm: 211\n100 at 25 mm, hard: 0")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1<<9 {
			return
		}
		got, err := From(text, run.Default())
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		require.NotNil(t, got.Mistakes)
		require.Equal(t, run.Default().Currency, got.List.Currency)
	})
}
