package outline

import (
	"slices"

	"badgewright/sizing"
)

const (
	// markedly is how many times as wide as the limit metal must be to count as
	// what a thin place lies between: a bead on an arm is still the arm.
	markedly = 1.2
	// slender is how many times as long as wide what ends freely must be, all of it
	// narrower than the limit, before it bends like a bridge: the tip of a star is
	// 3 times, a leaf of 20 degrees not yet 6 (this tool's choice).
	slender = 6
	// noHole is the share of Limits.CutOut below which a hole is none that anybody
	// means: it will be closed, and what runs round it is not thin.
	noHole = 0.5
	// eyeHoles is up to how many times Limits.Eye a hole counts as one for a ring,
	// round which less metal will do.
	eyeHoles = 2
)

// thinPlaces finds where the pin itself is too narrow.
func (m *Measured) thinPlaces(at *At, arms []sizing.Finding) []sizing.Finding {
	if at.Limits.Bridge <= 0 {
		return nil
	}
	t := m.thinning(at)
	var found []sizing.Finding
	seen := make([]bool, len(m.g.nodes))
	for i := range m.g.nodes {
		if !t.thin[i] || seen[i] {
			continue
		}
		piece := m.flood(int32(i), seen, func(k int32) bool { return t.thin[k] })
		f, ok := m.thinAt(piece, t, at)
		onArm := func(a sizing.Finding) bool { return inBox(&f, a.X, a.Y) || inBox(&a, f.X, f.Y) }
		if ok && !(t.free && slices.ContainsFunc(arms, onArm)) {
			found = append(found, f)
		}
	}
	return found
}

// thinning is which nodes lie where the pin is too narrow at a scale.
type thinning struct {
	under float64 // px
	rim   float64 // px, round a hole for a ring
	thin  []bool
	eye   []bool // of each hole, whether it is one for a ring
	gone  []bool // and whether it is so small that it will be closed
	free  bool   // whether the piece last looked at ends freely
}

// limit returns the limit in px that holds at a node.
func (t *thinning) limit(n *node) float64 {
	limit := t.under
	for _, k := range [2]int32{n.sideA, n.sideB} {
		switch {
		case k >= 0 && t.gone[k]:
			return 0
		case k >= 0 && t.eye[k] && n.sideA != n.sideB:
			limit = t.rim
		}
	}
	return limit
}

func (m *Measured) thinning(at *At) *thinning {
	t := &thinning{
		under: at.Limits.Bridge.Px(at.Scale), rim: at.Limits.EyeRim.Px(at.Scale),
		thin: make([]bool, len(m.g.nodes)), eye: make([]bool, len(m.holes)), gone: make([]bool, len(m.holes)),
	}
	for k := range m.holes {
		t.gone[k] = m.holes[k].Across < noHole*at.Limits.CutOut.Px(at.Scale)
		t.eye[k] = m.holes[k].Across <= eyeHoles*at.Limits.Eye.Px(at.Scale)
	}
	for i := range m.g.nodes {
		n := &m.g.nodes[i]
		t.thin[i] = n.width < t.limit(n)
	}
	t.drown(m)
	return t
}

// drown makes thin what is hardly wider than the limit between thin places.
func (t *thinning) drown(m *Measured) {
	seen := make([]bool, len(m.g.nodes))
	for i := range m.g.nodes {
		if t.thin[i] || seen[i] {
			continue
		}
		piece := m.flood(int32(i), seen, func(k int32) bool { return !t.thin[k] })
		wide := slices.ContainsFunc(piece, func(k int32) bool {
			n := &m.g.nodes[k]
			return n.width >= markedly*t.limit(n)
		})
		for _, k := range piece {
			t.thin[k] = !wide
		}
	}
}

// flood lists the nodes that a way of like nodes leads to.
func (m *Measured) flood(from int32, seen []bool, like func(int32) bool) []int32 {
	seen[from] = true
	list := []int32{from}
	for k := 0; k < len(list); k++ {
		for _, n := range m.g.next[list[k]] {
			if !seen[n] && like(n) {
				seen[n] = true
				list = append(list, n)
			}
		}
	}
	return list
}

// thinAt judges one thin piece of the middle line; ok is false where it holds.
func (m *Measured) thinAt(piece []int32, t *thinning, at *At) (f sizing.Finding, ok bool) {
	core := m.between2(piece, t)
	t.free = len(core) == 0
	if !t.free {
		f = m.thinFinding(core, t, at)
		long, _, way := m.extent(core, nil)
		f.Length, f.Path = at.Scale.MM(long), m.path(way)
	} else {
		ends := m.shores(piece, t)
		long, mean, way := m.extent(piece, ends)
		if long < slender*mean || mean >= t.under {
			return f, false
		}
		f = m.thinFinding(piece, t, at)
		f.Thinnest, f.Typical, f.Length, f.Path = at.Scale.MM(mean), at.Scale.MM(mean), at.Scale.MM(long), m.path(way)
	}
	m.judge(&f, at.Scale, m.shaky)
	return f, f.Verdict != sizing.Holds
}

// shores lists the nodes of a piece that touch what is wide.
func (m *Measured) shores(piece []int32, t *thinning) []int32 {
	var all []int32
	for _, i := range piece {
		if slices.ContainsFunc(m.g.next[i], func(k int32) bool { return !t.thin[k] }) {
			all = append(all, i)
		}
	}
	return all
}

// between2 returns what of a piece lies on ways from one wide place to another,
// or round a hole: twigs that end freely are taken off. It is empty when fewer
// than two shores are left.
func (m *Measured) between2(piece []int32, t *thinning) []int32 {
	shore := map[int32]bool{}
	for _, i := range m.shores(piece, t) {
		shore[i] = true
	}
	if !m.severalShores(shore, t) {
		return nil
	}
	degree := map[int32]int{}
	for _, i := range piece {
		degree[i] = len(m.g.next[i])
	}
	var ends []int32
	for _, i := range piece {
		if degree[i] <= 1 && !shore[i] {
			ends = append(ends, i)
		}
	}
	for len(ends) > 0 {
		i := ends[len(ends)-1]
		ends = ends[:len(ends)-1]
		degree[i] = -1
		for _, k := range m.g.next[i] {
			if d, in := degree[k]; in && d > 0 {
				if degree[k]--; degree[k] <= 1 && !shore[k] {
					ends = append(ends, k)
				}
			}
		}
	}
	return slices.DeleteFunc(slices.Clone(piece), func(i int32) bool { return degree[i] < 0 || !m.g.nodes[i].across })
}

// sameShore is within how many pixels two nodes are one place on a shore.
const sameShore = 3

func (m *Measured) severalShores(shore map[int32]bool, t *thinning) bool {
	first := int32(-1)
	for i := range shore {
		if first < 0 || i < first {
			first = i
		}
	}
	for i := range shore {
		a, b := &m.g.nodes[first], &m.g.nodes[i]
		if max(a.x-b.x, b.x-a.x, a.y-b.y, b.y-a.y) > sameShore {
			return true
		}
	}
	// One node may lie between two wide places.
	return len(shore) == 1 && m.splits(first, t)
}

// splits says whether the only thin node on a way has wide nodes on opposite
// sides.
func (m *Measured) splits(i int32, t *thinning) bool {
	var wide []int32
	for _, k := range m.g.next[i] {
		if !t.thin[k] {
			wide = append(wide, k)
		}
	}
	for _, a := range wide {
		for _, b := range wide {
			p, q, n := &m.g.nodes[a], &m.g.nodes[b], &m.g.nodes[i]
			if (p.x-n.x)*(q.x-n.x)+(p.y-n.y)*(q.y-n.y) < 0 {
				return true
			}
		}
	}
	return false
}

// extent returns how long a piece is, from where it stands to its farthest end,
// and how wide on average, in pixels, and the nodes on that way.
func (m *Measured) extent(piece, from []int32) (long, mean float64, way []int32) {
	in := map[int32]bool{}
	for _, i := range piece {
		in[i] = true
		mean += m.g.nodes[i].width
	}
	mean /= float64(len(piece))
	if len(from) == 0 { // from one end of it to the other
		_, back := m.farthest(piece[:1], in)
		from = back[len(back)-1:]
	}
	long, way = m.farthest(from, in)
	if end := way[len(way)-1]; len(m.g.next[end]) == 1 {
		long += m.g.nodes[end].width / 2
	}
	return long, mean, way
}

// farthest returns the longest way within a set from some of its nodes.
func (m *Measured) farthest(from []int32, in map[int32]bool) (far float64, way []int32) {
	type reached struct {
		node, before int32 // before is where in the list the way there comes from
		far          float64
	}
	seen := map[int32]bool{}
	var list []reached
	for _, i := range from {
		seen[i] = true
		list = append(list, reached{i, -1, 0})
	}
	end := 0
	for k := 0; k < len(list); k++ {
		r := list[k]
		if r.far > list[end].far {
			end = k
		}
		for _, n := range m.g.next[r.node] {
			if !seen[n] && in[n] {
				seen[n] = true
				list = append(list, reached{n, int32(k), r.far + m.g.step(r.node, n)})
			}
		}
	}
	for k := int32(end); k >= 0; k = list[k].before {
		way = append(way, list[k].node)
	}
	slices.Reverse(way)
	return list[end].far, way
}

// thinFinding reports nodes that are too thin.
func (m *Measured) thinFinding(list []int32, t *thinning, at *At) sizing.Finding {
	worst := list[0]
	widths := make([]float64, len(list))
	least := func(i int32) float64 { n := &m.g.nodes[i]; return n.width / t.limit(n) }
	f := sizing.Finding{Kind: sizing.ThinBridge, Other: sizing.Outside, Count: 1}
	for k, i := range list {
		n := &m.g.nodes[i]
		widths[k] = n.width
		if least(i) < least(worst) || least(i) == least(worst) && i < worst {
			worst = i
		}
		half := n.width / 2
		x, y := float64(n.x)+0.5, float64(n.y)+0.5
		if k == 0 {
			f.X0, f.Y0, f.X1, f.Y1 = x-half, y-half, x+half, y+half
		}
		f.X0, f.Y0, f.X1, f.Y1 = min(f.X0, x-half), min(f.Y0, y-half), max(f.X1, x+half), max(f.Y1, y+half)
	}
	slices.Sort(widths)
	n := &m.g.nodes[worst]
	f.X, f.Y, f.Flat = float64(n.x)+0.5, float64(n.y)+0.5, m.flatAt(worst)
	f.Thinnest, f.Typical = at.Scale.MM(n.width), at.Scale.MM(widths[len(widths)/2])
	f.Limit, f.Error = at.Scale.MM(t.limit(n)), at.Scale.MM(m.shaky)
	return f
}
