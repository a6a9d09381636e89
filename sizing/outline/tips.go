package outline

import (
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// tip is where the middle line leads no further from the body of a part.
type tip struct {
	free bool // an end, and not the far side of a hole

	end    int32   // node
	radius float64 // px, of the largest disc at its end
	x, y   float64 // the outermost place, px
}

// findTips lists the nodes that no other hangs on; a part of one node has none.
func (m *Measured) findTips() {
	inner := make([]bool, len(m.g.nodes))
	for _, p := range m.tree.parent {
		if p >= 0 {
			inner[p] = true
		}
	}
	for i := range m.g.nodes {
		if inner[i] || m.tree.parent[i] < 0 {
			continue
		}
		n := &m.g.nodes[i]
		t := tip{end: int32(i), radius: n.width / 2, free: len(m.g.next[i]) == 1}
		dx, dy := m.away(int32(i))
		t.x, t.y = float64(n.x)+0.5+float64(dx*t.radius), float64(n.y)+0.5+float64(dy*t.radius)
		m.tips = append(m.tips, t)
	}
}

// aim is how many nodes back the direction of an end is taken over.
const aim = 6

// away returns the direction in which the middle line ends.
func (m *Measured) away(i int32) (dx, dy float64) {
	back := i
	for range aim {
		if p := m.tree.parent[back]; p >= 0 {
			back = p
		}
	}
	a, b := &m.g.nodes[back], &m.g.nodes[i]
	dx, dy = float64(b.x-a.x), float64(b.y-a.y)
	if l := length(dx, dy); l > 0 {
		return dx / l, dy / l
	}
	return 0, 0
}

// flankMM is how far behind a tip its sides are looked at, from flankFrom to
// flankTo of it, and flankPx the least of it on a raster.
const (
	flankMM   unit.MM = 1
	flankPx   float64 = 16
	flankFrom float64 = 0.5
	flankTo   float64 = 1.25
)

const (
	// sharpDegrees is the most that the sides of a tip enclose; what is blunter
	// is a corner, which pricks nobody. The angle is known to about
	// degreesError.
	sharpDegrees = 60
	degreesError = 3
	// taperDegrees is the least that they enclose: those of a bar enclose none.
	taperDegrees = 10
	// bluntEnd is how much faster the sides may part near the end than behind it, as
	// a slope: those of a bar's square end part fast and then no more.
	bluntEnd = 0.2
	// grainPx is how far a tip stands out of the disc behind it, at least: less is
	// the grain of the raster.
	grainPx = 3
	// tipError is how many times as far wrong a radius may be as a width, being
	// read off where the sides point to.
	tipError = 2
)

// bluntMM is the radius from which an end is no point, however slender.
const bluntMM unit.MM = 0.4

// shape returns what the sides of a tip enclose, in degrees, and the radius it
// is rounded to, in pixels. Along the middle line of a rounded wedge the
// distance r to its sides grows with the distance u from its end as
//
//	r = radius (1 - sin) + u sin
//
// sin being that of half the angle; the line is laid through what is measured
// from half of flankMM to a little beyond it. ok is false where the line is too
// short to say, the tip hardly stands out, or the end is a blunt one.
func (m *Measured) shape(t *tip, scale unit.PxPerMM) (degrees, radius float64, ok bool) {
	if m.standsOut(t) < grainPx {
		return 0, 0, false
	}
	far := max(flankMM.Px(scale), flankPx)
	var all, near, beyond line
	for at := t.end; at >= 0; at = m.tree.parent[at] {
		q := &m.g.nodes[at]
		u := length(float64(q.x)+0.5-t.x, float64(q.y)+0.5-t.y)
		if u > flankTo*far {
			break
		}
		if u >= flankFrom*far {
			all.add(u, q.width/2)
			if u <= (flankFrom+flankTo)/2*far {
				near.add(u, q.width/2)
			} else {
				beyond.add(u, q.width/2)
			}
		}
	}
	if near.slope()-beyond.slope() > bluntEnd {
		return 0, 0, false
	}
	return all.wedge()
}

// line is a straight line laid through places, by least squares.
type line struct{ n, u, r, uu, ur float64 }

func (l *line) add(u, r float64) {
	l.n++
	l.u += u
	l.r += r
	l.uu += float64(u * u)
	l.ur += float64(u * r)
}

// slope is by how much r grows with u; 0 where too few places say.
func (l *line) slope() float64 {
	d := float64(l.n*l.uu) - float64(l.u*l.u)
	if l.n < 4 || d <= 0 {
		return 0
	}
	return (float64(l.n*l.ur) - float64(l.u*l.r)) / d
}

// wedge reads the line as the middle line of a rounded wedge.
func (l *line) wedge() (degrees, radius float64, ok bool) {
	if l.n < 4 {
		return 0, 0, false
	}
	sin := min(0.999, max(0, l.slope()))
	return 2 * math.Asin(sin) * 180 / math.Pi, max(0, (l.r-float64(sin*l.u))/l.n/(1-sin)), true
}

// behind returns the middle line behind a tip, as far as it was looked at.
func (m *Measured) behind(t *tip, scale unit.PxPerMM) []float32 {
	far := flankTo * max(flankMM.Px(scale), flankPx)
	list := []int32{t.end}
	for at := m.tree.parent[t.end]; at >= 0; at = m.tree.parent[at] {
		if q := &m.g.nodes[at]; length(float64(q.x)+0.5-t.x, float64(q.y)+0.5-t.y) > far {
			break
		}
		list = append(list, at)
	}
	return m.path(list)
}

// standsOut returns how far a tip reaches out of the disc, in pixels, where its
// line meets that of one that reaches farther, or the root.
func (m *Measured) standsOut(t *tip) float64 {
	at := t.end
	for p := at; p >= 0; p = m.tree.parent[p] {
		at = p
		if other := &m.tips[m.farTip[p]]; other.end != t.end {
			break
		}
	}
	n := &m.g.nodes[at]
	return length(float64(n.x)+0.5-t.x, float64(n.y)+0.5-t.y) - n.width/2
}

// sharpTips finds the tips that prick: with a radius below the limit they fail,
// with a small one and slender sides they are noted.
func (m *Measured) sharpTips(at *At) []sizing.Finding {
	var found []sizing.Finding
	blunt := max(bluntMM, at.Limits.Tip)
	for i := range m.tips {
		t := &m.tips[i]
		if !t.free || at.Limits.Tip <= 0 || at.Scale.MM(t.radius) >= blunt {
			continue
		}
		degrees, px, ok := m.shape(t, at.Scale)
		radius := at.Scale.MM(px)
		if !ok || radius >= blunt || degrees > sharpDegrees+degreesError {
			continue
		}
		r := max(px, 1)
		f := sizing.Finding{
			Kind: sizing.SharpTip, Flat: m.flatAt(t.end), Other: sizing.Outside, Count: 1, X: t.x, Y: t.y,
			X0: t.x - r, Y0: t.y - r, X1: t.x + r, Y1: t.y + r,
			Path:     m.behind(t, at.Scale),
			Thinnest: radius, Typical: radius, Angle: math.Round(degrees),
			Error: at.Scale.MM(tipError * m.shaky), Limit: at.Limits.Tip,
		}
		m.judge(&f, at.Scale, tipError*m.shaky)
		if f.Verdict != sizing.Holds || degrees+degreesError < at.Limits.TipAngle && degrees >= taperDegrees {
			found = append(found, f)
		}
	}
	return found
}
