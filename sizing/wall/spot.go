package wall

import (
	"badgewright/sizing/unit"
)

// spot is one or more pieces of centreline that make one trouble spot.
type spot struct {
	piece  piece // the longest
	all    []int32
	length float64
	box    [4]int32
	group  uint8
	class  uint8
}

func (m *Measured) spotOf(p piece, walk *walker) spot {
	f := &m.lines.points[p[0]]
	s := spot{piece: p, all: p, length: walk.length(p), group: f.group, class: f.class, box: [4]int32{f.x, f.y, f.x, f.y}}
	for _, i := range p {
		q := &m.lines.points[i]
		s.box = [4]int32{min(s.box[0], q.x), min(s.box[1], q.y), max(s.box[2], q.x), max(s.box[3], q.y)}
	}
	return s
}

// mergeNear makes one spot of pieces of one kind and part that lie within a
// limit of each other: a line that is thin, sound for a moment and thin again.
func (m *Measured) mergeNear(spots []spot, limits [groups]unit.MM, scale unit.PxPerMM, walk *walker) []spot {
	if len(spots) < 2 {
		return spots
	}
	into := make([]int32, len(spots))
	for i := range into {
		into[i] = int32(i)
	}
	for g, mm := range limits {
		n := nearness{m: m, reach: int32(mm.Px(scale)) + 1, cells: map[[2]int32][]int32{}, owner: map[int32]int32{}}
		for i := range spots {
			if spots[i].group == uint8(g) {
				n.put(int32(i), spots[i].all)
			}
		}
		for i := range spots {
			if spots[i].group == uint8(g) {
				n.join(into, int32(i), walk.ends(spots[i].piece))
			}
		}
	}
	return gather(spots, into)
}

// nearness finds points near a point, by square cells of the reach.
type nearness struct {
	m     *Measured
	reach int32
	cells map[[2]int32][]int32
	owner map[int32]int32 // spot of each point
}

func (n *nearness) put(spot int32, points []int32) {
	for _, i := range points {
		p := &n.m.lines.points[i]
		cell := [2]int32{p.x / n.reach, p.y / n.reach}
		n.cells[cell] = append(n.cells[cell], i)
		n.owner[i] = spot
	}
}

// join unites a spot with those that come within reach of one of its ends.
func (n *nearness) join(into []int32, spot int32, ends []int32) {
	for _, e := range ends {
		p := &n.m.lines.points[e]
		cx, cy := p.x/n.reach, p.y/n.reach
		for dy := int32(-1); dy <= 1; dy++ {
			for dx := int32(-1); dx <= 1; dx++ {
				for _, k := range n.cells[[2]int32{cx + dx, cy + dy}] {
					q := &n.m.lines.points[k]
					x, y := p.x-q.x, p.y-q.y
					if q.part == p.part && n.owner[k] != spot && x*x+y*y <= n.reach*n.reach {
						unite(into, spot, n.owner[k])
					}
				}
			}
		}
	}
}

func unite(into []int32, a, b int32) {
	for into[a] != a {
		a = into[a]
	}
	for into[b] != b {
		b = into[b]
	}
	into[max(a, b)] = min(a, b)
}

// gather joins the spots that were united, under the first of each.
func gather(spots []spot, into []int32) []spot {
	kept := spots[:0:0]
	place := make([]int, len(spots))
	for i := range spots {
		r := int32(i)
		for into[r] != r {
			r = into[r]
		}
		if int(r) == i {
			place[i] = len(kept)
			kept = append(kept, spots[i])
			continue
		}
		t := &kept[place[r]]
		*t = joined(t, &spots[i])
	}
	return kept
}

func joined(a, b *spot) spot {
	s := *a
	if len(b.piece) > len(a.piece) {
		s.piece = b.piece
	}
	s.all = append(append([]int32{}, a.all...), b.all...)
	s.length += b.length
	s.box = [4]int32{min(a.box[0], b.box[0]), min(a.box[1], b.box[1]), max(a.box[2], b.box[2]), max(a.box[3], b.box[3])}
	return s
}
