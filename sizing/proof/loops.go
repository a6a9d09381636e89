package proof

import (
	"math"
	"slices"
)

// loop is a closed border of the pin, its places a pixel or so apart in order,
// solid on the right hand; of a hole too.
type loop struct {
	at     []Point
	out    []Point // unit normals, away from the pin
	hole   bool
	length float64 // px
}

// findLoops follows every border between the pin and what lies outside it.
func (a *Asked) findLoops() {
	s := a.Badge.Sep
	solid := func(x, y int) bool {
		return x >= 0 && y >= 0 && x < s.W && y < s.H && a.class[y*s.W+x] != outside
	}
	seen := make([]bool, len(a.class))
	for y := range s.H {
		for x := range s.W {
			if solid(x, y) && !solid(x, y-1) && !seen[y*s.W+x] {
				if l := a.follow(x, y, solid, seen); len(l.at) >= leastLoop {
					a.loops = append(a.loops, l)
				}
			}
		}
	}
	slices.SortStableFunc(a.loops, func(p, q loop) int {
		switch {
		case p.length > q.length:
			return -1
		case p.length < q.length:
			return 1
		}
		return 0
	})
	for i := range a.loops {
		if !a.loops[i].hole {
			a.large = i
			break
		}
	}
}

// leastLoop is the length in px of a border below which it is a speck's.
const leastLoop = 24

// The sides of a pixel in the order in which a border goes round it with the
// pixel to its right: along its top to the right, down its right side, and so on.
var (
	stepX  = [4]int{1, 0, -1, 0}
	stepY  = [4]int{0, 1, 0, -1}
	awayX  = [4]int{0, 1, 0, -1}
	awayY  = [4]int{-1, 0, 1, 0}
	topDir = 0
)

// follow walks along sides of solid pixels from the top of pixel x, y until it
// comes back. Tops that were passed are noted in seen.
func (a *Asked) follow(x, y int, solid func(x, y int) bool, seen []bool) loop {
	var l loop
	w := a.Badge.Sep.W
	d, x0, y0 := topDir, x, y
	for {
		if d == topDir {
			seen[y*w+x] = true
		}
		l.at = append(l.at, a.crack(x, y, d))
		fx, fy := x+stepX[d], y+stepY[d]
		switch {
		case solid(fx+awayX[d], fy+awayY[d]): // turns left, onto the pixel there
			x, y = fx+awayX[d], fy+awayY[d]
			d = (d + 3) % 4
		case solid(fx, fy):
			x, y = fx, fy
		default:
			d = (d + 1) % 4
		}
		if x == x0 && y == y0 && d == topDir {
			break
		}
	}
	l.finish()
	return l
}

// crack is where the edge lies by the side d of solid pixel x, y: on the line
// through its middle across that side, as far as cover says.
func (a *Asked) crack(x, y, d int) Point {
	s := a.Badge.Sep
	c := 1 - a.cover(y*s.W+x, outside)
	if qx, qy := x+awayX[d], y+awayY[d]; qx >= 0 && qy >= 0 && qx < s.W && qy < s.H {
		c += 1 - a.cover(qy*s.W+qx, outside)
	}
	far := c - 0.5 // from the pixel's middle
	return Point{float64(x) + 0.5 + float64(awayX[d])*far, float64(y) + 0.5 + float64(awayY[d])*far}
}

// bend is how many places to either side a normal is taken over.
const bend = 5

func (l *loop) finish() {
	n := len(l.at)
	l.out = make([]Point, n)
	area := 0.0
	for i, p := range l.at {
		q := l.at[(i+1)%n]
		area += minor(p.X, q.Y, q.X, p.Y)
		l.length += dist(p, q)
		a, b := l.at[(i+n-bend%n)%n], l.at[(i+bend)%n]
		if t := dist(a, b); t > 0 {
			l.out[i] = Point{(b.Y - a.Y) / t, -(b.X - a.X) / t}
		} else {
			l.out[i] = Point{0, -1}
		}
	}
	l.hole = area < 0
}

func dist(p, q Point) float64 {
	dx, dy := p.X-q.X, p.Y-q.Y
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}
