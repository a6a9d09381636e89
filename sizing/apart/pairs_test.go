package apart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
)

func usual() *Thresholds {
	t := Usual()
	return &t
}

// Common practice, no published source: gold beside yellow, silver beside pale
// grey and black nickel beside black read as one surface. The others are told
// apart in the usual palettes.
func TestPlatingsThatReadAsOne(t *testing.T) {
	for _, c := range []struct {
		plating sizing.PlatingID
		enamel  string
		same    bool
	}{
		{"gold", "#ffd200", true}, {"gold", "#f2c230", true}, {"gold", "#f7d154", true}, {"gold", "#ffe066", true},
		{"silver", "#d9dde0", true}, {"silver", "#c8ccd0", true}, {"silver", "#e8e8e8", true},
		{"black-nickel", "#000000", true}, {"black-nickel", "#111111", true}, {"black-nickel", "#20242a", true},
		{"dyed-black", "#000000", true}, {"dyed-white", "#ffffff", true},
		{"gold", "#1b2a49", false}, {"gold", "#000000", false}, {"gold", "#c8402f", false}, {"gold", "#2f5d7c", false},
		{"silver", "#ffd200", false}, {"silver", "#000000", false}, {"silver", "#c8402f", false},
		{"black-nickel", "#ffd200", false}, {"black-nickel", "#c8402f", false},
	} {
		p := plating(t, c.plating)
		seen := besideMetal(hex(t, c.enamel), &p, colour.Normal, usual())
		assert.Equal(t, c.same, seen.ByColour == sizing.Fails, "%s beside %s: %.1f", c.plating, c.enamel, seen.Colour)
		assert.Equal(t, min(seen.Dark.Colour, seen.Bright.Colour), seen.Colour, "told apart only if both reflections are")
	}
}

// WCAG 2.1, 1.4.11 asks 3:1 of graphics and never rounds: #959595 on white
// prints 3.00 and fails (testdata/reference/wcag_contrast.csv).
func TestLightnessIsNotRounded(t *testing.T) {
	s := &Scene{Flats: []reduce.Flat{{ID: 0, RGB: hex(t, "#959595"), Role: reduce.Enamel}, {ID: 1, RGB: hex(t, "#ffffff"), Role: reduce.Enamel}}}
	p := Pair{Kind: Touching, A: 0, B: 1}
	seen := s.seen(&p, usual())
	assert.InDelta(t, 2.9953, seen[0].Lightness, 1e-4)
	assert.Equal(t, sizing.Fails, seen[0].ByLightness)
	assert.Equal(t, sizing.Holds, seen[0].ByColour)
}

// A red and a green of one lightness are told apart by the normal eye and, far
// less, by one without the middle-wave cone.
func TestDeficienciesAreLookedAt(t *testing.T) {
	m, flats := pin(t, "#b85450", "#7a7a3c", 0)
	pairs := Pairs(m.Meetings(), at(t, flats, 30, "silver"), usual())
	p := pairs[len(pairs)-1]
	for i := range pairs {
		if pairs[i].Kind == Touching {
			p = pairs[i]
		}
	}
	require.Equal(t, Touching, p.Kind)
	require.Len(t, p.Seen, 4)
	for i, v := range colour.Visions() {
		assert.Equal(t, v, p.Seen[i].Vision)
	}
	assert.Equal(t, sizing.Holds, p.Seen[0].ByColour)
	assert.Less(t, p.Seen[2].Colour, p.Seen[0].Colour/2, "deutan")
}

func TestHowColoursMeet(t *testing.T) {
	m, flats := pin(t, "#c8402f", "#2f5d7c", 5)
	s := at(t, flats, 30, "gold")
	pairs := Pairs(m.Meetings(), s, usual())
	require.Len(t, pairs, 3)
	kinds := map[PairKind]int{}
	for _, p := range pairs {
		kinds[p.Kind]++
		if p.Kind == AcrossLine {
			assert.InDelta(t, 5/float64(s.Scale), float64(p.Width), 0.3)
			assert.InDelta(t, 26, float64(p.Length), 3)
		}
	}
	assert.Equal(t, map[PairKind]int{AcrossLine: 1, BesideLine: 2}, kinds)
}

// What reads as one comes first; every idea parts its pair and breaks none.
func TestIdeasTellApart(t *testing.T) {
	m, flats := pin(t, "#8a8c90", "#999b9e", 0)
	s := at(t, flats, 30, "silver")
	pairs := Pairs(m.Meetings(), s, usual())
	require.True(t, pairs[0].Same())
	require.Equal(t, Touching, pairs[0].Kind)
	platings := Platings(pairs, s, sizing.Soft, usual())
	ideas := Ideas(pairs, platings, s, 200, 200, usual())
	built, shaded := false, false
	for _, idea := range ideas {
		require.Positive(t, idea.Fixes, "%+v", idea)
		require.NotEmpty(t, idea.Words)
		switch {
		case idea.Recipe != nil:
			built = true
			assert.Equal(t, sizing.BuildBorder, idea.Recipe.Kind)
			assert.InDelta(t, 0.5, idea.Recipe.Points[0][0], 0.02)
		case idea.Edit != nil:
			shaded = true
			after := Pairs(m.Meetings(), s.recoloured(idea.Edit.Flat, *idea.Edit.RGB), usual())
			for _, p := range after {
				if p.Kind == pairs[idea.Pair].Kind && p.A == pairs[idea.Pair].A && p.B == pairs[idea.Pair].B {
					assert.False(t, p.Same(), "%+v", idea)
				}
			}
			assert.Zero(t, idea.Breaks)
		default:
			next := *s
			next.Plating = plating(t, idea.Plating)
			for _, p := range Pairs(m.Meetings(), &next, usual()) {
				if p.Kind == BesideLine && p.A == pairs[idea.Pair].A {
					assert.False(t, p.Same(), "%+v", idea)
				}
			}
		}
	}
	assert.True(t, built, "a line where two greys meet")
	assert.True(t, shaded)
}

func TestGoldBesideYellowIsOfferedAnotherPlating(t *testing.T) {
	m, flats := pin(t, "#f2c230", "#c8402f", 5)
	s := at(t, flats, 30, "gold")
	pairs := Pairs(m.Meetings(), s, usual())
	require.True(t, pairs[0].Same())
	platings := Platings(pairs, s, sizing.Soft, usual())
	var gold, silver Ranked
	for i, r := range platings {
		switch r.Plating {
		case "gold":
			gold = r
		case "silver":
			silver = r
		}
		if i > 0 && r.Fits == platings[i-1].Fits {
			assert.LessOrEqual(t, r.Share, platings[i-1].Share, "the best first")
		}
	}
	assert.True(t, gold.Chosen)
	assert.Equal(t, []reduce.FlatID{0}, gold.Fail)
	assert.Equal(t, reduce.FlatID(0), gold.Decides)
	assert.Contains(t, gold.Words, "reads as one with left")
	assert.InDelta(t, 0.5, gold.Share, 0.1)
	assert.Empty(t, silver.Fail)
	assert.Equal(t, 1.0, silver.Share)
	replated := false
	for _, idea := range Ideas(pairs, platings, s, 200, 200, usual()) {
		replated = replated || idea.Plating != ""
	}
	assert.True(t, replated)
	for _, r := range Platings(pairs, s, sizing.Hard, usual()) {
		assert.Equal(t, !plating(t, r.Plating).SoftOnly, r.Fits, "dyed and antique go with soft fill only: common practice, no published source")
	}
}

func TestThresholdsThatAreNoneAreRefused(t *testing.T) {
	require.NoError(t, usual().Check())
	for name, f := range map[string]func(*Thresholds, float64){
		"gap": func(t *Thresholds, v float64) { t.Gap = v }, "letter": func(t *Thresholds, v float64) { t.Letter = v },
		"best": func(t *Thresholds, v float64) { t.LetterBest = v }, "noticed": func(t *Thresholds, v float64) { t.Noticed = v },
		"colour": func(t *Thresholds, v float64) { t.Colour = v }, "metal": func(t *Thresholds, v float64) { t.Metal = v },
		"lightness": func(t *Thresholds, v float64) { t.Lightness = v },
	} {
		for _, v := range []float64{0, -1, 1e6, math.NaN(), math.Inf(1)} {
			bad := usual()
			f(bad, v)
			err := bad.Check()
			require.Error(t, err, "%s %v", name, v)
			assert.Contains(t, err.Error(), "Give one from", "%s %v", name, v)
		}
	}
	upside := usual()
	upside.Letter, upside.LetterBest = 22, 16
	assert.Error(t, upside.Check())
}
