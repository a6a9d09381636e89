package sight

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
)

// field is a badge laid out at picture resolution: for each pixel, how much of
// it is solid, metal, printed, and coloured in any way (0..1), and the colour of
// the coloured share.
type field struct {
	w, h    int
	solid   []float32
	metal   []float32
	printed []float32
	tinted  []float32
	r, g, b []float32
}

// share is what one flat gives to a pixel that it fills.
type share struct {
	solid, metal, printed, tinted float32

	rgb rgbf
}

// Recolour gives flats other colours, by ID.
type Recolour = map[reduce.FlatID]colour.RGB8

func sharesOf(s *reduce.Separation, re Recolour) *[256]share {
	var t [256]share
	on := underPrint(s)
	for i, f := range s.Flats {
		rgb := f.RGB
		if c, ok := re[f.ID]; ok {
			rgb = c
		}
		switch f.Role {
		case reduce.CutOut:
		case reduce.Metal:
			t[i] = share{solid: 1, metal: 1}
		case reduce.Printed:
			t[i] = share{solid: 1, printed: 1, tinted: 1, metal: on[i], rgb: ofRGB8(rgb)}
		default:
			t[i] = share{solid: 1, tinted: 1, rgb: ofRGB8(rgb)}
		}
	}
	return &t
}

// lay averages the working raster into the frame by area, each working pixel
// spread over the picture pixels it touches.
func lay(b *sizing.Badge, fr Image, re Recolour) *field {
	n := fr.W * fr.H
	f := &field{w: fr.W, h: fr.H, solid: make([]float32, n), metal: make([]float32, n), printed: make([]float32, n), tinted: make([]float32, n),
		r: make([]float32, n), g: make([]float32, n), b: make([]float32, n)}
	t := sharesOf(b.Sep, re)
	row := make([]share, fr.W+1)
	for y := 0; y < b.Sep.H; y++ {
		top := float64(float64(y)*fr.Scale) + fr.DY
		bottom := float64(float64(y+1)*fr.Scale) + fr.DY
		if bottom <= 0 || top >= float64(fr.H) || !layRow(b.Sep, y, fr, t, row) {
			continue
		}
		for v := max(0, int(top)); v < fr.H && float64(v) < bottom; v++ {
			weight := min(bottom, float64(v+1)) - max(top, float64(v))
			f.add(v, row, float32(weight))
		}
		clear(row)
	}
	f.settle(fr.Scale)
	return f
}

func (f *field) add(v int, row []share, weight float32) {
	at := v * f.w
	for u := 0; u < f.w; u++ {
		s := &row[u]
		if s.solid == 0 {
			continue
		}
		i := at + u
		f.solid[i] += mul(s.solid, weight)
		f.metal[i] += mul(s.metal, weight)
		f.printed[i] += mul(s.printed, weight)
		f.tinted[i] += mul(s.tinted, weight)
		f.r[i] += mul(s.rgb[0], weight)
		f.g[i] += mul(s.rgb[1], weight)
		f.b[i] += mul(s.rgb[2], weight)
	}
}

// layRow spreads one row of the working raster along the frame, by runs of
// pixels that are alike. It reports whether anything is solid.
func layRow(s *reduce.Separation, y int, fr Image, t *[256]share, row []share) bool {
	at, some := y*s.W, false
	labels, beside, cover := s.Labels[at:at+s.W], s.Beside[at:at+s.W], s.Cover[at:at+s.W]
	for x := 0; x < s.W; {
		l, o, c := labels[x], beside[x], cover[x]
		end := x + 1
		for end < s.W && labels[end] == l && beside[end] == o && cover[end] == c {
			end++
		}
		sh := t[l]
		if c < 255 && o != l {
			sh = blend(&t[l], &t[o], float32(c)/255)
		}
		if sh.solid > 0 {
			some = true
			spread(row, sh, float64(float64(x)*fr.Scale)+fr.DX, float64(float64(end)*fr.Scale)+fr.DX)
		}
		x = end
	}
	return some
}

func blend(a, b *share, c float32) share {
	d := 1 - c
	s := share{
		solid: mul(a.solid, c) + mul(b.solid, d), metal: mul(a.metal, c) + mul(b.metal, d),
		printed: mul(a.printed, c) + mul(b.printed, d), tinted: mul(a.tinted, c) + mul(b.tinted, d),
	}
	for k := range s.rgb {
		s.rgb[k] = mul(a.rgb[k], c) + mul(b.rgb[k], d)
	}
	return s
}

func spread(row []share, s share, from, to float64) {
	last := len(row) - 1
	from, to = max(from, 0), min(to, float64(last))
	for u := int(from); u < last && float64(u) < to; u++ {
		w := float32(min(to, float64(u+1)) - max(from, float64(u)))
		p := &row[u]
		p.solid += mul(s.solid, w)
		p.metal += mul(s.metal, w)
		p.printed += mul(s.printed, w)
		p.tinted += mul(s.tinted, w)
		p.rgb[0] += mul(s.rgb[0], w)
		p.rgb[1] += mul(s.rgb[1], w)
		p.rgb[2] += mul(s.rgb[2], w)
	}
}

// settle turns the weighted colour of each pixel into the colour of its
// coloured share, and evens what was laid from a coarser raster: a box as
// wide as a working pixel, edges drawn tight again.
func (f *field) settle(scale float64) {
	if scale > 1 {
		tmp := make([]float32, f.w*f.h)
		for _, ch := range f.channels() {
			box(ch, tmp, f.w, f.h, scale)
		}
	}
	k := float32(max(1, scale))
	for i, was := range f.solid {
		if was == 0 {
			continue
		}
		if t := f.tinted[i]; t > 1e-4 {
			f.r[i] /= t
			f.g[i] /= t
			f.b[i] /= t
		}
		now := clamp01(mul(was-0.5, k) + 0.5)
		f.solid[i] = now
		f.metal[i] = mul(clamp01(mul(f.metal[i]/was-0.5, k)+0.5), now)
		f.printed[i] = mul(f.printed[i]/was, now)
	}
}

// mirror turns the field over, left to right.
func (f *field) mirror() {
	for _, ch := range f.channels() {
		for y := 0; y < f.h; y++ {
			row := ch[y*f.w : (y+1)*f.w]
			for a, z := 0, len(row)-1; a < z; a, z = a+1, z-1 {
				row[a], row[z] = row[z], row[a]
			}
		}
	}
}

func (f *field) channels() [][]float32 {
	return [][]float32{f.solid, f.metal, f.printed, f.tinted, f.r, f.g, f.b}
}

// underPrint says, for each flat, what it is printed on: 1 for a printed flat
// that touches more metal than enamel, else 0.
func underPrint(s *reduce.Separation) *[256]float32 {
	var metal, enamel [256]int
	count := func(a, b uint8) {
		if a == reduce.None || b == reduce.None || s.Flats[a].Role != reduce.Printed {
			return
		}
		switch s.Flats[b].Role {
		case reduce.Metal:
			metal[a]++
		case reduce.Enamel:
			enamel[a]++
		}
	}
	for y := 0; y < s.H; y++ {
		for i := y*s.W + 1; i < (y+1)*s.W; i++ {
			if a, b := s.Labels[i-1], s.Labels[i]; a != b {
				count(a, b)
				count(b, a)
			}
		}
	}
	var on [256]float32
	for i := range s.Flats {
		if metal[i] > enamel[i] {
			on[i] = 1
		}
	}
	return &on
}
