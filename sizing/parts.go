package sizing

import (
	"slices"

	"badgewright/sizing/unit"
)

// PartsChoice is what the person says of a pin that is in more than one part.
type PartsChoice string

// The choices.
const (
	// PartsOpen leaves it open: a dangle where eyes are drawn to hang it by, a
	// mistake otherwise.
	PartsOpen   PartsChoice = ""
	PartsDangle PartsChoice = "dangle" // the parts hang from each other by rings
	// PartsOne means one piece of metal: recipes (BuildBridge) join the parts.
	PartsOne PartsChoice = "one"
)

// Parts says how the parts of a pin hang together.
type Parts struct {
	Choice PartsChoice `json:"choice"`
	Joins  []Join      `json:"joins,omitempty"`
}

// Join is one place at which a part hangs from another.
type Join struct {
	Upper Eye `json:"upper"`
	Lower Eye `json:"lower"`
	// Ring is the outer diameter of the jump ring at either end; 0 for the usual.
	Ring unit.MM `json:"ring,omitempty"`
	// Links of chain between the rings; 0 when one ring alone joins the two.
	Links int `json:"links"`
}

// Eye is a hole that a ring goes through.
type Eye struct {
	// At is its middle, in shares (0..1) of the drawing's width and height.
	At [2]float64 `json:"at"`
	// Drawn is true of a hole that the drawing has; others are added, with metal
	// round them.
	Drawn bool `json:"drawn,omitempty"`
}

// Eyes are the recipes of the eyes that the drawing does not have.
func (p *Parts) Eyes() []Recipe {
	var all []Recipe
	if p.Choice != PartsDangle {
		return nil
	}
	for i := range p.Joins {
		for _, e := range []Eye{p.Joins[i].Upper, p.Joins[i].Lower} {
			if !e.Drawn {
				all = append(all, Recipe{Kind: AddEye, Points: [][2]float64{e.At}})
			}
		}
	}
	return all
}

// Struck is every recipe that a design is built with: its own, then the eyes
// that its parts hang by.
func (d *Design) Struck() []Recipe {
	return append(slices.Clone(d.Recipes), d.Parts.Eyes()...)
}

// The recipes of the outline.
const (
	BuildBridge RecipeKind = "build-bridge" // metal between parts, along Points; Width 0 for Limits.Bridge
	AddEye      RecipeKind = "add-eye"      // a hole at Points of Width, or Limits.Eye, with metal of Limits.EyeRim round it
	RoundTip    RecipeKind = "round-tip"    // the tip at Points to a radius of Width, or Limits.Tip
)
