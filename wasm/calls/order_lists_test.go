package calls

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/deduce"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// A project becomes an order that needs no drawing, and its bill is that of the
// versions together.
func TestAWholeProjectIsPricedTogether(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	d := &p.Project.Order.Designs[0]
	d.Size = sizeOf(32)
	alone, _ := ask[run.Quote](t, s, "quote", wire.QuoteAsk{Picked: p}, nil)
	night := d.Versions[0]
	night.ID, night.Name = "version-2", "Night"
	d.Versions = append(d.Versions, night)
	p.Project.Order.Designs = append(p.Project.Order.Designs, sizing.Design{Name: "Buoy"})
	got, _ := ask[wire.OrderItems](t, s, "orderitems", wire.OrderItemsAsk{Project: p.Project}, nil)
	require.Len(t, got.Order.Items, 2)
	assert.Equal(t, []wire.OrderPlace{{Design: 0, Version: 0}, {Design: 0, Version: 1}}, got.Places)
	assert.Equal(t, []string{"Buoy has no drawing yet."}, got.Left)
	assert.Greater(t, float64(got.Order.Items[0].Weight), 1.0)

	list := p.Project.Order.PriceLists[0]
	both, _ := ask[run.Quote](t, s, "orderquote", wire.OrderQuoteAsk{List: list, Order: got.Order}, nil)
	fixed := list.Die.Flat.Value().Add(list.Shipping.Flat.Value())
	want := alone.Total.Sub(fixed).Mul(decimal.NewFromInt(2)).Add(fixed)
	assert.Equal(t, want.String(), both.Total.String(), "one die and one parcel for both")
	assert.Equal(t, 1, both.Lines[2].Item)
	assert.Empty(t, both.Needs)

	list.Colours.Further = run.Charge{}
	got.Order.Items[0].Enamels = 9
	open, _ := ask[run.Quote](t, s, "orderquote", wire.OrderQuoteAsk{List: list, Order: got.Order}, nil)
	require.Len(t, open.Needs, 1)
	assert.Equal(t, "colours.further.rate", open.Needs[0].Cell)
}

func TestChoicesWithinAnOrderCountAllOfIt(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	d := &p.Project.Order.Designs[0]
	night := d.Versions[0]
	night.ID, night.Name = "version-2", "Night"
	d.Versions = append(d.Versions, night)
	d.Versions[0].Quantity, d.Versions[1].Quantity = 110, 70
	list := &p.Project.Order.PriceLists[0]
	list.Pieces.Together = run.ByOrder
	all, _ := ask[wire.OrderItems](t, s, "orderitems", wire.OrderItemsAsk{Project: p.Project}, nil)
	priced := func(enamels, quantity int) decimal.Decimal {
		order := run.Wanted{Items: []run.Item{all.Order.Items[0], all.Order.Items[1]}}
		order.Items[1].Enamels, order.Items[1].Quantity = enamels, quantity
		q, _ := ask[run.Quote](t, s, "orderquote", wire.OrderQuoteAsk{List: *list, Order: order}, nil)
		return q.Total
	}
	p.Version = 1
	enamels := all.Order.Items[1].Enamels
	got, _ := ask[wire.Choices](t, s, "choices", wire.ChoicesAsk{Picked: p, Order: &all.Order, Item: 1}, nil)
	byKey := map[string]run.Choice{}
	for _, c := range got.Rows {
		byKey[c.Key] = c
	}
	// 180 pieces are counted together; the next break, 200, wants 20 more of this version.
	assert.Equal(t, "90 pieces instead of 70", byKey["quantity"].What)
	assert.Equal(t, priced(enamels, 90).Sub(priced(enamels, 70)).String(), byKey["quantity"].Total.String())
	assert.Equal(t, priced(enamels+1, 70).Sub(priced(enamels, 70)).String(), byKey["colour+"].Total.String())

	buys, _ := ask[wire.Buys](t, s, "buys", wire.BuysAsk{Picked: p, Order: &all.Order, Item: 1}, nil)
	for _, r := range buys.Rows {
		assert.Equal(t, unit.Money(priced(r.Count, 70), "EUR", 2), r.Total)
	}
	_, err := s.Do("choices", []byte(`{"picked":`+jsonOf(t, p)+`,"order":{"items":[],"terms":{}},"item":0}`), Job{})
	assert.ErrorContains(t, err, "not in the order")
}

func jsonOf(t *testing.T, v any) string {
	t.Helper()
	text, err := json.Marshal(v)
	require.NoError(t, err)
	return string(text)
}

func TestListsAreCheckedAddedAndCompared(t *testing.T) {
	s := NewSession()
	project := BlankProject()
	added, _ := ask[wire.NewList](t, s, "newlist", wire.NewListAsk{Project: project, Name: " Second maker ", Currency: "usd"}, nil)
	assert.Equal(t, "Second maker", added.List.Name)
	assert.Equal(t, "USD", added.List.Currency)
	check, _ := ask[wire.ListCheck](t, s, "listcheck", wire.ListCheckAsk(added), nil)
	assert.Equal(t, "pieces.sizes", check.Cells[0].Cell)

	block := "pieces\t30 mm\t40 mm\n50\t$2.00\t$2.20\n100\t$1.50\t$1.70\n"
	read, _ := ask[wire.PriceFileRead](t, s, "pricefile", wire.PriceFileAsk{Text: block, Into: added.List}, nil)
	require.Empty(t, read.Problems)
	assert.Equal(t, "2 quantities by 2 sizes read; every cell is in order.", read.Words)
	bad, _ := ask[wire.PriceFileRead](t, s, "pricefile", wire.PriceFileAsk{Text: strings.Replace(block, "$2.20", "2,200", 1), Into: added.List}, nil)
	require.Len(t, bad.Problems, 1)
	assert.Equal(t, [2]int{2, 3}, [2]int{bad.Problems[0].Row, bad.Problems[0].Column})

	written, file := ask[wire.PriceFileWritten](t, s, "pricefilewrite", wire.PriceFileWriteAsk{List: read.List}, nil)
	assert.Equal(t, "Second maker.csv", written.FileName)
	again, _ := ask[wire.PriceFileRead](t, s, "pricefile", wire.PriceFileAsk{Into: added.List}, file)
	assert.Empty(t, again.Problems)
	assert.Equal(t, "2.2", again.List.Pieces.Breaks[0].Unit[1].String())

	far := again.List
	far.Die.Flat, far.Shipping.Flat = run.Of(decimal.NewFromInt(50)), run.Of(decimal.NewFromInt(40))
	order := run.Wanted{Items: []run.Item{{Design: "Lamp", NewDie: true, Longest: 32, Mean: 30, Quantity: 100}}}
	askFor := wire.MakersAsk{Lists: []run.PriceList{project.Order.PriceLists[0], far}, Order: order, UpTo: 1000}
	text, err := json.Marshal(askFor)
	require.NoError(t, err)
	_, err = s.Do("makers", text, Job{})
	assert.ErrorContains(t, err, "there is no rate to EUR")
	askFor.Rates = []wire.MakerRate{{Currency: "USD", Rate: decimal.RequireFromString("0.9"), Dated: "2026-11-26"}}
	c, _ := ask[run.Comparison](t, s, "makers", askFor, nil)
	require.Len(t, c.Makers, 2)
	assert.Equal(t, "EUR\u00a0234.00", c.Makers[1].Now.TotalSays) // 0.9 x (50 + 170 + 40)
	assert.NotEmpty(t, c.Ranges)
}

func TestAListIsProposedFromQuotes(t *testing.T) {
	s := NewSession()
	base := BlankProject().Order.PriceLists[0]
	got, _ := ask[deduce.Deduction](t, s, "fromquotes", wire.FromQuotesAsk{Base: base, Text: "150 at 30 mm with 3 colours: 412.50\n150 at 30 mm with 3 colours without die: 345\nfor nothing"}, nil)
	assert.True(t, got.Agrees)
	assert.Equal(t, "EUR\u00a067.50", got.Entries[0].Says)
	assert.Equal(t, base.ID, got.List.ID)
	assert.False(t, got.List.Invented)
	require.Len(t, got.Mistakes, 1)
	assert.Equal(t, 3, got.Mistakes[0].Line)
	require.NotNil(t, got.Next)
	check, _ := ask[wire.ListCheck](t, s, "listcheck", wire.ListCheckAsk{List: got.List}, nil)
	assert.Empty(t, check.Cells)
	order := run.Wanted{Items: []run.Item{{NewDie: true, Longest: 30, Enamels: 3, Quantity: 150}}}
	q, _ := ask[run.Quote](t, s, "orderquote", wire.OrderQuoteAsk{List: got.List, Order: order}, nil)
	assert.Equal(t, "412.5", q.Total.String())
	require.Len(t, q.Needs, 1)
	assert.Equal(t, "shipping.flat", q.Needs[0].Cell, "no quote said what shipping costs")
}
