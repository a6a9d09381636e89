package canvas

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

func planned(mm unit.MM, m sizing.Making, f sizing.Fill) Plan {
	return Plan{Size: mm, Making: m, Fill: f, Limits: sizing.DefaultLimits(m, f)}
}

func laidOut(t *testing.T, p Plan) Canvas {
	t.Helper()
	c, err := p.Canvas()
	require.NoError(t, err)
	return c
}

// The limits are common practice, no published source; the pixels were reckoned
// by hand: 8 px for 0.2 mm are 40 to the mm, 32 mm are 1280 px, and with 6 mm
// on both sides 1760, which is brought up to 1800.
func TestAUsualPinInPixels(t *testing.T) {
	p := planned(32, sizing.Struck, sizing.Soft)
	c := laidOut(t, p)
	assert.Equal(t, Canvas{W: 1800, H: 1800, Scale: 40, X0: 260, Y0: 260, X1: 1540, Y1: 1540}, c)
	assert.InDelta(t, 1016, c.PerInch(), 1e-9)
	want := map[NeedKey]int{NeedLine: 8, NeedGap: 12, NeedEdge: 12, NeedArea: 20, NeedCutOut: 60, NeedBridge: 60, NeedCapitals: 60, NeedSunk: 80}
	for _, n := range p.Needs(c) {
		assert.Equal(t, want[n.Key], n.Px, n.Key)
		delete(want, n.Key)
	}
	assert.Empty(t, want)
	assert.InDelta(t, 0.6, float64(p.SafeZone()), 1e-9, "outer edge 0.3, area beside it 0.3")
}

// By hand: 6 mm of 50 on a long side of 1400 px are 168 px; 1064 px are 38 mm.
func TestTheCanvasThatTheArtistHas(t *testing.T) {
	p := planned(38, sizing.Struck, sizing.Soft)
	p.W, p.H = 1000, 1400
	c := laidOut(t, p)
	assert.Equal(t, Canvas{W: 1000, H: 1400, Scale: 28, X0: 168, Y0: 168, X1: 832, Y1: 1232}, c)
	assert.InDelta(t, 38, float64(c.BoxH()), 1e-9)
	assert.InDelta(t, 664./28, float64(c.BoxW()), 1e-9)
	line := p.Needs(c)[0]
	assert.Equal(t, 6, line.Px, "5.6 px take a brush of 6")
	assert.Equal(t, "0.2 mm", line.Beside)
}

func TestCanvasesThatAreNone(t *testing.T) {
	for _, c := range [][2]int{{63, 400}, {0, 500}, {-5, 900}, {4000, 900}, {10001, 10000}, {math.MaxInt32, math.MaxInt32}} {
		p := planned(32, sizing.Struck, sizing.Soft)
		p.W, p.H = c[0], c[1]
		_, err := p.Canvas()
		var r *reduce.Refusal
		if assert.ErrorAs(t, err, &r, "%v", c) {
			assert.NotEmpty(t, r.Do)
		}
	}
	small := planned(2, sizing.Cast, sizing.Soft)
	_, err := small.Canvas()
	assert.Error(t, err, "no pin of 2 mm")
}

func TestEveryRecommendedCanvasServes(t *testing.T) {
	const seed = 5
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	for range 3000 {
		l := sizing.DefaultLimits(sizing.Struck, sizing.Soft)
		l.Line, l.Area, l.Edge = unit.MM(0.1+r.Float64()), unit.MM(0.1+r.Float64()), unit.MM(0.1+r.Float64())
		p := Plan{Size: unit.MM(5 + math.Round(1450*r.Float64())/10), Making: sizing.Struck, Fill: sizing.Soft, Limits: l}
		c := laidOut(t, p)
		require.Equal(t, c.W, c.H)
		require.LessOrEqual(t, c.W, greatestSide)
		require.InDelta(t, float64(p.Size), float64(c.BoxW()), 1e-9)
		require.NotEqual(t, Coarse, p.Fineness(c), "%v %+v", p.Size, l)
		if c.W < greatestSide {
			require.Equal(t, Fine, p.Fineness(c))
			require.GreaterOrEqual(t, p.thinnest().Px(c.Scale), comfortablePx-0.05)
			require.GreaterOrEqual(t, float64(c.Scale.MM(float64(c.X0))), float64(marginMM)-0.05, "room for the rulers")
		}
		for _, n := range p.Needs(c) {
			require.GreaterOrEqual(t, float64(n.Px)+hair, n.Exact, "a whole brush keeps to the limit")
			require.Less(t, float64(n.Px-1), n.Exact, "and one pixel less would not")
		}
	}
}

// A canvas is too coarse just when the tool's own judgement could not tell of a
// width at the limit, with hard edges, which are known to half a pixel.
func TestCoarseIsWhatCannotBeJudged(t *testing.T) {
	p := planned(32, sizing.Struck, sizing.Soft)
	p.H = 300
	seen := map[Fineness]int{}
	for p.W = 300; p.W <= 1200; p.W++ {
		c := laidOut(t, p)
		atLimit := sizing.Judge(p.Limits.Line, c.Scale.MM(0.5), p.Limits.Line)
		assert.Equal(t, atLimit == sizing.CannotTell, p.Fineness(c) == Coarse, "%d px", p.W)
		seen[p.Fineness(c)]++
		if p.Fineness(c) == Coarse {
			better := p
			better.W = p.sureSide(c)
			better.H = better.W * p.H / p.W
			b := laidOut(t, better)
			assert.NotEqual(t, Coarse, better.Fineness(b), "what is advised at %d px serves: %s", p.W, p.Says(c))
		}
	}
	assert.Greater(t, seen[Coarse], 10)
	assert.Greater(t, seen[Rough], 10)
}

func TestWhatIsSaidOfACanvas(t *testing.T) {
	p := planned(32, sizing.Struck, sizing.Soft)
	said := func(side int) string {
		p.W, p.H = side, side
		return p.Says(laidOut(t, p))
	}
	assert.Contains(t, said(300), "Too coarse: 0.2 mm is 1.4 px wide here")
	assert.Contains(t, said(300), "better on 1800 px")
	assert.Contains(t, said(700), "It will do, but")
	assert.Contains(t, said(1800), "Fine enough")
	assert.Contains(t, said(9000), "Finer than it need be")
}

func TestWithoutAFillNoEnamelIsAskedFor(t *testing.T) {
	p := planned(32, sizing.Struck, sizing.Unfilled)
	for _, n := range p.Needs(laidOut(t, p)) {
		assert.False(t, n.enamel(), n.Key)
	}
	assert.Equal(t, p.Limits.Edge, p.SafeZone())
	p.Limits.Lettering = 0
	for _, n := range p.Needs(laidOut(t, p)) {
		assert.NotEqual(t, NeedCapitals, n.Key, "a limit of nothing asks for nothing")
	}
}

// Contrast is that of WCAG 2.2: 3 to 1 is asked of graphics (1.4.11), 4.5 of
// text; an ink that has the same contrast to white and to black has 4.6.
func TestInksAreSeenOnWhiteAndOnBlack(t *testing.T) {
	for _, c := range []struct{ r, g, b uint8 }{{blue.R, blue.G, blue.B}, {brass.R, brass.G, brass.B}, {grey.R, grey.G, grey.B}} {
		at := colour.RGB8{R: c.r, G: c.g, B: c.b}
		assert.Greater(t, colour.Contrast(at, colour.RGB8{R: 255, G: 255, B: 255}), 4.)
		assert.Greater(t, colour.Contrast(at, colour.RGB8{}), 4.)
	}
}
