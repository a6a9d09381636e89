package mask

// Near is a pixel and the site nearest to it.
type Near struct{ X, Y, SX, SY int16 }

// OthersWithin is Others for the pixels that lie at most reach pixels from one
// with another label, in reading order.
func OthersWithin(label []uint8, w, h int, skip *[256]bool, reach int) []Near {
	var all []Near
	c := runsOf(label, w, h)
	k := newColumns(c, skip, true, reach)
	e := newEnvelope(k)
	for y := range h {
		k.down(int32(y))
		runs := c.row(y)
		e.others(y, runs, skip)
		for i := range runs {
			all = appendNear(all, y, e.of(i), int(runs[i].X1), reach)
		}
	}
	return all
}

// SitesWithin finds the pixels that lie at most reach pixels from one that is
// a site, in reading order, sites among them.
func SitesWithin(site []bool, w, h, reach int) []Near {
	label, some := labelled(site)
	if !some {
		return nil
	}
	var all []Near
	c := runsOf(label, w, h)
	k := newColumns(c, skipSites, false, reach)
	e := newEnvelope(k)
	for y := range h {
		k.down(int32(y))
		e.sites(y, c.row(y))
		all = appendNear(all, y, e.of(0), w, reach)
	}
	return all
}

// appendNear adds the pixels of row y, up to column x1, within reach of what
// they have nearest.
func appendNear(near []Near, y int, all []stretch, x1, reach int) []Near {
	for i := range all {
		s, end := &all[i], x1
		if i+1 < len(all) {
			end = int(all[i+1].start)
		}
		d := wholeRoot(reach*reach - int(s.g2)) // no column is asked further than reach
		for x := max(int(s.start), int(s.a)-d); x < min(end, int(s.b)+d+1); x++ {
			near = append(near, Near{int16(x), int16(y), int16(s.site(x)), int16(s.v)})
		}
	}
	return near
}
