package wall

import (
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/reduce/mask"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// repair is one recipe of a repair on its way to the pixels.
type repair struct {
	b      *Builder
	s      *reduce.Separation
	line   []place // px of the whole
	width  float64 // px; 0 for what the limits allow
	label  uint8   // of metal that is laid
	limits pxLimits
}

// pxLimits are the limits in pixels at a scale.
type pxLimits struct{ line, edge, area, areaSide float64 }

// mend applies a repair.
func (b *Builder) mend(s *reduce.Separation, r sizing.Recipe, label uint8, scale unit.PxPerMM, l sizing.Limits) error {
	do, ok := repairs[r.Kind]
	if !ok {
		return &reduce.Refusal{What: fmt.Sprintf("This version cannot build %q.", r.Kind), Do: "Take that repair out of the list."}
	}
	m := &repair{
		b: b, s: s, line: nearby(b.pointsOf(r.Points), b.base.W, b.base.H), width: max(0, r.Width).Px(scale), label: label,
		limits: pxLimits{l.Line.Px(scale), l.Edge.Px(scale), l.Area.Px(scale), sideOf(l).Px(scale)},
	}
	if len(m.line) > 0 {
		do(m)
	}
	return nil
}

// repairs are how each repair is made.
var repairs = map[sizing.RecipeKind]func(*repair){
	sizing.BuildBorder: (*repair).buildBorder,
	sizing.ThickenLine: (*repair).thickenLine,
	sizing.WidenArea:   (*repair).widenArea,
	sizing.DropThin:    (*repair).dropThin,
	sizing.GrowArea:    (*repair).growArea,
	sizing.DropArea:    (*repair).dropArea,
	sizing.MergeArea:   (*repair).mergeArea,
	sizing.OpenUp:      (*repair).openUp,
}

// or is the width a repair was given, or else a limit.
func (m *repair) or(limit float64) float64 {
	if m.width > 0 {
		return m.width
	}
	return limit
}

// patch cuts out the box round the line.
func (m *repair) patch(reach float64) (p *patch, ok bool) {
	return m.b.patchRound(m.s, m.line, reach, m.label)
}

// slack is how much wider than a limit a repair makes a thing, in pixels, so
// that what is measured afterwards does not fall short by the raster's grain.
const slack = 0.25

// areas returns the parts of the drawing, by which the larger of two is told.
func (b *Builder) areas() *mask.Components {
	if b.parts == nil {
		var eight [256]bool
		eight[metal] = true
		b.parts = mask.Connect(b.v.class, b.v.w, b.v.h, &eight)
	}
	return b.parts
}

// areaBeyond returns the drawn area, in px2, that a flank lies in; behind the
// metal, where that comes first.
func (m *repair) areaBeyond(p *patch, c *cross, k int) float64 {
	f := &c.side[k]
	far := f.edge + min(2, f.room/2+past)
	if f.class == metal {
		far = f.edge + f.room + 2*past
	}
	q := c.over([2]float64{-1, 1}[k] * far)
	x, y := int(q.x)+p.x0, int(q.y)+p.y0
	if x < 0 || y < 0 || x >= m.s.W || y >= m.s.H {
		return 0
	}
	f.part = m.b.areas().At(x, y)
	return float64(m.b.areas().Area[f.part])
}

// sideOf is the side of the square that the smallest area is.
func sideOf(l sizing.Limits) unit.MM { return unit.MM(math.Sqrt(max(0, l.AreaSize))) }

// nearby keeps the places of a line that are numbers and no further off a raster
// than it is wide or high: nothing is repaired beyond.
func nearby(line []place, w, h int) []place {
	near := func(v float64, side int) bool { return v >= -float64(side) && v <= 2*float64(side) }
	kept := line[:0]
	for _, q := range line {
		if near(q.x, w) && near(q.y, h) {
			kept = append(kept, q)
		}
	}
	return kept
}
