package wall

import (
	"math"

	"badgewright/reduce"
)

// capEnd is the disc that a tip is rounded to, and the direction out of it.
type capEnd struct {
	*shaper
	tip    place
	at     place // middle of the disc
	dx, dy float64
	radius float64
	touch  float64 // how far beyond the middle, outward, the disc touches the sides
}

// inward is how far the disc is moved at a time, in pixels.
const inward = 0.25

// deepest is how many radii behind a tip the disc may come to lie: it is 11 for
// sides that enclose 10 degrees. What is more slender is thin, not only sharp.
const deepest = 12

// settle moves the disc from the tip inward until it fits; ok is false when it
// does not, or where the tip is as round as that already.
func (c *capEnd) settle() (ok bool) {
	for u := c.radius; u <= deepest*c.radius; u += inward {
		c.at = place{c.tip.x - float64(u*c.dx), c.tip.y - float64(u*c.dy)}
		if c.clear() >= c.radius {
			c.touch = c.radius * c.radius / u
			return u > c.radius+1
		}
	}
	return false
}

// clear returns how far the middle of the disc lies from the outside, up to a
// little more than the radius.
func (c *capEnd) clear() float64 {
	least := c.radius + 1
	c.b.near([]place{c.at}, c.radius+1.5, func(i int, d float64) {
		if part := c.s.CoverOf(i, c.is); part < 0.99 {
			least = min(least, d-0.5+part)
		}
	})
	return least
}

// cut takes away what lies beyond the disc and hangs together with the tip, and
// lets metal run round the new end where the old one was metal.
func (c *capEnd) cut() {
	s := c.s
	metalThere := c.metalAtTip()
	reach := math.Hypot(c.tip.x-c.at.x, c.tip.y-c.at.y) + 2
	beyond := map[int]float64{}
	c.b.near([]place{c.at}, reach, func(i int, d float64) {
		x, y := float64(i%s.W)+0.5-c.at.x, float64(i/s.W)+0.5-c.at.y
		if out := float64(x*c.dx) + float64(y*c.dy); out > c.touch && d > c.radius-0.5 {
			beyond[i] = d
		} else if metalThere && out > 0 && d > c.radius-c.edge && c.is[s.Labels[i]] {
			s.Labels[i], s.Beside[i], s.Cover[i], s.Built[i] = c.label, c.label, 255, true
		}
	})
	for _, i := range c.hanging(beyond) {
		if metalThere && c.is[s.Labels[i]] {
			s.Labels[i], s.Built[i] = c.label, true
		}
		c.takeAway(i, uint8(255*min(1, beyond[i]-c.radius+0.5)))
	}
}

// hanging returns the pixels of a set, none of them all outside, that ways
// through others of it lead to from the tip.
func (c *capEnd) hanging(set map[int]float64) (list []int) {
	s := c.s
	seen := map[int]bool{}
	add := func(x, y int) {
		i := y*s.W + x
		if _, in := set[i]; in && x >= 0 && x < s.W && !seen[i] && c.s.CoverOf(i, c.is) > 0 {
			seen[i] = true
			list = append(list, i)
		}
	}
	// The tip may lie a little beyond the last pixel of it.
	for u := 0.0; len(list) == 0 && u < 4; u++ {
		add(int(c.tip.x-float64(u*c.dx)), int(c.tip.y-float64(u*c.dy)))
	}
	for k := 0; k < len(list); k++ {
		x, y := list[k]%s.W, list[k]/s.W
		for _, d := range round3[1:] {
			add(x+d[0], y+d[1])
		}
	}
	return list
}

// metalAtTip says whether the tip is metal.
func (c *capEnd) metalAtTip() bool {
	for u := 1.0; u < 5; u++ {
		x, y := int(c.tip.x-float64(u*c.dx)), int(c.tip.y-float64(u*c.dy))
		if x < 0 || y < 0 || x >= c.s.W || y >= c.s.H {
			continue
		}
		if l := c.s.Labels[y*c.s.W+x]; c.is[l] {
			return c.s.Flats[l].Role == reduce.Metal
		}
	}
	return false
}
