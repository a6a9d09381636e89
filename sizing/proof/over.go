package proof

// Frame is a picture of the pin: a working place x, y lies at (x*Scale+DX,
// y*Scale+DY) of it.
type Frame struct {
	W, H          int
	Scale, DX, DY float64
}

// Shown is the picture as laid on the pin, turned and sized like it, in a frame:
// to be looked at over the pin.
func (l *Laid) Shown(f Frame) []uint32 {
	h := l.h
	by := max(1, int(h.ppx/f.Scale+0.3))
	p := h.p.shrunk(by)
	k := 1 / float64(by)
	out := make([]uint32, f.W*f.H)
	for y := range f.H {
		for x := range f.W {
			u, v := h.w.At((float64(x)+0.5-f.DX)/f.Scale, (float64(y)+0.5-f.DY)/f.Scale)
			if u < 0 || v < 0 || u > float64(h.p.W) || v > float64(h.p.H) {
				continue
			}
			c := p.at(u*k, v*k)
			out[y*f.W+x] = packed(c)
		}
	}
	return out
}

// AsAsked is the pin as asked for, flat and in this picture's metal, in a frame:
// what the picture would look like without a difference.
func (l *Laid) AsAsked(f Frame) []uint32 {
	a := l.h.a
	s := a.Badge.Sep
	out := make([]uint32, f.W*f.H)
	for y := range f.H {
		for x := range f.W {
			px, py := (float64(x)+0.5-f.DX)/f.Scale, (float64(y)+0.5-f.DY)/f.Scale
			i, ok := a.index(px, py)
			if !ok {
				continue
			}
			own, beside := l.h.ink(a.of[s.Labels[i]]), l.h.ink(a.of[s.Beside[i]])
			share := float64(s.Cover[i]) / 255
			for k := range own {
				own[k] = beside[k] + float64(share*(own[k]-beside[k]))
			}
			out[y*f.W+x] = packed(own)
		}
	}
	return out
}

// ink is the colour a class was asked for in; metal and ground are the picture's.
func (h *held) ink(class uint8) rgb {
	if class == metal || class == outside {
		return h.shown[class]
	}
	return h.a.askedColour(class)
}

func packed(c rgb) uint32 {
	q := c.rgb8()
	return uint32(q.R) | uint32(q.G)<<8 | uint32(q.B)<<16 | 255<<24
}

// Outline is the pin's outline on the picture, px: a list of loops, x and y in
// turn, to be drawn over it.
func (l *Laid) Outline() [][]float32 {
	var out [][]float32
	for i := range l.h.a.loops {
		p := &l.h.a.loops[i]
		every := max(1, len(p.at)/mostPath)
		var line []float32
		for k := 0; k < len(p.at); k += every {
			u, v := l.h.w.At(p.at[k].X, p.at[k].Y)
			line = append(line, float32(u), float32(v))
		}
		out = append(out, append(line, line[0], line[1]))
	}
	return out
}

// ToPicture takes a place of the pin to the picture, ToPin back.
func (l *Laid) ToPicture(p Point) Point {
	u, v := l.h.w.At(p.X, p.Y)
	return Point{u, v}
}

// Corners are n places on the outline of the largest part that lie far apart: the
// two farthest, then always the one farthest from those before. Three lay a pin by
// shift, turn and size, four in perspective.
func (l *Laid) Corners(n int) []Point {
	at := l.h.a.loops[l.h.a.large].at
	all := []Point{at[farthest(at, at[0])]}
	for len(all) < n {
		best, most := at[0], -1.0
		for _, p := range at {
			if off := fromNearest(all, p); off > most {
				best, most = p, off
			}
		}
		all = append(all, best)
	}
	return all
}

// fromNearest is how far a place lies from the nearest of some, px.
func fromNearest(all []Point, p Point) float64 {
	off := dist(all[0], p)
	for _, q := range all[1:] {
		off = min(off, dist(q, p))
	}
	return off
}
