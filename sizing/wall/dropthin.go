package wall

import "badgewright/reduce/mask"

// dropThin hands what is narrower than a width along a line to what lies beside
// it: a hair to the area round it, the thin end of an area to the metal. Where
// the line is wide enough it stays, with a round end.
func (m *repair) dropThin() {
	most := max(m.limits.line, m.limits.edge, m.limits.area, m.width)
	p, ok := m.patch(3*most + 4)
	if !ok {
		return
	}
	line := p.in(m.line)
	class := p.mostAlong(line)
	if class == outside {
		return
	}
	limit := m.or(m.limits.line)
	if class != metal {
		limit = m.or(m.limits.area)
	}
	all := p.crosses(line, class, most+2, most+2)
	gone, kept := p.stencil(), p.stencil()
	for i := range all {
		width, ok := all[i].width()
		switch {
		case ok && width < limit:
			gone.disc(all[i].at, width/2+1)
		case all[i].held:
			kept.disc(all[i].at, limit/2)
		}
	}
	p.handOver(class, func(i int) bool { return gone.part[i] >= 128 && kept.part[i] < 128 })
}

// mostAlong returns the class, of what is part of the pin, that most of a path
// lies in; outside when none.
func (p *patch) mostAlong(line []place) uint8 {
	var n [256]int
	for _, q := range spreadOut(line) {
		n[p.classAt(q.x, q.y)]++
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

// handOver hands the pixels of a class that go to what lies nearest to them
// and is not of it. Thin metal that stands alone goes with its mixed edges.
func (p *patch) handOver(class uint8, goes func(i int) bool) {
	site := make([]bool, len(p.v.class))
	for i, c := range p.v.class {
		site[i] = c != class && !p.v.mixed(i%p.v.w, i/p.v.w)
	}
	f, some := mask.Nearest(site, p.v.w, p.v.h)
	if !some {
		return
	}
	for i := range site {
		if !goes(i) || p.share(p.whole(i), class) == 0 {
			continue
		}
		x, y := f.Site(i%p.v.w, i/p.v.w)
		p.hand(p.whole(i), class, p.v.class[y*p.v.w+x])
	}
}

// openUp takes away the line along a path, if most of it stands where an area
// beside it is narrower than its limit.
func (m *repair) openUp() {
	wide := 2 * max(m.limits.line, m.limits.edge)
	p, ok := m.patch(2*wide + 2*m.limits.area + 4)
	if !ok {
		return
	}
	all := p.crosses(p.in(m.line), metal, wide, m.limits.area+2)
	gone := p.stencil()
	tight, held := 0, 0
	for i := range all {
		width, ok := all[i].width()
		if !ok {
			continue
		}
		held++
		if m.tight(&all[i].side[0]) || m.tight(&all[i].side[1]) {
			tight++
		}
		gone.disc(all[i].at, width/2+1)
	}
	if 2*tight > held {
		p.handOver(metal, func(i int) bool { return gone.part[i] >= 128 })
	}
}

// tight says whether the area at a flank is narrower than its limit.
func (m *repair) tight(f *flank) bool {
	return f.class != outside && f.class != metal && f.room < m.limits.area
}
