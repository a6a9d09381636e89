package trace

// unprint gives printed pixels to the enamel they are joined to, ring by ring,
// else to metal: print lies on top of what is struck, and has no walls. Print
// that stands alone is printed on bare metal.
func (g *grid) unprint() {
	g.spreadOver(metal)
	g.spreadOver(void)
	for p, c := range g.class {
		if c < metal && g.printed[c] {
			g.class[p] = metal
		}
	}
}

// spreadOver lets classes below limit grow into the print beside them.
func (g *grid) spreadOver(limit uint8) {
	listed := make(map[int32]bool)
	var ring, next []int32
	for p, c := range g.class {
		if c < metal && g.printed[c] && g.solidBeside(p, limit) < limit {
			ring = append(ring, int32(p))
			listed[int32(p)] = true
		}
	}
	var taken []uint8
	for len(ring) > 0 {
		taken, next = taken[:0], next[:0]
		for _, p := range ring {
			taken = append(taken, g.solidBeside(int(p), limit))
		}
		for k, p := range ring {
			g.class[p] = taken[k]
		}
		for _, p := range ring {
			for d := range 4 {
				n := p + int32(g.step(d))
				if c := g.class[n]; c < metal && g.printed[c] && !listed[n] {
					listed[n] = true
					next = append(next, n)
				}
			}
		}
		ring, next = next, ring
	}
}

// solidBeside returns the lowest class beside a pixel that is no print and
// below limit, or limit.
func (g *grid) solidBeside(p int, limit uint8) uint8 {
	best := limit
	for d := range 4 {
		if c := g.class[p+g.step(d)]; c < best && (c >= metal || !g.printed[c]) {
			best = c
		}
	}
	return best
}
