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

// Volume by density in two layers, worked by hand: brass, 400 mm2, 1.5 mm;
// 250 mm2 cut 0.45 mm deep, filled to 0.15 mm below the top with resin of 1.25
// g/cm3: 400*1.5 - 250*0.45 = 487.5 mm3 of metal = 4.158375 g, and 250*0.3 = 75
// mm3 of resin = 0.09375 g.
func TestRecessesAndFillAreAllowedFor(t *testing.T) {
	s := Stuff{Base: sizing.Brass, Thickness: 1.5, Fill: sizing.Soft, Depths: sizing.UsualDepths()}
	g, _, err := s.weigh(400, 250)
	require.NoError(t, err)
	assert.InDelta(t, 4.158375+0.09375, float64(g), 1e-9)
	s.Fill = sizing.Hard // flush: 250*0.45 = 112.5 mm3 of resin = 0.140625 g
	g, _, err = s.weigh(400, 250)
	require.NoError(t, err)
	assert.InDelta(t, 4.158375+0.140625, float64(g), 1e-9)
	s.Fill = sizing.Unfilled
	g, _, err = s.weigh(400, 250)
	require.NoError(t, err)
	assert.InDelta(t, 4.158375, float64(g), 1e-9)
}

// The resin's range is that of the table: cured epoxy, 1.1 to 1.4 g/cm3
// (Budinski, Engineering Materials, and further tables).
func TestResinLiesInThePublishedRange(t *testing.T) {
	for _, r := range table(t, "material_densities.csv") {
		if strings.HasPrefix(r["material"], "epoxy resin") {
			assert.Equal(t, sizing.Range{Low: r.num(t, "low_g_cm3"), High: r.num(t, "high_g_cm3")}, sizing.UsualDepths().Resin)
			return
		}
	}
	t.Fatal("no epoxy in the table")
}

// Every making inside the ranges weighs inside the range given.
func TestTheRangeHoldsEveryMakingInIt(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	in := func(s sizing.Range) float64 { return s.Low + r.Float64()*(s.High-s.Low) }
	for n := range 400 {
		s := Stuff{Base: []sizing.BaseMetal{sizing.Iron, sizing.Brass, sizing.Copper, sizing.Zinc}[r.Intn(4)], Thickness: unit.MM(0.4 + 2*r.Float64()),
			Fill: []sizing.Fill{sizing.Soft, sizing.Hard, sizing.Unfilled}[r.Intn(3)], Depths: sizing.UsualDepths()}
		area := 100 + 1000*r.Float64()
		filled := area * r.Float64()
		value, span, err := s.weigh(area, filled)
		require.NoError(t, err)
		recess := min(in(s.Depths.Recess), 0.75*float64(s.Thickness))
		deep := map[sizing.Fill]float64{sizing.Hard: recess, sizing.Soft: max(0, recess-in(s.Depths.Sunk)), sizing.Unfilled: 0}[s.Fill]
		mass := (in(densities[s.Base].Range)*(area*float64(s.Thickness)-filled*recess) + in(s.Depths.Resin)*filled*deep) / 1000
		require.GreaterOrEqual(t, mass, span.Low-1e-9, "seed 8, case %d", n)
		require.LessOrEqual(t, mass, span.High+1e-9, "seed 8, case %d", n)
		require.GreaterOrEqual(t, float64(value), span.Low-1e-9)
		require.LessOrEqual(t, float64(value), span.High+1e-9)
	}
}

// Board by its grammage (ISO 536: g/m2): 55 x 85 mm of 350 g/m2 is 1.63625 g.
func TestPackedWithClutchAndCard(t *testing.T) {
	m, err := massOf(sizing.Range{Low: 8, High: 9}, posts, 2, 1.5, sizing.UsualPacking(), 250)
	require.NoError(t, err)
	card := 1.63625
	assert.InDelta(t, 8+2*0.1, m.Worn.Low, 1e-9)
	assert.InDelta(t, 8+2*(0.1+0.4)+card+0.3, m.Packed.Low, 1e-9)
	assert.InDelta(t, 9+2*(0.25+1)+card+0.7, m.Packed.High, 1e-9)
	assert.InDelta(t, 250*m.Packed.High, m.All.High, 1e-9)
	assert.Equal(t, sizing.Range{Low: 9.5, High: 10.5}, m.Thick, "the base and a post of 8 to 9 mm")
	m, err = massOf(sizing.Range{}, magnets, 1, 1.5, sizing.UsualPacking(), 1)
	require.NoError(t, err)
	assert.InDelta(t, 1.5+0.45+1.5, m.Thick.Low, 1e-9, "a magnet lies flat behind the card")
	bare := sizing.Packing{}
	m, err = massOf(sizing.Range{Low: 1, High: 1}, bars, 1, 1.5, bare, 1)
	require.NoError(t, err)
	assert.InDelta(t, 1+0.8, m.Packed.Low, 1e-9)
	for _, bad := range []sizing.Packing{{CardGSM: -1}, {CardW: unit.MM(math.NaN())}, {CardThick: 50}, {Sleeve: sizing.Range{Low: 2, High: 1}}} {
		_, err := massOf(sizing.Range{}, posts, 1, 1.5, bad, 1)
		var r *reduce.Refusal
		assert.ErrorAs(t, err, &r)
	}
}

// The plain twin of Filled, on random separations.
func TestFilledAddsUpEveryEnamel(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	sep := reduce.NewSeparation(60, 40)
	sep.Flats = []reduce.Flat{{Role: reduce.Enamel}, {Role: reduce.CutOut}, {Role: reduce.Metal}, {Role: reduce.Enamel}}
	labels := []uint8{0, 1, 2, 3, reduce.None}
	for i := range sep.Labels {
		sep.Labels[i] = labels[r.Intn(5)]
		sep.Beside[i] = sep.Labels[i]
		if r.Intn(2) == 0 {
			sep.Beside[i], sep.Cover[i] = labels[r.Intn(5)], uint8(128+r.Intn(128))
		}
	}
	var want float64
	for i := range sep.Labels {
		want += sep.CoverOf(i, sep.WithRole(reduce.Enamel))
	}
	assert.InDelta(t, want, Filled(sep), 1e-6)
}

func TestABoundThatCannotBeIsRefusedInWords(t *testing.T) {
	for name, change := range map[string]func(*Wish){
		"recess":  func(w *Wish) { w.Stuff.Depths.Recess = sizing.Range{Low: 0.5, High: 0.4} },
		"resin":   func(w *Wish) { w.Stuff.Depths.Resin = sizing.Range{Low: 1, High: 99} },
		"nan":     func(w *Wish) { w.Stuff.Depths.Sunk = sizing.Range{Low: math.NaN(), High: 1} },
		"press":   func(w *Wish) { w.Back.Hold = &sizing.Hold{Press: sizing.Range{Low: -1, High: 1}} },
		"outside": func(w *Wish) { w.Back.Hand = [][2]float64{{0.5, 1.5}} },
		"lost":    func(w *Wish) { w.Back.Hand = [][2]float64{{math.NaN(), 0.5}} },
		"four":    func(w *Wish) { w.Back.Hand = make([][2]float64, 4) },
		"card":    func(w *Wish) { w.Back.Packing = &sizing.Packing{CardGSM: 1e9} },
	} {
		b := strike(disc(0, 0, 10), 12, 100, 30)
		s, err := ShapeOf(b.Sep, b.Outline)
		require.NoError(t, err)
		w := wished(b, sizing.Iron, 1.5, 0)
		change(&w)
		_, err = s.Advise(b.Scale, w)
		var r *reduce.Refusal
		if assert.ErrorAs(t, err, &r, name) {
			assert.NotEmpty(t, r.Do, name)
		}
	}
}
