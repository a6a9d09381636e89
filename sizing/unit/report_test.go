package unit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	chromium = "Google Inc."
	webkit   = "Apple Computer, Inc."
	gecko    = ""
)

// seen is what one browser reported at one page zoom. The rows were read off
// the browsers themselves: Chromium 156 (with a system scale of 1 and of 2),
// WebKitGTK 2.50 and Firefox ESR 153, on Debian 12.
var seen = []struct {
	name   string
	zoom   float64
	screen string // the key to be found
	r      Report
}{
	{"chromium", 1, "800x600@1", Report{chromium, 800, 600, 1, 1, [2]float64{1200, 657}, [2]float64{1200, 800}}},
	{"chromium", 1.5, "800x600@1", Report{chromium, 800, 600, 1.5, 1, [2]float64{800, 438}, [2]float64{1200, 800}}},
	{"chromium", 2. / 3, "800x600@1", Report{chromium, 800, 600, 0.6666668057441711, 1, [2]float64{1800, 985}, [2]float64{1200, 800}}},
	{"chromium on a fine screen", 1, "800x600@2", Report{chromium, 400, 300, 2, 1, [2]float64{1200, 657}, [2]float64{1200, 800}}},
	{"chromium on a fine screen", 1.5, "800x600@2", Report{chromium, 400, 300, 3, 1, [2]float64{800, 438}, [2]float64{1200, 800}}},
	{"chromium on a fine screen", 2. / 3, "800x600@2", Report{chromium, 400, 300, 1.3333336114883423, 1, [2]float64{1800, 985}, [2]float64{1200, 800}}},
	{"webkit", 1, "1280x1024@1", Report{webkit, 1280, 1024, 1, 1, [2]float64{900, 600}, [2]float64{900, 600}}},
	{"webkit", 1.5, "1280x1024@1", Report{webkit, 1280, 1024, 1, 1, [2]float64{600, 400}, [2]float64{900, 600}}},
	{"webkit", 0.75, "1280x1024@1", Report{webkit, 1280, 1024, 1, 1, [2]float64{1200, 800}, [2]float64{900, 600}}},
	{"gecko", 1, "1366x768", Report{gecko, 1366, 768, 1, 1, [2]float64{1366, 682}, [2]float64{1366, 768}}},
	{"gecko", 1.5, "1367x768", Report{gecko, 911, 512, 1.5, 1, [2]float64{911, 455}, [2]float64{911, 512}}},
	{"gecko", 2, "1366x768", Report{gecko, 683, 384, 2, 1, [2]float64{683, 341}, [2]float64{683, 384}}},
	{"gecko", 2. / 3, "1366x768", Report{gecko, 2049, 1152, 0.6666666666666666, 1, [2]float64{2049, 1023}, [2]float64{2039, 1146}}},
}

func TestPageZoomKeepsTheScreenAndTheSizeInTheHand(t *testing.T) {
	const zoom1 = 5.0 // device px per mm, as a check would find it
	for _, before := range seen {
		kept := Kept{}.Keep(before.r.Screen(), zoom1)
		for _, now := range seen {
			if now.name != before.name {
				continue
			}
			s := now.r.Screen()
			assert.Equal(t, now.screen, s.Key(), "%s at %.2f", now.name, now.zoom)
			scale, ok := kept.Find(s)
			require.True(t, ok, "%s checked at %.2f, seen at %.2f", now.name, before.zoom, now.zoom)
			// What a page draws is stretched by its zoom and by the system's scale.
			base := map[string]float64{"chromium on a fine screen": 2}[now.name]
			if base == 0 {
				base = 1
			}
			onGlass := s.CSSPx(30, scale) * now.zoom * base
			assert.InDelta(t, 30*zoom1, onGlass, 1e-4, "%s at %.2f", now.name, now.zoom)
		}
	}
}

func TestAMatchSaysTheSameAtEveryZoomAndPinch(t *testing.T) {
	for _, c := range seen {
		for _, pinch := range []float64{1, 2.5} {
			r := c.r
			r.Pinch = pinch
			s := r.Screen()
			scale, err := s.Match(s.CSSPx(CardWidth, 4), CardWidth)
			require.NoError(t, err)
			assert.InDelta(t, 4, float64(scale), 1e-9)
		}
	}
}

func TestAGuessIsTheCSSInchUnlessZoomed(t *testing.T) {
	for _, c := range seen {
		if c.name == "gecko" {
			continue // its zoom cannot be told from the system's scale
		}
		s := c.r.Screen()
		// CSS Values and Units: 1 in = 96 px = 25.4 mm, at no zoom.
		assert.InDelta(t, 96/c.zoom, s.CSSPx(MMPerInch, s.Guess()), 1e-3, "%s at %.2f", c.name, c.zoom)
	}
}

func TestWhatZoomCannotExplainIsAnotherScreen(t *testing.T) {
	at := func(vendor string, w, h, ratio float64) Screen {
		return Report{vendor, w, h, ratio, 1, [2]float64{1000, 700}, [2]float64{1000, 760}}.Screen()
	}
	kept := Kept{}.Keep(at(chromium, 1536, 864, 1.25), 5.56) // 15.6 in, 1920 x 1080
	for name, s := range map[string]Screen{
		"larger":                        at(chromium, 2560, 1440, 1),
		"turned":                        at(chromium, 864, 1536, 1.25),
		"as many pixels, other setting": at(chromium, 1920, 1080, 1), // the monitor beside it
		"a little smaller":              at(chromium, 1530, 864, 1.25),
	} {
		_, ok := kept.Find(s)
		assert.False(t, ok, name)
	}
	_, ok := kept.Find(at(chromium, 1536, 864, 1.25))
	assert.True(t, ok)
	_, ok = kept.Find(at(chromium, 1537, 863, 1.25))
	assert.True(t, ok, "a whole CSS pixel of rounding")
}

func TestAPanelBesideThePageIsNoZoom(t *testing.T) {
	r := Report{chromium, 1920, 1080, 1, 1, [2]float64{1200, 960}, [2]float64{1800, 1040}}
	assert.Equal(t, "1920x1080@1", r.Screen().Key())
	r.Ratio, r.Inner = 1.5, [2]float64{1200, 640}
	assert.Equal(t, "1920x1080@1", r.Screen().Key(), "but this is")
	r.Outer = [2]float64{1816, 1056} // a frame of 8 px each way
	assert.Equal(t, "1920x1080@1", r.Screen().Key())
}

func TestABrowserThatTellsNothingIsAGuess(t *testing.T) {
	for _, r := range []Report{{}, {W: -3, H: 4, Ratio: -1, Pinch: -1}, {W: 1e12, H: 1e12, Ratio: 1}} {
		s := r.Screen()
		assert.False(t, s.Known())
		_, ok := Kept{"1x1": 4}.Keep(s, 5).Find(s)
		assert.False(t, ok)
		assert.InDelta(t, 96, s.CSSPx(MMPerInch, s.Guess()), 1e-9)
	}
}

func TestChecksAreKeptAsText(t *testing.T) {
	k := ReadKept(`{"1440x900": 4, "1920x1080@1.25": 5.56, "2000x1000": 900, "9x9": "4", "junk": 4, "1x2y": 4, "1440x900@0": 4, "-3x4": 4}`)
	assert.Equal(t, Kept{"1440x900": 4, "1920x1080@1.25": 5.56}, k)
	assert.Equal(t, k, ReadKept(k.Text()))
	assert.Equal(t, `{"1440x900":4,"1920x1080@1.25":5.56}`, k.Text())
	for _, text := range []string{"", "null", "not json", "[]", "3", `{"a":`} {
		assert.Empty(t, ReadKept(text), text)
	}
	s := Screen{W: 1440, H: 900, Base: 2, Ratio: 2, Pinch: 1}
	again := k.Keep(s, 6)
	assert.Equal(t, Kept{"1440x900@2": 6, "1920x1080@1.25": 5.56}, again, "the new check takes the old one's place")
	assert.Len(t, k, 2, "and the checks before stay as they were")
}

func TestTheNearestOfSeveralChecksCounts(t *testing.T) {
	s := Screen{W: 1440, H: 900, Base: 1, Ratio: 1, Pinch: 1}
	scale, ok := Kept{"1438x900@1": 3, "1440x900@1": 4, "1441x901@1": 5}.Find(s)
	assert.True(t, ok)
	assert.Equal(t, DevicePxPerMM(4), scale)
	scale, _ = Kept{"1440x900": 3, "1440x900@1": 4}.Find(s)
	assert.Equal(t, DevicePxPerMM(4), scale, "one of the same system scale before one of none")
}
