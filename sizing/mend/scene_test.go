package mend

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// Small drawings in letters: r, b, w enamel, # metal, . outside.
var letters = map[byte]uint8{'r': 0, 'b': 1, 'w': 2, '#': 3, '.': reduce.None}

func flats() []reduce.Flat {
	return []reduce.Flat{
		{ID: 10, Name: "red", Role: reduce.Enamel},
		{ID: 11, Name: "blue", Role: reduce.Enamel},
		{ID: 12, Name: "white", Role: reduce.Enamel},
		{ID: 13, Name: "steel", Role: reduce.Metal},
	}
}

// A letter is cell pixels wide and high; at scale, 0.2 mm.
const (
	cell  = 4
	scale = unit.PxPerMM(20)
)

// limits in cells: lines 1.5, edges 2, areas 2, the smallest area 2.5 square.
var limits = sizing.Limits{Line: 0.3, Edge: 0.4, Area: 0.4, AreaSize: 0.25}

func drawn(picture string) *reduce.Separation {
	rows := strings.Fields(picture)
	s := reduce.NewSeparation(len(rows[0])*cell, len(rows)*cell)
	s.Flats = flats()
	for i := range s.Labels {
		l := letters[rows[i/s.W/cell][i%s.W/cell]]
		s.Labels[i], s.Beside[i] = l, l
	}
	return s
}

func drawing(s *reduce.Separation, recipes ...sizing.Recipe) *Drawing {
	return &Drawing{Builder: wall.NewBuilder(s), Recipes: recipes, Scale: scale, Limits: limits}
}

// failing lists what fails of a drawing with its recipes.
func failing(t testing.TB, d *Drawing) []sizing.Finding {
	t.Helper()
	s, err := d.Builder.Apply(d.Recipes, d.Scale, d.Limits)
	require.NoError(t, err)
	m, err := wall.Measure(s, nil)
	require.NoError(t, err)
	var bad []sizing.Finding
	for _, f := range m.Findings(d.Scale, d.Limits) {
		if f.Verdict == sizing.Fails {
			bad = append(bad, f)
		}
	}
	return bad
}

// kinds lists the kinds of findings, each once, in order.
func kinds(all []sizing.Finding) []sizing.Kind {
	var list []sizing.Kind
next:
	for _, f := range all {
		for _, k := range list {
			if k == f.Kind {
				continue next
			}
		}
		list = append(list, f.Kind)
	}
	return list
}

// with is a drawing with further recipes.
func with(d *Drawing, more []sizing.Recipe) *Drawing {
	e := *d
	e.Recipes = append(append([]sizing.Recipe(nil), d.Recipes...), more...)
	return &e
}
