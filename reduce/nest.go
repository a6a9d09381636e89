package reduce

import (
	"math"

	"badgewright/reduce/colour"
)

// bough is a leaf with what has been done to it by hand.
type bough struct {
	leaf
	id      int
	first   int  // the flat that it was joined to; itself when it was not
	locked  bool // asked for by the person
	own     bool // split off by touch: kept apart like a locked flat
	painted *colour.RGB8
	name    string
}

// twig is a flat at some count: boughs that became one.
type twig struct {
	lead   int // the bough whose ID the flat carries
	boughs []int
	area   float64
	lab    colour.OKLab // mean by area, of paintings; the lead's, of flat art
	role   Role
	kept   bool
}

// twigsOf returns the flats before any merging: joined boughs as one.
func twigsOf(boughs []bough, painted bool) []twig {
	at := make([]int, len(boughs))
	var twigs []twig
	for k := range boughs {
		b := &boughs[k]
		if b.first == k {
			at[k] = len(twigs)
			twigs = append(twigs, twig{lead: k, boughs: []int{k}, area: float64(b.area), lab: b.lab, role: b.role, kept: b.locked || b.own})
		}
	}
	for k := range boughs {
		if f := boughs[k].first; f != k {
			t := &twigs[at[f]]
			// a join by hand keeps the colour that was joined to
			t.boughs, t.area = append(t.boughs, k), t.area+float64(boughs[k].area)
		}
	}
	live := twigs[:0]
	for _, t := range twigs {
		if t.area > 0 {
			live = append(live, t)
		}
	}
	_ = painted
	return live
}

// thin merges enamel flats, the least loss first, until at most count are
// left. The order does not depend on count, so that counts are nested: every
// boundary at one count is there at the next.
func thinOut(twigs []twig, count int, painted bool) []twig {
	for enamels(twigs) > count {
		a, b := cheapest(twigs, painted)
		if a < 0 {
			break
		}
		twigs[a] = merged(twigs[a], twigs[b], painted)
		twigs = append(twigs[:b], twigs[b+1:]...)
	}
	return twigs
}

func enamels(twigs []twig) int {
	n := 0
	for i := range twigs {
		if twigs[i].role == Enamel {
			n++
		}
	}
	return n
}

// cheapest returns the pair of enamel flats, a before b, whose merging loses
// least; -1 when none may merge. Two kept flats never merge.
func cheapest(twigs []twig, painted bool) (int, int) {
	at, with, least := -1, -1, math.Inf(1)
	for a := range twigs {
		for b := a + 1; b < len(twigs); b++ {
			s, t := &twigs[a], &twigs[b]
			if s.role != Enamel || t.role != Enamel || s.kept && t.kept {
				continue
			}
			if c := cost(s, t, painted); c < least {
				at, with, least = a, b, c
			}
		}
	}
	return at, with
}

// cost of merging two flats: Ward's, in OKLab. In flat art an area claims by
// its root, so that a small accent outlives a shade of a large area; in a
// painting by its size, which keeps the mean difference least.
func cost(s, t *twig, painted bool) float64 {
	u, v := s.area, t.area
	if !painted {
		u, v = math.Sqrt(u), math.Sqrt(v)
	}
	return u * v / (u + v) * s.lab.Distance2(t.lab)
}

// merged joins b to a. The kept or else the first (the larger) leads. Flat art
// keeps the leading colour, so that no colour shifts from one count to the
// next; a painting takes the mean, which is nearest to both.
func merged(a, b twig, painted bool) twig {
	m := a
	if b.kept && !a.kept || a.kept == b.kept && b.lead < a.lead {
		m.lead, m.lab = b.lead, b.lab
	}
	m.kept = a.kept || b.kept
	m.boughs = append(append([]int(nil), a.boughs...), b.boughs...)
	m.area = a.area + b.area
	if painted && !m.kept {
		f := b.area / m.area
		mix := func(x, y float64) float64 { return x + float64(f*(y-x)) }
		m.lab = colour.OKLab{L: mix(a.lab.L, b.lab.L), A: mix(a.lab.A, b.lab.A), B: mix(a.lab.B, b.lab.B)}
	}
	return m
}

// flatFrom is the flat that a twig becomes, its share not yet known.
func flatFrom(t *twig, boughs []bough) Flat {
	b := &boughs[t.lead]
	f := Flat{ID: FlatID(b.id), RGB: b.rgb, Role: t.role, Locked: b.locked, Name: b.name}
	if t.lab != b.lab {
		f.RGB = t.lab.RGB8()
	}
	if b.painted != nil {
		f.RGB = *b.painted
	}
	if f.Name == "" {
		f.Name = colour.Name(f.RGB)
	}
	return f
}
