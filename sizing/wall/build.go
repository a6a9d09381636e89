package wall

import (
	"fmt"
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/mask"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Builder adds metal to a flat drawing by recipe, at any size. What does not
// depend on the size is kept once a recipe has asked for it.
type Builder struct {
	base  *reduce.Separation
	v     *view
	rim   band             // along the outline where the art has no metal there
	seam  band             // along the borders between two enamels
	parts *mask.Components // of the drawing, once a repair has asked for them
}

// NewBuilder prepares a base separation, which is not changed.
func NewBuilder(base *reduce.Separation) *Builder {
	return &Builder{base: base, v: newView(base)}
}

// Apply returns the struck separation: the base with every recipe built at a
// scale. A width of 0 means as thin as the limits allow. Metal grows only into
// enamel and print; drawn metal and what lies outside stay as they are. Built
// marks the pixels that became metal.
func (b *Builder) Apply(recipes []sizing.Recipe, scale unit.PxPerMM, l sizing.Limits) (*reduce.Separation, error) {
	if !(scale > 0) || math.IsInf(float64(scale), 1) {
		return nil, fmt.Errorf("wall: cannot build at %g px per mm", float64(scale))
	}
	s := b.copyBase()
	label, err := metalOf(s)
	if err != nil {
		return nil, err
	}
	s.Built = make([]bool, len(s.Labels))
	return s, b.apply(s, label, recipes, scale, l)
}

// Add applies further recipes to what Apply returned, in place.
func (b *Builder) Add(s *reduce.Separation, recipes []sizing.Recipe, scale unit.PxPerMM, l sizing.Limits) error {
	label, err := metalOf(s)
	if err != nil {
		return err
	}
	return b.apply(s, label, recipes, scale, l)
}

func (b *Builder) apply(s *reduce.Separation, label uint8, recipes []sizing.Recipe, scale unit.PxPerMM, l sizing.Limits) error {
	for _, r := range recipes {
		switch r.Kind {
		case sizing.OuterEdge:
			b.lay(s, b.alongRim, label, widthOf(r, l.Edge).Px(scale))
		case sizing.BuildLines:
			b.lay(s, b.alongSeams, label, widthOf(r, l.Line).Px(scale)/2)
		case sizing.DrawLine, sizing.CloseGap:
			b.draw(s, b.pointsOf(r.Points), widthOf(r, l.Line).Px(scale), label)
		case sizing.EraseLine:
			b.erase(s, b.pointsOf(r.Points), widthOf(r, l.Line).Px(scale))
		default:
			if b.reshape(s, r, label, scale, l) {
				continue
			}
			if err := b.mend(s, r, label, scale, l); err != nil {
				return err
			}
		}
	}
	return nil
}

func widthOf(r sizing.Recipe, least unit.MM) unit.MM {
	if r.Width > 0 {
		return r.Width
	}
	return least
}

func (b *Builder) copyBase() *reduce.Separation {
	return &reduce.Separation{
		W: b.base.W, H: b.base.H,
		Labels: slices.Clone(b.base.Labels), Beside: slices.Clone(b.base.Beside), Cover: slices.Clone(b.base.Cover),
		Flats: slices.Clone(b.base.Flats),
	}
}

// metalOf returns the label that built metal gets: the first metal flat's, or
// that of a new one.
func metalOf(s *reduce.Separation) (uint8, error) {
	for l, f := range s.Flats {
		if f.Role == reduce.Metal {
			return uint8(l), nil
		}
	}
	if len(s.Flats) >= reduce.MaxFlats {
		return 0, &reduce.Refusal{What: "This drawing has too many colours to add a metal.", Do: "Join some colours first."}
	}
	s.Flats = append(s.Flats, reduce.Flat{ID: reduce.BuiltMetal, Name: "metal", Role: reduce.Metal})
	return uint8(len(s.Flats) - 1), nil
}

// lay turns everything nearer than reach pixels to metal; a pixel that the
// edge of the band crosses is shared.
func (b *Builder) lay(s *reduce.Separation, along func(reach float64) []inBand, label uint8, reach float64) {
	reach = min(reach, float64(s.W+s.H))
	full := int32((reach - 0.5) * perPixel)
	none := int32((reach + 0.5) * perPixel)
	for _, p := range along(reach + 0.5) {
		switch {
		case p.d >= none:
		case p.d <= full:
			b.fill(s, int(p.i), label)
		default:
			b.share(s, int(p.i), label, uint8((none-p.d)*255/perPixel))
		}
	}
}

// fill makes a pixel metal, but for the part of it that lies outside or is
// already metal.
func (b *Builder) fill(s *reduce.Separation, i int, label uint8) {
	own, beside := b.v.of[s.Labels[i]], b.v.of[s.Beside[i]]
	if own != outside && own != metal {
		s.Labels[i], s.Built[i] = label, true
	}
	if beside != outside && beside != metal {
		s.Beside[i] = label
	}
	if b.v.of[s.Labels[i]] == metal && s.Beside[i] == s.Labels[i] {
		s.Cover[i] = 255
	}
}

// share gives part of a pixel, 0..255, to metal; what remains is its majority.
func (b *Builder) share(s *reduce.Separation, i int, label, part uint8) {
	own, beside := b.v.of[s.Labels[i]], b.v.of[s.Beside[i]]
	if own == outside || own == metal || beside == outside {
		if part >= 128 {
			b.fill(s, i, label)
		}
		return
	}
	if beside == metal {
		had := 255 - int(s.Cover[i])
		part = uint8(had + (255-had)*int(part)/255)
	}
	if part >= 128 {
		s.Labels[i], s.Beside[i], s.Cover[i], s.Built[i] = label, s.Labels[i], part, true
		return
	}
	if part > 0 {
		s.Beside[i], s.Cover[i] = label, 255-part
	}
}
