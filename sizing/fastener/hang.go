package fastener

import (
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Hang is how a pin hangs on cloth, by the model that hang states. A figure is
// a range over what is not known of cloth and clutch, and over the mass.
type Hang struct {
	Posts int `json:"posts"`
	// Above is how far the middle of the posts stands above the balance point,
	// Beside how far that lies to their right as seen from the FRONT.
	Above  unit.MM `json:"above"`
	Beside unit.MM `json:"beside"`
	// Rest is how far from upright it comes to rest without friction, degrees,
	// on one post; 0 on more.
	Rest float64 `json:"rest"`
	// Holds is how far to either side of that friction can hold it, degrees; 180
	// is any way up.
	Holds sizing.Range `json:"holds"`
	// Askew is how far it turns when it is pinned upright and let go, degrees.
	Askew sizing.Range `json:"askew"`
	// Droop is how far its top leans forward, degrees; 90 has flopped over.
	Droop sizing.Range `json:"droop"`
	// Pull is m g L, the most that gravity can turn it with, and Grip what
	// friction can hold, N mm; 0 on more than one post.
	Pull sizing.Range `json:"pull"`
	Grip sizing.Range `json:"grip"`
	// Load is the share of the weight on each of two posts that stand side by
	// side; below 0 where one is lifted. Empty where the lever does not tell.
	Load []float64 `json:"load"`
	// Straight: pinned upright it stays so. Flat: it does not lean to be seen.
	// Knocked: knocked askew it stays askew.
	Straight sizing.Answer `json:"straight"`
	Flat     sizing.Answer `json:"flat"`
	Knocked  sizing.Answer `json:"knocked"`
}

// standardGravity, m/s2 (exact: General Conference on Weights and Measures, 1901).
const standardGravity = 9.80665

// What is seen as wrong, degrees (this tool's choice).
const (
	askewSeen = 5.0
	droopSeen = 15.0
)

const (
	anyWayUp  = 180.0
	floppedAt = 90.0
	newtons   = standardGravity / 1000 // of a gram
	faces     = 2                      // of the cloth, on which clutch and back rub
	discArm   = 2.0 / 3                // of the radius, at which friction of a disc acts
)

// body is what hangs: its mass in g, where it balances, and how thick it is.
type body struct {
	mass      sizing.Range
	x, y      float64 // centre of mass, mm, y down
	thickness float64 // mm
}

// hang works the model for posts at places (mm, y down) under clutches of a
// diameter, for a rigid plate on an upright cloth.
//
// Turning, on one post. The plate is a pendulum about its post: turned by an
// angle d from where it comes to rest, gravity turns it back with
//
//	torque = m g L sin d        (L: from the post to the centre of mass)
//
// Clutch and back press the cloth between them with the force N over a disc of
// the clutch's radius R. A disc that turns under even pressure resists with
// 2/3 mu N R (Meriam & Kraige, Engineering Mechanics: Statics, on disc
// friction; from memory), here on both faces of the cloth:
//
//	grip = 2 * 2/3 mu N R
//
// It stays where it is put while m g L sin d <= grip.
//
// Leaning forward. The weight acts before the cloth, a lever
//
//	a = thickness/2 + cloth/2
//
// out from its middle, and b below the posts. A lean f brings it nearer to
// below them, and the cloth resists with its stiffness K:
//
//	m g (a cos f - b sin f) = K f
//
// Each clutch is a disc on an even bed of springs: K0 about its own middle and,
// by the parallel-axis theorem, 4 K0 (y/R)^2 more when it stands y above or
// below the middle of the posts.
//
// With two posts the plate cannot turn; how they share the weight follows from
// the lever about each.
func hang(b body, posts []point, clutch float64, h sizing.Hold) Hang {
	mid := middleOf(posts)
	out := Hang{Posts: len(posts), Above: place2(b.y - mid.y), Beside: place2(b.x - mid.x), Load: []float64{}}
	out.turning(b, mid, clutch, h)
	bed := bedOf(posts, clutch)
	lean := func(mass, stiff, cloth float64) float64 {
		return droop(mass*newtons, (b.thickness+cloth)/2, b.y-mid.y, stiff*bed)
	}
	out.Droop = sizing.Range{
		Low:  lean(b.mass.Low, h.Stiffness.High, h.Cloth.Low),
		High: lean(b.mass.High, h.Stiffness.Low, h.Cloth.High),
	}
	if len(posts) == 2 {
		out.Load = lever(posts[0], posts[1], b.x)
	}
	out.Straight, out.Flat = out.Askew.UpTo(askewSeen), out.Droop.UpTo(droopSeen)
	out.Knocked = not(out.Holds.UpTo(askewSeen))
	if len(posts) > 1 {
		out.Knocked = sizing.No
	}
	return out
}

func not(a sizing.Answer) sizing.Answer {
	switch a {
	case sizing.Yes:
		return sizing.No
	case sizing.No:
		return sizing.Yes
	}
	return a
}

// turning fills in what turns it on one post and what friction holds.
func (out *Hang) turning(b body, post point, clutch float64, h sizing.Hold) {
	if out.Posts > 1 {
		out.Holds = sizing.Range{Low: anyWayUp, High: anyWayUp}
		return
	}
	arm := length(b.x-post.x, b.y-post.y)
	rest := 0.0
	if arm > 0 {
		rest = degrees(math.Atan2(math.Abs(b.x-post.x), b.y-post.y))
	}
	out.Rest = rest
	out.Pull = sizing.Range{Low: b.mass.Low * newtons * arm, High: b.mass.High * newtons * arm}
	out.Grip = sizing.Range{Low: grip(h.Friction.Low, h.Press.Low, clutch/2), High: grip(h.Friction.High, h.Press.High, clutch/2)}
	out.Holds = sizing.Range{Low: held(out.Pull.High, out.Grip.Low), High: held(out.Pull.Low, out.Grip.High)}
	out.Askew = sizing.Range{Low: turned(rest, out.Pull.Low, out.Grip.High), High: turned(rest, out.Pull.High, out.Grip.Low)}
}

// grip is the torque in N mm with which friction of a coefficient, under a
// force in N over a disc of a radius in mm, holds on both faces of the cloth.
func grip(friction, press, radius float64) float64 {
	return faces * discArm * friction * press * radius
}

// held is how far from rest friction can hold a pendulum, degrees.
func held(pull, grip float64) float64 {
	if grip >= pull {
		return anyWayUp
	}
	return degrees(math.Asin(grip / pull))
}

// turned is how far a pendulum that is let go at an angle from rest turns
// before friction stops it, degrees.
func turned(from, pull, grip float64) float64 {
	if pull*math.Sin(from*math.Pi/180) <= grip {
		return 0
	}
	return from - held(pull, grip)
}

// lever shares a weight at x between two posts; nil when they stand more above
// each other than side by side.
func lever(p, q point, x float64) []float64 {
	d := q.x - p.x
	if math.Abs(d) <= math.Abs(q.y-p.y) || d == 0 {
		return []float64{}
	}
	right := (x - p.x) / d
	return []float64{1 - right, right}
}

// bedOf is how many times as stiff against a lean the clutches are as one.
func bedOf(posts []point, clutch float64) float64 {
	mid := middleOf(posts)
	var sum float64
	for _, q := range posts {
		y := (q.y - mid.y) / (clutch / 2)
		sum += 1 + float64(4*float64(y*y))
	}
	return sum
}

// droop is how far a weight in N, a mm before the cloth and b below the posts,
// tips a plate against a stiffness in N mm a radian: degrees, the least angle
// of balance, found by halving; 90 when there is none before.
func droop(weight, a, b, stiff float64) float64 {
	tips := func(f float64) float64 {
		sin, cos := math.Sincos(f)
		return float64(weight*(float64(a*cos)-float64(b*sin))) - float64(stiff*f)
	}
	const steps, most = 90, math.Pi / 2
	for i := range steps {
		low, high := float64(i)*most/steps, float64(i+1)*most/steps
		if tips(high) > 0 {
			continue
		}
		for range 40 {
			if mid := (low + high) / 2; tips(mid) > 0 {
				low = mid
			} else {
				high = mid
			}
		}
		return degrees(high)
	}
	return floppedAt
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

func middleOf(posts []point) point {
	var m point
	for _, q := range posts {
		m.x += q.x
		m.y += q.y
	}
	n := float64(max(1, len(posts)))
	return point{m.x / n, m.y / n}
}
