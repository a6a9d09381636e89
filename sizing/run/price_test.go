package run

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

func item(quantity int) Item {
	return Item{Design: "Lighthouse", NewDie: true, Longest: 32, Mean: 25, Enamels: 4, Fill: sizing.Soft, Posts: 1, Quantity: quantity}
}

func amounts(q Quote) map[string]string {
	m := map[string]string{}
	for _, l := range q.Lines {
		m[l.Key] = l.Amount.StringFixed(int32(q.MinorDigits))
	}
	return m
}

func tiers(t *testing.T) PriceList {
	b, err := os.ReadFile("../../testdata/pricelists/tiers.json")
	require.NoError(t, err)
	var l PriceList
	require.NoError(t, json.Unmarshal(b, &l))
	require.Empty(t, l.Validate())
	return l
}

// tier_break_pricing.csv: one-off orders, is the next tier cheaper (invented
// tiers, plain arithmetic done outside this project).
func TestTierBreaks(t *testing.T) {
	l := tiers(t)
	f, err := os.Open("../../testdata/reference/tier_break_pricing.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 20)
	for _, r := range rows[1:] {
		n, err := strconv.Atoi(r[0])
		require.NoError(t, err)
		checkTierText(t, l, r[1], r[2])
		q, err := Price(l, []Item{item(n)})
		require.NoError(t, err)
		assert.Equal(t, r[3], q.Total.StringFixed(2), "total at %d", n)
		more := CheaperMore(l, Wanted{Items: []Item{item(n)}})
		assert.Equal(t, r[6] == "True", len(more) == 1, "cheaper at %d", n)
		assert.Equal(t, len(more), len(q.Notes))
		if len(more) == 1 {
			assert.Equal(t, r[5], strconv.Itoa(more[0].Quantity), "quantity for %d", n)
			assert.Equal(t, r[4], more[0].Total.StringFixed(2), "least total for %d", n)
			assert.Contains(t, q.Notes[0], r[4])
		}
	}
}

func TestAsMuchForMoreIsNotCheaper(t *testing.T) {
	l := tiers(t)
	l.Pieces.Breaks = []Break{prices(1, "5"), prices(10, "4.5"), prices(20, "4")}
	assert.Empty(t, CheaperMore(l, Wanted{Items: []Item{item(9)}}))
	assert.Len(t, CheaperMore(l, Wanted{Items: []Item{item(19)}}), 1)
}

// checkTierText holds the price list of the test against the table's own words.
func checkTierText(t *testing.T, l PriceList, text, die string) {
	var parts []string
	for _, b := range l.Pieces.Breaks {
		parts = append(parts, fmt.Sprintf("%d+:%s", b.From, b.Unit[0].Value().StringFixed(2)))
	}
	require.Equal(t, text, strings.Join(parts, " "))
	require.Equal(t, die, l.Die.Flat.Value().StringFixed(1))
}

func TestEveryLineIsShownAndRoundedOnce(t *testing.T) {
	l := tiers(t)
	l.Pieces.Breaks = []Break{prices(1, "1.2345")}
	l.Colours.Further = Charge{Rate: money("3.3"), By: Percent}
	l.Colours.Fill.Listed = []KindCharge{kind(sizing.Hard, "12.5", Percent)}
	l.Back.Post, l.Shipping.Flat = apiece("0.0355"), money("12.345")
	it := item(7)
	it.Enamels, it.Fill, it.Posts = 6, sizing.Hard, 3
	q, err := Price(l, []Item{it})
	require.NoError(t, err)
	assert.Equal(t, map[string]string{
		"die":      "65.00",
		"pieces":   "8.64",  // 8.6415
		"colours":  "0.57",  // 7 x 1.2345 x 0.066 = 0.570339
		"hard":     "1.08",  // 7 x 0.1543125 = 1.0801875
		"post":     "0.50",  // 7 x 0.071 = 0.497
		"shipping": "12.35", // half away from zero
	}, amounts(q))
	assert.Equal(t, "88.14", q.Total.String())
	assert.Equal(t, "12.591", q.PerPiece.String()) // 12.5914...
	assert.Equal(t, "0.081477", q.Lines[2].Each.String())
	assert.Equal(t, "7\u00a0× USD\u00a00.081477", q.Lines[2].SumSays)
	assert.Equal(t, "USD\u00a00.57", q.Lines[2].Says)
	assert.Empty(t, q.Lines[0].SumSays, "the die is paid once")
	assert.Equal(t, "USD\u00a088.14", q.TotalSays)
	assert.Equal(t, "about USD\u00a012.591", q.EachSays)
}

func TestCurrenciesWithOtherDecimals(t *testing.T) {
	l := tiers(t)
	l.Currency, l.MinorDigits, l.Die.Flat = "JPY", 0, money("9800")
	l.Pieces.Breaks = []Break{prices(1, "123.5")}
	q, err := Price(l, []Item{item(3)})
	require.NoError(t, err)
	assert.Equal(t, "10171", q.Total.String()) // 9800 + 370.5 away from zero
	assert.Equal(t, "about JPY\u00a03390.3", About(q.PerPiece, q))
	l.Currency, l.MinorDigits = "KWD", 3
	q, err = Price(l, []Item{item(3)})
	require.NoError(t, err)
	assert.Equal(t, "KWD\u00a010\u00a0170.500", Amount(q.Total, q))
}

// Four enamels in the price; steep below a hundred pieces, flat above; the die
// not discounted with the pieces: common practice, no published source.
func TestDefaultListFollowsTheTrade(t *testing.T) {
	l := Default()
	require.Empty(t, l.Validate())
	assert.True(t, l.Invented)
	assert.Contains(t, l.Name, "invented")
	assert.Equal(t, 4, l.Colours.Included)
	for class := range l.Pieces.Sizes {
		at := func(n int) float64 {
			i, err := l.row(n)
			require.NoError(t, err)
			return l.Pieces.Breaks[i].Unit[class].Value().InexactFloat64()
		}
		assert.Greater(t, at(25)/at(100), 2.0, "steep below a hundred")
		assert.Less(t, at(100)/at(500), 1.4, "flat above")
		for i := 1; i < len(l.Pieces.Breaks); i++ {
			assert.True(t, l.Pieces.Breaks[i].Unit[class].Value().LessThan(l.Pieces.Breaks[i-1].Unit[class].Value()))
		}
	}
	few, err := Price(l, []Item{item(50)})
	require.NoError(t, err)
	many, err := Price(l, []Item{item(1000)})
	require.NoError(t, err)
	assert.Equal(t, amounts(few)["die"], amounts(many)["die"])
	assert.NotContains(t, amounts(few), "colours", "the fourth enamel is in the price")
}

func TestStepInWords(t *testing.T) {
	it := item(300)
	four, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	it.Enamels = 5
	five, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	assert.Equal(t, "about EUR\u00a00.11 a piece, EUR\u00a033.00 in all", Step(four, five))
	assert.Equal(t, "about EUR\u00a00.11 less a piece, EUR\u00a033.00 less in all", Step(five, four))
	it.Enamels = 3
	three, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	assert.Equal(t, "nothing more to pay", Step(three, four))
}

func TestWhatTheListCannotPriceIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*PriceList, *Item)
		says   string
	}{
		"too large":     {func(l *PriceList, i *Item) { i.Longest = 61 }, "This list has no price above 60 mm"},
		"no size":       {func(l *PriceList, i *Item) { i.Longest = 0 }, "no size"},
		"under minimum": {func(l *PriceList, i *Item) { i.Quantity = 24 }, "no order below 25 pieces"},
		"under break":   {func(l *PriceList, i *Item) { l.Least.Design = 0; i.Quantity = 1 }, "no price below 25 pieces, and 1 is asked for"},
		"no quantity":   {func(l *PriceList, i *Item) { i.Quantity = 0 }, "no number of pieces"},
		"below zero":    {func(l *PriceList, i *Item) { i.Quantity = -5 }, "no number of pieces"},
		"absurd":        {func(l *PriceList, i *Item) { i.Quantity = 2e9 }, "more than a price list"},
		"bad list":      {func(l *PriceList, i *Item) { l.Die.Flat = money("-1") }, "-1 is below zero"},
	} {
		l, it := Default(), item(100)
		c.change(&l, &it)
		q, err := Price(l, []Item{it})
		var r *reduce.Refusal
		if assert.ErrorAs(t, err, &r, name) {
			assert.Contains(t, err.Error(), c.says, name)
			assert.NotEmpty(t, r.Do, name)
			assert.Empty(t, q.Lines, name)
		}
	}
	_, err := Price(Default(), nil)
	assert.Error(t, err)
}

func TestSizeClassesGoByTheListsMeasure(t *testing.T) {
	l := Default()
	it := item(100)
	it.Longest, it.Mean = 38, 30
	class, err := l.class(&it)
	require.NoError(t, err)
	assert.Equal(t, unit.MM(38), l.Pieces.Sizes[class])
	l.Pieces.SizeBy = sizing.ByMean
	class, err = l.class(&it)
	require.NoError(t, err)
	assert.Equal(t, unit.MM(30), l.Pieces.Sizes[class])
}

func TestSeveralVersionsShareTheMinimumOfADesign(t *testing.T) {
	l := Default()
	l.Pieces.Breaks = append([]Break{prices(1, "9", "9", "9", "9", "9")}, l.Pieces.Breaks...)
	a, b := item(15), item(15)
	a.Version, b.Version, b.NewDie = "day", "night", false
	q, err := Price(l, []Item{a, b})
	require.NoError(t, err)
	assert.Equal(t, 30, q.Pieces)
	dies := 0
	for _, line := range q.Lines {
		if line.Key == KeyDie {
			dies++
		}
	}
	assert.Equal(t, 1, dies)
	assert.Contains(t, q.Lines[1].What, "(Lighthouse, day)")
	b.Design = "Buoy"
	_, err = Price(l, []Item{a, b})
	assert.Error(t, err)
}

func TestAListSurvivesJSON(t *testing.T) {
	b, err := json.Marshal(Default())
	require.NoError(t, err)
	var l PriceList
	require.NoError(t, json.Unmarshal(b, &l))
	want, err := Price(Default(), []Item{item(137)})
	require.NoError(t, err)
	got, err := Price(l, []Item{item(137)})
	require.NoError(t, err)
	assert.True(t, want.Total.Equal(got.Total))
}

func BenchmarkPrice(b *testing.B) {
	l := Default()
	for b.Loop() {
		if _, err := Price(l, []Item{item(137)}); err != nil {
			b.Fatal(err)
		}
	}
}
