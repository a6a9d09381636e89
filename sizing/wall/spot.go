package wall

import (
	"slices"

	"badgewright/sizing/unit"
)

// spot is one or more pieces of centreline that make one trouble spot.
type spot struct {
	all    piece      // its points
	links  [][2]int32 // between the pieces it was put together from
	length float64
	box    [4]int32
	group  uint8
	class  uint8
}

func (m *Measured) spotOf(p piece, walk *walker) spot {
	f := &m.lines.points[p[0]]
	s := spot{all: p, length: walk.length(p), group: f.group, class: f.class, box: [4]int32{f.x, f.y, f.x, f.y}}
	for _, i := range p {
		q := &m.lines.points[i]
		s.box = [4]int32{min(s.box[0], q.x), min(s.box[1], q.y), max(s.box[2], q.x), max(s.box[3], q.y)}
	}
	return s
}

// mergeLimits is how near pieces must lie, in limits, to be one spot. A rim is
// broken wherever a line meets it, and still one rim.
var mergeLimits = [groups]float64{lineGroup: 1, rimGroup: 4, areaGroup: 1}

// mergeNear makes one spot of pieces of one kind and part that lie near each other:
// a line that is thin, sound for a moment and thin again.
func (m *Measured) mergeNear(spots []spot, limits [groups]unit.MM, scale unit.PxPerMM, walk *walker) []spot {
	if len(spots) < 2 {
		return spots
	}
	into := make([]int32, len(spots))
	for i := range into {
		into[i] = int32(i)
	}
	var links [][2]int32
	for g, mm := range limits {
		n := newNearness(m, int32(mergeLimits[g]*mm.Px(scale))+1)
		for i := range spots {
			if spots[i].group == uint8(g) {
				n.put(int32(i), spots[i].all)
			}
		}
		for i := range spots {
			if spots[i].group == uint8(g) {
				for _, e := range walk.ends(spots[i].all) {
					links = append(links, n.from(int32(i), e)...)
				}
			}
		}
		for _, l := range links {
			unite(into, n.owner[l[0]], n.owner[l[1]])
		}
		for _, l := range links {
			r := first(into, n.owner[l[0]])
			spots[r].links = append(spots[r].links, l)
		}
		links = links[:0]
	}
	return gather(spots, into)
}

// nearness finds points near a point, by square cells of the reach.
type nearness struct {
	m     *Measured
	reach int32
	wide  int32   // cells in a row
	head  []int32 // 1 + first point of each cell, 0 for none
	next  []int32 // likewise, the next point in the same cell
	owner []int32 // spot of each point
}

func newNearness(m *Measured, reach int32) *nearness {
	n := &nearness{m: m, reach: reach, wide: int32(m.v.w)/reach + 3}
	n.head = make([]int32, int(n.wide)*(m.v.h/int(reach)+3))
	n.next = make([]int32, len(m.lines.points))
	n.owner = make([]int32, len(m.lines.points))
	return n
}

// cell leaves a margin of one all round.
func (n *nearness) cell(i int32) int32 {
	p := &n.m.lines.points[i]
	return (p.y/n.reach+1)*n.wide + p.x/n.reach + 1
}

func (n *nearness) put(spot int32, points []int32) {
	for _, i := range points {
		c := n.cell(i)
		n.next[i], n.head[c] = n.head[c], i+1
		n.owner[i] = spot
	}
}

// from returns a link from an end of a spot to the nearest point of each other
// spot within reach.
func (n *nearness) from(spot, end int32) (links [][2]int32) {
	p := &n.m.lines.points[end]
	middle := n.cell(end)
	var best []int32
	for c := int32(0); c < 9; c++ {
	points:
		for at := n.head[middle+(c/3-1)*n.wide+c%3-1]; at > 0; at = n.next[at-1] {
			k := at - 1
			if n.m.lines.points[k].part != p.part || n.owner[k] == spot {
				continue
			}
			d := n.apart(end, k)
			if d > n.reach*n.reach {
				continue
			}
			for b := range links {
				if n.owner[links[b][1]] == n.owner[k] {
					if d < best[b] {
						best[b], links[b][1] = d, k
					}
					continue points
				}
			}
			links, best = append(links, [2]int32{end, k}), append(best, d)
		}
	}
	return links
}

func (n *nearness) apart(i, k int32) int32 {
	p, q := &n.m.lines.points[i], &n.m.lines.points[k]
	return (p.x-q.x)*(p.x-q.x) + (p.y-q.y)*(p.y-q.y)
}

func unite(into []int32, a, b int32) {
	a, b = first(into, a), first(into, b)
	into[max(a, b)] = min(a, b)
}

func first(into []int32, i int32) int32 {
	for into[i] != i {
		i = into[i]
	}
	return i
}

// gather joins the spots that were united, under the first of each.
func gather(spots []spot, into []int32) []spot {
	kept := spots[:0:0]
	place := make([]int, len(spots))
	for i := range spots {
		r := first(into, int32(i))
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
	s.all = append(slices.Clone(a.all), b.all...)
	s.length += b.length
	s.box = [4]int32{min(a.box[0], b.box[0]), min(a.box[1], b.box[1]), max(a.box[2], b.box[2]), max(a.box[3], b.box[3])}
	return s
}
