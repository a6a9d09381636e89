package eye

import (
	"math"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// Light is a picture in linear sRGB light, Block px of what it was made from to
// a pixel each way. What lies round it is Ground.
type Light struct {
	W, H    int
	R, G, B []float32
	Ground  colour.RGB8
	Block   int
}

// NewLight returns a dark picture.
func NewLight(w, h, block int, ground colour.RGB8) *Light {
	n := w * h
	return &Light{W: w, H: h, R: make([]float32, n), G: make([]float32, n), B: make([]float32, n), Ground: ground, Block: block}
}

// Resolved is how many samples per degree hold all that S-CIELAB leaves of a
// picture: at half that many cycles per degree its sharpest filter passes less
// than a thousandth.
const Resolved = 60

// BlockFor is how many px, of a pitch in mm, may be averaged before an eye would
// miss any of them; at least 1.
func BlockFor(pitch unit.MM, v Viewing) int {
	return max(1, int(v.SamplesPerDegree(pitch)/Resolved))
}

// field is a picture in the opponent space, less its ground.
type field struct {
	plane  [planes]plane
	ground opponent
}

// toOpponent is the matrix from linear sRGB to the opponent space, by rows.
var toOpponent = func() (m [9]float64) {
	for k, l := range [3]colour.Linear{{R: 1}, {G: 1}, {B: 1}} {
		o := ofXYZ(l.XYZ())
		m[k], m[3+k], m[6+k] = o[0], o[1], o[2]
	}
	return m
}()

var fromOpponent = inverse(&toOpponent)

func narrowed(m *[9]float64) (n [9]float32) {
	for k, v := range m {
		n[k] = float32(v)
	}
	return n
}

// fieldOf takes a picture apart.
func fieldOf(l *Light) *field {
	f := &field{ground: ofRGB8(l.Ground)}
	m := narrowed(&toOpponent)
	for k := range f.plane {
		f.plane[k] = newPlane(l.W, l.H)
		a, b, c, less := m[3*k], m[3*k+1], m[3*k+2], float32(f.ground[k])
		v := f.plane[k].v
		for i, r := range l.R {
			v[i] = mul(a, r) + mul(b, l.G[i]) + mul(c, l.B[i]) - less
		}
	}
	return f
}

// filtered is what an eye leaves of a picture at samples per degree; lost is the
// variance, px2, of what has blurred it or will blur it besides.
func (f *field) filtered(perDegree, lost float64) *field {
	out := &field{ground: f.ground}
	for k, bells := range filters {
		p := f.plane[k]
		sum := newPlane(p.w, p.h)
		for _, b := range bells {
			s := b.sigma() * perDegree
			blurred, w := p.gaussian(float64(s*s)-lost), float32(b.weight)
			for i, v := range blurred.v {
				sum.v[i] += mul(v, w)
			}
		}
		out.plane[k] = sum
	}
	return out
}

// Filtered is a picture ready to be compared as an eye sees it.
type Filtered struct {
	W, H int
	lab  []lab32
}

type lab32 struct{ l, a, b float32 }

// Filter blurs a picture as an eye does whose sight is v; pitch is the size of
// what a pixel of l was made from, before blocks were averaged.
func Filter(l *Light, pitch unit.MM, v Viewing) *Filtered {
	block := float64(l.Block)
	perDegree := v.SamplesPerDegree(pitch) / block
	f := fieldOf(l).filtered(perDegree, (1-1/(block*block))/12)
	out := &Filtered{W: l.W, H: l.H, lab: make([]lab32, l.W*l.H)}
	m := narrowed(&xyzOpponent)
	white := ofLinear(1, 1, 1)
	for r := range 3 {
		for c := range 3 {
			m[3*r+c] /= white[r]
		}
	}
	g := [planes]float32{float32(f.ground[0]), float32(f.ground[1]), float32(f.ground[2])}
	for i := range out.lab {
		a, b, c := f.plane[0].v[i]+g[0], f.plane[1].v[i]+g[1], f.plane[2].v[i]+g[2]
		x := root(mul(m[0], a) + mul(m[1], b) + mul(m[2], c))
		y := root(mul(m[3], a) + mul(m[4], b) + mul(m[5], c))
		z := root(mul(m[6], a) + mul(m[7], b) + mul(m[8], c))
		out.lab[i] = lab32{mul(116, y), mul(500, x-y), mul(200, y-z)}
	}
	return out
}

func ofLinear(r, g, b float64) [3]float32 {
	c := colour.Linear{R: r, G: g, B: b}.XYZ()
	return [3]float32{float32(c.X), float32(c.Y), float32(c.Z)}
}

// roots is the root function of CIELAB (CIE 15) in steps of 1 / rootSteps, up to
// rootTop; between them it is drawn straight, right to 0.001 in L.
var roots = func() (t [rootTop*rootSteps + 2]float32) {
	for i := range t {
		x := float64(i) / rootSteps
		if x > 216.0/24389 {
			t[i] = float32(math.Cbrt(x))
		} else {
			t[i] = float32((24389.0/27*x + 16) / 116)
		}
	}
	return t
}()

const (
	rootSteps = 4096
	rootTop   = 2
)

// root of a tristimulus value as a share of white. Below black, where the
// filters may lead, the straight part of the function goes on.
func root(v float32) float32 {
	s := mul(v, rootSteps)
	if s < 0 {
		return roots[0] + mul(s, roots[1]-roots[0])
	}
	if s >= rootTop*rootSteps {
		return roots[rootTop*rootSteps]
	}
	i := int(s)
	return roots[i] + mul(s-float32(i), roots[i+1]-roots[i])
}

// Apart is the S-CIELAB difference of two pictures of one size, pixel by pixel.
func (f *Filtered) Apart(g *Filtered) []float32 {
	out := make([]float32, len(f.lab))
	for i, p := range f.lab {
		q := g.lab[i]
		l, a, b := p.l-q.l, p.a-q.a, p.b-q.b
		if l == 0 && a == 0 && b == 0 {
			continue
		}
		out[i] = float32(math.Sqrt(float64(mul(l, l) + mul(a, a) + mul(b, b))))
	}
	return out
}
