package calls

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// thinRoundel is a roundel whose lines are 4 px of 600, at a size where they are
// 0.13 mm wide.
func thinRoundel(t *testing.T, s *Session) wire.Picked {
	t.Helper()
	_, picked := opening(t, s, 600, 4)
	picked.Project.Order.Designs[0].Size = sizing.Size{MM: 18, By: sizing.ByLongest}
	return picked
}

func mendable(all []sizing.Finding) []sizing.Finding {
	return slices.DeleteFunc(slices.Clone(all), func(f sizing.Finding) bool { return f.Verdict != sizing.Fails })
}

func TestATroubleSpotIsOfferedRepairsWithPicturesOfThem(t *testing.T) {
	s := NewSession()
	picked := thinRoundel(t, s)
	c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	bad := mendable(c.Findings)
	require.NotEmpty(t, bad)
	const side = 96
	o, pixels := ask[wire.Offers](t, s, "offers", wire.OffersAsk{Picked: picked, Finding: bad[0], Side: side}, nil)
	require.NotEmpty(t, o.Offers)
	assert.Len(t, pixels, 4*side*side*(1+len(o.Offers)))
	assert.Positive(t, o.Across.MM)
	one := 4 * side * side
	for k, offer := range o.Offers {
		assert.NotEqual(t, pixels[:one], pixels[(k+1)*one:(k+2)*one], offer.Words)
		assert.NotEmpty(t, offer.Words)
		assert.Positive(t, offer.Change.MM2)
	}
	d := &picked.Project.Order.Designs[0]
	d.Recipes = append(d.Recipes, o.Offers[0].Recipes...)
	after, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	assert.Less(t, len(mendable(after.Findings)), len(bad))
}

func TestRepairingAllLeavesNothingThatFails(t *testing.T) {
	s := NewSession()
	picked := thinRoundel(t, s)
	o, _ := ask[wire.MendAll](t, s, "mendall", wire.MendAllAsk{Picked: picked}, nil)
	assert.Positive(t, o.Before)
	assert.Empty(t, o.Left)
	assert.NotEmpty(t, o.Change.Words)
	d := &picked.Project.Order.Designs[0]
	d.Recipes = append(d.Recipes, o.Recipes...)
	c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	assert.Empty(t, mendable(c.Findings))
	again, _ := ask[wire.MendAll](t, s, "mendall", wire.MendAllAsk{Picked: picked}, nil)
	assert.Empty(t, again.Recipes)
	assert.Zero(t, again.Change.MM2)
}

func TestTheSizeThatHoldsAsRepairedIsSmallerAndItsSearchCanBeStopped(t *testing.T) {
	s := NewSession()
	picked := thinRoundel(t, s)
	c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	o, _ := ask[wire.MendedFrom](t, s, "mendedfrom", wire.MendedFromAsk{Picked: picked}, nil)
	for n := 0; !o.Search.Done; n++ {
		require.Less(t, n, 12)
		o, _ = ask[wire.MendedFrom](t, s, "mendedfrom", wire.MendedFromAsk{Picked: picked, Search: &o.Search}, nil)
	}
	assert.Positive(t, o.Size.MM)
	assert.Less(t, o.Size.MM, c.HoldsFrom)
	text, err := json.Marshal(wire.MendedFromAsk{Picked: picked})
	require.NoError(t, err)
	_, err = s.Do("mendedfrom", text, Job{Progress: func(float64, string) error { return ErrStopped }})
	assert.ErrorIs(t, err, ErrStopped)
}

func TestACloseUpOfNoSizeIsRefused(t *testing.T) {
	s := NewSession()
	picked := thinRoundel(t, s)
	for _, side := range []int{-1, 3, 5000} {
		text, err := json.Marshal(wire.OffersAsk{Picked: picked, Side: side})
		require.NoError(t, err)
		_, err = s.Do("offers", text, Job{})
		require.Error(t, err)
		assert.NotEmpty(t, FailureOf(err).Do)
	}
}

func TestACloseUpShowsTheSpotAndNoMoreThanMostOfThePin(t *testing.T) {
	b := &sizing.Badge{Scale: 20, Outline: [4]float64{0, 0, 600, 400}}
	dot := &sizing.Finding{X: 300, Y: 200, X0: 298, Y0: 198, X1: 302, Y1: 202}
	at := closeUp(dot, b)
	assert.InDelta(t, 4*20, at.side, 1e-9)
	assert.InDelta(t, 300, at.x+at.side/2, 1e-9)
	long := &sizing.Finding{X: 40, Y: 50, X0: 0, Y0: 0, X1: 600, Y1: 400}
	at = closeUp(long, b)
	assert.InDelta(t, 360, at.side, 1e-9)
	assert.InDelta(t, 40, at.x+at.side/2, 1e-9, "round its worst place")
}
