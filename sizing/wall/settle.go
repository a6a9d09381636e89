package wall

// settleSteps is how far along the metal, each way, one looks to say whether a
// place is outer edge: as far as a thin edge is long at least to matter.
const settleSteps = 6

// settle lets most of the places round a place say whether it is a line or the
// outer edge. Where an edge is hardly wider than a pixel, or an area behind it
// begins, single places come out as the other, and the edge in pieces too short
// to be found thin. Junctions part what is looked at.
func (g *graph) settle() {
	var unsure []int32
	seen := make([]bool, len(g.points))
	for i := range g.points {
		p := &g.points[i]
		for _, n := range g.of(int32(i)) {
			if p.class == metal && g.points[n].group != p.group {
				g.along(int32(i), func(k int32) {
					if !seen[k] {
						seen[k] = true
						unsure = append(unsure, k)
					}
				})
			}
		}
	}
	rim := make([]bool, len(unsure))
	for k, i := range unsure {
		n := 0
		g.along(i, func(k int32) {
			if g.points[k].group == rimGroup {
				n++
			} else {
				n--
			}
		})
		rim[k] = n > 0 || n == 0 && g.points[i].group == rimGroup
	}
	for k, i := range unsure {
		g.points[i].group = lineGroup
		if rim[k] {
			g.points[i].group = rimGroup
		}
	}
}

// along hands out a point and those up to settleSteps from it, as far as no
// junction.
func (g *graph) along(i int32, with func(k int32)) {
	with(i)
	if len(g.of(i)) > 2 {
		return
	}
	for _, next := range g.of(i) {
		before, here := i, next
		for step := 0; step < settleSteps && len(g.of(here)) <= 2 && here != i; step++ {
			with(here)
			on := int32(-1)
			for _, n := range g.of(here) {
				if n != before {
					on = n
				}
			}
			if on < 0 {
				break
			}
			before, here = here, on
		}
	}
}
