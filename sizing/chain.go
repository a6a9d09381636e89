package sizing

import (
	"math"

	"badgewright/sizing/unit"
)

// The usual chain (common practice, no published source; sizes differ from
// maker to maker).
const (
	UsualRing  unit.MM = 4   // outer diameter of a jump ring
	wireMM     unit.MM = 0.7 // wire of rings and links
	linkMM     unit.MM = 2.5 // inside length of a link, by which one more lengthens a chain
	linkWideMM unit.MM = 2.2 // outer width of a link
)

// mostLinks is the longest chain that is proposed: past it parts were not drawn
// where they are to hang (this tool's choice).
const mostLinks = 12

// RingUsed is the outer diameter of a join's rings.
func (j *Join) RingUsed() unit.MM {
	if j.Ring <= 0 {
		return UsualRing
	}
	return j.Ring
}

// inside is the inner diameter of its rings.
func (j *Join) inside() unit.MM { return max(0, j.RingUsed()-2*wireMM) }

// Drop is how far the lower hole hangs below the upper, from edge to edge:
// rings and links pull tight, so that each reaches across the inside of its
// wire.
func (j *Join) Drop() unit.MM {
	if j.Links <= 0 {
		return j.inside()
	}
	return 2*j.inside() + unit.MM(j.Links)*linkMM
}

// Reach sets the links so that the drop comes nearest to a gap between the edges
// of the two holes, as they were drawn: one ring alone where that will do, the
// shorter of two that come as near.
func (j *Join) Reach(gap unit.MM) {
	off := func(links int) unit.MM {
		k := *j
		k.Links = links
		return max(k.Drop()-gap, gap-k.Drop())
	}
	for j.Links = 0; j.Links < mostLinks && off(j.Links+1) < off(j.Links); {
		j.Links++
	}
}

// TooSmall says whether the rings do not go round the metal of their eyes: that
// of both where one ring joins them, else that of one and a link.
func (j *Join) TooSmall(rim unit.MM) bool {
	with := wireMM
	if j.Links <= 0 {
		with = rim
	}
	return j.inside() < rim+with
}

// Loop is one ring or link of a chain as it lies on the drawing, in working px.
type Loop struct {
	X float64 `json:"x"` // its middle
	Y float64 `json:"y"`
	// Long is its outer length along Angle (radians, from x to y), Wide its outer
	// width as it is seen, turned to the eye or not, Wire the thickness.
	Long  float64 `json:"long"`
	Wide  float64 `json:"wide"`
	Wire  float64 `json:"wire"`
	Angle float64 `json:"angle"`
	Ring  bool    `json:"ring,omitempty"` // a ring, not a link
}

// Hole is a round hole, in working px.
type Hole struct{ X, Y, Across float64 }

// taut is by what share of its length a chain may miss the gap it was drawn over
// and still be drawn straight across: a link more or less would miss by more.
const taut = 0.25

// Chain lays the rings and links of a join between two holes as they were drawn:
// straight where its length suits, in a bow where it is longer, and where it is
// shorter as far as it goes.
func (j *Join) Chain(upper, lower Hole, scale unit.PxPerMM) []Loop {
	dx, dy, gap := between(upper, lower)
	from := [2]float64{upper.X + dx*upper.Across/2, upper.Y + dy*upper.Across/2}
	inner := j.inners(scale)
	total := 0.0
	for _, l := range inner {
		total += l
	}
	if total <= 0 {
		return nil
	}
	at := func(far float64) [2]float64 { return [2]float64{from[0] + dx*far, from[1] + dy*far} }
	switch {
	case gap > 0 && math.Abs(total-gap) <= taut*total:
		stretch := gap / total
		return j.loops(inner, scale, func(far float64) [2]float64 { return at(far * stretch) })
	case total > gap:
		b := newBow(max(0, gap), total)
		sx, sy := dy, -dx // to the side that is lower, or to the right
		if sy < 0 || sy == 0 && sx < 0 {
			sx, sy = -sx, -sy
		}
		return j.loops(inner, scale, func(far float64) [2]float64 {
			on, off := b.at(far)
			p := at(on)
			return [2]float64{p[0] + sx*off, p[1] + sy*off}
		})
	}
	return j.loops(inner, scale, at)
}

// between is the direction from one hole to another and the way between their
// edges, below 0 where they overlap; holes on one place hang straight down.
func between(a, b Hole) (dx, dy, gap float64) {
	dx, dy = b.X-a.X, b.Y-a.Y
	far := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	gap = far - (a.Across+b.Across)/2
	if far == 0 {
		return 0, 1, gap
	}
	return dx / far, dy / far, gap
}

// inners is the inside length of each ring and link in order, px.
func (j *Join) inners(scale unit.PxPerMM) []float64 {
	ring := j.inside().Px(scale)
	if j.Links <= 0 {
		return []float64{ring}
	}
	all := []float64{ring}
	for range j.Links {
		all = append(all, linkMM.Px(scale))
	}
	return append(all, ring)
}

// Rings are seen almost from the side, as they go through a flat piece; links
// lie by turns flat and on edge.
const (
	ringSeen = 0.62
	edgeSeen = 0.42
)

// loops lays rings and links end to end along a line, at tells where a length
// of it lies.
func (j *Join) loops(inner []float64, scale unit.PxPerMM, at func(far float64) [2]float64) []Loop {
	wire := wireMM.Px(scale)
	all := make([]Loop, 0, len(inner))
	far := 0.0
	for k, l := range inner {
		p, q := at(far), at(far+l)
		far += l
		dx, dy := q[0]-p[0], q[1]-p[1]
		o := Loop{
			X: (p[0] + q[0]) / 2, Y: (p[1] + q[1]) / 2, Angle: math.Atan2(dy, dx), Wire: wire,
			Long: math.Sqrt(float64(dx*dx)+float64(dy*dy)) + 2*wire, Ring: k == 0 || k == len(inner)-1,
		}
		switch {
		case o.Ring:
			o.Wide = j.RingUsed().Px(scale) * ringSeen
		case k%2 == 1:
			o.Wide = linkWideMM.Px(scale)
		default:
			o.Wide = linkWideMM.Px(scale) * edgeSeen
		}
		o.Wide = max(o.Wide, 1.5*wire)
		all = append(all, o)
	}
	return all
}

// bow is an arc of a circle over a chord, in the lengths of both.
type bow struct{ half, radius, chord float64 }

// newBow finds the arc: half its angle a has sin(a)/a equal to chord over arc.
func newBow(chord, arc float64) bow {
	lo, hi := 0.0, math.Pi
	for range 40 {
		if a := (lo + hi) / 2; math.Sin(a)*arc > chord*a {
			lo = a
		} else {
			hi = a
		}
	}
	half := max(1e-6, (lo+hi)/2)
	return bow{half: half, radius: arc / (2 * half), chord: chord}
}

// at is where a length of the arc lies: along the chord, and off it.
func (b *bow) at(far float64) (on, off float64) {
	a := far/b.radius - b.half
	return b.chord/2 + float64(b.radius*math.Sin(a)), float64(b.radius * (math.Cos(a) - math.Cos(b.half)))
}
