package sight

import "badgewright/sizing"

// post is one fastener on a picture of the back, in px of the picture.
type post struct {
	x, y               float32
	pad, clutch, shaft float32 // radii
}

// behind is where a place lies on the picture: given from the front, seen
// mirrored.
func (s *scene) behind(b *sizing.Badge, fr Image, p sizing.Post) (x, y float32) {
	wx, wy := b.Outline[0]+p.X.Px(b.Scale), b.Outline[1]+p.Y.Px(b.Scale)
	return float32(float64(fr.W) - (float64(wx*fr.Scale) + fr.DX)), float32(float64(wy*fr.Scale) + fr.DY)
}

// postsOn places the posts with their clutches; none for another fastening.
func (s *scene) postsOn(b *sizing.Badge, fr Image) []post {
	if s.look.Fastening != sizing.PostAndClutch {
		return nil
	}
	out := make([]post, 0, len(s.look.Posts))
	for _, p := range s.look.Posts {
		x, y := s.behind(b, fr, p)
		out = append(out, post{
			x: x, y: y,
			pad:    mul(float32(s.look.Pad), s.mm) / 2,
			clutch: mul(float32(s.look.Clutch), s.mm) / 2,
			shaft:  mul(shaftWidth, s.mm) / 2,
		})
	}
	return out
}

// raise adds the soldered pad and the end of the shaft to the heights.
func (p *post) raise(z []float32, w, h int) {
	r := int(p.pad + 2)
	for y := max(0, int(p.y)-r); y <= min(h-1, int(p.y)+r); y++ {
		for x := max(0, int(p.x)-r); x <= min(w-1, int(p.x)+r); x++ {
			d := p.from(x, y)
			z[y*w+x] += rounded(p.pad-d, mul(p.pad, 0.28), 1.2) + rounded(p.shaft-d, p.shaft, 2)
		}
	}
}

// from is the distance of a pixel's centre from the post.
func (p *post) from(x, y int) float32 {
	dx, dy := float32(x)+0.5-p.x, float32(y)+0.5-p.y
	return root(mul(dx, dx) + mul(dy, dy))
}

// row draws one row of the clutch: a clear ring of rubber gripping the shaft,
// through which the pad is seen, with its shadow on the back.
func (p *post) row(s *scene, y int, r *relief, pix []uint32) {
	if p.clutch <= 0 {
		return
	}
	fall := mul(p.clutch, 0.13)
	soft := mul(p.clutch, 0.16)
	reach := int(p.clutch + fall + soft + 2)
	for x := max(0, int(p.x)-reach); x <= min(s.w-1, int(p.x)+reach); x++ {
		d := p.from(x, y)
		i := y*s.w + x
		under := post{x: p.x + fall/2, y: p.y + fall}
		sh := 1 - ease(p.clutch-soft, p.clutch+soft, under.from(x, y))
		in := clamp01(p.clutch - d + 0.5)
		if dark := mul(mul(sh, 1-mul(in, 0.6)), 0.45); dark > 0 {
			pix[i] = shadeOver(pix[i], dark)
		}
		if in > 0 && d > p.shaft {
			c, a := p.rubber(x, y, d)
			pix[i] = over(pix[i], c, mul(a, in))
		}
	}
}

// rubber is the colour and the cover of the clutch at a distance from the post.
func (p *post) rubber(x, y int, d float32) (rgbf, float32) {
	t := d / p.clutch
	nx, ny := (float32(x)+0.5-p.x)/p.clutch, (float32(y)+0.5-p.y)/p.clutch
	lean := mul(nx, lightX) + mul(ny, lightY)
	edge := ease(0.80, 0.97, t)
	v := 0.80 + mul(mul(lean, edge), 0.30)
	ring := mul(ease(0.40, 0.46, t), 1-ease(0.46, 0.54, t))
	v += mul(ring, mul(-lean, 0.5))
	glint := mul(ease(0.62, 0.74, t), 1-ease(0.74, 0.86, t))
	v += mul(mul(glint, ease(0.35, 0.70, lean)), 0.35)
	a := 0.30 + mul(ease(0.40, 0.52, t), 0.24) + mul(edge, 0.22) + mul(mul(glint, ease(0.35, 0.70, lean)), 0.3)
	return rgbf{mul(v, 0.985), v, mul(v, 1.01)}, min(a, 0.92)
}

// shadeOver darkens a pixel, or the ground where it is clear.
func shadeOver(p uint32, t float32) uint32 { return over(p, shadowRGB, t) }

// over lays a colour, covering a share a, over a pixel.
func over(p uint32, c rgbf, a float32) uint32 {
	pa := float32(p>>24) / 255
	oa := a + mul(pa, 1-a)
	if oa <= 0 {
		return 0
	}
	under := mul(pa, 1-a)
	at := func(v uint32, top float32) float32 {
		return (mul(float32(v)/255, under) + mul(top, a)) / oa
	}
	return packed(at(p&255, c[0]), at(p>>8&255, c[1]), at(p>>16&255, c[2]), oa)
}
