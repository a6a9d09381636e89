package reduce

import (
	"math"

	"badgewright/reduce/mask"
)

// Difference is where two revisions of a drawing differ, each taken as it was
// drawn, before any edit.
type Difference struct {
	W, H int
	// At marks the places on the raster of the later one.
	At []bool
	// Places is how many there are, and Share how much of what is drawn in
	// either they make up, 0..1.
	Places int
	Share  float64
}

const (
	// leastChange is how wide a change is at least, as a share of the long side:
	// 0.11 mm on a pin of 38 mm, under which no maker holds a line (common
	// practice, no published source).
	leastChange = 0.003
	// rasterShift is how wide a change is at least in pixels of the coarser of
	// the two: a new raster of the same art moves edges by as much.
	rasterShift = 2
	// otherColour is how far, in CIEDE2000, a flat may be from what it was
	// before it counts as changed: nearer, it is the file that was saved again.
	otherColour = 5
)

// Differ finds where a revision differs from the drawing before it.
func Differ(old, now *Analysis) (*Difference, error) {
	was, err := old.asDrawn()
	if err != nil {
		return nil, err
	}
	is, err := now.asDrawn()
	if err != nil {
		return nil, err
	}
	o := overlaps(was, is, layOn(old, now))
	to := o.matches()
	for i, j := range to {
		if o.apart(int(i), int(j)) > otherColour {
			delete(to, i)
		}
	}
	d := &Difference{W: now.w, H: now.h, At: make([]bool, len(is.label))}
	drawn := 0
	o.each(func(i, a, b int) {
		if a == len(was.lab) && b == len(is.lab) {
			return
		}
		drawn++
		same, has := to[FlatID(a)]
		d.At[i] = !has || int(same) != b
	})
	d.keepWide(max(leastChange*float64(max(d.W, d.H)), rasterShift*o.step()))
	d.count(drawn)
	return d, nil
}

// asDrawn is a drawing by the flats that an artist would count in it.
func (a *Analysis) asDrawn() (plane, error) {
	n, _ := a.Suggested()
	s, err := a.Reduce(Options{Count: n})
	if err != nil {
		return plane{}, err
	}
	out := plane{label: s.Labels, w: s.W, h: s.H}
	for _, f := range s.Flats {
		out.lab = append(out.lab, f.RGB.Lab())
	}
	return out, nil
}

// step is how many pixels of the new raster one of the coarser is.
func (o *overlap) step() float64 {
	return max(1, o.laid.KX*float64(o.is.w)/float64(o.was.w))
}

// keepWide takes away what is no wider than a number of pixels.
func (d *Difference) keepWide(least float64) {
	reach := least / 2
	same := make([]bool, len(d.At))
	for i, at := range d.At {
		same[i] = !at
	}
	in, some := mask.Nearest(same, d.W, d.H)
	if !some {
		return // all is new
	}
	core := make([]bool, len(d.At))
	for i := range core {
		core[i] = float64(in.D2[i]) > reach*reach
	}
	out, some := mask.Nearest(core, d.W, d.H)
	for i := range d.At {
		d.At[i] = some && d.At[i] && float64(out.D2[i]) <= (reach+1)*(reach+1)
	}
}

func (d *Difference) count(drawn int) {
	label := make([]uint8, len(d.At))
	n := 0
	for i, at := range d.At {
		if at {
			label[i] = 1
			n++
		}
	}
	if n == 0 {
		return
	}
	d.Share = float64(n) / float64(drawn)
	parts := mask.Connect(label, d.W, d.H, &[256]bool{1: true})
	for _, p := range parts.Label {
		if p == 1 {
			d.Places++
		}
	}
}

// DrawnAlong is true when something is drawn under a line through points in
// shares of the canvas.
func (a *Analysis) DrawnAlong(points [][2]float64) bool {
	w, h := float64(a.w), float64(a.h)
	sheet := a.leafPlane()
	for k := range points {
		p, q := points[k], points[min(k+1, len(points)-1)]
		steps := int(math.Hypot((q[0]-p[0])*w, (q[1]-p[1])*h)) + 1
		for s := 0; s <= steps; s++ {
			t := float64(s) / float64(steps)
			if sheet.at(p[0]+float64(t*(q[0]-p[0])), p[1]+float64(t*(q[1]-p[1]))) < len(sheet.lab) {
				return true
			}
		}
	}
	return false
}
