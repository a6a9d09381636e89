package sight

// The ground, in mm on the pin, chosen by eye.
const (
	sideDepth   = 0.24 // how much of the metal's thickness shows below and right
	shadowFall  = 0.55 // how far the pin's shadow falls
	shadowSoft  = 1.1
	shadowAlpha = 0.42
)

// shadowRGB is the colour of the shadow on the ground.
var shadowRGB = rgbf{0.07, 0.06, 0.06}

// ground holds what lies under the face: the side of the metal and the shadow.
type ground struct {
	side   []float32
	shadow []float32
	rgb    rgbf
	lower  rgbf
}

func (s *scene) groundOf() ground {
	most := float32(max(s.w, s.h)) * marginShare
	g := ground{rgb: s.ball.at(0.50, 0.55), lower: s.ball.at(0.72, 0.66)}
	g.side = s.sideOf(int(s.px(sideDepth, 1, max(1, most/4)) + 0.5))
	fall := int(s.px(shadowFall, 1, most*0.45) + 0.5)
	g.shadow = soften(shifted(g.side, s.w, s.h, fall/2, fall), s.w, s.h, float64(s.px(shadowSoft, 2, most*0.8)))
	return g
}

// sideOf draws the silhouette out to the lower right by a whole number of px:
// the most that any of its copies on the way covers.
func (s *scene) sideOf(depth int) []float32 {
	out := append([]float32(nil), s.solid...)
	for done := 1; done <= depth; {
		step := min(done, depth+1-done)
		maxShifted(out, s.w, s.h, step)
		done += step
	}
	return out
}

// maxShifted takes, in place, the greater of a field and its copy moved right
// and down by n px.
func maxShifted(ch []float32, w, h, n int) {
	for y := h - 1; y >= n; y-- {
		at, from := ch[y*w+n:(y+1)*w], ch[(y-n)*w:(y-n+1)*w-n]
		for x, v := range from {
			if v > at[x] {
				at[x] = v
			}
		}
	}
}

func shifted(ch []float32, w, h, dx, dy int) []float32 {
	out := make([]float32, len(ch))
	for y := max(dy, 0); y < h; y++ {
		copy(out[y*w+dx:(y+1)*w], ch[(y-dy)*w:(y-dy+1)*w-dx])
	}
	return out
}

// at is the ground where nothing of the face lies.
func (g *ground) at(i int) uint32 { return g.under(i, rgbf{}, 0) }

// under lays a face of colour c, covering a share of the pixel, over the side
// of the metal and the shadow.
func (g *ground) under(i int, c rgbf, cover float32) uint32 {
	if cover >= 1 {
		return packed(c[0], c[1], c[2], 1)
	}
	side := max(g.side[i]-cover, 0)
	sh := mul(mul(1-cover-side, g.shadow[i]), shadowAlpha)
	a := cover + side + sh
	if a <= 0 {
		return 0
	}
	var out rgbf
	for k := range out {
		out[k] = (mul(c[k], cover) + mul(g.rgb[k], side) + mul(shadowRGB[k], sh)) / a
	}
	return packed(out[0], out[1], out[2], a)
}
