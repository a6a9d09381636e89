package reduce

// thin explains a pixel of a line too thin to reach its colour: part one near
// flat, part any flat of the drawing.
func (e *edger) thin(i int) bool {
	var c near
	p := e.grade.tone(e.pix[i])
	for r := 1; r <= farReach && c.n == 0; r++ {
		e.collect(i, r, e.grip, &c)
	}
	if e.pix[i]>>24 < 255 && (e.veil(i, &c, &p) || e.veilOfAny(i, &c, &p)) {
		return true
	}
	most := int32(e.mix * e.mix)
	best, base, part := loose, loose, int32(0)
	cost := int32(1 << 30)
	for x := 0; x < max(c.n, 1); x++ {
		b := c.label[x]
		if c.n == 0 {
			b = loose
		}
		for l := 0; l < e.n; l++ {
			s, off := int32(255), int32(0)
			if b == loose {
				off = p.apart2(&e.tones[l])
			} else {
				s, off = share(&p, &e.tones[l], &e.tones[b])
			}
			if off > most {
				continue
			}
			if v := off + e.doubt(uint8(l), b, s, &c); v < cost {
				best, base, part, cost = uint8(l), b, s, v
			}
		}
	}
	if best == loose {
		return false
	}
	if base == loose {
		base = best
	}
	e.set(i, best, base, part)
	return true
}

const (
	// faint is what each part of 255 that a thin line falls short of its colour
	// costs, in squared levels.
	faint = 1
	// strange is what a flat costs, as a part of the squared tolerance, that is
	// known nowhere near.
	strange = 8
)

// doubt is how unlikely, in squared levels, it is that a pixel is part (of 255)
// flat l on base: an edge between two flats that are near needs no excuse, and
// a line that is nearly its own colour is likelier than a faint one.
func (e *edger) doubt(l, base uint8, part int32, c *near) int32 {
	switch {
	case c.has(l) && base != loose:
		return 0
	case c.has(l):
		return (255 - part) * faint
	default:
		return (255-part)*faint + int32(e.mix*e.mix)/strange
	}
}
