package calls

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/wasm/wire"
)

// discs are pixels of red discs on a clear ground: x, y and radius of each.
func discs(w, h int, all ...[3]float64) []byte {
	pix := make([]byte, 4*w*h)
	for i := range w * h {
		x, y := float64(i%w)+0.5, float64(i/w)+0.5
		for _, d := range all {
			if math.Hypot(x-d[0], y-d[1]) <= d[2] {
				copy(pix[4*i:], []byte{0xc8, 0x32, 0x2e, 255})
			}
		}
	}
	return pix
}

// apartOn opens discs as a design of 60 mm.
func apartOn(t *testing.T, s *Session, id string, w, h int, all ...[3]float64) wire.Picked {
	t.Helper()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: id, FileName: id + ".png", W: w, H: h, FileW: w, FileH: h, Space: "srgb"}, discs(w, h, all...))
	p := wire.Picked{Project: BlankProject()}
	p.Project.Order.Designs = []sizing.Design{o.Design}
	p.Project.Order.Designs[0].Size = sizeOf(60)
	return p
}

func chosen(t *testing.T, s *Session, p wire.Picked, c sizing.PartsChoice) wire.PartsChosen {
	t.Helper()
	got, _ := ask[wire.PartsChosen](t, s, "parts", wire.PartsAsk{Picked: p, Choice: c}, nil)
	d := &p.Project.Order.Designs[0]
	d.Parts, d.Recipes = got.Parts, got.Recipes
	return got
}

// A pin in two parts asks what they are; hung, it tells how; made one and hung
// again, the bridge is gone; a pin of one piece is not asked.
func TestThePersonSaysWhatPartsAre(t *testing.T) {
	s := NewSession()
	p := apartOn(t, s, "two", 400, 600, [3]float64{200, 160, 140}, [3]float64{210, 480, 70})
	d := &p.Project.Order.Designs[0]
	drawn := len(d.Recipes)
	asks := checked(t, s, p).Parts
	require.NotNil(t, asks)
	assert.Equal(t, 2, asks.Count)
	assert.Equal(t, sizing.PartsOpen, asks.Choice)
	assert.Contains(t, asks.Says, "Should they hang")

	got := chosen(t, s, p, sizing.PartsDangle)
	assert.True(t, got.Fits, got.Words)
	hung := checked(t, s, p)
	require.Len(t, hung.Parts.Joins, 1)
	j := hung.Parts.Joins[0]
	assert.Zero(t, hung.Parts.Loose)
	assert.Equal(t, "2 parts, hanging by one chain.", hung.Parts.Says)
	assert.Empty(t, j.Problem+j.Upper.Problem+j.Lower.Problem)
	assert.Len(t, j.Loops, max(1, j.Links+2*min(1, j.Links)))
	assert.InDelta(t, float64(j.Upper.Left.MM), (j.Upper.X-60)*60/530, 0.3, "from the left of what is drawn")
	assert.Empty(t, ofKind(hung.Findings, sizing.LoosePart))
	sizesNow, _ := ask[wire.Sizes](t, s, "sizes", wire.SizesAsk{Picked: p}, nil)
	assert.NotEmpty(t, sizesNow.Rows[0].Ranges, "eyes that are added are large enough at every size")

	one := chosen(t, s, p, sizing.PartsOne)
	assert.True(t, one.Fits)
	assert.Len(t, one.Recipes, drawn+1)
	joined := checked(t, s, p)
	assert.Equal(t, "2 parts as drawn, joined to one piece.", joined.Parts.Says)
	assert.Empty(t, ofKind(joined.Findings, sizing.LoosePart))
	d.Parts = sizing.Parts{}
	assert.Equal(t, sizing.PartsOne, checked(t, s, p).Parts.Choice, "a bridge says so too")

	again := chosen(t, s, p, sizing.PartsDangle)
	assert.Len(t, again.Recipes, drawn)
	assert.Equal(t, got.Parts, again.Parts)
	open := chosen(t, s, p, sizing.PartsOpen)
	assert.Empty(t, open.Parts.Joins)

	_, whole := opening(t, s, 200, 9)
	assert.Nil(t, checked(t, s, whole).Parts)
	none, _ := ask[wire.PartsChosen](t, s, "parts", wire.PartsAsk{Picked: whole, Choice: sizing.PartsDangle}, nil)
	assert.False(t, none.Fits)
}

// Every eye that is moved is told what it finds, and what then breaks is a trouble
// spot: an eye on no part, two that grow together, rings too small for the metal.
func TestEyesMovedByHand(t *testing.T) {
	s := NewSession()
	p := apartOn(t, s, "two", 400, 600, [3]float64{200, 160, 140}, [3]float64{200, 480, 70})
	d := &p.Project.Order.Designs[0]
	chosen(t, s, p, sizing.PartsDangle)
	at := func(x, y float64) sizing.Eye { return sizing.Eye{At: [2]float64{x / 400, y / 600}} }
	for name, c := range map[string]struct {
		join    sizing.Join
		room    outline.Room
		problem string
		spot    sizing.Kind
	}{
		"well":     {sizing.Join{Upper: at(200, 280), Lower: at(200, 430)}, outline.RoomThere, "", ""},
		"off":      {sizing.Join{Upper: at(200, 280), Lower: at(40, 430)}, outline.RoomOff, "", sizing.LoosePart},
		"together": {sizing.Join{Upper: at(180, 280), Lower: at(210, 280)}, outline.RoomThere, "meets", sizing.GrownTogether},
		"ring":     {sizing.Join{Upper: at(200, 280), Lower: at(200, 430), Ring: 3}, outline.RoomThere, "larger", ""},
	} {
		d.Parts.Joins = []sizing.Join{c.join}
		live, _ := ask[wire.HeldParts](t, s, "eyes", wire.EyesAsk{Picked: p, Joins: d.Parts.Joins}, nil)
		require.Len(t, live.Joins, 1, name)
		assert.Equal(t, c.room, live.Joins[0].Lower.Room, name)
		assert.Contains(t, live.Joins[0].Problem, c.problem, name)
		assert.Equal(t, c.room != outline.RoomThere, live.Joins[0].Lower.Problem != "", name)
		found := checked(t, s, p)
		assert.Equal(t, live.Joins, found.Parts.Joins, name)
		if c.spot == "" {
			assert.Empty(t, ofKind(found.Findings, sizing.LoosePart), name)
			assert.Empty(t, ofKind(found.Findings, sizing.GrownTogether), name)
		} else {
			assert.NotEmpty(t, ofKind(found.Findings, c.spot), name)
			assert.Positive(t, found.Parts.Loose, name)
		}
	}
}

// Eyes go with the drawing to its next revision; one whose part is no more is
// told of; the drawing before comes back as it was left.
func TestEyesGoWithARevision(t *testing.T) {
	s := NewSession()
	p := apartOn(t, s, "a", 400, 600, [3]float64{200, 160, 140}, [3]float64{200, 480, 70})
	d := &p.Project.Order.Designs[0]
	chosen(t, s, p, sizing.PartsDangle)
	before := d.Parts
	// The same drawing on a canvas twice as large, 100 px further right.
	apartOn(t, s, "b", 1000, 1200, [3]float64{500, 320, 280}, [3]float64{500, 960, 140})
	r, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "b"}, nil)
	require.Len(t, r.Design.Parts.Joins, 1)
	was, is := before.Joins[0], r.Design.Parts.Joins[0]
	for _, e := range [][2]sizing.Eye{{was.Upper, is.Upper}, {was.Lower, is.Lower}} {
		assert.InDelta(t, 800*e[0].At[0]+100, 1000*e[1].At[0], 6)
		assert.InDelta(t, e[0].At[1], e[1].At[1], 0.01)
	}
	assert.Equal(t, sizing.PartsDangle, r.Design.Parts.Choice)
	assert.Equal(t, was.Links, is.Links)
	assert.Empty(t, r.Lost)

	p.Project.Order.Designs[0] = r.Design
	back, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "a"}, nil)
	assert.Equal(t, before, back.Design.Parts)

	apartOn(t, s, "c", 400, 600, [3]float64{200, 160, 140})
	p.Project.Order.Designs[0] = back.Design
	gone, _ := ask[wire.Revised](t, s, "revise", wire.ReviseAsk{Picked: p, Drawing: "c"}, nil)
	assert.Empty(t, gone.Design.Parts.Joins)
	assert.Contains(t, gone.Lost, hangWords)
}
