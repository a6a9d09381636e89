package calls

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// What the check says of the next step is what the picture of it marks, and
// what the next count does.
func TestNextStep(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 9)
	c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	require.NotNil(t, c.Next)
	assert.Contains(t, c.Next.Words, "One enamel fewer: ")
	assert.Contains(t, c.Next.Words, "becomes another colour")

	_, pixels := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: p, View: wire.ViewNext, LongSide: 200}, nil)
	marked := 0
	for i := 3; i < len(pixels); i += 4 {
		if pixels[i] > 0 {
			marked++
		}
	}
	assert.InDelta(t, c.Next.Joining.Share, float64(marked)/float64(len(pixels)/4), 0.25, "about the lost colour's share is marked")
	assert.Positive(t, marked)

	p.Project.Order.Designs[0].Colours--
	after, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	for _, f := range after.Flats.Flats {
		assert.NotEqual(t, c.Next.Joining.Goes, f.ID)
	}
	assert.Nil(t, after.Next, "one enamel is left")
	text, err := json.Marshal(wire.PictureAsk{Picked: p, View: wire.ViewNext, LongSide: 200})
	require.NoError(t, err)
	_, err = s.Do("picture", text, Job{})
	assert.ErrorContains(t, err, "may join")
}

// A version's own colours are what is compared.
func TestNextStepInAVersionsColours(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 9)
	before, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	j := before.Next.Joining
	same := colour.RGB8{R: 10, G: 120, B: 90}
	p.Project.Order.Designs[0].Versions[0].Colours = []sizing.VersionColour{{Flat: j.Keep, RGB: &same}, {Flat: j.Goes, RGB: &same}}
	after, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Zero(t, after.Next.Joining.Shift)
	assert.Equal(t, same, after.Next.Joining.Becomes)
	assert.Contains(t, after.Next.Words, "nobody sees it")
}
