package sight

import "badgewright/sizing"

// fixture is a thing of bare nickel on the back that is no post: a magnet, the
// nut of a screw back, a bar with its needle. Its places are px about its
// middle.
type fixture struct {
	x, y  float32
	reach float32 // half of its box, px
	// at is how far a place lies inside it (below 0 outside), and how high it
	// stands there, px.
	at func(dx, dy float32) (in, high float32)
}

// Sizes of what stands on the back, mm (common practice, no published source).
const (
	screwAcross  = 3.2 // thread of a screw back
	nutShare     = 0.92
	barHalf      = 1.3  // half the breadth of a bar
	needleHalf   = 0.4  // half the thickness of its needle
	hingeRadius  = 1.05 // of the knuckle at one end
	hingeHalf    = 1.1  // half of its length across the bar
	catchRadius  = 1.8  // of the catch at the other end
	catchOpening = 0.75
)

// fixturesOn places what the look holds the pin with, unless it is posts.
func (s *scene) fixturesOn(b *sizing.Badge, fr Image) []fixture {
	var out []fixture
	for _, p := range s.look.Posts {
		x, y := s.behind(b, fr, p)
		f := fixture{x: x, y: y}
		r := mul(float32(s.look.Clutch), s.mm) / 2
		switch s.look.Fastening {
		case sizing.MagnetBack:
			f.reach, f.at = r, s.magnet(r)
		case sizing.ScrewBack:
			f.reach, f.at = r, s.nut(r)
		case sizing.PinBar:
			half := mul(float32(s.look.Bar), s.mm) / 2
			f.reach, f.at = half+mul(catchRadius, s.mm), s.bar(half)
		default:
			continue
		}
		out = append(out, f)
	}
	return out
}

// magnet is a flat disc with a rounded edge and a shallow dish.
func (s *scene) magnet(r float32) func(dx, dy float32) (in, high float32) {
	edge := mul(0.5, s.mm)
	return func(dx, dy float32) (float32, float32) {
		in := r - root(mul(dx, dx)+mul(dy, dy))
		return in, rounded(in, edge, 1.6) - rounded(in-mul(r, 0.22), edge, 0.5)
	}
}

// nut is a six-sided nut on a thread.
func (s *scene) nut(r float32) func(dx, dy float32) (in, high float32) {
	flat := mul(r, nutShare)
	thread := mul(screwAcross/2, s.mm)
	pitch := max(1.5, mul(0.35, s.mm))
	return func(dx, dy float32) (float32, float32) {
		ax, ay := abs32(dx), abs32(dy)
		in := flat - max(ay, mul(ax, 0.8660254)+ay/2)
		d := root(mul(dx, dx) + mul(dy, dy))
		high := rounded(min(in, r-d), mul(0.9, s.mm), 1.5)
		if t := thread - d; t > 0 {
			turn := t / pitch
			turn -= float32(int(turn))
			high += rounded(t, pitch, 1.8) + mul(pitch, abs32(turn-0.5))
		} else {
			high -= rounded(mul(0.35, s.mm)+t, mul(0.35, s.mm), 1.4)
		}
		return min(in, r-d+1), high
	}
}

// bar is a plate with a knuckle at one end, a catch at the other, and a needle
// from one to the other.
func (s *scene) bar(half float32) func(dx, dy float32) (in, high float32) {
	mm := s.mm
	px := func(v float32) float32 { return mul(v, mm) }
	return func(dx, dy float32) (float32, float32) {
		if s.look.Upright {
			dx, dy = dy, dx
		}
		plate := capsule(dx, dy, half-px(barHalf), px(barHalf))
		hinge := capsule(dy, dx+half-px(hingeRadius), px(hingeHalf), px(hingeRadius))
		catch := capsule(dx-half+px(catchRadius), dy, 0, px(catchRadius))
		open := capsule(dx-half+px(catchRadius), dy+px(catchRadius), px(catchOpening)/2, px(catchOpening))
		catch = min(catch, -open)
		needle := capsule(dx, dy, half-px(hingeRadius), px(needleHalf))
		high := rounded(plate, px(0.35), 1.2)
		high = max(high, px(0.2)+rounded(hinge, px(hingeRadius), 1.8))
		high = max(high, px(0.2)+rounded(catch, px(0.5), 1.6))
		high = max(high, px(0.35)+rounded(needle, px(needleHalf), 2.4))
		return max(plate, hinge, catch, needle), high
	}
}

// capsule is how far a place lies inside a level line of half a length, drawn
// with a round pen of a radius.
func capsule(dx, dy, half, radius float32) float32 {
	dx = max(0, abs32(dx)-max(0, half))
	return radius - root(mul(dx, dx)+mul(dy, dy))
}

// hold draws what holds the pin, when it is no post.
func (s *scene) hold(all []fixture, pix []uint32) {
	if len(all) == 0 {
		return
	}
	metal := nickel()
	for k := range all {
		all[k].draw(s, metal, pix)
	}
}

// draw lays a fixture and its shadow over a picture of the back.
func (f *fixture) draw(s *scene, metal *ball, pix []uint32) {
	fall, soft := max(1, mul(0.5, s.mm)), max(1, mul(0.6, s.mm))
	pad := fall + soft + 2
	for y := max(0, int(f.y-f.reach-pad)); y <= min(s.h-1, int(f.y+f.reach+pad)); y++ {
		for x := max(0, int(f.x-f.reach-pad)); x <= min(s.w-1, int(f.x+f.reach+pad)); x++ {
			f.pixel(s, x, y, fall, soft, metal, pix)
		}
	}
}

func (f *fixture) pixel(s *scene, x, y int, fall, soft float32, metal *ball, pix []uint32) {
	dx, dy := float32(x)+0.5-f.x, float32(y)+0.5-f.y
	i := y*s.w + x
	under, _ := f.at(dx-fall/2, dy-fall)
	in, _ := f.at(dx, dy)
	cover := clamp01(in + 0.5)
	if dark := mul(mul(ease(-soft, soft, under), 1-cover), 0.5); dark > 0 {
		pix[i] = shadeOver(pix[i], dark)
	}
	if cover <= 0 {
		return
	}
	high := func(dx, dy float32) float32 { _, h := f.at(dx, dy); return h }
	gx := (high(dx+1, dy) - high(dx-1, dy)) / 2
	gy := (high(dx, dy+1) - high(dx, dy-1)) / 2
	k := 1 / root(1+mul(gx, gx)+mul(gy, gy))
	bow := domeShare / max(1, f.reach)
	nx, ny := -mul(gx, k)+mul(dx, bow), -mul(gy, k)+mul(dy, bow)
	pix[i] = over(pix[i], metal.at(nx, ny), cover)
}

// nickel is what fittings are plated with, as a rule (common practice, no
// published source).
func nickel() *ball {
	for _, p := range sizing.Platings() {
		if p.ID == "silver" {
			return ballOf(&p)
		}
	}
	panic("sight: there is no silver among the platings")
}
