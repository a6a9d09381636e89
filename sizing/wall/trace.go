package wall

import "math"

// trace draws the stretches of all borders, each as one stroke, and takes out
// those that are gaps in lines.
func (m *Measured) trace(all []border) {
	if len(all) == 0 {
		return
	}
	g := graphOf(all, m.v.w, m.v.h)
	walk := newWalker(&g)
	longest := make([]float64, len(all))
	for _, p := range g.whole() {
		k := g.points[p[0]].part
		if m.isGrain(all[k].a) || all[k].b >= 0 && m.isGrain(all[k].b) {
			continue
		}
		b, length := &all[k], walk.length(p)
		path := walk.border(p)
		if o, ok := m.gapAlong(&g, p, length); ok {
			o.a, o.b, o.path = b.a, b.b, path
			m.gaps = append(m.gaps, o)
			continue
		}
		b.bare += length
		for _, i := range p {
			x, y := float64(g.points[i].x), float64(g.points[i].y)
			b.box = [4]float64{lesser(b.box[0], x), lesser(b.box[1], y), greater(b.box[2], x), greater(b.box[3], y)}
		}
		if length > longest[k] || b.path == nil {
			longest[k], b.path = length, path
			b.x, b.y = middleOf(path)
		}
	}
}

// whole is every stretch of the borders in a graph.
func (g *graph) whole() []piece {
	in := make([]bool, len(g.points))
	for i := range in {
		in[i] = true
	}
	return g.pieces(in)
}

// border draws a stretch of a border, between the pixels.
func (w *walker) border(p piece) []float32 {
	path := w.tour(p, nil, twigPx)
	for i := range path {
		path[i] -= 0.5 // corners of pixels, not centres
	}
	return path
}

// gapAlong says whether a stretch of border is a gap in a line: a border that
// winds is none.
func (m *Measured) gapAlong(g *graph, p piece, length float64) (o opening, ok bool) {
	x0, y0, x1, y1, far := m.atMetal(g, p)
	if far == 0 {
		return o, false
	}
	o, ok = m.openingAt(x0, y0, x1, y1)
	o.length = length
	return o, ok && length <= windsPast*far+o.metal+2*nearMetal
}

// atMetal returns the two of the places where a stretch touches metal that lie
// farthest apart, and how far; 0 when there are no two.
func (m *Measured) atMetal(g *graph, p piece) (x0, y0, x1, y1, far float64) {
	var at []*point
	for _, i := range p {
		q := &g.points[i]
		x, y := int(q.x), int(q.y)
		if m.v.at(x, y) == metal || m.v.at(x-1, y) == metal || m.v.at(x, y-1) == metal || m.v.at(x-1, y-1) == metal {
			at = append(at, q)
		}
	}
	for i, q := range at[:min(len(at), mostTouches)] {
		for _, r := range at[i+1:] {
			if d := math.Hypot(float64(q.x-r.x), float64(q.y-r.y)); d > far {
				x0, y0, x1, y1, far = float64(q.x), float64(q.y), float64(r.x), float64(r.y), d
			}
		}
	}
	return x0, y0, x1, y1, far
}

// mostTouches is how many places where a border touches metal are looked at: it
// does so at its two ends, and in noise all along.
const mostTouches = 64

// windsPast is how much longer than the straight way a border through a gap may
// be, and the width of the line besides: where the enamel swells out of the
// opening it goes round a half circle, and where it does not it may run askew.
const windsPast = 1.7

// graphOf joins the corners of pixels along all borders.
func graphOf(all []border, w, h int) graph {
	var points []point
	for k := range all {
		for _, c := range all[k].points {
			points = append(points, point{x: c % int32(w+1), y: c / int32(w+1), part: int32(k)})
		}
		all[k].points = nil
	}
	return newGraph(points, w+1, h+1)
}

// twigPx is the shortest side branch, in pixels, that a stroke goes out for.
const twigPx = 4

// middleOf returns the point half way along a stroke.
func middleOf(path []float32) (x, y float64) {
	total := 0.0
	for i := 2; i < len(path); i += 2 {
		total += stretch(path, i)
	}
	half := total / 2
	for i := 2; i < len(path); i += 2 {
		d := stretch(path, i)
		if d >= half && d > 0 {
			t := half / d
			return float64(path[i-2]) + t*float64(path[i]-path[i-2]), float64(path[i-1]) + t*float64(path[i+1]-path[i-1])
		}
		half -= d
	}
	return float64(path[0]), float64(path[1])
}

func stretch(path []float32, i int) float64 {
	dx, dy := float64(path[i]-path[i-2]), float64(path[i+1]-path[i-1])
	return math.Sqrt(dx*dx + dy*dy)
}
