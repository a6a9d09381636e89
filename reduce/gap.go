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
// leak; ok is false when there is none.
func (s *Separation) GapAt(x, y int) (g Gap, ok bool) {
	if x < 0 || y < 0 || x >= s.W || y >= s.H {
		return Gap{}, false
	}
	own := s.Labels[y*s.W+x]
	wall := make([]bool, len(s.Labels)) // where the area is not
	for i, l := range s.Labels {
		wall[i] = l != own
	}
	f, some := mask.Nearest(wall, s.W, s.H)
	if !some {
		return Gap{}, false
	}
	r := rooms{s: s, d2: f.D2, off: own == None}
	neck, open := r.neckFrom(r.climb(y*s.W + x))
	if neck < 0 {
		return Gap{}, false
	}
	return s.gapOf(f, wall, neck, open), true
}

// rooms walks an area by how wide it is.
type rooms struct {
	s   *Separation
	d2  []int32 // squared distance to what is not the area
	off bool    // the area is background: it may run off the raster
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
	w, h := r.s.W, r.s.H
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
	x, y := i%r.s.W, i/r.s.W
	return x == 0 || y == 0 || x == r.s.W-1 || y == r.s.H-1
}

// gapOf describes the opening at its narrowest pixel: its two sides are the
// nearest to each other of what lies there on either hand.
func (s *Separation) gapOf(f *mask.Field, wall []bool, neck int, open bool) Gap {
	x, y := neck%s.W, neck/s.W
	ax, ay := f.Site(x, y)
	reach := 3*int(math.Sqrt(float64(f.D2[neck]))) + 3
	bx, by := s.across(wall, x, y, ax, ay, reach)
	ax, ay = s.across(wall, x, y, bx, by, reach)
	g := Gap{X0: float64(ax) + 0.5, Y0: float64(ay) + 0.5, X1: float64(bx) + 0.5, Y1: float64(by) + 0.5, Open: open}
	g.Width = max(0, math.Hypot(g.X1-g.X0, g.Y1-g.Y0)-1)
	return g
}

// across returns the pixel of wall nearest to (ax, ay) on the other hand of
// (x, y), within reach; (ax, ay) itself when there is none.
func (s *Separation) across(wall []bool, x, y, ax, ay, reach int) (bx, by int) {
	bx, by = ax, ay
	least := math.MaxInt
	for yy := max(0, y-reach); yy <= min(s.H-1, y+reach); yy++ {
		for xx := max(0, x-reach); xx <= min(s.W-1, x+reach); xx++ {
			if !wall[yy*s.W+xx] || (xx-x)*(ax-x)+(yy-y)*(ay-y) >= 0 {
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
