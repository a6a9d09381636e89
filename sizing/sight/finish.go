package sight

import (
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
)

// Finish gives flats other finishes, by ID.
type Finish = map[reduce.FlatID]sizing.Finish

// The look of the finishes, in mm on the pin and shares of light, chosen by eye.
const (
	flakeSize   = 0.11 // of a flake of glitter
	flakeBright = 0.62
	pearlSheen  = 0.30
	pearlBand   = 4.5  // from one band of sheen to the next
	rayWidth    = 0.55 // of the pattern under a translucent fill
	glowLight   = 0.16
	blastGrain  = 0.24 // how far blasted metal's grains lean
	hammerSize  = 0.5  // of a dent in textured metal
	hammerLean  = 0.55
)

// layFinish says for each picture pixel which finish the flat in its middle
// has; nil when all are plain.
func layFinish(b *sizing.Badge, fr Image, of Finish) []sizing.Finish {
	var table [256]sizing.Finish
	some := false
	for l, f := range b.Sep.Flats {
		if want := of[f.ID]; want != sizing.Plain && slices.Contains(sizing.Finishes(f.Role), want) {
			table[l], some = want, true
		}
	}
	if !some {
		return nil
	}
	out := make([]sizing.Finish, fr.W*fr.H)
	for v := range fr.H {
		y := int((float64(v) + 0.5 - fr.DY) / fr.Scale)
		for u := range fr.W {
			x := int((float64(u) + 0.5 - fr.DX) / fr.Scale)
			if x >= 0 && y >= 0 && x < b.Sep.W && y < b.Sep.H {
				out[v*fr.W+u] = table[b.Sep.Labels[y*b.Sep.W+x]]
			}
		}
	}
	return out
}

// filled gives a fill its finish.
func (s *scene) filled(c rgbf, x, y, i int) rgbf {
	if s.finish == nil {
		return c
	}
	switch s.finish[i] {
	case sizing.Glitter:
		return s.glitter(c, x, y)
	case sizing.Pearl:
		return s.pearl(c, x, y)
	case sizing.Translucent:
		return s.translucent(c, x, y)
	case sizing.Glow:
		return lit(c, glowLight)
	}
	return c
}

// glitter scatters flakes: each mirrors the light or turns away from it.
func (s *scene) glitter(c rgbf, x, y int) rgbf {
	size := s.px(flakeSize, 1.4, 12)
	u, v := int(float32(x)/size), int(float32(y)/size)
	turn := sandTile.at(mulInt(u, 7), mulInt(v, 13)) // each flake has its own
	switch {
	case turn > 0.55:
		return lit(c, mul(flakeBright, min(1, turn)))
	case turn > 0.15:
		return lit(c, 0.16)
	case turn < -0.45:
		return darker(c, 0.22)
	}
	return c
}

// pearl lays soft bands of sheen across the fill.
func (s *scene) pearl(c rgbf, x, y int) rgbf {
	q := (mul(float32(x), 0.72) + mul(float32(y), 0.69)) / s.px(pearlBand, 20, 600)
	wave := abs32(mul(2, q-float32(int(q))) - 1) // 0..1..0
	c = lit(c, mul(pearlSheen, ease(0.15, 1, wave)))
	return lit(c, mul(0.05, sandTile.at(x, y)))
}

// translucent lets a floor of struck rays shine through the colour.
func (s *scene) translucent(c rgbf, x, y int) rgbf {
	q := float32(x+y) / s.px(rayWidth, 4, 60)
	lean := abs32(mul(2, q-float32(int(q)))-1) - 0.5
	floor := s.ball.at(mul(lean, 0.9), mul(lean, 0.9))
	light := mul(0.30, floor[0]) + mul(0.59, floor[1]) + mul(0.11, floor[2])
	for k := range c {
		c[k] = mul(c[k], 0.68+mul(0.55, light))
	}
	return rgbf{min(1, c[0]), min(1, c[1]), min(1, c[2])}
}

// rough leans a metal face's normal as its finish does.
func (s *scene) rough(i, x, y int, nx, ny float32) (float32, float32) {
	if s.finish == nil {
		return nx, ny
	}
	switch s.finish[i] {
	case sizing.Sandblasted:
		return mul(nx, 0.6) + mul(sandTile.at(x, y), blastGrain), mul(ny, 0.6) + mul(sandTile.at(x+97, y+31), blastGrain)
	case sizing.Textured:
		u, v := s.dent(x, y)
		return nx + mul(hammerLean, u), ny + mul(hammerLean, v)
	}
	return nx, ny
}

// dent is where a pixel lies in its hammer mark, -1..1 from the middle; every
// second row is set off by half a mark.
func (s *scene) dent(x, y int) (u, v float32) {
	size := s.px(hammerSize, 5, 60)
	v = float32(y) / size
	row := int(v)
	u = float32(x)/size + mul(0.5, float32(row%2))
	return mul(2, u-float32(int(u))) - 1, mul(2, v-float32(row)) - 1
}

func mulInt(a, b int) int { return a*b&1023 + a>>3 }
