package wall

import (
	"math"

	"badgewright/reduce/mask"
)

// growArea brings a small part to an area: evenly all round, and with it the
// line round it, which keeps its least width. Small metal grows without one.
func (m *repair) growArea() {
	least := m.leastArea()
	wall := max(m.limits.line, m.limits.edge) + slack
	t, ok := m.tinyAt(least, 2*math.Sqrt(least)+2*wall+4)
	if !ok || t.class == outside {
		return
	}
	near, _ := mask.Nearest(t.in, t.p.v.w, t.p.v.h)
	by := t.growsBy(near, least)
	if t.class != metal && t.meets(near, by+m.limits.edge) {
		return
	}
	area, line := t.p.stencil(), t.p.stencil()
	for i := range t.in {
		area.part[i] = within(near, i, by)
		line.part[i] = within(near, i, by+wall) - area.part[i]
	}
	if t.class != metal {
		t.p.layAll(line, metal, false)
	}
	t.p.layAll(area, t.class, false)
}

// growStep is how finely it is found how far a part must grow, in pixels.
const growStep = 0.125

// growsBy returns how far all round, in pixels, a part must grow to be a little
// more than an area.
func (t *tiny) growsBy(near *mask.Field, least float64) float64 {
	want := least + slack*4*math.Sqrt(least) // all round its square
	for by := 0.0; by < math.Sqrt(least); by += growStep {
		sum := 0.0
		for i := range t.in {
			sum += float64(within(near, i, by)) / 255
		}
		if sum >= want {
			return by
		}
	}
	return 0
}

// within is how much of a pixel, 0..255, lies no further from a part than by.
func within(near *mask.Field, i int, by float64) uint8 {
	d := math.Sqrt(float64(near.D2[i])) - 0.5 // from the side of the part's outermost pixel
	return uint8(255 * min(1, max(0, by+0.5-d)))
}

// meets says whether what lies outside comes nearer to the part than reach.
func (t *tiny) meets(near *mask.Field, reach float64) bool {
	for i, c := range t.p.v.class {
		if c == outside && math.Sqrt(float64(near.D2[i])) < reach {
			return true
		}
	}
	return false
}
