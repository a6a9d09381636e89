package colour

import "math"

const degree = math.Pi / 180

// CIEDE2000 is the colour difference of CIE 142-2001 with all weights 1,
// after Sharma, Wu & Dalal, Color Research and Application 30(1), 2005. A hue
// step of exactly half a turn, blurred by rounding, counts as half a turn:
// there the published table and a plain comparison part ways.
func CIEDE2000(p, q Lab) float64 {
	p, q = greyer(p, q)
	c1, c2 := chroma(p), chroma(q)
	h1, h2 := hue(p, c1), hue(q, c2)
	dh, hm := hueStep(h1, h2, c1 == 0 || c2 == 0)
	dL, dC := q.L-p.L, c2-c1
	dH := 2 * math.Sqrt(c1*c2) * math.Sin(dh/2*degree)
	lm, cm := (p.L+q.L)/2, (c1+c2)/2

	t := 1 - float64(0.17*math.Cos((hm-30)*degree)) + float64(0.24*math.Cos(2*hm*degree)) +
		float64(0.32*math.Cos((float64(3*hm)+6)*degree)) - float64(0.20*math.Cos((float64(4*hm)-63)*degree))
	ls := (lm - 50) * (lm - 50)
	sl := 1 + 0.015*ls/math.Sqrt(20+ls)
	sc := 1 + float64(0.045*cm)
	sh := 1 + float64(0.015*cm*t)
	turn := (hm - 275) / 25
	rt := -math.Sin(60*degree*FallOff(turn*turn)) * 2 * math.Sqrt(seventh(cm))
	l, c, h := dL/sl, dC/sc, dH/sh
	return math.Sqrt(max(0, float64(l*l)+float64(c*c)+float64(h*h)+float64(rt*c*h)))
}

// greyer stretches a so that near-greys are judged evenly.
func greyer(p, q Lab) (Lab, Lab) {
	g := 1.5 - float64(0.5*math.Sqrt(seventh((chroma(p)+chroma(q))/2)))
	p.A, q.A = p.A*g, q.A*g
	return p, q
}

func chroma(p Lab) float64 { return math.Sqrt(float64(p.A*p.A) + float64(p.B*p.B)) }

// seventh is c^7 / (c^7 + 25^7).
func seventh(c float64) float64 {
	c /= 25
	c7 := c * c * c * c * c * c * c
	return c7 / (c7 + 1)
}

// hue in degrees, 0..360; 0 for grey.
func hue(p Lab, c float64) float64 {
	if c == 0 {
		return 0
	}
	h := math.Atan2(p.B, p.A) / degree
	if h < 0 {
		h += 360
	}
	return h
}

// hueStep returns the step from h1 to h2 and the mean hue, in degrees.
func hueStep(h1, h2 float64, grey bool) (dh, mean float64) {
	const half = 180 + 1e-9
	if grey {
		return 0, h1 + h2
	}
	dh = h2 - h1
	switch {
	case math.Abs(dh) <= half:
		return dh, (h1 + h2) / 2
	case h1+h2 < 360:
		mean = (h1 + h2 + 360) / 2
	default:
		mean = (h1 + h2 - 360) / 2
	}
	if dh > 0 {
		return dh - 360, mean
	}
	return dh + 360, mean
}

// FallOff is exp(-t) for t >= 0, to about 1e-12, in plain arithmetic: the library's own exp
// is machine code on some machines and not on others.
func FallOff(t float64) float64 {
	if t > 700 {
		return 0
	}
	x := t / 1024
	sum, term := 1.0, 1.0
	for i := 1; i < 12; i++ {
		term *= -x / float64(i)
		sum += term
	}
	for range 10 {
		sum *= sum
	}
	return sum
}
