package calls

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/apart"
	"badgewright/sizing/eye"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

var onLapel = eye.Viewing{Distance: eye.OnTheLapel, Acuity: 1}

func readingOf(t *testing.T, s *Session, a wire.ReadingAsk) wire.ReadingAnswer {
	t.Helper()
	got, _ := ask[wire.ReadingAnswer](t, s, "reading", a, nil)
	return got
}

// The roundel is 360 px across and has lines of 5 px: at 36 mm one of 0.5 mm,
// parted up to 1.72 m by a normal eye (ISO 8596).
func TestWhatCanBeRead(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 5)
	p.Project.Order.Designs[0].Size = sizing.Size{MM: 36, By: sizing.ByLongest}
	a := wire.ReadingAsk{Picked: p, Viewing: onLapel, Cloth: colour.RGB8{}, Thresholds: apart.Usual()}
	got := readingOf(t, s, a)
	require.Len(t, got.Rows, 3)
	assert.Equal(t, []string{"in the hand", "on the lapel", "across a table"}, []string{got.Rows[0].Name, got.Rows[1].Name, got.Rows[2].Name})
	assert.Zero(t, got.At.Fail)
	assert.Equal(t, "everything can be told apart", got.At.Words)
	assert.NotZero(t, got.Rows[2].Fail)
	assert.Empty(t, got.Rows[2].Findings, "in short")
	assert.Greater(t, got.Rows[2].ReadFrom.MM, unit.MM(36))
	assert.Less(t, got.Rows[2].Lines, got.Rows[1].Lines)
	for i := 1; i < 3; i++ {
		assert.GreaterOrEqual(t, got.Rows[i].ReadFrom.MM, got.Rows[i-1].ReadFrom.MM)
	}
	a.Viewing.Distance = 3210
	far := readingOf(t, s, a)
	assert.Equal(t, "from 3.21 m", far.At.Name)
	require.NotEmpty(t, far.At.Findings)
	for _, f := range far.At.Findings {
		assert.NotNil(t, f.Path)
	}
	a.AsDrawn = true
	assert.NotEmpty(t, readingOf(t, s, a).At.Findings)
}

func TestWhoMeetsWhom(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 5)
	got, _ := ask[wire.Neighbours](t, s, "neighbours", wire.NeighboursAsk{Picked: p, Thresholds: apart.Usual()}, nil)
	require.Len(t, got.Pairs, 3, "two enamels across a line, and each beside the metal")
	assert.Len(t, got.Platings, len(sizing.Platings()))
	assert.NotEmpty(t, got.Words)
	assert.NotNil(t, got.Ideas)
	// A version's own colours count.
	yellow := colour.RGB8{R: 242, G: 194, B: 48}
	for _, pair := range got.Pairs {
		if pair.Kind == apart.BesideLine {
			p.Project.Order.Designs[0].Versions[0].Colours = []sizing.VersionColour{{Flat: pair.A, RGB: &yellow}}
		}
	}
	got, _ = ask[wire.Neighbours](t, s, "neighbours", wire.NeighboursAsk{Picked: p, Thresholds: apart.Usual()}, nil)
	assert.True(t, got.Pairs[0].Same(), "gold beside yellow reads as one: common practice, no published source")
	assert.NotEmpty(t, got.Ideas)
}

func TestTheLookOnCloth(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 5)
	cloth := colour.RGB8{R: 62, G: 82, B: 112}
	a := wire.LookAsk{Picked: p, LongSide: 300, Cloth: cloth, Viewing: onLapel, Plain: true}
	frame, plain := ask[wire.Picture](t, s, "look", a, nil)
	drawn, _ := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: p, View: wire.ViewStruck, LongSide: 300}, nil)
	assert.Equal(t, drawn, frame, "in the frame of the pin")
	assert.Equal(t, []byte{62, 82, 112, 255}, plain[:4])
	contrast := func(pix []byte) (most float64) {
		for i := 4; i+3 < len(pix); i += 4 {
			require.EqualValues(t, 255, pix[i+3], "opaque")
			most = max(most, float64(max(pix[i+1], pix[i-3])-min(pix[i+1], pix[i-3])))
		}
		return most
	}
	a.Plain = false
	before := contrast(plain)
	for _, mm := range []eye.Viewing{{Distance: 400, Acuity: 1}, onLapel, {Distance: 3000, Acuity: 1}} {
		a.Viewing = mm
		again, seen := ask[wire.Picture](t, s, "look", a, nil)
		assert.Equal(t, frame, again)
		require.Len(t, seen, len(plain))
		now := contrast(seen)
		assert.Less(t, now, before, "%v", mm)
		before = now
	}
	stopped := errors.New("stopped")
	text, err := json.Marshal(a)
	require.NoError(t, err)
	_, err = s.Do("look", text, Job{Progress: func(float64, string) error { return stopped }})
	assert.ErrorIs(t, err, stopped)
}

// A look is drawn at a part of the pixels asked for and lies where the pin does:
// it is all but what the eye leaves of the pin in full.
func TestALookLiesWhereThePinDoes(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 5)
	a := wire.LookAsk{Picked: p, LongSide: 1100, Cloth: colour.RGB8{R: 214, G: 203, B: 180}, Viewing: onLapel, Plain: true}
	frame, plain := ask[wire.Picture](t, s, "look", a, nil)
	a.Plain = false
	_, seen := ask[wire.Picture](t, s, "look", a, nil)
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	pic := eye.Picture{W: frame.W, H: frame.H, Pix: make([]uint32, frame.W*frame.H)}
	for i := range pic.Pix {
		pic.Pix[i] = uint32(plain[4*i]) | uint32(plain[4*i+1])<<8 | uint32(plain[4*i+2])<<16 | 255<<24
	}
	want, err := eye.Seen(pic, check.Scale.MM(1/frame.Scale), onLapel, a.Cloth, pic.Itself(), nil)
	require.NoError(t, err)
	mean := 0.0
	for i, p := range want.Pix {
		mean += math.Abs(float64(p>>8&255)-float64(seen[4*i+1])) / float64(len(want.Pix))
	}
	assert.Less(t, mean, 2.5, "levels")
	t.Logf("%.2f levels apart on average", mean)
}

// One look must not depend on what was drawn before it.
func TestALookIsTheSameWhateverWasLookedAt(t *testing.T) {
	var all [2][]byte
	for k := range all {
		s := NewSession()
		_, p := opening(t, s, 300, 5)
		a := wire.LookAsk{Picked: p, LongSide: 1100, Cloth: colour.RGB8{R: 20, G: 20, B: 20}, Viewing: onLapel}
		if k == 1 {
			b := a
			b.Plain = true
			ask[wire.Picture](t, s, "look", b, nil)
			b.Plain, b.Viewing.Distance = false, 250
			ask[wire.Picture](t, s, "look", b, nil)
		}
		_, all[k] = ask[wire.Picture](t, s, "look", a, nil)
	}
	assert.Equal(t, all[0], all[1])
}

func TestTheAnswerAtAGlance(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 5)
	p.Project.Order.Designs[0].Size = sizing.Size{MM: 36, By: sizing.ByLongest}
	a := wire.GlanceAsk{Picked: p, Viewing: onLapel, Thresholds: apart.Usual()}
	got, _ := ask[wire.Glance](t, s, "glance", a, nil)
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	require.NotEmpty(t, got.Made)
	assert.Equal(t, check.HoldsFrom, got.Made[0].From.MM, "one answer, wherever it is asked")
	r := readingOf(t, s, wire.ReadingAsk{Picked: p, Viewing: onLapel, Thresholds: apart.Usual()})
	assert.Equal(t, r.At.ReadFrom, got.ReadFrom)
	assert.True(t, got.CanMake)
	assert.True(t, got.CanRead)
	assert.Equal(t, "36 mm", got.Asked.InMM)
	a.Viewing.Distance = eye.AcrossTheTable
	far, _ := ask[wire.Glance](t, s, "glance", a, nil)
	assert.False(t, far.CanRead)
	assert.True(t, far.CanMake)
}

func TestColoursThatNobodyCouldSee(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 5)
	got, _ := ask[wire.Buys](t, s, "buys", wire.BuysAsk{Picked: p}, nil)
	assert.Nil(t, got.Rows[0].Seen, "it was not asked for")
	got, _ = ask[wire.Buys](t, s, "buys", wire.BuysAsk{Picked: p, Viewing: &onLapel}, nil)
	require.NotNil(t, got.Rows[1].Seen)
	assert.Greater(t, got.Rows[1].Seen.Step, 20.0, "red and cream")
	assert.False(t, got.Rows[1].Seen.Unseen)
	assert.Greater(t, got.Rows[0].Seen.Worst, got.Rows[1].Seen.Worst)
	assert.True(t, got.Rows[5].Seen.Unseen, "there are but two colours")
	blind, _ := ask[wire.Buys](t, s, "buys", wire.BuysAsk{Picked: p, Viewing: &onLapel, Noticed: 99}, nil)
	assert.True(t, blind.Rows[1].Seen.Unseen)
	assert.Contains(t, blind.Rows[1].Words, "nobody could see it on the lapel")
}

func TestAbsurdSightIsRefusedInWords(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 5)
	refused := func(name string, request any) {
		t.Helper()
		text, err := json.Marshal(request)
		require.NoError(t, err)
		_, err = s.Do(name, text, Job{})
		var r *reduce.Refusal
		require.ErrorAs(t, err, &r, "%s %s", name, text)
		assert.NotEmpty(t, r.Do)
	}
	for _, v := range []eye.Viewing{{}, {Distance: -400, Acuity: 1}, {Distance: 1e7, Acuity: 1}, {Distance: 400}, {Distance: 400, Acuity: -1}, {Distance: 400, Acuity: 40}} {
		refused("reading", wire.ReadingAsk{Picked: p, Viewing: v, Thresholds: apart.Usual()})
		refused("glance", wire.GlanceAsk{Picked: p, Viewing: v, Thresholds: apart.Usual()})
		refused("look", wire.LookAsk{Picked: p, Viewing: v, LongSide: 200})
		refused("buys", wire.BuysAsk{Picked: p, Viewing: &v})
	}
	refused("look", wire.LookAsk{Picked: p, Viewing: onLapel, LongSide: 5})
	refused("look", wire.LookAsk{Picked: p, Viewing: onLapel, LongSide: 99999})
	refused("buys", wire.BuysAsk{Picked: p, Viewing: &onLapel, Noticed: -3})
	refused("reading", wire.ReadingAsk{Picked: p, Viewing: onLapel})
	refused("neighbours", wire.NeighboursAsk{Picked: p})
}

func BenchmarkReading(b *testing.B) {
	s, p := benchSession(b)
	p.Project.Order.Designs[0].Recipes = nil
	do := benchCall(b, "reading", func(i int) any {
		p.Project.Order.Designs[0].Size.MM = 30 + unit.MM(i%40)/10
		return wire.ReadingAsk{Picked: p, Viewing: onLapel, Thresholds: apart.Usual()}
	})
	do(s, 0)
	i := 0
	for b.Loop() {
		i++
		do(s, i)
	}
}

func BenchmarkNeighbours(b *testing.B) {
	s, p := benchSession(b)
	platings := sizing.Platings()
	do := benchCall(b, "neighbours", func(i int) any {
		p.Project.Order.Designs[0].Versions[0].Plating = platings[i%len(platings)].ID
		return wire.NeighboursAsk{Picked: p, Thresholds: apart.Usual()}
	})
	do(s, 0)
	i := 0
	for b.Loop() {
		i++
		do(s, i)
	}
}

// A distance that is dragged, at 2.5 megapixels.
func BenchmarkLookFromAfar(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "look", func(i int) any {
		return wire.LookAsk{Picked: p, LongSide: 1650, Viewing: eye.Viewing{Distance: eye.InTheHand + unit.MM(10*(i%5)), Acuity: 1}}
	})
	i := 0
	for b.Loop() {
		do(s, i)
		i++
	}
}

// The same of another size every round.
func BenchmarkLook(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "look", func(i int) any {
		p.Project.Order.Designs[0].Size.MM = 30 + unit.MM(i%16)/4
		return wire.LookAsk{Picked: p, LongSide: 1650, Viewing: eye.Viewing{Distance: eye.InTheHand, Acuity: 1 + float64(i%5)/50}}
	})
	i := 0
	for b.Loop() {
		do(s, i)
		i++
	}
}

func BenchmarkGlance(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "glance", func(int) any {
		return wire.GlanceAsk{Picked: p, Viewing: onLapel, Thresholds: apart.Usual(), AsDrawn: true}
	})
	do(s, 0)
	for b.Loop() {
		do(s, 1)
	}
}

func BenchmarkBuysSeen(b *testing.B) {
	s, p := benchSession(b)
	do := benchCall(b, "buys", func(int) any { return wire.BuysAsk{Picked: p, Viewing: &onLapel} })
	for b.Loop() {
		do(s, 0)
	}
}

func TestASmallShareMissedIsNotRoundedAway(t *testing.T) {
	assert.Equal(t, "all", shareSays(1))
	assert.Equal(t, "99 %", shareSays(0.9991))
	assert.Equal(t, "0 %", shareSays(0.004))
	none := &wire.Glance{MadeSays: "as drawn, no size up to 120 mm holds", Asked: unit.Shown(32)}
	assert.Equal(t, "As drawn, no size up to 120 mm holds; no size of pin can be read wholly on the lapel; you asked for 32 mm.", glanceWords(none, "on the lapel"))
}
