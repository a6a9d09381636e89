package reduce

import (
	"fmt"
	"slices"
)

// Lined is true when dark connected line work was found, which is proposed as
// metal.
func (a *Analysis) Lined() bool { return a.line != nil }

// Reduce returns the flat drawing at a count of enamels, with all edits done.
// It relabels by table and is cheap; the result is the caller's to keep.
func (a *Analysis) Reduce(o Options) (*Separation, error) {
	most := MaxCount
	if o.RolesOff {
		most = MaxFlats
	}
	if o.Count < 1 || o.Count > most {
		return nil, &Refusal{What: fmt.Sprintf("A drawing cannot be reduced to %d colours.", o.Count),
			Do: fmt.Sprintf("Choose a number from 1 to %d.", most)}
	}
	d := a.replay(o.Edits, o.RolesOff)
	flats, table := d.flats(o.Count)
	s := &Separation{W: a.w, H: a.h, Flats: flats}
	s.Labels, s.Beside, s.Cover = relabel(&d.f, table)
	return s, nil
}

// flats returns the flats at a count, by rising ID, and the table that takes
// boughs to them.
func (d *desk) flats(count int) ([]Flat, *[256]uint8) {
	twigs := d.thinOut(count)
	slices.SortFunc(twigs, func(s, t twig) int { return s.lead - t.lead })
	var table [256]uint8
	for l := range table {
		table[l] = None
	}
	total := 0.0
	for i := range twigs {
		total += twigs[i].area
	}
	flats, plain := make([]Flat, len(twigs)), make([]bool, len(twigs))
	for i := range twigs {
		flats[i], plain[i] = flatFrom(&twigs[i], d.boughs), d.boughs[twigs[i].lead].name == ""
		flats[i].Share = twigs[i].area / total
		for _, k := range twigs[i].boughs {
			table[k] = uint8(i)
		}
	}
	shorten(flats, plain)
	return flats, &table
}

// relabel takes every pixel to its flat; a mix of two that became one is whole.
func relabel(f *fates, table *[256]uint8) (label, beside, cover []uint8) {
	label, beside = make([]uint8, len(f.label)), make([]uint8, len(f.label))
	to := label[:len(f.label)]
	for i, l := range f.label {
		to[i] = table[l]
	}
	copy(beside, label)
	cover = append([]uint8(nil), f.cover...)
	for _, i := range f.mixed {
		b := table[f.beside[i]]
		beside[i] = b
		if b == label[i] {
			cover[i] = 255
		}
	}
	return label, beside, cover
}

const (
	// paintedGain: another colour in a painting is suggested while it takes at
	// least this share off the mean difference.
	paintedGain = 0.11
)

// Suggested returns the number of enamels the drawing has, 1..MaxCount, and
// why, in words.
func (a *Analysis) Suggested() (count int, reason string) {
	if a.painted {
		return a.suggestPainted()
	}
	n, gradients := a.enamelColours()
	metal := ""
	switch {
	case a.inked:
		metal = " and lines of their own, which become metal"
	case a.Lined():
		metal = " and dark lines, which become metal"
	}
	count = min(max(n, 1), MaxCount)
	reason = fmt.Sprintf("This drawing has %s%s.", colours(n), metal)
	if gradients > 0 {
		reason += " Soft shading counts as one colour; choose more colours to keep steps of it."
	}
	if n > MaxCount {
		reason += fmt.Sprintf(" The closest are joined to make %d.", MaxCount)
	}
	return count, reason
}

func colours(n int) string {
	if n == 1 {
		return "1 colour"
	}
	return fmt.Sprintf("%d colours", n)
}

// enamelColours counts the enamel colours that an artist would count, and the
// gradients among them.
func (a *Analysis) enamelColours() (n, gradients int) {
	d := a.desk(false)
	for _, t := range d.plain() {
		if t.role != Enamel {
			continue
		}
		n++
		if t.blend >= 0 && len(t.boughs) > 1 {
			gradients++
		}
	}
	return n, gradients
}

// suggestPainted takes colours while each still brings the picture a good deal
// closer.
func (a *Analysis) suggestPainted() (int, string) {
	losses, err := a.Losses(nil)
	if err != nil || len(losses) == 0 {
		return 1, "This drawing has soft shading all over."
	}
	n := 3
	for n < len(losses) && losses[n-1].Mean-losses[n].Mean >= paintedGain*losses[n-1].Mean {
		n++
	}
	n = min(n, len(losses))
	return n, fmt.Sprintf("This drawing is shaded softly and has no count of its own; beyond %d colours each further one brings it only a little closer.", n)
}
