package reduce

import (
	"math"
	"slices"

	"badgewright/reduce/colour"
)

// bough is a leaf with what has been done to it by hand.
type bough struct {
	leaf
	id      int
	first   int  // the flat that it was joined to; itself when it was not
	locked  bool // asked for by the person
	own     bool // split off by touch: kept apart like a locked flat
	apart   []int
	painted *colour.RGB8
	name    string
}

// twig is a flat at some count: boughs that became one.
type twig struct {
	lead   int // the bough whose ID the flat carries
	boughs []int
	area   float64
	lab    colour.OKLab // of flat art its lead's, of a painting or gradient the mean by area
	role   Role
	kept   bool
	blend  int   // the gradient all of it belongs to, or -1
	apart  []int // boughs that it must not become one with
}

// twigs returns the flats before any merging: joined boughs as one.
func (d *desk) twigs() []twig {
	at := make([]int, len(d.boughs))
	var all []twig
	for k := range d.boughs {
		b := &d.boughs[k]
		if b.first == k {
			at[k] = len(all)
			all = append(all, twig{lead: k, boughs: []int{k}, area: float64(b.area), lab: b.lab,
				role: b.role, kept: b.locked || b.own, blend: d.a.blendOf(k), apart: b.apart})
		}
	}
	for k := range d.boughs {
		if f := d.boughs[k].first; f != k {
			t := &all[at[f]] // a join by hand keeps the colour that was joined to
			t.boughs, t.area, t.blend = append(t.boughs, k), t.area+float64(d.boughs[k].area), -1
			t.apart = append(t.apart[:len(t.apart):len(t.apart)], d.boughs[k].apart...)
		}
	}
	live := all[:0]
	for _, t := range all {
		if t.area > 0 {
			live = append(live, t)
		}
	}
	return live
}

func (a *Analysis) blendOf(k int) int {
	if k < len(a.blend) {
		return a.blend[k]
	}
	return -1
}

// blendFar is how far apart, in OKLab, two steps of one gradient may be and
// still be taken for one colour: about a seventh of the way from black to white.
const blendFar = 0.14

// thinOut merges enamel flats until at most count are left: the steps of soft
// gradients first, then colours too slight to count, then whatever loses least.
// The order does not depend on count, so counts are nested: every boundary at
// one count is there at the next.
func (d *desk) thinOut(count int) []twig {
	twigs := d.twigs()
	for enamels(twigs) > count {
		a, b, mean := d.nextPair(twigs)
		if a < 0 {
			break
		}
		twigs = joined(twigs, a, b, mean)
	}
	return twigs
}

// nextPair returns the two flats that merge next, -1 when none may.
func (d *desk) nextPair(twigs []twig) (a, b int, mean bool) {
	if a, b, mean = slightest(twigs, d.a.painted); a >= 0 {
		return a, b, mean
	}
	return cheapest(twigs, d.a.painted)
}

// plain merges only what an artist would not count: the steps of gradients
// and the slightest colours.
func (d *desk) plain() []twig {
	twigs := d.twigs()
	for {
		a, b, mean := slightest(twigs, d.a.painted)
		if a < 0 {
			return twigs
		}
		twigs = joined(twigs, a, b, mean)
	}
}

func joined(twigs []twig, a, b int, mean bool) []twig {
	twigs[a] = merged(twigs[a], twigs[b], mean)
	return append(twigs[:b], twigs[b+1:]...)
}

// slightest returns the next two flats that are one to an artist's eye, as
// cheapest does.
func slightest(twigs []twig, painted bool) (at, to int, mean bool) {
	if at, to, mean = cheapestBlend(twigs); at >= 0 || painted {
		return at, to, mean
	}
	total := 0.0
	for i := range twigs {
		total += twigs[i].area
	}
	least := math.Inf(1)
	pairs(twigs, func(a, b int, s, t *twig) {
		if slight(twigs, a, total) || slight(twigs, b, total) {
			if c := s.lab.Distance2(t.lab); c < least {
				at, to, least = a, b, c
			}
		}
	})
	return at, to, false
}

const (
	// plainShare is the share of the drawing below which a colour is not
	// counted unless it stands out.
	plainShare = 0.0006
	// standsOut is the distance, in OKLab, from every larger colour at which
	// a small one still counts.
	standsOut = 0.08
)

// slight is true for a small colour much like a larger one.
func slight(twigs []twig, i int, total float64) bool {
	t := &twigs[i]
	if t.kept || t.area >= plainShare*total {
		return false
	}
	for j := range twigs {
		if twigs[j].area > t.area && twigs[j].lab.Distance2(t.lab) < standsOut*standsOut {
			return true
		}
	}
	return false
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

// pairs calls with each two enamel flats that may merge. Two kept never do,
// nor two that were told to stay apart.
func pairs(twigs []twig, with func(a, b int, s, t *twig)) {
	for a := range twigs {
		for b := a + 1; b < len(twigs); b++ {
			s, t := &twigs[a], &twigs[b]
			if s.role == Enamel && t.role == Enamel && !(s.kept && t.kept) && !s.shuns(t) {
				with(a, b, s, t)
			}
		}
	}
}

// shuns is true for two flats that were told to stay apart.
func (t *twig) shuns(u *twig) bool {
	for _, k := range t.apart {
		if slices.Contains(u.boughs, k) {
			return true
		}
	}
	return false
}

// cheapest returns the pair of flats, a before b, whose merging loses least,
// -1 when there is none, and whether the merged colour is their mean.
func cheapest(twigs []twig, painted bool) (at, to int, mean bool) {
	at, to = -1, -1
	least := math.Inf(1)
	pairs(twigs, func(a, b int, s, t *twig) {
		if c := cost(s, t, painted); c < least {
			at, to, least = a, b, c
		}
	})
	return at, to, painted
}

// cheapestBlend looks only at neighbouring steps of one gradient.
func cheapestBlend(twigs []twig) (at, to int, mean bool) {
	at, to = -1, -1
	least := math.Inf(1)
	pairs(twigs, func(a, b int, s, t *twig) {
		if s.blend < 0 || s.blend != t.blend || s.kept || t.kept || s.lab.Distance2(t.lab) > blendFar*blendFar {
			return
		}
		if c := cost(s, t, true); c < least {
			at, to, least = a, b, c
		}
	})
	return at, to, true
}

// cost of merging two flats: Ward's, in OKLab. In flat art an area claims by
// its root and hue counts for more, so that a small accent outlives a shade of a
// large area; in a painting an area claims by its size, which keeps the mean
// difference least.
func cost(s, t *twig, bySize bool) float64 {
	if bySize {
		return ward(s.area, t.area) * s.lab.Distance2(t.lab)
	}
	return ward(math.Sqrt(s.area), math.Sqrt(t.area)) * s.lab.Difference2(t.lab)
}

// ward is how much two groups weigh when they become one.
func ward(u, v float64) float64 { return u * v / (u + v) }

// merged joins b to a. The kept or else the first (the larger) leads. Flat art
// keeps the leading colour, so that no colour shifts from one count to the
// next; where no colour is the true one the mean is nearest to all.
func merged(a, b twig, mean bool) twig {
	m := a
	if b.kept && !a.kept || a.kept == b.kept && b.lead < a.lead {
		m.lead, m.lab = b.lead, b.lab
	}
	m.kept = a.kept || b.kept
	m.boughs = append(append([]int(nil), a.boughs...), b.boughs...)
	m.apart = append(a.apart[:len(a.apart):len(a.apart)], b.apart...)
	m.area = a.area + b.area
	if a.blend != b.blend {
		m.blend = -1
	}
	if mean && !m.kept {
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
