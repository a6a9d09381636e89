package reduce

// Laid takes places of one drawing, in shares of width and height, to another:
// X, Y and then their factors.
type Laid struct{ X, Y, KX, KY float64 }

// At is where a place of the old drawing is in the new.
func (l Laid) At(x, y float64) (float64, float64) {
	return l.X + float64(l.KX*x), l.Y + float64(l.KY*y)
}

// from is where a place of the new drawing was in the old.
func (l Laid) from(x, y float64) (float64, float64) { return (x - l.X) / l.KX, (y - l.Y) / l.KY }

// sameCanvas is how far, in 1, the proportions of two canvases may differ for
// them to be the same canvas.
const sameCanvas = 0.01

// layOn lays an old drawing on its revision: canvas on canvas when both have
// the same proportions, else what is drawn on what is drawn.
func layOn(old, now *Analysis) Laid {
	was, is := old.canvas(), now.canvas()
	a, b := old.drawnBox(), now.drawnBox()
	if was/is < 1+sameCanvas && is/was < 1+sameCanvas || a[2] <= a[0] || b[2] <= b[0] || a[3] <= a[1] || b[3] <= b[1] {
		return old.part.to(now.part)
	}
	kx, ky := (b[2]-b[0])/(a[2]-a[0]), (b[3]-b[1])/(a[3]-a[1])
	return Laid{X: b[0] - float64(kx*a[0]), Y: b[1] - float64(ky*a[1]), KX: kx, KY: ky}
}

// canvas is how many times as wide as high the whole file is.
func (a *Analysis) canvas() float64 {
	return float64(a.w) / a.part.w() / (float64(a.h) / a.part.h())
}

// to takes places in one part of a canvas to where they are in another part.
func (p Part) to(q Part) Laid {
	return Laid{X: (p[0] - q[0]) / q.w(), Y: (p[1] - q[1]) / q.h(), KX: p.w() / q.w(), KY: p.h() / q.h()}
}

// drawnBox is the box of all that is not background, in shares of the canvas.
func (a *Analysis) drawnBox() [4]float64 {
	x0, y0, x1, y1 := a.w, a.h, 0, 0
	for i, l := range a.f.label {
		if l != None {
			x, y := i%a.w, i/a.w
			x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x+1), max(y1, y+1)
		}
	}
	w, h := float64(a.w), float64(a.h)
	return [4]float64{float64(x0) / w, float64(y0) / h, float64(x1) / w, float64(y1) / h}
}

func (l Laid) gap(g *[4]float64) *[4]float64 {
	if g == nil {
		return nil
	}
	var to [4]float64
	to[0], to[1] = l.At(g[0], g[1])
	to[2], to[3] = l.At(g[2], g[3])
	return &to
}

func (l Laid) lines(all []HandLine) []HandLine {
	var to []HandLine
	for _, h := range all {
		points := make([][2]float64, len(h.Points))
		for i, p := range h.Points {
			points[i][0], points[i][1] = l.At(p[0], p[1])
		}
		to = append(to, HandLine{Points: points, Width: h.Width * l.KX, Erased: h.Erased})
	}
	return to
}
