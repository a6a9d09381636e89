package run

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// plainly scales an item and leaves its posts.
func plainly(l PriceList, it Item) Sized {
	return func(size unit.MM) (Item, error) {
		k := size / l.measure(&it)
		it := it
		it.Longest, it.Mean = it.Longest*k, it.Mean*k
		return it, nil
	}
}

func choicesOf(l PriceList, it Item) map[string]string {
	words := map[string]string{}
	for _, c := range Choices(l, Wanted{Items: []Item{it}}, 0, plainly(l, it)) {
		words[c.Key] = strings.ReplaceAll(c.What+": "+c.PieceSays+" | "+c.TotalSays+c.Why, "\u00a0", " ")
	}
	return words
}

func TestChoicesFromWhereTheDesignStands(t *testing.T) {
	assert.Equal(t, map[string]string{
		"colour+":  "one colour more: EUR 0.11 more | EUR 11.00 more",
		"colour-":  "one colour fewer: the same | the same",
		"size+":    "3 mm larger: the same | the same",                             // 35 mm is still up to 38
		"size-":    "3 mm smaller: EUR 0.24 less | EUR 24.00 less",                 // 29 mm: 1.48 instead of 1.72
		"fill":     "hard enamel instead of soft: EUR 0.206 more | EUR 20.64 more", // 12 % of 1.72
		"fancy+":   "one colour more in a fancy fill: EUR 0.06 more | EUR 6.00 more",
		"printed+": "one colour more printed on top: EUR 0.26 more | EUR 26.00 more", // 18 once, and 0.08
		"post+":    "two posts instead of one: EUR 0.09 more | EUR 9.00 more",        // second post
		"card":     "with a backing card: EUR 0.39 more | EUR 39.00 more",            // 22 once, and 0.17
		"quantity": "200 pieces instead of 100: EUR 0.70 less | EUR 132.00 more",     // 200 x 1.52 + 100 against 100 x 1.72 + 100
	}, choicesOf(Default(), item(100)))
}

// Every difference is that of the two quotes, made one by one.
func TestAChoiceIsTheDifferenceOfTwoQuotes(t *testing.T) {
	l, it := Default(), item(180)
	it.Fill, it.Posts, it.Enamels = sizing.Hard, 2, 6
	now, err := Price(l, []Item{it})
	require.NoError(t, err)
	change := map[string]func(*Item){
		"colour+": func(o *Item) { o.Enamels = 7 }, "colour-": func(o *Item) { o.Enamels = 5 },
		"size+": func(o *Item) { o.Longest = 35 }, "size-": func(o *Item) { o.Longest = 29 },
		"fill": func(o *Item) { o.Fill = sizing.Soft }, "fancy+": func(o *Item) { o.Fancy = []sizing.Finish{sizing.Pearl} },
		"printed+": func(o *Item) { o.Printed = 1 }, "post+": func(o *Item) { o.Posts = 3 }, "post-": func(o *Item) { o.Posts = 1 },
		"card":     func(o *Item) { o.Card = true },
		"quantity": func(o *Item) { o.Quantity = 200 },
	}
	all := Choices(l, Wanted{Items: []Item{it}}, 0, plainly(l, it))
	require.Len(t, all, len(change))
	for _, c := range all {
		other := it
		change[c.Key](&other)
		then, err := Price(l, []Item{other})
		require.NoError(t, err)
		require.True(t, c.Known, c.Key)
		assert.True(t, then.Total.Sub(now.Total).Equal(c.Total), "%s: %s", c.Key, c.Total)
		exact := then.Total.InexactFloat64()/float64(then.Pieces) - now.Total.InexactFloat64()/float64(now.Pieces)
		assert.InDelta(t, exact, c.PerPiece.InexactFloat64(), 0.000501, c.Key)
	}
}

func TestChoicesThatCannotBePricedSayWhy(t *testing.T) {
	big := item(100)
	big.Longest, big.Mean = 59, 50
	assert.Contains(t, choicesOf(Default(), big)["size+"], "no price above 60 mm")
	assert.Empty(t, Choices(Default(), Wanted{Items: []Item{item(0)}}, 0, plainly(Default(), item(0))))
}

func TestChoicesStopWhereThereIsNothingToChoose(t *testing.T) {
	one := item(2000)
	one.Enamels, one.Longest, one.Mean = 1, 7, 7
	w := choicesOf(Default(), one)
	for _, key := range []string{"colour-", "size-", "post-", "quantity"} {
		assert.NotContains(t, w, key)
	}
	many := item(100)
	many.Enamels, many.Posts = reduce.MaxCount, 3
	w = choicesOf(Default(), many)
	assert.NotContains(t, w, "colour+")
	assert.NotContains(t, w, "post+")
	assert.Contains(t, w["post-"], "two posts instead of three")
	bare := item(100)
	bare.Fill = sizing.Unfilled
	w = choicesOf(Default(), bare)
	assert.NotContains(t, w, "colour+")
	assert.NotContains(t, w, "fill")
}

func TestALargerPinThatTakesAnotherPostSaysSo(t *testing.T) {
	l, it := Default(), item(100)
	for _, c := range Choices(l, Wanted{Items: []Item{it}}, 0, func(size unit.MM) (Item, error) {
		other, _ := plainly(l, it)(size)
		if size > 34 {
			other.Posts = 2
		}
		return other, nil
	}) {
		switch c.Key {
		case "size+":
			assert.Equal(t, "3 mm larger, which takes two posts", c.What)
			assert.Equal(t, "0.09", c.PerPiece.String())
		case "size-":
			assert.Equal(t, "3 mm smaller", c.What)
		}
	}
}
