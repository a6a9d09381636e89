package calls

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// laptop is what Chromium reports of a 1920 x 1080 screen at a system scale of
// 1.25, at no page zoom.
var laptop = unit.Report{Vendor: "Google Inc.", W: 1536, H: 864, Ratio: 1.25, Pinch: 1, Inner: [2]float64{1500, 700}, Outer: [2]float64{1500, 800}}

func onScreen(t *testing.T, r unit.Report, kept string, m *wire.Match) wire.TrueSize {
	t.Helper()
	a, _ := ask[wire.TrueSize](t, NewSession(), "screen", wire.ScreenAsk{Report: r, Kept: kept, Match: m}, nil)
	return a
}

func TestAScreenIsAGuessUntilItIsChecked(t *testing.T) {
	before := onScreen(t, laptop, "", nil)
	assert.False(t, before.Checked)
	assert.Contains(t, before.Says, "guess")
	assert.Empty(t, before.Keep)
	assert.InDelta(t, 96, before.PerMM*25.4, 1e-9, "the CSS inch (CSS Values and Units)")

	// An ID-1 card is 85.60 mm wide (ISO/IEC 7810); on a 15.6 in screen of
	// 1920 x 1080 it covers 475.896 px (reference/display_ppi.csv).
	match := &wire.Match{Object: before.Card.W, Px: 475.896 / laptop.Ratio}
	now := onScreen(t, laptop, "", match)
	assert.True(t, now.Checked)
	assert.Equal(t, "1920x1080@1.25", now.Screen)
	assert.InDelta(t, 5.5595, float64(now.DevicePerMM), 1e-4)
	assert.InDelta(t, match.Px, now.PerMM*85.60, 1e-9, "the card is drawn as wide as it was matched")
	require.NotEmpty(t, now.Keep)

	later := onScreen(t, laptop, now.Keep, nil)
	assert.True(t, later.Checked)
	assert.Equal(t, now.DevicePerMM, later.DevicePerMM)
	assert.Equal(t, "checked here", later.Words)
	assert.Empty(t, later.Keep)
}

func TestACheckHoldsAtPageZoomAndPinch(t *testing.T) {
	kept := onScreen(t, laptop, "", &wire.Match{Object: 50, Px: 250}).Keep // a ruler: 5 CSS px to the mm
	zoomed := laptop
	zoomed.Ratio, zoomed.Inner, zoomed.Pinch = 1.875, [2]float64{1000, 467}, 2
	a := onScreen(t, zoomed, kept, nil)
	assert.True(t, a.Checked)
	assert.InDelta(t, 5/1.5/2, a.PerMM, 1e-9)

	other := laptop
	other.W, other.H, other.Ratio = 1920, 1080, 1 // the monitor beside it, with as many pixels
	b := onScreen(t, other, kept, nil)
	assert.False(t, b.Checked)
	assert.Contains(t, b.Says, "another screen")
}

func TestACheckThatCannotBeIsRefusedInWords(t *testing.T) {
	for name, m := range map[string]wire.Match{"no width": {Object: 85.6}, "no object": {Px: 300}, "too coarse": {Object: 85.6, Px: 20}, "too fine": {Object: 1, Px: 900}} {
		text, err := json.Marshal(wire.ScreenAsk{Report: laptop, Kept: `{"1920x1080@1.25": 5}`, Match: &m})
		require.NoError(t, err)
		_, err = NewSession().Do("screen", text, Job{})
		f := FailureOf(err)
		assert.Equal(t, wire.Refused, f.Kind, name)
		assert.NotEmpty(t, f.Do, name)
		assert.Regexp(t, `^(The check has|A screen with)`, f.What, name)
	}
}
