package reduce

import "badgewright/reduce/colour"

// tone is a colour in which mixes are straight lines: encoded sRGB as it is
// for exact drawings, since rasterisers mix there; else light and two colour
// differences, these counted less, since JPEG keeps them coarsely.
type tone [3]int32

func (g grade) tone(p uint32) tone {
	r, gr, b := int32(p&255), int32(p>>8&255), int32(p>>16&255)
	if g == exact {
		return tone{r, gr, b}
	}
	y := (77*r + 150*gr + 29*b + 128) >> 8
	return tone{y * 7 >> 2, (r - y) >> 1, (b - y) * 3 >> 3}
}

func (g grade) toneOf(c colour.RGB8) tone {
	return g.tone(packed(c))
}

func packed(c colour.RGB8) uint32 { return uint32(c.R) | uint32(c.G)<<8 | uint32(c.B)<<16 }

func (t *tone) apart2(u *tone) int32 {
	a, b, c := t[0]-u[0], t[1]-u[1], t[2]-u[2]
	return a*a + b*b + c*c
}

// over lays part (0..255) of t on ground.
func (t *tone) over(ground *tone, part int32) *tone {
	var out tone
	for k := range out {
		out[k] = (t[k]*part + ground[k]*(255-part)) / 255
	}
	return &out
}

// share returns how much of p (0..255) is a when it mixes a and b, and the
// squared distance of p from the line between them.
func share(p, a, b *tone) (part, off int32) {
	d0, d1, d2 := a[0]-b[0], a[1]-b[1], a[2]-b[2]
	e0, e1, e2 := p[0]-b[0], p[1]-b[1], p[2]-b[2]
	long := d0*d0 + d1*d1 + d2*d2
	if long == 0 {
		return 255, e0*e0 + e1*e1 + e2*e2
	}
	along := e0*d0 + e1*d1 + e2*d2
	switch {
	case along <= 0:
		return 0, e0*e0 + e1*e1 + e2*e2
	case along >= long:
		return 255, p.apart2(a)
	}
	part = int32((int64(along)*255 + int64(long)/2) / int64(long))
	off = e0*e0 + e1*e1 + e2*e2 - int32(int64(along)*int64(along)/int64(long))
	return part, max(off, 0)
}

// lightOf255 is the linear light of each encoded level (IEC 61966-2-1), 0..2047:
// coarse enough for sums of squares in 32 bits.
var lightOf255 = func() (t [256]int32) {
	for v := range t {
		t[v] = int32(2047*colour.Decode(float64(v)/255) + 0.5)
	}
	return t
}()

// lit is a colour as linear light, in which a lens mixes.
func lit(p uint32) tone {
	return tone{lightOf255[p&255], lightOf255[p>>8&255], lightOf255[p>>16&255]}
}
