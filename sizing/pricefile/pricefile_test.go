package pricefile

import (
	"encoding/json"
	"fmt"
	"math/rand"
	"os"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// same holds two lists against each other as they travel.
func same(t *testing.T, want, got run.PriceList, about string) {
	t.Helper()
	got.ID = want.ID
	a, err := json.Marshal(want.Copy())
	require.NoError(t, err)
	b, err := json.Marshal(got)
	require.NoError(t, err)
	plain := strings.NewReplacer("null", "[]").Replace
	require.Equal(t, plain(string(a)), plain(string(b)), about)
}

func read(t *testing.T, text string, base run.PriceList) *Reading {
	t.Helper()
	got, err := Read([]byte(text), base)
	require.NoError(t, err)
	return got
}

func TestAListIsWrittenAndReadBack(t *testing.T) {
	for _, l := range []run.PriceList{run.Default(), tiers(t)} {
		text := Write(l)
		got := read(t, string(text), Blank())
		require.Empty(t, got.Problems)
		same(t, l, got.List, string(text))
		for _, sep := range []string{";", "\t"} {
			other := strings.ReplaceAll(string(text), ",", sep)
			got := read(t, other, Blank())
			require.Empty(t, got.Problems)
			same(t, l, got.List, other)
		}
	}
}

func TestAListsNameIsNoFormula(t *testing.T) {
	l := run.Default()
	l.Name = "=Anvil+1"
	text := string(Write(l))
	require.Contains(t, text, "'=Anvil+1")
	same(t, l, read(t, text, Blank()).List, text)
}

func tiers(t *testing.T) (l run.PriceList) {
	b, err := os.ReadFile("../../testdata/pricelists/tiers.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(b, &l))
	return l
}

// Random lists with names that CSV must quote, and much that is not known.
func TestAnyListIsWrittenAndReadBack(t *testing.T) {
	seed := int64(20261126)
	r := rand.New(rand.NewSource(seed))
	rate := func() run.Rate {
		if r.Intn(4) == 0 {
			return run.Rate{}
		}
		return run.Of(decimal.New(r.Int63n(9e7), -int32(r.Intn(7))))
	}
	charge := func() run.Charge {
		return run.Charge{Rate: rate(), By: []run.ChargeBy{run.PerPiece, run.SetUp}[r.Intn(2)]}
	}
	names := []string{"plain", `with, "marks"`, "two\nlines", "ö; æ", "12", "from 3", "€ 4"}
	kinds := func() (k run.Kinds) {
		for _, i := range r.Perm(len(names))[:r.Intn(4)] {
			k.Listed = append(k.Listed, run.KindCharge{ID: names[i], Charge: charge()})
		}
		k.Others = charge()
		return k
	}
	for n := range 300 {
		l := run.PriceList{Name: names[r.Intn(7)], Currency: "KWD", MinorDigits: r.Intn(4), Invented: r.Intn(2) == 0}
		l.Pieces = run.PiecePrices{SizeBy: sizing.ByMean, Together: run.ByOrder, Sizes: []unit.MM{22.5, 40}}
		for i := range 1 + r.Intn(4) {
			price := func() run.Rate { return run.Of(decimal.New(1+r.Int63n(9e6), -3)) }
			l.Pieces.Breaks = append(l.Pieces.Breaks, run.Break{From: 1 + 50*i, Unit: []run.Rate{price(), {}}})
		}
		l.Least, l.Die = run.Least{Design: r.Intn(3), Version: r.Intn(3)}, run.DiePrices{Flat: rate(), Further: rate(), EachVersion: r.Intn(2) == 0, KeptMonths: r.Intn(30)}
		if r.Intn(2) == 0 {
			l.Die.BySize = []run.Rate{rate(), rate()}
		}
		l.Metal = run.MetalPrices{Making: kinds(), Plating: kinds(), Thick: []run.Thick{{From: 1.8, Charge: charge()}, {From: 2, Charge: charge()}}}
		l.Colours = run.ColourPrices{Included: r.Intn(5), Further: charge(), Fill: kinds(), Fancy: kinds(), Printed: charge(), PrintSetUp: rate()}
		l.Shape = run.ShapePrices{CutOutsFree: r.Intn(3), CutOut: charge(), Part: charge(), Ring: charge(), Chain: charge()}
		l.Back = run.BackPrices{Post: charge(), Kinds: kinds(), Stamp: charge()}
		l.Pack = run.PackPrices{Dome: charge(), Packaging: kinds(), CardSetUp: rate(), Card: charge()}
		l.Proofs = run.ProofPrices{Included: r.Intn(3), Further: rate()}
		l.Delivery.Choices = []run.DeliveryChoice{{Name: names[r.Intn(7)] + "!", Days: r.Intn(9), On: run.OnAll, Fee: rate()}, {Name: "rush", On: run.OnPieces, More: run.Of(decimal.New(205, -1))}}
		l.Shipping = run.Shipping{By: run.ShipWeight, Flat: rate(), Further: rate(), Weights: []run.ByWeight{{UpTo: 250.5, Rate: rate()}, {UpTo: 1000, Rate: rate()}}, Classes: []run.ShippingClass{{Name: "post", Days: r.Intn(3), Rate: rate()}}}
		l.Fees = run.Fees{Duty: run.Of(decimal.New(45, -1)), DutyOnShipping: r.Intn(2) == 0, BankFee: rate()}
		l.Count = run.Counting{Under: run.Of(decimal.NewFromInt(5)), UnderBilled: r.Intn(2) == 0, OverBilled: true}
		l.Named = []run.NamedCharge{{Name: "Papers", Rate: rate(), By: run.NamedDesign}, {Name: names[r.Intn(7)], Rate: rate(), By: run.NamedColour}}
		l.Notes = run.Notes{Faults: names[r.Intn(7)], Other: "1,250"}
		require.Empty(t, l.Validate())
		text := Write(l)
		got := read(t, string(text), Blank())
		require.Empty(t, got.Problems, "seed %d, list %d\n%s", seed, n, text)
		same(t, l, got.List, fmt.Sprintf("seed %d, list %d\n%s", seed, n, text))
	}
}

// A block pasted from a spreadsheet, with signs and ranges, changes the prices
// a piece and nothing else.
func TestAPastedBlockChangesThePricesAPiece(t *testing.T) {
	for name, text := range map[string]string{
		"tabs":       "qty\t25 mm\t1.5 in\n50-99\t€ 2,55\t€ 2,90\n100 - 199\t€1,48\t1,72 €\n200+\tEUR 1.30\t1.52\n",
		"commas":     "pieces,up to 25 mm,up to 38.1mm\nfrom 50,2.55,2.90\nfrom 100,1.48,1.72\nfrom 200,1.30,1.52",
		"semicolons": ";25;38,1\r\n50 pcs;2,55;2,90\r\n100 pcs;1,48;1,72\r\n200 pcs;1,30;1,52\r\n",
		"turned":     "size\t50\t100\t200\n25 mm\t2.55\t1.48\t1.30\n38.1 mm\t2.90\t1.72\t1.52\n",
	} {
		got := read(t, text, run.Default())
		require.Empty(t, got.Problems, name)
		want := run.Default()
		price := func(a, b string) []run.Rate {
			return []run.Rate{run.Of(decimal.RequireFromString(a)), run.Of(decimal.RequireFromString(b))}
		}
		want.Pieces.Sizes = []unit.MM{25, 38.1}
		want.Pieces.Breaks = []run.Break{{From: 50, Unit: price("2.55", "2.90")}, {From: 100, Unit: price("1.48", "1.72")}, {From: 200, Unit: price("1.30", "1.52")}}
		same(t, want, got.List, name)
	}
	assert.Len(t, run.Default().Pieces.Breaks, 7, "the list given is not touched")
}

func TestBadCellsAreNamedWhereTheyStand(t *testing.T) {
	const head = "pieces,up to 30 mm,up to 38 mm\n"
	for text, want := range map[string]string{
		head + "50,-2.55,2.90\n":                       `2:2 "-2.55" cannot be read`,
		head + "50,2.55,$ 2.90\n":                      `2:3 "$ 2.90" is not in EUR`,
		head + "50,2.55,about 3\n":                     `2:3 "about 3" cannot be read`,
		head + "50,2.55,\"1,250\"\n":                   `2:3 "1,250" can mean two things`,
		head + "50,\"2,55\",1.250\n":                   `2:3 "1.250" can mean two things, for other figures`,
		head + "50,2.55,0\n":                           `2:3 There is no price for 50 pieces up to 38 mm; nothing is free.`,
		head + "50,2.55,2900000000\n":                  `2:3 "2900000000" has too many digits`,
		head + "50,2.55,290000000\n":                   `2:3 290000000 is too much for one charge`,
		head + "100,1.48,1.72\n50,2.55,2.90\n":         `3:1 50 pieces does not come after 100`,
		head + "50,2.55,2.90\n50,1.48,1.72\n":          `3:1 Two rows start at 50 pieces`,
		head + "50-100,2.55,2.90\n100-199,1.48,1.72\n": `3:1 100-199 overlaps 50-100`,
		head + "50-98,2.55,2.90\n100-199,1.48,1.72\n":  `3:1 No price is given for 99 pieces.`,
		head + "99-50,2.55,2.90\n":                     `2:1 "99-50" ends before it starts.`,
		head + "-50,2.55,2.90\n":                       `2:1 "-50" is below zero`,
		head + "50,2.55,2.90,3.10\n":                   `2:4 This price stands below no size.`,
		"pieces,38 mm,30 mm\n50,2.55,2.90\n":           `1:3 30 mm does not come after 38 mm`,
		"size\t100\t50\n30 mm\t1.48\t2.55\n":           `1:3 50 pieces does not come after 100`,
		"size\t50\t100\n30 mm\t1.48\tx\n":              `2:3 "x" cannot be read`,
		"currency,,EURO\n":                             `1:3 "EURO" is no currency code.`,
		"die,,12 %\n":                                  `1:3 "12 %" cannot be read`,
		"dye,,12\n":                                    `1:1 "dye" is no entry of a price list.`,
		"print,,12\n":                                  `1:1 "print" is no entry of a price list. Is it "print set-up"?`,
		"die,,12,13\n":                                 `1:4 Nothing is asked for here`,
		"further colour,,0.11,yard\n":                  `1:4 "yard" is no way to charge`,
		"fill,hard,€ 12,percent\n":                     `1:3 "€ 12" is an amount of money`,
		"fill,,12,percent\n":                           `1:2 This has no name`,
		"fill,hard,12,percent\nfill,hard,13,percent\n": `2:2 "hard" stands here twice`,
		"charge,Papers,6,moon\n":                       `1:4 "moon" is not understood here; it is one of: order, piece, colour, design.`,
		"delivery off,patient,120\n":                   `1:3 120 percent cannot be`,
		"shipping by,,weight\n":                        `1:3 Shipping goes by weight, and no weight has a charge.`,
		"shipping up to,heavy,3\n":                     `1:2 "heavy" cannot be read as a weight`,
		"die,up to 30 mm,60\n":                         `1:2 Charges for dies by size stand in the order of the sizes`,
		"least,design,-5\n":                            `1:3 "-5" is not a whole number`,
		"months a die is kept,,many\n":                 `1:3 "many" is not a whole number`,
	} {
		got := read(t, text, run.Default())
		var all []string
		for _, p := range got.Problems {
			all = append(all, fmt.Sprintf("%d:%d %s", p.Row, p.Column, p.What))
		}
		if assert.Len(t, all, 1, "%s: %v", text, all) {
			assert.Contains(t, all[0], want, text)
		}
	}
}

func TestWhatIsNoTableIsRefused(t *testing.T) {
	for _, data := range []string{"", " \n,,\n", "PK\x03\x04....", "%PDF-1.7", "a\x00b", strings.Repeat("x", MaxBytes+1)} {
		_, err := Read([]byte(data), run.Default())
		var r *reduce.Refusal
		require.ErrorAs(t, err, &r)
		assert.NotContains(t, r.What, "colour")
	}
}

// A mark out of place spoils its line alone.
func TestAStrayMarkSpoilsItsLineAlone(t *testing.T) {
	got := read(t, "die,,60\ncard,,\"0.2\nshipping,,12\n", Blank())
	assert.Equal(t, "60", got.List.Die.Flat.String())
	assert.Equal(t, "12", got.List.Shipping.Flat.String())
	assert.Equal(t, 2, got.Problems[len(got.Problems)-1].Row)
}

func FuzzRead(f *testing.F) {
	f.Add(string(Write(run.Default())))
	f.Add("qty\t25 mm\n50-99\t€ 2,55\n")
	f.Add("size,50,100\n30 mm,1,2\nnote,faults,\"a\nb\"\n")
	f.Add("price list,x\ncurrency,JPY\n1,2\n")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := Read([]byte(text), run.Default())
		if err != nil {
			return
		}
		lines := strings.Count(text, "\n") + strings.Count(text, "\r") + 1
		for _, p := range got.Problems {
			require.NotEmpty(t, p.What)
			require.LessOrEqual(t, p.Row, lines)
		}
		if len(got.Problems) > 0 {
			return
		}
		require.Empty(t, got.List.Validate())
		again, err := Read(Write(got.List), Blank())
		require.NoError(t, err)
		require.Empty(t, again.Problems, "%q", Write(got.List))
		same(t, got.List, again.List, text)
	})
}
