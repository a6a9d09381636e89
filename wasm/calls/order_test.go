package calls

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

func TestChoicesAreTheDifferencesOfQuotes(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	d := &p.Project.Order.Designs[0]
	d.Size = sizeOf(37)
	now, _ := ask[run.Quote](t, s, "quote", wire.QuoteAsk{Picked: p}, nil)
	all, _ := ask[wire.Choices](t, s, "choices", wire.ChoicesAsk{Picked: p}, nil)
	byKey := map[string]run.Choice{}
	for _, c := range all.Rows {
		byKey[c.Key] = c
	}
	require.Contains(t, byKey, "size+")

	// What a choice says is what a quote for the changed design says.
	d.Size = sizeOf(40)
	larger, _ := ask[run.Quote](t, s, "quote", wire.QuoteAsk{Picked: p}, nil)
	assert.Equal(t, larger.Total.Sub(now.Total).String(), byKey["size+"].Total.String())
	d.Size = sizeOf(37)
	d.Versions[0].Quantity = 200
	more, _ := ask[run.Quote](t, s, "quote", wire.QuoteAsk{Picked: p}, nil)
	assert.Equal(t, more.Total.Sub(now.Total).String(), byKey["quantity"].Total.String())
	assert.True(t, byKey["quantity"].PerPiece.LessThan(decimal.Zero))
	assert.Contains(t, byKey["quantity"].TotalSays, "EUR")
}

func TestASizeIsChangedByTheMeasureOfTheList(t *testing.T) {
	s := NewSession()
	pix := roundel(300, 8)
	clear(pix[4*300*180:]) // broader than high, so that width and mean differ
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "a", FileName: "half.png", W: 300, H: 300, FileW: 300, FileH: 300, Space: "srgb", Ground: reduce.GroundAuto}, pix)
	p := wire.Picked{Project: BlankProject()}
	p.Project.Order.Designs = []sizing.Design{o.Design}
	p.Project.Order.PriceLists[0].Pieces.SizeBy = sizing.ByMean
	d := &p.Project.Order.Designs[0]
	d.Size = sizing.Size{MM: 28, By: sizing.ByMean} // the list's classes end at 30 and 38 mm
	now, _ := ask[run.Quote](t, s, "quote", wire.QuoteAsk{Picked: p}, nil)
	all, _ := ask[wire.Choices](t, s, "choices", wire.ChoicesAsk{Picked: p}, nil)
	d.Size.MM = 31
	larger, _ := ask[run.Quote](t, s, "quote", wire.QuoteAsk{Picked: p}, nil)
	for _, c := range all.Rows {
		if c.Key == "size+" {
			assert.True(t, c.Total.GreaterThan(decimal.Zero))
			assert.Equal(t, larger.Total.Sub(now.Total).String(), c.Total.String())
		}
	}
}

func TestALargerPinIsPricedWithThePostsItWants(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	d := &p.Project.Order.Designs[0]
	for _, mm := range []float64{34, 35, 36} { // one post up to about 36 mm (common practice, no published source)
		d.Size = sizeOf(mm)
		all, _ := ask[wire.Choices](t, s, "choices", wire.ChoicesAsk{Picked: p}, nil)
		d.Size = sizeOf(mm + 3)
		check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
		assert.Equal(t, 2, check.Back.Chosen)
		assert.Equal(t, "3 mm larger, which takes two posts", all.Rows[2].What)
	}
}

func TestADesignWithoutAPriceHasNoChoices(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	p.Project.Order.Designs[0].Versions[0].Quantity = 1
	all, _ := ask[wire.Choices](t, s, "choices", wire.ChoicesAsk{Picked: p}, nil)
	assert.NotNil(t, all.Rows)
	assert.Empty(t, all.Rows)
}
