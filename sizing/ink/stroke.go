package ink

import (
	"image/color"
	"math"
	"slices"
)

// Band is what lies from one distance to another of a path, in px. From 0 it is
// a line of twice the width of To; above 0 it is an outline round the path.
type Band struct {
	From, To float64
	Ink      color.NRGBA
}

// Line is the band of a line of a width.
func Line(width float64, ink color.NRGBA) Band { return Band{To: width / 2, Ink: ink} }

// stroke is everything at some distances of some paths.
type stroke struct {
	paths  [][]Point
	bands  []Band
	x0, y0 float64 // the box of all of it
	x1, y1 float64
}

// Stroke draws bands round paths, the first band undermost. Ends and corners
// are round; a path of one point is a dot. Where a band meets itself it does
// not show. An edge is placed to a fraction of a pixel: exactly for lines
// across and down, to within a twentieth of a pixel for others.
func (s *Sheet) Stroke(paths [][]Point, bands ...Band) {
	k := &stroke{paths: paths, bands: bands, x0: math.Inf(1), y0: math.Inf(1), x1: math.Inf(-1), y1: math.Inf(-1)}
	far := k.far()
	for _, p := range paths {
		for _, q := range p {
			k.x0, k.y0 = min(k.x0, q.X-far), min(k.y0, q.Y-far)
			k.x1, k.y1 = max(k.x1, q.X+far), max(k.y1, q.Y+far)
		}
	}
	if k.x0 <= k.x1 {
		s.marks = append(s.marks, k)
	}
}

// far is the distance past which nothing is drawn.
func (k *stroke) far() float64 {
	far := 0.0
	for _, b := range k.bands {
		far = max(far, b.To)
	}
	return far + 0.5
}

func (k *stroke) reach() (y0, y1 int) { return int(math.Floor(k.y0)), int(math.Ceil(k.y1)) }

func (k *stroke) paint(s *strip) {
	x0, x1 := max(0, int(math.Floor(k.x0))), min(s.w, int(math.Ceil(k.x1)))
	y0, y1 := max(s.y0, int(math.Floor(k.y0))), min(s.y1, int(math.Ceil(k.y1)))
	if x0 >= x1 || y0 >= y1 {
		return
	}
	for y := y0; y < y1; y++ {
		row := s.far[(y-s.y0)*s.w:]
		for x := x0; x < x1; x++ {
			row[x] = math.Inf(1)
		}
	}
	far := k.far()
	for _, p := range k.paths {
		for i := range p {
			s.near(p[i], p[min(i+1, len(p)-1)], far)
		}
	}
	for y := y0; y < y1; y++ {
		at := (y - s.y0) * s.w
		for i := at + x0; i < at+x1; i++ {
			if s.far[i] < far*far {
				k.ink(s, i, math.Sqrt(s.far[i]))
			}
		}
	}
}

// ink lays the bands on a pixel whose middle lies so far from the path.
func (k *stroke) ink(s *strip, i int, far float64) {
	for _, b := range k.bands {
		cover := within(b.To - far)
		if b.From > 0 {
			cover -= within(b.From - far)
		}
		if cover > 0 {
			s.over(i, b.Ink, cover)
		}
	}
}

// within is how much of a pixel lies on the near side of an edge that passes
// its middle at a distance, which is positive when the middle is on that side.
func within(d float64) float64 { return min(max(d+0.5, 0), 1) }

// near lowers the squared distances of pixels to that from the stretch a-b,
// where it is less than far.
func (s *strip) near(a, b Point, far float64) {
	dx, dy := b.X-a.X, b.Y-a.Y
	long := float64(dx*dx) + float64(dy*dy)
	for y := max(s.y0, int(math.Floor(min(a.Y, b.Y)-far))); y < min(s.y1, int(math.Ceil(max(a.Y, b.Y)+far))); y++ {
		row := s.far[(y-s.y0)*s.w : (y-s.y0+1)*s.w]
		py := float64(y) + 0.5 - a.Y
		for x := max(0, int(math.Floor(min(a.X, b.X)-far))); x < min(s.w, int(math.Ceil(max(a.X, b.X)+far))); x++ {
			px := float64(x) + 0.5 - a.X
			t := 0.0
			if long > 0 {
				t = min(max((float64(px*dx)+float64(py*dy))/long, 0), 1)
			}
			ex, ey := px-float64(t*dx), py-float64(t*dy)
			row[x] = min(row[x], float64(ex*ex)+float64(ey*ey))
		}
	}
}

// Ring is the path round an ellipse, closed.
func Ring(x, y, rx, ry float64) []Point { return arc(x, y, rx, ry, 0, 360) }

// arcStep is the angle, in radians, of the straight stretches that arcs are
// made of: they stray from the arc by a third of a percent of its radius.
const arcStep = 0.15

// arc is a path along an ellipse, angles in degrees: clockwise on a sheet, where
// y points down, counter-clockwise in letters, where it points up.
func arc(x, y, rx, ry, from, to float64) []Point {
	n := max(2, int(math.Ceil(math.Abs(to-from)*math.Pi/180/arcStep)))
	path := make([]Point, n+1)
	for i := range path {
		sin, cos := math.Sincos((from + (to-from)*float64(i)/float64(n)) * math.Pi / 180)
		path[i] = Point{x + float64(rx*cos), y + float64(ry*sin)}
	}
	return path
}

// Dashed cuts a path into dashes and gaps of two lengths.
func Dashed(path []Point, dash, gap float64) [][]Point {
	var all [][]Point
	left, on := dash, true
	run := path[:min(1, len(path))]
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		for {
			long := a.To(b)
			if long < left {
				left -= long
				run = append(slices.Clip(run), b)
				break
			}
			t := left / long
			a = Point{a.X + float64(t*(b.X-a.X)), a.Y + float64(t*(b.Y-a.Y))}
			if on {
				all = append(all, append(slices.Clip(run), a))
			}
			on, run, left = !on, []Point{a}, gap
			if on {
				left = dash
			}
		}
	}
	if on && len(run) > 1 {
		all = append(all, run)
	}
	return all
}
