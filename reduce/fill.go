package reduce

// fill gives the area under a place a colour, a role or both: it joins the flat
// that has them already, or becomes a flat of its own. Background closed in by
// lines, or by lines and a cut across a gap, becomes part of the drawing.
func (d *desk) fill(e Edit) {
	at, ok := d.place(e)
	if !ok {
		return
	}
	b, in := d.under(e, at)
	barred := d.bars(&e)
	if in[None] && d.opens(at, barred) {
		return // it would flood the page
	}
	if e.RGB != nil {
		b.rgb, b.lab, b.painted, b.name = *e.RGB, e.RGB.OKLab(), nil, ""
	}
	if known(e.Role) && !d.rolesOff {
		b.role = e.Role
	}
	to := d.like(&b, e.Count)
	switch {
	case to >= 0 && in[to]:
		return // it has them already
	case to < 0 && len(d.boughs) >= MaxFlats:
		return
	case to < 0:
		to = len(d.boughs)
		b.id, b.first, b.own = to, to, true
		b.area = 0
		d.boughs = append(d.boughs, b)
	}
	d.boughs[to].area += d.carve(at, in, uint8(to), barred)
}

// opens is true when background at a pixel runs on to the edge of the raster.
func (d *desk) opens(at int, b bars) bool {
	w, h := d.a.w, d.a.h
	seen := make([]bool, len(d.f.label))
	stack := []int{at}
	for len(stack) > 0 {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		x, y := i%w, i/w
		if x == 0 || y == 0 || x == w-1 || y == h-1 {
			return true
		}
		for _, j := range [4]int{i - 1, i + 1, i - w, i + w} {
			if !seen[j] && (d.f.label[j] == None && !b.at[j] || b.over[j]) {
				seen[j] = true
				stack = append(stack, j)
			}
		}
	}
	return false
}

// under returns a bough like what lies at a pixel, and the labels it goes by.
func (d *desk) under(e Edit, at int) (bough, *[256]bool) {
	if d.f.label[at] == None {
		return bough{leaf: leafOf(white)}, &[256]bool{None: true}
	}
	t := d.twigAt(int(d.f.label[at]), e.Count)
	b := bough{leaf: d.boughs[t.lead].leaf}
	b.rgb, b.role = flatFrom(t, d.boughs).RGB, t.role
	b.lab = b.rgb.OKLab()
	return b, d.setOf(t)
}

// like returns the bough that leads a flat of the same colour and role at a
// count, or -1.
func (d *desk) like(b *bough, count int) int {
	if count < 1 {
		count = MaxFlats
	}
	for _, t := range d.thinOut(count) {
		if f := flatFrom(&t, d.boughs); f.RGB == b.rgb && f.Role == b.role {
			return t.lead
		}
	}
	return -1
}
