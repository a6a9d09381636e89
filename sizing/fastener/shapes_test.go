package fastener

import (
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// shape says whether a point (x right, y down, any unit) is metal.
type shape func(x, y float64) bool

func disc(cx, cy, r float64) shape {
	return func(x, y float64) bool { return math.Hypot(x-cx, y-cy) <= r }
}

func oval(cx, cy, a, b float64) shape {
	return func(x, y float64) bool { return math.Hypot((x-cx)/a, (y-cy)/b) <= 1 }
}

func box(x0, y0, x1, y1 float64) shape {
	return func(x, y float64) bool { return x >= x0 && x <= x1 && y >= y0 && y <= y1 }
}

// poly is a polygon of x, y pairs, by the even-odd rule.
func poly(c ...float64) shape {
	return func(x, y float64) bool {
		in := false
		for i, n := 0, len(c)/2; i < n; i++ {
			j := (i + 1) % n
			x0, y0, x1, y1 := c[2*i], c[2*i+1], c[2*j], c[2*j+1]
			if (y0 > y) != (y1 > y) && x < x0+(y-y0)/(y1-y0)*(x1-x0) {
				in = !in
			}
		}
		return in
	}
}

func join(s ...shape) shape {
	return func(x, y float64) bool {
		for _, f := range s {
			if f(x, y) {
				return true
			}
		}
		return false
	}
}

func (s shape) less(o shape) shape { return func(x, y float64) bool { return s(x, y) && !o(x, y) } }
func (s shape) mirrored() shape    { return func(x, y float64) bool { return s(-x, y) } }
func (s shape) turned(by float64) shape {
	sin, cos := math.Sincos(-by)
	return func(x, y float64) bool { return s(x*cos-y*sin, x*sin+y*cos) }
}

// strike draws a shape that lies within -r..r on a raster of that many pixels
// a side and gives it a longest side. A pixel whose corners agree is whole;
// the cover of the others comes from 4 x 4 points.
func strike(s shape, r float64, px int, longest unit.MM) *sizing.Badge {
	sep := reduce.NewSeparation(px, px)
	sep.Flats = []reduce.Flat{{Role: reduce.Metal}}
	at := func(x, y float64) bool { return s((x/float64(px)*2-1)*r, (y/float64(px)*2-1)*r) }
	above, below := make([]bool, px+1), make([]bool, px+1)
	corners := func(row []bool, y int) {
		for x := range row {
			row[x] = at(float64(x), float64(y))
		}
	}
	corners(below, 0)
	for y := range px {
		above, below = below, above
		corners(below, y+1)
		for x := range px {
			n := 0
			if c := above[x]; c == above[x+1] && c == below[x] && c == below[x+1] {
				if c {
					n = 16
				}
			} else {
				n = cover(at, x, y)
			}
			fill(sep, y*px+x, n)
		}
	}
	outline, _ := sizing.Outline(sep)
	b := &sizing.Badge{Sep: sep, Outline: outline}
	b.Scale = sizing.ScaleFor(outline, sizing.Size{MM: longest, By: sizing.ByLongest})
	return b
}

func cover(at func(x, y float64) bool, x, y int) (n int) {
	for k := range 16 {
		if at(float64(x)+(float64(k%4)+0.5)/4, float64(y)+(float64(k/4)+0.5)/4) {
			n++
		}
	}
	return n
}

// fill sets a pixel of which n sixteenths are metal.
func fill(sep *reduce.Separation, i, n int) {
	switch {
	case n == 16:
		sep.Labels[i], sep.Beside[i] = 0, 0
	case n >= 8:
		sep.Labels[i], sep.Cover[i] = 0, uint8(255*n/16)
	case n > 0:
		sep.Beside[i], sep.Cover[i] = 0, uint8(255-255*n/16)
	}
}

// cabinet holds the silhouettes the placing of posts was judged on, each with
// a usual size.
type specimen struct {
	name    string
	longest unit.MM
	shape   shape
}

func cabinet() []specimen {
	tower := join(poly(-5, 20, -3, -10, 3, -10, 5, 20), box(-4.5, -12, 4.5, -10), box(-2.5, -16, 2.5, -12), poly(-3.5, -16, 0, -20, 3.5, -16))
	return []specimen{
		{"disc", 30, disc(0, 0, 10)},
		{"disc-large", 45, disc(0, 0, 10)},
		{"crescent", 32, disc(0, 0, 10).less(disc(4.5, 0, 8.2))},
		{"ring", 34, disc(0, 0, 10).less(disc(0, 0, 6.2))},
		{"arrow", 40, join(box(-18, -3, 6, 3), poly(6, -9, 19, 0, 6, 9))},
		{"arrow-up", 38, join(box(-3, -6, 3, 18), poly(-9, -6, 0, -19, 9, -6))},
		{"fish", 50, join(oval(-3, 0, 14, 5.5), poly(9, 0, 18, -6, 16, 0, 18, 6))},
		{"tower", 50, tower},
		{"wings", 60, join(poly(-20, -7, -4, -3, 0, -5, 4, -3, 20, -7, 14, 1, 4, 4, 0, 8, -4, 4, -14, 1))},
		{"cross", 36, join(box(-4, -14, 4, 14), box(-14, -4, 14, 4))},
		{"key", 45, join(disc(0, -12, 7).less(disc(0, -13, 2.5)), box(-2, -6, 2, 18), box(2, 8, 7, 11), box(2, 13, 6, 16))},
		{"cloud", 38, join(disc(-8, 2, 6), disc(-2, -3, 7), disc(6, -1, 6), disc(11, 3, 4.5), box(-8, 2, 11, 8))},
		{"tree", 40, join(poly(0, -18, 8, -6, -8, -6), poly(0, -12, 10, 2, -10, 2), poly(0, -5, 12, 10, -12, 10), box(-2.5, 10, 2.5, 16))},
		{"buoy-anchor", 50, join(oval(0, -12, 7, 6), poly(-4, -8, -2, 2, 2, 2, 4, -8), join(box(-0.8, 6, 0.8, 18), disc(0, 14, 5).less(disc(0, 12.5, 4.3))))},
		{"boat", 40, join(poly(-14, 6, 14, 6, 9, 13, -9, 13), box(-0.8, -14, 0.8, 6), poly(0, -12, 12, 4, 0, 4))},
		{"heart", 30, join(disc(-5, -4, 5.6), disc(5, -4, 5.6), poly(-9.6, -1, -5, -4, 5, -4, 9.6, -1, 0, 11))},
		{"star", 34, poly(0, -10, 2.4, -3.1, 9.5, -3.1, 3.8, 1.2, 5.9, 8.1, 0, 3.8, -5.9, 8.1, -3.8, 1.2, -9.5, -3.1, -2.4, -3.1)},
		{"leaning-feather", 50, oval(0, 0, 15, 4.5).turned(-0.9)},
		{"wave", 45, disc(0, 0, 12).less(disc(5, -4, 8)).less(box(-20, 8, 20, 20))},
		{"banner", 90, box(-15, -5, 15, 5)},
		{"big-disc", 80, disc(0, 0, 10)},
		{"tiny", 15, disc(0, 0, 10)},
	}
}
