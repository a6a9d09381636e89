package outline

// tree spans the middle line of every part from its widest place, so that the
// way from a tip to the body of its part is a walk to the root.
type tree struct {
	root   []int32 // of each part, its widest node; -1 for none
	parent []int32 // -1 at a root
	order  []int32 // parents first
	// only is true where the way to the body is the only one: no second way leads
	// round a hole.
	only []bool
}

// plant grows the tree, nearest first in steps, ties by the order of nodes.
func (m *Measured) plant() {
	m.shaky = hardError
	if n := len(m.g.nodes); 2*m.soft >= n && m.soft > 0 {
		m.shaky = softError
	}
	m.rims()
	t := &m.tree
	n := len(m.g.nodes)
	t.root = make([]int32, len(m.parts))
	for k := range t.root {
		t.root[k] = -1
	}
	for i := range m.g.nodes {
		k := m.partOf[m.g.nodes[i].part]
		if k >= 0 && (t.root[k] < 0 || m.g.nodes[i].width > m.g.nodes[t.root[k]].width) {
			t.root[k] = int32(i)
		}
	}
	t.parent, t.only = make([]int32, n), make([]bool, n)
	for i := range t.parent {
		t.parent[i] = unseen
	}
	for _, r := range t.root {
		if r >= 0 {
			m.grow(r)
		}
	}
	m.waysRound()
	m.findTips()
	m.levers()
}

const unseen = -2

// grow adds what a root leads to, one step after the other.
func (m *Measured) grow(from int32) {
	t := &m.tree
	t.parent[from] = -1
	first := len(t.order)
	t.order = append(t.order, from)
	for k := first; k < len(t.order); k++ {
		for _, n := range m.g.next[t.order[k]] {
			if t.parent[n] == unseen {
				t.parent[n] = t.order[k]
				t.order = append(t.order, n)
			}
		}
	}
}

// waysRound marks the nodes whose way to their parent is the only one to the
// root: every link that is not of the tree closes a ring, and takes the nodes of
// that ring out.
func (m *Measured) waysRound() {
	t := &m.tree
	// Each such link counts +1 at both of its ends and -2 where their ways meet;
	// what is summed up from the tips is then above 0 on the ring alone.
	depth := make([]int32, len(t.parent))
	for _, i := range t.order {
		if p := t.parent[i]; p >= 0 {
			depth[i] = depth[p] + 1
		}
	}
	sum := make([]int32, len(t.parent))
	for _, i := range t.order {
		for _, k := range m.g.next[i] {
			if k > i && t.parent[i] != k && t.parent[k] != i {
				sum[i]++
				sum[k]++
				sum[t.meet(i, k, depth)] -= 2
			}
		}
	}
	for k := len(t.order) - 1; k >= 0; k-- {
		i := t.order[k]
		t.only[i] = sum[i] == 0 && t.parent[i] >= 0
		if p := t.parent[i]; p >= 0 {
			sum[p] += sum[i]
		}
	}
}

// meet returns where the ways of two nodes to the root come together.
func (t *tree) meet(a, b int32, depth []int32) int32 {
	for a != b {
		if depth[a] >= depth[b] {
			a = t.parent[a]
		} else {
			b = t.parent[b]
		}
	}
	return a
}

// way lists the nodes from one up to another that it hangs on.
func (t *tree) way(from, to int32) []int32 {
	all := []int32{from}
	for i := from; i != to; {
		i = t.parent[i]
		all = append(all, i)
	}
	return all
}
