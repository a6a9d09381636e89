package trace

// drawer draws the arcs of a map.
type drawer struct {
	m       *planar
	off     float64 // tolerance, px
	courses []*course
	paths   []path
	ends    [][2]end
	pen     pen
}

func newDrawer(m *planar, off float64) *drawer {
	n := len(m.arcs)
	return &drawer{m: m, off: off, courses: make([]*course, n), paths: make([]path, n), ends: make([][2]end, n)}
}

// drawAll draws every arc, then draws again what came to cross something.
func (d *drawer) drawAll(tell func(share float64) error) error {
	for i := range d.m.arcs {
		d.lay(int32(i))
		if i%256 == 0 {
			if err := tell(float64(i) / float64(len(d.m.arcs)) / 2); err != nil {
				return err
			}
		}
	}
	for k := range d.m.knots {
		d.settle(int32(k))
	}
	for i := range d.m.arcs {
		d.drawArc(int32(i))
	}
	if err := tell(0.8); err != nil {
		return err
	}
	d.untangle()
	return nil
}

func (d *drawer) lay(i int32) {
	a := &d.m.arcs[i]
	c := courseOf(d.m.trailOf(a), d.off)
	d.courses[i] = c
	if !a.closed() {
		d.ends[i] = [2]end{c.endOf(false), c.endOf(true)}
	}
}

func (d *drawer) settle(k int32) {
	kn := &d.m.knots[k]
	var ends [4]end
	for w, h := range kn.out {
		if h >= 0 {
			ends[w] = d.ends[h>>1][h&1]
		}
	}
	kn.settle(d.m.g, &ends)
}

// ways returns by which ways an arc leaves its two knots.
func (a *arc) ends() (first, last int) {
	return int(a.ways[0]), turn(int(a.ways[len(a.ways)-1]), 2)
}

func (d *drawer) drawArc(i int32) {
	a, c := &d.m.arcs[i], d.courses[i]
	first, last := a.ends()
	c.tie(d.m, a, first, last)
	d.paths[i] = d.pen.draw(c)
}
