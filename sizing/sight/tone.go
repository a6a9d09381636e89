package sight

import (
	"math"

	"badgewright/reduce/colour"
)

// rgbf is a colour with encoded sRGB channels, 0..1.
type rgbf [3]float32

func ofRGB8(c colour.RGB8) rgbf {
	return rgbf{float32(c.R) / 255, float32(c.G) / 255, float32(c.B) / 255}
}

// mul multiplies and rounds, so that no processor fuses it with a sum: the same
// bits natively and in WASM.
func mul(a, b float32) float32 { return float32(a * b) }

// mix goes from a (t = 0) to b (t = 1).
func mix(a, b, t float32) float32 { return a + mul(b-a, t) }

func (c rgbf) mix(d rgbf, t float32) rgbf {
	return rgbf{mix(c[0], d[0], t), mix(c[1], d[1], t), mix(c[2], d[2], t)}
}

func clamp01(v float32) float32 {
	if v < 0 {
		return 0
	}
	if v > 1 {
		return 1
	}
	return v
}

// ease is the cubic that goes smoothly from 0 at a to 1 at b.
func ease(a, b, v float32) float32 {
	t := clamp01((v - a) / (b - a))
	return mul(mul(t, t), 3-2*t)
}

func root(v float32) float32 { return float32(math.Sqrt(float64(v))) }

// lightOf holds linear light (0..65535) for each encoded 8-bit level, after
// the transfer function of IEC 61966-2-1.
var lightOf = func() (t [256]int32) {
	for i := range t {
		e := float64(i) / 255
		l := e / 12.92
		if e > 0.04045 {
			l = math.Pow((e+0.055)/1.055, 2.4)
		}
		t[i] = int32(math.Round(l * 65535))
	}
	return t
}()

// levelOf undoes lightOf: the nearest level for linear light in steps of 16.
var levelOf = func() (t [4097]uint8) {
	at := 0
	for i := range t {
		want := int32(i) * 16
		for at < 255 && lightOf[at+1]+lightOf[at] <= 2*want {
			at++
		}
		t[i] = uint8(at)
	}
	return t
}()

func level(v float32) uint32 {
	if v <= 0 {
		return 0
	}
	if v >= 1 {
		return 255
	}
	return uint32(mul(v, 255) + 0.5)
}

func packed(r, g, b, a float32) uint32 {
	return level(r) | level(g)<<8 | level(b)<<16 | level(a)<<24
}

// shrink averages k x k pixels into one, in linear light, weighted by alpha:
// what the eye does with detail it cannot part.
func shrink(pix []uint32, w, h, k int) []uint32 {
	if k == 1 {
		return pix
	}
	ow, oh := w/k, h/k
	out := make([]uint32, ow*oh)
	for y := 0; y < oh; y++ {
		for x := 0; x < ow; x++ {
			out[y*ow+x] = mean(pix, w, x*k, y*k, k)
		}
	}
	return out
}

func mean(pix []uint32, w, x0, y0, k int) uint32 {
	var r, g, b, a int64
	for y := y0; y < y0+k; y++ {
		for _, p := range pix[y*w+x0 : y*w+x0+k] {
			pa := int64(p >> 24)
			a += pa
			r += pa * int64(lightOf[p&255])
			g += pa * int64(lightOf[p>>8&255])
			b += pa * int64(lightOf[p>>16&255])
		}
	}
	if a == 0 {
		return 0
	}
	n := int64(k * k)
	back := func(v int64) uint32 { return uint32(levelOf[(v/a+8)/16]) }
	return back(r) | back(g)<<8 | back(b)<<16 | uint32((a+n/2)/n)<<24
}
