package wall

import (
	"badgewright/reduce"
	"badgewright/sizing"
)

// noticeable is the length of missing metal, as a share of the outline, from
// which building it is proposed; less is a slip of the pen to be shown as a
// trouble spot (this tool's choice).
const noticeable = 0.03

// Suggest proposes recipes for a flat drawing: an outer edge where enamel
// reaches the outline over a noticeable length, and lines where enamels touch
// over one. Widths are 0: as thin as the limits allow.
func Suggest(base *reduce.Separation) []sizing.Recipe {
	v := newView(base)
	seam, open, outline := v.bareLengths()
	recipes := []sizing.Recipe{}
	if outline == 0 {
		return recipes
	}
	if open > noticeable*outline {
		recipes = append(recipes, sizing.Recipe{Kind: sizing.OuterEdge})
	}
	if seam > noticeable*outline {
		recipes = append(recipes, sizing.Recipe{Kind: sizing.BuildLines})
	}
	return recipes
}

// bareLengths counts the sides of pixels where two enamels touch, where enamel
// meets what lies outside, and where the pin does.
func (v *view) bareLengths() (seam, open, outline float64) {
	side := func(p, q uint8) {
		if p == q {
			return
		}
		if p == outside || q == outside {
			outline++
			if v.enamel[p] || v.enamel[q] {
				open++
			}
			return
		}
		if v.enamel[p] && v.enamel[q] {
			seam++
		}
	}
	for x := range v.w {
		side(v.at(x, 0), outside)
	}
	for y := range v.h {
		side(v.at(0, y), outside)
		for x := 0; x < v.w; x++ {
			if v.plain(x, y) {
				x += 7
				continue
			}
			side(v.at(x, y), v.at(x+1, y))
			side(v.at(x, y), v.at(x, y+1))
		}
	}
	return seam, open, outline
}
