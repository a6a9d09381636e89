package mend

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// planted are drawings with one fault each, and the kind of it.
var planted = []struct {
	name    string
	kind    sizing.Kind
	picture string
}{
	{"a line of one cell between two colours", sizing.ThinLine, `
		..............................
		.############################.
		.############################.
		.##rrrrrrrr#bbbbbbbbbbbbbbb##.
		.##rrrrrrrr#bbbbbbbbbbbbbbb##.
		.##rrrrrrrr#bbbbbbbbbbbbbbb##.
		.##rrrrrrrr#bbbbbbbbbbbbbbb##.
		.##rrrrrrrr#bbbbbbbbbbbbbbb##.
		.##rrrrrrrr#bbbbbbbbbbbbbbb##.
		.############################.
		.############################.
		..............................`},
	{"a strip of one cell in metal that can spare some", sizing.NarrowArea, `
		..............................
		.############################.
		.############################.
		.############################.
		.###rrrrrrrrrrrrrrrrrrrrrr###.
		.############################.
		.############################.
		.##bbbbbbbbbbbbbbbbbbbbbbbb##.
		.##bbbbbbbbbbbbbbbbbbbbbbbb##.
		.##bbbbbbbbbbbbbbbbbbbbbbbb##.
		.############################.
		.############################.
		..............................`},
	{"an area of two cells by two", sizing.SmallArea, `
		..............................
		.############################.
		.############################.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.##rrrrrrr######rrrrrrrrrrr##.
		.##rrrrrrr######rrrrrrrrrrr##.
		.##rrrrrrr##bb##rrrrrrrrrrr##.
		.##rrrrrrr##bb##rrrrrrrrrrr##.
		.##rrrrrrr######rrrrrrrrrrr##.
		.##rrrrrrr######rrrrrrrrrrr##.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.############################.
		.############################.
		..............................`},
	{"two colours that touch", sizing.NoLine, `
		..............................
		.############################.
		.############################.
		.##rrrrrrrrrrrrbbbbbbbbbbbb##.
		.##rrrrrrrrrrrrbbbbbbbbbbbb##.
		.##rrrrrrrrrrrrbbbbbbbbbbbb##.
		.##rrrrrrrrrrrrbbbbbbbbbbbb##.
		.##rrrrrrrrrrrrbbbbbbbbbbbb##.
		.############################.
		.############################.
		..............................`},
	{"no edge", sizing.NoEdge, `
		..............................
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		.rrrrrrrrrrrrrrrrrrrrrrrrrrrr.
		..............................`},
	{"a gap in a line", sizing.Gap, `
		..............................
		.############################.
		.############################.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.##rrrrrrrrrrrbbbbbbbbbbbbb##.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.##rrrrrrrrrr##bbbbbbbbbbbb##.
		.############################.
		.############################.
		..............................`},
	{"a speck of metal", sizing.MetalIsland, `
		..............................
		.############################.
		.############################.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.##rrrrrrrrrrr#rrrrrrrrrrrr##.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.##rrrrrrrrrrrrrrrrrrrrrrrr##.
		.############################.
		.############################.
		..............................`},
}

func TestWhatIsPlantedIsRepaired(t *testing.T) {
	for _, c := range planted {
		d := drawing(drawn(c.picture))
		require.Equal(t, []sizing.Kind{c.kind}, kinds(failing(t, d)), c.name)
		o, err := All(d, nil)
		require.NoError(t, err, c.name)
		assert.Empty(t, o.Left, c.name)
		assert.Empty(t, failing(t, with(d, o.Recipes)), "%s: measured again, nothing fails, of any kind", c.name)
		assert.Positive(t, o.Change.MM2, c.name)
		assert.Less(t, o.Change.Share, 0.5, c.name)
		again, err := All(with(d, o.Recipes), nil)
		require.NoError(t, err, c.name)
		assert.Empty(t, again.Recipes, "%s: repairing twice changes nothing more", c.name)
		assert.Zero(t, again.Change.MM2, c.name)
	}
}

func TestEveryPlantedFaultHasOffersThatDo(t *testing.T) {
	for _, c := range planted {
		d := drawing(drawn(c.picture))
		f := failing(t, d)[0]
		offers, err := For(d, f, nil)
		require.NoError(t, err, c.name)
		require.NotEmpty(t, offers, c.name)
		for _, o := range offers {
			assert.Empty(t, failing(t, with(d, o.Recipes)), "%s: %s", c.name, o.Words)
			assert.NotEmpty(t, o.Words, c.name)
			assert.Positive(t, o.Change.MM2, c.name)
		}
	}
}

func TestOneRepairLeavesTheOtherPlacesAlone(t *testing.T) {
	s := drawn(`
		..............................
		.############################.
		.############################.
		.##rrrrrr#bbbbbbbb#wwwwwwww##.
		.##rrrrrr#bbbbbbbb#wwwwwwww##.
		.##rrrrrr#bbbbbbbb#wwwwwwww##.
		.##rrrrrr#bbbbbbbb#wwwwwwww##.
		.##rrrrrr#bbbbbbbb#wwwwwwww##.
		.############################.
		.############################.
		..............................`)
	d := drawing(s)
	bad := failing(t, d)
	require.Len(t, bad, 2)
	offers, err := For(d, bad[0], nil)
	require.NoError(t, err)
	left := failing(t, with(d, offers[0].Recipes))
	require.Len(t, left, 1)
	assert.Equal(t, bad[1].X, left[0].X)
}

func TestWhatCannotBeRepairedIsLeftToTheArtistWithAReason(t *testing.T) {
	// Lines and areas of one cell, side by side: there is no room for them all.
	s := drawn(`
		..............................
		.############################.
		.############################.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.##r#b#r#b#r#b#r#b#r#b#r#b###.
		.############################.
		.############################.
		..............................`)
	d := drawing(s)
	o, err := All(d, nil)
	require.NoError(t, err)
	require.NotEmpty(t, o.Left)
	for _, l := range o.Left {
		assert.NotEmpty(t, l.Why)
	}
	assert.Len(t, failing(t, with(d, o.Recipes)), len(o.Left), "what is left is what fails")
	again, err := All(with(d, o.Recipes), nil)
	require.NoError(t, err)
	assert.Empty(t, again.Recipes)
}

func TestCrowdedLinesOfOneColourCanBeOpenedUp(t *testing.T) {
	s := drawn(`
		..............................
		.############################.
		.############################.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.##rrrrrrrr##r##rrrrrrrrrrr##.
		.############################.
		.############################.
		..............................`)
	d := drawing(s)
	bad := failing(t, d)
	require.Equal(t, []sizing.Kind{sizing.NarrowArea}, kinds(bad))
	offers, err := For(d, bad[0], nil)
	require.NoError(t, err)
	var made []sizing.RecipeKind
	for _, o := range offers {
		made = append(made, o.Recipes[0].Kind)
	}
	assert.Contains(t, made, sizing.WidenArea)
	assert.Contains(t, made, sizing.DropThin)
	assert.Contains(t, made, sizing.OpenUp)
}

func TestAPointCanBeEndedOrThickened(t *testing.T) {
	s := reduce.NewSeparation(240, 120)
	s.Flats = flats()
	for i := range s.Labels {
		x, y := float64(i%240)+0.5, float64(i/240)+0.5
		l := uint8(0)
		if d := min(x, y, 240-x, 120-y); d < 4 {
			l = reduce.None
		} else if d < 20 {
			l = 3
		}
		s.Labels[i], s.Beside[i] = l, l
		if part := min(1, (200-x)/10-math.Abs(y-60)+0.5); l == 0 && part > 0 { // the point, to the true edge
			s.Labels[i], s.Beside[i], s.Cover[i] = 0, 3, uint8(255*(1-part))
			if part >= 0.5 {
				s.Labels[i], s.Beside[i], s.Cover[i] = 3, 0, uint8(255*part)
			}
		}
	}
	d := drawing(s)
	m, err := wall.Measure(s, nil)
	require.NoError(t, err)
	var point *sizing.Finding
	for _, f := range m.Findings(scale, limits) {
		if f.Kind == sizing.FadesOut {
			point = &f
			break
		}
	}
	require.NotNil(t, point, "%+v", m.Findings(scale, limits))
	offers, err := For(d, *point, nil)
	require.NoError(t, err)
	require.Len(t, offers, 2)
	for _, o := range offers {
		n, err := wall.Measure(o.Struck, nil)
		require.NoError(t, err)
		for _, f := range n.Findings(scale, limits) {
			assert.NotEqual(t, sizing.FadesOut, f.Kind, o.Words)
			assert.NotEqual(t, sizing.Fails, f.Verdict, o.Words)
		}
	}
}

func TestAStoppedRepairGivesNothing(t *testing.T) {
	stop := errors.New("stopped")
	d := drawing(drawn(planted[0].picture))
	_, err := All(d, func(float64, string) error { return stop })
	assert.ErrorIs(t, err, stop)
	_, err = For(d, failing(t, d)[0], func(float64, string) error { return stop })
	assert.ErrorIs(t, err, stop)
}

// scribble is a random drawing: blobs and strokes of every flat.
func scribble(rng *rand.Rand) *reduce.Separation {
	s := reduce.NewSeparation(40+rng.IntN(60), 40+rng.IntN(60))
	s.Flats = flats()
	for range 4 + rng.IntN(30) {
		l := uint8(rng.IntN(5))
		if l == 4 {
			l = reduce.None
		}
		x, y, w, h := rng.IntN(s.W), rng.IntN(s.H), 1+rng.IntN(30), 1+rng.IntN(8)
		if rng.IntN(2) == 0 {
			w, h = h, w
		}
		for v := y; v < min(s.H, y+h); v++ {
			for u := x; u < min(s.W, x+w); u++ {
				i := v*s.W + u
				s.Beside[i], s.Labels[i] = s.Labels[i], l
				s.Cover[i] = uint8(128 + rng.IntN(128))
			}
		}
	}
	return s
}

func TestRandomDrawingsAreRepairedOrLeftButNeverMadeWorse(t *testing.T) {
	for seed := range uint64(25) {
		rng := rand.New(rand.NewPCG(seed, 5))
		d := drawing(scribble(rng))
		before := failing(t, d)
		o, err := All(d, nil)
		require.NoError(t, err, "seed %d", seed)
		after := failing(t, with(d, o.Recipes))
		assert.Len(t, after, len(o.Left), "seed %d", seed)
		for i := range after {
			assert.NotNil(t, match(&after[i], before, 5*float64(cell)), "seed %d: %s at %.0f, %.0f is new", seed, after[i].Kind, after[i].X, after[i].Y)
		}
	}
}

func FuzzAll(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	f.Fuzz(func(t *testing.T, a, b uint64) {
		d := drawing(scribble(rand.New(rand.NewPCG(a, b))))
		o, err := All(d, nil)
		require.NoError(t, err)
		again, err := All(with(d, o.Recipes), nil)
		require.NoError(t, err)
		assert.LessOrEqual(t, len(again.Left), len(o.Left))
	})
}

func TestWhatIsTakenBackIsAsItWas(t *testing.T) {
	for seed := range uint64(10) {
		b, err := newBench(drawing(scribble(rand.New(rand.NewPCG(seed, 9)))))
		require.NoError(t, err)
		was := b.keep(b.whole())
		found, err := b.measure(nil)
		require.NoError(t, err)
		for i := range found {
			for _, o := range b.spot(&found[i]).ideas() {
				_, stays, err := b.try(&found[i], o, following)
				require.NoError(t, err)
				if stays {
					b.takeBack(was)
					continue
				}
				is := b.keep(b.whole())
				require.Equal(t, was.sep.Labels, is.sep.Labels, "seed %d %s", seed, o.Words)
				require.Equal(t, was.sep.Cover, is.sep.Cover, "seed %d %s", seed, o.Words)
				require.Equal(t, was.built, is.built, "seed %d %s", seed, o.Words)
			}
		}
	}
}

func TestARepairIsWrongWhenItLeavesItsSpotOrMakesAnother(t *testing.T) {
	b, err := newBench(drawing(drawn(planted[0].picture)))
	require.NoError(t, err)
	at := func(kind sizing.Kind, x, thinnest float64, v sizing.Verdict) sizing.Finding {
		return sizing.Finding{Kind: kind, Verdict: v, X0: x, X1: x + 5, Y0: 10, Y1: 15, Thinnest: unit.MM(thinnest), Length: 1, Limit: 0.3, Error: 0.02}
	}
	spot := at(sizing.ThinLine, 10, 0.1, sizing.Fails)
	other := at(sizing.NarrowArea, 60, 0.2, sizing.Fails)
	before := []sizing.Finding{spot, other}
	assert.Empty(t, b.wrong(&spot, before, []sizing.Finding{other}), "the other place is as it was")
	for why, after := range map[string]sizing.Finding{
		"still there":         spot,
		"no longer told":      at(sizing.ThinLine, 11, 0.29, sizing.CannotTell),
		"new of another kind": at(sizing.Gap, 10, 0.1, sizing.Fails),
		"new elsewhere":       at(sizing.NarrowArea, 200, 0.2, sizing.Fails),
		"the other is worse":  at(sizing.NarrowArea, 60, 0.1, sizing.Fails),
	} {
		assert.Len(t, b.wrong(&spot, before, []sizing.Finding{after}), 1, why)
	}
	open := []sizing.Finding{at(sizing.OpenArea, 40, 0.2, sizing.Fails)}
	assert.Empty(t, b.wrong(&spot, open, []sizing.Finding{at(sizing.OpenArea, 40, 0.1, sizing.Fails)}), "a narrower opening is no worse")
	assert.Empty(t, b.wrong(&spot, before, []sizing.Finding{at(sizing.FadesOut, 10, 0.1, sizing.Holds)}), "a note is no fault")
}
