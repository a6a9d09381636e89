package calls

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

func onHalf(mm unit.MM) bool {
	twice := float64(2 * mm)
	return math.Abs(twice-math.Round(twice)) < 1e-9
}

func TestPlacesAreMirroredAndToTheHalfMillimetre(t *testing.T) {
	b := &sizing.Badge{Scale: 10, Outline: [4]float64{0, 0, 314, 402}} // 31.4 x 40.2 mm
	p := fromBehind([]sizing.Post{{X: 10.1, Y: 13.26}, {X: 15.7, Y: 20.1}, {X: 25, Y: 30}}, b)
	require.Len(t, p, 3)
	assert.Equal(t, unit.MM(21.5), p[0].Left.MM, "31.4 - 10.1 = 21.3")
	assert.Equal(t, unit.MM(13.5), p[0].Top.MM)
	assert.Equal(t, "5.5 mm right, 7 mm above", p[0].FromMiddle)
	assert.Equal(t, "0.22 in right, 0.28 in above", p[0].FromMiddleInches)
	assert.Equal(t, "in the middle", p[1].FromMiddle)
	assert.Equal(t, "9.5 mm left, 10 mm below", p[2].FromMiddle)
	numbers := func(posts ...sizing.Post) (all []int) {
		for _, q := range fromBehind(posts, b) {
			all = append(all, q.No)
		}
		return all
	}
	assert.Equal(t, []int{2, 1}, numbers(sizing.Post{X: 8, Y: 12}, sizing.Post{X: 20, Y: 13}), "from the left, seen from behind")
	assert.Equal(t, []int{1, 2}, numbers(sizing.Post{X: 12, Y: 8}, sizing.Post{X: 15, Y: 30}), "from the top")
	assert.Equal(t, []int{3, 2, 1}, numbers(sizing.Post{X: 2, Y: 1}, sizing.Post{X: 9, Y: 7}, sizing.Post{X: 20, Y: 1}))
	for _, q := range p {
		assert.True(t, onHalf(q.Left.MM) && onHalf(q.Top.MM) && onHalf(q.Beside.MM) && onHalf(q.Below.MM))
	}
}

func TestHangAnswersForPostsAsTheyAreMoved(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 10)
	p.Project.Order.Designs[0].Size = sizeOf(40)
	h, _ := ask[wire.Hung](t, s, "hang", wire.HangAsk{Picked: p, Posts: []sizing.Post{{X: 9, Y: 16}, {X: 30.7, Y: 16.4}}, Moved: 1}, nil)
	require.Len(t, h.Back.Posts, 2)
	assert.InDelta(t, 31, float64(h.Back.Posts[1].X), 0.1, "set on the mirror image of the other")
	assert.InDelta(t, 16, float64(h.Back.Posts[1].Y), 0.01, "and on its height")
	assert.True(t, h.Back.ByHand)
	assert.Empty(t, h.Back.Worse, "%v", h.Back.Worse)
	assert.Len(t, h.Places, 2)
	d := &p.Project.Order.Designs[0]
	d.Back.Hand = h.Hand
	c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Equal(t, h.Back, c.Back, "the check says the same of places that were kept")
	assert.Equal(t, h.Places, c.Places)
	h, _ = ask[wire.Hung](t, s, "hang", wire.HangAsk{Picked: p, Posts: []sizing.Post{{X: 99, Y: -4}}, Moved: -1}, nil)
	assert.Equal(t, [][2]float64{{1, 0}}, h.Hand, "a post is kept on the outline's box")
	assert.NotEmpty(t, h.Back.Worse)
}

func TestTheCheckSaysWhatTheBackIsMadeOf(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 10)
	d := &p.Project.Order.Designs[0]
	d.Size = sizeOf(32)
	soft, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Greater(t, soft.Back.Mass.Filled, 0.5, "most of the roundel is enamel")
	assert.Len(t, soft.Fixings, 4)
	d.Fill = sizing.Hard
	hard, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Greater(t, hard.Back.Weight, soft.Back.Weight, "hard fill is flush")
	assert.Equal(t, 100, hard.Back.Mass.Pieces)
	assert.Contains(t, strings.Join(hard.Back.MassSays, " "), "All 100, packed")
	d.Size = sizeOf(8)
	tiny, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	found := false
	for _, f := range tiny.Findings {
		found = found || f.Kind == sizing.ClutchShows
	}
	assert.True(t, found, "at 8 mm no clutch is hidden")
}

func TestTheCheckCautions(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 10)
	d := &p.Project.Order.Designs[0]
	says := func() string {
		c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
		var all []string
		for _, k := range c.Cautions {
			all = append(all, k.Says, k.Do)
		}
		return strings.Join(all, " ")
	}
	d.Size = sizeOf(25)
	assert.Contains(t, says(), "The loose clutch always fits the small-parts cylinder")
	assert.Contains(t, says(), "The pin itself fits it as well.")
	d.Size = sizeOf(40)
	assert.Contains(t, says(), "The pin itself does not fit it as drawn.")
	d.Back.Buyers = sizing.UnderThree
	d.Back.Fastening = sizing.MagnetBack
	p.Project.Order.Designs[0].Versions[0].Plating = "silver"
	assert.Contains(t, says(), "Do not offer it for children under three")
	assert.Contains(t, says(), "dangerous when swallowed")
	assert.Contains(t, says(), "silver (nickel) bears nickel")
}

func TestTheCheckFindsRoomForAStamp(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 10)
	d := &p.Project.Order.Designs[0]
	d.Size = sizeOf(40)
	c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Nil(t, c.Stamp)
	d.Back.Stamp = &sizing.Stamp{Lines: []string{"Skerry Light"}}
	c, _ = ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	require.NotNil(t, c.Stamp)
	assert.Equal(t, sizing.Holds, c.Stamp.Verdict)
	pix := make([]byte, 4*40*30)
	for i := range 30 {
		copy(pix[4*(40*i+10):4*(40*i+30)], slices.Repeat([]byte{0, 0, 0, 255}, 20))
	}
	m, _ := ask[wire.BackMark](t, s, "backmark", wire.BackMarkAsk{W: 40, H: 30}, pix)
	assert.Equal(t, [2]int{20, 30}, [2]int{m.Mark.W, m.Mark.H})
	d.Back.Stamp.Mark = &m.Mark
	c, _ = ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	require.NotNil(t, c.Stamp.Mark)
	assert.True(t, c.Stamp.Mark.Holds)
	with := cellsOf(c.Stamp, &m.Mark)
	assert.InDelta(t, float64(c.Stamp.Mark.W), 20*float64(with.Side), 0.01)
	d.Back.Stamp.Mark = nil
	d.Back.Stamp.Lines = nil
	c, _ = ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Nil(t, c.Stamp)
	assert.Contains(t, c.StampProblem, "Type what it is to say")
}

// A line drawn beyond the art is part of the silhouette: posts are measured
// from its outline.
func TestALineBeyondTheArtMovesTheOutline(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 10)
	d := &p.Project.Order.Designs[0]
	d.Size = sizeOf(40)
	plain, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	d.Recipes = []sizing.Recipe{{Kind: sizing.DrawLine, Width: 1, Points: [][2]float64{{0.5, 0.5}, {0.99, 0.5}}}}
	wider, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	require.Greater(t, wider.W, plain.W)
	assert.InDelta(t, float64(wider.W), (wider.Outline[2]-wider.Outline[0])/float64(wider.Scale), 1e-9)
	assert.Greater(t, wider.Back.Area, plain.Back.Area)
	assert.InDelta(t, float64(plain.Back.Centre[0]), float64(wider.Back.Centre[0]), 0.6, "the drawn line is light")
}
