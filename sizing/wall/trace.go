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
		b, length := &all[k], walk.length(p)
		path := walk.border(p)
		if o, ok := m.gapAlong(path, length); ok {
			o.a, o.b = b.a, b.b
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
func (m *Measured) gapAlong(path []float32, length float64) (o opening, ok bool) {
	n := len(path)
	x0, y0, x1, y1 := float64(path[0]), float64(path[1]), float64(path[n-2]), float64(path[n-1])
	if length > windsPast*math.Hypot(x1-x0, y1-y0)+2*nearMetal {
		return o, false
	}
	o, ok = m.openingAt(x0, y0, x1, y1)
	o.path, o.length = path, length
	return o, ok
}

// windsPast is how much longer than the straight way a border through a gap may
// be: where the enamel swells out of the opening it goes round a half circle.
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
