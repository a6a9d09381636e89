package reduce

import (
	"badgewright/reduce/colour"
)

// Loss is what a count of enamels loses to the eye: CIEDE2000 (D65) between
// the drawing on its ground and the flats, over pixels that are enamel at the
// largest count and lie at least a pixel from any boundary.
type Loss struct {
	Count int
	Mean  float64
	Worst float64 // mean over the worst-matched tenth of the pixels
	Flats []Flat
}

const (
	// lossStep is the fineness, in CIEDE2000, at which differences are sorted
	// to find the worst tenth; their sums are exact.
	lossStep = 0.125
	lossBins = 1024 // up to 128: beyond any two colours of sRGB
)

// tally sorts pixels by their difference.
type tally struct {
	n   [lossBins]float64
	sum [lossBins]float64
}

// lossBook remembers the shades of each leaf and how far they are from each
// colour that was asked for.
type lossBook struct {
	shades [][]leafShade // by bough
	seen   map[lossKey]*tally
}

type lossKey struct {
	leaf int
	rgb  colour.RGB8
}

// leafShade is the inner pixels of one leaf in one bin of colour.
type leafShade struct {
	n   float64
	lab colour.Lab
}

// Losses returns the loss at every count from 1 to MaxCount, with the edits
// done.
func (a *Analysis) Losses(edits []Edit) ([]Loss, error) {
	d := a.replay(edits, false)
	book := a.bookOf(&d)
	out := make([]Loss, 0, MaxCount)
	for count := 1; count <= MaxCount; count++ {
		flats, table := d.flats(count)
		var all tally
		for k := range d.boughs {
			if f := table[k]; f != None && flats[f].Role == Enamel {
				all.add(book.of(k, flats[f].RGB))
			}
		}
		mean, worst := all.measure()
		out = append(out, Loss{Count: count, Mean: mean, Worst: worst, Flats: flats})
	}
	return out, nil
}

// bookOf returns the shades of each leaf, remembered while no split changed
// the leaves.
func (a *Analysis) bookOf(d *desk) *lossBook {
	if len(d.boughs) == len(a.leaves) {
		if a.losses == nil {
			a.losses = newLossBook(a, &d.f, len(d.boughs))
		}
		return a.losses
	}
	return newLossBook(a, &d.f, len(d.boughs))
}

func (b *lossBook) of(leaf int, rgb colour.RGB8) *tally {
	key := lossKey{leaf, rgb}
	t := b.seen[key]
	if t == nil {
		t = new(tally)
		lab := rgb.Lab()
		for _, s := range b.shades[leaf] {
			t.put(s.n, colour.CIEDE2000(s.lab, lab))
		}
		b.seen[key] = t
	}
	return t
}

func (t *tally) put(n, d float64) {
	k := min(int(d/lossStep), lossBins-1)
	t.n[k] += n
	t.sum[k] += float64(n * d)
}

func (t *tally) add(u *tally) {
	for k := range t.n {
		t.n[k] += u.n[k]
		t.sum[k] += u.sum[k]
	}
}

// measure returns the mean and the mean of the worst tenth; zeros when empty.
func (t *tally) measure() (mean, worst float64) {
	n, sum := 0.0, 0.0
	for k := range t.n {
		n, sum = n+t.n[k], sum+t.sum[k]
	}
	if n == 0 {
		return 0, 0
	}
	tenth, left := n/10, n/10
	for k := lossBins - 1; k >= 0 && left > 0; k-- {
		if t.n[k] == 0 {
			continue
		}
		take := min(t.n[k], left)
		worst += float64(t.sum[k] * (take / t.n[k]))
		left -= take
	}
	return sum / n, worst / tenth
}

// newLossBook gathers the inner pixels of each leaf by bin of colour.
func newLossBook(a *Analysis, f *fates, leaves int) *lossBook {
	b := &lossBook{shades: make([][]leafShade, leaves), seen: map[lossKey]*tally{}}
	g := gatherer{at: make([]int32, leaves<<15)}
	for y := 0; y < a.h; y++ {
		for x := 0; x < a.w; x++ {
			i := y*a.w + x
			if l := f.label[i]; l != None && f.inner(i, x, y, a.w, a.h) {
				g.add(l, a.pix[i])
			}
		}
	}
	for _, s := range g.sums {
		n := float64(s.n)
		c := [3]float64{float64(s.r) / n, float64(s.g) / n, float64(s.b) / n}
		lin := colour.Linear{R: decode(c[0]), G: decode(c[1]), B: decode(c[2])}
		b.shades[s.leaf] = append(b.shades[s.leaf], leafShade{n, lin.XYZ().Lab()})
	}
	return b
}

// inner is true for an unmixed pixel whose four neighbours share its leaf.
func (f *fates) inner(i, x, y, w, h int) bool {
	l := f.label[i]
	return f.beside[i] == l &&
		(x == 0 || f.label[i-1] == l) && (x+1 == w || f.label[i+1] == l) &&
		(y == 0 || f.label[i-w] == l) && (y+1 == h || f.label[i+w] == l)
}

// gatherer sums pixels by leaf and bin of 5 bits a channel, in the order they are met.
type gatherer struct {
	at   []int32 // of a leaf and bin, one more than its place in sums
	sums []leafSum
}

type leafSum struct {
	leaf    uint8
	n       uint32
	r, g, b uint64
}

func (g *gatherer) add(l uint8, p uint32) {
	k := int(l)<<15 | int(p>>3&31|p>>11&31<<5|p>>19&31<<10)
	at := g.at[k]
	if at == 0 {
		g.sums = append(g.sums, leafSum{leaf: l})
		at = int32(len(g.sums))
		g.at[k] = at
	}
	s := &g.sums[at-1]
	s.n++
	s.r, s.g, s.b = s.r+uint64(p&255), s.g+uint64(p>>8&255), s.b+uint64(p>>16&255)
}
