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
		float64(unevenWt*math.Abs(mid-p.CX)) - float64(heightWt*math.Abs((float64(y)+0.5)*p.cell-aim))
}

// samples is about how many places are tried against each other before the
// best pair is refined cell by cell.
const samples = 600

// linePair returns the best two places in any direction, the upper one first:
// for pieces too narrow for two level posts.
func (p *plate) linePair(f fitting) (place, bool) {
	q := p.sample(f.room)
	top, ia, ib := math.Inf(-1), -1, -1
	for i := range q {
		for j := i + 1; j < len(q); j++ {
			if s := p.lineScore(q[i], q[j], f.apart); s > top {
				top, ia, ib = s, i, j
			}
		}
	}
	if ia < 0 {
		if f.apart > 0 || len(q) == 0 {
			return place{posts: []point{{p.CX, p.CY}, {p.CX, p.CY}}, clutch: f.clutch}, false
		}
		return place{posts: []point{q[0], q[0]}, clutch: f.clutch}, true
	}
	a, b := p.refine(q[ia], q[ib], top, f)
	if p.symmetric && math.Abs(a.x-p.CX) < 1 && math.Abs(b.x-p.CX) < 1 {
		a, b = p.onAxis(point{p.CX, a.y}, f.room), p.onAxis(point{p.CX, b.y}, f.room)
	}
	return place{posts: []point{a, b}, clutch: f.clutch}, true
}

// lineScore wants posts far apart whose middle lies at the centre of mass, a
// little above it.
func (p *plate) lineScore(a, b point, least float64) float64 {
	d := apart(a, b)
	if d < least {
		return math.Inf(-1)
	}
	mid := point{(a.x + b.x) / 2, (a.y + b.y) / 2}
	aim := point{p.CX, p.CY - float64(pairBelow*p.high())}
	return min(d, pairSpread*p.Feret) - apart(mid, aim)
}

// sample lists places with room, on an even grid centred on the part.
func (p *plate) sample(room float64) []point {
	n := 0
	for _, c := range p.clear {
		if c >= room && c > 0 {
			n++
		}
	}
	step := max(1, int(math.Ceil(math.Sqrt(float64(n)/samples))))
	var out []point
	for y := (p.h / 2) % step; y < p.h; y += step {
		for x := (p.w / 2) % step; x < p.w; x += step {
			if c := p.clear[y*p.w+x]; c >= room && c > 0 {
				out = append(out, p.centre(x, y))
			}
		}
	}
	return out
}

// refine moves each end cell by cell while the pair gets better.
func (p *plate) refine(a, b point, score float64, f fitting) (point, point) {
	for better := true; better; {
		better = false
		for _, d := range [...]point{{0, -1}, {-1, 0}, {1, 0}, {0, 1}} {
			for end := range 2 {
				na, nb := a, b
				moved := &na
				if end == 1 {
					moved = &nb
				}
				moved.x += float64(d.x * p.cell)
				moved.y += float64(d.y * p.cell)
				if c := p.at(*moved); c < f.room || c <= 0 {
					continue
				}
				if s := p.lineScore(na, nb, f.apart); s > score+1e-9 {
					a, b, score, better = na, nb, s, true
				}
			}
		}
	}
	return a, b
}
