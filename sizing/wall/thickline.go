package wall

import "slices"

// thickenLine brings the metal along a line to a width. It grows into the
// larger of the two areas beside it, and never so far that an area becomes
// narrower than its own limit; what the larger cannot give, the other does.
// Along the outline it grows inwards; a line with nothing on either side grows
// evenly.
func (m *repair) thickenLine() {
	most := max(m.or(m.limits.line), m.or(m.limits.edge))
	beyond := most + m.limits.area + 2
	p, ok := m.patch(2*most + 2*beyond)
	if !ok {
		return
	}
	all := p.crosses(p.in(m.line), metal, most+2, beyond)
	grows := make([]growth, len(all))
	over := false
	for i := range all {
		grows[i] = m.thickening(p, &all[i])
		over = over || grows[i].some && all[i].side[0].class == outside && all[i].side[1].class == outside
	}
	carryOn(grows, most+m.limits.area)
	evenOut(all, grows, most)
	all, grows = p.toEnds(all, grows, metal, most+2)
	k := p.stencil()
	k.ribbon(all, grows, func(i int) (span, bool) { return grows[i].span(&all[i]), grows[i].some })
	p.layAll(k, metal, over)
}

// growth is how far a thing grows at a place, to either side, and how wide it
// then is.
type growth struct {
	by    [2]float64
	width float64
	some  bool
	short float64 // how much it lacks
	end   bool    // here what grows ends
}

// span is what a thing takes up across a place once it has grown there.
func (g *growth) span(c *cross) span {
	return span{-c.side[0].edge - g.by[0], c.side[1].edge + g.by[1]}
}

func (m *repair) thickening(p *patch, c *cross) growth {
	width, ok := c.width()
	if !ok {
		return growth{}
	}
	want := m.or(m.limits.line)
	out := [2]bool{c.side[0].class == outside, c.side[1].class == outside}
	if out[0] != out[1] {
		want = m.or(m.limits.edge)
	}
	if width >= want {
		return growth{}
	}
	var give [2]float64
	for k := range give {
		f := &c.side[k]
		switch {
		case out[0] && out[1]:
			give[k] = want
		case !out[k]:
			give[k] = max(0, f.room-m.limits.area)
		}
	}
	need := want + slack - width
	by := m.split(p, c, need, give)
	return growth{by: by, width: width + by[0] + by[1], some: by[0]+by[1] > 0, short: need - by[0] - by[1]}
}

// carryOn takes what a line grows by on into the corners that it makes with
// others, where there seems to be no room: what is lost there is the tip of a
// corner, as long as there is room again a little further on.
func carryOn(grows []growth, far float64) {
	reach := int(far/probeStep) + 1
	was := slices.Clone(grows)
	for i := range grows {
		g := &grows[i]
		if g.short <= slack {
			continue
		}
		for d := 1; d <= reach; d++ {
			from := -1
			for _, k := range [2]int{i - d, i + d} {
				if k >= 0 && k < len(was) && was[k].some && was[k].short <= 0 {
					from = k
					break
				}
			}
			if from < 0 {
				continue
			}
			need := g.by[0] + g.by[1] + g.short
			share := need / (was[from].by[0] + was[from].by[1])
			g.by = [2]float64{share * was[from].by[0], share * was[from].by[1]}
			g.width, g.some, g.short = g.width+g.short, true, 0
			break
		}
	}
}

// split shares out what is needed between the sides by what each can give: the
// larger area first, both alike where they are one.
func (m *repair) split(p *patch, c *cross, need float64, give [2]float64) (by [2]float64) {
	a, b := m.areaBeyond(p, c, 0), m.areaBeyond(p, c, 1)
	if c.side[0].part == c.side[1].part {
		return evenly(need, give)
	}
	first := 0
	if b > a || a == b && give[1] > give[0] {
		first = 1
	}
	for _, k := range [2]int{first, 1 - first} {
		more := min(need, give[k]-by[k])
		by[k] += more
		need -= more
	}
	return by
}

// evenOut takes the kinks out of how far a thing moves from place to place
// along a path, over about its own width: its width stays.
func evenOut(all []cross, grows []growth, width float64) {
	reach := int(width/probeStep) + 1
	moved := make([]float64, len(all))
	for i := range all {
		if !grows[i].some {
			continue
		}
		sum, n := 0.0, 0.0
		for k := max(0, i-reach); k <= min(len(all)-1, i+reach); k++ {
			if grows[k].some && sameHeading(&all[k], &all[i]) {
				sum += grows[k].by[1] - grows[k].by[0]
				n++
			}
		}
		moved[i] = sum / n
	}
	for i := range grows {
		g := &grows[i]
		total := g.by[0] + g.by[1]
		shift := min(max(moved[i], -total), total)
		g.by = [2]float64{(total - shift) / 2, (total + shift) / 2}
	}
}
