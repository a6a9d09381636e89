package demand

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func presale() Presale {
	return Presale{Name: "Lighthouse", Stake: stake(), Bill: pins, Most: 1000}
}

// Worked by hand with plain figures: each pre-order brings 7.35, of 25 pieces
// at 4.80 and a die of 100 there are 23 good ones.
func TestPaidPreordersCoverTheBill(t *testing.T) {
	a, f := Cover(presale())
	require.Empty(t, f)
	r := a.Rows[0]
	// 31 buyers want 34 pieces (3 with flaws): 100 + 34 x 4.80 = 263.20, and
	// 31 x 7.35 = 227.85 falls short; 46 want 50: 100 + 50 x 2.90 = 245.
	assert.Equal(t, 46, r.Paid)
	assert.Equal(t, 50, r.Order)
	assert.Equal(t, "245", r.Bill.String())
	assert.Equal(t, "93.1", r.Over.String())
	assert.Equal(t, 46, r.Always)
	assert.Equal(t, -1.0, r.Chance)
	assert.Equal(t, "Lighthouse: 46 paid pre-orders cover the bill of EUR\u00a0245.00, for 50 pieces.", r.Says)
}

// Every number of pre-orders tried by the definition.
func TestCoveringIsThatOfTryingAll(t *testing.T) {
	for _, each := range []string{"3.20", "4.10", "5.55", "7.35", "19"} {
		p := presale()
		p.Stake.Each = money(each)
		p.Goals = []Goal{{"Buoy", 50, pins}, {"Harbour", 100, pins}}
		a, f := Cover(p)
		require.Empty(t, f)
		further := decimal.Zero
		for i, r := range a.Rows {
			if i > 0 {
				b, _ := pins(p.Goals[i-1].Quantity)
				further = further.Add(b)
			}
			first, always := -1, -1
			for n := 1; n <= p.Most; n++ {
				order := n
				for p.Stake.sellable(order) < n || order < 25 {
					order++
				}
				bill, ok := pins(order)
				require.True(t, ok)
				covers := p.Stake.Each.Mul(decimal.NewFromInt(int64(n))).GreaterThanOrEqual(bill.Add(further))
				if covers && first < 0 {
					first = n
				}
				if covers && always < 0 {
					always = n
				}
				if !covers {
					always = -1
				}
			}
			assert.Equal(t, first, r.Paid, "%s %s", each, r.Name)
			assert.Equal(t, always, r.Always, "%s %s", each, r.Name)
		}
	}
}

func TestAPresaleThatCannotCoverSaysSo(t *testing.T) {
	p := presale()
	p.Stake.Each, p.Stake.Leftover = money("1.20"), decimal.Zero
	g := orders(10, 5, 20)
	p.Guess = &g
	a, f := Cover(p)
	require.Empty(t, f)
	assert.Equal(t, -1, a.Rows[0].Paid)
	assert.Equal(t, -1.0, a.Rows[0].Chance)
	assert.Equal(t, "Lighthouse: no number of pre-orders up to 1000 covers the bill.", a.Says)
}

func TestTheChanceOfAGoalIsShown(t *testing.T) {
	p := presale()
	g := orders(22, 9, 21)
	p.Guess = &g
	a, f := Cover(p)
	require.Empty(t, f)
	d, _ := g.Distribution("")
	assert.InDelta(t, d.AtLeast(a.Rows[0].Paid), a.Rows[0].Chance, 1e-6)
	assert.Contains(t, a.Says, "As many come with a chance of")
}

func TestAPriceBreakCanTakeCoveringAwayAgain(t *testing.T) {
	p := presale()
	p.Stake.SecondsShare = decimal.Zero
	p.Stake.Each, p.Stake.Leftover = money("3.00"), decimal.Zero
	// 10 cost 29 and are covered; a die of their own from 11 on takes it away.
	p.Bill = func(n int) (decimal.Decimal, bool) {
		if n == 10 {
			return money("29"), true
		}
		return money("50").Add(decimal.NewFromInt(int64(n))), true
	}
	a, _ := Cover(p)
	assert.Equal(t, 10, a.Rows[0].Paid)
	assert.Equal(t, 25, a.Rows[0].Always)
	assert.Contains(t, a.Says, "can fall short again, up to 24")
}

func TestBadPresalesAreRefused(t *testing.T) {
	p := presale()
	p.Most, p.Stake.Each = -1, money("0.10")
	p.Goals = []Goal{{"Buoy", 0, pins}, {"Harbour", 10, pins}}
	g := three(3, 2, 1)
	p.Guess = &g
	_, f := Cover(p)
	require.Len(t, f, 6)
	assert.Equal(t, "goals[1].quantity", f[5].Field)
	assert.Equal(t, "10 pieces of Harbour have no price; give a number that can be ordered.", f[5].What)
}
