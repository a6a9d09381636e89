package sight

import (
	"math"

	"badgewright/sizing"
)

// loop is one ring or link on a picture, in px of it: a bent wire whose middle
// line is an ellipse.
type loop struct {
	x, y       float32 // its middle
	ux, uy     float32 // the way it hangs
	long, wide float32 // half axes of the middle line
	wire       float32 // half the thickness
}

// chain draws the rings and links over the pin: what is behind the metal first,
// then what is in front of it, so that each is seen to go through the next.
func (s *scene) chain(fr Image, pix []uint32) {
	loops := make([]loop, 0, len(s.look.Chain))
	for i := range s.look.Chain {
		loops = append(loops, s.loopOn(&s.look.Chain[i], fr))
	}
	for _, front := range [2]bool{false, true} {
		for k := range loops {
			loops[k].draw(s, front, pix)
		}
	}
}

// loopOn places a loop: given from the front, on the back it is seen mirrored.
func (s *scene) loopOn(o *sizing.Loop, fr Image) loop {
	sin, cos := math.Sincos(o.Angle)
	l := loop{
		x: float32(float64(o.X*fr.Scale) + fr.DX), y: float32(float64(o.Y*fr.Scale) + fr.DY),
		ux: float32(cos), uy: float32(sin),
		long: float32((o.Long - o.Wire) / 2 * fr.Scale), wide: float32((o.Wide - o.Wire) / 2 * fr.Scale),
		wire: max(0.5, float32(o.Wire/2*fr.Scale)),
	}
	if s.look.Side == Back {
		l.x, l.ux = float32(s.w)-l.x, -l.ux
	}
	l.long, l.wide = max(l.long, 0.5), max(l.wide, 0.5)
	return l
}

// draw draws the half of a loop that is in front of the metal, or the other. The
// half to the left of the way it hangs is in front, on either side of the pin:
// seen from behind, left is right and front is back.
func (l *loop) draw(s *scene, front bool, pix []uint32) {
	reach := int(max(l.long, l.wide) + l.wire + 2)
	for y := max(0, int(l.y)-reach); y <= min(s.h-1, int(l.y)+reach); y++ {
		for x := max(0, int(l.x)-reach); x <= min(s.w-1, int(l.x)+reach); x++ {
			d, nx, ny, left := l.from(x, y)
			a := clamp01(l.wire - abs32(d) + 0.5)
			if a <= 0 || left != front {
				continue
			}
			i := y*s.w + x
			if !front {
				a = mul(a, 1-s.solid[i])
			}
			t := min(max(d/l.wire, -0.98), 0.98)
			pix[i] = over(pix[i], darker(s.ball.at(mul(nx, t), mul(ny, t)), mul(mul(t, t), rimDark)), a)
		}
	}
}

// rimDark is how much darker a wire is at its very edge, so that it stands out
// from metal of its own colour.
const rimDark = 0.55

// from is how far the middle of a pixel lies outside the middle line, the way
// that leads out, and whether it is to the left of the way the loop hangs.
func (l *loop) from(x, y int) (d, nx, ny float32, left bool) {
	dx, dy := float32(x)+0.5-l.x, float32(y)+0.5-l.y
	along, across := mul(dx, l.ux)+mul(dy, l.uy), mul(dy, l.ux)-mul(dx, l.uy)
	p, q := along/l.long, across/l.wide
	f := root(mul(p, p) + mul(q, q))
	gp, gq := p/l.long, q/l.wide
	g := root(mul(gp, gp) + mul(gq, gq))
	if f == 0 || g == 0 {
		return -l.wide, 0, 0, true
	}
	// To first order, how far off an ellipse a place is: its equation over the
	// gradient.
	d = mul(f, f-1) / g
	gp, gq = gp/g, gq/g
	return d, mul(gp, l.ux) - mul(gq, l.uy), mul(gp, l.uy) + mul(gq, l.ux), across < 0
}
