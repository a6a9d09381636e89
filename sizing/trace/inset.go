package trace

// insetReach is how many pixels on either side of a border its true place is
// looked for: a soft edge of a photograph is no wider than twice that.
const insetReach = 3

// inset returns how much of the pixels from (x, y) on, along way d, that are of
// class own belongs to the class other, which lies just behind: so far does the
// true edge lie inside them, px. A straight edge that faces the way, or turns
// from it by at most 45 degrees, is found exactly. shared is how many pixels
// the two classes share there.
func (g *grid) inset(x, y, d int, own, other uint8) (sum float64, shared int) {
	class, part := g.mix(x, y)
	if part == 0 || class != other {
		return 0, 0
	}
	n := g.runFrom(x, y, d, own)
	for k := 0; k < insetReach && 2*k < n; k++ {
		px, py := x+k*stepX[d], y+k*stepY[d]
		class, part := g.mix(px, py)
		if part == 0 || class != other {
			break
		}
		if 2*k+1 == n {
			part = float64(part * g.nearPart(x, y, d, n, own))
		}
		sum += part
		shared++
	}
	return sum, shared
}

// runFrom returns how many pixels from (x, y) on are of a class, at most twice
// the reach.
func (g *grid) runFrom(x, y, d int, own uint8) int {
	n := 0
	p, step := (y+1)*g.stride+x+1, g.step(d)
	for n < 2*insetReach && p >= 0 && p < len(g.class) && g.class[p] == own {
		n++
		p += step
	}
	return n
}

// nearPart says how much of what the middle pixel of a thin run lacks is
// missing on the near side: most of it where the run reaches over the far side.
func (g *grid) nearPart(x, y, d, n int, own uint8) float64 {
	near := g.shareOf(x-stepX[d], y-stepY[d], own)
	far := g.shareOf(x+n*stepX[d], y+n*stepY[d], own)
	if near+far == 0 {
		return 0.5
	}
	return far / (near + far)
}

// shareOf returns how much of a pixel of another class belongs to a class.
func (g *grid) shareOf(x, y int, class uint8) float64 {
	if other, part := g.mix(x, y); other == class {
		return part
	}
	return 0
}
