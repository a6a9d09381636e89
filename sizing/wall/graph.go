package wall

import (
	"math"
	"slices"
)

// graph is a set of centreline points and who is whose neighbour.
type graph struct {
	points []point // in reading order
	row    []int32 // points[row[y]:row[y+1]] lie in row y
	first  []int32 // points[i] has the neighbours next[first[i]:first[i+1]]
	next   []int32
}

// newGraph joins points of one class and part that touch, through corners too.
// A corner is no link where two sides already lead there, so that lengths add
// up. The points are brought into reading order.
func newGraph(points []point, w, h int) graph {
	points, row := inOrder(points, h)
	g := graph{points: points, row: row, first: make([]int32, 1, len(points)+1), next: make([]int32, 0, 2*len(points))}
	var at [9]int32 // points round the middle one, row by row; -1 for none
	var from [3]int32
	for y := 0; y < h; y++ {
		from = [3]int32{row[max(y-1, 0)], row[y], row[y+1]}
		for i := row[y]; i < row[y+1]; i++ {
			p := &points[i]
			for k := range from {
				look(points, row, y+k-1, &from[k], p, at[3*k:3*k+3])
			}
			g.link(&at)
		}
	}
	g.bridge()
	return g
}

// bridge joins the end of a line to what lies one missing pixel further on.
func (g *graph) bridge() {
	extra := map[int32][]int32{}
	for i := range g.points {
		if len(g.of(int32(i))) <= 1 {
			g.leap(int32(i), extra)
		}
	}
	if len(extra) == 0 {
		return
	}
	old := *g
	g.first, g.next = make([]int32, 1, len(old.first)), make([]int32, 0, len(old.next)+2*len(extra))
	for i := range g.points {
		g.next = append(append(g.next, old.of(int32(i))...), extra[int32(i)]...)
		g.first = append(g.first, int32(len(g.next)))
	}
}

// leap notes the nearest point two pixels from i that nothing else leads to.
func (g *graph) leap(i int32, extra map[int32][]int32) {
	p := &g.points[i]
	best, pick := int32(9), int32(-1)
	for y := max(p.y-2, 0); y <= min(p.y+2, int32(len(g.row))-2); y++ {
		for k := g.from(g.row[y], g.row[y+1], p.x-2); k < g.row[y+1] && g.points[k].x <= p.x+2; k++ {
			q := &g.points[k]
			dx, dy := q.x-p.x, q.y-p.y
			d := dx*dx + dy*dy
			if q.class == p.class && q.part == p.part && max(dx, -dx, dy, -dy) == 2 && d < best && !g.within2(i, k) && !g.nearerEnd(i, k, d) {
				best, pick = d, k
			}
		}
	}
	if pick >= 0 && !slices.Contains(extra[i], pick) {
		extra[i] = append(extra[i], pick)
		extra[pick] = append(extra[pick], i)
	}
}

// within2 says whether k is a neighbour of i or of a neighbour of i.
func (g *graph) within2(i, k int32) bool {
	for _, n := range g.of(i) {
		if n == k || slices.Contains(g.of(n), k) {
			return true
		}
	}
	return false
}

// nearerEnd says whether i is the far end of two points alone, of which the
// other lies nearer to k than the squared distance d.
func (g *graph) nearerEnd(i, k, d int32) bool {
	of := g.of(i)
	if len(of) != 1 || len(g.of(of[0])) != 1 {
		return false
	}
	dx, dy := g.points[of[0]].x-g.points[k].x, g.points[of[0]].y-g.points[k].y
	return dx*dx+dy*dy < d
}

// link adds the neighbours of the next point: sides first, then corners.
func (g *graph) link(at *[9]int32) {
	for _, k := range [4]int{1, 3, 5, 7} {
		if at[k] >= 0 {
			g.next = append(g.next, at[k])
		}
	}
	for _, k := range [4][3]int{{0, 1, 3}, {2, 1, 5}, {6, 3, 7}, {8, 5, 7}} {
		if at[k[0]] >= 0 && at[k[1]] < 0 && at[k[2]] < 0 {
			g.next = append(g.next, at[k[0]])
		}
	}
	g.first = append(g.first, int32(len(g.next)))
}

// look finds the points of row y in the three columns round p that are of its
// kind; from runs along that row with p.
func look(points []point, row []int32, y int, from *int32, p *point, at []int32) {
	at[0], at[1], at[2] = -1, -1, -1
	if y < 0 || y+1 >= len(row) {
		return
	}
	end := row[y+1]
	for *from < end && points[*from].x < p.x-1 {
		*from++
	}
	for k := *from; k < end && points[k].x <= p.x+1; k++ {
		if q := &points[k]; q.class == p.class && q.part == p.part {
			at[q.x-p.x+1] = k
		}
	}
}

// inOrder sorts points by row and column, unless they are; row[y] is the first
// of row y.
func inOrder(points []point, h int) (sorted []point, row []int32) {
	row = make([]int32, h+1)
	already := true
	for i := range points {
		p := &points[i]
		row[p.y+1]++
		if i > 0 {
			q := &points[i-1]
			already = already && (q.y < p.y || q.y == p.y && q.x <= p.x)
		}
	}
	for y := 0; y < h; y++ {
		row[y+1] += row[y]
	}
	if already {
		return points, row
	}
	place := slices.Clone(row)
	sorted = make([]point, len(points))
	for i := range points {
		y := points[i].y
		sorted[place[y]] = points[i]
		place[y]++
	}
	for y := 0; y < h; y++ {
		slices.SortStableFunc(sorted[row[y]:row[y+1]], func(a, b point) int { return int(a.x - b.x) })
	}
	return sorted, row
}

func (g *graph) of(i int32) []int32 { return g.next[g.first[i]:g.first[i+1]] }

// Steps along a chain of pixels, weighted so that a straight line of any
// direction has its true length on average (Kulpa 1977).
const (
	sideStep   = 0.948
	cornerStep = 1.343
)

func (g *graph) step(i, j int32) float64 {
	dx, dy := g.points[i].x-g.points[j].x, g.points[i].y-g.points[j].y
	switch dx*dx + dy*dy {
	case 1:
		return sideStep
	case 2:
		return cornerStep
	}
	return math.Sqrt(float64(dx*dx + dy*dy))
}

// from returns the first of points lo..hi-1, of one row, at column x or later.
func (g *graph) from(lo, hi, x int32) int32 {
	for lo < hi {
		if mid := (lo + hi) / 2; g.points[mid].x < x {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}
