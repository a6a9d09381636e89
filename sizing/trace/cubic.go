package trace

import "math"

// cubic is a cubic Bezier curve by its four points.
type cubic [4]vec

// at returns the place at parameter u, 0..1.
func (c *cubic) at(u float64) vec {
	v := 1 - u
	vv, uu := float64(v*v), float64(u*u)
	return c[0].mul(float64(vv*v)).along(c[1], 3*float64(vv*u)).along(c[2], 3*float64(v*uu)).along(c[3], float64(uu*u))
}

// speed returns the first derivative at u.
func (c *cubic) speed(u float64) vec {
	v := 1 - u
	a, b, d := c[1].sub(c[0]), c[2].sub(c[1]), c[3].sub(c[2])
	return a.mul(3*float64(v*v)).along(b, 6*float64(u*v)).along(d, 3*float64(u*u))
}

// change returns the second derivative at u.
func (c *cubic) change(u float64) vec {
	a := c[2].sub(c[1]).sub(c[1]).add(c[0])
	b := c[3].sub(c[2]).sub(c[2]).add(c[1])
	return a.mul(6*(1-u)).along(b, 6*u)
}

// fitter lays one cubic through places by least squares, after Schneider 1990.
type fitter struct {
	u []float64 // parameter of each place
}

const (
	// sweeps is how often parameters are moved to the nearest point of the curve.
	sweeps = 4
	// hopeless is how many times the tolerance a first fit may be off before
	// moving its parameters is not tried.
	hopeless = 5
)

// fit lays a cubic from the first to the last of p that leaves along d0 and
// arrives along d1; ok is true when every place is within its own tolerance.
func (f *fitter) fit(p []vec, off []float64, d0, d1 vec) (c cubic, ok bool) {
	f.byChord(p)
	for k := 0; ; k++ {
		c = f.solve(p, d0, d1)
		far := f.errors(&c, p, off)
		if far <= 1 {
			return c, true
		}
		if k == sweeps || far > hopeless {
			return c, false
		}
		f.nearer(&c, p)
	}
}

// byChord gives every place a parameter by its way along the places.
func (f *fitter) byChord(p []vec) {
	f.u = append(f.u[:0], 0)
	s := 0.0
	for i := 1; i < len(p); i++ {
		s += p[i-1].to(p[i])
		f.u = append(f.u, s)
	}
	if s > 0 {
		for i := range f.u {
			f.u[i] /= s
		}
	}
}

// solve finds how far the two inner points lie from the ends.
func (f *fitter) solve(p []vec, d0, d1 vec) cubic {
	a, b := p[0], p[len(p)-1]
	var c00, c01, c11, x0, x1 float64
	for i, u := range f.u {
		v := 1 - u
		b1, b2 := 3*float64(float64(v*v)*u), 3*float64(float64(u*u)*v)
		b0, b3 := float64(float64(v*v)*v), float64(float64(u*u)*u)
		a0, a1 := d0.mul(b1), d1.mul(-b2)
		rest := p[i].sub(a.mul(b0 + b1)).sub(b.mul(b2 + b3))
		c00, c01, c11 = c00+a0.dot(a0), c01+a0.dot(a1), c11+a1.dot(a1)
		x0, x1 = x0+a0.dot(rest), x1+a1.dot(rest)
	}
	det := float64(c00*c11) - float64(c01*c01)
	chord := a.to(b)
	l, r := chord/3, chord/3
	if det > 1e-9*float64(c00*c11) {
		l0 := (float64(x0*c11) - float64(x1*c01)) / det
		r0 := (float64(c00*x1) - float64(c01*x0)) / det
		if l0 > leastReach*chord && r0 > leastReach*chord && l0 < mostReach*chord && r0 < mostReach*chord {
			l, r = l0, r0
		}
	}
	return cubic{a, a.along(d0, l), b.along(d1, -r), b}
}

// The inner points of a cubic lie this far from its ends, as parts of the
// chord: nearer or further they make a kink or a loop.
const (
	leastReach = 0.02
	mostReach  = 1.5
)

// usual is the part of their tolerance that places may be off by on the whole
// (root of the mean square).
const usual = 0.55

// errors returns the greatest distance of a place as a part of its tolerance, or
// that of all on the whole when it is worse.
func (f *fitter) errors(c *cubic, p []vec, off []float64) (far float64) {
	sum := 0.0
	for i := 1; i+1 < len(p); i++ {
		d := c.at(f.u[i]).sub(p[i])
		// Along the curve a place may lie where it likes.
		t := c.speed(f.u[i])
		e := d.len()
		if l := t.len(); l > 0 {
			e = math.Abs(d.cross(t)) / l
			if along := math.Abs(d.dot(t)) / l; along > alongFree {
				e = d.len()
			}
		}
		far = max(far, e/off[i])
		sum += float64(e*e) / float64(off[i]*off[i])
	}
	return max(far, math.Sqrt(sum/float64(len(p)))/usual)
}

// alongFree is how far along a curve, px, a place may lie from where its
// parameter puts it before that counts as a distance.
const alongFree = 0.5

// nearer moves each parameter towards the nearest point of the curve by one
// step after Newton and Raphson.
func (f *fitter) nearer(c *cubic, p []vec) {
	for i := range f.u {
		u := f.u[i]
		d, q1, q2 := c.at(u).sub(p[i]), c.speed(u), c.change(u)
		if den := q1.dot(q1) + d.dot(q2); den > 1e-12 {
			f.u[i] = min(1, max(0, u-d.dot(q1)/den))
		}
	}
}

// furthest returns the greatest distance of a place from the curve, whose
// parameters are nearly those of the nearest points; what lies past its ends
// lies along what comes before and after.
func (f *fitter) furthest(c *cubic, p []vec) (worst float64) {
	for range 2 {
		f.nearer(c, p)
	}
	for i, u := range f.u {
		if u > 0 && u < 1 {
			worst = max(worst, c.at(u).to(p[i]))
		}
	}
	return worst
}
