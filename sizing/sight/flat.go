package sight

import (
	"badgewright/reduce"
	"badgewright/sizing"
)

// Flat draws the flat drawing: each flat in its colour, metal in the face of
// the plating, edges where they truly lie, on a clear ground.
func Flat(b *sizing.Badge, longSide int, plating sizing.Plating, recolour Recolour) *Image {
	im := frameOf(b, longSide)
	k := fineFor(longSide)
	fr := im.finer(k)
	f := lay(b, fr, recolour)
	face := ofRGB8(plating.Mid)
	pix := make([]uint32, len(f.solid))
	for i, solid := range f.solid {
		if solid == 0 {
			continue
		}
		c := rgbf{f.r[i], f.g[i], f.b[i]}.mix(face, 1-min(1, f.tinted[i]/solid))
		pix[i] = packed(c[0], c[1], c[2], solid)
	}
	im.Pix = shrink(pix, fr.W, fr.H, k)
	return &im
}

// Original draws the drawing as brought, in the frame of the badge made of it.
func Original(b *sizing.Badge, d *reduce.Drawing, longSide int) *Image {
	im := frameOf(b, longSide)
	f := layPixels(d, im)
	im.Pix = f
	return &im
}

// light is a sum of linear light, weighted by alpha.
type light struct{ r, g, b, a float64 }

func (l *light) add(p uint32, w float64) {
	wa := float64(w * float64(p>>24))
	l.a += wa
	l.r += float64(wa * float64(lightOf[p&255]))
	l.g += float64(wa * float64(lightOf[p>>8&255]))
	l.b += float64(wa * float64(lightOf[p>>16&255]))
}

func (l *light) pixel() uint32 {
	if l.a < 0.5 {
		return 0
	}
	back := func(v float64) uint32 { return uint32(levelOf[min(4095, int(v/l.a+8)/16)]) }
	return back(l.r) | back(l.g)<<8 | back(l.b)<<16 | uint32(min(255, l.a+0.5))<<24
}

// layPixels averages the drawing into the frame by area, in linear light; a
// drawing smaller than the frame is drawn from its two nearest rows and columns.
func layPixels(d *reduce.Drawing, fr Image) []uint32 {
	reach := max(1, 1/fr.Scale)
	xs, ys := spans(fr.W, d.W, fr.Scale, fr.DX, reach), spans(fr.H, d.H, fr.Scale, fr.DY, reach)
	out := make([]uint32, fr.W*fr.H)
	row := make([]light, d.W)
	for v, sy := range ys {
		if len(sy.w) == 0 {
			continue
		}
		clear(row)
		for k, wy := range sy.w {
			for x, p := range d.Pix[(sy.at+k)*d.W : (sy.at+k+1)*d.W] {
				if p>>24 != 0 {
					row[x].add(p, wy)
				}
			}
		}
		for u, sx := range xs {
			out[v*fr.W+u] = gather(row, sx).pixel()
		}
	}
	return out
}

func gather(row []light, s span) *light {
	var l light
	for k, w := range s.w {
		p := &row[s.at+k]
		l.r += float64(w * p.r)
		l.g += float64(w * p.g)
		l.b += float64(w * p.b)
		l.a += float64(w * p.a)
	}
	return &l
}

// span is a run of source pixels and the weight of each.
type span struct {
	at int
	w  []float64
}

// spans gives, for each of n picture pixels, the source pixels within a window
// of reach source pixels round its centre. Pixels off the source weigh nothing
// and are clear.
func spans(n, source int, scale, shift, reach float64) []span {
	out := make([]span, n)
	for u := range out {
		mid := (float64(u) + 0.5 - shift) / scale
		a, b := mid-reach/2, mid+reach/2
		for x := max(0, int(a)); x < source && float64(x) < b; x++ {
			w := (min(b, float64(x+1)) - max(a, float64(x))) / reach
			if w <= 0 {
				continue
			}
			if len(out[u].w) == 0 {
				out[u].at = x
			}
			out[u].w = append(out[u].w, w)
		}
	}
	return out
}
