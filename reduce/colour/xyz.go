package colour

import (
	"math"

	"github.com/lucasb-eyer/go-colorful"
)

// XYZ is CIE 1931 tristimulus, Y = 1 for white.
type XYZ struct{ X, Y, Z float64 }

// Lab is CIELAB (CIE 15): L 0..100, a and b about -128..128.
type Lab struct{ L, A, B float64 }

var (
	// d65 is the white of sRGB: x = 0.3127, y = 0.3290 (IEC 61966-2-1).
	d65 = XYZ{0.3127 / 0.3290, 1, (1 - 0.3127 - 0.3290) / 0.3290}
	// d50 is the white of print: x = 0.3457, y = 0.3585 (CIE 15).
	d50 = XYZ{0.3457 / 0.3585, 1, (1 - 0.3457 - 0.3585) / 0.3585}
)

// XYZ returns tristimulus values under D65, by the sRGB primaries of
// IEC 61966-2-1 at full precision (as CSS Color 4 prints them).
func (l Linear) XYZ() XYZ {
	return XYZ{
		dot(0.41239079926595934, 0.357584339383878, 0.1804807884018343, l.R, l.G, l.B),
		dot(0.21263900587151027, 0.715168678767756, 0.07219231536073371, l.R, l.G, l.B),
		dot(0.01933081871559182, 0.11919477979462598, 0.9505321522496607, l.R, l.G, l.B),
	}
}

// adapted carries D65 tristimulus values to D50 (Bradford, as CSS Color 4 prints it).
func (c XYZ) adapted() XYZ {
	return XYZ{
		dot(1.0479297925449969, 0.022946870601609652, -0.05019226628920524, c.X, c.Y, c.Z),
		dot(0.02962780877005599, 0.9904344267538799, -0.017073799063418826, c.X, c.Y, c.Z),
		dot(-0.009243040646204504, 0.015055191490298152, 0.7518742814281371, c.X, c.Y, c.Z),
	}
}

// dot sums three products without letting a machine fuse them.
func dot(a, b, c, x, y, z float64) float64 {
	return float64(a*x) + float64(b*y) + float64(c*z)
}

// Lab returns CIELAB under D65.
func (c RGB8) Lab() Lab { return c.Linear().XYZ().lab(d65) }

// LabD50 returns CIELAB under D50, adapted by Bradford: what print tables use.
func (c RGB8) LabD50() Lab { return c.Linear().XYZ().adapted().lab(d50) }

func (c XYZ) lab(w XYZ) Lab {
	x, y, z := labRoot(c.X/w.X), labRoot(c.Y/w.Y), labRoot(c.Z/w.Z)
	return Lab{float64(116*y) - 16, 500 * (x - y), 200 * (y - z)}
}

func labRoot(t float64) float64 {
	const e, k = 216.0 / 24389, 24389.0 / 27 // CIE 15, in exact form
	if t > e {
		return math.Cbrt(t)
	}
	return (float64(k*t) + 16) / 116
}

// FromLab returns the 8-bit colour nearest to CIELAB values under D65, and
// whether it lies inside sRGB; outside, channels are clipped. The definition
// is go-colorful's, right within its stated white; it is for set-up, not for pixels.
func FromLab(l Lab) (RGB8, bool) {
	c := colorful.LabWhiteRef(l.L/100, l.A/100, l.B/100, [3]float64{d65.X, d65.Y, d65.Z})
	inside := c.IsValid()
	r, g, b := c.Clamped().RGB255()
	return RGB8{r, g, b}, inside
}

// Lab returns CIELAB under D65.
func (c XYZ) Lab() Lab { return c.lab(d65) }
