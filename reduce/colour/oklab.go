package colour

import "math"

// OKLab is Ottosson's OKLab (2020, matrix for linear sRGB of 2021): L 0..1,
// a and b about -0.4..0.4.
type OKLab struct{ L, A, B float64 }

// OKLab converts linear-light sRGB.
func (c Linear) OKLab() OKLab {
	l := math.Cbrt(dot(0.4122214708, 0.5363325363, 0.0514459929, c.R, c.G, c.B))
	m := math.Cbrt(dot(0.2119034982, 0.6806995451, 0.1073969566, c.R, c.G, c.B))
	s := math.Cbrt(dot(0.0883024619, 0.2817188376, 0.6299787005, c.R, c.G, c.B))
	return OKLab{
		dot(0.2104542553, 0.7936177850, -0.0040720468, l, m, s),
		dot(1.9779984951, -2.4285922050, 0.4505937099, l, m, s),
		dot(0.0259040371, 0.7827717662, -0.8086757660, l, m, s),
	}
}

// OKLab converts an 8-bit colour.
func (c RGB8) OKLab() OKLab { return c.Linear().OKLab() }

// Linear converts back; the result may lie outside 0..1.
func (c OKLab) Linear() Linear {
	l := cube(c.L + float64(0.3963377774*c.A) + float64(0.2158037573*c.B))
	m := cube(c.L - float64(0.1055613458*c.A) - float64(0.0638541728*c.B))
	s := cube(c.L - float64(0.0894841775*c.A) - float64(1.2914855480*c.B))
	return Linear{
		dot(4.0767416621, -3.3077115913, 0.2309699292, l, m, s),
		dot(-1.2684380046, 2.6097574011, -0.3413193965, l, m, s),
		dot(-0.0041960863, -0.7034186147, 1.7076147010, l, m, s),
	}
}

func cube(v float64) float64 { return v * v * v }

// RGB8 returns the nearest 8-bit colour, clipped channel by channel.
func (c OKLab) RGB8() RGB8 { return c.Linear().RGB8() }

// Chroma is the distance from grey.
func (c OKLab) Chroma() float64 { return math.Sqrt(float64(c.A*c.A) + float64(c.B*c.B)) }

// hueWeight is how much a step in a or b counts against one in L: OKLab's own
// scale makes two vivid colours too alike and two dark greys too different. Two
// is the round figure of fits to colour-difference data (from memory).
const hueWeight = 2

// Difference2 is the squared difference to d as the eye weighs it.
func (c OKLab) Difference2(d OKLab) float64 {
	l, a, b := c.L-d.L, hueWeight*(c.A-d.A), hueWeight*(c.B-d.B)
	return float64(l*l) + float64(a*a) + float64(b*b)
}

// Distance2 is the squared Euclidean distance to d.
func (c OKLab) Distance2(d OKLab) float64 {
	l, a, b := c.L-d.L, c.A-d.A, c.B-d.B
	return float64(l*l) + float64(a*a) + float64(b*b)
}
