package proof

import "math"

// probes are places spread over the pin and just round it, by which a laying is
// judged quickly.
type probes struct {
	at     []Point
	class  []uint8 // outside for those round the pin
	colour []rgb
}

// About how many probes are taken within the pin.
const mostProbes = 2600

// aroundShare is how far out probes round the pin lie, as shares of its size.
var aroundShare = [2]float64{0.012, 0.035}

func (a *Asked) findProbes() *probes {
	s := a.Badge.Sep
	p := &probes{}
	o := a.Badge.Outline
	every := max(1, int(math.Sqrt((o[2]-o[0])*(o[3]-o[1])/mostProbes)))
	for y := int(o[1]) + every/2; y < s.H && float64(y) < o[3]; y += every {
		for x := int(o[0]) + every/2; x < s.W && float64(x) < o[2]; x += every {
			i := y*s.W + x
			if c := a.class[i]; c != outside && a.deep[i] > 2 {
				p.add(Point{float64(x) + 0.5, float64(y) + 0.5}, c, a.askedColour(c))
			}
		}
	}
	size := max(o[2]-o[0], o[3]-o[1])
	l := &a.loops[a.large]
	step := max(1, len(l.at)/300)
	for i := 0; i < len(l.at); i += step {
		for _, share := range aroundShare {
			q := Point{l.at[i].X + float64(l.out[i].X*share*size), l.at[i].Y + float64(l.out[i].Y*share*size)}
			if a.classAt(q.X, q.Y) == outside {
				p.add(q, outside, rgb{})
			}
		}
	}
	return p
}

func (p *probes) add(at Point, class uint8, c rgb) {
	p.at, p.class, p.colour = append(p.at, at), append(p.class, class), append(p.colour, c)
}

// off says how badly a laying on the ground's copy suits: 0 perfectly. What lies
// outside should be ground, what lies within should not, and enamel should have
// about its colour.
func (g *ground) off(p *probes, w *Warp) float64 {
	var shape, tint, known, all float64
	for i, q := range p.at {
		u, v := w.At(q.X, q.Y)
		x, y := int(math.Floor(u)), int(math.Floor(v))
		inside := p.class[i] != outside
		all++
		if x < 0 || y < 0 || x >= g.small.W || y >= g.small.H {
			if inside {
				shape += 2
			}
			continue
		}
		if j := y*g.small.W + x; inside != (g.fore[j] == 1) {
			shape++
		}
		if inside && p.class[i] != metal {
			c := g.small.at(u, v)
			known++
			tint += min(1, c.far2(&p.colour[i])/(unlike*unlike))
		}
	}
	return 2*shape/max(all, 1) + tint/max(known, 1)
}

// guess is a laying to start from, on the ground's copy.
type guess struct {
	pin, pic   Point
	size, turn float64
	mirror     bool
	off        float64
	piece      int
}

func (q *guess) warp() Warp { return similar(q.pin, q.pic, q.size, q.turn, q.mirror) }

// polish betters a guess by small steps of shift, turn and size, each halved once
// none helps.
func (g *ground) polish(p *probes, q guess, span float64) guess {
	try := func(n guess) bool {
		w := n.warp()
		if n.off = g.off(p, &w); n.off < q.off {
			q = n
			return true
		}
		return false
	}
	w := q.warp()
	q.off = g.off(p, &w)
	shift, turn, size := 0.02*span*q.size, 1.6*math.Pi/180, 0.02
	for range polishRounds {
		for again, n := true, 0; again && n < polishSteps; n++ {
			again = false
			for _, sign := range [2]float64{1, -1} {
				for k := range 4 {
					m := q
					switch k {
					case 0:
						m.pic.X += sign * shift
					case 1:
						m.pic.Y += sign * shift
					case 2:
						m.turn += sign * turn
					default:
						m.size *= 1 + sign*size
					}
					again = try(m) || again
				}
			}
		}
		shift, turn, size = shift/2, turn/2, size/2
	}
	return q
}

const (
	polishRounds = 4
	polishSteps  = 6
)
