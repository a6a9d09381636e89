package sizing

import (
	"slices"

	"badgewright/reduce"
)

// Finish is what sets a fill or a metal face apart from the plain one.
type Finish string

// The finishes of the trade. No finish is the plain fill, or smooth metal.
const (
	Plain       Finish = ""
	Glitter     Finish = "glitter"     // flakes in the fill
	Pearl       Finish = "pearl"       // a fill with a soft sheen
	Translucent Finish = "translucent" // the metal floor shows through, patterned
	Glow        Finish = "glow"        // a fill that glows in the dark
	Sandblasted Finish = "sandblasted" // metal, matt and even
	Textured    Finish = "textured"    // metal, hammered
)

// Finishes are those a flat of a role can have, the plain one first.
func Finishes(r reduce.Role) []Finish {
	switch r {
	case reduce.Enamel:
		return []Finish{Plain, Glitter, Pearl, Translucent, Glow}
	case reduce.Metal:
		return []Finish{Plain, Sandblasted, Textured}
	default:
		return []Finish{Plain}
	}
}

// FinishOf is the finish of a flat in a version; one that its role cannot have
// is kept unseen, and counts as plain.
func (v *Version) FinishOf(f reduce.Flat) Finish {
	for _, c := range v.Colours {
		if c.Flat == f.ID && slices.Contains(Finishes(f.Role), c.Finish) {
			return c.Finish
		}
	}
	return Plain
}
