package demand

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzAsk looks for figures that slip past the check: whatever is asked, there
// is a sentence for a field, or an answer without anything that is no number.
func FuzzAsk(f *testing.F) {
	f.Add(20, 60, 180, 0, 0, 0, 1.0, 1.0, int64(735), int64(50), int64(800), int64(480), 25)
	f.Add(0, 0, 0, 22, 9, 21, 0.5, 3.0, int64(1), int64(0), int64(10000), int64(1), 1)
	f.Add(-1, 5, 2, 1, 0, 900, math.NaN(), math.Inf(1), int64(-1), int64(1<<50), int64(-1), int64(-9), -3)
	f.Fuzz(func(t *testing.T, low, likely, high, orders, gone, days int, shape, rate float64, each, leftover, flawed, price int64, from int) {
		g := Guess{ByThree, low, likely, high, orders, gone, days, DemandPrior{shape, rate}}
		if orders != 0 || gone != 0 {
			g.Kind = ByOrders
		}
		bill, breaks, faults := StepBill([]BillStep{{from, decimal.New(price, -2), money("100")}}, 2, "steps")
		if len(faults) > 0 {
			return
		}
		s := Stake{Currency: "EUR", MinorDigits: 2, Each: decimal.New(each, -2), Leftover: decimal.New(leftover, -2), SecondsShare: decimal.New(flawed, -2)}
		a, faults := Ask(Question{Versions: []VersionGuess{{Guess: g}}, Stake: s, Bill: bill, Most: 400, Breaks: breaks, Look: breaks})
		if len(faults) > 0 {
			require.Nil(t, a)
			for _, x := range faults {
				require.NotEmpty(t, x.Field)
				require.NotEmpty(t, x.What)
			}
			return
		}
		_, err := json.Marshal(a)
		require.NoError(t, err, "JSON has no NaN")
		for _, p := range []float64{a.Best.SellOut, a.Best.TenthLeft, a.Best.Lose} {
			require.True(t, p >= 0 && p <= 1)
		}
	})
}

// The same to the last bit natively and in WebAssembly: these figures are
// compared in both.
func TestTheSameBitsEverywhere(t *testing.T) {
	d, f := orders(137, 31, 47).Distribution("guess")
	require.Empty(t, f)
	assert.Equal(t, []uint64{0x40753affffffffff, 0x3fe63177de5a1ba1, 0x407471b159648688}, []uint64{math.Float64bits(d.Mean()), math.Float64bits(d.AtMost(350)), math.Float64bits(d.Sold(333))})
}
