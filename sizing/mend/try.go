package mend

import (
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// mostFollowing is how many repairs may follow from one.
const mostFollowing = 8

// manner is how much is asked of a repair, and what is made with it.
type manner int

const (
	alone     manner = iota // the trouble spot goes by this repair, and nothing new is wrong
	following               // what it leaves or brings about is repaired with it
	easing                  // as alone, but part of a long spot may stay
)

// try applies a repair to what is on the bench and measures round it again.
// What was made stays, and is returned, when it does as the manner asks;
// otherwise it is taken back.
func (b *bench) try(f *sizing.Finding, o Offer, how manner) (made []sizing.Recipe, stays bool, err error) {
	q := b.round(f, o.Recipes)
	before, err := b.before(q)
	if err != nil {
		return nil, false, err
	}
	room := b.wider(q, 3*reachOf*b.most())
	was := b.keep(room)
	next := o.Recipes
	for {
		if err = b.apply(next); err != nil {
			break
		}
		if len(made) == 0 && !b.differs(was) {
			break // it does nothing here: what would follow is another repair
		}
		made = append(made, next...)
		var after []sizing.Finding
		if after, err = b.locally(q); err != nil {
			break
		}
		left := b.wrong(f, before, after)
		if len(left) == 0 || how == easing && eased(f, left) {
			clear(b.seen)
			return made, true, nil
		}
		if how != following || len(made) > mostFollowing {
			break
		}
		if next = b.after(left, room); len(next) == 0 {
			break
		}
	}
	b.takeBack(was)
	return nil, false, err
}

// eased says whether no more than half of a trouble spot is left, and nothing
// else is wrong.
func eased(f *sizing.Finding, left []sizing.Finding) bool {
	var sum unit.MM
	for i := range left {
		if left[i].Kind != f.Kind || left[i].Thinnest < f.Thinnest-f.Error {
			return false
		}
		sum += left[i].Length
	}
	return 2*sum <= f.Length
}

// wrong returns what is left of a trouble spot, and what fails that did not
// fail before or is much worse than it was.
func (b *bench) wrong(f *sizing.Finding, before, after []sizing.Finding) []sizing.Finding {
	var left []sizing.Finding
	for i := range after {
		g := &after[i]
		switch {
		case g.Kind == f.Kind && meet(g, f, 1):
			left = append(left, *g)
		case g.Verdict == sizing.Fails:
			if o := match(g, before, b.most()); o == nil || worsened(o, g) {
				left = append(left, *g)
			}
		}
	}
	return left
}

// after returns the gentlest repair of each trouble spot that is left, if they
// all have one whose reach lies within a box.
func (b *bench) after(left []sizing.Finding, within box) []sizing.Recipe {
	var all []sizing.Recipe
	for i := range left {
		ideas := b.spot(&left[i]).ideas()
		if len(ideas) == 0 || !ideas[0].Gentle || !within.holds(b.round(&left[i], ideas[0].Recipes)) {
			return nil
		}
		all = append(all, ideas[0].Recipes...)
	}
	return all
}

// match finds, among trouble spots, one that fails and is the same as another.
func match(g *sizing.Finding, all []sizing.Finding, near float64) *sizing.Finding {
	for i := range all {
		if o := &all[i]; o.Verdict == sizing.Fails && o.Kind == g.Kind && meet(g, o, near) {
			return o
		}
	}
	return nil
}

// worsened says whether a trouble spot is thinner than it was by more than a
// measure may be wrong, or longer.
func worsened(was, is *sizing.Finding) bool {
	if is.Kind == sizing.OpenArea { // a narrower opening is no worse
		return false
	}
	return is.Thinnest < was.Thinnest-was.Error || is.Length > was.Length+is.Limit
}

// meet says whether the boxes of two trouble spots come within some pixels.
func meet(a, b *sizing.Finding, near float64) bool {
	return a.X0 <= b.X1+near && b.X0 <= a.X1+near && a.Y0 <= b.Y1+near && b.Y0 <= a.Y1+near
}
