package sight

import "badgewright/sizing"

// The back, in mm on the pin, chosen by eye.
const (
	backRim    = 0.55 // width of the faint rim
	backLevel  = 0.18 // how far the rim stands up
	backGrain  = 0.07
	shaftWidth = 1.1 // of a post (common practice, no published source)
)

// back shades the plated back, its stamp, and what holds it.
func (s *scene) back(b *sizing.Badge, fr Image) []uint32 {
	rim := s.px(backRim, 2, 30)
	d := edgeDistance(s.solid, s.w, s.h, s.px(3, 20, 120))
	z := make([]float32, len(d))
	bevel := s.px(0.2, 1.2, 12)
	for i, v := range d {
		if v > 0 {
			z[i] = rounded(v, bevel, 1.5) - mul(s.px(backLevel, 0.6, 8), ease(rim, rim+bevel, v))
		}
	}
	posts := s.postsOn(b, fr)
	for k := range posts {
		posts[k].raise(z, s.w, s.h)
	}
	in := s.stampOn(b, fr)
	s.carve(z, in)
	even(z, s.w, s.h)
	r := slopes(z, s.solid, s.w, s.h)
	g := s.groundOf()
	pix := make([]uint32, len(d))
	for y := 0; y < s.h; y++ {
		s.backRow(y, d, in, rim, &r, &g, pix)
	}
	s.chain(fr, pix)
	for y := 0; y < s.h; y++ {
		for k := range posts {
			posts[k].row(s, y, &r, pix)
		}
	}
	s.hold(s.fixturesOn(b, fr), pix)
	return pix
}

func (s *scene) backRow(y int, d, in []float32, rim float32, r *relief, g *ground, pix []uint32) {
	half := float32(max(s.w, s.h)) / 2
	by := mul(float32(y)-float32(s.h)/2, domeShare/half)
	for x := 0; x < s.w; x++ {
		i := y*s.w + x
		if s.solid[i] == 0 {
			pix[i] = g.at(i)
			continue
		}
		grain := mul(backGrain, ease(rim, rim*1.5, d[i]))
		bx := mul(float32(x)-float32(s.w)/2, domeShare/half)
		c := s.backAt(x, y, r.nx[i]+bx, r.ny[i]+by, grain)
		if in != nil && in[i] > 0 {
			c = s.stamped(c, in[i])
		}
		pix[i] = g.under(i, c, s.solid[i])
	}
}

// backAt is plated metal blasted with sand: the mirror broken up by grain.
func (s *scene) backAt(x, y int, nx, ny, grain float32) rgbf {
	a := s.ball.at(nx+mul(sandTile.at(x, y), grain), ny+mul(sandTile.at(x+97, y+31), grain))
	if grain == 0 {
		return a
	}
	b := s.ball.at(nx+mul(sandTile.at(x+41, y+71), grain), ny+mul(sandTile.at(x+13, y+151), grain))
	return darker(a.mix(b, 0.5), 0.05)
}
