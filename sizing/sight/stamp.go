package sight

import (
	"badgewright/sizing"
	"badgewright/sizing/ink"
	"badgewright/sizing/unit"
)

// Stamp is lettering or a mark on the back.
type Stamp struct {
	At      sizing.Post   // its middle, as seen from the front
	Strokes [][]ink.Point // mm about At, x to the right as seen from behind
	Width   unit.MM       // of a stroke
	Raised  bool          // raised metal, else cut in
	Cells   *Cells        // a mark beside the strokes; nil for none
}

// The look of a stamp, chosen by eye.
const (
	stampBevel = 0.12 // mm from the foot of a letter to its level top
	stampSteep = 1.9
	cutShade   = 0.42 // how much darker the floor of a cut is
	topPolish  = 0.34 // how far the tops of raised letters are polished towards white
)

// stampOn is how far each pixel lies inside a stroke of the stamp, px; nil
// without one.
func (s *scene) stampOn(b *sizing.Badge, fr Image) []float32 {
	st := s.look.Stamp
	if st == nil {
		return nil
	}
	in := make([]float32, s.w*s.h)
	half := mul(float32(st.Width), s.mm) / 2
	cx, cy := s.behind(b, fr, st.At)
	at := func(q ink.Point) (x, y float32) { return cx + mul(float32(q.X), s.mm), cy + mul(float32(q.Y), s.mm) }
	for _, way := range st.Strokes {
		for i := 1; i < len(way); i++ {
			x0, y0 := at(way[i-1])
			x1, y1 := at(way[i])
			s.graze(in, half, x0, y0, x1, y1)
		}
	}
	if st.Cells != nil {
		left, top := at(ink.Point{X: float64(st.Cells.Left), Y: float64(st.Cells.Top)})
		s.cells(in, st.Cells, left, top)
	}
	return in
}

// graze notes how far pixels lie inside one straight stroke.
func (s *scene) graze(in []float32, half, x0, y0, x1, y1 float32) {
	dx, dy := x1-x0, y1-y0
	long2 := mul(dx, dx) + mul(dy, dy)
	r := half + 1
	for y := max(0, int(min(y0, y1)-r)); y <= min(s.h-1, int(max(y0, y1)+r)); y++ {
		for x := max(0, int(min(x0, x1)-r)); x <= min(s.w-1, int(max(x0, x1)+r)); x++ {
			px, py := float32(x)+0.5-x0, float32(y)+0.5-y0
			t := float32(0)
			if long2 > 0 {
				t = clamp01((mul(px, dx) + mul(py, dy)) / long2)
			}
			px, py = px-mul(t, dx), py-mul(t, dy)
			i := y*s.w + x
			in[i] = max(in[i], half+0.5-root(mul(px, px)+mul(py, py)))
		}
	}
}

// carve raises or cuts the strokes of a stamp in a relief of heights.
func (s *scene) carve(z, in []float32) {
	if in == nil {
		return
	}
	bevel := s.px(stampBevel, 1, 8)
	for i, v := range in {
		if v <= 0 {
			continue
		}
		h := rounded(v, bevel, stampSteep)
		if !s.look.Stamp.Raised {
			h = -h
		}
		z[i] += h
	}
}

// stamped is the colour of the back under a stroke: the floor of a cut lies in
// shade, the top of a letter is polished.
func (s *scene) stamped(c rgbf, in float32) rgbf {
	cover := clamp01(in)
	if s.look.Stamp.Raised {
		return c.mix(rgbf{1, 1, 1}, mul(cover, topPolish))
	}
	return darker(c, mul(cover, cutShade))
}
