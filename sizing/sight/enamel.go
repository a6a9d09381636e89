package sight

import "badgewright/sizing"

// The look of enamel, in mm on the pin and shares of light, chosen by eye.
const (
	shadowReach  = 0.20 // how far the shadow of a wall falls into a sunk area
	shadowBlur   = 0.34
	shadowDepth  = 0.58
	dishWidth    = 1.5 // how wide the fill hollows between walls
	dishLight    = 0.16
	climbWidth   = 0.24 // how far the fill climbs up a wall
	climbLight   = 0.34
	glassEdge    = 0.16 // where the edge of a polished fill catches light
	glassLight   = 0.38
	windowLight  = 0.085 // the bright bands mirrored in a polished face
	sandAmount   = 0.16
	floorDepth   = 0.20 // how much darker a bare floor lies
	antiqueFloor = 0.55
)

// enamel holds what the shading of the fills reads.
type enamel struct {
	fill   sizing.Fill
	d      []float32 // to the nearest wall, negative inside the fill
	shade  []float32 // walls, blurred: their shadow
	dish   []float32 // walls, blurred wide: the hollow of the fill
	reach  int       // px
	span   int       // px
	climb  float32   // px
	glass  float32   // px
	window float32   // px from one mirrored band to the next
}

func (s *scene) enamelOf(d []float32) enamel {
	e := enamel{fill: s.look.Fill, d: d}
	e.climb = s.px(climbWidth, 1.6, 20)
	e.glass = s.px(glassEdge, 1.3, 12)
	e.window = float32(max(s.w, s.h))
	if e.fill == sizing.Hard {
		return e
	}
	e.reach = int(s.px(shadowReach, 1, 16) + 0.5)
	e.shade = soften(s.metal, s.w, s.h, float64(s.px(shadowBlur, 2, 24)))
	e.span = int(s.px(dishWidth/3, 1, 30) + 0.5)
	e.dish = soften(s.metal, s.w, s.h, float64(s.px(dishWidth, 3, 80)))
	return e
}

// at is the colour of the fill, or print, in pixel i.
func (e *enamel) at(s *scene, x, y, i int) rgbf {
	c := rgbf{s.r[i], s.g[i], s.b[i]}
	if s.printed[i] > s.solid[i]/2 {
		return c
	}
	switch e.fill {
	case sizing.Hard:
		return e.polished(s, c, x, y, i)
	case sizing.Unfilled:
		return e.bare(s, x, y, i)
	}
	return e.sunk(s, c, x, y, i)
}

// sunk is soft enamel: in the shadow of its walls, hollow, climbing at the edge.
func (e *enamel) sunk(s *scene, c rgbf, x, y, i int) rgbf {
	c = darker(c, mul(shadowDepth, e.shadow(s, x, y)))
	c = lit(c, mul(dishLight, e.hollow(s, x, y)))
	if near := 1 + e.d[i]/e.climb; near > 0 {
		near = min(near, 1)
		facing := e.facing(s, x, y, i)
		if facing > 0 {
			peak := mul(mul(near, 1-near), 4)
			return lit(c, mul(mul(climbLight, mul(peak, peak)), mul(facing, facing)))
		}
	}
	return c
}

// shadow is how deep pixel (x, y) lies in the shadow of a wall, 0..1.
func (e *enamel) shadow(s *scene, x, y int) float32 {
	v := e.shade[max(y-e.reach, 0)*s.w+max(x-e.reach, 0)]
	return ease(0.05, 0.95, v)
}

// hollow is how far the fill's surface leans to the light, -1..1.
func (e *enamel) hollow(s *scene, x, y int) float32 {
	to := e.dish[min(y+e.span, s.h-1)*s.w+min(x+e.span, s.w-1)]
	from := e.dish[max(y-e.span, 0)*s.w+max(x-e.span, 0)]
	return to - from
}

// facing is how far the fill, climbing to its nearest wall, faces the light.
func (e *enamel) facing(s *scene, x, y, i int) float32 {
	gx := e.d[y*s.w+min(x+1, s.w-1)] - e.d[y*s.w+max(x-1, 0)]
	gy := e.d[min(y+1, s.h-1)*s.w+x] - e.d[max(y-1, 0)*s.w+x]
	return -(mul(gx, lightX) + mul(gy, lightY)) / 2
}

// polished is hard enamel: flush and glassy.
func (e *enamel) polished(s *scene, c rgbf, x, y, i int) rgbf {
	q := (mul(float32(x), 0.80) + mul(float32(y), 0.60)) / e.window
	c = lit(c, windows(q, 1.5/e.window))
	t := 1 + e.d[i]/e.glass
	if t <= 0 {
		return c
	}
	facing := -e.facing(s, x, y, i)
	if facing > 0 {
		peak := mul(4*t, 1-t)
		return lit(c, mul(mul(glassLight, clamp01(peak)), mul(facing, facing)))
	}
	return darker(c, mul(0.22, mul(t, -facing)))
}

// windows is the light of bright bands mirrored across the face, with a hard
// edge; the rest is a touch darker, so that the mean stays where it was.
func windows(q, edge float32) float32 {
	in := func(a, b float32) float32 {
		return mul(ease(a-edge, a+edge, q), 1-ease(b-edge, b+edge, q))
	}
	v := in(0.36, 0.50) + in(0.53, 0.56) + in(0.90, 0.97)
	return mul(windowLight, v) - 0.018
}

// bare is an area left without fill: blasted metal, deep between its walls.
func (e *enamel) bare(s *scene, x, y, i int) rgbf {
	nx, ny := mul(sandTile.at(x, y), sandAmount), mul(sandTile.at(x+97, y+31), sandAmount)
	c := s.ball.at(nx, ny).mix(s.ball.at(0, 0), 0.4)
	deep := float32(floorDepth)
	if s.look.Plating.Antique {
		deep = antiqueFloor
	}
	c = darker(c, deep)
	c = darker(c, mul(shadowDepth, e.shadow(s, x, y)))
	return lit(c, mul(dishLight, e.hollow(s, x, y)))
}

// lit adds light to a colour (t > 0, towards white) or takes it (t < 0).
func lit(c rgbf, t float32) rgbf {
	if t < 0 {
		return darker(c, -t)
	}
	return c.mix(rgbf{1, 1, 1}, t)
}
