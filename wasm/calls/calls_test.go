package calls

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// roundel draws a disc of two enamels in a dark ring on a clear ground, with
// soft edges: px pixels square, the ring's lines line pixels wide.
func roundel(px int, line float64) []byte {
	const fine = 4
	out := make([]byte, 4*px*px)
	mid, r := float64(px)/2, 0.45*float64(px)
	for y := range px {
		for x := range px {
			var sum [4]float64
			for s := range fine * fine {
				sx, sy := float64(x)+(float64(s%fine)+0.5)/fine, float64(y)+(float64(s/fine)+0.5)/fine
				d := math.Hypot(sx-mid, sy-mid)
				c := [3]float64{200, 40, 40}
				switch {
				case d > r:
					continue
				case d > r-line, math.Abs(sx-mid) < line/2:
					c = [3]float64{20, 24, 40}
				case sx > mid:
					c = [3]float64{240, 220, 180}
				}
				for k := range 3 {
					sum[k] += c[k]
				}
				sum[3]++
			}
			if sum[3] == 0 {
				continue
			}
			i := 4 * (y*px + x)
			for k := range 3 {
				out[i+k] = byte(math.Round(sum[k] / sum[3]))
			}
			out[i+3] = byte(math.Round(255 * sum[3] / (fine * fine)))
		}
	}
	return out
}

// ask does one call and reads its answer.
func ask[A any](t *testing.T, s *Session, name string, request any, bytes []byte) (A, []byte) {
	t.Helper()
	text, err := json.Marshal(request)
	require.NoError(t, err)
	reply, err := s.Do(name, text, Job{Bytes: bytes})
	require.NoError(t, err)
	back, err := json.Marshal(reply.Answer)
	require.NoError(t, err)
	var a A
	require.NoError(t, json.Unmarshal(back, &a))
	return a, reply.Bytes
}

// opening opens a roundel and returns the design proposed for it.
func opening(t *testing.T, s *Session, px int, line float64) (wire.Opened, wire.Picked) {
	t.Helper()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "a", FileName: "sea_roundel.png", W: px, H: px, FileW: px, FileH: px, Space: "srgb", Ground: reduce.GroundAuto}, roundel(px, line))
	p := BlankProject()
	p.Order.Designs = []sizing.Design{o.Design}
	return o, wire.Picked{Project: p}
}

func TestOpeningProposesADesign(t *testing.T) {
	o, _ := opening(t, NewSession(), 400, 10)
	assert.Equal(t, 2, o.Suggested, o.Reason)
	assert.True(t, o.Lined)
	assert.Equal(t, reduce.GroundClear, o.Ground)
	assert.Equal(t, "Sea roundel", o.Design.Name)
	assert.Equal(t, 2, o.Design.Colours)
	assert.Empty(t, o.Design.Recipes, "the ring is an outer edge and the bar a line already")
	assert.GreaterOrEqual(t, o.Design.Size.MM, usualLeast)
}

func TestCheckFindsTheThinLineAtASmallSizeOnly(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 5)
	d := &p.Project.Order.Designs[0]
	for _, c := range []struct {
		mm    float64
		fails bool
	}{{20, false}, {12, true}} { // 360 px across: 5 px are 0.28 mm at 20 mm, 0.17 mm at 12 mm
		d.Size = sizeOf(c.mm)
		d.Limits.Edge = d.Limits.Line
		check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
		assert.InDelta(t, c.mm, float64(check.Longest), 0.05)
		thin := 0
		for _, f := range check.Findings {
			if f.Kind == sizing.ThinLine && f.Verdict == sizing.Fails {
				thin++
				assert.InDelta(t, 5*c.mm/360, float64(f.Thinnest), 0.5*c.mm/360, "half a working pixel")
			}
		}
		assert.Equal(t, c.fails, thin > 0, "at %v mm: %+v", c.mm, check.Findings)
		assert.Empty(t, check.QuoteProblem)
		assert.Equal(t, c.fails, check.Verdict == sizing.Fails, check.Words)
	}
}

func sizeOf(mm float64) sizing.Size {
	return sizing.Size{MM: unit.MM(mm), By: sizing.ByLongest}
}

func TestAskingTwiceGivesTheSameBytes(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	for _, v := range []wire.View{wire.ViewStruck, wire.ViewBack, wire.ViewFlat, wire.ViewDrawing} {
		a, one := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: p, View: v, LongSide: 200}, nil)
		_, two := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: p, View: v, LongSide: 200}, nil)
		assert.Equal(t, one, two)
		assert.Len(t, one, 4*a.W*a.H)
		assert.Equal(t, 200, max(a.W, a.H))
	}
}

func TestBuysPricesEveryCount(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	b, _ := ask[wire.Buys](t, s, "buys", wire.BuysAsk{Picked: p}, nil)
	require.NotEmpty(t, b.Rows)
	assert.Equal(t, 1, b.Rows[0].Count)
	for _, r := range b.Rows {
		assert.NotEmpty(t, r.Total)
		assert.LessOrEqual(t, r.Mean, r.Worst)
	}
	assert.Greater(t, b.Rows[0].Worst, 10.0, "red and cream in one enamel must look wrong")
}

func TestTouchNamesWhatLiesUnderAPlace(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 10)
	off, _ := ask[wire.Touch](t, s, "touch", wire.TouchAsk{Picked: p, X: 2, Y: 2}, nil)
	assert.False(t, off.Hit)
	bar, _ := ask[wire.Touch](t, s, "touch", wire.TouchAsk{Picked: p, X: 200, Y: 200}, nil)
	require.True(t, bar.Hit)
	scale := 360 / float64(p.Project.Order.Designs[0].Size.MM)
	assert.InDelta(t, 10/scale, float64(bar.Width), 1/scale)
}

func TestRefusedDrawingLeavesTheOpenOne(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 6)
	text, _ := json.Marshal(wire.OpenAsk{ID: "b", FileName: "b.png", W: 50, H: 50, Space: "srgb", Ground: reduce.GroundAuto})
	_, err := s.Do("open", text, Job{Bytes: make([]byte, 4*50*50)})
	var r *reduce.Refusal
	require.ErrorAs(t, err, &r)
	assert.NotEmpty(t, r.Do)
	ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
}

func TestBadRequestsAreFailuresInWords(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 200, 6)
	p.Project.Order.Designs[0].Size = sizeOf(-3)
	for name, request := range map[string]any{
		"check":   wire.CheckAsk{Picked: p},
		"picture": wire.PictureAsk{Picked: p, View: wire.ViewFlat, LongSide: 1},
		"flats":   wire.FlatsAsk{Drawing: "nowhere"},
		"nothing": struct{}{},
	} {
		text, _ := json.Marshal(request)
		_, err := s.Do(name, text, Job{})
		require.Error(t, err, name)
		assert.NotEmpty(t, FailureOf(err).What)
	}
}

func TestStopEndsACall(t *testing.T) {
	text, _ := json.Marshal(wire.OpenAsk{ID: "a", FileName: "a.png", W: 300, H: 300, Space: "srgb", Ground: reduce.GroundAuto})
	_, err := NewSession().Do("open", text, Job{Bytes: roundel(300, 8), Progress: func(float64, string) error { return ErrStopped }})
	assert.True(t, errors.Is(err, ErrStopped))
	assert.Equal(t, wire.Stopped, FailureOf(err).Kind)
}

func TestHelloOffersColoursToStartFrom(t *testing.T) {
	h, _ := ask[wire.Hello](t, NewSession(), "hello", wire.HelloAsk{}, nil)
	require.Len(t, h.Starting, h.MaxCount)
	for i, c := range h.Starting {
		assert.NotEmpty(t, c.Name)
		for _, o := range h.Starting[:i] {
			assert.NotEqual(t, o.RGB, c.RGB)
		}
	}
}

func TestMeasuresAreSaidAsTheyAre(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 400, 10)
	d := &p.Project.Order.Designs[0]
	d.Size, d.Posts = sizeOf(38.1), 2 // an inch and a half
	c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Equal(t, "38.1 mm", c.Shown.Longest.InMM)
	assert.Equal(t, "1.50 in", c.Shown.Longest.InInches)
	assert.Contains(t, c.Shown.InMM, " × ")
	require.Len(t, c.Places, 2)
	for i, post := range c.Back.Posts {
		assert.InDelta(t, float64(c.W-post.X), float64(c.Places[i].Left.MM), 0.25, "mirrored from behind")
		assert.InDelta(t, float64(post.Y), float64(c.Places[i].Top.MM), 0.25)
	}
	assert.Zero(t, c.GrowTo.MM, "everything holds already")
	d.Size = sizeOf(8)
	c, _ = ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Greater(t, c.GrowTo.MM, d.Size.MM)
	assert.Equal(t, c.HoldsFrom, c.GrowTo.MM)
}
