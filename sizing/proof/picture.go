package proof

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
)

// Picture is a proof or a photograph: 8-bit sRGB pixels without transparency,
// R in the lowest byte.
type Picture struct {
	W, H int
	Pix  []uint32
}

// NewPicture lays straight-alpha pixels on white; it refuses what is too small
// to show a pin.
func NewPicture(w, h int, pix []uint32) (*Picture, error) {
	if w < leastSide || h < leastSide || len(pix) != w*h {
		return nil, &reduce.Refusal{What: "This picture is too small to show a pin.", Do: "Bring the proof at its full size, at least 64 px each way."}
	}
	out := make([]uint32, len(pix))
	for i, p := range pix {
		out[i] = onWhite(p)
	}
	return &Picture{W: w, H: h, Pix: out}, nil
}

// leastSide is the least width and height of a picture that is looked at, px.
const leastSide = 64

func onWhite(p uint32) uint32 {
	a := p >> 24
	if a == 255 {
		return p
	}
	mix := func(c uint32) uint32 { return ((c&255)*a + 255*(255-a) + 127) / 255 }
	return mix(p) | mix(p>>8)<<8 | mix(p>>16)<<16 | 255<<24
}

// rgb is a colour as encoded channels, 0..255, finer than a step.
type rgb [3]float64

func rgbOf(c colour.RGB8) rgb { return rgb{float64(c.R), float64(c.G), float64(c.B)} }

func split(p uint32) rgb {
	return rgb{float64(p & 255), float64(p >> 8 & 255), float64(p >> 16 & 255)}
}

// rgb8 is the nearest 8-bit colour.
func (c rgb) rgb8() colour.RGB8 {
	r := func(v float64) uint8 { return uint8(min(255, max(0, v)) + 0.5) }
	return colour.RGB8{R: r(c[0]), G: r(c[1]), B: r(c[2])}
}

// far2 is the squared distance of two colours in encoded channels: a quick
// measure that finds places; what is told of them is CIEDE2000.
func (c *rgb) far2(d *rgb) float64 {
	a, b, e := c[0]-d[0], c[1]-d[1], c[2]-d[2]
	return float64(a*a) + float64(b*b) + float64(e*e)
}

// at returns the colour at a place, mixed of the four pixels round it. What lies
// off the picture has the colour of its edge.
func (p *Picture) at(x, y float64) rgb {
	x, y = min(max(x-0.5, 0), float64(p.W-1)), min(max(y-0.5, 0), float64(p.H-1))
	x0, y0 := int(x), int(y)
	fx, fy := x-float64(x0), y-float64(y0)
	x1, y1 := min(x0+1, p.W-1), min(y0+1, p.H-1)
	a, b := p.Pix[y0*p.W+x0], p.Pix[y0*p.W+x1]
	c, d := p.Pix[y1*p.W+x0], p.Pix[y1*p.W+x1]
	if a == b && a == c && a == d {
		return split(a)
	}
	ca, cb, cc, cd := split(a), split(b), split(c), split(d)
	var out rgb
	for k := range out {
		top := ca[k] + float64(fx*(cb[k]-ca[k]))
		low := cc[k] + float64(fx*(cd[k]-cc[k]))
		out[k] = top + float64(fy*(low-top))
	}
	return out
}

// shrunk is a picture by a whole number smaller, each pixel the mean of what it
// stands for. Encoded values are averaged: this picture is only for finding.
func (p *Picture) shrunk(by int) *Picture {
	if by <= 1 {
		return p
	}
	q := &Picture{W: max(1, p.W/by), H: max(1, p.H/by)}
	q.Pix = make([]uint32, q.W*q.H)
	n := uint32(by * by)
	for y := range q.H {
		for x := range q.W {
			var r, g, b uint32
			for dy := range by {
				row := p.Pix[(y*by+dy)*p.W+x*by:][:by]
				for _, c := range row {
					r, g, b = r+c&255, g+c>>8&255, b+c>>16&255
				}
			}
			q.Pix[y*q.W+x] = (r+n/2)/n | (g+n/2)/n<<8 | (b+n/2)/n<<16 | 255<<24
		}
	}
	return q
}
