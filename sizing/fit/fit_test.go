package fit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/apart"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

func TestVerdictInOneLine(t *testing.T) {
	at := sizing.Size{MM: 32, By: sizing.ByLongest}
	fails := sizing.Finding{Kind: sizing.ThinLine, Verdict: sizing.Fails}
	unsure := sizing.Finding{Kind: sizing.ThinLine, Verdict: sizing.CannotTell, NeedPx: 900}
	note := sizing.Finding{Kind: sizing.ThinLine, Verdict: sizing.Holds}
	for _, c := range []struct {
		found []sizing.Finding
		holds float64
		want  sizing.Verdict
		words string
	}{
		{nil, 20, sizing.Holds, "Can be made at 32 mm."},
		{[]sizing.Finding{note}, 20, sizing.Holds, "Can be made at 32 mm."},
		{[]sizing.Finding{fails}, 41.5, sizing.Fails, "1 place will not hold at 32 mm; as drawn, lines and areas hold from 41.5 mm."},
		{[]sizing.Finding{fails, fails, unsure}, 0, sizing.Fails, "2 places will not hold at 32 mm."},
		{[]sizing.Finding{unsure}, 20, sizing.CannotTell, "1 place cannot be judged from this drawing; bring one of at least 900 px."},
	} {
		got, words := Verdict(c.found, at, unit.MM(c.holds))
		assert.Equal(t, c.want, got)
		assert.Equal(t, c.words, words)
	}
}

func TestItemCountsEnamelsOnly(t *testing.T) {
	sep := reduce.NewSeparation(1, 1)
	sep.Flats = []reduce.Flat{{Role: reduce.Enamel}, {Role: reduce.Metal}, {Role: reduce.Enamel}, {Role: reduce.Printed}, {Role: reduce.CutOut}}
	b := &sizing.Badge{Sep: sep, Scale: 10, Outline: [4]float64{0, 0, 300, 200}}
	for l := range sep.Flats {
		sep.Flats[l].ID = reduce.FlatID(l)
	}
	// The finish of a flat that is metal, or is no more, is not a fill.
	pearl := []sizing.VersionColour{{Flat: 2, Finish: sizing.Pearl}, {Flat: 1, Finish: sizing.Glitter}, {Flat: 3, Finish: sizing.Glow}, {Flat: 9, Finish: sizing.Glow}}
	i := Item(&sizing.Design{Fill: sizing.Hard}, &sizing.Version{Quantity: 70, Colours: pearl}, b, 2)
	assert.Equal(t, 2, i.Enamels)
	assert.Equal(t, 1, i.Printed)
	assert.Equal(t, []sizing.Finish{sizing.Pearl}, i.Fancy)
	assert.Equal(t, 70, i.Quantity)
	assert.Equal(t, 2, i.Posts)
	assert.InDelta(t, 30, float64(i.Longest), 1e-9)
	assert.InDelta(t, 25, float64(i.Mean), 1e-9)
	assert.False(t, i.Stamped)
	stamp := func(lines ...string) sizing.Back { return sizing.Back{Stamp: &sizing.Stamp{Lines: lines}} }
	assert.True(t, Item(&sizing.Design{Back: stamp("", "SKERRY")}, &sizing.Version{}, b, 1).Stamped)
	assert.False(t, Item(&sizing.Design{Back: stamp(" ", "")}, &sizing.Version{}, b, 1).Stamped, "nothing is said")
	assert.True(t, Item(&sizing.Design{Back: sizing.Back{Stamp: &sizing.Stamp{Mark: &sizing.Mark{}}}}, &sizing.Version{}, b, 1).Stamped, "a mark alone")
}

func TestBuysTellsWhatEachStepCostsAndBrings(t *testing.T) {
	list := run.Default()
	// Four enamels are included: common practice, no published source.
	require.Equal(t, 4, list.Colours.Included)
	item := run.Item{NewDie: true, Longest: 32, Mean: 30, Fill: sizing.Soft, Posts: 1, Quantity: 300}
	rows := Buys(list, one(item), 0, &sizing.Version{}, []reduce.Loss{
		{Count: 3, Mean: 5, Worst: 20}, {Count: 4, Mean: 2, Worst: 10}, {Count: 5, Mean: 0.2, Worst: 0.5}, {Count: 6, Mean: 0.2, Worst: 0.5},
	}, nil)
	require.Len(t, rows, 4)
	assert.Empty(t, rows[0].Words)
	assert.Equal(t, rows[0].Total, rows[1].Total, "the fourth is included")
	assert.Contains(t, rows[1].Words, "gets twice as close")
	assert.Contains(t, rows[2].Words, "A fifth enamel")
	assert.Contains(t, rows[2].Words, "in all")
	assert.Contains(t, rows[2].Words, "now every colour is as you drew it")
	assert.Contains(t, rows[3].Words, "nothing more to see")
}

// A colour that nobody could see is said to be one, and not worth its price
// where it has one.
func TestBuysSaysWhatNobodyCouldSee(t *testing.T) {
	item := run.Item{NewDie: true, Longest: 32, Mean: 30, Fill: sizing.Soft, Posts: 1, Quantity: 300}
	losses := []reduce.Loss{{Count: 3, Worst: 20}, {Count: 4, Worst: 10}, {Count: 5, Worst: 5}, {Count: 6, Worst: 2}}
	sight := &Sight{Where: "on the lapel", Losses: []apart.Loss{{}, {Unseen: true}, {Unseen: true}, {Step: 9}}}
	rows := Buys(run.Default(), one(item), 0, &sizing.Version{}, losses, sight)
	assert.Contains(t, rows[1].Words, "nobody could see it on the lapel")
	assert.NotContains(t, rows[1].Words, "price", "the fourth is included")
	assert.Contains(t, rows[2].Words, "nobody could see it on the lapel, so it is not worth its price")
	assert.NotContains(t, rows[3].Words, "nobody")
	assert.Equal(t, &sight.Losses[3], rows[3].Seen)
}

// At each count only the fancy fills that it still has are paid for.
func TestBuysPricesTheFillsOfEachCount(t *testing.T) {
	flats := []reduce.Flat{{ID: 0, Role: reduce.Enamel}, {ID: 1, Role: reduce.Enamel}}
	glitter := &sizing.Version{Colours: []sizing.VersionColour{{Flat: 1, Finish: sizing.Glitter}}}
	item := run.Item{NewDie: true, Longest: 32, Mean: 30, Fill: sizing.Soft, Posts: 1, Quantity: 300}
	losses := []reduce.Loss{{Count: 1, Flats: flats[:1]}, {Count: 2, Flats: flats}}
	rows := Buys(run.Default(), one(item), 0, glitter, losses, nil)
	assert.Contains(t, rows[1].Words, "about EUR\u00a00.06 a piece, EUR\u00a018.00 in all")
	assert.Contains(t, Buys(run.Default(), one(item), 0, &sizing.Version{}, losses, nil)[1].Words, "nothing more to pay")
}

func TestBuysWithoutAPriceStillTellsTheLoss(t *testing.T) {
	item := run.Item{NewDie: true, Longest: 500, Mean: 500, Fill: sizing.Soft, Posts: 1, Quantity: 300}
	rows := Buys(run.Default(), one(item), 0, &sizing.Version{}, []reduce.Loss{{Count: 1, Worst: 30}, {Count: 2, Worst: 25}}, nil)
	assert.Empty(t, rows[1].Total)
	assert.Contains(t, rows[1].Words, "price not known")
	assert.Contains(t, rows[1].Words, "a little closer")
}

func one(item run.Item) run.Wanted { return run.Wanted{Items: []run.Item{item}} }
