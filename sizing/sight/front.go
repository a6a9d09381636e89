package sight

import "badgewright/sizing"

// The shape of the relief, in mm on the pin, chosen by eye.
const (
	bevelSoft   = 0.17 // from the foot of a wall to its level top, soft enamel
	bevelHard   = 0.09 // the same where the tops were polished flush
	rimRound    = 0.42 // how far the outer edge is rounded in
	steepSoft   = 1.9  // slope at the foot of a wall
	steepHard   = 1.3
	domeShare   = 0.14 // how much the whole face bows, so that it mirrors more than one thing
	grainAmount = 0.012
)

// wallLook holds the numbers that differ by fill.
type wallLook struct{ bevel, steep float32 }

func (s *scene) walls() wallLook {
	if s.look.Fill == sizing.Hard {
		return wallLook{s.px(bevelHard, 1, 8), steepHard}
	}
	return wallLook{s.px(bevelSoft, 1.4, 14), steepSoft}
}

// front shades the face of the pin.
func (s *scene) front() []uint32 {
	far := s.px(1.2, 12, 80)
	d := edgeDistance(s.metal, s.w, s.h, far)
	wl := s.walls()
	rim := s.px(rimRound, 2, 36)
	body := soften(s.solid, s.w, s.h, float64(rim))
	z := make([]float32, len(d))
	for i, v := range d {
		if s.solid[i] == 0 {
			continue
		}
		z[i] = rounded(v, wl.bevel, wl.steep)
		if v > 0 {
			z[i] += mul(mul(rim, 0.55), ease(0.45, 1, body[i]))
		}
	}
	even(z, s.w, s.h)
	r := slopes(z, s.metal, s.w, s.h)
	e := s.enamelOf(d)
	g := s.groundOf()
	pix := make([]uint32, len(d))
	for y := 0; y < s.h; y++ {
		s.frontRow(y, d, z, &r, &e, &g, wl, pix)
	}
	return pix
}

func (s *scene) frontRow(y int, d, z []float32, r *relief, e *enamel, g *ground, wl wallLook, pix []uint32) {
	half := float32(max(s.w, s.h)) / 2
	by := mul(float32(y)-float32(s.h)/2, domeShare/half)
	for x := 0; x < s.w; x++ {
		i := y*s.w + x
		solid := s.solid[i]
		if solid == 0 {
			pix[i] = g.at(i)
			continue
		}
		m := s.metal[i] / solid
		var c rgbf
		if m < 1 {
			c = s.filled(e.at(s, x, y, i), x, y, i)
		}
		if m > 0 {
			bx := mul(float32(x)-float32(s.w)/2, domeShare/half)
			nx, ny := s.rough(i, x, y, r.nx[i]+bx, r.ny[i]+by)
			c = c.mix(s.metalAt(x, y, nx, ny, d[i], wl), m)
		}
		if p := s.printed[i]; p > 0 {
			c = c.mix(rgbf{s.r[i], s.g[i], s.b[i]}, p/solid)
		}
		pix[i] = g.under(i, c, solid)
	}
}

// metalAt is the colour of metal facing (nx, ny) at a distance d from its edge.
func (s *scene) metalAt(x, y int, nx, ny, d float32, wl wallLook) rgbf {
	open := ease(wl.bevel, wl.bevel*4, d)
	amount := mul(grainAmount, 0.12+mul(open, 1.4))
	ny += mul(brushTile.at(x, y), amount)
	c := s.ball.at(nx, ny)
	if s.look.Plating.Antique {
		low := 1 - ease(0, wl.bevel*1.3, d)
		c = darker(c, mul(low, 0.45))
	}
	return c
}

func darker(c rgbf, t float32) rgbf {
	k := 1 - t
	return rgbf{mul(c[0], k), mul(c[1], k), mul(c[2], k)}
}
