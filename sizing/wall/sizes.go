package wall

import (
	"cmp"
	"slices"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Shares is how much of a drawing fails at a size, 0 to 1: of the length of all
// metal lines, what is thinner than its limit; of the area of all enamel, what
// lies in narrow places, and in areas that are too small as a whole.
type Shares struct {
	Lines float64 `json:"lines"`
	Areas float64 `json:"areas"`
}

// Curve tells the shares at any scale: what was measured, put in the order in
// which it fails as the limit rises.
type Curve struct {
	m *Measured
	// hard holds for each group the limits, px, from which its points fail, rising,
	// and weight what fails with all up to each: px of length, or px2 of area.
	hard   [groups][]float32
	weight [groups][]float64
	area   []failing // of areaGroup, in the same order
	long   float64   // of all metal
	wide   float64   // of all enamel
}

// failing is a place of an area that fails from a limit on.
type failing struct {
	part int32
	px2  float64
}

// Curve puts in order, once, what fails at which limit.
func (m *Measured) Curve() *Curve {
	c := &Curve{m: m}
	var in [groups][]int32
	for i := range m.lines.points {
		p := &m.lines.points[i]
		in[p.group] = append(in[p.group], int32(i))
	}
	for g := range in {
		slices.SortStableFunc(in[g], func(a, b int32) int {
			return cmp.Compare(m.lines.points[a].hard, m.lines.points[b].hard)
		})
		c.add(g, in[g])
	}
	for k, class := range m.parts.Label {
		if m.v.enamel[class] {
			c.wide += m.area[k]
		}
	}
	return c
}

// add sums what the points of a group weigh, in the order in which they fail.
func (c *Curve) add(group int, points []int32) {
	sum := 0.0
	for _, i := range points {
		p := &c.m.lines.points[i]
		long := c.m.lines.lengthAt(i)
		if group == areaGroup {
			c.area = append(c.area, failing{p.part, float64(long * float64(p.tau))})
		} else {
			c.long += long
		}
		sum += long
		c.hard[group] = append(c.hard[group], p.hard)
		c.weight[group] = append(c.weight[group], sum)
	}
}

// lengthAt is the length of centreline that a point stands for: half of each
// step to its neighbours.
func (g *graph) lengthAt(i int32) float64 {
	sum := 0.0
	for _, n := range g.of(i) {
		sum += g.step(i, n) / 2
	}
	return sum
}

// surely is the width, px, below which a place fails, and is not merely near
// the limit.
func (m *Measured) surely(limit float64) float64 {
	if m.shaky > limit/4 {
		return limit - m.shaky
	}
	return threshold(limit, m.shaky)
}

// failed is how many of a group's points, in order, fail at a limit.
func (c *Curve) failed(group int, limit float64) int {
	n, _ := slices.BinarySearch(c.hard[group], float32(c.m.surely(limit)))
	return n
}

// At returns the shares at a scale.
func (c *Curve) At(scale unit.PxPerMM, l sizing.Limits) (s Shares) {
	if !(scale > 0) {
		return Shares{}
	}
	limits := limitsOf(l)
	thin := 0.0
	for _, g := range []int{lineGroup, rimGroup} {
		if n := c.failed(g, limits[g].Px(scale)); n > 0 {
			thin += c.weight[g][n-1]
		}
	}
	if c.long > 0 {
		s.Lines = min(thin/c.long, 1)
	}
	if c.wide > 0 {
		s.Areas = min(c.areas(scale, l)/c.wide, 1)
	}
	return s
}

// areas is what fails of the enamel, px2. No area fails by more than all of it.
func (c *Curve) areas(scale unit.PxPerMM, l sizing.Limits) float64 {
	lost := map[int32]float64{}
	sum := 0.0
	lose := func(part int32, px2 float64) {
		more := min(px2, c.m.area[part]-lost[part])
		lost[part] += more
		sum += more
	}
	for i, class := range c.m.parts.Label {
		k := int32(i)
		if c.m.v.enamel[class] && c.m.tooSmall(k, scale, l) && c.m.smallArea(k, scale, l).Verdict == sizing.Fails {
			lose(k, c.m.area[k])
		}
	}
	for _, f := range c.area[:c.failed(areaGroup, l.Area.Px(scale))] {
		lose(f.part, f.px2)
	}
	return sum
}

// Lacks says whether metal is missing between colours or round them, which it
// then is at every size; built says what is built anyway.
func (m *Measured) Lacks(l sizing.Limits, built func(*sizing.Finding) bool) bool {
	all := m.missing(1, l)
	for i := range all {
		if !built(&all[i]) {
			return true
		}
	}
	return false
}
