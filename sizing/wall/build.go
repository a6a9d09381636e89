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
// depend on the size is found once, when a recipe first asks for it.
type Builder struct {
	base *reduce.Separation
	v    *view
	rim  []uint16 // distance to the outline where the art has no metal there
	seam []uint16 // distance to the nearest border between two enamels
}

// Distances are kept in steps of 1/perPixel px; tooFar is beyond any band.
const (
	perPixel = 128
	tooFar   = math.MaxUint16
)

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
	for _, r := range recipes {
		switch r.Kind {
		case sizing.OuterEdge:
			b.lay(s, b.rimDistance(), label, widthOf(r, l.Edge).Px(scale))
		case sizing.BuildLines:
			b.lay(s, b.seamDistance(), label, widthOf(r, l.Line).Px(scale)/2)
		case sizing.DrawLine:
			b.draw(s, b.pointsOf(r.Points), widthOf(r, l.Line).Px(scale), label)
		case sizing.EraseLine:
			b.erase(s, b.pointsOf(r.Points), widthOf(r, l.Line).Px(scale))
		default:
			return nil, &reduce.Refusal{What: fmt.Sprintf("This version cannot build %q.", r.Kind), Do: "Take that repair out of the list."}
		}
	}
	return s, nil
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
func (b *Builder) lay(s *reduce.Separation, distance []uint16, label uint8, reach float64) {
	full := int32((reach - 0.5) * perPixel)
	none := int32((reach + 0.5) * perPixel)
	for i, d := range distance {
		if int32(d) >= none || d == tooFar {
			continue
		}
		if int32(d) <= full {
			b.fill(s, i, label)
			continue
		}
		b.share(s, i, label, uint8((none-int32(d))*255/perPixel))
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

// rimDistance returns, for every pixel of the pin, how far it lies from the
// outline, where the art has no metal along it.
func (b *Builder) rimDistance() []uint16 {
	if b.rim == nil {
		b.rim = b.findRim()
	}
	return b.rim
}

func (b *Builder) findRim() []uint16 {
	v := b.v.silhouette()
	var skip [256]bool
	skip[outside] = true
	f := mask.Others(v.class, v.w, v.h, &skip)
	out := make([]uint16, len(v.class))
	lines := newEdges(v, &skip)
	for y := 0; y < v.h; y++ {
		for x := 0; x < v.w; x++ {
			i := y*v.w + x
			out[i] = tooFar
			if v.class[i] == outside {
				if v.cover(x, y, solid) > 0 && b.bare(x, y) {
					out[i] = 0
				}
				continue
			}
			sx, sy := f.Site(x, y)
			e := lines.at(sx, sy, solid)
			if e.tag == 0 {
				e.tag = 1
				if b.bare(sx, sy) {
					e.tag = 2
				}
			}
			if e.tag == 2 {
				out[i] = steps(lines.distance(float64(x), float64(y), sx, sy, solid))
			}
		}
	}
	return out
}

func steps(px float64) uint16 {
	return uint16(min(px*perPixel, tooFar-1))
}

// bare says whether the pin's side of the outline at a pixel just outside is
// something other than metal.
func (b *Builder) bare(x, y int) bool {
	metals, others := 0.0, 0.0
	for k := 0; k < 9; k++ {
		px, py := x+k%3-1, y+k/3-1
		switch c := b.v.at(px, py); c {
		case outside:
		case metal:
			metals++
		default:
			others++
		}
	}
	return others > metals
}

// solid is the class of the whole pin in a silhouette.
const solid uint8 = 0

// silhouette is a view in which all that is not outside is one class.
func (v *view) silhouette() *view {
	t := &view{s: v.s, w: v.w, h: v.h, class: make([]uint8, len(v.class))}
	for l, c := range v.of {
		if t.of[l] = outside; c != outside {
			t.of[l] = solid
		}
	}
	t.classify(t.class)
	return t
}

// seamDistance returns, for every pixel of two enamels that touch, how far it
// lies from where they do.
func (b *Builder) seamDistance() []uint16 {
	if b.seam == nil {
		b.seam = b.findSeams()
	}
	return b.seam
}

func (b *Builder) findSeams() []uint16 {
	v := b.v
	out := make([]uint16, len(v.class))
	for i := range out {
		out[i] = tooFar
	}
	site := v.seams()
	f, ok := mask.Nearest(site, v.w, v.h)
	if !ok {
		return out
	}
	lines := newEdges(v, &v.enamel)
	for y := 0; y < v.h; y++ {
		for x := 0; x < v.w; x++ {
			i := y*v.w + x
			if !v.enamel[v.class[i]] {
				continue
			}
			sx, sy := f.Site(x, y)
			own := v.class[sy*v.w+sx]
			e := lines.at(sx, sy, own)
			if e.tag == 0 {
				e.tag = 1 + int16(v.across(sx, sy))
			}
			if c := v.class[i]; c == own || int16(c) == e.tag-1 {
				out[i] = steps(lines.distance(float64(x), float64(y), sx, sy, own))
			}
		}
	}
	return out
}

// seams marks the enamel pixels beside another enamel.
func (v *view) seams() []bool {
	site := make([]bool, len(v.class))
	for y := 0; y < v.h; y++ {
		for x := 0; x < v.w; x++ {
			i := y*v.w + x
			c := v.class[i]
			if !v.enamel[c] {
				continue
			}
			if x+1 < v.w && v.class[i+1] != c && v.enamel[v.class[i+1]] {
				site[i], site[i+1] = true, true
			}
			if y+1 < v.h && v.class[i+v.w] != c && v.enamel[v.class[i+v.w]] {
				site[i], site[i+v.w] = true, true
			}
		}
	}
	return site
}

// across returns the enamel on the other side of a seam pixel.
func (v *view) across(x, y int) uint8 {
	own := v.at(x, y)
	for _, d := range [4][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
		if c := v.at(x+d[0], y+d[1]); c != own && v.enamel[c] {
			return c
		}
	}
	return own
}
