package calls

import (
	"fmt"
	"slices"
	"strings"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

// proposed marks recipes as waiting for the person's yes where the drawing has
// no lines at all; where it has, its edge is only completed.
func proposed(all []sizing.Recipe, o *opened) []sizing.Recipe {
	for i := range all {
		all[i].Proposed = !o.found.Lined()
	}
	return all
}

// accepted is recipes as they are built: a proposed one like any other.
func accepted(all []sizing.Recipe) []sizing.Recipe {
	out := slices.Clone(all)
	for i := range out {
		out[i].Proposed = false
	}
	return out
}

// bare is where a flat drawing has no metal, working px.
type bare struct {
	stretches  []wall.Bare
	seam, edge float64
}

// proposal says what is proposed and shows where; nil when nothing is.
func (u *subject) proposal(scale unit.PxPerMM, p reduce.Progress) (*wire.Proposal, error) {
	waiting := slices.DeleteFunc(slices.Clone(u.design.Recipes), func(r sizing.Recipe) bool { return !r.Proposed })
	if len(waiting) == 0 {
		return nil, nil
	}
	m, err := u.base.widths(p)
	if err != nil {
		return nil, err
	}
	b := u.base
	if b.bare == nil {
		b.bare = &bare{}
		b.bare.stretches, b.bare.seam, b.bare.edge = m.Bare()
	}
	out := &wire.Proposal{Lines: []wire.ProposedLine{}}
	for _, s := range b.bare.stretches {
		if slices.ContainsFunc(waiting, func(r sizing.Recipe) bool { return r.Kind == s.Kind }) {
			out.Lines = append(out.Lines, wire.ProposedLine{Kind: s.Kind, Path: s.Path})
		}
	}
	out.Words = b.bare.words(waiting, u.design.Limits, scale)
	return out, nil
}

// words says how long what is proposed is, and how thick.
func (b *bare) words(waiting []sizing.Recipe, l sizing.Limits, scale unit.PxPerMM) string {
	var parts []string
	for _, r := range waiting {
		where, length := "between colours", b.seam
		if r.Kind == sizing.OuterEdge {
			where, length = "round the outside", b.edge
		}
		parts = append(parts, fmt.Sprintf("%s %s, %s wide", unit.InMM(scale.MM(length), 0), where, unit.InMM(wall.WidthOf(r, l), 2)))
	}
	return "No lines were in this drawing. Proposed, dashed on the pin: " + strings.Join(parts, "; ") + "."
}
