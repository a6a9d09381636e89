package reduce

import (
	"slices"

	"badgewright/reduce/colour"
)

// Carried is what becomes of the edits of one drawing on its next revision.
type Carried struct {
	Edits []Edit
	// Lost are edits that the revision has no place for.
	Lost []LostEdit
	// Laid says where a place of the old drawing is in the new.
	Laid Laid
	// To names for each flat of the old drawing the one of the new that took
	// its place, those that edits made included; a flat that went is not in it.
	To map[FlatID]FlatID
}

// LostEdit is an edit that does not fit a revision, and why.
type LostEdit struct {
	Edit
	Why LostWhy
}

// LostWhy says why an edit does not fit a revision.
type LostWhy string

// The reasons.
const (
	NoSuchFlat   LostWhy = "no such flat"  // its flat is no more
	NothingThere LostWhy = "nothing there" // nothing is drawn at its place
	AnotherThere LostWhy = "another there" // another flat lies at its place
	RunsOut      LostWhy = "runs out"      // its place is no longer closed in
)

// Carry takes the edits made to an old drawing over to its revision.
func Carry(old, now *Analysis, edits []Edit) Carried {
	c := carrying{was: old.desk(false), is: now.desk(false)}
	c.Laid = layOn(old, now)
	c.To = overlaps(old.leafPlane(), now.leafPlane(), c.Laid).matches()
	for _, e := range edits {
		c.carry(e)
	}
	return c.Carried
}

// carrying replays edits on both drawings, so that it is known which of them
// make a flat of their own: a fill makes none where its colour is there already.
type carrying struct {
	Carried
	was, is desk
}

func (c *carrying) carry(e Edit) {
	to, why := c.moved(e)
	made, next := FlatID(len(c.was.boughs)), FlatID(len(c.is.boughs))
	c.was.do(e)
	makes := len(c.was.boughs) > int(made)
	if why != "" {
		c.Lost = append(c.Lost, LostEdit{e, why})
		return
	}
	c.is.do(to)
	c.Edits = append(c.Edits, to)
	if !makes {
		return
	}
	if len(c.is.boughs) == int(next) { // it joined a flat that the revision has already
		at, _ := c.is.place(to)
		next = FlatID(c.is.boughs[c.is.f.label[at]].first)
	}
	c.To[made] = next
}

// moved is an edit as the revision has it; why is empty when it fits.
func (c *carrying) moved(e Edit) (to Edit, why LostWhy) {
	to = e
	if e.Op == Split || e.Op == Fill { // these go by their place
		to.X, to.Y = c.Laid.At(e.X, e.Y)
		to.Gap, to.Lines = c.Laid.gap(e.Gap), c.Laid.lines(e.Lines)
		to.Flat = c.To[e.Flat] // what lay there may be no more: any flat will do
		return to, c.fits(e, to)
	}
	var has bool
	if to.Flat, has = c.To[e.Flat]; !has {
		return e, NoSuchFlat
	}
	if e.Op == Join || e.Op == Apart {
		if to.With, has = c.To[e.With]; !has {
			return e, NoSuchFlat
		}
	}
	return to, ""
}

// fits says why an edit that goes by its place does not fit, if it does not.
func (c *carrying) fits(e, to Edit) LostWhy {
	from, was := c.was.place(e)
	at, is := c.is.place(to)
	if !was || !is {
		return NothingThere
	}
	before, now := c.was.f.label[from], c.is.f.label[at]
	switch {
	case now == None && e.Op == Fill && c.is.opens(at, c.is.bars(&to)):
		return RunsOut
	case now == None && (before != None || e.Op == Split):
		return NothingThere
	case now != None && !c.alike(&e, before, now):
		return AnotherThere
	}
	return ""
}

// alike is true where an edit finds what it found in the old drawing, or what
// it was to become: the artist may have drawn that meanwhile.
func (c *carrying) alike(e *Edit, before, now uint8) bool {
	is := c.is.twigAt(int(now), e.Count)
	if before != None {
		for _, k := range c.was.twigAt(int(before), e.Count).boughs {
			if to, has := c.To[FlatID(k)]; has && slices.Contains(is.boughs, int(to)) {
				return true
			}
		}
	}
	return e.RGB != nil && colour.CIEDE2000(flatFrom(is, c.is.boughs).RGB.Lab(), e.RGB.Lab()) <= sameHue
}
