package wall

import (
	"cmp"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Narrow is a stretch of metal or enamel that may be narrower than a width; all
// in working pixels.
type Narrow struct {
	// Metal is false for enamel, and Edge true for metal along the outline.
	Metal, Edge bool
	Flat        reduce.FlatID
	// Beside is what lies on either side at the worst place: flats, or sizing.Outside.
	Beside         [2]reduce.FlatID
	X, Y           float64 // the worst place
	X0, Y0, X1, Y1 float64
	Path           []float32
	Length         float64
	Thinnest       float64
	// Error is how far a width may be wrong. The stretch is surely wide enough for
	// a width once From is more than Error above it, and surely too narrow while
	// From is less than Error under it. From is no less than Thinnest: what is
	// narrow must be so over more than its width.
	Error, From float64
	Built       bool // metal of a recipe, which stays as wide at every size
}

// NarrowerThan returns every stretch that is not surely as wide as a width in
// pixels, the narrowest first. What it covers for a width it covers for every
// greater one.
func (m *Measured) NarrowerThan(px float64) []Narrow {
	walk := newWalker(&m.lines)
	spots := m.spotsUnder(px, walk)
	found := make([]Narrow, 0, len(spots))
	for i := range spots {
		found = append(found, m.narrowOf(&spots[i], walk))
	}
	slices.SortStableFunc(found, func(a, b Narrow) int {
		return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(b.Length, a.Length))
	})
	return found
}

// WidthsUnder returns Narrow.From of all that NarrowerThan does, in no order, and
// how far they may be wrong.
func (m *Measured) WidthsUnder(px float64) (from []float64, err float64) {
	for _, s := range m.spotsUnder(px, newWalker(&m.lines)) {
		least := never
		for _, i := range s.all {
			least = lesser(least, m.lines.points[i].hard)
		}
		from = append(from, float64(least))
	}
	return from, m.shaky
}

// spotsUnder is every stretch that is not surely as wide as a width.
func (m *Measured) spotsUnder(px float64, walk *walker) []spot {
	points := m.lines.points
	in := make([]bool, len(points))
	for i := range points {
		in[i] = float64(points[i].hard) < px+m.shaky && !m.isGrain(points[i].part)
	}
	var spots []spot
	for _, p := range m.lines.pieces(in) {
		spots = append(spots, m.spotOf(p, walk))
	}
	return m.mergeNear(spots, [groups]unit.MM{unit.MM(px), unit.MM(px), unit.MM(px)}, 1, walk)
}

func (m *Measured) narrowOf(s *spot, walk *walker) Narrow {
	f, from := m.describe(s, walk, 0, 1)
	x, y := int(f.X), int(f.Y)
	n := Narrow{
		Metal: s.class == metal, Edge: s.group == rimGroup, Flat: f.Flat, Beside: m.besides(x, y),
		X: f.X, Y: f.Y, X0: f.X0, Y0: f.Y0, X1: f.X1, Y1: f.Y1, Path: f.Path,
		Length: float64(f.Length), Thinnest: float64(f.Thinnest), Error: m.shaky, From: float64(from),
	}
	n.Built = n.Metal && m.s.Built != nil && m.s.Built[y*m.s.W+x]
	return n
}

// besides is what lies on either side of a place: the nearest of another class,
// then the nearest on the opposite side.
func (m *Measured) besides(x, y int) (beside [2]reduce.FlatID) {
	class := m.v.at(x, y)
	reach := 1
	ax, ay, found := 0, 0, false
	for ; !found && reach < m.v.w+m.v.h; reach *= 2 {
		ax, ay, found = m.nearestOther(x, y, reach, class, 0, 0)
	}
	beside[0] = m.flatAt(x+ax, y+ay)
	bx, by, found := m.nearestOther(x, y, 2*reach, class, ax, ay)
	if !found {
		bx, by = ax, ay
	}
	beside[1] = m.flatAt(x+bx, y+by)
	return beside
}

// nearestOther returns the way to the nearest pixel of another class within a
// reach, on the other side than (ax, ay) unless that is nothing.
func (m *Measured) nearestOther(x, y, reach int, class uint8, ax, ay int) (dx, dy int, found bool) {
	least := reach*reach + 1
	for v := -reach; v <= reach; v++ {
		for u := -reach; u <= reach; u++ {
			d := u*u + v*v
			if d >= least || (ax != 0 || ay != 0) && u*ax+v*ay >= 0 || m.v.at(x+u, y+v) == class {
				continue
			}
			dx, dy, least, found = u, v, d, true
		}
	}
	return dx, dy, found
}

// Parted returns the share of the length of all metal, and of all centrelines
// of enamel, that is not surely narrower than a width in pixels; 1 where there
// is none.
func (c *Curve) Parted(px float64) (lines, areas float64) {
	share := func(groups ...int) float64 {
		narrow, all := 0.0, 0.0
		for _, g := range groups {
			n, _ := slices.BinarySearch(c.hard[g], float32(px-c.m.shaky))
			if n > 0 {
				narrow += c.weight[g][n-1]
			}
			if len(c.weight[g]) > 0 {
				all += c.weight[g][len(c.weight[g])-1]
			}
		}
		if all == 0 {
			return 1
		}
		return 1 - narrow/all
	}
	return share(lineGroup, rimGroup), share(areaGroup)
}

// Row is a row of lettering that was found; all in working pixels.
type Row struct {
	Flat reduce.FlatID
	// On is what the letters stand on, or are sunk into.
	On             reduce.FlatID
	X, Y           float64
	X0, Y0, X1, Y1 float64
	Base           []float32 // the line they stand on
	Length         float64
	Height         float64 // of its capitals
	Stroke         float64 // the width of the thinnest letter's stroke
	Error          float64 // how far the height may be wrong
	Letters        int
}

// Rows returns the rows of lettering.
func (m *Measured) Rows() []Row {
	all := make([]Row, 0, len(m.rows))
	for i := range m.rows {
		r := &m.rows[i]
		f := m.rowFinding(r, 1, 1)
		row := Row{
			Flat: f.Flat, On: m.onWhich(r.parts[0]), X: r.x, Y: r.y, X0: f.X0, Y0: f.Y0, X1: f.X1, Y1: f.Y1,
			Base: r.base, Length: r.length, Height: r.height, Stroke: r.height, Error: hardError, Letters: len(r.parts),
		}
		for _, k := range r.parts {
			row.Stroke = min(row.Stroke, m.widthOf(k))
		}
		all = append(all, row)
	}
	return all
}

// onWhich is the flat round a part.
func (m *Measured) onWhich(part int32) reduce.FlatID {
	outer := m.round.outer[part]
	if outer < 0 {
		return sizing.Outside
	}
	return m.flatAtPart(outer)
}

// Narrowest is the least width, px, that some stretch of metal or enamel passes
// for no longer than it is wide: below it everything is wide enough, by Error.
// built is the same of metal that recipes built. Both are infinite where there
// is none.
func (m *Measured) Narrowest() (drawn, built, err float64) {
	return float64(m.narrowest[0]), float64(m.narrowest[1]), m.shaky
}

func (m *Measured) findNarrowest() {
	least := [2]float32{never, never}
	for i := range m.lines.points {
		p := &m.lines.points[i]
		if m.isGrain(p.part) {
			continue
		}
		k := 0
		if p.class == metal && m.s.Built != nil && m.s.Built[int(p.y)*m.s.W+int(p.x)] {
			k = 1
		}
		least[k] = lesser(least[k], p.hard)
	}
	m.narrowest = least
}

// BesideAt is the flat at a place and what lies on either side of it.
func (m *Measured) BesideAt(x, y float64) (own reduce.FlatID, beside [2]reduce.FlatID) {
	px, py := min(max(int(x), 0), m.s.W-1), min(max(int(y), 0), m.s.H-1)
	return m.flatAt(px, py), m.besides(px, py)
}
