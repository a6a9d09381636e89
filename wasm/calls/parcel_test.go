package calls

import (
	"encoding/json"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/days"
	"badgewright/sizing/parcel"
	"badgewright/wasm/wire"
)

func skerryParcel() parcel.Parcel {
	row := parcel.ParcelRow{Design: "d", Version: "v", Name: "Lighthouse", Ordered: 60, Received: 59, Firsts: 50}
	for range 9 {
		row.Flawed = append(row.Flawed, parcel.FlawedPiece{Grade: parcel.Second, Flaw: "dust"})
	}
	return parcel.Parcel{ID: "p", Agreed: 10, Within: 7, Sure: 95, Arrived: "2027-03-03", Rows: []parcel.ParcelRow{row}}
}

func TestAParcelIsCountedClaimedAndKept(t *testing.T) {
	s := NewSession()
	p := skerryParcel()
	worth := parcel.Worth{Currency: "EUR", MinorDigits: 2, Bill: decimal.RequireFromString("250")}
	counted, _ := ask[wire.ParcelCounted](t, s, "parcel", wire.ParcelAsk{Parcel: p, Today: "2027-03-05", Worth: &worth}, nil)
	require.Empty(t, counted.Faults)
	assert.Equal(t, parcel.Over, counted.Tally.All.Verdict.Kind)
	assert.Contains(t, counted.Tally.Money.Says, "about EUR\u00a05.000")
	assert.Len(t, counted.Flaws, len(parcel.Flaws))
	assert.InDelta(t, 10, counted.Usual.Agreed, 0)

	claim, _ := ask[wire.ClaimWritten](t, s, "claim", wire.ClaimAsk{Parcel: p, Today: "2027-03-05"}, nil)
	assert.True(t, claim.Claim.Asks)

	book := parcel.StockBook{Weeks: 8, Moves: []parcel.StockMove{{Day: "2027-03-10", Design: "d", Version: "v", Kind: parcel.Sold, Grade: parcel.First, Count: 51}}}
	ledger, _ := ask[wire.Ledger](t, s, "ledger", wire.LedgerAsk{Book: book, Parcels: []parcel.Parcel{p}, Today: "2027-03-12"}, nil)
	require.Len(t, ledger.Faults, 1)
	assert.Nil(t, ledger.Stock)
	book.Moves[0].Count = 14
	ledger, _ = ask[wire.Ledger](t, s, "ledger", wire.LedgerAsk{Book: book, Parcels: []parcel.Parcel{p}, Today: "2027-03-12"}, nil)
	assert.Equal(t, 36, ledger.Stock.Rows[0].Firsts.Left)
	assert.Len(t, ledger.Makers, 1)
}

func TestALookAndAPlanAreAnswered(t *testing.T) {
	s := NewSession()
	look, _ := ask[wire.LookedAt](t, s, "lookedat", wire.LookedAtAsk{Look: parcel.SomeLooked{Lot: 60, Looked: 12, Sure: 95, AtMost: 2}}, nil)
	assert.Equal(t, 11, look.Found.Most)
	plan, _ := ask[wire.Planned](t, s, "plan", wire.PlanAsk{Lot: 50, Level: "II", Quality: 2.5}, nil)
	assert.Equal(t, 5, plan.Plan.Count)
	assert.NotEmpty(t, plan.Curve)
	plan, _ = ask[wire.Planned](t, s, "plan", wire.PlanAsk{Lot: 1, Level: "II", Quality: 2.5}, nil)
	assert.Nil(t, plan.Plan)
	assert.Len(t, plan.Faults, 1)
}

// What is kept in a project comes back as it was.
func TestParcelsAndBookTravelWithTheProject(t *testing.T) {
	p := skerryParcel()
	p.Rows[0].Flawed[0].Photos = []string{"a"}
	plans := wire.Plans{Parcels: []parcel.Parcel{p}, Ledger: &parcel.StockBook{Weeks: 8, Moves: []parcel.StockMove{{Day: days.Date("2027-03-10"), Kind: parcel.Gifts, Grade: parcel.First, Count: 2}}}}
	text, err := json.Marshal(plans)
	require.NoError(t, err)
	var back wire.Plans
	require.NoError(t, json.Unmarshal(text, &back))
	assert.Equal(t, plans, back)
	empty, err := json.Marshal(wire.Plans{})
	require.NoError(t, err)
	assert.NotContains(t, string(empty), "parcels")
}
