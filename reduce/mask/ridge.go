package mask

// RidgePoint is a pixel on the centreline of its label, with the two sites, on
// opposite sides, that lie nearest.
type RidgePoint struct {
	X, Y           int32
	AX, AY, BX, BY int32
	D2             int32 // squared distance to the nearer site
	Label          uint8
}

// narrowestCos2 is the squared cosine past which the ways to the two sites
// count as opposite: 104 degrees apart or more. The two sides of a line give
// 180, the bisector of a right corner 90, a taper that matters more than 140.
const narrowestCos2 = 1.0 / 16

// Ridge finds the centrelines of all labels at once: pixels whose nearest
// sites and a neighbour's lie on opposite sides (the integer medial axis of
// Hesselink and Roerdink 2008, kept by angle), brought down to lines one pixel
// wide. skip must be the table the field was made with.
func Ridge(label []uint8, f *Field, skip *[256]bool) []RidgePoint {
	r := &ridger{f: f, label: label, at: make([]int32, len(label))}
	for y := 0; y < f.H; y++ {
		r.row(y, skip)
	}
	thin(r.points, r.at, f.W, f.H)
	kept := r.points[:0]
	for _, p := range r.points {
		if r.at[int(p.Y)*f.W+int(p.X)] > 0 {
			kept = append(kept, p)
		}
	}
	return kept
}

type ridger struct {
	f      *Field
	label  []uint8
	points []RidgePoint
	at     []int32 // 1 + index of the point at a pixel, 0 for none
}

func (r *ridger) row(y int, skip *[256]bool) {
	f, w := r.f, r.f.W
	for x := 0; x < w; x++ {
		i := y*w + x
		l := r.label[i]
		if skip[l] {
			continue
		}
		if f.D2[i] == 1 {
			r.single(x, y, l)
		}
		if x+1 < w && r.label[i+1] == l && f.SX[i] != f.SX[i+1] {
			r.pair(x, y, x+1, y)
		}
		if y+1 < f.H && r.label[i+w] == l && !r.besideBelow(i, x) {
			r.pair(x, y, x, y+1)
		}
	}
}

// besideBelow says that pixel i, in column x, and the one below it have one
// site, or two that touch.
func (r *ridger) besideBelow(i, x int) bool {
	f := r.f
	sx := int(f.SX[i])
	if f.SX[i] != f.SX[i+f.W] {
		return false
	}
	across := int32((x - sx) * (x - sx))
	a, b := f.D2[i] == across, f.D2[i+f.W] == across
	if a || b {
		return a && b
	}
	k := i - x + sx
	return f.DY[k] == f.DY[k+f.W]+1
}

// single marks a pixel that is the whole width of its line.
func (r *ridger) single(x, y int, l uint8) {
	left, right := r.other(x-1, y, l), r.other(x+1, y, l)
	up, down := r.other(x, y-1, l), r.other(x, y+1, l)
	switch {
	case left && right:
		r.mark(x, y, x-1, y, x+1, y)
	case up && down:
		r.mark(x, y, x, y-1, x, y+1)
	}
}

func (r *ridger) other(x, y int, l uint8) bool {
	return x < 0 || y < 0 || x >= r.f.W || y >= r.f.H || r.label[y*r.f.W+x] != l
}

// pair looks at two neighbours of one label and marks the one nearer to the
// middle between their sites.
func (r *ridger) pair(x0, y0, x1, y1 int) {
	ax, ay := r.f.Site(x0, y0)
	bx, by := r.f.Site(x1, y1)
	dot := (ax-x0)*(bx-x1) + (ay-y0)*(by-y1)
	if dot >= 0 {
		return
	}
	a, b := float64(r.f.D2[y0*r.f.W+x0]), float64(r.f.D2[y1*r.f.W+x1])
	if float64(dot)*float64(dot) <= narrowestCos2*a*b {
		return
	}
	if (bx-ax)*(ax+bx-x0-x1)+(by-ay)*(ay+by-y0-y1) <= 0 {
		r.mark(x0, y0, ax, ay, bx, by)
	} else {
		r.mark(x1, y1, bx, by, ax, ay)
	}
}

// mark notes a centreline pixel; of two pairs of sites the wider is kept.
func (r *ridger) mark(x, y, ax, ay, bx, by int) {
	i := y*r.f.W + x
	p := RidgePoint{X: int32(x), Y: int32(y), AX: int32(ax), AY: int32(ay), BX: int32(bx), BY: int32(by), D2: r.f.D2[i], Label: r.label[i]}
	if k := r.at[i]; k > 0 {
		if chord2(&p) > chord2(&r.points[k-1]) {
			r.points[k-1] = p
		}
		return
	}
	r.points = append(r.points, p)
	r.at[i] = int32(len(r.points))
}

func chord2(p *RidgePoint) int32 {
	return (p.AX-p.BX)*(p.AX-p.BX) + (p.AY-p.BY)*(p.AY-p.BY)
}
