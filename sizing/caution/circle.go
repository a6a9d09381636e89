package caution

import "math"

// narrowest is the radius of the smallest circle about the points whose middle
// has an x of at most -lowest.
func narrowest(points [][2]float64, lowest float64) float64 {
	if c := enclosing(points); c.x <= -lowest {
		return c.r
	}
	return alongLine(points, -lowest)
}

// enclosing returns the smallest circle about points (Welzl's circles, grown
// point by point in the order given).
func enclosing(p [][2]float64) circle {
	if len(p) == 0 {
		return circle{}
	}
	c := circle{p[0][0], p[0][1], 0}
	for i := range p {
		if c.holds(p[i]) {
			continue
		}
		c = circle{p[i][0], p[i][1], 0}
		for j := range i {
			if c.holds(p[j]) {
				continue
			}
			c = across(p[i], p[j])
			for k := range j {
				if !c.holds(p[k]) {
					c = through(p[i], p[j], p[k])
				}
			}
		}
	}
	return c
}

type circle struct{ x, y, r float64 }

// holds allows for rounding.
func (c circle) holds(p [2]float64) bool {
	return distance(c.x, c.y, p) <= c.r*(1+1e-12)+1e-12
}

func distance(x, y float64, p [2]float64) float64 {
	dx, dy := x-p[0], y-p[1]
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

func across(a, b [2]float64) circle {
	x, y := (a[0]+b[0])/2, (a[1]+b[1])/2
	return circle{x, y, distance(x, y, a)}
}

// through is the circle through three points, or across the two farthest apart
// when they lie in a line.
func through(a, b, c [2]float64) circle {
	bx, by, cx, cy := b[0]-a[0], b[1]-a[1], c[0]-a[0], c[1]-a[1]
	d := 2 * (float64(bx*cy) - float64(by*cx))
	if math.Abs(d) < 1e-12 {
		widest := across(a, b)
		for _, o := range [...]circle{across(a, c), across(b, c)} {
			if o.r > widest.r {
				widest = o
			}
		}
		return widest
	}
	b2, c2 := float64(bx*bx)+float64(by*by), float64(cx*cx)+float64(cy*cy)
	x, y := (float64(cy*b2)-float64(by*c2))/d, (float64(bx*c2)-float64(cx*b2))/d
	return circle{a[0] + x, a[1] + y, math.Sqrt(float64(x*x) + float64(y*y))}
}

// alongLine is the radius of the smallest circle about points whose middle lies
// on the upright line at x: the farthest point's distance is least where it
// stops falling, found by thirds.
func alongLine(p [][2]float64, x float64) float64 {
	far := func(y float64) (d float64) {
		for _, q := range p {
			d = max(d, distance(x, y, q))
		}
		return d
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, q := range p {
		low, high = min(low, q[1]), max(high, q[1])
	}
	for high-low > 1e-6 {
		a, b := low+(high-low)/3, high-(high-low)/3
		if far(a) <= far(b) {
			high = b
		} else {
			low = a
		}
	}
	return far((low + high) / 2)
}
