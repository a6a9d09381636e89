package caution

import "math"

// The small-parts cylinder of 16 CFR 1501.4(a), Figure 1, mm: 1.25 in across,
// 1 in deep on its shallow side and 2.25 in on its deep side, where the inch
// figures rule. Its bottom slopes evenly between the two.
const (
	cylinderAcross  = 31.75
	cylinderShallow = 25.4
	cylinderDeep    = 57.15

	cylinderRadius = cylinderAcross / 2
	bottomSlope    = (cylinderDeep - cylinderShallow) / cylinderAcross
)

// Fit says whether a part fits entirely into the small-parts cylinder.
type Fit string

// The answers. A part on the boundary must be treated as fitting: only a gauge
// can tell.
const (
	Fits     Fit = "fits"
	Boundary Fit = "boundary"
	NoFit    Fit = "no"
)

// Piece is a flat part: its convex outline in mm, in order, and its thickness.
// What stands out behind it is left out, so that it fits more easily than with
// its post: the answer errs towards caution.
type Piece struct {
	Hull      [][2]float64
	Thickness float64
	// Slack is how exactly the outline is known, mm.
	Slack float64
}

// searchError is how far, in mm of radius, the search for the best way to lay a
// piece into the cylinder may miss it (measured against a fine search in the tests).
const searchError = 0.1

// FitOf tries a piece in every orientation. A flat part that is convex fits as
// its outline does, and the cylinder is convex, so corners on both faces are
// all that counts.
func FitOf(p Piece) Fit {
	hull := thinned(p.Hull)
	if len(hull) == 0 {
		return Fits
	}
	whole := search{hull: spread(p.Hull), half: p.Thickness / 2}
	if whole.need(turning{}) <= cylinderRadius-p.Slack {
		return Fits // lying flat
	}
	slack := p.Slack + float64(lost*cylinderRadius)
	s := search{hull: spread(hull), half: p.Thickness / 2, enough: cylinderRadius - slack}
	// Any plane cuts the cylinder no broader than it is across.
	if s.longest() > longestInside+slack || narrow(hull) > cylinderAcross+slack {
		return NoFit
	}
	switch need := s.least(); {
	case need <= s.enough:
		return Fits
	case need <= cylinderRadius+slack+searchError:
		return Boundary
	default:
		return NoFit
	}
}

// longestInside is the longest straight line in the cylinder, from the rim of
// its shallow side to the foot of its deep one.
var longestInside = math.Sqrt(cylinderAcross*cylinderAcross + cylinderDeep*cylinderDeep)

// directions in which the corners of an outline are kept, and by how much of a
// radius a corner that is lost can have stood out.
const (
	directions = 60
	lost       = 0.00137 // 1 - cos(pi/60)
)

// thinned keeps the corners that stand out farthest in some direction.
func thinned(hull [][2]float64) [][2]float64 {
	if len(hull) <= directions {
		return hull
	}
	keep := make([]bool, len(hull))
	for k := range directions {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / directions)
		best, at := math.Inf(-1), 0
		for i, q := range hull {
			if d := float64(q[0]*cos) + float64(q[1]*sin); d > best+1e-12 {
				best, at = d, i
			}
		}
		keep[at] = true
	}
	var out [][2]float64
	for i, k := range keep {
		if k {
			out = append(out, hull[i])
		}
	}
	return out
}

// spread sets corners that lie side by side apart in the list: a circle is
// grown round them with far fewer steps so.
func spread(hull [][2]float64) [][2]float64 {
	n := len(hull)
	step := 1
	for _, s := range [...]int{29, 19, 11, 7, 5, 3} {
		if s < n && n%s != 0 {
			step = s
			break
		}
	}
	out := make([][2]float64, n)
	for i := range hull {
		out[i] = hull[i*step%n]
	}
	return out
}

// search looks for the orientation in which a piece needs the narrowest
// cylinder of that bottom and depth.
type search struct {
	hull   [][2]float64
	half   float64 // of the thickness
	enough float64 // a radius at which the search may stop
}

// turning is an orientation: the piece is turned in its own plane, tilted from
// lying flat, and turned about the cylinder's axis from the way the bottom runs.
type turning [3]float64

// Steps of the coarse search, and how it is refined.
const (
	spins, tilts, turns = 16, 9, 9
	finalists           = 8
	firstStep           = 0.25 // rad
	lastStep            = 0.002
)

// least returns the least radius found.
func (s *search) least() float64 {
	flat := s.need(turning{})
	if flat <= s.enough {
		return flat
	}
	var best [finalists]struct {
		turning
		need float64
	}
	for i := range best {
		best[i].need = math.Inf(1)
	}
	for i := range spins {
		for j := range tilts {
			for k := range turns {
				t := turning{2 * math.Pi * float64(i) / spins, math.Pi / 2 * float64(j) / (tilts - 1), math.Pi * float64(k) / (turns - 1)}
				n := s.need(t)
				if n <= s.enough {
					return n
				}
				for m := range best {
					if n < best[m].need {
						copy(best[m+1:], best[m:])
						best[m].turning, best[m].need = t, n
						break
					}
				}
			}
		}
	}
	least := flat
	for _, b := range best {
		if least = min(least, s.refine(b.turning, b.need)); least <= s.enough {
			break
		}
	}
	return least
}

// refine steps to better orientations, in ever smaller steps.
func (s *search) refine(t turning, need float64) float64 {
	for step := firstStep; step > lastStep && need > s.enough; {
		better := false
		for axis := range t {
			for _, by := range [...]float64{step, -step} {
				o := t
				o[axis] += by
				if n := s.need(o); n < need {
					t, need, better = o, n, true
				}
			}
		}
		if !better {
			step /= 2
		}
	}
	return need
}

// need is the radius of the narrowest cylinder, with that depth and bottom,
// that holds the piece so turned.
func (s *search) need(t turning) float64 {
	return narrowest(s.turned(t))
}

// turned returns the corners as seen from above, and how far towards the deep
// side the axis must lie behind them for the bottom to clear every corner when
// the highest is at the rim: the axis' x must be at most -lowest.
func (s *search) turned(t turning) (flat [][2]float64, lowest float64) {
	sinA, cosA := math.Sincos(t[0])
	sinB, cosB := math.Sincos(t[1])
	sinC, cosC := math.Sincos(t[2])
	flat = make([][2]float64, 0, 2*len(s.hull))
	top, heights := math.Inf(-1), make([]float64, 0, 2*len(s.hull))
	for _, q := range s.hull {
		u := float64(q[0]*cosA) - float64(q[1]*sinA)
		v := float64(q[0]*sinA) + float64(q[1]*cosA)
		for _, w := range [...]float64{s.half, -s.half} {
			y, z := float64(v*cosB)-float64(w*sinB), float64(v*sinB)+float64(w*cosB)
			flat = append(flat, [2]float64{float64(u*cosC) - float64(y*sinC), float64(u*sinC) + float64(y*cosC)})
			heights = append(heights, z)
			top = max(top, z)
		}
	}
	lowest = math.Inf(-1)
	for i, z := range heights {
		lowest = max(lowest, (top-z-cylinderShallow)/bottomSlope-flat[i][0]-cylinderRadius)
	}
	return flat, lowest
}

// longest is the longest straight line in the piece.
func (s *search) longest() float64 {
	var far float64
	for i, a := range s.hull {
		for _, b := range s.hull[i+1:] {
			far = max(far, distance(a[0], a[1], b))
		}
	}
	return far
}

// narrow is the least distance between two parallel lines that hold a convex
// outline between them: one of them lies along a side.
func narrow(hull [][2]float64) float64 {
	least := math.Inf(1)
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		dx, dy := b[0]-a[0], b[1]-a[1]
		long := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		if long == 0 {
			continue
		}
		var far float64
		for _, q := range hull {
			far = max(far, math.Abs(float64(dx*(q[1]-a[1]))-float64(dy*(q[0]-a[0])))/long)
		}
		least = min(least, far)
	}
	return least
}
