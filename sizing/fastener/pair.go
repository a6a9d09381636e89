package fastener

import "math"

// levelPair returns the best two places on one row, in the upper half; ok is
// false when no row has two that far apart.
func (p *plate) levelPair(f fitting) (best place, ok bool) {
	top := math.Inf(-1)
	row := levelRow{p: p, f: f, left: make([]int, p.w), right: make([]int, p.w)}
	lowest := p.CY + float64(pairBelow*p.high())
	for y := range p.h {
		if (float64(y)+0.5)*p.cell > lowest {
			break
		}
		if a, b, s := row.best(y); s > top {
			top, ok = s, true
			best = place{posts: []point{p.centre(a, y), p.centre(b, y)}, clutch: f.clutch, level: true}
		}
	}
	if ok {
		p.evenOut(best.posts)
	}
	return best, ok
}

// evenOut sets a nearly even pair of a symmetric part exactly even.
func (p *plate) evenOut(q []point) {
	if mid := (q[0].x + q[1].x) / 2; p.symmetric && math.Abs(mid-p.CX) < 2*p.cell {
		half := (q[1].x - q[0].x) / 2
		q[0].x, q[1].x = p.CX-half, p.CX+half
	}
}

// levelRow looks for the best pair on one row. left and right hold the nearest
// column with room at or before, and at or after, each column (-1 for none).
type levelRow struct {
	p           *plate
	f           fitting
	left, right []int
}

// best tries each place with its mirror image about the line of balance, the
// places with room nearest to that, and the outermost.
func (r *levelRow) best(y int) (a, b int, score float64) {
	score = math.Inf(-1)
	first, last := r.fill(y)
	if first < 0 {
		return 0, 0, score
	}
	try := func(i, j int) {
		if i > j {
			i, j = j, i
		}
		if i < 0 {
			return
		}
		if s := r.score(i, j, y); s > score {
			a, b, score = i, j, s
		}
	}
	double := int(math.Round(2*r.p.CX/r.p.cell)) - 1
	for x := first; x <= last; x = r.next(x + 1) {
		o := min(max(double-x, 0), r.p.w-1)
		try(x, r.left[o])
		try(x, r.right[o])
		try(x, first)
		try(x, last)
		if x == last {
			break
		}
	}
	return a, b, score
}

func (r *levelRow) next(x int) int { return r.right[x] }

// fill finds the columns with room; first is -1 when there is none.
func (r *levelRow) fill(y int) (first, last int) {
	row := r.p.clear[y*r.p.w : y*r.p.w+r.p.w]
	first, last = -1, -1
	for x, c := range row {
		if c >= r.f.room && c > 0 {
			last = x
			if first < 0 {
				first = x
			}
		}
		r.left[x] = last
	}
	after := -1
	for x := len(row) - 1; x >= 0; x-- {
		if row[x] >= r.f.room && row[x] > 0 {
			after = x
		}
		r.right[x] = after
	}
	return first, last
}

func (r *levelRow) score(i, j, y int) float64 {
	p := r.p
	d := float64(j-i) * p.cell
	if d < r.f.apart {
		return math.Inf(-1)
	}
	far := pairSpread * p.wide()
	mid := (float64(i+j) + 1) / 2 * p.cell
	aim := p.CY - float64(pairHeight*p.high())
	return min(d, far) - float64(wasteWeight*max(0, d-far)) -
		r.f.showing(p.clear[y*p.w+i]) - r.f.showing(p.clear[y*p.w+j]) -
		float64(unevenWeight*math.Abs(mid-p.CX)) - float64(heightWeight*math.Abs((float64(y)+0.5)*p.cell-aim))
}

// samples is about how many places are tried against each other before the
// best pair is refined cell by cell.
const samples = 600

// linePair returns the best two places in any direction, the upper one first:
// for pieces with no good room for two level posts.
func (p *plate) linePair(f fitting) (place, bool) {
	q := p.sample(f.room)
	top, ia, ib := math.Inf(-1), -1, -1
	for i := range q {
		for j := i + 1; j < len(q); j++ {
			if s := p.lineScore(q[i], q[j], f); s > top {
				top, ia, ib = s, i, j
			}
		}
	}
	if ia < 0 {
		return place{}, false
	}
	a, b := p.refine(q[ia].point, q[ib].point, top, f)
	p.straighten(&a, &b, f)
	return place{posts: []point{a, b}, clutch: f.clutch}, true
}

// straighten sets a nearly upright pair of a symmetric part on its axis.
func (p *plate) straighten(a, b *point, f fitting) {
	const near = 1 // mm from the axis
	if !p.symmetric || math.Abs(a.x-p.CX) > near || math.Abs(b.x-p.CX) > near {
		return
	}
	u, v := point{p.CX, a.y}, point{p.CX, b.y}
	if p.at(u) >= f.room-p.cell && p.at(v) >= f.room-p.cell {
		*a, *b = u, v
	}
}

// spot is a place with its room.
type spot struct {
	point
	room float64
}

// lineScore wants posts far apart, on a line through a point a little above
// the centre of mass, and that point midway.
func (p *plate) lineScore(a, b spot, f fitting) float64 {
	dx, dy := a.x-b.x, a.y-b.y
	d := length(dx, dy)
	if d < f.apart {
		return math.Inf(-1)
	}
	mx := (a.x+b.x)/2 - p.CX
	my := (a.y+b.y)/2 - p.CY + float64(pairBelow*p.high())
	beside := math.Abs(float64(mx*dy)-float64(my*dx)) / max(d, p.cell)
	along := math.Abs(float64(mx*dx)+float64(my*dy)) / max(d, p.cell)
	lean := min(math.Abs(float64(dx*p.ax)+float64(dy*p.ay)), math.Abs(float64(dx*p.ay)-float64(dy*p.ax)))
	return min(d, pairSpread*p.Feret) - beside - float64(leanWeight*lean) - float64(alongWeight*along) - f.showing(a.room) - f.showing(b.room)
}

// sample lists places with room, on an even grid that is its own mirror image
// about the middle of the raster.
func (p *plate) sample(room float64) []spot {
	n := 0
	for _, c := range p.clear {
		if c >= room && c > 0 {
			n++
		}
	}
	step := max(1, int(math.Ceil(math.Sqrt(float64(n)/samples))))
	var out []spot
	for y := range p.h {
		if fromMiddle(y, p.h)%step != 0 {
			continue
		}
		for x, c := range p.clear[y*p.w : y*p.w+p.w] {
			if c >= room && c > 0 && fromMiddle(x, p.w)%step == 0 {
				out = append(out, spot{p.centre(x, y), c})
			}
		}
	}
	return out
}

// fromMiddle is how many cells cell i of n lies from the middle one or two.
func fromMiddle(i, n int) int {
	d := 2*i - (n - 1)
	return max(d, -d) / 2
}

// refine moves one end or both, cell by cell, while the pair gets better.
func (p *plate) refine(a, b point, score float64, f fitting) (point, point) {
	const gain = 1e-9 // less is rounding
	ways := [...]point{{0, 0}, {0, -1}, {-1, 0}, {1, 0}, {0, 1}}
	for {
		na, nb, best := a, b, score+gain
		for _, da := range ways {
			for _, db := range ways {
				u := point{a.x + float64(da.x*p.cell), a.y + float64(da.y*p.cell)}
				v := point{b.x + float64(db.x*p.cell), b.y + float64(db.y*p.cell)}
				ru, rv := p.at(u), p.at(v)
				if min(ru, rv) < f.room || min(ru, rv) <= 0 {
					continue
				}
				if s := p.lineScore(spot{u, ru}, spot{v, rv}, f); s > best {
					na, nb, best = u, v, s
				}
			}
		}
		if na == a && nb == b {
			return a, b
		}
		a, b, score = na, nb, best
	}
}
