package sight

import "badgewright/sizing"

// The look of enamel, in mm on the pin and shares of light, chosen by eye.
const (
	shadowReach  = 0.20 // how far the shadow of a wall falls into a sunk area
	shadowBlur   = 0.34
	shadowDepth  = 0.58
	dishWidth    = 1.5 // how wide the fill hollows between walls
	dishLight    = 0.16
	climbWidth   = 0.17 // how far the fill climbs up a wall
	climbLight   = 0.20
	glassEdge    = 0.11 // where the edge of a polished fill catches light
	glassLight   = 0.24
	windowLight  = 0.075 // the bright bands mirrored in a polished face
	windowDim    = 0.014
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

// at is the colour of the fill in pixel i.
func (e *enamel) at(s *scene, x, y, i int) rgbf {
	c := rgbf{s.r[i], s.g[i], s.b[i]}
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
			return lit(c, mul(mul(climbLight, mul(near, near)), mul(facing, facing)))
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
	u, v := float32(x)/e.window, float32(y)/e.window
	bow := mul(u-v, 0.30)
	q := mul(u, 0.72) + mul(v, 0.60) + mul(bow, u-v)
	c = lit(c, windows(q, 1.5/e.window))
	t := 1 + e.d[i]/e.glass
	if t <= 0 {
		return c
	}
	facing := -e.facing(s, x, y, i)
	if facing > 0 {
		t = min(t, 1)
		return lit(c, mul(mul(glassLight, mul(t, t)), mul(facing, facing)))
	}
	return darker(c, mul(0.22, mul(t, -facing)))
}

// windows is the light of bright bands mirrored across the face: a hard edge
// on the side of the light, fading away from it. The rest is a touch darker, so
// that the mean stays where it was.
func windows(q, edge float32) float32 {
	band := func(a, b float32) float32 {
		return mul(ease(a-edge, a+edge, q), 1-ease(a, b, q))
	}
	v := band(0.30, 0.56) + mul(band(0.26, 0.275)+band(0.80, 0.98), 0.8)
	return mul(windowLight, v) - windowDim
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
