package reduce

import (
	"math"
	"sync"
)

// p3ToSRGB takes linear Display-P3 to linear sRGB, both with a D65 white, in
// parts of 65536. It follows from the primaries of SMPTE EG 432-1 and IEC
// 61966-2-1 (the matrices are given in CSS Color 4, section 17).
var p3ToSRGB = [9]int64{
	80278, -14742, 0,
	-2756, 68292, 0,
	-1287, -5153, 71976,
}

// How far, in parts of 65535 of linear light, a channel may stray outside sRGB
// before the pixel counts as clipped: half an 8-bit level at either end.
const (
	strayDark  = 10
	strayLight = 290
)

// transfer holds the sRGB transfer function (IEC 61966-2-1), which Display-P3
// shares, as tables: 8-bit to linear light in parts of 65535, and back.
type transfer struct {
	linear  [256]int64
	encoded [65536]uint8
}

var transferOnce = sync.OnceValue(func() *transfer {
	t := new(transfer)
	for v := range 256 {
		t.linear[v] = int64(math.Round(65535 * srgbToLinear(float64(v)/255)))
	}
	v := 0
	for i := range t.encoded {
		for v < 255 && float64(i)/65535 >= srgbToLinear((float64(v)+0.5)/255) {
			v++
		}
		t.encoded[i] = uint8(v)
	}
	return t
})

func srgbToLinear(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// FromDisplayP3 turns Display-P3 pixels into sRGB in place, each channel
// clipped by itself, and returns the share (0..1) of visible pixels whose
// colour sRGB cannot hold. Alpha is kept.
func FromDisplayP3(pix []uint32) (clippedShare float64) {
	t := transferOnce()
	visible, clipped := 0, 0
	var last, is uint32
	var off bool
	for i, p := range pix {
		if p != last {
			last = p
			is, off = t.fromP3(p)
		}
		pix[i] = is
		if p>>24 > clearAlpha {
			visible++
			if off {
				clipped++
			}
		}
	}
	if visible == 0 {
		return 0
	}
	return float64(clipped) / float64(visible)
}

func (t *transfer) fromP3(p uint32) (q uint32, off bool) {
	r, g, b := t.linear[p&255], t.linear[p>>8&255], t.linear[p>>16&255]
	q = p & 0xff000000
	for c := range 3 {
		m := p3ToSRGB[3*c:]
		v := (m[0]*r + m[1]*g + m[2]*b + 32768) >> 16
		off = off || v < -strayDark || v > 65535+strayLight
		q |= uint32(t.encoded[min(max(v, 0), 65535)]) << (8 * c)
	}
	return q, off
}
