package mend

import (
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// A small area is made larger before it is given up if it is most of what it
// must be, and compact, as a dot or a window is: what is far too small, or the
// tip of a corner, would no longer be what was drawn (this tool's choice).
const (
	mostOfIt = 0.7 // of the smallest area
	compact  = 0.6 // of its box; a disc fills 0.79 of it, a triangle 0.5
	squat    = 2.5 // sides of its box, longer by shorter
)

func thinLine(t *spot) []Offer {
	return []Offer{
		t.along(sizing.ThickenLine, "Thicken this stretch to "+mm(t.f.Limit)+", into the larger area beside it.", true),
		t.along(sizing.OpenUp, "Take this line out: lines stand too close here.", false),
		t.along(sizing.DropThin, "Let this thin stretch go.", false),
	}
}

func narrowArea(t *spot) []Offer {
	room := float64(t.f.Length) * float64(t.f.Typical)
	all := []Offer{
		t.along(sizing.WidenArea, "Widen this place to "+mm(t.f.Limit)+", out of the metal beside it; a line moves where it must.", true),
		t.along(sizing.DropThin, "Let this narrow place be metal.", room <= t.l.AreaSize), // no more than may go as an area of its own
	}
	for _, wall := range t.walls() {
		all = append(all, Offer{
			Recipes: []sizing.Recipe{{Kind: sizing.OpenUp, Points: wall}},
			Words:   "Open it up: take out the line beside it.",
		})
	}
	return all
}

func fadesOut(t *spot) []Offer {
	metal := t.onMetal()
	thicken, words := sizing.WidenArea, "Widen its end to "+mm(t.f.Limit)+" from where it is marked."
	end := "End it where it is marked: the metal closes the rest."
	if metal {
		thicken, words = sizing.ThickenLine, "Thicken its end to "+mm(t.f.Limit)+" from where it is marked."
		end = "End it where it is marked."
	}
	return []Offer{
		t.along(thicken, words, false),
		t.along(sizing.DropThin, end, false),
	}
}

func noLine(t *spot) []Offer {
	one := t.along(sizing.BuildBorder, "Build the line here, "+mm(t.l.Line)+" wide.", true)
	all := Offer{Recipes: []sizing.Recipe{{Kind: sizing.BuildLines}}, Words: "Build lines wherever two colours touch.", Gentle: true}
	if t.f.Count > 1 {
		return []Offer{all, one}
	}
	return []Offer{one, all}
}

func noEdge(t *spot) []Offer {
	return []Offer{{
		Recipes: []sizing.Recipe{{Kind: sizing.OuterEdge}},
		Words:   "Build an outer edge, " + mm(t.l.Edge) + " wide, wherever the drawing has none.", Gentle: true,
	}}
}

func gap(t *spot) []Offer {
	o := t.closing("Close the gap along the line's own direction.")
	o.Gentle = true
	return []Offer{o}
}

func openArea(t *spot) []Offer {
	return []Offer{t.closing("Close the opening with metal. The room behind it is a hole then; touch it to give it a colour.")}
}

func smallArea(t *spot) []Offer {
	grow := t.here(sizing.GrowArea, 0, "Make it larger, to "+unit.InMM2(float64(t.f.Limit)*float64(t.f.Limit), 2)+"; the line round it moves with it.", true)
	drop := t.here(sizing.DropArea, 0, "Let it be what lies round it.", true)
	merge := t.here(sizing.MergeArea, 0, "Take it out, with the line round it.", false)
	if t.worthGrowing() {
		return []Offer{grow, drop, merge}
	}
	return []Offer{drop, grow, merge}
}

func (t *spot) worthGrowing() bool {
	w, h := t.scale.MM(t.f.X1-t.f.X0), t.scale.MM(t.f.Y1-t.f.Y0)
	area, least := float64(t.f.Thinnest*t.f.Thinnest), float64(t.f.Limit*t.f.Limit)
	return area >= mostOfIt*least && area >= compact*float64(w*h) && max(w, h) <= squat*min(w, h)
}

func pinhole(t *spot) []Offer {
	return []Offer{t.here(sizing.DropArea, t.f.Limit*holeSides, "Let it be metal.", true)}
}

// holeSides is how many line limits the side of a pinhole is taken to have at
// most when it is closed: at another size it is closed as long as it is small.
const holeSides = 1.25

func metalIsland(t *spot) []Offer {
	return []Offer{
		t.along(sizing.ThickenLine, "Make it "+mm(t.f.Limit)+" across.", true),
		t.here(sizing.DropArea, t.f.Limit*islandSides, "Take it out.", true),
	}
}

// islandSides is the same for a speck of metal, which may be longer than wide.
const islandSides = 3

func smallCutOut(t *spot) []Offer {
	side := unit.MM(math.Sqrt(math.Pi)/2) * t.f.Limit // of the square of the limit's disc
	return []Offer{t.here(sizing.DropArea, side*holeSides, "Close the hole with what lies round it.", false)}
}
