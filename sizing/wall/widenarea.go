package wall

// widenArea brings the enamel along a line to a width. It carves the metal
// beside it first, as long as that stays above its limit; then the line is
// moved into the area behind it, as long as that does.
func (m *repair) widenArea() {
	want := m.or(m.limits.area)
	wall := max(m.limits.line, m.limits.edge)
	beyond := wall + m.limits.area + want + 2
	p, ok := m.patch(2*want + 3*beyond)
	if !ok {
		return
	}
	line := p.in(m.line)
	class, ok := p.enamelAlong(line)
	if !ok {
		return
	}
	all := p.crosses(line, class, want+2, beyond)
	grows := make([]growth, len(all))
	for i := range all {
		grows[i] = m.widening(p, &all[i], want)
	}
	evenOut(all, grows, want)
	all, grows = p.toEnds(all, grows, class, want+2)
	lines, area := p.stencil(), p.stencil()
	for n := range 2 {
		lines.ribbon(all, grows, func(i int) (span, bool) { return m.pushed(&all[i], &grows[i], n) })
	}
	for i := range all {
		m.roundEnd(lines, &all[i], &grows[i])
	}
	area.ribbon(all, grows, func(i int) (span, bool) { return grows[i].span(&all[i]), grows[i].some })
	for i, part := range area.part {
		lines.part[i] = min(lines.part[i], 255-part)
	}
	p.layAll(lines, metal, false)
	p.layAll(area, class, false)
}

// enamelAlong returns the enamel that most of a path lies in.
func (p *patch) enamelAlong(line []place) (class uint8, ok bool) {
	var n [256]int
	for _, q := range spreadOut(line) {
		if c := p.classAt(q.x, q.y); p.v.enamel[c] {
			n[c]++
		}
	}
	for c := range n {
		if n[c] > n[class] {
			class = uint8(c)
		}
	}
	return class, n[class] > 0
}

func (m *repair) widening(p *patch, c *cross, want float64) growth {
	width, ok := c.width()
	if !ok || width >= want {
		return growth{}
	}
	var carve, give [2]float64
	for k := range give {
		carve[k], give[k] = m.yields(&c.side[k])
	}
	need := want + slack - width
	by := evenly(min(need, carve[0]+carve[1]), carve)
	more := evenly(need-by[0]-by[1], [2]float64{give[0] - by[0], give[1] - by[1]})
	by[0], by[1] = by[0]+more[0], by[1]+more[1]
	return growth{by: by, width: width + by[0] + by[1], some: by[0]+by[1] > 0}
}

// evenly shares out what is needed between two sides, half each as far as they
// can give it.
func evenly(need float64, give [2]float64) (by [2]float64) {
	half := min(need/2, give[0], give[1])
	by = [2]float64{half, half}
	for k := range by {
		more := max(0, min(need-by[0]-by[1], give[k]-by[k]))
		by[k] += more
	}
	return by
}

// least returns how wide the metal beyond a flank must stay.
func (m *repair) least(f *flank) float64 {
	if f.next == outside {
		return m.limits.edge
	}
	return m.limits.line
}

// yields returns how far an area may grow to a side: into metal alone, and in
// all.
func (m *repair) yields(f *flank) (carve, all float64) {
	switch f.class {
	case outside:
		return 0, 0
	case metal:
		spare := f.room - m.least(f)
		carve = max(0, spare)
		if f.next == outside || f.after <= m.limits.area {
			return carve, carve
		}
		return carve, max(0, spare+f.after-m.limits.area)
	}
	all = max(0, f.room-m.limits.area) // no line between: the border moves
	return 0, all
}

// pushed is where the line to a side of a widened area is laid anew, if the
// area has taken from what it needs.
func (m *repair) pushed(c *cross, g *growth, n int) (s span, some bool) {
	f := &c.side[n]
	if carve, _ := m.yields(f); !g.some || f.class != metal || g.by[n] <= carve {
		return span{}, false
	}
	edge := f.edge + g.by[n]
	if n == 0 {
		return span{-edge - m.least(f) - slack, -edge}, true
	}
	return span{edge, edge + m.least(f) + slack}, true
}

// roundEnd lays such a line on round the corner where the area ends.
func (m *repair) roundEnd(k *stencil, c *cross, g *growth) {
	for n, sign := range [2]float64{-1, 1} {
		if _, some := m.pushed(c, g, n); some && g.end {
			f := &c.side[n]
			k.disc(c.over(sign*(f.edge+g.by[n])), m.least(f)+slack)
		}
	}
}
