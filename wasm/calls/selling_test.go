package calls

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/days"
	"badgewright/sizing/demand"
	"badgewright/sizing/left"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// pricedPin is an opened roundel as the calls of the order are told of it.
func pricedPin(t *testing.T) wire.PricedOrder {
	t.Helper()
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	items, _ := ask[wire.OrderItems](t, s, "orderitems", wire.OrderItemsAsk{Project: p.Project}, nil)
	list, err := listOf(&p.Project)
	require.NoError(t, err)
	return wire.PricedOrder{List: list, Order: items.Order}
}

func stakeOf(each string) demand.Stake {
	return demand.Stake{Currency: "EUR", MinorDigits: 2, Each: decimal.RequireFromString(each)}
}

func TestWhatIsLeftIsReckonedFromThePriceList(t *testing.T) {
	of := pricedPin(t)
	plan := left.Usual()
	plan.Grams = float64(of.Order.Items[0].Weight)
	a, _ := ask[wire.Left](t, NewSession(), "left", wire.LeftAsk{Plan: plan, Priced: &of}, nil)
	require.Empty(t, a.Faults)
	require.NotNil(t, a.Left)
	total, _ := run.Total(of.List, of.Order)
	assert.Equal(t, total.String(), a.Plan.Bill.String())
	assert.Equal(t, of.Order.Items[0].Quantity, a.Plan.Pieces)
	assert.Equal(t, of.Order.Items[0].Quantity, a.Left.Total.Count)
	plan.Channels[0].Share = decimal.NewFromInt(400)
	a, _ = ask[wire.Left](t, NewSession(), "left", wire.LeftAsk{Plan: plan}, nil)
	assert.Nil(t, a.Left)
	require.Len(t, a.Faults, 2)
	assert.Equal(t, "channels[0].share", a.Faults[0].Field)
}

// The order found through the call is the one worth most of all that the price
// list can price, tried one by one.
func TestHowManyIsThatOfTryingTheList(t *testing.T) {
	of := pricedPin(t)
	guess := demand.Guess{Kind: demand.ByThree, Low: 20, Likely: 70, High: 130}
	a, _ := ask[wire.Demand](t, NewSession(), "demand", wire.DemandAsk{
		Bill: wire.BillOf{Priced: &of}, Versions: []demand.VersionGuess{{Guess: guess}}, Stake: stakeOf("7.35"), Most: 320,
	}, nil)
	require.Empty(t, a.Faults)
	require.Len(t, a.Answers, 1)
	b, err := orderingOf(&of, "EUR").bills(of.Order.Items[:1])
	require.NoError(t, err)
	all, f := demand.Ask(demand.Question{Versions: []demand.VersionGuess{{Guess: guess}}, Stake: stakeOf("7.35"), Bill: b.bill, Most: 320})
	require.Empty(t, f)
	assert.Equal(t, all.Best.Quantity, a.Answers[0].Best.Quantity)
	assert.Equal(t, all.Best.Left.String(), a.Answers[0].Best.Left.String())
	var rows []int
	for _, r := range a.Answers[0].Rows {
		rows = append(rows, r.Quantity)
	}
	assert.Equal(t, []int{25, 50, 100, 200, 300}, rows, "the list's breaks up to the most")
}

func TestVersionsApartShareTheDie(t *testing.T) {
	of := pricedPin(t)
	versions := []demand.VersionGuess{
		{Name: "gold", Guess: demand.Guess{Kind: demand.ByThree, Low: 60, Likely: 90, High: 120}},
		{Name: "silver", Guess: demand.Guess{Kind: demand.ByThree, Low: 60, Likely: 90, High: 120}},
	}
	of.Order.Items = append(of.Order.Items, of.Order.Items[0])
	w := wire.DemandAsk{Bill: wire.BillOf{Priced: &of}, Versions: versions, Stake: stakeOf("7.35"), Most: 300, Look: []int{100}, Apart: true}
	a, _ := ask[wire.Demand](t, NewSession(), "demand", w, nil)
	require.Empty(t, a.Faults)
	require.Len(t, a.Answers, 2)
	bill := func(i int) decimal.Decimal {
		for _, r := range a.Answers[i].Rows {
			if r.Quantity == 100 {
				return r.Bill
			}
		}
		return decimal.Zero
	}
	assert.True(t, bill(0).GreaterThan(bill(1)), "%s, %s", bill(0), bill(1))
	w.Bill.Items = []int{1, 7}
	none, _ := ask[wire.Demand](t, NewSession(), "demand", w, nil)
	require.Len(t, none.Faults, 1)
	assert.Equal(t, "The order has no item for version 2; add it to the order.", none.Faults[0].What)
	w.Bill.Items = nil
	w.Versions[1].Guess.High = 5
	a, _ = ask[wire.Demand](t, NewSession(), "demand", w, nil)
	assert.Empty(t, a.Answers)
	require.Len(t, a.Faults, 1)
	assert.Equal(t, "versions[1].guess.high", a.Faults[0].Field)
}

func TestAPresaleByStepsAndByTheList(t *testing.T) {
	of := pricedPin(t)
	d := decimal.RequireFromString
	steps := []demand.BillStep{{From: 50, Each: d("2.90"), Once: d("100")}}
	guess := demand.Guess{Kind: demand.ByOrders, Orders: 20, DaysGone: 5, DaysLeft: 10, Prior: demand.UsualPrior()}
	a, _ := ask[wire.Presale](t, NewSession(), "presale", wire.PresaleAsk{
		Name: "Lighthouse", Bill: wire.BillOf{Steps: steps}, Stake: stakeOf("7.35"), Guess: &guess,
		Goals: []wire.GoalAsk{{Name: "Buoy", Quantity: 100, Bill: wire.BillOf{Priced: &of}}},
	}, nil)
	require.Empty(t, a.Faults)
	require.Len(t, a.Goals.Rows, 2)
	assert.Equal(t, 34, a.Goals.Rows[0].Paid) // 50 x 2.90 + 100 = 245 = 33.3 x 7.35
	assert.Greater(t, a.Goals.Rows[1].Paid, 34)
	a, _ = ask[wire.Presale](t, NewSession(), "presale", wire.PresaleAsk{Stake: stakeOf("7")}, nil)
	require.Len(t, a.Faults, 1)
	assert.Equal(t, "bill.steps", a.Faults[0].Field)
	usd := of
	usd.List.Currency = "USD"
	a, _ = ask[wire.Presale](t, NewSession(), "presale", wire.PresaleAsk{
		Bill: wire.BillOf{Steps: steps}, Stake: stakeOf("7"), Goals: []wire.GoalAsk{{Name: "Buoy", Quantity: 100, Bill: wire.BillOf{Priced: &usd}}},
	}, nil)
	require.Len(t, a.Faults, 1)
	assert.Equal(t, "The bill of Buoy is in USD, that of the pre-sale in EUR; use one.", a.Faults[0].What)
}

func schedule() days.Schedule {
	w := days.Workdays{Weekend: days.Weekend()}
	return days.Schedule{Today: "2027-03-01", Launch: "2027-05-14", Here: w, Maker: w, Steps: days.Usual(), Slack: days.UsualSlack, Way: -1}
}

func TestDaysAndTheirFile(t *testing.T) {
	s := NewSession()
	usual, _ := ask[wire.OrderUsual](t, s, "orderusual", wire.OrderUsualAsk{From: 2026, To: 2028, Countries: []string{"GB", "CN"}}, nil)
	assert.Greater(t, len(usual.Countries), 50)
	assert.True(t, usual.Holidays[0].Known)
	assert.False(t, usual.Holidays[1].Known)
	assert.Len(t, usual.Closures.Spans, 6)

	sched := schedule()
	sched.Steps = usual.Steps
	d, _ := ask[wire.Days](t, s, "days", wire.DaysAsk{Schedule: sched}, nil)
	require.Empty(t, d.Faults)
	assert.Equal(t, days.Date("2027-03-11"), d.Calendar.Rows[0].LatestFirst)

	of, file := ask[wire.CalendarFile](t, s, "ics", wire.CalendarFileAsk{Name: "Skerry Light", Schedule: sched}, nil)
	assert.Equal(t, "skerry-light-calendar.ics", of.FileName)
	assert.True(t, strings.HasPrefix(string(file), "BEGIN:VCALENDAR\r\n"))

	p, _ := ask[wire.Promise](t, s, "promise", wire.PromiseAsk{Schedule: sched, Presale: days.PresaleDays{Closes: "2027-03-28", Payout: 14}}, nil)
	require.Empty(t, p.Faults)
	assert.Equal(t, days.Date("2027-05-21"), p.Promise.Ready)

	sched.Today = "1 March"
	d, _ = ask[wire.Days](t, s, "days", wire.DaysAsk{Schedule: sched}, nil)
	assert.Nil(t, d.Calendar)
	require.Len(t, d.Faults, 1)
	assert.Equal(t, "today", d.Faults[0].Field)
}

// The ways of delivery and what they cost come from the price list.
func TestDeliveryChoicesComeFromTheList(t *testing.T) {
	of := pricedPin(t)
	of.List.Delivery.Choices = []run.DeliveryChoice{
		{Name: "usual", Days: 15, Off: run.Of(decimal.Zero), On: run.OnPieces},
		{Name: "rush", Days: 8, Fee: run.Of(decimal.NewFromInt(40)), On: run.OnPieces},
		{Name: "patient", Days: 30, Off: run.Of(decimal.NewFromInt(8)), On: run.OnPieces},
	}
	sched := schedule()
	sched.Today = "2027-03-15"
	d, _ := ask[wire.Days](t, NewSession(), "days", wire.DaysAsk{Schedule: sched, Priced: &of}, nil)
	require.Empty(t, d.Faults)
	require.Len(t, d.Calendar.Ways, 3)
	assert.Equal(t, 0, d.Schedule.Way)
	assert.Equal(t, "-40", d.Calendar.Ways[1].Saves.String())
	assert.True(t, d.Calendar.Ways[2].Saves.IsPositive())
	assert.Equal(t, 0, d.Calendar.Best, d.Calendar.BestSays)
}

// What the page sends may lack a field; nothing panics, and nothing is NaN,
// which JSON could not carry.
func TestEmptyRequestsAreAnswered(t *testing.T) {
	for _, name := range []string{"left", "demand", "presale", "orderusual", "days", "promise", "ics"} {
		reply, err := NewSession().Do(name, []byte("{}"), Job{})
		if err == nil {
			_, err = json.Marshal(reply.Answer)
		}
		require.NoError(t, err, name)
	}
}

// What a list leaves open costs the savings, not the days.
func TestDeliveryDaysCountWithoutTheirPrice(t *testing.T) {
	of := pricedPin(t)
	d, _ := ask[wire.Days](t, NewSession(), "days", wire.DaysAsk{Schedule: schedule(), Priced: &of}, nil)
	require.Empty(t, d.Faults)
	assert.Empty(t, d.Unpriced)
	require.Len(t, d.Calendar.Ways, 3)
	assert.Equal(t, 15, d.Calendar.Rows[2].Days, "making by the list's usual way")
	assert.Contains(t, d.Calendar.BestSays, "saves EUR")
	var open run.Rate
	of.List.Delivery.Choices[2].More = open
	d, _ = ask[wire.Days](t, NewSession(), "days", wire.DaysAsk{Schedule: schedule(), Priced: &of}, nil)
	require.Empty(t, d.Faults)
	assert.Contains(t, d.Unpriced, "Delivery: rush")
	assert.Equal(t, 15, d.Calendar.Rows[2].Days)
	assert.Empty(t, d.Calendar.BestSays)
	assert.NotContains(t, d.Calendar.Ways[1].Says, "EUR")
}
