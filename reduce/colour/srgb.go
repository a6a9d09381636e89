package colour

import "math"

// Linear is linear-light sRGB, each channel 0..1 when inside the gamut.
type Linear struct{ R, G, B float64 }

// linear8 holds the linear light of each 8-bit sRGB code.
var linear8 = func() (t [256]float64) {
	for i := range t {
		t[i] = Decode(float64(i) / 255)
	}
	return t
}()

// Decode turns an encoded sRGB channel (0..1) into linear light
// (IEC 61966-2-1, the inverse transfer function). Values below zero mirror.
func Decode(v float64) float64 {
	switch {
	case v < 0:
		return -Decode(-v)
	case v <= 0.04045:
		return v / 12.92
	}
	x := (v + 0.055) / 1.055
	r := fifthRoot(x)
	return x * x * r * r // x^2.4
}

// Encode turns linear light (0..1) into an encoded sRGB channel
// (IEC 61966-2-1). Values below zero mirror.
func Encode(v float64) float64 {
	switch {
	case v < 0:
		return -Encode(-v)
	case v <= 0.0031308:
		return v * 12.92
	}
	r := math.Sqrt(math.Sqrt(math.Cbrt(v))) // v^(1/12)
	return float64(1.055*(r*r*r*r*r)) - 0.055
}

// fifthRoot is x^(1/5) for x in (0, 1], by Newton's method from above: plain
// arithmetic, so that every machine gives the same bits.
func fifthRoot(x float64) float64 {
	r := 1.0
	for range 64 {
		q := r * r * r * r
		next := (float64(4*r) + x/q) / 5
		if next >= r {
			break
		}
		r = next
	}
	return r
}

// Linear returns the linear light of an 8-bit colour.
func (c RGB8) Linear() Linear { return Linear{linear8[c.R], linear8[c.G], linear8[c.B]} }

// RGB8 returns the nearest 8-bit colour, clipped channel by channel.
func (l Linear) RGB8() RGB8 { return RGB8{to8(l.R), to8(l.G), to8(l.B)} }

func to8(v float64) uint8 {
	e := float64(Encode(v)*255) + 0.5
	return uint8(min(max(e, 0), 255))
}
