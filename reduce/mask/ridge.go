package mask

import "math"

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

// Ridge finds the centrelines of all labels at once, in reading order: pixels
// whose nearest sites and a neighbour's lie on opposite sides (the integer
// medial axis of Hesselink and Roerdink 2008, kept by angle), brought down to
// lines one pixel wide. Labels for which skip is true are left out, though
// they are sites for the rest. c holds the runs of label.
func Ridge(label []uint8, c *Components, skip *[256]bool) []RidgePoint {
	r := &ridger{label: label, w: c.W, h: c.H, last: make([]int32, 2*c.W)}
	r.points = make([]RidgePoint, 0, min(pointsARun*len(c.Runs), mostPoints))
	k := newColumns(c, skip, true, everywhere)
	here, under := newEnvelope(k), newEnvelope(k)
	for y := 0; y <= c.H; y++ {
		if y < c.H {
			k.down(int32(y))
			under.others(y, c.row(y), skip)
		}
		if y > 0 {
			r.row(y-1, c, here, under)
		}
		here, under = under, here
	}
	return thin(r.points, label, c.W, c.H)
}

// pointsARun is about how many points come to a run of a drawing; room is made
// for mostPoints at first, lest noise ask for all there is.
const (
	pointsARun = 3
	mostPoints = 1 << 16
)

type ridger struct {
	label  []uint8
	w, h   int
	points []RidgePoint
	last   []int32 // of each column, the point last marked in an even row and in an odd one
	// singles are the columns of the row, from here on, in which a label is one
	// pixel high.
	singles []int32
}

// row goes along row y, whose nearest sites are in here and those of the row
// below in under. Of each pixel it looks first at its own width, then at it and
// the pixel to its right, then at it and the one below: but only where that may
// come to something.
func (r *ridger) row(y int, c *Components, here, under *envelope) {
	b := beneath{e: under}
	if y+1 < r.h {
		b.runs = c.row(y + 1)
	}
	r.singles = here.singles
	for i := range c.row(y) {
		if all := here.of(i); len(all) > 0 {
			r.run(y, &c.row(y)[i], all, &b)
		}
	}
}

// run goes along a run of row y.
func (r *ridger) run(y int, run *Run, all []stretch, b *beneath) {
	for len(r.singles) > 0 && r.singles[0] < run.X0 {
		r.singles = r.singles[1:]
	}
	q, qEnd := b.to(int(run.X0), run.Label)
	for k := range all {
		p, end, right := &all[k], int(run.X1), (*stretch)(nil)
		if k+1 < len(all) {
			right = &all[k+1]
			end = int(right.start)
		}
		for x := int(p.start); x < end; {
			if x >= qEnd {
				q, qEnd = b.to(x, run.Label)
			}
			e := min(end, qEnd)
			from, to := p.below(q, x, e, y)
			switch {
			case run.X1-run.X0 == 1 || len(r.singles) > 0 && int(r.singles[0]) < e:
				from, to = x, e
			case e == end && right != nil && p.besides(right, e-1, y):
				from, to = min(from, e-1), e
			}
			for ; from < to; from++ {
				r.single(from, y, run)
				if from+1 == end && right != nil {
					r.pair(from, y, p, from+1, y, right, run.Label)
				}
				if q != nil {
					r.pair(from, y, p, from, y+1, q, run.Label)
				}
			}
			x = e
		}
	}
}

// beneath goes along the row below.
type beneath struct {
	runs []Run
	e    *envelope
	run  int
	at   int // stretch of the run
}

// to goes on to column x, below a run with a label: s is what is nearest there,
// nil for another label, and end up to where that serves.
func (b *beneath) to(x int, label uint8) (s *stretch, end int) {
	if len(b.runs) == 0 {
		return nil, math.MaxInt
	}
	for int(b.runs[b.run].X1) <= x {
		b.run, b.at = b.run+1, 0
	}
	end = int(b.runs[b.run].X1)
	if b.runs[b.run].Label != label {
		return nil, end
	}
	all := b.e.of(b.run)
	for b.at+1 < len(all) && int(all[b.at+1].start) <= x {
		b.at++
	}
	if b.at+1 < len(all) {
		end = int(all[b.at+1].start)
	}
	return &all[b.at], end
}

// below narrows columns x0..x1-1 of row y, where p is nearest, and q in the row
// below, to those at which the two may lie on opposite sides.
func (p *stretch) below(q *stretch, x0, x1, y int) (from, to int) {
	switch {
	case q == nil:
		return x1, x1
	case (int(p.v)-y)*(int(q.v)-y-1) < 0:
		return x0, x1
	case p.b < q.a:
		return max(x0, int(p.b)+1), min(x1, int(q.a))
	}
	return max(x0, int(q.b)+1), min(x1, int(p.a))
}

// besides says whether p, nearest in column x of row y, and q, nearest in the
// next, may lie on opposite sides.
func (p *stretch) besides(q *stretch, x, y int) bool {
	return (int(p.v)-y)*(int(q.v)-y) < 0 || int(p.b) < x && x+1 < int(q.a)
}

// single marks a pixel that is the whole width of its line.
func (r *ridger) single(x, y int, run *Run) {
	high := len(r.singles) > 0 && int(r.singles[0]) == x
	if high {
		r.singles = r.singles[1:]
	}
	switch {
	case run.X1-run.X0 == 1:
		r.mark(x, y, x-1, y, x+1, y, 1, run.Label)
	case high:
		r.mark(x, y, x, y-1, x, y+1, 1, run.Label)
	}
}

// pair looks at two neighbours of one label, with p nearest to the one and q to
// the other, and marks the one nearer to the middle between their sites.
func (r *ridger) pair(x0, y0 int, p *stretch, x1, y1 int, q *stretch, label uint8) {
	ax, ay := p.site(x0), int(p.v)
	bx, by := q.site(x1), int(q.v)
	dot := (ax-x0)*(bx-x1) + (ay-y0)*(by-y1)
	if dot >= 0 {
		return
	}
	a2, b2 := (ax-x0)*(ax-x0)+(ay-y0)*(ay-y0), (bx-x1)*(bx-x1)+(by-y1)*(by-y1)
	if float64(dot)*float64(dot) <= narrowestCos2*float64(a2)*float64(b2) {
		return
	}
	if (bx-ax)*(ax+bx-x0-x1)+(by-ay)*(ay+by-y0-y1) <= 0 {
		r.mark(x0, y0, ax, ay, bx, by, a2, label)
	} else {
		r.mark(x1, y1, bx, by, ax, ay, b2, label)
	}
}

// mark notes a centreline pixel; of two pairs of sites the wider is kept.
func (r *ridger) mark(x, y, ax, ay, bx, by, d2 int, label uint8) {
	p := RidgePoint{X: int32(x), Y: int32(y), AX: int32(ax), AY: int32(ay), BX: int32(bx), BY: int32(by), D2: int32(d2), Label: label}
	last := &r.last[y&1*r.w+x]
	if k := int(*last); k < len(r.points) && r.points[k].X == p.X && r.points[k].Y == p.Y {
		if chord2(&p) > chord2(&r.points[k]) {
			r.points[k] = p
		}
		return
	}
	*last = int32(len(r.points))
	r.points = append(r.points, p)
}

func chord2(p *RidgePoint) int32 {
	return (p.AX-p.BX)*(p.AX-p.BX) + (p.AY-p.BY)*(p.AY-p.BY)
}
