package proof

import (
	"badgewright/reduce/mask"
)

// ground is what lies round the pins of a picture, found on a smaller copy.
type ground struct {
	small *Picture
	by    int // the copy is so many times smaller
	rgb   rgb
	plain bool // most of the picture's border has this colour
	// fore is 1 where something is drawn, holes within it included.
	fore []uint8
}

// findSide is the long side in px of the copy that pins are looked for on.
const findSide = 720

// groundNear is how far a channel may lie from the ground's colour and still
// count as ground: stains of JPEG stay within it, a pale enamel mostly does not.
const groundNear = 26

// plainShare is the share of a picture's border that must have one colour for it
// to be taken for the ground.
const plainShare = 0.35

func findGround(p *Picture) *ground {
	by := max(1, (max(p.W, p.H)+findSide-1)/findSide)
	g := &ground{small: p.shrunk(by), by: by}
	g.rgb, g.plain = borderColour(g.small)
	g.fill()
	return g
}

// borderColour is the commonest colour along the border of a picture.
func borderColour(p *Picture) (rgb, bool) {
	var list []uint32
	for x := range p.W {
		list = append(list, p.Pix[x], p.Pix[(p.H-1)*p.W+x])
	}
	for y := range p.H {
		list = append(list, p.Pix[y*p.W], p.Pix[y*p.W+p.W-1])
	}
	var count [4096]int
	bin := func(c uint32) int { return int(c>>4&15 | c>>12&15<<4 | c>>20&15<<8) }
	best := 0
	for _, c := range list {
		count[bin(c)]++
	}
	for b, n := range count {
		if n > count[best] {
			best = b
		}
	}
	var sum rgb
	for _, c := range list {
		if bin(c) == best {
			for k, v := range split(c) {
				sum[k] += v
			}
		}
	}
	for k := range sum {
		sum[k] /= float64(count[best])
	}
	near := 0
	for _, c := range list {
		if s := split(c); s.near(&sum, groundNear) {
			near++
		}
	}
	return sum, float64(near) >= plainShare*float64(len(list))
}

func (c *rgb) near(d *rgb, by float64) bool {
	for k := range c {
		if c[k]-d[k] > by || d[k]-c[k] > by {
			return false
		}
	}
	return true
}

// fill marks as foreground what the ground, coming in from the border, does not
// reach.
func (g *ground) fill() {
	w, h := g.small.W, g.small.H
	like := make([]uint8, w*h)
	for i, c := range g.small.Pix {
		if s := split(c); s.near(&g.rgb, groundNear) {
			like[i] = 1
		}
	}
	parts := mask.Connect(like, w, h, &[256]bool{})
	open := make([]bool, len(parts.Area))
	eachRun(parts, func(y int, r mask.Run) {
		if r.Label == 1 && (y == 0 || y == h-1 || r.X0 == 0 || int(r.X1) == w) {
			open[r.Comp] = true
		}
	})
	g.openFrames(parts, open)
	g.fore = make([]uint8, w*h)
	eachRun(parts, func(y int, r mask.Run) {
		if !open[r.Comp] {
			fill(g.fore[y*w+int(r.X0):y*w+int(r.X1)], 1)
		}
	})
}

// frameShare is the share of the picture that ground within a drawn frame takes
// at least; a cut-out or a pale area of a pin is smaller than this or does not
// hold other things.
const frameShare = 0.18

// openFrames counts ground that a frame round the sheet closes in as ground.
func (g *ground) openFrames(parts *mask.Components, open []bool) {
	total := g.small.W * g.small.H
	wide := make([]bool, len(open))
	for c, n := range parts.Area {
		wide[c] = parts.Label[c] == 1 && !open[c] && float64(n) > frameShare*float64(total)
	}
	boxes := boxesOf(parts)
	for c := range open {
		if b := boxes[c]; wide[c] && float64(parts.Area[c]) < 0.92*float64((b[2]-b[0])*(b[3]-b[1])) && g.reaches(b) {
			open[c] = true
		}
	}
}

// reaches says whether a box takes most of the width or height of the picture.
func (g *ground) reaches(b [4]int) bool {
	return 10*(b[2]-b[0]) > 8*g.small.W || 10*(b[3]-b[1]) > 8*g.small.H
}

func eachRun(parts *mask.Components, f func(y int, r mask.Run)) {
	for y := range parts.H {
		for _, r := range parts.Runs[parts.Row[y]:parts.Row[y+1]] {
			f(y, r)
		}
	}
}

// boxesOf returns the box of each part: x0, y0, and beyond its last x1, y1.
func boxesOf(parts *mask.Components) [][4]int {
	boxes := make([][4]int, len(parts.Area))
	for i := range boxes {
		boxes[i] = [4]int{parts.W, parts.H, 0, 0}
	}
	eachRun(parts, func(y int, r mask.Run) {
		b := &boxes[r.Comp]
		b[0], b[1] = min(b[0], int(r.X0)), min(b[1], y)
		b[2], b[3] = max(b[2], int(r.X1)), max(b[3], y+1)
	})
	return boxes
}

func fill(line []uint8, v uint8) {
	for i := range line {
		line[i] = v
	}
}
