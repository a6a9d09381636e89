package fastener

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

func stamped(t *testing.T, s shape, longest unit.MM, want sizing.Stamp) (*sizing.Badge, Advice, Stamped) {
	z, b := shaped(t, s, longest)
	a, err := z.Advise(b.Scale, wished(b, sizing.Iron, 1.5, 0))
	require.NoError(t, err)
	got, err := z.Stamp(b.Scale, &a, want)
	require.NoError(t, err)
	return b, a, got
}

var skerry = sizing.Stamp{Lines: []string{"SKERRY LIGHT", "2027"}}

// The slow twin: every pixel of the block is metal, and far from every pad.
func clearBlock(t *testing.T, b *sizing.Badge, a Advice, s Stamped) {
	for y := -s.H / 2; y <= s.H/2; y += 0.2 {
		for x := -s.W / 2; x <= s.W/2; x += 0.2 {
			at := sizing.Post{X: s.Middle.X + x, Y: s.Middle.Y + y}
			for _, off := range [][2]unit.MM{{0, 0}, {0.4, 0}, {-0.4, 0}, {0, 0.4}, {0, -0.4}} {
				px, py := (at.X+off[0]).Px(b.Scale)+b.Outline[0], (at.Y+off[1]).Px(b.Scale)+b.Outline[1]
				require.NotEqual(t, reduce.None, b.Sep.Labels[int(py)*b.Sep.W+int(px)], "%v is off the metal, or too near its edge", at)
			}
			for _, p := range a.Posts {
				require.Greater(t, math.Hypot(float64(p.X-at.X), float64(p.Y-at.Y)), float64(a.Pad)/2)
			}
		}
	}
}

func TestTheStampStandsClearOfEdgesAndPads(t *testing.T) {
	for _, s := range cabinet() {
		b, a, got := stamped(t, s.shape, s.longest, skerry)
		if got.Verdict != sizing.Holds {
			assert.NotEmpty(t, got.Says, s.name)
			continue
		}
		assert.GreaterOrEqual(t, float64(got.Height), stampLeast, s.name)
		clearBlock(t, b, a, got)
	}
	_, _, large := stamped(t, disc(0, 0, 10), 45, skerry)
	assert.Equal(t, sizing.Holds, large.Verdict)
	assert.Equal(t, unit.MM(stampUsual), large.Height)
	assert.Contains(t, large.Says, "cut in")
}

// Capitals below 1.2 mm are not read: common practice, no published source.
func TestTheStampHasItsLimit(t *testing.T) {
	_, _, low := stamped(t, disc(0, 0, 10), 45, sizing.Stamp{Lines: skerry.Lines, Height: 1.1, Raised: true})
	assert.Equal(t, sizing.Fails, low.Verdict)
	assert.Contains(t, low.Says, "too low to be read; 1.2 mm is the least, raised")
	_, _, high := stamped(t, disc(0, 0, 10), 30, sizing.Stamp{Lines: []string{strings.Repeat("M", 30)}, Height: 1.2})
	assert.Equal(t, sizing.Fails, high.Verdict)
	assert.Contains(t, high.Says, "There is room for capitals of")
	_, _, none := stamped(t, disc(0, 0, 10), 8, skerry)
	assert.Equal(t, unit.MM(0), none.Largest)
	assert.Contains(t, none.Says, "no room")
}

// The maker's own limit takes its place, and no stroke is thinner than a die holds.
func TestTheStampKeepsAMakersOwnLimit(t *testing.T) {
	_, _, own := stamped(t, disc(0, 0, 10), 45, sizing.Stamp{Lines: skerry.Lines, Height: 1.4, Least: 1.5})
	assert.Equal(t, sizing.Fails, own.Verdict)
	assert.Contains(t, own.Says, "1.5 mm is the least")
	_, _, usual := stamped(t, disc(0, 0, 10), 45, sizing.Stamp{Lines: skerry.Lines, Height: 1.4})
	assert.Equal(t, sizing.Holds, usual.Verdict)
	assert.Equal(t, unit.MM(stampStroke), usual.Stroke)
}

// What is struck lies in the block that was found free, about its middle.
func TestTheStrokesFillTheirBlock(t *testing.T) {
	for _, lines := range [][]string{{"SKERRY LIGHT"}, {"Ångström", "gjpqy"}, {"I"}, {"SKERRY", "LIGHT", "2027"}} {
		_, _, s := stamped(t, disc(0, 0, 10), 45, sizing.Stamp{Lines: lines})
		box := boxOf(s.Strokes())
		half := float64(s.Stroke) / 2
		assert.InDeltaSlice(t, []float64{-float64(s.W) / 2, -float64(s.H) / 2, float64(s.W) / 2, float64(s.H) / 2},
			[]float64{box[0] - half, box[1] - half, box[2] + half, box[3] + half}, 0.02, "%v", lines)
	}
	_, _, odd := stamped(t, disc(0, 0, 10), 45, sizing.Stamp{Lines: []string{"ж SKERRY"}})
	assert.Contains(t, odd.Says, "These letters lack ж")
}

func TestMoreWordsNeverGetHigherLetters(t *testing.T) {
	before := unit.MM(math.Inf(1))
	for n := 2; n <= 40; n += 3 {
		_, _, got := stamped(t, disc(0, 0, 10), 36, sizing.Stamp{Lines: []string{strings.Repeat("A", n)}})
		assert.LessOrEqual(t, got.Largest, before)
		before = got.Largest
	}
}

func TestWhatIsNoLetteringIsRefusedInWords(t *testing.T) {
	z, b := shaped(t, disc(0, 0, 10), 36)
	a, err := z.Advise(b.Scale, wished(b, sizing.Iron, 1.5, 0))
	require.NoError(t, err)
	for _, bad := range []sizing.Stamp{
		{}, {Lines: []string{"  ", ""}}, {Lines: []string{"1", "2", "3", "4", "5"}},
		{Lines: []string{strings.Repeat("x", 41)}}, {Lines: []string{"a"}, Height: unit.MM(math.NaN())}, {Lines: []string{"a"}, Height: -1},
	} {
		_, err := z.Stamp(b.Scale, &a, bad)
		var r *reduce.Refusal
		if assert.ErrorAs(t, err, &r) {
			assert.NotEmpty(t, r.Do)
		}
	}
}
