package reduce

import (
	"math"

	"badgewright/reduce/mask"
)

// Gap is where an area runs on through an opening much narrower than itself:
// there a line does not close.
type Gap struct {
	// X0, Y0 and X1, Y1 are the two sides of the opening, in pixels.
	X0, Y0, X1, Y1 float64
	// Width of the opening, in pixels, edge to edge.
	Width float64
	// Open is true when the area runs on to the background round the drawing,
	// false when it runs into another area of its own colour.
	Open bool
}

const (
	// gapShare is how narrow an opening is at most against the room before and
	// behind it: this tool's choice, below which nobody would call the two one
	// area.
	gapShare = 0.4
	// leastRoom is how wide, in pixels, a room is at least.
	leastRoom = 8
)

// GapAt looks for the narrow opening through which a fill at a place would
// leak; ok is false when there is none. It looks no further than the area goes.
func (s *Separation) GapAt(x, y int) (g Gap, ok bool) {
	if x < 0 || y < 0 || x >= s.W || y >= s.H {
		return Gap{}, false
	}
	off := s.Labels[y*s.W+x] == None
	in := s.areaAt(x, y)
	wall := in.wall
	f, some := mask.Nearest(wall, in.w, in.h)
	if !some {
		return Gap{}, false
	}
	r := rooms{w: in.w, h: in.h, d2: f.D2, off: off}
	neck, open := r.neckFrom(r.climb((y-in.y)*in.w + x - in.x))
	if neck < 0 {
		return Gap{}, false
	}
	return in.gapOf(f, neck, open), true
}

// area is one connected area cut out of a separation, with a pixel round it
// where the raster goes on.
type area struct {
	x, y, w, h int
	wall       []bool // where the area is not
}

// areaAt cuts out the area that a pixel belongs to; pixels that touch at a
// corner hang together.
func (s *Separation) areaAt(x, y int) area {
	own := s.Labels[y*s.W+x]
	seen := make([]bool, len(s.Labels))
	seen[y*s.W+x] = true
	todo := []int32{int32(y*s.W + x)}
	x0, y0, x1, y1 := x, y, x, y
	for k := 0; k < len(todo); k++ {
		x, y := int(todo[k])%s.W, int(todo[k])/s.W
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		for yy := max(y-1, 0); yy <= min(y+1, s.H-1); yy++ {
			for j := yy*s.W + max(x-1, 0); j <= yy*s.W+min(x+1, s.W-1); j++ {
				if s.Labels[j] == own && !seen[j] {
					seen[j] = true
					todo = append(todo, int32(j))
				}
			}
		}
	}
	x0, y0, x1, y1 = max(x0-1, 0), max(y0-1, 0), min(x1+2, s.W), min(y1+2, s.H)
	in := area{x: x0, y: y0, w: x1 - x0, h: y1 - y0}
	in.wall = make([]bool, in.w*in.h)
	for i := range in.wall {
		in.wall[i] = true
	}
	for _, i := range todo {
		in.wall[(int(i)/s.W-y0)*in.w+int(i)%s.W-x0] = false
	}
	return in
}

// rooms walks an area by how wide it is.
type rooms struct {
	w, h int
	d2   []int32 // squared distance to what is not the area
	off  bool    // the area is background: it may run off the raster
}

// climb goes from a pixel to where the area round it is widest.
func (r *rooms) climb(i int) int {
	for {
		best := i
		r.beside(i, func(j int) {
			if r.d2[j] > r.d2[best] {
				best = j
			}
		})
		if best == i {
			return i
		}
		i = best
	}
}

func (r *rooms) beside(i int, with func(j int)) {
	w, h := r.w, r.h
	x, y := i%w, i/w
	for yy := max(y-1, 0); yy <= min(y+1, h-1); yy++ {
		for xx := max(x-1, 0); xx <= min(x+1, w-1); xx++ {
			if j := yy*w + xx; j != i && r.d2[j] > 0 {
				with(j)
			}
		}
	}
}

// neckFrom spreads from the middle of a room, widest ways first, and returns
// the narrowest pixel on the way to the first room, or to the edge of the
// raster, that lies behind a narrow one; -1 when there is none.
func (r *rooms) neckFrom(start int) (neck int, open bool) {
	room := math.Sqrt(float64(r.d2[start]))
	if 2*room < leastRoom {
		return -1, false
	}
	narrow := make([]int32, len(r.d2)) // 1 + the narrowest pixel on the way, 0 while unseen
	narrow[start] = int32(start) + 1
	queue := newByWidth(int(room) + 2)
	queue.add(start, room)
	for {
		i, ok := queue.widest()
		if !ok {
			return -1, false
		}
		n := int(narrow[i]) - 1
		width, here := math.Sqrt(float64(r.d2[n])), math.Sqrt(float64(r.d2[i]))
		tight := width <= gapShare*room
		if !r.off && tight && width <= gapShare*here && 2*here >= leastRoom {
			return n, false
		}
		if r.off && r.atEdge(i) {
			if tight {
				return n, true
			}
			return -1, false // nothing closes it in
		}
		r.beside(i, func(j int) {
			if narrow[j] != 0 {
				return
			}
			narrow[j] = narrow[i]
			if r.d2[j] < r.d2[n] {
				narrow[j] = int32(j) + 1
			}
			queue.add(j, min(width, math.Sqrt(float64(r.d2[j]))))
		})
	}
}

func (r *rooms) atEdge(i int) bool {
	x, y := i%r.w, i/r.w
	return x == 0 || y == 0 || x == r.w-1 || y == r.h-1
}

// gapOf describes the opening at its narrowest pixel: its two sides are the
// nearest to each other of what lies there on either hand.
func (in *area) gapOf(f *mask.Field, neck int, open bool) Gap {
	x, y := neck%in.w, neck/in.w
	ax, ay := f.Site(x, y)
	reach := 3*int(math.Sqrt(float64(f.D2[neck]))) + 3
	bx, by := in.across(x, y, ax, ay, reach)
	ax, ay = in.across(x, y, bx, by, reach)
	at := func(x, y int) (float64, float64) { return float64(in.x+x) + 0.5, float64(in.y+y) + 0.5 }
	g := Gap{Open: open}
	g.X0, g.Y0 = at(ax, ay)
	g.X1, g.Y1 = at(bx, by)
	g.Width = max(0, math.Hypot(g.X1-g.X0, g.Y1-g.Y0)-1)
	return g
}

// across returns the pixel of wall nearest to (ax, ay) on the other hand of
// (x, y), within reach; (ax, ay) itself when there is none.
func (in *area) across(x, y, ax, ay, reach int) (bx, by int) {
	bx, by = ax, ay
	least := math.MaxInt
	for yy := max(0, y-reach); yy <= min(in.h-1, y+reach); yy++ {
		for xx := max(0, x-reach); xx <= min(in.w-1, x+reach); xx++ {
			if !in.wall[yy*in.w+xx] || (xx-x)*(ax-x)+(yy-y)*(ay-y) >= 0 {
				continue
			}
			if d := (xx-ax)*(xx-ax) + (yy-ay)*(yy-ay); d < least {
				bx, by, least = xx, yy, d
			}
		}
	}
	return bx, by
}

// byWidth hands out pixels widest first, to the pixel; of one width, first in
// first out.
type byWidth struct {
	at   [][]int32
	next []int
	top  int
}

func newByWidth(most int) *byWidth {
	return &byWidth{at: make([][]int32, most+1), next: make([]int, most+1)}
}

func (q *byWidth) add(i int, width float64) {
	k := min(int(width), len(q.at)-1)
	q.at[k] = append(q.at[k], int32(i))
	q.top = max(q.top, k)
}

func (q *byWidth) widest() (int, bool) {
	for ; q.top >= 0; q.top-- {
		if k := q.top; q.next[k] < len(q.at[k]) {
			q.next[k]++
			return int(q.at[k][q.next[k]-1]), true
		}
	}
	q.top = 0
	return 0, false
}
