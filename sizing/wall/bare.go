package wall

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// WidthOf is how wide a recipe builds: as thin as the limits allow, unless it
// says.
func WidthOf(r sizing.Recipe, l sizing.Limits) unit.MM {
	if r.Kind == sizing.OuterEdge {
		return widthOf(r, l.Edge)
	}
	return widthOf(r, l.Line)
}

// Bare is a stretch of border that has no metal.
type Bare struct {
	// Kind is the recipe that builds metal there.
	Kind sizing.RecipeKind
	// Path runs along it, x and y in turn, working pixels.
	Path []float32
}

// Bare returns every stretch where two enamels touch, and where enamel meets
// what lies outside, with how long they are in all, in pixels.
func (m *Measured) Bare() (stretches []Bare, seam, edge float64) {
	all := m.walkBorders()
	if len(all) == 0 {
		return nil, 0, 0
	}
	for _, b := range all {
		if b.b < 0 {
			edge += b.length
		} else {
			seam += b.length
		}
	}
	g := graphOf(all, m.v.w, m.v.h)
	walk := newWalker(&g)
	for _, p := range g.whole() {
		kind := sizing.BuildLines
		if all[g.points[p[0]].part].b < 0 {
			kind = sizing.OuterEdge
		}
		stretches = append(stretches, Bare{Kind: kind, Path: walk.border(p)})
	}
	return stretches, seam, edge
}
