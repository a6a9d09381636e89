package reduce

import "math"

// bars returns the pixels that a fill does not pass: those along the cut across
// a gap, and along lines drawn by hand; nil when there are none. Each is a
// chain joined by sides or corners, and a fill spreads by sides alone.
func (d *desk) bars(e *Edit) map[int]bool {
	if e.Gap == nil && len(e.Lines) == 0 {
		return nil
	}
	w, h := float64(d.a.w), float64(d.a.h)
	barred := make(map[int]bool)
	if g := e.Gap; g != nil {
		d.bar(barred, g[0]*w, g[1]*h, g[2]*w, g[3]*h)
	}
	for _, l := range e.Lines {
		last := len(l.Points) - 1
		for i := range last {
			p, q := l.Points[i], l.Points[i+1]
			x0, y0, x1, y1 := p[0]*w, p[1]*h, q[0]*w, q[1]*h
			// An end reaches half a width further: so far does the metal.
			if dx, dy := reach(x1-x0, y1-y0, l.Width*w/2); i == 0 {
				x0, y0 = x0-dx, y0-dy
			}
			if dx, dy := reach(x1-x0, y1-y0, l.Width*w/2); i == last-1 {
				x1, y1 = x1+dx, y1+dy
			}
			d.bar(barred, x0, y0, x1, y1)
		}
	}
	return barred
}

// reach is a step of a length along a direction; none when it has none.
func reach(dx, dy, length float64) (x, y float64) {
	long := math.Hypot(dx, dy)
	if long == 0 {
		return 0, 0
	}
	return dx / long * length, dy / long * length
}

// bar adds the pixels along a straight cut.
func (d *desk) bar(barred map[int]bool, x0, y0, x1, y1 float64) {
	steps := int(2*math.Hypot(x1-x0, y1-y0)) + 1
	for k := 0; k <= steps; k++ {
		t := float64(k) / float64(steps)
		x, y := int(math.Floor(x0+float64(t*(x1-x0)))), int(math.Floor(y0+float64(t*(y1-y0))))
		if x >= 0 && y >= 0 && x < d.a.w && y < d.a.h {
			barred[y*d.a.w+x] = true
		}
	}
}
