package outline

import (
	"cmp"
	"slices"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// levers finds, for every place of the middle line, how far what hangs on it
// reaches beyond: the lever of a push at the far end.
func (m *Measured) levers() {
	m.lever, m.farTip = make([]float64, len(m.g.nodes)), make([]int32, len(m.g.nodes))
	for k := range m.tips {
		t := &m.tips[k]
		end := &m.g.nodes[t.end]
		for at := t.end; at >= 0; at = m.tree.parent[at] {
			n := &m.g.nodes[at]
			if far := length(float64(n.x-end.x), float64(n.y-end.y)) + t.radius; far > m.lever[at] {
				m.lever[at], m.farTip[at] = far, int32(k)
			}
		}
	}
}

// reachMM is the shortest lever that a finger gets hold of: what is shorter is
// pressed together with what it stands on (this tool's choice).
const reachMM unit.MM = 3

// Stress returns the greatest bending stress in MPa (N/mm2) of a bar of
// rectangular section, held at one end and pushed at the other across its
// thickness: 6 F L / (b t2), elementary beam theory.
func Stress(push float64, arm, width, thickness unit.MM) float64 {
	return 6 * push * float64(arm) / (float64(width) * float64(thickness) * float64(thickness))
}

// slenderest returns how many times as long as wide an arm may be before the
// push bends it for good; ok is false when arms are not looked at.
func (at *At) slenderest() (times float64, ok bool) {
	yield := Yield(at.Base)
	if !(at.Limits.Push > 0) || !(at.Thickness > 0) || yield == 0 {
		return 0, false
	}
	return yield * float64(at.Thickness) * float64(at.Thickness) / (6 * at.Limits.Push), true
}

// longArms finds the arms that the push bends for good. Every place of an arm
// is a section with the lever from there to its end: of a bar that is as wide
// all along the worst is its root, of a narrow neck with a heavy head the neck.
// What a second way leads to, round a hole, is held from two sides and no arm.
func (m *Measured) longArms(at *At) []sizing.Finding {
	most, ok := at.slenderest()
	if !ok {
		return nil
	}
	reach := reachMM.Px(at.Scale)
	worst := make([]int32, len(m.tips)) // of each tip, 1 + the worst section
	for i := range m.g.nodes {
		n := &m.g.nodes[i]
		if n.across && m.tree.only[i] && m.lever[i] >= reach && m.lever[i] > most*n.width {
			k := &worst[m.farTip[i]]
			if *k == 0 || m.bends(int32(i)) > m.bends(*k-1) {
				*k = int32(i) + 1
			}
		}
	}
	return m.apartFrom(worst, most, at)
}

// bends is how many times as far as wide a section's lever reaches.
func (m *Measured) bends(i int32) float64 { return m.lever[i] / m.g.nodes[i].width }

// apartFrom reports the worst section of each arm, the worst arm first: of two
// tips on one arm, as the corners of its end, one counts.
func (m *Measured) apartFrom(worst []int32, most float64, at *At) []sizing.Finding {
	var tips []int32
	for k := range worst {
		if worst[k] > 0 {
			tips = append(tips, int32(k))
		}
	}
	slices.SortStableFunc(tips, func(a, b int32) int { return cmp.Compare(m.bends(worst[b]-1), m.bends(worst[a]-1)) })
	taken := make([]bool, len(m.g.nodes))
	var found []sizing.Finding
	for _, k := range tips {
		arm := m.tree.way(m.tips[k].end, worst[k]-1)
		if slices.ContainsFunc(arm, func(i int32) bool { return taken[i] }) {
			continue
		}
		for _, i := range arm {
			taken[i] = true
		}
		found = append(found, m.armAt(arm, k, most, at))
	}
	return found
}

// armAt reports an arm, given from its tip to the section that gives.
func (m *Measured) armAt(arm []int32, tip int32, most float64, at *At) sizing.Finding {
	section := arm[len(arm)-1]
	t, n := &m.tips[tip], &m.g.nodes[section]
	f := sizing.Finding{
		Kind: sizing.LongArm, Flat: m.flatAt(section), Other: sizing.Outside, Count: 1, X: t.x, Y: t.y,
		X0: t.x, Y0: t.y, X1: t.x, Y1: t.y,
		Ends:     [4]float64{float64(n.x) + 0.5, float64(n.y) + 0.5, t.x, t.y},
		Path:     m.path(arm),
		Length:   at.Scale.MM(m.lever[section]),
		Thinnest: at.Scale.MM(n.width), Limit: at.Scale.MM(m.lever[section] / most),
		Error: at.Scale.MM(m.shaky),
		Force: at.Limits.Push * most / m.bends(section),
	}
	sum := 0.0
	for _, i := range arm {
		q := &m.g.nodes[i]
		half := q.width / 2
		f.X0, f.Y0 = min(f.X0, float64(q.x)+0.5-half), min(f.Y0, float64(q.y)+0.5-half)
		f.X1, f.Y1 = max(f.X1, float64(q.x)+0.5+half), max(f.Y1, float64(q.y)+0.5+half)
		sum += q.width
	}
	f.Typical = at.Scale.MM(sum / float64(len(arm)))
	m.judge(&f, at.Scale, m.shaky)
	return f
}
