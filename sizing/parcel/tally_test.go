package parcel

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/days"
	"badgewright/sizing/left"
)

const today days.Date = "2027-03-05"

func flawed(n int, g Grade, k FlawKind) []FlawedPiece {
	all := make([]FlawedPiece, n)
	for i := range all {
		all[i] = FlawedPiece{Grade: g, Flaw: k}
	}
	return all
}

// skerry is an invented parcel of one version: 60 ordered. At 0 received all that
// came is counted.
func skerry(received, firsts int, bad ...[]FlawedPiece) Parcel {
	r := ParcelRow{Design: "d1", Version: "v1", Name: "Lighthouse, gold", Ordered: 60, Received: received, Firsts: firsts}
	for _, b := range bad {
		r.Flawed = append(r.Flawed, b...)
	}
	return Parcel{ID: "p1", Maker: "Skerry die works", Ordered: "2027-01-25", Due: "2027-03-01", Arrived: "2027-03-03",
		Agreed: UsualAgreed, Within: UsualWithin, Sure: UsualSure, Complete: received == 0, Rows: []ParcelRow{r}}
}

func counted(t *testing.T, p Parcel) *Tally {
	t.Helper()
	got, f := Count(p, nil, today)
	require.Empty(t, f)
	return got
}

func TestACountOfEveryPieceIsExact(t *testing.T) {
	v := counted(t, skerry(0, 54, flawed(6, Second, "dust"))).All.Verdict
	assert.Equal(t, []any{Within, 6, 6, 6, 7}, []any{v.Kind, v.Allowed, v.Least, v.Most, v.Refuse})
	assert.Zero(t, v.Wrongly, "a parcel just as agreed is never refused")
	assert.Equal(t, "As agreed: 6 of 60 flawed; 10 percent of 60 admits 6.", v.Says)
	v = counted(t, skerry(0, 53, flawed(5, Second, "dust"), flawed(2, Reject, "bent"))).All.Verdict
	assert.Equal(t, "1 more than agreed: 7 of 60 flawed; 10 percent of 60 admits 6.", v.Says)
	// scipy: 1 - binom.cdf(6, 60, .1)
	assert.InDelta(t, 0.39354859789913934, v.Luck, 1e-12)
}

func TestALookAtSomeIsJudgedByExactLimits(t *testing.T) {
	v := counted(t, skerry(60, 18)).All.Verdict
	assert.Equal(t, Open, v.Kind)
	assert.Equal(t, "Not to tell yet: 0 of 18 flawed so far, so 0 to 7 of the 60 may be; 10 percent of 60 admits 6.", v.Says)
	v = counted(t, skerry(60, 24)).All.Verdict
	assert.Equal(t, "As agreed: 0 of 24 flawed so far, so at most 5 of the 60 are (95 percent sure); 10 percent of 60 admits 6.", v.Says)
	v = counted(t, skerry(60, 15, flawed(5, Second, Unsaid))).All.Verdict
	assert.Equal(t, Over, v.Kind)
	assert.Contains(t, v.Says, "so at least 8 of the 60 are (95 percent sure)")
	v = counted(t, skerry(60, 23, flawed(7, Second, Unsaid))).All.Verdict
	assert.True(t, strings.HasPrefix(v.Says, "More than agreed, whatever the rest is: 7 of 30 flawed so far;"), v.Says)
}

// The chance of refusing a lot just as agreed is that of every lot laid out, and
// no number below Refuse is ever judged over.
func TestTheChanceOfRefusingWronglyIsThatOfAllLooks(t *testing.T) {
	for _, c := range []struct {
		lot    int
		agreed float64
	}{{7, 10}, {20, 10}, {20, 5}, {60, 10}} { // 1 of 20 looked at: a tie of exactly 5 percent
		lot := c.lot
		for look := 1; look <= lot; look++ {
			var wrongly big.Rat
			first := -1
			for found := 0; found <= look; found++ {
				v := judged(lot, look, found, c.agreed, 95)
				if v.Kind == Over {
					wrongly.Add(&wrongly, Urn{lot, v.Allowed, look}.Exactly(found))
					if first < 0 {
						first = found
					}
				}
				assert.Equal(t, first >= 0, v.Kind == Over, "over stays over as more are found")
				assert.LessOrEqual(t, v.Wrongly, 0.05)
			}
			v := judged(lot, look, 0, c.agreed, 95)
			assert.InDelta(t, near(&wrongly), v.Wrongly, 1e-15, "%d of %d", look, lot)
			if first >= 0 {
				assert.Equal(t, first, v.Refuse, "%d of %d", look, lot)
			} else {
				assert.Greater(t, v.Refuse, look)
			}
		}
	}
}

func TestAShareOfPiecesIsTakenAsWritten(t *testing.T) {
	for _, c := range []struct {
		lot     int
		percent float64
		want    int
	}{{60, 10, 6}, {59, 10, 5}, {100, 2.3, 2}, {1000, 0.3, 3}, {30, 0, 0}, {5, 100, 5}, {0, 10, 0}} {
		assert.Equal(t, c.want, allowed(c.lot, c.percent), "%g of %d", c.percent, c.lot)
	}
}

func TestATallyInWords(t *testing.T) {
	p := skerry(0, 50, flawed(4, Second, "missing"), flawed(2, Second, "scratch"), flawed(1, Reject, "sharp"), flawed(1, Second, Unsaid))
	p.Rows = append(p.Rows, ParcelRow{Name: "Lighthouse, silver", Ordered: 40, Firsts: 41})
	got := counted(t, p)
	assert.Equal(t, "58 of 60 ordered (2 short), 50 firsts, 7 seconds, 1 reject", got.Rows[0].Counts)
	assert.Equal(t, "41 of 40 ordered (1 over), 41 firsts, 0 seconds, 0 rejects", got.Rows[1].Counts)
	assert.Equal(t, []FlawCount{{"missing", "missing enamel", false, 4}, {"scratch", "scratches", false, 2}, {"sharp", "sharp edge", true, 1}, {Unsaid, "fault not named", false, 1}}, got.Rows[0].Flaws)
	require.Len(t, got.Cautions, 1)
	assert.True(t, strings.HasPrefix(got.Cautions[0], "Sharp edge, 1 piece. A sharp edge cuts."))
	assert.Equal(t, "As agreed: 8 of 99 flawed; 10 percent of 99 admits 9. But of Lighthouse, gold alone: 3 more than agreed: 8 of 58 flawed; 10 percent of 58 admits 5.", got.Says)
	assert.Equal(t, "Tell the maker by Wed 10 Mar 2027, 5 days from now.", got.Tells)
	p.Arrived = "2027-02-20"
	assert.Equal(t, "The 7 days to tell the maker ended on Sat 27 Feb 2027; tell them all the same.", counted(t, p).Tells)
	assert.Equal(t, "Nothing is counted yet.", counted(t, skerry(0, 0)).Says)
}

func TestWhileTheCountGoesOnTheRestOfTheOrderIsUnseen(t *testing.T) {
	p := skerry(0, 17, flawed(1, Second, "dust"))
	p.Complete = false
	got := counted(t, p)
	assert.Equal(t, "18 of 60 counted so far, 17 firsts, 1 second, 0 rejects", got.Rows[0].Counts)
	assert.Equal(t, []int{60, 0}, []int{got.All.Received, got.All.Short})
	assert.Equal(t, Open, got.All.Verdict.Kind)
	c, f := Claimed(p, today)
	require.Empty(t, f)
	assert.Contains(t, c.Text, "ordered 60, 18 counted so far.")
	assert.NotContains(t, c.Text, "missing")
	p.Complete = true
	assert.Equal(t, 42, counted(t, p).All.Short)
}

func TestWhatACountDoesToTheMoney(t *testing.T) {
	w := Worth{Currency: "EUR", MinorDigits: 2, Bill: decimal.RequireFromString("270")}
	got, f := Count(skerry(0, 48, flawed(12, Second, "dust")), &w, today)
	require.Empty(t, f)
	// 270 shared among 48 and among the 54 that 10 percent would have left
	assert.Equal(t, "A first costs about EUR\u00a05.625; as agreed it would be about EUR\u00a05.000.", got.Money.Says)
	assert.Empty(t, got.Money.LeftSays)
	got, _ = Count(skerry(60, 40), &w, today)
	assert.Equal(t, "What a good piece costs is known once the other 20 are looked at.", got.Money.Says)
	got, _ = Count(skerry(0, 0, flawed(60, Reject, "colour")), &w, today)
	assert.Equal(t, "There is no first in the parcel to share the bill.", got.Money.Says)
}

// One channel at a price of 10 with nothing else: what is left is price times
// pieces less the bill, by hand.
func TestWhatACountDoesToWhatIsLeft(t *testing.T) {
	d := decimal.RequireFromString
	plan := left.Selling{Currency: "EUR", MinorDigits: 2, Pieces: 1, Price: d("10"), SecondsShare: d("10"), SecondsOff: d("50"), SecondsBy: 0,
		Channels: []left.Channel{{Kind: left.Fair, Name: "Fair", Share: d("100")}}}
	w := Worth{Currency: "EUR", MinorDigits: 2, Bill: d("270"), Selling: &plan}
	got, f := Count(skerry(0, 47, flawed(10, Second, "dust"), flawed(3, Reject, "bent")), &w, today)
	require.Empty(t, f)
	// planned: 54*10 + 6*5 - 270 = 300; now: 47*10 + 10*5 - 270 = 250
	assert.Equal(t, "When all goes to plan, EUR\u00a0250.00 is left after costs instead of EUR\u00a0300.00: EUR\u00a050.00 less.", got.Money.LeftSays)
}

func TestAParcelThatCannotBeIsRefusedInWords(t *testing.T) {
	p := skerry(10, 20, flawed(1, First, "rust"))
	p.Agreed, p.Sure, p.Within, p.Due = 101, 100, -1, "soon"
	_, f := Count(p, nil, "")
	fields := []string{}
	for _, one := range f {
		fields = append(fields, one.Field)
		assert.True(t, strings.HasSuffix(one.What, "."), one.What)
	}
	assert.Equal(t, []string{"agreed", "sure", "within", "due", "rows[0].received", "rows[0].flawed[0].grade", "rows[0].flawed[0].flaw", "today"}, fields)
}

func TestAClaim(t *testing.T) {
	p := skerry(0, 47, flawed(8, Second, "missing"), flawed(3, Reject, "sharp"))
	p.Rows[0].Flawed[2].Photos = []string{"a1", "a2"}
	p.Rows[0].Flawed[9].Photos = []string{"b1"}
	c, f := Claimed(p, today)
	require.Empty(t, f)
	assert.True(t, c.Asks)
	assert.Equal(t, `Hello Skerry die works,

our order of Mon 25 Jan 2027 arrived on Wed 3 Mar 2027, 2 days after the day agreed. This is what we counted.

Lighthouse, gold: ordered 60, received 58 (2 short). 47 firsts, 8 seconds, 3 rejects. Faults: missing enamel 8, sharp edge 3.

In all 11 of the 58 pieces looked at are flawed, 19.0 percent. We agreed on at most 10 percent, which is 5 of 58. Sharp edge, found on 3 pieces, can hurt somebody: such pieces cannot be sold at all.

We ask you to make good the 6 pieces past the share agreed and the 2 pieces missing, by new pieces or by a credit, as suits you.

Pictures:
1. Lighthouse, gold: missing enamel (second)
2. Lighthouse, gold: missing enamel (second)
3. Lighthouse, gold: sharp edge (reject)`, c.Text)
	assert.Equal(t, []string{"a1", "a2", "b1"}, []string{c.Photos[0].Photo, c.Photos[1].Photo, c.Photos[2].Photo})
}

func TestAParcelAsAgreedClaimsNothingUnlessItCanHurt(t *testing.T) {
	c, f := Claimed(skerry(0, 56, flawed(4, Second, "dust")), today)
	require.Empty(t, f)
	assert.False(t, c.Asks)
	assert.Contains(t, c.Text, "nothing is asked for")
	c, f = Claimed(skerry(0, 58, flawed(2, Reject, "loose")), today)
	require.Empty(t, f)
	assert.Contains(t, c.Text, "make good the 2 pieces that can hurt somebody")
}

func TestALookAtSomeInWords(t *testing.T) {
	got, f := LookedAtSome(SomeLooked{Lot: 60, Looked: 12, Sure: 95, AtMost: 2})
	require.Empty(t, f)
	assert.Equal(t, "At most 11 of the 60 can still be bad, all of them among the 48 not looked at: 95 percent sure.", got.Says)
	assert.Equal(t, fmt.Sprintf("Look at %d, all found sound, to be 95 percent sure that at most 2 of 60 are bad.", LookForAtMost(60, 2, 95)), got.LookSays)
	got, _ = LookedAtSome(SomeLooked{Lot: 60, Looked: 12, Bad: 2, Sure: 95})
	assert.Equal(t, got.Most-2, got.Unseen)
	assert.Contains(t, got.Says, "of the 48 not looked at")
	got, _ = LookedAtSome(SomeLooked{Lot: 5, Looked: 5, Bad: 1, Sure: 95, AtMost: 9})
	assert.Equal(t, "All were looked at: 1 is bad.", got.Says)
	assert.Equal(t, "There is nothing to look at to be 95 percent sure that at most 9 of 5 are bad.", got.LookSays)
	_, f = LookedAtSome(SomeLooked{Lot: 5, Looked: 6, Bad: 7, Sure: 12})
	assert.Len(t, f, 3)
}
