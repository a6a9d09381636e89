package calls

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/wasm/wire"
)

func TestWhatIsTypedIsRead(t *testing.T) {
	for _, c := range []struct {
		ask  wire.TypedAsk
		want wire.Typed
	}{
		{wire.TypedAsk{Text: "1 1/4 in", As: wire.TypedLength, Beside: "mm", Least: 5, Most: 150}, wire.Typed{Number: 31.75, Words: "31.8 mm (1.25 in)"}},
		{wire.TypedAsk{Text: "32", As: wire.TypedLength, Beside: "mm"}, wire.Typed{Number: 32, Words: "32 mm (1.26 in)"}},
		{wire.TypedAsk{Text: "2", As: wire.TypedLength, Beside: "in"}, wire.Typed{Number: 50.8, Words: "50.8 mm (2.00 in)"}},
		{wire.TypedAsk{Text: "0,25 mm²", As: wire.TypedArea, Most: 20}, wire.Typed{Number: 0.25, Words: "0.25 mm²"}},
		{wire.TypedAsk{Text: "7,5 N", As: wire.TypedForce, Most: 100}, wire.Typed{Number: 7.5, Words: "7.5 N"}},
		{wire.TypedAsk{Text: "35", As: wire.TypedAngle, Most: 180}, wire.Typed{Number: 35, Words: "35°"}},
		{wire.TypedAsk{Text: "1 000 pins", As: wire.TypedCount, Beside: "pins", Least: 1, Most: 100000}, wire.Typed{Number: 1000, Words: "1000"}},
		{wire.TypedAsk{Text: "EUR 1,25", As: wire.TypedAmount, Beside: "EUR"}, wire.Typed{Text: "1.25", Words: "1.25"}},
		{wire.TypedAsk{Text: "jpy", As: wire.TypedCurrency}, wire.Typed{Text: "JPY", Words: "JPY"}},
		{wire.TypedAsk{Text: "#2a6f97", As: wire.TypedColour}, wire.Typed{RGB: colour.RGB8{R: 0x2a, G: 0x6f, B: 0x97}, Words: "#2a6f97"}},
		{wire.TypedAsk{Text: "12,5 %", As: wire.TypedPercent, Most: 100}, wire.Typed{Number: 12.5, Text: "12.5", Words: "12.5 %"}},
		{wire.TypedAsk{Text: "1 day", As: wire.TypedDays}, wire.Typed{Number: 1, Words: "1 working day"}},
		{wire.TypedAsk{Text: "15 working days", As: wire.TypedDays, Most: 250}, wire.Typed{Number: 15, Words: "15 working days"}},
	} {
		got, _ := ask[wire.Typed](t, NewSession(), "typed", c.ask, nil)
		assert.Equal(t, c.want, got, c.ask.Text)
	}
}

func TestWhatCannotBeReadIsRefusedInWords(t *testing.T) {
	for _, c := range []struct {
		ask  wire.TypedAsk
		says string
	}{
		{wire.TypedAsk{Text: "big", As: wire.TypedLength, Beside: "mm"}, `"big"`},
		{wire.TypedAsk{Text: "4", As: wire.TypedLength, Beside: "mm", Least: 5, Most: 150}, "4 mm (0.16 in) is too small here. Give from 5 mm (0.20 in) to 150 mm (5.91 in)."},
		{wire.TypedAsk{Text: "6 in", As: wire.TypedLength, Beside: "mm", Least: 5, Most: 150}, "too large"},
		{wire.TypedAsk{Text: "21", As: wire.TypedArea, Most: 20}, "21 mm² is too large here. Give at most 20 mm²."},
		{wire.TypedAsk{Text: "200", As: wire.TypedAngle, Most: 180}, "200° is too large here. Give at most 180°."},
		{wire.TypedAsk{Text: "hard", As: wire.TypedForce, Most: 100}, `"hard" cannot be read as a force`},
		{wire.TypedAsk{Text: "0", As: wire.TypedCount, Beside: "pins", Least: 1, Most: 100}, "0 is too small here. Give from 1 to 100."},
		{wire.TypedAsk{Text: "2.5", As: wire.TypedCount}, "not a whole number"},
		{wire.TypedAsk{Text: "free", As: wire.TypedAmount, Beside: "EUR"}, `"free"`},
		{wire.TypedAsk{Text: "money", As: wire.TypedCurrency}, "three letters"},
		{wire.TypedAsk{Text: "blue", As: wire.TypedColour}, "#1a6b8f"},
		{wire.TypedAsk{Text: "130 %", As: wire.TypedPercent, Most: 100}, "130 % is too large here. Give at most 100 %."},
		{wire.TypedAsk{Text: "some", As: wire.TypedPercent}, "percentage"},
		{wire.TypedAsk{Text: "400", As: wire.TypedDays, Least: 1, Most: 250}, "400 working days is too large here. Give from 1 working day to 250 working days."},
		{wire.TypedAsk{Text: "2,5 days", As: wire.TypedDays}, "whole number of days"},
	} {
		text, err := json.Marshal(c.ask)
		require.NoError(t, err)
		_, err = NewSession().Do("typed", text, Job{})
		f := FailureOf(err)
		assert.Equal(t, wire.Refused, f.Kind, c.ask.Text)
		assert.Contains(t, f.What+" "+f.Do, c.says)
		assert.NotEmpty(t, f.Do)
	}
	_, err := NewSession().Do("typed", []byte(`{"text":"3","as":"mood"}`), Job{})
	assert.Error(t, err)
}
