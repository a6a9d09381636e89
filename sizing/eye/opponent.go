package eye

import "badgewright/reduce/colour"

// planes of the opponent space: light, red to green, blue to yellow.
const planes = 3

// opponentXYZ is the matrix from XYZ to the opponent space, by rows: Zhang and
// Wandell, SID 1996, as the authors' code of 1998 prints it.
var opponentXYZ = [9]float64{
	0.2787336, 0.7218031, -0.1065520,
	-0.4487736, 0.2898056, 0.0771569,
	0.0859513, -0.5899859, 0.5011089,
}

// bell is one Gaussian of a plane's filter: its weight, and its full width at
// half maximum in degrees.
type bell struct{ weight, fwhm float64 }

// filters of the planes: the numbers of the authors' code of 1998. The paper's
// spreads are up to 6 % narrower.
var filters = [planes][]bell{
	{{1.00327, 0.05}, {0.114416, 0.225}, {-0.117686, 7.0}},
	{{0.616725, 0.0685}, {0.383275, 0.826}},
	{{0.567885, 0.092}, {0.432115, 0.6451}},
}

// perFWHM is the standard deviation of a Gaussian over its full width at half
// maximum: 1 / sqrt(8 ln 2).
const perFWHM = 0.42466090014400953

// sigma is a bell's standard deviation in degrees.
func (b bell) sigma() float64 { return b.fwhm * perFWHM }

// opponent is a colour in the opponent space, Y = 1 for white.
type opponent [planes]float64

func times(m *[9]float64, x, y, z float64) (float64, float64, float64) {
	row := func(k int) float64 { return float64(m[k]*x) + float64(m[k+1]*y) + float64(m[k+2]*z) }
	return row(0), row(3), row(6)
}

func ofXYZ(c colour.XYZ) (o opponent) {
	o[0], o[1], o[2] = times(&opponentXYZ, c.X, c.Y, c.Z)
	return o
}

func (o opponent) xyz() (c colour.XYZ) {
	c.X, c.Y, c.Z = times(&xyzOpponent, o[0], o[1], o[2])
	return c
}

func ofRGB8(c colour.RGB8) opponent { return ofXYZ(c.Linear().XYZ()) }

// inverse of a 3 by 3 matrix, by cofactors.
func inverse(m *[9]float64) (r [9]float64) {
	minor := func(a, b, c, d int) float64 { return float64(m[a]*m[d]) - float64(m[b]*m[c]) }
	r = [9]float64{
		minor(4, 5, 7, 8), -minor(1, 2, 7, 8), minor(1, 2, 4, 5),
		-minor(3, 5, 6, 8), minor(0, 2, 6, 8), -minor(0, 2, 3, 5),
		minor(3, 4, 6, 7), -minor(0, 1, 6, 7), minor(0, 1, 3, 4),
	}
	d := float64(m[0]*r[0]) + float64(m[1]*r[3]) + float64(m[2]*r[6])
	for k := range r {
		r[k] /= d
	}
	return r
}

var xyzOpponent = inverse(&opponentXYZ)

// apart is the CIELAB difference (CIE 1976) of two opponent colours: the
// difference that S-CIELAB is made of.
func (o opponent) apart(p opponent) float64 { return distance(o.xyz().Lab(), p.xyz().Lab()) }
