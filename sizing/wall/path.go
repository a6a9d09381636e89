package wall

// piece is one connected set of points of a graph, in the order it was met.
type piece []int32

// pieces returns the connected sets of the points for which in is true, in the
// order of their first points.
func (g *graph) pieces(in []bool) []piece {
	var all []piece
	seen := make([]bool, len(g.points))
	for i := range g.points {
		if !in[i] || seen[i] {
			continue
		}
		q := piece{int32(i)}
		seen[i] = true
		for k := 0; k < len(q); k++ {
			for _, n := range g.of(q[k]) {
				if in[n] && !seen[n] && g.points[n].group == g.points[i].group {
					seen[n] = true
					q = append(q, n)
				}
			}
		}
		all = append(all, q)
	}
	return all
}

// walker goes over pieces of a graph; its scratch serves one piece after another.
type walker struct {
	g      *graph
	in     []int32 // number of the piece a point was last put in
	met    []int32
	from   []int32
	height []int32
	links  map[int32][]int32 // leaps between pieces that are drawn as one
	near   []int32
	piece  int32
	visit  int32
}

func newWalker(g *graph) *walker {
	n := len(g.points)
	return &walker{g: g, in: make([]int32, n), met: make([]int32, n), from: make([]int32, n), height: make([]int32, n)}
}

// length returns the length of the centreline of a piece, in pixels; every
// link within the piece counts once.
func (w *walker) length(p piece) float64 {
	w.enter(p)
	sum := 0.0
	for _, i := range p {
		for _, n := range w.g.of(i) {
			if n > i && w.in[n] == w.piece {
				sum += w.g.step(i, n)
			}
		}
	}
	return sum
}

func (w *walker) enter(p piece) {
	w.piece++
	for _, i := range p {
		w.in[i] = w.piece
	}
}

// ends returns the points of a piece that have at most one neighbour in it.
func (w *walker) ends(p piece) []int32 {
	w.enter(p)
	var ends []int32
	for _, i := range p {
		n := 0
		for _, k := range w.g.of(i) {
			if w.in[k] == w.piece {
				n++
			}
		}
		if n <= 1 {
			ends = append(ends, i)
		}
	}
	return ends
}

// of returns the neighbours of a point, leaps included.
func (w *walker) of(i int32) []int32 {
	if len(w.links) == 0 || w.links[i] == nil {
		return w.g.of(i)
	}
	w.near = append(append(w.near[:0], w.g.of(i)...), w.links[i]...)
	return w.near
}

// spread walks breadth first within the piece and returns the order of visits.
func (w *walker) spread(start int32, order []int32) []int32 {
	w.visit++
	w.met[start], w.from[start] = w.visit, -1
	order = append(order[:0], start)
	for k := 0; k < len(order); k++ {
		for _, n := range w.of(order[k]) {
			if w.in[n] == w.piece && w.met[n] != w.visit {
				w.met[n], w.from[n] = w.visit, order[k]
				order = append(order, n)
			}
		}
	}
	return order
}

// tour draws a piece in one stroke: from one far end to the other, going out
// and back along every branch of at least twig pixels on the way. Pieces that
// links join are drawn as one.
func (w *walker) tour(p piece, links [][2]int32, twig int32) []float32 {
	w.enter(p)
	clear(w.links)
	for _, l := range links {
		if w.links == nil {
			w.links = map[int32][]int32{}
		}
		w.links[l[0]] = append(w.links[l[0]], l[1])
		w.links[l[1]] = append(w.links[l[1]], l[0])
	}
	order := w.spread(p[0], nil)
	order = w.spread(order[len(order)-1], order)
	for _, i := range order {
		w.height[i] = 0
	}
	for k := len(order) - 1; k > 0; k-- {
		up := w.from[order[k]]
		w.height[up] = max(w.height[up], w.height[order[k]]+1)
	}
	var s stroke
	last := order[len(order)-1]
	here, came := order[0], int32(-1)
	for {
		s.to(w.g.points[here].x, w.g.points[here].y)
		if here == last {
			break
		}
		next := w.onward(here, came, twig)
		if next < 0 {
			next = w.from[here]
		}
		if next < 0 {
			break
		}
		here, came = next, here
	}
	return s.end()
}

// onward returns the branch to take at a point after coming from one: branches
// in rising order of height, equals by number; -1 when all are done.
func (w *walker) onward(here, came, twig int32) int32 {
	var after int64 = -1
	if came >= 0 && w.from[came] == here {
		after = w.rank(came)
	}
	best, pick := int64(1)<<62, int32(-1)
	for _, n := range w.of(here) {
		if w.in[n] != w.piece || w.from[n] != here {
			continue
		}
		r := w.rank(n)
		if w.height[n]+1 < twig && w.height[n]+1 < w.height[here] {
			continue
		}
		if r > after && r < best {
			best, pick = r, n
		}
	}
	return pick
}

func (w *walker) rank(i int32) int64 { return int64(w.height[i])<<32 | int64(i) }

// stroke takes pixels in turn and keeps those a drawn line needs.
type stroke struct {
	path   []float32
	ax, ay int32 // last point kept
	px, py int32 // last point seen
	dx, dy float64
	begun  bool
	aimed  bool
}

// A stroke may leave the pixels it follows by this much, in pixels; its
// direction is taken once it is some pixels long.
const (
	strokeSlack = 0.75
	strokeAim   = 5
)

func (s *stroke) to(x, y int32) {
	if !s.begun {
		s.begun = true
		s.px, s.py = x, y
		s.keep(x, y)
		return
	}
	dx, dy := float64(x-s.ax), float64(y-s.ay)
	if s.aimed {
		across := dx*s.dy - dy*s.dx
		along := dx*s.dx + dy*s.dy
		was := float64(s.px-s.ax)*s.dx + float64(s.py-s.ay)*s.dy
		if across*across > strokeSlack*strokeSlack || along < was-0.5 {
			s.keep(s.px, s.py)
			dx, dy = float64(x-s.ax), float64(y-s.ay)
		}
	} else if back := float64(s.px-s.ax)*dx + float64(s.py-s.ay)*dy; back < 0 || x == s.ax && y == s.ay {
		s.keep(s.px, s.py)
		dx, dy = float64(x-s.ax), float64(y-s.ay)
	}
	if l2 := dx*dx + dy*dy; !s.aimed && l2 >= strokeAim*strokeAim {
		l := sqrt(l2)
		s.dx, s.dy, s.aimed = dx/l, dy/l, true
	}
	s.px, s.py = x, y
}

func (s *stroke) keep(x, y int32) {
	s.path = append(s.path, float32(x)+0.5, float32(y)+0.5)
	s.ax, s.ay, s.aimed = x, y, false
}

func (s *stroke) end() []float32 {
	if s.begun && (s.px != s.ax || s.py != s.ay) {
		s.keep(s.px, s.py)
	}
	return s.path
}
