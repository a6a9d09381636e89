package fastener

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

func shaped(t *testing.T, s shape, longest unit.MM) (*Shape, *sizing.Badge) {
	b := strike(s, 21, testLong, longest)
	z, err := ShapeOf(b.Sep, b.Outline)
	require.NoError(t, err)
	return z, b
}

func byHand(t *testing.T, s *Shape, b *sizing.Badge, hand ...[2]float64) Advice {
	w := wished(b, sizing.Iron, 1.5, 0)
	w.Back.Hand = hand
	a, err := s.Advise(b.Scale, w)
	require.NoError(t, err)
	return a
}

func TestTheToolSaysWhereAHandIsWorse(t *testing.T) {
	s, b := shaped(t, disc(0, 0, 10), 45)
	own, err := s.Advise(b.Scale, wished(b, sizing.Iron, 1.5, 2))
	require.NoError(t, err)
	same := s.Shares(b.Scale, own.Posts)
	a := byHand(t, s, b, same...)
	assert.True(t, a.ByHand)
	assert.Empty(t, a.Worse, "its own places are not worse than its own")
	assert.Equal(t, own.Posts, a.Proposal)
	assert.Equal(t, own.Posts, a.Posts)
	says := func(hand ...[2]float64) string { return strings.Join(byHand(t, s, b, hand...).Worse, " ") }
	assert.Contains(t, says([2]float64{0.02, 0.5}, [2]float64{0.8, 0.5}), "shows beyond the edge")
	assert.Contains(t, says([2]float64{0.45, 0.4}, [2]float64{0.55, 0.4}), "do not fit side by side")
	assert.Contains(t, says([2]float64{0.3, 0.4}, [2]float64{0.7, 0.5}), "not level")
	assert.Contains(t, says([2]float64{0.2, 0.4}, [2]float64{0.5, 0.4}), "off its middle")
	assert.Contains(t, says([2]float64{0.2, 0.4}, [2]float64{0.48, 0.4}), "lifted")
	assert.Contains(t, says([2]float64{0.3, 0.7}, [2]float64{0.7, 0.7}), "leans forward")
}

func TestOnePostByHandBesideTheBalanceIsWorse(t *testing.T) {
	s, b := shaped(t, disc(0, 0, 10), 30)
	a := byHand(t, s, b, [2]float64{0.65, 0.5})
	assert.Equal(t, 1, a.Chosen)
	assert.Contains(t, strings.Join(a.Worse, " "), "Pinned upright it turns by")
	assert.Equal(t, sizing.Either, a.Hang.Straight)
}

func TestPostsByHandOutliveAnotherSize(t *testing.T) {
	s, b := shaped(t, disc(0, 0, 10), 40)
	for _, size := range []float64{20, 40, 80} {
		w := wished(b, sizing.Iron, 1.5, 0)
		w.Back.Hand = [][2]float64{{0.25, 0.4}, {0.75, 0.4}}
		a, err := s.Advise(unit.PxPerMM((b.Outline[2]-b.Outline[0])/size), w)
		require.NoError(t, err)
		assert.InDelta(t, 0.25*size, float64(a.Posts[0].X), 0.01)
		assert.InDelta(t, 0.4*size, float64(a.Posts[1].Y), 0.01)
	}
}

func TestAMovedPostSnapsToSymmetry(t *testing.T) {
	s, b := shaped(t, disc(0, 0, 10), 40)
	at := func(x, y float64) sizing.Post { return sizing.Post{X: unit.MM(x), Y: unit.MM(y)} }
	near := func(want, got sizing.Post) {
		assert.InDelta(t, float64(want.X), float64(got.X), 0.05)
		assert.InDelta(t, float64(want.Y), float64(got.Y), 0.05)
	}
	near(at(20, 14), s.Snap(b.Scale, []sizing.Post{at(20.6, 14)}, 0)[0])
	near(at(22, 14), s.Snap(b.Scale, []sizing.Post{at(22, 14)}, 0)[0])
	pair := s.Snap(b.Scale, []sizing.Post{at(10, 16), at(29.5, 16.4)}, 1)
	near(at(30, 16), pair[1])
	near(at(10, 16), pair[0])
	assert.Equal(t, []sizing.Post{at(20.6, 14)}, s.Snap(b.Scale, []sizing.Post{at(20.6, 14)}, -1))
	assert.Equal(t, []sizing.Post{at(20.6, 14)}, s.Snap(b.Scale, []sizing.Post{at(20.6, 14)}, 3))
}

func TestEveryFasteningHasItsOwnRoom(t *testing.T) {
	for _, s := range cabinet() {
		b, a := advise(t, s, 0)
		z, err := ShapeOf(b.Sep, b.Outline)
		require.NoError(t, err)
		all := z.Fixings(b.Scale, a.Chosen)
		require.Len(t, all, 4)
		for _, f := range all {
			assert.NotEmpty(t, f.Caution, f.Name)
			for _, p := range f.Posts {
				require.False(t, math.IsNaN(float64(p.X+p.Y)))
				half := f.Bar / 2
				for _, end := range []unit.MM{-half, 0, half} {
					at := sizing.Post{X: p.X + end, Y: p.Y}
					if f.Upright {
						at = sizing.Post{X: p.X, Y: p.Y + end}
					}
					if f.Hidden {
						assert.True(t, solidWithin(b, at, f.Cover/2-0.3), "%s: %s said to be hidden shows", s.name, f.Name)
					}
				}
			}
		}
	}
	_, disc := advise(t, specimen{"", 32, disc(0, 0, 10)}, 0)
	z, b := shaped(t, join(oval(0, 0, 15, 5)), 40)
	bar := z.Fixings(b.Scale, disc.Chosen)[2]
	assert.Equal(t, sizing.PinBar, bar.Fastening)
	assert.True(t, bar.Hidden)
	assert.Equal(t, unit.MM(25), bar.Bar, "%+v", bar)
}

func TestAChosenFasteningStandsOnTheBack(t *testing.T) {
	z, b := shaped(t, disc(0, 0, 10), 40)
	for _, k := range []sizing.Fastening{sizing.MagnetBack, sizing.ScrewBack, sizing.PinBar} {
		w := wished(b, sizing.Iron, 1.5, 0)
		w.Back.Fastening = k
		a, err := z.Advise(b.Scale, w)
		require.NoError(t, err)
		assert.Equal(t, k, a.Fastening)
		assert.True(t, a.Hidden)
		assert.Equal(t, k == sizing.PinBar, a.Bar > 0)
		assert.Equal(t, fixtureOf(k).cover, float64(a.Clutch))
		assert.NotContains(t, strings.Join(a.HangSays, " "), "on cloth and clutch")
		assert.Contains(t, a.Reason, fixtureOf(k).name)
	}
}

// The region where a post may stand, scaled by s, is that for a room smaller
// by s: the region scales but for the inset, which does not.
func TestTheRegionForAPostScalesButForItsInset(t *testing.T) {
	for _, s := range cabinet() {
		z, b := shaped(t, s.shape, 40)
		for _, by := range []float64{0.5, 1.3, 3} {
			one, scaled := z.at(b.Scale), z.at(unit.PxPerMM(float64(b.Scale)/by))
			const room = butterfly/2 + edgeMargin
			for i, c := range scaled.clear {
				near := math.Abs(c-room) < 1e-9
				if (c >= room) != (one.clear[i] >= room/by) && !near {
					t.Fatalf("%s: cell %d", s.name, i)
				}
			}
			assert.InEpsilon(t, by*by*one.whole.Area, scaled.whole.Area, 1e-9)
			assert.InEpsilon(t, math.Pow(by, 4)*one.whole.IMax, scaled.whole.IMax, 1e-9)
			assert.InDelta(t, by*one.CX, scaled.CX, 1e-9)
		}
	}
}

// What is asked for twice is what was placed once.
func TestPlacesKeptAreThoseFound(t *testing.T) {
	for _, s := range cabinet()[:6] {
		z, b := shaped(t, s.shape, s.longest)
		w := wished(b, sizing.Iron, 1.5, 0)
		first, err := z.Advise(b.Scale, w)
		require.NoError(t, err)
		for mm := range 40 { // more sizes than are kept
			scale := b.Scale * unit.PxPerMM(1+float64(mm)/50)
			a, err := z.Advise(scale, w)
			require.NoError(t, err)
			if mm%13 == 0 {
				alone, err := ShapeOf(b.Sep, b.Outline)
				require.NoError(t, err)
				fresh, err := alone.Advise(scale, w)
				require.NoError(t, err)
				assert.Equal(t, fresh, a, "%s at another size", s.name)
			}
		}
		again, err := z.Advise(b.Scale, w)
		require.NoError(t, err)
		assert.Equal(t, first, again)
	}
}

func TestRandomShapesAreAdvisedWithoutAPanic(t *testing.T) {
	r := rand.New(rand.NewSource(31))
	for n := range 150 {
		w, h := 3+r.Intn(70), 3+r.Intn(70)
		sep := reduce.NewSeparation(w, h)
		sep.Flats = []reduce.Flat{{Role: reduce.Metal}, {Role: reduce.Enamel}, {Role: reduce.CutOut}}
		dense := r.Float64()
		for i := range sep.Labels {
			if r.Float64() < dense {
				l := uint8(r.Intn(3))
				sep.Labels[i], sep.Beside[i] = l, l
			}
		}
		box, ok := sizing.Outline(sep)
		if !ok {
			continue
		}
		z, err := ShapeOf(sep, box)
		if err != nil {
			continue
		}
		scale := sizing.ScaleFor(box, sizing.Size{MM: unit.MM(5 + 100*r.Float64()), By: sizing.ByLongest})
		wish := wished(&sizing.Badge{Sep: sep}, sizing.Iron, 1.5, sizing.PostCount(r.Intn(4)))
		wish.Back.Fastening = []sizing.Fastening{"", sizing.MagnetBack, sizing.PinBar, sizing.ScrewBack}[r.Intn(4)]
		for range r.Intn(4) {
			wish.Back.Hand = append(wish.Back.Hand, [2]float64{r.Float64(), r.Float64()})
		}
		a, err := z.Advise(scale, wish)
		require.NoError(t, err, "seed 31, case %d", n)
		for _, p := range a.Posts {
			require.False(t, math.IsNaN(float64(p.X+p.Y)), "seed 31, case %d", n)
		}
		for _, g := range []sizing.Range{a.Hang.Askew, a.Hang.Droop, a.Hang.Holds, a.Mass.Pin, a.Mass.All, a.Mass.Thick} {
			require.True(t, g.Low <= g.High && !math.IsNaN(g.Low+g.High), "seed 31, case %d: %v", n, g)
		}
		z.Fixings(scale, max(1, a.Chosen))
		a.Findings(scale, box)
		z.Snap(scale, a.Posts, 0)
	}
}

func TestAClutchThatShowsIsATroubleSpot(t *testing.T) {
	b, a := advise(t, specimen{"", 15, disc(0, 0, 10)}, 2)
	found := a.Findings(b.Scale, b.Outline)
	require.NotEmpty(t, found)
	for _, f := range found {
		assert.Equal(t, sizing.ClutchShows, f.Kind)
		assert.Equal(t, sizing.Holds, f.Verdict)
		assert.InDelta(t, float64(f.Limit), float64(f.Thinnest+f.Typical), 1e-9)
	}
	b, a = advise(t, specimen{"", 32, disc(0, 0, 10)}, 1)
	assert.Empty(t, a.Findings(b.Scale, b.Outline))
}

func TestWhatShowsIsWhatTheCircleLeavesTheMetalBy(t *testing.T) {
	z, b := shaped(t, disc(0, 0, 10), 30)
	a := byHand(t, z, b, [2]float64{0.5, 0.1})
	// 3 mm from the edge of a disc of 15 mm radius; a rubber clutch of 10 mm.
	assert.InDelta(t, 5-3, float64(a.Shows[0]), 0.12)
	assert.False(t, a.Hidden)
}
