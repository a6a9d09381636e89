package wall

import "math"

// probeStep is how far apart places along a path are looked at, in pixels.
const probeStep = 1.5

// aim is how many steps to either side the direction of a path is taken over.
const aim = 2

// cross is one place of a path and what lies across it: side 0 to the left of
// the normal, 1 to its right.
type cross struct {
	at   place // middle of what is measured, or where it was looked for
	nx   float64
	ny   float64
	side [2]flank
	held bool // the class was found there
}

// flank is what a ray meets on leaving a class, in pixels.
type flank struct {
	edge   float64 // from the middle to where the class ends
	closed bool    // it ends within reach
	class  uint8   // what lies beyond
	room   float64 // how far that reaches
	next   uint8   // what lies behind that
	after  float64 // how far that reaches
	part   int32   // part of the drawing beyond; -1 for none
}

// width is how wide the class is there; ok is false where it has no two edges
// within reach.
func (c *cross) width() (px float64, ok bool) {
	return c.side[0].edge + c.side[1].edge, c.held && c.side[0].closed && c.side[1].closed
}

// over moves the middle along the normal: to the right when by is positive.
func (c *cross) over(by float64) place {
	return place{c.at.x + float64(by*c.nx), c.at.y + float64(by*c.ny)}
}

// spreadOut puts places along a path evenly.
func spreadOut(line []place) []place {
	var all []place
	for i, b := range line {
		if i == 0 {
			all = append(all, b)
			continue
		}
		a := line[i-1]
		dx, dy := b.x-a.x, b.y-a.y
		n := int(math.Ceil(math.Sqrt(float64(dx*dx)+float64(dy*dy)) / probeStep))
		for k := 1; k <= n; k++ {
			t := float64(k) / float64(n)
			all = append(all, place{a.x + float64(t*dx), a.y + float64(t*dy)})
		}
	}
	return all
}

// crosses looks across a path that follows a class. within is how wide it is
// looked for, beyond how far the next things are.
func (p *patch) crosses(line []place, class uint8, within, beyond float64) []cross {
	line = pruned(line, within)
	at := spreadOut(prolonged(line, within))
	all := make([]cross, len(at))
	for i, q := range at {
		a, b := at[max(0, i-aim)], at[min(len(at)-1, i+aim)]
		dx, dy := b.x-a.x, b.y-a.y
		l := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		if l < 1e-9 { // where a path turns back on itself
			a, b = at[max(0, i-1)], q
			dx, dy = b.x-a.x, b.y-a.y
			l = math.Sqrt(float64(dx*dx) + float64(dy*dy))
		}
		if l < 1e-9 {
			dx, dy, l = 1, 0, 1
		}
		all[i] = p.cross(q, -dy/l, dx/l, class, within, beyond)
	}
	if len(line) > 1 {
		cutBack(all, int(math.Ceil(within/probeStep)))
	}
	return all
}

// opens is how much wider or narrower, in pixels, what a path follows may be from
// one place to the next and still be the same.
const opens = 1

// cutBack drops what was found past the ends of a path, on its n places at each,
// from where it is no longer what the path follows.
func cutBack(all []cross, n int) {
	lose := func(from, step, end int) {
		for i := from; i != end; i += step {
			was, ok0 := all[i-step].width()
			is, ok1 := all[i].width()
			if ok0 && ok1 && math.Abs(is-was) < opens && apart(all[i].at, all[i-step].at) < tornApart {
				continue
			}
			for ; i != end; i += step {
				all[i].held = false
			}
			return
		}
	}
	if 2*n < len(all) {
		lose(n-1, -1, -1)
		lose(len(all)-n, 1, len(all))
	}
}

// pruned is a path without the short forks that a centreline has at corners: a
// last stretch shorter than a length that turns aside, and a way out and back.
func pruned(line []place, short float64) []place {
	all := append([]place(nil), line...)
	for k := 1; k+1 < len(all); {
		a, b, c := all[k-1], all[k], all[k+1]
		back := turns(a, b, c, sameWay) && apart(a, c) < apart(a, b)/2 && apart(a, b) < short
		if !back {
			k++
			continue
		}
		all = append(all[:k], all[k+1:]...)
		k = max(1, k-1)
	}
	for len(all) > 2 && apart(all[0], all[1]) < short && turns(all[0], all[1], all[2], straightOn) {
		all = all[1:]
	}
	for n := len(all); n > 2 && apart(all[n-1], all[n-2]) < short && turns(all[n-3], all[n-2], all[n-1], straightOn); n = len(all) {
		all = all[:n-1]
	}
	return all
}

// straightOn is the cosine of the most that the short last stretch of a path may
// turn and still be the way it goes: a fork into a corner turns more.
const straightOn = 0.95

// turns says whether a path turns at b by more than a cosine tells.
func turns(a, b, c place, cosine float64) bool {
	along := float64((b.x-a.x)*(c.x-b.x)) + float64((b.y-a.y)*(c.y-b.y))
	return along < cosine*apart(a, b)*apart(b, c)
}

func apart(a, b place) float64 {
	dx, dy := a.x-b.x, a.y-b.y
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

// prolonged is a path that goes on straight at both ends: what is too thin
// begins and ends gently, and so does its repair.
func prolonged(line []place, by float64) []place {
	if len(line) < 2 {
		return line
	}
	on := func(end, from place) place {
		dx, dy := end.x-from.x, end.y-from.y
		l := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		if l < 1e-9 {
			return end
		}
		return place{end.x + float64(by*dx/l), end.y + float64(by*dy/l)}
	}
	n := len(line)
	all := append([]place{on(line[0], line[1])}, line...)
	return append(all, on(line[n-1], line[n-2]))
}

// astray is how far a path may lie off what it follows, in pixels.
const astray = 2

func (p *patch) cross(at place, nx, ny float64, class uint8, within, beyond float64) cross {
	c := cross{at: at, nx: nx, ny: ny}
	by, ok := p.find(&c, class)
	if !ok {
		return c
	}
	c.held, c.at = true, c.over(by)
	for k, sign := range [2]float64{-1, 1} {
		c.side[k] = p.look(c.at, sign*nx, sign*ny, class, within, beyond)
	}
	if c.side[0].closed && c.side[1].closed {
		mid := (c.side[1].edge - c.side[0].edge) / 2
		half := (c.side[1].edge + c.side[0].edge) / 2
		c.at = c.over(mid)
		c.side[0].edge, c.side[1].edge = half, half
	}
	return c
}

// find returns how far along the normal the class lies nearest, or most of
// what there is of it.
func (p *patch) find(c *cross, class uint8) (by float64, ok bool) {
	best := 0.5
	for k := 0; k <= 2*astray; k++ {
		for _, sign := range [2]float64{1, -1} {
			t := sign * float64(k) / 2
			q := c.over(t)
			if f := p.cover(q.x, q.y, class); f >= best {
				return t, true
			}
		}
	}
	return 0, false
}

// cover returns how much of the drawing at a place is of a class, 0..1, between
// the middles of pixels.
func (p *patch) cover(x, y float64, class uint8) float64 {
	x, y = x-0.5, y-0.5
	ix, iy := math.Floor(x), math.Floor(y)
	fx, fy := x-ix, y-iy
	top := float64((1-fx)*p.v.cover(int(ix), int(iy), class)) + float64(fx*p.v.cover(int(ix)+1, int(iy), class))
	low := float64((1-fx)*p.v.cover(int(ix), int(iy)+1, class)) + float64(fx*p.v.cover(int(ix)+1, int(iy)+1, class))
	return float64((1-fy)*top) + float64(fy*low)
}

// look follows a ray out of a class and through the next two things.
func (p *patch) look(at place, nx, ny float64, class uint8, within, beyond float64) flank {
	s := flank{part: -1}
	s.edge, s.closed = p.leave(at, nx, ny, class, within)
	if !s.closed {
		return s
	}
	on := place{at.x + float64((s.edge+past)*nx), at.y + float64((s.edge+past)*ny)}
	s.class = p.classAt(on.x, on.y)
	if s.class == class { // an edge too fine to see past
		s.closed = false
		return s
	}
	if s.class == outside {
		s.room = beyond
		return s
	}
	room, ends := p.leave(on, nx, ny, s.class, beyond)
	s.room = past + room
	if !ends {
		return s
	}
	off := place{on.x + float64((room+past)*nx), on.y + float64((room+past)*ny)}
	s.next = p.classAt(off.x, off.y)
	s.after = past + beyond
	if s.next != outside {
		far, _ := p.leave(off, nx, ny, s.next, beyond)
		s.after = past + far
	}
	return s
}

// past is how far beyond an edge one looks to see what lies there, in pixels.
const past = 0.75

// leave returns how far a ray runs before it leaves a class; ends is false when
// it does not within reach.
func (p *patch) leave(at place, nx, ny float64, class uint8, reach float64) (far float64, ends bool) {
	const step = 0.5
	before := p.cover(at.x, at.y, class)
	for t := step; t <= reach+step; t += step {
		f := p.cover(at.x+float64(t*nx), at.y+float64(t*ny), class)
		if f < 0.5 {
			if before > f && before >= 0.5 {
				return t - step + step*(before-0.5)/(before-f), true
			}
			return t - step, true
		}
		before = f
	}
	return reach, false
}
