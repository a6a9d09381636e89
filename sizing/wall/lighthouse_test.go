package wall

import (
	"math"

	"badgewright/reduce"
)

// lighthouse draws a badge of Skerry Light, h pixels high, with lines of the
// width line (px): a round badge with a rim, a striped tower on a rock, waves,
// a beam and a hair that is too thin on purpose when hair is less than line.
func lighthouse(h int, line, hair float64) *reduce.Separation {
	w := h
	c := float64(h) / 2
	r := c - 4
	waves := func(x, y float64) float64 { return y - 1.45*c - 0.05*c*math.Sin(x/c*14) }
	tower := func(x, y float64) float64 { // below 0 inside
		half := 0.13*c + 0.12*c*(y-0.5*c)/c
		return max(math.Abs(x-c)-half, 0.55*c-y, y-1.6*c)
	}
	return sceneBy(w, h, 4, func(x, y float64) uint8 {
		rim := math.Hypot(x-c, y-c)
		if rim > r {
			return sky
		}
		if rim > r-1.5*line {
			return steel
		}
		wave, t := waves(x, y), tower(x, y)
		switch {
		case math.Abs(wave) < line/2, wave < 0 && math.Abs(t) < line/2:
			return steel
		case wave > 0:
			return blue
		case t < 0:
			band := math.Mod(y, 0.3*c)
			if band < line {
				return steel
			}
			if math.Mod(y, 0.6*c) < 0.3*c {
				return red
			}
			return blue
		case math.Abs(y-0.45*c-0.3*(x-c)) < hair/2 && x > 1.2*c:
			return steel
		case math.Hypot(x-0.45*c, y-0.7*c) < 0.12*c:
			return red
		case math.Hypot(x-0.45*c, y-0.7*c) < 0.12*c+line:
			return steel
		}
		return blue
	})
}
