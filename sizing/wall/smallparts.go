package wall

import (
	"math"

	"badgewright/reduce/mask"
)

// tiny is one closed part of a separation, found from a place in it.
type tiny struct {
	p     *patch
	class uint8
	in    []bool // pixels of the box
	list  []int
	area  float64 // px2, to the true edge
}

// tinyAt finds the part at the repair's place, if it is smaller than an area,
// and cuts out the box round it that reaches some pixels further.
func (m *repair) tinyAt(least, reach float64) (*tiny, bool) {
	p, ok := m.b.patchRound(m.s, m.line[:1], math.Sqrt(least)*stretched+reach, m.label)
	if !ok {
		return nil, false
	}
	at := p.in(m.line[:1])[0]
	t := &tiny{p: p, class: p.classAt(at.x, at.y), in: make([]bool, len(p.v.class))}
	if t.class == outside && !p.enclosed(at) {
		return nil, false
	}
	t.flood(int(at.y)*p.v.w + int(at.x))
	if t.area = t.weigh(); t.area >= least || t.touchesRim() {
		return nil, false
	}
	return t, true
}

// stretched is how many times as long as the side of its square a small part
// is looked for: longer ones are narrow, and found as such.
const stretched = 8

// enclosed says whether a place of the box lies on the raster.
func (p *patch) enclosed(at place) bool {
	return at.x >= 0 && at.y >= 0 && at.x < float64(p.v.w) && at.y < float64(p.v.h)
}

func (t *tiny) flood(from int) {
	w, class := t.p.v.w, t.p.v.class
	t.list = append(t.list, from)
	t.in[from] = true
	for k := 0; k < len(t.list); k++ {
		i := t.list[k]
		for _, d := range round3[1:5] {
			x, y := i%w+d[0], i/w+d[1]
			if x < 0 || y < 0 || x >= w || y >= t.p.v.h {
				continue
			}
			if n := y*w + x; !t.in[n] && class[n] == t.class {
				t.in[n] = true
				t.list = append(t.list, n)
			}
		}
	}
}

// touchesRim says whether the part reaches the rim of the box, so that more of
// it may lie beyond.
func (t *tiny) touchesRim() bool {
	w, h := t.p.v.w, t.p.v.h
	for _, i := range t.list {
		if x, y := i%w, i/w; x == 0 || y == 0 || x == w-1 || y == h-1 {
			return true
		}
	}
	return false
}

// weigh sums what the part has of its pixels and of those beside it.
func (t *tiny) weigh() float64 {
	sum := 0
	for _, i := range t.withRim() {
		sum += int(t.p.share(t.p.whole(i), t.class))
	}
	return float64(sum) / 255
}

// withRim returns the pixels of the part and those beside it that hold some of
// its class.
func (t *tiny) withRim() []int {
	w := t.p.v.w
	all := append([]int(nil), t.list...)
	seen := map[int]bool{}
	for _, i := range t.list {
		for _, d := range round3[1:] {
			x, y := i%w+d[0], i/w+d[1]
			if x < 0 || y < 0 || x >= w || y >= t.p.v.h {
				continue
			}
			if n := y*w + x; !t.in[n] && !seen[n] && t.p.v.class[n] != t.class && t.p.share(t.p.whole(n), t.class) > 0 {
				seen[n] = true
				all = append(all, n)
			}
		}
	}
	return all
}

// bordersOn returns the class that the part has its longest border with; ties
// go to the lowest. What lies outside is no taker.
func (t *tiny) bordersOn() uint8 {
	var n [256]int
	w := t.p.v.w
	for _, i := range t.list {
		for _, d := range round3[1:5] {
			if c := t.p.v.at(i%w+d[0], i/w+d[1]); c != t.class {
				n[c]++
			}
		}
	}
	n[outside] = 0
	best := outside
	for c := range n {
		if n[c] > n[best] {
			best = uint8(c)
		}
	}
	return best
}

// leastArea is the area, in px2, that a part must have.
func (m *repair) leastArea() float64 {
	side := m.or(m.limits.areaSide)
	return side * side
}

// dropArea gives a part below the smallest area to what it borders on most.
func (m *repair) dropArea() {
	t, ok := m.tinyAt(m.leastArea(), 2)
	if !ok {
		return
	}
	if to := t.bordersOn(); to != outside {
		t.handTo(to)
	}
}

func (t *tiny) handTo(class uint8) {
	for _, i := range t.withRim() {
		if t.class == outside {
			t.p.lay(t.p.whole(i), class, 255, true)
			continue
		}
		t.p.hand(t.p.whole(i), t.class, class)
	}
}

// mergeArea gives a part below the smallest area, and the line round it, to the
// one colour that lies round that.
func (m *repair) mergeArea() {
	reach := mostRing * max(m.limits.line, m.limits.edge)
	t, ok := m.tinyAt(m.leastArea(), 2*reach+4)
	if !ok || t.class == outside {
		return
	}
	to, ring, ok := t.ring(reach)
	if !ok {
		return
	}
	for _, i := range ring {
		t.p.hand(t.p.whole(i), metal, to)
	}
	t.handTo(to)
}

// mostRing is how many line limits wide a line round a small area may be to go
// with it.
const mostRing = 2.5

// ring finds the metal between a part and the colour round it; ok is false
// unless that is one colour, all the way round.
func (t *tiny) ring(reach float64) (to uint8, ring []int, ok bool) {
	v := t.p.v
	near, _ := mask.Nearest(t.in, v.w, v.h)
	others := make([]bool, len(v.class))
	for i, c := range v.class {
		others[i] = c != metal && !t.in[i]
	}
	beyond, some := mask.Nearest(others, v.w, v.h)
	if !some {
		return 0, nil, false
	}
	var n [256]int
	for i, c := range v.class {
		if c != metal {
			continue
		}
		across := math.Sqrt(float64(near.D2[i])) + math.Sqrt(float64(beyond.D2[i])) - 1
		if across > reach {
			if near.D2[i] == 1 {
				return 0, nil, false // solid metal beside it
			}
			continue
		}
		x, y := beyond.Site(i%v.w, i/v.w)
		n[v.class[y*v.w+x]]++
		ring = append(ring, i)
	}
	for c := range n {
		if n[c] > n[to] {
			to = uint8(c)
		}
	}
	return to, ring, n[to] == len(ring) && n[to] > 0 && v.enamel[to]
}
