package reduce

// carve relabels the connected area round pixel at whose labels are in the
// set, and its rim, on copies of the pixels; it returns the area's size. What
// is barred is not passed, but what lies under a bar goes with the area; what
// was erased is passed, and stays what it is.
func (d *desk) carve(at int, in *[256]bool, to uint8, b bars) int {
	d.f.label = append([]uint8(nil), d.f.label...)
	d.f.beside = append([]uint8(nil), d.f.beside...)
	c := carver{d: d, in: in, to: to, passed: make(map[int]bool)}
	met := c.spread(at, b)
	for range b.deep {
		met = c.under(met, b.at)
	}
	return c.area
}

// carver is an area while it is relabelled.
type carver struct {
	d    *desk
	in   *[256]bool
	to   uint8
	area int
	// passed is the erased metal that the area runs over.
	passed map[int]bool
}

// take relabels a pixel whose label is in the set.
func (c *carver) take(i int) {
	f := &c.d.f
	if l := f.label[i]; l != None {
		c.d.boughs[l].area--
	}
	c.area++
	if c.in[f.beside[i]] {
		f.beside[i] = c.to
	}
	f.label[i] = c.to
}

// spread relabels the area round a pixel and its soft rim, and returns the
// barred pixels that it met.
func (c *carver) spread(at int, b bars) (met []int) {
	f, w, h := &c.d.f, c.d.a.w, c.d.a.h
	c.take(at)
	stack := []int{at}
	for len(stack) > 0 {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		x, y := i%w, i/w
		for yy := max(y-1, 0); yy <= min(y+1, h-1); yy++ {
			for xx := max(x-1, 0); xx <= min(x+1, w-1); xx++ {
				j := yy*w + xx
				switch in := c.in[f.label[j]]; {
				case in && (xx == x || yy == y) && b.at[j]:
					met = append(met, j)
				case in && (xx == x || yy == y):
					c.take(j)
					stack = append(stack, j)
				case b.over[j] && !c.passed[j] && (xx == x || yy == y):
					c.passed[j] = true
					stack = append(stack, j)
					c.rim(j)
				case !in && f.label[j] != c.to:
					c.rim(j)
				}
			}
		}
	}
	return met
}

// rim gives the area its share of a pixel beside it.
func (c *carver) rim(i int) {
	if f := &c.d.f; c.in[f.beside[i]] {
		f.beside[i] = c.to
	}
}

// under relabels barred pixels, and returns those that lie beside them.
func (c *carver) under(met []int, barred map[int]bool) (next []int) {
	w, h := c.d.a.w, c.d.a.h
	for _, i := range met {
		if !c.in[c.d.f.label[i]] {
			continue // met twice
		}
		c.take(i)
		x, y := i%w, i/w
		for _, n := range [4][2]int{{x - 1, y}, {x + 1, y}, {x, y - 1}, {x, y + 1}} {
			if j := n[1]*w + n[0]; n[0] >= 0 && n[1] >= 0 && n[0] < w && n[1] < h && barred[j] {
				next = append(next, j)
			}
		}
	}
	return next
}
