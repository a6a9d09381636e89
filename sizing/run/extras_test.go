package run

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

// listed gives the words, the sum and the amount of every line with a key.
func listed(q Quote, key string) string {
	for _, l := range q.Lines {
		if l.Key == key {
			return strings.ReplaceAll(strings.TrimSpace(l.What+" | "+l.SumSays+" | "+l.Says), "\u00a0", " ")
		}
	}
	return ""
}

// Two colours printed and three fills set apart, worked by hand. That printing
// is charged apart and fancy fills by the colour is common practice, no
// published source.
func TestPrintAndFancyFillsAreCharged(t *testing.T) {
	l, it := Default(), item(100) // up to 38 mm from 100 pieces: 1.72 each
	l.Colours.Fancy.Others, l.Colours.Printed, l.Colours.PrintSetUp = apiece("0.065"), Charge{money("2.5"), Percent}, money("18.50")
	it.Enamels, it.Printed = 6, 2
	it.Fancy = []sizing.Finish{sizing.Glitter, sizing.Pearl, sizing.Glitter}
	q, err := Price(l, []Item{it})
	require.NoError(t, err)
	assert.Equal(t, map[string]string{
		"die":          "68.00",
		"pieces":       "172.00",
		"colours":      "22.00", // 2 further, fancy or not: 100 x 0.22
		"fancy":        "19.50", // 100 x 3 x 0.065
		"print set-up": "37.00", // 2 x 18.50
		"printed":      "8.60",  // 100 x 2 x 2.5 % of 1.72
		"shipping":     "32.00",
	}, amounts(q))
	assert.Equal(t, "359.1", q.Total.String())
	assert.Equal(t, "Fancy fills: 2 glitter, pearl | 100 × EUR 0.195 | EUR 19.50", listed(q, KeyFancy))
	assert.Equal(t, "Print set-up for 2 colours, once |  | EUR 37.00", listed(q, KeyPrintSetUp))
	assert.Equal(t, "2 colours printed on top | 100 × EUR 0.086 | EUR 8.60", listed(q, KeyPrinted))
}

func TestOneOfEachInWords(t *testing.T) {
	it := item(50)
	it.Printed, it.Fancy = 1, []sizing.Finish{sizing.Glow}
	q, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	assert.Equal(t, "Fancy fill: glow | 50 × EUR 0.06 | EUR 3.00", listed(q, KeyFancy))
	assert.Equal(t, "Print set-up, once |  | EUR 18.00", listed(q, KeyPrintSetUp))
	assert.Equal(t, "1 colour printed on top | 50 × EUR 0.08 | EUR 4.00", listed(q, KeyPrinted))
}

// What is ordered is listed even where a maker charges nothing for it; what is
// not ordered is not.
func TestWhatIsFreeIsListed(t *testing.T) {
	l, it := tiers(t), item(100)
	plain, err := Price(l, []Item{it})
	require.NoError(t, err)
	for _, key := range []string{KeyFancy, KeyPrinted, KeyPrintSetUp} {
		assert.Empty(t, listed(plain, key), key)
	}
	it.Printed, it.Fancy = 1, []sizing.Finish{sizing.Translucent}
	q, err := Price(l, []Item{it})
	require.NoError(t, err)
	assert.Contains(t, listed(q, KeyFancy), "USD 0.00")
	assert.Contains(t, listed(q, KeyPrinted), "USD 0.00")
	assert.Empty(t, listed(q, KeyPrintSetUp), "there is nothing to pay once")
	assert.True(t, q.Total.Equal(plain.Total))
}

// A pin without fill has no fancy fill, but may be printed; the set-up is paid
// with the die and not again.
func TestWhatIsNotChargedTwiceOrAtAll(t *testing.T) {
	it := item(100)
	it.Printed, it.Fancy, it.Fill, it.NewDie = 1, []sizing.Finish{sizing.Pearl}, sizing.Unfilled, false
	q, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	assert.Equal(t, map[string]string{"pieces": "172.00", "printed": "8.00", "shipping": "32.00"}, amounts(q))
	it.Printed = -1
	_, err = Price(Default(), []Item{it})
	assert.ErrorContains(t, err, "fewer than no colours")
}

// A stamp on the back is cut with the die: paid once and not on a reorder
// (common practice, no published source), and listed where it is free.
func TestAStampOnTheBackIsPaidOnce(t *testing.T) {
	it := item(100)
	it.Stamped = true
	q, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	assert.Equal(t, "Stamp on the back, once |  | EUR 15.00", listed(q, KeyStamp))
	plain, err := Price(Default(), []Item{item(100)})
	require.NoError(t, err)
	assert.Equal(t, "15", q.Total.Sub(plain.Total).String())
	assert.Empty(t, listed(plain, KeyStamp))
	it.NewDie = false
	again, err := Price(Default(), []Item{it})
	require.NoError(t, err)
	assert.Empty(t, listed(again, KeyStamp))
	it.NewDie = true
	free, err := Price(tiers(t), []Item{it})
	require.NoError(t, err)
	assert.Contains(t, listed(free, KeyStamp), "USD 0.00")
}

func TestChoicesOfFillAndPrint(t *testing.T) {
	it := item(100)
	it.Printed, it.Enamels = 1, 2
	it.Fancy = []sizing.Finish{sizing.Glitter, sizing.Pearl}
	w := choicesOf(Default(), it)
	assert.NotContains(t, w, "fancy+", "every enamel is fancy already")
	assert.Equal(t, "one colour fewer in a fancy fill: EUR 0.06 less | EUR 6.00 less", w["fancy-"])
	assert.Equal(t, "one colour more printed on top: EUR 0.26 more | EUR 26.00 more", w["printed+"]) // 18 + 100 x 0.08
	assert.Equal(t, "one colour fewer printed on top: EUR 0.26 less | EUR 26.00 less", w["printed-"])
	assert.Equal(t, "one colour fewer: EUR 0.06 less | EUR 6.00 less", w["colour-"], "a fancy one")
	assert.Equal(t, []sizing.Finish{sizing.Glitter, sizing.Pearl}, it.Fancy)
	it.Fill = sizing.Unfilled
	assert.NotContains(t, choicesOf(Default(), it), "fancy-")
}
