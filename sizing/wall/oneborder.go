package wall

import (
	"math"

	"badgewright/reduce/mask"
)

// buildBorder builds the metal that is missing along one border: all of that
// between the two areas which meet nearest to the middle of the line.
func (m *repair) buildBorder() {
	v := newView(m.s)
	var eight [256]bool
	eight[metal] = true
	parts := mask.Connect(v.class, v.w, v.h, &eight)
	half := m.or(m.limits.line) / 2
	a, b, ok := m.meeting(v, parts, middleOfPlaces(m.line))
	if !ok {
		return
	}
	site := v.seams()
	for i := range site {
		site[i] = site[i] && v.beside(parts, i, a, b)
	}
	m.b.lay(m.s, func(reach float64) []inBand {
		return v.alongSites(site, int(math.Ceil(reach+edgeSlack)))
	}, m.label, half)
}

// meeting returns the two parts of enamel that meet nearest to a place, within
// a few line widths of it.
func (m *repair) meeting(v *view, parts *mask.Components, at place) (a, b int32, ok bool) {
	reach := 4*m.or(m.limits.line) + 2
	best := math.Inf(1)
	x0, y0, x1, y1 := boxRound([]place{at}, reach, v.w-1, v.h-1)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			for _, d := range [2][2]int{{1, 0}, {0, 1}} {
				c, n := v.at(x, y), v.at(x+d[0], y+d[1])
				if c == n || !v.enamel[c] || !v.enamel[n] {
					continue
				}
				dx, dy := float64(x)+0.5-at.x, float64(y)+0.5-at.y
				if far := float64(dx*dx) + float64(dy*dy); far < best {
					best, a, b, ok = far, parts.At(x, y), parts.At(x+d[0], y+d[1]), true
				}
			}
		}
	}
	return a, b, ok
}

// beside says whether a pixel belongs to one of two parts and lies beside the
// other.
func (v *view) beside(parts *mask.Components, i int, a, b int32) bool {
	x, y := i%v.w, i/v.w
	own := parts.At(x, y)
	if own != a && own != b {
		return false
	}
	for _, d := range round3[1:5] {
		nx, ny := x+d[0], y+d[1]
		if nx < 0 || ny < 0 || nx >= v.w || ny >= v.h {
			continue
		}
		if n := parts.At(nx, ny); n != own && (n == a || n == b) {
			return true
		}
	}
	return false
}

// middleOfPlaces returns the place half way along a line.
func middleOfPlaces(line []place) place {
	path := make([]float32, 0, 2*len(line))
	for _, q := range line {
		path = append(path, float32(q.x), float32(q.y))
	}
	x, y := middleOf(path)
	return place{x, y}
}
