package left

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing/unit"
)

func money(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// plan is Skerry Light's: 100 pieces, 8 with flaws, all figures invented.
func plan() Selling {
	return Selling{
		Currency: "EUR", MinorDigits: 2, Pieces: 100, Bill: money("339.00"), Price: money("11"),
		SecondsShare: money("8"), SecondsOff: money("50"), SecondsBy: 0,
		Tax: SalesTax{Percent: money("20"), Included: true}, Grams: 12, MM: 9,
		Classes: []PostClass{{"letter", 20, 5, money("1.10")}, {"large letter", 100, 25, money("1.95")}, {"parcel", 2000, 600, money("5.20")}},
		Packing: Wrapping{Envelope: money("0.24"), Card: money("0.15"), Bag: money("0.03"), EnvelopeGrams: 4, CardGrams: 3, BagGrams: 1, EnvelopeMM: 2},
		Channels: []Channel{
			{Kind: Online, Name: "Own shop", Share: money("50"), FeePercent: money("6.5"), FeeFixed: money("0.30"), Posted: true, PostPaid: money("2.50"), Taxed: true},
			{Kind: Fair, Name: "Harbour fair", Share: money("25"), FeePercent: money("1.75"), Once: money("60")},
			{Kind: Consignment, Name: "Museum desk", Share: money("15"), Cut: money("40")},
			{Kind: Gift, Name: "Keepers", Share: money("5")},
		},
	}
}

func reckon(t *testing.T, p Selling) *LeftAfter {
	t.Helper()
	a, f := Reckon(p)
	require.Empty(t, f)
	return a
}

func lines(r ChannelRow) map[string]string {
	out := map[string]string{}
	for _, l := range r.Lines {
		out[l.Key] = l.Amount.String()
	}
	return out
}

// Worked by hand. 92 pieces have no flaw; 95 % of them, 87, have a channel:
// 45, 23, 14 and 5 by Webster: 50/91 comes after 5/9.
func TestWhatIsLeftByHand(t *testing.T) {
	a := reckon(t, plan())
	require.Len(t, a.Rows, 6)
	var counts []int
	for _, r := range a.Rows {
		counts = append(counts, r.Count)
	}
	assert.Equal(t, []int{45, 23, 14, 5, 8, 5}, counts)
	assert.Equal(t, map[string]string{
		"sold":      "495",     // 45 x 11
		"post paid": "112.5",   // 45 x 2.50
		"tax":       "-82.5",   // 495 x 20 / 120
		"fee":       "-39.49",  // 607.50 x 6.5 % = 39.4875
		"fixed fee": "-13.5",   // 45 x 0.30
		"postage":   "-87.75",  // 45 x 1.95: 20 g, but 11 mm thick
		"envelope":  "-10.8",   // 45 x 0.24
		"card":      "-6.75",   // 45 x 0.15
		"bag":       "-1.35",   // 45 x 0.03
		"making":    "-152.55", // 45 x 3.39
	}, lines(a.Rows[0]))
	assert.Equal(t, "212.81", a.Rows[0].Left.String())
	assert.Equal(t, "about EUR\u00a04.729", a.Rows[0].EachSays)
	assert.Equal(t, "large letter", a.Rows[0].Class)
	assert.Equal(t, map[string]string{"sold": "253", "fee": "-4.43", "card": "-3.45", "bag": "-0.69", "once": "-60", "making": "-77.97"}, lines(a.Rows[1]))
	assert.Equal(t, map[string]string{"sold": "154", "cut": "-61.6", "card": "-2.1", "bag": "-0.42", "making": "-47.46"}, lines(a.Rows[2]))
	assert.Equal(t, map[string]string{"card": "-0.75", "bag": "-0.15", "making": "-16.95"}, lines(a.Rows[3]))
	assert.Equal(t, "44", lines(a.Rows[4])["sold"]) // 8 x 5.50
	assert.True(t, a.Rows[4].Flawed)
	assert.Equal(t, map[string]string{"making": "-16.95"}, lines(a.Rows[5]))
	assert.Equal(t, "-339", lines(a.Total)["making"])
	assert.Equal(t, 95, a.Out)
	assert.Equal(t, "60", a.Once.String())
	assert.True(t, strings.HasPrefix(a.Says, a.Total.LeftSays+" left after costs when all goes to plan, about EUR"), a.Says)
	require.Len(t, a.Notes, 1)
	assert.Contains(t, plain(a.Notes[0]), "a parcel is 11 mm thick and goes by large letter; at most 5 mm thick it would go by letter")
}

func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// A set is sold whole, a cause gets what is left, tax is put on top: by hand.
func TestSetsCausesAndTaxOnTop(t *testing.T) {
	p := plan()
	p.SecondsShare, p.SecondsBy = decimal.Zero, -1
	p.Tax = SalesTax{Percent: money("10"), OnPosting: true}
	p.Channels = []Channel{
		{Kind: Set, Name: "Trio", Share: money("50"), Price: money("30"), Pieces: 3, Others: money("1.25"), OthersGrams: 30, FeePercent: money("10"), Posted: true, PostPaid: money("4"), Taxed: true},
		{Kind: Cause, Name: "Lifeboat", Share: money("30"), Given: money("100"), GivenOf: OfLeft},
		{Kind: Cause, Name: "Birds", Share: money("20"), Given: money("25"), GivenOf: OfPrice, Taxed: true},
	}
	a := reckon(t, p)
	require.Len(t, a.Rows, 4)
	assert.Equal(t, 48, a.Rows[0].Count, "16 whole sets of 50 pieces")
	assert.Equal(t, map[string]string{
		"sold": "480", "post paid": "64",
		"fee":     "-59.84", // 10 % of 480 + 64 and the tax of 54.40
		"postage": "-31.2",  // 16 x 1.95: 3 x 16 + 4 + 30 = 82 g
		"others":  "-20", "envelope": "-3.84", "card": "-7.2", "bag": "-1.44", "making": "-162.72",
	}, lines(a.Rows[0]))
	assert.Equal(t, map[string]string{
		"sold": "330", "card": "-4.5", "bag": "-0.9", "making": "-101.7",
		"given": "-222.9", // all of 330 - 5.40 - 101.70
	}, lines(a.Rows[1]))
	assert.True(t, a.Rows[1].Left.IsZero())
	assert.Equal(t, "-55", lines(a.Rows[2])["given"]) // a quarter of 220, tax being on top
	assert.Equal(t, 2, a.Rows[3].Count)
	p.Tax.Included = true
	assert.Equal(t, "-50", lines(reckon(t, p).Rows[2])["given"]) // of 200 without tax
}

// random makes a sound plan.
func random(r *rand.Rand) Selling {
	p := plan()
	p.Pieces = 1 + r.IntN(400)
	p.Bill = decimal.New(int64(r.IntN(90_000)), -2)
	p.SecondsShare = decimal.NewFromInt(int64(r.IntN(30)))
	p.SecondsBy = r.IntN(3) - 1
	p.Tax.Included, p.Tax.OnPosting = r.IntN(2) == 0, r.IntN(2) == 0
	rest := int64(100_000)
	for i := range p.Channels {
		ch := &p.Channels[i]
		s := r.Int64N(rest + 1)
		rest -= s
		ch.Kind = []ChannelKind{Online, Fair, Wholesale, Consignment, Set, Gift, Cause}[r.IntN(7)]
		ch.Share = decimal.New(s, -3)
		ch.Pieces = r.IntN(4)
		ch.Cut = decimal.NewFromInt(int64(r.IntN(60)))
		ch.Taxed, ch.Posted = r.IntN(2) == 0, r.IntN(2) == 0
		ch.Given, ch.GivenOf = decimal.NewFromInt(int64(r.IntN(3)*25)), []GivenOf{OfPrice, OfLeft}[r.IntN(2)]
	}
	return p
}

// Sums are sums of shown lines, the parts of the bill are the bill, no piece is
// lost, and the chart ends where the plan does.
func TestSumsAreSumsOfShownLines(t *testing.T) {
	const seed = 5
	r := rand.New(rand.NewPCG(seed, seed))
	for range 80 {
		p := random(r)
		a := reckon(t, p)
		count, left, making := 0, decimal.Zero, decimal.Zero
		for _, row := range a.Rows {
			sum := decimal.Zero
			for _, l := range row.Lines {
				require.True(t, l.Amount.Equal(unit.RoundMoney(l.Amount, 2)))
				require.NotEmpty(t, l.What)
				sum = sum.Add(l.Amount)
				if l.Key == KeyMaking {
					making = making.Add(l.Amount)
				}
			}
			require.True(t, sum.Equal(row.Left))
			require.GreaterOrEqual(t, row.Count, 0)
			count += row.Count
			left = left.Add(sum)
		}
		require.Equal(t, p.Pieces, count, "seed %d: %+v", seed, p)
		require.True(t, making.Equal(p.Bill.Neg()), "seed %d", seed)
		require.True(t, left.Equal(a.Total.Left))
		end := a.Points[len(a.Points)-1]
		require.Equal(t, a.Out, end.Pieces)
		require.True(t, end.Left.Equal(a.Total.Left), "seed %d: %s, %s", seed, end.Left, a.Total.Left)
	}
}

// What is left at every number of pieces, each reckoned anew: the pieces that
// Webster's method gives each channel, from the definition.
func TestTheCostsAreCoveredFromThere(t *testing.T) {
	const seed = 6
	r := rand.New(rand.NewPCG(seed, seed))
	for range 12 {
		p := random(r)
		for i := range p.Channels {
			p.Channels[i].Pieces, p.Channels[i].Given = 1, decimal.Zero
		}
		a := reckon(t, p)
		c := p.count()
		want := 0
		for n := 0; n <= a.Out; n++ {
			sum := p.Bill.Neg()
			for i, k := range webster(p, min(n, a.Out-c.seconds)) {
				sum = sum.Add(p.moneyOf(&p.Channels[i], k, nil).sum)
			}
			if k := n - (a.Out - c.seconds); k > 0 {
				ch := p.seconds()
				sum = sum.Add(p.moneyOf(&ch, k, nil).sum)
			}
			if sum.IsNegative() {
				want = n + 1
			}
			for _, at := range a.Points {
				if at.Pieces == n {
					require.True(t, at.Left.Equal(sum), "seed %d: %d pieces", seed, n)
				}
			}
		}
		if want > a.Out {
			want = -1
		}
		require.Equal(t, want, a.Covers, "seed %d: %+v", seed, p)
	}
}

// webster is the method's other definition: a divisor for which the rounded
// quotients add up to the number of pieces. Ties are decided as one by one.
func webster(p Selling, n int) []int {
	got := make([]int, len(p.Channels))
	for range n {
		best, high := -1, new(decimal.Decimal)
		for i, ch := range p.Channels {
			q := ch.Share.DivRound(decimal.NewFromInt(int64(2*got[i]+1)), 40)
			if ch.Share.IsPositive() && (best < 0 || q.GreaterThan(*high)) {
				best, *high = i, q
			}
		}
		got[best]++
	}
	return got
}

// Shares that come out whole come out exactly.
func TestWholeSharesAreExact(t *testing.T) {
	p := plan()
	p.SecondsShare = decimal.Zero
	for i, s := range []string{"34", "33", "21", "12"} {
		p.Channels[i].Share = money(s)
	}
	var counts []int
	for _, r := range reckon(t, p).Rows {
		counts = append(counts, r.Count)
	}
	assert.Equal(t, []int{34, 33, 21, 12}, counts)
}

// What one question hands to the next: pieces sold bring Each, and all of them
// less the bill and what is paid once is what is left.
func TestWhatAPieceLeavesBeforeTheBill(t *testing.T) {
	p := plan()
	a := reckon(t, p)
	c := p.count()
	n := decimal.NewFromInt(int64(a.Out - c.seconds))
	sum := a.Each.Mul(n).Add(a.Second.Mul(decimal.NewFromInt(int64(c.seconds)))).Sub(a.Once).Sub(p.Bill)
	assert.InDelta(t, a.Total.Left.InexactFloat64(), sum.InexactFloat64(), 1e-3)
	byRow := a.Once.Neg().Sub(p.Bill)
	for _, r := range a.Rows {
		byRow = byRow.Add(r.Before.Mul(decimal.NewFromInt(int64(r.Count))))
	}
	assert.InDelta(t, a.Total.Left.InexactFloat64(), byRow.InexactFloat64(), 1e-3)
}

// A fair that nothing is taken to has no table to pay; one that sells the
// seconds alone has.
func TestAChannelThatIsNotGoneToCostsNothing(t *testing.T) {
	p := plan()
	p.Channels[0].Once, p.Channels[0].Share, p.SecondsBy = money("60"), money("0"), -1
	without := reckon(t, p)
	assert.Empty(t, without.Rows[0].Lines)
	p.Channels[0].Once = money("0")
	assert.Equal(t, reckon(t, p).Total.Left.String(), without.Total.Left.String())
	p.SecondsBy = 0
	free := reckon(t, p)
	p.Channels[0].Once = money("60")
	assert.Equal(t, "60", free.Total.Left.Sub(reckon(t, p).Total.Left).String())
	assert.Equal(t, "60", reckon(t, p).Once.Sub(free.Once).String())
}

func TestBadPlansAreRefusedFieldByField(t *testing.T) {
	p := plan()
	p.Currency, p.Pieces, p.Bill = "eur", 0, money("-1")
	p.Price, p.SecondsShare, p.SecondsBy = money("1e9"), money("101"), 9
	p.Grams, p.MM, p.Packing.CardGrams, p.Classes[1].MM = math.NaN(), -1, math.Inf(1), math.NaN()
	p.Channels[0].Share, p.Channels[0].Kind = money("90"), "market"
	p.Channels[1].FeePercent, p.Channels[1].Pieces = money("-2"), -3
	p.Channels[2].Given = money("10")
	a, f := Reckon(p)
	assert.Nil(t, a)
	var fields []string
	for _, x := range f {
		fields = append(fields, x.Field)
	}
	assert.Equal(t, []string{
		"currency", "pieces", "bill", "price", "secondsShare", "secondsBy", "grams", "mm", "packing.cardGrams", "classes[1].mm",
		"channels[0].kind", "channels[1].pieces", "channels[1].feePercent", "channels[2].givenOf", "channels",
	}, fields)
	assert.Equal(t, "The shares of the channels add up to 135 percent; they cannot be more than 100.", f[len(f)-1].What)
	assert.Equal(t, "The fee of Harbour fair is -2 percent; it runs from 0 to 100.", f[12].What)
}

func TestAParcelThatNoClassTakesIsRefused(t *testing.T) {
	p := plan()
	p.Classes = p.Classes[:1]
	_, f := Reckon(p)
	require.Len(t, f, 1)
	assert.Equal(t, "channels[0].posted", f[0].Field)
	assert.Equal(t, "A parcel of Own shop with 1 piece weighs 20 g and is 11 mm thick: no class of post takes it.", plain(f[0].What))
}

func TestNothingSoldOrNothingToPay(t *testing.T) {
	p := plan()
	p.Channels, p.SecondsBy = nil, -1
	a := reckon(t, p)
	assert.Equal(t, "-339", a.Total.Left.String())
	assert.Equal(t, -1, a.Covers)
	assert.Contains(t, plain(a.Says), "EUR 339.00 short of the costs")
	assert.Equal(t, []LeftWhen{{0, money("-339.00")}}, a.Points)
	p = plan()
	p.Bill, p.Channels[1].Once = decimal.Zero, decimal.Zero
	assert.Equal(t, 0, reckon(t, p).Covers)
}

// FuzzReckon looks for figures that break a sum or slip past the check.
func FuzzReckon(f *testing.F) {
	f.Add(100, int64(33900), int64(1100), int64(5000), int64(650), int64(30), 12.0, 9.0, uint8(1))
	f.Add(1, int64(0), int64(1), int64(10000), int64(10000), int64(0), 0.0, 0.0, uint8(255))
	f.Fuzz(func(t *testing.T, pieces int, bill, price, sharePart, fee, fixed int64, weight, thick float64, flags uint8) {
		p := plan()
		p.Pieces, p.Bill, p.Price, p.Grams, p.MM = pieces%2000, decimal.New(bill, -2), decimal.New(price, -2), weight, thick
		ch := &p.Channels[0]
		ch.Share, ch.FeePercent, ch.FeeFixed = decimal.New(sharePart, -2), decimal.New(fee, -2), decimal.New(fixed, -3)
		ch.Posted, ch.Taxed, p.Tax.Included = flags&1 > 0, flags&2 > 0, flags&4 > 0
		a, faults := Reckon(p)
		if len(faults) > 0 {
			require.Nil(t, a)
			for _, x := range faults {
				require.NotEmpty(t, x.Field)
				require.NotEmpty(t, x.What)
			}
			return
		}
		sum := decimal.Zero
		for _, l := range a.Total.Lines {
			sum = sum.Add(l.Amount)
		}
		require.True(t, sum.Equal(a.Total.Left))
		require.Equal(t, 0, a.Points[0].Pieces)
	})
}

func TestPartsOfAParcel(t *testing.T) {
	p := plan()
	ch := Channel{Kind: Online, Pieces: 3}
	assert.Equal(t, "3.9", p.postage(&ch, 4).String(), "three and one, both by large letter")
	assert.Equal(t, "0", p.postage(&ch, 0).String())
	ch.Kind = Set
	assert.Equal(t, "1.95", p.postage(&ch, 5).String(), "one whole set")
}

// A table is paid once, not again for the pieces with flaws that lie on it.
func TestSecondsDoNotPayForTheTable(t *testing.T) {
	p := plan()
	p.SecondsBy = 1
	a := reckon(t, p)
	assert.Equal(t, "-60", lines(a.Rows[1])["once"])
	assert.True(t, a.Rows[4].Flawed)
	assert.NotContains(t, lines(a.Rows[4]), "once")
	assert.Equal(t, "-60", lines(a.Total)["once"])
}

func TestTheUsualWayOfSellingIsSound(t *testing.T) {
	p := Usual()
	p.Bill = money("339")
	a := reckon(t, p)
	assert.True(t, a.Total.Left.IsPositive(), a.Says)
	assert.Len(t, a.Rows, 9, "seven channels, seconds, and what is kept")
}
