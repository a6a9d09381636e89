// Package mend finds repairs for trouble spots: recipes that bring a drawing to
// what a die can hold, each tried on the spot and measured again before it is
// offered. Nothing is repaired here; what is chosen goes to the design's
// recipes.
package mend

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Offer is one way to repair a trouble spot.
type Offer struct {
	Recipes []sizing.Recipe `json:"recipes"`
	Words   string          `json:"words"` // what is done, in a sentence
	// Gentle is true when it alters no more than an artist would have to, and so
	// is made with the others when all are repaired.
	Gentle bool `json:"gentle"`
}

// manner is how a repair is tried: others may follow from it, but what grows
// must not push the whole neighbourhood about.
func (o *Offer) manner() manner {
	if o.Recipes[0].Kind == sizing.GrowArea {
		return alone
	}
	return following
}

// spot is a trouble spot on a drawing, for which repairs are thought of.
type spot struct {
	f     *sizing.Finding
	s     *reduce.Separation
	scale unit.PxPerMM
	l     *sizing.Limits
}

// ideas are the repairs that may do for a kind, the gentlest first. They are
// not tried yet.
var ideas = map[sizing.Kind]func(*spot) []Offer{
	sizing.ThinLine:    thinLine,
	sizing.NarrowArea:  narrowArea,
	sizing.FadesOut:    fadesOut,
	sizing.NoLine:      noLine,
	sizing.NoEdge:      noEdge,
	sizing.Gap:         gap,
	sizing.OpenArea:    openArea,
	sizing.SmallArea:   smallArea,
	sizing.Pinhole:     pinhole,
	sizing.MetalIsland: metalIsland,
	sizing.SmallCutOut: smallCutOut,
}

func (t *spot) ideas() []Offer {
	if find := ideas[t.f.Kind]; find != nil {
		return find(t)
	}
	return nil
}

// path returns the centreline of the spot in shares of the drawing, or its
// worst place when it has none.
func (t *spot) path() [][2]float64 {
	if len(t.f.Path) < 4 {
		return t.share(t.f.X, t.f.Y)
	}
	var all [][2]float64
	for i := 0; i+1 < len(t.f.Path); i += 2 {
		all = append(all, t.share(float64(t.f.Path[i]), float64(t.f.Path[i+1]))...)
	}
	return all
}

func (t *spot) share(x, y float64) [][2]float64 {
	return [][2]float64{{x / float64(t.s.W), y / float64(t.s.H)}}
}

// along is a repair along the spot.
func (t *spot) along(kind sizing.RecipeKind, words string, gentle bool) Offer {
	return Offer{Recipes: []sizing.Recipe{{Kind: kind, Points: t.path()}}, Words: words, Gentle: gentle}
}

// here is a repair at the spot's place; width 0 for what the limits allow.
func (t *spot) here(kind sizing.RecipeKind, width unit.MM, words string, gentle bool) Offer {
	return Offer{Recipes: []sizing.Recipe{{Kind: kind, Width: width, Points: t.share(t.f.X, t.f.Y)}}, Words: words, Gentle: gentle}
}

func mm(v unit.MM) string { return unit.InMM(v, 2) }
