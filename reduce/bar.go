package reduce

import "math"

// bars is what a fill does not pass: pixels along the cut across a gap, and
// under lines drawn by hand.
type bars struct {
	at map[int]bool
	// over is metal that was erased by hand: a fill passes it, and leaves it for
	// what erases it to cover.
	over map[int]bool
	// deep is how many pixels wide the widest is: what lies under a bar goes
	// with the first area that is filled beside it, so that a line taken out
	// again leaves no seam.
	deep int
}

// bars returns what stands in the way of an edit, which spreads by the sides of
// pixels: a chain of pixels that touch by sides or corners holds it back.
func (d *desk) bars(e *Edit) bars {
	if e.Gap == nil && len(e.Lines) == 0 {
		return bars{}
	}
	b := bars{at: make(map[int]bool), over: make(map[int]bool), deep: 1}
	for _, l := range e.Lines {
		if l.Erased {
			d.unbar(&b, l.Points, l.Width*float64(d.a.w))
		} else {
			d.bar(&b, l.Points, l.Width*float64(d.a.w))
		}
	}
	if g := e.Gap; g != nil {
		d.bar(&b, [][2]float64{{g[0], g[1]}, {g[2], g[3]}}, 0)
	}
	return b
}

// unbar opens what lies under an erased line of a width in pixels: lines drawn
// there before, and metal.
func (d *desk) unbar(b *bars, points [][2]float64, width float64) {
	gone := bars{at: make(map[int]bool)}
	w, h := float64(d.a.w), float64(d.a.h)
	for k := range points {
		p, q := points[k], points[min(k+1, len(points)-1)]
		d.within(&gone, stretch{p[0] * w, p[1] * h, q[0] * w, q[1] * h}, width/2)
	}
	for i := range gone.at {
		delete(b.at, i)
		if l := d.f.label[i]; l != None && d.boughs[d.boughs[l].first].role == Metal {
			b.over[i] = true
		}
	}
}

// bar adds the pixels under a line of a width in pixels, and always those along
// its middle.
func (d *desk) bar(b *bars, points [][2]float64, width float64) {
	if width >= 1 {
		b.deep = max(b.deep, int(math.Ceil(width))+1)
	}
	w, h := float64(d.a.w), float64(d.a.h)
	for k := 1; k < len(points); k++ {
		s := stretch{points[k-1][0] * w, points[k-1][1] * h, points[k][0] * w, points[k][1] * h}
		d.along(b, s)
		d.within(b, s, width/2)
	}
}

// stretch is a straight piece of a line, in pixels.
type stretch struct{ x0, y0, x1, y1 float64 }

// along adds the chain of pixels that a stretch runs through.
func (d *desk) along(b *bars, s stretch) {
	steps := int(2*math.Hypot(s.x1-s.x0, s.y1-s.y0)) + 1
	for k := 0; k <= steps; k++ {
		t := float64(k) / float64(steps)
		x, y := int(math.Floor(s.x0+float64(t*(s.x1-s.x0)))), int(math.Floor(s.y0+float64(t*(s.y1-s.y0))))
		if x >= 0 && y >= 0 && x < d.a.w && y < d.a.h {
			d.stop(b, y*d.a.w+x)
		}
	}
}

func (d *desk) stop(b *bars, i int) {
	b.at[i] = true
	delete(b.over, i)
}

// within adds the pixels whose middle lies within reach of a stretch.
func (d *desk) within(b *bars, s stretch, reach float64) {
	x0, x1 := int(math.Floor(min(s.x0, s.x1)-reach)), int(math.Ceil(max(s.x0, s.x1)+reach))
	y0, y1 := int(math.Floor(min(s.y0, s.y1)-reach)), int(math.Ceil(max(s.y0, s.y1)+reach))
	for y := max(y0, 0); y <= min(y1, d.a.h-1); y++ {
		for x := max(x0, 0); x <= min(x1, d.a.w-1); x++ {
			if s.distance(float64(x)+0.5, float64(y)+0.5) <= reach {
				d.stop(b, y*d.a.w+x)
			}
		}
	}
}

// distance from a place to the nearest of a stretch.
func (s stretch) distance(x, y float64) float64 {
	dx, dy, px, py := s.x1-s.x0, s.y1-s.y0, x-s.x0, y-s.y0
	if long := float64(dx*dx) + float64(dy*dy); long > 0 {
		t := min(1, max(0, (float64(px*dx)+float64(py*dy))/long))
		px, py = px-float64(t*dx), py-float64(t*dy)
	}
	return math.Sqrt(float64(px*px) + float64(py*py))
}
