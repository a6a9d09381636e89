package calls

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/demand"
	"badgewright/sizing/left"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// twoVersions is an order of one die in two versions, the second dearer.
func twoVersions(t *testing.T, together run.Together) (wire.PricedOrder, []demand.VersionGuess) {
	t.Helper()
	of := pricedPin(t)
	of.List.Pieces.Together = together
	second := of.Order.Items[0]
	second.Version, second.Enamels = "night", second.Enamels+4
	of.Order.Items = append(of.Order.Items, second)
	of.Order.Items[0].Quantity, of.Order.Items[1].Quantity = 60, 20
	guess := func(low, likely, high int) demand.Guess {
		return demand.Guess{Kind: demand.ByThree, Low: low, Likely: likely, High: high}
	}
	return of, []demand.VersionGuess{{Name: "day", Guess: guess(40, 70, 120)}, {Name: "night", Guess: guess(10, 30, 60)}}
}

func ordered(of wire.PricedOrder, each ...int) run.Wanted {
	w := run.Wanted{Terms: of.Order.Terms}
	for i, n := range each {
		it := of.Order.Items[i]
		if it.Quantity = n; n > 0 {
			w.Items = append(w.Items, it)
		}
	}
	return w
}

// The bill of an order of two versions is that of the order itself, shared out
// as the answer says.
func TestVersionsTogetherArePricedAsTheOrderTheyAre(t *testing.T) {
	of, versions := twoVersions(t, run.ByDesign)
	w := wire.DemandAsk{Bill: wire.BillOf{Priced: &of}, Versions: versions, Stake: stakeOf("7.35"), Most: 260}
	a, _ := ask[wire.Demand](t, NewSession(), "demand", w, nil)
	require.Empty(t, a.Faults)
	require.Len(t, a.Answers, 1)
	require.NotEmpty(t, a.Answers[0].Rows)
	for _, row := range append(a.Answers[0].Rows, a.Answers[0].Best) {
		require.Len(t, row.Versions, 2)
		want, err := run.Total(of.List, ordered(of, row.Versions[0].Quantity, row.Versions[1].Quantity))
		require.NoError(t, err)
		assert.Equal(t, want.String(), row.Bill.String(), "%d pieces", row.Quantity)
		assert.False(t, row.Worth.GreaterThan(a.Answers[0].Best.Worth))
	}
	assert.Equal(t, a.Answers[0].Says, a.Says)
}

// One version after another: the bills add up to that of the whole order, the
// die and the parcel paid once.
func TestBillsOfVersionsApartAddUpToTheOrder(t *testing.T) {
	of, versions := twoVersions(t, run.ByVersion)
	w := wire.DemandAsk{Bill: wire.BillOf{Priced: &of}, Versions: versions, Stake: stakeOf("7.35"), Apart: true}
	a, _ := ask[wire.Demand](t, NewSession(), "demand", w, nil)
	require.Empty(t, a.Faults)
	require.Len(t, a.Answers, 2)
	first, second := a.Answers[0].Best, a.Answers[1].Best
	require.Positive(t, second.Quantity)
	want, err := run.Total(of.List, ordered(of, first.Quantity, second.Quantity))
	require.NoError(t, err)
	assert.Equal(t, want.String(), first.Bill.Add(second.Bill).String())
	assert.Contains(t, a.Says, "of night leave most on average: about EUR\u00a0")
	// The second is the best of all numbers beside the first.
	o := orderingOf(&of, "EUR")
	o.beside = ordered(of, first.Quantity).Items
	b, err := o.bills(of.Order.Items[1:])
	require.NoError(t, err)
	all, f := demand.Ask(demand.Question{Versions: versions[1:], Stake: stakeOf("7.35"), Bill: b.bill, Most: 500})
	require.Empty(t, f)
	assert.Equal(t, all.Best.Quantity, second.Quantity)
}

// A version for which nothing is worth ordering leaves the die to the next.
func TestADieIsPaidByTheFirstThatIsOrdered(t *testing.T) {
	of, versions := twoVersions(t, run.ByVersion)
	versions[0].Guess = demand.Guess{Kind: demand.ByThree, Low: 0, Likely: 0, High: 1}
	w := wire.DemandAsk{Bill: wire.BillOf{Priced: &of}, Versions: versions, Stake: stakeOf("12"), Apart: true}
	a, _ := ask[wire.Demand](t, NewSession(), "demand", w, nil)
	require.Empty(t, a.Faults)
	require.Zero(t, a.Answers[0].Best.Quantity)
	n := a.Answers[1].Best.Quantity
	require.Positive(t, n)
	want, err := run.Total(of.List, ordered(of, 0, n))
	require.NoError(t, err)
	assert.Equal(t, want.String(), a.Answers[1].Best.Bill.String())
}

// Sold in the order's second currency, a bill is the order's total brought to
// it, at the rate that was typed.
func TestSellingInTheSecondCurrency(t *testing.T) {
	of := pricedPin(t)
	d := decimal.RequireFromString
	of.Order.Terms.Into = &run.Exchange{Currency: "GBP", MinorDigits: 2, Rate: d("0.85")}
	total, err := run.Total(of.List, of.Order)
	require.NoError(t, err)
	plan := left.Usual()
	plan.Currency = "GBP"
	a, _ := ask[wire.Left](t, NewSession(), "left", wire.LeftAsk{Plan: plan, Priced: &of}, nil)
	require.Empty(t, a.Faults)
	assert.Equal(t, "GBP", a.Plan.Currency)
	assert.Equal(t, total.Mul(d("0.85")).Round(2).String(), a.Plan.Bill.String())

	stake := stakeOf("7")
	stake.Currency = "GBP"
	p, _ := ask[wire.Presale](t, NewSession(), "presale", wire.PresaleAsk{Name: "Lamp", Bill: wire.BillOf{Priced: &of}, Stake: stake, Most: 300}, nil)
	require.Empty(t, p.Faults)
	assert.Contains(t, p.Goals.Says, "GBP\u00a0")
	it := of.Order.Items[0]
	it.Quantity = p.Goals.Rows[0].Order
	total, err = run.Total(of.List, run.Wanted{Items: []run.Item{it}, Terms: of.Order.Terms})
	require.NoError(t, err)
	assert.Equal(t, total.Mul(d("0.85")).Round(2).String(), p.Goals.Rows[0].Bill.String())
}

// Pre-orders of one design are shared among its versions as the order has them.
func TestPreordersAreSharedAmongVersions(t *testing.T) {
	of, _ := twoVersions(t, run.ByDesign)
	p, _ := ask[wire.Presale](t, NewSession(), "presale", wire.PresaleAsk{Name: "Lamp", Bill: wire.BillOf{Priced: &of, Items: []int{0, 1}}, Stake: stakeOf("7"), Most: 300}, nil)
	require.Empty(t, p.Faults)
	row := p.Goals.Rows[0]
	want, err := run.Total(of.List, ordered(of, (3*row.Order+2)/4, row.Order-(3*row.Order+2)/4)) // 60 to 20
	require.NoError(t, err)
	assert.Equal(t, want.String(), row.Bill.String())
}

func TestSharedByWeights(t *testing.T) {
	assert.Equal(t, []int{38, 12}, sharedBy([]int{60, 20}, 50)) // 37.5 and 12.5: the tie goes to the first
	assert.Equal(t, []int{1, 0, 0}, sharedBy([]int{1, 1, 1}, 1))
	assert.Equal(t, []int{0}, sharedBy([]int{5}, 0))
}
