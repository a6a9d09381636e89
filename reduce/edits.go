package reduce

import (
	"fmt"
	"slices"
	"strings"
)

// desk holds boughs and pixels while edits are replayed in order.
type desk struct {
	a        *Analysis
	boughs   []bough
	f        fates
	rolesOff bool
}

// splitMemo remembers the desk after the last split or fill of a list of edits:
// these cost a copy of the labels, the rest of the edits next to nothing.
type splitMemo struct {
	key  string
	desk desk
}

func (a *Analysis) desk(rolesOff bool) desk {
	d := desk{a: a, f: a.f, rolesOff: rolesOff}
	for k, l := range a.leaves {
		if rolesOff {
			l.role = Enamel
		}
		d.boughs = append(d.boughs, bough{leaf: l, id: k, first: k})
	}
	return d
}

// replay does the edits in order.
func (a *Analysis) replay(edits []Edit, rolesOff bool) desk {
	last := -1
	for i := range edits {
		if edits[i].Op == Split || edits[i].Op == Fill {
			last = i
		}
	}
	d := a.desk(rolesOff)
	if last >= 0 {
		key := keyOf(edits[:last+1], rolesOff)
		if a.split.key != key {
			for _, e := range edits[:last+1] {
				d.do(e)
			}
			d.f.seal()
			a.split = splitMemo{key, d}
		}
		d = a.split.desk
		d.boughs = append([]bough(nil), d.boughs...)
	}
	for _, e := range edits[last+1:] {
		d.do(e)
	}
	return d
}

func keyOf(edits []Edit, rolesOff bool) string {
	var b strings.Builder
	fmt.Fprint(&b, rolesOff)
	for _, e := range edits {
		rgb := ""
		if e.RGB != nil {
			rgb = e.RGB.Hex()
		}
		fmt.Fprintf(&b, "|%s %d %d %s %t %s %q %g %g %d", e.Op, e.Flat, e.With, e.Role, e.Locked, rgb, e.Name, e.X, e.Y, e.Count)
		if e.Gap != nil {
			fmt.Fprint(&b, *e.Gap)
		}
		fmt.Fprint(&b, e.Lines)
	}
	return b.String()
}

// do makes one change. A change to a flat that is not there does nothing: the
// drawing may have been replaced by one that lacks it.
func (d *desk) do(e Edit) {
	if e.Flat < 0 || int(e.Flat) >= len(d.boughs) {
		return
	}
	k := d.boughs[e.Flat].first
	b := &d.boughs[k]
	switch e.Op {
	case SetRole:
		d.setRole(e, k)
	case SetLock:
		b.locked = e.Locked
	case SetColour:
		b.painted = e.RGB
	case SetName:
		b.name = strings.TrimSpace(e.Name)
	case Join:
		d.join(e, k)
	case Apart:
		d.keepApart(e, k)
	case Split:
		d.splitOff(e)
	case Fill:
		d.fill(e)
	}
}

// setRole gives a role to all that the flat held when it was touched, which
// from then on stays one flat.
func (d *desk) setRole(e Edit, k int) {
	if d.rolesOff || !known(e.Role) {
		return
	}
	for _, j := range d.held(k, e.Count) {
		d.boughs[j].role = e.Role
		if j != k {
			d.boughs[j].first = k
		}
	}
}

func known(r Role) bool { return r == Enamel || r == Metal || r == CutOut || r == Printed }

// join adds all that one flat held to another, at every count, and with it
// the other's role and colour.
func (d *desk) join(e Edit, k int) {
	if e.With < 0 || int(e.With) >= len(d.boughs) {
		return
	}
	to := d.boughs[e.With].first
	if to == k {
		return
	}
	for _, j := range d.held(k, e.Count) {
		if j != to {
			d.boughs[j].first, d.boughs[j].role = to, d.boughs[to].role
		}
	}
}

// keepApart lets two flats never merge while there are too many.
func (d *desk) keepApart(e Edit, k int) {
	if e.With < 0 || int(e.With) >= len(d.boughs) {
		return
	}
	if to := d.boughs[e.With].first; to != k {
		d.boughs[k].apart = append(slices.Clone(d.boughs[k].apart), to)
		d.boughs[to].apart = append(slices.Clone(d.boughs[to].apart), k)
	}
}

// held returns the boughs of the flat that leads with k at a count; with no
// count, those joined to it by hand.
func (d *desk) held(k, count int) []int {
	if count < 1 {
		count = MaxFlats
	}
	twigs := d.thinOut(count)
	for i := range twigs {
		if twigs[i].lead == k {
			return twigs[i].boughs
		}
	}
	return []int{k}
}

// splitOff makes the area under a place, as seen at the edit's count, a flat
// of its own.
func (d *desk) splitOff(e Edit) {
	at, ok := d.place(e)
	if !ok || d.f.label[at] == None || len(d.boughs) >= MaxFlats {
		return
	}
	t := d.twigAt(int(d.f.label[at]), e.Count)
	b := bough{leaf: d.boughs[t.lead].leaf, id: len(d.boughs), own: true, painted: e.RGB}
	b.first, b.role = b.id, t.role
	b.rgb = flatFrom(t, d.boughs).RGB
	b.lab = b.rgb.OKLab()
	b.area = d.carve(at, d.setOf(t), uint8(b.id), d.bars(&e))
	d.boughs = append(d.boughs, b)
}

// place is the pixel an edit points at.
func (d *desk) place(e Edit) (at int, ok bool) {
	w, h := d.a.w, d.a.h
	x, y := int(e.X*float64(w)), int(e.Y*float64(h))
	return y*w + x, x >= 0 && y >= 0 && x < w && y < h
}

func (d *desk) twigAt(k, count int) *twig {
	if count < 1 {
		count = MaxFlats
	}
	twigs := d.thinOut(count)
	for i := range twigs {
		for _, j := range twigs[i].boughs {
			if j == k {
				return &twigs[i]
			}
		}
	}
	panic("reduce: a pixel without a flat")
}

func (d *desk) setOf(t *twig) *[256]bool {
	var in [256]bool
	for _, k := range t.boughs {
		in[k] = true
	}
	return &in
}
