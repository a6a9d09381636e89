package wall

import (
	"encoding/binary"
	"math"

	"badgewright/reduce/mask"
)

// band is the pixels near a line along which metal can be built.
type band struct {
	reach float64 // all that lie nearer than this, in px, are listed
	list  []inBand
}

// inBand is a pixel and how far it lies from the line, in steps of 1/perPixel px.
type inBand struct{ i, d int32 }

const perPixel = 128

// A band is found wider than it is asked for, by a share and some pixels, so
// that a small change of size does not find it anew.
const (
	widerBy = 1.5
	widerPx = 4
)

// edgeSlack is how much nearer than the centre of the nearest pixel beyond it
// an edge may be said to lie, in pixels: 1.5 to the edge, 0.75 along it.
const edgeSlack = 1.5 + alongSlack

// within returns at least the pixels nearer than reach. find lists those whose
// nearest pixel beyond the line lies at most so far.
func (k *band) within(reach float64, find func(reach int) []inBand) []inBand {
	if reach > k.reach {
		k.reach = widerBy*reach + widerPx
		k.list = find(int(math.Ceil(k.reach + edgeSlack)))
	}
	return k.list
}

func steps(px float64) int32 { return int32(px * perPixel) }

// alongRim returns the pixels of the pin nearer than reach to the outline, where
// the art has no metal along it.
func (b *Builder) alongRim(reach float64) []inBand {
	return b.rim.within(reach, b.findRim)
}

func (b *Builder) findRim(reach int) []inBand {
	v := b.v.silhouette()
	var skip [256]bool
	skip[outside] = true
	list := b.overRim(v)
	lines := newEdges(v, &skip)
	for _, n := range mask.OthersWithin(v.class, v.w, v.h, &skip, reach) {
		sx, sy := int(n.SX), int(n.SY)
		e := lines.at(sx, sy, solid)
		if e.tag == 0 {
			e.tag = 1
			if b.bare(sx, sy) {
				e.tag = 2
			}
		}
		if e.tag == 2 {
			d := lines.distance(float64(n.X), float64(n.Y), sx, sy, solid)
			list = append(list, inBand{int32(n.Y)*int32(v.w) + int32(n.X), steps(d)})
		}
	}
	return list
}

// overRim lists the pixels outside that the pin has a share in, where it has no
// metal.
func (b *Builder) overRim(v *view) (list []inBand) {
	cover := v.s.Cover
	for i := 0; i < len(cover); i++ {
		if i+8 <= len(cover) && binary.LittleEndian.Uint64(cover[i:]) == math.MaxUint64 {
			i += 7 // eight whole pixels
			continue
		}
		if x, y := i%v.w, i/v.w; cover[i] < 255 && v.class[i] == outside && v.mixed(x, y) && b.bare(x, y) {
			list = append(list, inBand{i: int32(i)})
		}
	}
	return list
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

// alongSeams returns the pixels of two enamels that touch nearer than reach to
// where they do.
func (b *Builder) alongSeams(reach float64) []inBand {
	return b.seam.within(reach, b.findSeams)
}

func (b *Builder) findSeams(reach int) []inBand { return b.v.alongSites(b.v.seams(), reach) }

// alongSites returns the pixels of two enamels within reach of those of them
// that lie beside the other.
func (v *view) alongSites(site []bool, reach int) (list []inBand) {
	lines := newEdges(v, &v.enamel)
	for _, n := range mask.SitesWithin(site, v.w, v.h, reach) {
		sx, sy := int(n.SX), int(n.SY)
		i := int(n.Y)*v.w + int(n.X)
		if !v.enamel[v.class[i]] {
			continue
		}
		own := v.class[sy*v.w+sx]
		e := lines.at(sx, sy, own)
		if e.tag == 0 {
			e.tag = 1 + int16(v.across(sx, sy))
		}
		if c := v.class[i]; c == own || int16(c) == e.tag-1 {
			d := lines.distance(float64(n.X), float64(n.Y), sx, sy, own)
			list = append(list, inBand{int32(i), steps(d)})
		}
	}
	return list
}

// seams marks the enamel pixels beside another enamel.
func (v *view) seams() []bool {
	site := make([]bool, len(v.class))
	for y := 0; y < v.h; y++ {
		for x := 0; x < v.w; x++ {
			i := y*v.w + x
			if v.plain(x, y) {
				x += 7
				continue
			}
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
