package proof

import "math"

// A silhouette is compared about its middle, on rings that grow evenly: rays
// each way round, rings out to reach times the radius of a disc as large.
const (
	rays  = 180
	rings = 18
	reach = 2.2
)

// polar is a shape sampled about its middle: what is there, and its colour.
type polar struct {
	in     [rings][rays]bool
	colour [rings][rays]rgb
	solid  [rings][rays]bool // enamel, whose colour is known before the metal's is
	mid    Point
	radius float64 // of a disc as large, px
}

// sample reads a shape by what lies at a place.
func sample(mid Point, area float64, at func(x, y float64) (in, known bool, c rgb)) *polar {
	p := &polar{mid: mid, radius: math.Sqrt(area / math.Pi)}
	for a := range rays {
		s, c := math.Sincos(2 * math.Pi * float64(a) / rays)
		for k := range rings {
			r := p.radius * reach * (float64(k) + 0.5) / rings
			p.in[k][a], p.solid[k][a], p.colour[k][a] = at(mid.X+float64(r*c), mid.Y+float64(r*s))
		}
	}
	return p
}

// pinPolar samples the largest part of the pin, its holes filled.
func (a *Asked) pinPolar() *polar {
	in, area, mid := a.largest()
	return sample(mid, area, func(x, y float64) (bool, bool, rgb) {
		i, ok := a.index(x, y)
		if !ok || !in[i] {
			return false, false, rgb{}
		}
		c := a.class[i]
		if c == outside || c == metal {
			return true, false, rgb{}
		}
		return true, true, a.askedColour(c)
	})
}

// largest fills the longest outer border of the pin.
func (a *Asked) largest() (in []bool, area float64, mid Point) {
	s := a.Badge.Sep
	in = make([]bool, s.W*s.H)
	l := &a.loops[a.large]
	cross := make([][]float64, s.H)
	n := len(l.at)
	for i, p := range l.at {
		q := l.at[(i+1)%n]
		if p.Y > q.Y {
			p, q = q, p
		}
		for y := int(math.Ceil(p.Y - 0.5)); float64(y)+0.5 < q.Y; y++ {
			if y >= 0 && y < s.H {
				cross[y] = append(cross[y], p.X+(float64(y)+0.5-p.Y)*(q.X-p.X)/(q.Y-p.Y))
			}
		}
	}
	var sx, sy float64
	for y, xs := range cross {
		for x := range spans(xs, s.W) {
			in[y*s.W+x] = true
			area++
			sx += float64(x) + 0.5
			sy += float64(y) + 0.5
		}
	}
	area = max(area, 1)
	return in, area, Point{sx / area, sy / area}
}

func (g *ground) piecePolar(p *piece) *polar {
	w, h := g.small.W, g.small.H
	return sample(p.mid, float64(p.area), func(x, y float64) (bool, bool, rgb) {
		if x < 0 || y < 0 || x >= float64(w) || y >= float64(h) || p.in[int(y)*w+int(x)] == 0 {
			return false, false, rgb{}
		}
		return true, true, split(g.small.Pix[int(y)*w+int(x)])
	})
}

// unlike is the colour difference, in encoded channels, from which a place counts
// as wholly different: makers' colours differ from the artist's by less.
const unlike = 90.0

// cost compares the pin, turned by so many rays and mirrored or not, with a piece:
// 0 alike, 1 nothing alike. Colour is half of it.
func (p *polar) cost(q *polar, turn int, mirror bool) float64 {
	var off, all, tint, known float64
	for k := range rings {
		r := float64(k) + 0.5
		for a := range rays {
			b := a
			if mirror {
				b = (rays + rays/2 - a) % rays
			}
			b = (b + turn) % rays
			pin, pic := p.in[k][a], q.in[k][b]
			if pin || pic {
				all += r
			}
			if pin != pic {
				off += r
			}
			if pin && pic && p.solid[k][a] {
				known += r
				tint += r * min(1, p.colour[k][a].far2(&q.colour[k][b])/(unlike*unlike))
			}
		}
	}
	return 2*off/max(all, 1) + tint/max(known, 1)
}
