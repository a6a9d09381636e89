package proof

import (
	"math"
	"math/rand/v2"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/reduce/mask"
	"badgewright/sizing"
)

// edit is one thing that a maker did otherwise than asked, planted in what the
// proof is drawn of.
type edit struct {
	name  string
	kinds []DeviationKind // what it is told as
	// make changes a copy of the pin and returns where; ok is false where the
	// design has no place for it.
	make func(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) (at []Point, ok bool)
}

var edits = []edit{
	{"line removed", []DeviationKind{LineMissing, AreasMerged}, removeLine},
	{"line added", []DeviationKind{LineAdded, AreaSplit}, addLine},
	{"line thicker", []DeviationKind{LineThicker}, thickenLine},
	{"line thinner", []DeviationKind{LineThinner}, thinLine},
	{"areas merged", []DeviationKind{AreasMerged, LineMissing, AreaRecoloured}, mergeAreas},
	{"recoloured by 5", []DeviationKind{AreaRecoloured}, recolour(5)},
	{"recoloured by 10", []DeviationKind{AreaRecoloured}, recolour(10)},
	{"recoloured by 20", []DeviationKind{AreaRecoloured}, recolour(20)},
	{"area recoloured by 10", []DeviationKind{AreaRecoloured}, recolourArea(10)},
	{"outline out by 0.3 mm", []DeviationKind{OutlineMoved}, moveOutline(true)},
	{"outline in by 0.3 mm", []DeviationKind{OutlineMoved}, moveOutline(false)},
}

// copied is a pin whose separation may be changed.
func copied(b *sizing.Badge) *sizing.Badge {
	s := *b.Sep
	s.Labels, s.Beside, s.Cover = slices.Clone(s.Labels), slices.Clone(s.Beside), slices.Clone(s.Cover)
	s.Flats = slices.Clone(s.Flats)
	c := *b
	c.Sep = &s
	return &c
}

func set(s *reduce.Separation, i int, l uint8) { s.Labels[i], s.Beside[i], s.Cover[i] = l, l, 255 }

func metalLabel(s *reduce.Separation) uint8 {
	for l, f := range s.Flats {
		if f.Role == reduce.Metal {
			return uint8(l)
		}
	}
	return reduce.None
}

// pair is the ways across the lines between two areas.
type pair struct {
	a, b int32
	at   []int
}

// stands says whether metal stands out from an area: what cannot be seen cannot be
// found, and a note says so.
func stands(a *Asked, cell int32, k look) bool {
	c, m := a.askedColour(a.cells.Label[cell]), rgb{float64(k.metal.R), float64(k.metal.G), float64(k.metal.B)}
	return math.Abs(c.light()-m.light()) > fineContrast+10
}

// linesBetween lists lines between two areas that are each as wide as a finger of
// the line, the longest first; both sides enamel.
func linesBetween(a *Asked, k look) []pair {
	var list []pair
	for i, c := range a.lines {
		p, q := min(c.a, c.b), max(c.a, c.b)
		if a.cells.Label[p] >= metal || a.cells.Label[q] >= metal || p == q || min(c.roomA, c.roomB) < a.px(0.5) || a.mm(c.wide) > 0.6 {
			continue
		}
		if !stands(a, p, k) || !stands(a, q, k) {
			continue
		}
		n := slices.IndexFunc(list, func(x pair) bool { return x.a == p && x.b == q })
		if n < 0 {
			n = len(list)
			list = append(list, pair{a: p, b: q})
		}
		list[n].at = append(list[n].at, i)
	}
	list = slices.DeleteFunc(list, func(p pair) bool { return float64(a.mm(float64(len(p.at)*a.every))) < 2.5 })
	slices.SortStableFunc(list, func(p, q pair) int { return len(q.at) - len(p.at) })
	return list
}

func pick(a *Asked, k look, rnd *rand.Rand) (pair, bool) {
	list := linesBetween(a, k)
	if len(list) == 0 {
		return pair{}, false
	}
	return list[rnd.IntN(min(len(list), 4))], true
}

// along calls f for every pixel of the metal of a line and how far it lies from
// its middle, and returns where the line is.
func along(a *Asked, p pair, air float64, f func(i int, c *cross, off float64)) []Point {
	var at []Point
	s := a.Badge.Sep
	type best struct{ c, d float64 }
	near := map[int]best{}
	for _, k := range p.at {
		c := &a.lines[k]
		at = append(at, c.at)
		r := c.wide/2 + air
		for y := int(c.at.Y - r); y <= int(c.at.Y+r)+1; y++ {
			for x := int(c.at.X - r); x <= int(c.at.X+r)+1; x++ {
				if x < 0 || y < 0 || x >= s.W || y >= s.H {
					continue
				}
				d := dist(Point{float64(x) + 0.5, float64(y) + 0.5}, c.at)
				if d > r {
					continue
				}
				if b, ok := near[y*s.W+x]; !ok || d < b.d {
					near[y*s.W+x] = best{float64(k), d}
				}
			}
		}
	}
	for i := range s.Labels {
		if b, ok := near[i]; ok {
			c := &a.lines[int(b.c)]
			x, y := float64(i%s.W)+0.5-c.at.X, float64(i/s.W)+0.5-c.at.Y
			f(i, c, x*c.dir.X+y*c.dir.Y)
		}
	}
	return at
}

func removeLine(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
	p, ok := pick(a, k, rnd)
	if !ok {
		return nil, false
	}
	at := along(a, p, 2, func(i int, c *cross, off float64) {
		if a.class[i] != metal {
			return
		}
		side := c.a
		if off > 0 {
			side = c.b
		}
		set(s, i, a.cells.Label[side])
	})
	return at, true
}

func mergeAreas(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
	for _, p := range linesBetween(a, k) {
		if a.cells.Label[p.a] == a.cells.Label[p.b] || differs(a.askedColour(a.cells.Label[p.a]), a.askedColour(a.cells.Label[p.b])) < 8 {
			continue
		}
		l := a.cells.Label[p.a]
		at := along(a, p, 2, func(i int, c *cross, off float64) {
			if a.class[i] == metal {
				set(s, i, l)
			}
		})
		for i, c := range a.cell {
			if c == p.b {
				set(s, i, l)
			}
		}
		return at, true
	}
	return nil, false
}

func thickenLine(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
	p, ok := pick(a, k, rnd)
	l := metalLabel(s)
	if !ok || l == reduce.None {
		return nil, false
	}
	at := along(a, p, a.px(0.12), func(i int, c *cross, off float64) {
		if math.Abs(off) <= c.wide/2+a.px(0.11) && a.class[i] < metal {
			set(s, i, l)
		}
	})
	return at, true
}

func thinLine(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
	p, ok := pick(a, k, rnd)
	if !ok {
		return nil, false
	}
	at := along(a, p, 2, func(i int, c *cross, off float64) {
		if a.class[i] != metal || math.Abs(off) < 0.24*c.wide {
			return
		}
		side := c.a
		if off > 0 {
			side = c.b
		}
		set(s, i, a.cells.Label[side])
	})
	return at, true
}

// addLine draws a line 0.25 mm wide across the widest area, from border to border.
func addLine(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
	l := metalLabel(s)
	best, most := -1, int32(0)
	for i, d := range a.deep {
		if a.class[i] < metal && d > most {
			best, most = i, d
		}
	}
	if best < 0 || l == reduce.None || float64(a.mm(math.Sqrt(float64(most)))) < 1 {
		return nil, false
	}
	x, y := float64(best%s.W)+0.5, float64(best/s.W)+0.5
	sin, cos := math.Sincos(math.Pi * rnd.Float64())
	var at []Point
	for i := range s.Labels {
		dx, dy := float64(i%s.W)+0.5-x, float64(i/s.W)+0.5-y
		if a.cell[i] == a.cell[best] && math.Abs(dy*cos-dx*sin) < a.px(0.125) {
			set(s, i, l)
			if i%7 == 0 {
				at = append(at, Point{float64(i % s.W), float64(i / s.W)})
			}
		}
	}
	return at, true
}

// shifted is a colour that lies off another by a CIEDE2000.
func shifted(c colour.RGB8, by float64, rnd *rand.Rand) (colour.RGB8, bool) {
	lab := c.Lab()
	for range 60 {
		dir := [3]float64{rnd.NormFloat64(), rnd.NormFloat64(), rnd.NormFloat64()}
		for t := 0.5; t < 80; t += 0.25 {
			n := math.Sqrt(dir[0]*dir[0] + dir[1]*dir[1] + dir[2]*dir[2])
			out, in := colour.FromLab(colour.Lab{L: lab.L + t*dir[0]/n, A: lab.A + t*dir[1]/n, B: lab.B + t*dir[2]/n})
			if e := colour.CIEDE2000(lab, out.Lab()); in && math.Abs(e-by) < 0.04*by {
				return out, true
			} else if e > 1.1*by {
				break
			}
		}
	}
	return c, false
}

// recolour gives another colour to the flat that has the most of the pin.
func recolour(by float64) func(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
	return func(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
		var list []uint8
		for l := range s.Flats {
			n := 0
			for _, c := range a.class {
				if c == uint8(l) {
					n++
				}
			}
			if float64(a.mm(float64(a.mm(float64(n))))) > 8 {
				list = append(list, uint8(l))
			}
		}
		if len(list) == 0 {
			return nil, false
		}
		l := list[rnd.IntN(len(list))]
		c, ok := shifted(s.Flats[l].RGB, by, rnd)
		s.Flats[l].RGB = c
		return cellsOf(a, l), ok
	}
}

func cellsOf(a *Asked, l uint8) []Point {
	var at []Point
	for i, c := range a.class {
		if c == l && i%37 == 0 {
			at = append(at, Point{float64(i % a.Badge.Sep.W), float64(i / a.Badge.Sep.W)})
		}
	}
	return at
}

func recolourArea(by float64) func(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
	return func(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
		var cells []int32
		for c, l := range a.cells.Label {
			if l < metal && float64(a.mm(float64(a.mm(float64(a.cells.Area[c]))))) > 3 {
				cells = append(cells, int32(c))
			}
		}
		if len(cells) == 0 {
			return nil, false
		}
		cell := cells[rnd.IntN(len(cells))]
		f := s.Flats[a.cells.Label[cell]]
		var ok bool
		f.RGB, ok = shifted(f.RGB, by, rnd)
		f.ID += 100
		s.Flats = append(s.Flats, f)
		var at []Point
		for i, c := range a.cell {
			if c == cell {
				set(s, i, uint8(len(s.Flats)-1))
				if i%11 == 0 {
					at = append(at, Point{float64(i % s.W), float64(i / s.W)})
				}
			}
		}
		return at, ok
	}
}

// moveOutline moves a stretch of outline, about 5 mm long, by 0.3 mm, running out
// to nothing at its ends.
func moveOutline(out bool) func(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
	return func(a *Asked, s *reduce.Separation, k look, rnd *rand.Rand) ([]Point, bool) {
		l := &a.loops[a.large]
		at := l.at[rnd.IntN(len(l.at))]
		if edge := a.px(0.5); at.X < edge || at.Y < edge || at.X > float64(s.W)-edge || at.Y > float64(s.H)-edge {
			return nil, false // the raster ends here
		}
		site := make([]bool, len(a.class))
		for i, c := range a.class {
			site[i] = (c != outside) == out
		}
		f, ok := mask.Nearest(site, s.W, s.H)
		m := metalLabel(s)
		if !ok || m == reduce.None {
			return nil, false
		}
		for i, d2 := range f.D2 {
			from := float64(a.mm(dist(Point{float64(i%s.W) + 0.5, float64(i/s.W) + 0.5}, at)))
			far := a.px(0.3) * min(1, max(0, (3-from)/1.2))
			d := math.Sqrt(float64(d2))
			switch {
			case d == 0 || far == 0:
			case out && d <= far:
				set(s, i, m)
			case !out && d <= far:
				set(s, i, reduce.None)
			case !out && d <= far+a.px(0.4):
				set(s, i, m)
			}
		}
		return []Point{at}, true
	}
}
