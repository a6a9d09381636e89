package sheet

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/left"
	pricing "badgewright/sizing/run"
)

// lighthouse is a version with something of everything.
func lighthouse() Asked {
	return Asked{
		Design: "Skerry Light", DesignID: "a", Version: "Night", Size: sizing.Size{MM: 32, By: sizing.ByLongest}, W: 25.4, H: 32,
		Making: sizing.Struck, Base: sizing.Iron, Thickness: 1.2, Plating: "black nickel", Limits: sizing.DefaultLimits(sizing.Struck, sizing.Soft),
		Colours: []AskedColour{
			{No: 1, Name: "navy", Role: reduce.Enamel, RGB: colour.RGB8{R: 0x1b, G: 0x2a, B: 0x4a}, Code: "B-12", Named: "Deep", Share: .5},
			{No: 2, Name: "lamp", Role: reduce.Enamel, RGB: colour.RGB8{R: 255, G: 255}, Finish: sizing.Glow, Share: .1},
			{No: 3, Name: "black", Role: reduce.Metal, Share: .4},
		},
		Item:  pricing.Item{NewDie: true, Fill: sizing.Soft, Enamels: 2, Posts: 2, CutOuts: 1, Quantity: 100},
		Posts: []AskedPlace{{2, "4.5 mm right, 3 mm above", "0.18 in right, 0.12 in above"}, {1, "4.5 mm left, 3 mm above", "0.18 in left, 0.12 in above"}},
		Stamp: "“SL 1”, cut in",
		Spots: []AskedSpot{
			{No: 1, Left: 3.25, Top: 8, Finding: sizing.Finding{Kind: sizing.ThinLine, Thinnest: .15, Limit: .2, Verdict: sizing.Fails, Count: 1}},
			{No: 2, Finding: sizing.Finding{Kind: sizing.ThinLine, Thinnest: .12, Limit: .2, Verdict: sizing.Fails, Count: 1}},
			{No: 3, Finding: sizing.Finding{Kind: sizing.RoundedCorners, Area: .4, Verdict: sizing.Holds, Count: 4}},
		},
	}
}

func written(t *testing.T, in InquiryOf) Inquiry {
	t.Helper()
	out, err := in.Write()
	require.NoError(t, err)
	return out
}

func TestAnInquiryLeavesNothingToGuess(t *testing.T) {
	got := written(t, InquiryOf{Asked: []Asked{lighthouse()}, NeedBy: "14 May 2027", Files: []string{"skerry-light-spec.pdf"}})
	assert.Equal(t, "Quote for enamel pins: Skerry Light, 100 pieces", got.Subject)
	for _, want := range []string{
		"25.4 mm wide, 32 mm high (the size I go by is the longest side, 32 mm)", "struck, soft enamel, iron, 1.2 mm thick",
		"1 cut-out right through", "2 posts with clutches", "No 1, from the middle, seen from behind: 4.5 mm left, 3 mm above.",
		"Back stamp: “SL 1”, cut in", "Plating: black nickel", "2 colours, metal not counted", "navy, #1b2a4a, your code B-12 (Deep)",
		"lamp, #ffff00, glows in the dark", "Quantity: 100 pieces", "2 places: line too thin, 0.12 mm, I reckoned with 0.2 mm",
		"by 14 May 2027", "skerry-light-spec.pdf", "nearest of your chart",
	} {
		assert.Contains(t, got.Body, want)
	}
	assert.Less(t, strings.Index(got.Body, "No 1,"), strings.Index(got.Body, "No 2,"))
	assert.NotContains(t, got.Body, "rounded", "a note does not stand in the way")
	for _, gap := range got.Gaps {
		assert.Contains(t, got.Body, gap)
	}
}

// One inch is 25.4 mm exactly (international yard and pound agreement, 1959).
func TestAnInquiryInInches(t *testing.T) {
	got := written(t, InquiryOf{Asked: []Asked{lighthouse()}, Units: Inches})
	assert.Contains(t, got.Body, "1.00 in wide, 1.26 in high")
	assert.Contains(t, got.Body, "0.047 in thick")
	assert.Contains(t, got.Body, "0.18 in left, 0.12 in above.")
	assert.NotContains(t, got.Body, " mm")
}

func TestVersionsOfADesignShareWhatIsTheSame(t *testing.T) {
	day := lighthouse()
	day.Version, day.Plating, day.Item.Quantity = "Day", "gold", 50
	other := lighthouse()
	other.Design, other.DesignID, other.Spots = "Buoy", "b", nil
	other.Item.Fastening, other.Item.Posts = sizing.MagnetBack, 1
	got := written(t, InquiryOf{Asked: []Asked{lighthouse(), day, other}})
	assert.Equal(t, 2, strings.Count(got.Body, "- Size:"))
	assert.Contains(t, got.Body, "the 2 enamel pins below")
	assert.Contains(t, got.Body, "- Version Day:\n  - Plating: gold.")
	assert.Contains(t, got.Body, "1 magnet.")
	assert.Contains(t, got.Body, "Thinnest lines and areas hold 0.2 mm and 0.3 mm")
	assert.Equal(t, "Quote for enamel pins: Skerry Light, Buoy, 250 pieces", got.Subject)
}

func TestNamesCannotBreakAMessage(t *testing.T) {
	a := lighthouse()
	a.Design = "Skerry\r\nBcc: all@example.invalid"
	got := written(t, InquiryOf{Asked: []Asked{a}})
	assert.NotContains(t, got.Subject, "\n")
	assert.NotContains(t, got.Body, "\nBcc")
	_, err := InquiryOf{}.Write()
	assert.Error(t, err)
}

func TestAChangeRequestIsNumberedAsThePicture(t *testing.T) {
	got, err := ChangesOf{Name: "Skerry Light", Round: 2, Dated: "3 March 2027", All: []Difference{
		{Number: 4, What: "The line between sky and lamp", Where: "upper left", Asked: "a metal line of 0.25 mm", Shown: "no line"},
		{Number: 7, What: "Second post", Asked: "two posts", Note: "it turns on one"},
	}}.Write()
	require.NoError(t, err)
	for _, want := range []string{
		"the proof (round 2) of Skerry Light of 3 March 2027", "these 2 things", "4. The line between sky and lamp (upper left)\n   Asked for: a metal line of 0.25 mm\n   The proof shows: no line\n",
		"7. Second post\n   Asked for: two posts\n   Note: it turns on one\n", "do not approve it yet",
	} {
		assert.Contains(t, got.Body, want)
	}
	_, err = ChangesOf{}.Write()
	assert.Error(t, err)
}

// read is a strict RFC 4180 reader: Go's own, LazyQuotes off.
func read(t *testing.T, file []byte) [][]string {
	t.Helper()
	require.True(t, bytes.HasPrefix(file, []byte("\xef\xbb\xbf")), "UTF-8 is marked")
	require.True(t, bytes.HasSuffix(file, []byte("\r\n")))
	rows, err := csv.NewReader(bytes.NewReader(file[3:])).ReadAll()
	require.NoError(t, err, "the same number of cells in each row")
	return rows
}

func TestTheListOfColours(t *testing.T) {
	a := lighthouse()
	a.Design, a.Colours[0].Name = `=HYPERLINK("x")`, "navy, \"deep\"\nand dark"
	rows := read(t, ColourList([]Asked{a}).File())
	require.Len(t, rows, 4)
	assert.Equal(t, `'=HYPERLINK("x")`, rows[1][0])
	assert.Equal(t, "navy, \"deep\"\nand dark", rows[1][3])
	assert.Equal(t, "metal: black nickel", rows[3][4])
	// CIELAB (D65) of #ffff00: CSS Color 4 names in srgb_colors_oklab_cielab.csv.
	assert.Equal(t, []string{"#ffff00", "255", "255", "0", "97.1", "-21.6", "94.5"}, rows[2][5:12])
}

func TestTheListOfTroubleSpots(t *testing.T) {
	rows := read(t, SpotList([]Asked{lighthouse()}, Millimetres).File())
	require.Len(t, rows, 4)
	assert.Equal(t, "line too thin", rows[1][3])
	assert.Equal(t, []string{"0.15 mm", "0.2 mm"}, rows[1][5:7])
	assert.Equal(t, []string{"3.250", "8.000"}, rows[1][10:12])
	inches := read(t, SpotList([]Asked{lighthouse()}, Inches).File())
	assert.Equal(t, "from the left, in", inches[0][10])
	assert.Equal(t, "0.1280", inches[1][10])
}

func TestTheListsOfMoney(t *testing.T) {
	d := decimal.RequireFromString
	q := pricing.Quote{Currency: "EUR", MinorDigits: 2, Pieces: 100, Total: d("270"), Lines: []pricing.Line{
		{What: "die", Item: -1, Count: 1, Each: d("68"), Amount: d("68")},
		{What: "pieces", Item: 0, Count: 100, Each: d("2.02"), Amount: d("202")},
	}, Needs: []pricing.OpenEntry{{What: "a cut-out"}}}
	rows := read(t, QuoteList(&q, &pricing.Wanted{Items: []pricing.Item{{Design: "Buoy", Version: "Red"}}}, "+Anvil").File())
	assert.Equal(t, []string{"'+Anvil", "Buoy", "Red", "pieces", "100", "2.02", "202.00", "EUR"}, rows[2])
	assert.Equal(t, "not known: a cut-out", rows[3][3])
	assert.Equal(t, "270.00", rows[4][6])

	a := left.LeftAfter{Rows: []left.ChannelRow{{Name: "Fairs", Count: 18, Sales: 18, Left: d("-3.5"), Lines: []left.Money{{What: "Fees", Amount: d("-3.5")}}}}, Total: left.ChannelRow{Name: "All", Left: d("-3.5")}}
	rows = read(t, LeftList(&a, "EUR", 2).File())
	assert.Equal(t, []string{"Fairs", "", "", "Fees", "-3.50", "EUR"}, rows[1], "below zero it is still a number")
}

func TestEveryKindHasAName(t *testing.T) {
	for k := range spotNames {
		f := sizing.Finding{Kind: k}
		assert.NotEmpty(t, SpotName(&f))
	}
	for _, k := range []sizing.Kind{
		sizing.ThinLine, sizing.NarrowArea, sizing.FadesOut, sizing.RoundedCorners, sizing.NoLine, sizing.NoEdge, sizing.Gap, sizing.OpenArea,
		sizing.SmallArea, sizing.Pinhole, sizing.MetalIsland, sizing.SolidMetal, sizing.SmallLettering, sizing.SmallCutOut, sizing.ClutchShows,
		sizing.LoosePart, sizing.GrownTogether, sizing.WeakEye, sizing.ThinBridge, sizing.SharpTip, sizing.LongArm,
	} {
		assert.Contains(t, spotNames, k)
	}
}
