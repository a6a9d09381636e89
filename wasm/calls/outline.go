package calls

import (
	"cmp"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/mend"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
)

// shape returns the measures of the outline as drawn, found once.
func (b *base) shape(p reduce.Progress) (*outline.Measured, error) {
	if b.outline == nil {
		m, err := outline.Measure(b.sep, p)
		if err != nil {
			return nil, err
		}
		b.outline = m
	}
	return b.outline, nil
}

// shapeOf returns the measures of the outline of what is struck, found once:
// that of the drawing, unless a recipe was placed that may change it.
func (u *subject) shapeOf(k *struck, p reduce.Progress) (m *outline.Measured, err error) {
	if !placed(u.design.Struck()) {
		return u.base.shape(p)
	}
	if k.outline == nil {
		k.outline, err = outline.Measure(k.badge.Sep, p)
	}
	return k.outline, err
}

// outlineSpots is what is wrong with the outline of what is struck.
func (u *subject) outlineSpots(k *struck, p reduce.Progress) ([]sizing.Finding, error) {
	m, err := u.shapeOf(k, p)
	if err != nil {
		return nil, err
	}
	return m.Findings(outline.Of(u.design, k.badge.Scale)), nil
}

// shapeHolds is the sizes at which the outline holds as drawn, by some limits.
func (u *subject) shapeHolds(l sizing.Limits, p reduce.Progress) ([]outline.Sizes, error) {
	m, err := u.base.shape(p)
	if err != nil {
		return nil, err
	}
	at := outline.Of(u.design, 0)
	at.Limits = l
	return m.HoldsIn(u.base.box, u.design.Size.By, at), nil
}

// holdsAll is the sizes at which lines and areas hold, which they do from one on
// (0 for at none), and the outline does too.
func holdsAll(from unit.MM, shape []outline.Sizes) (both []outline.Sizes) {
	for _, s := range shape {
		if from > 0 && from <= s.To {
			both = append(both, outline.Sizes{From: max(from, s.From), To: s.To})
		}
	}
	return both
}

// worstFirst puts what fails before what cannot be told, and notes last.
func worstFirst(found []sizing.Finding) {
	rank := func(f sizing.Finding) int {
		return slices.Index([]sizing.Verdict{sizing.Fails, sizing.CannotTell, sizing.Holds}, f.Verdict)
	}
	slices.SortStableFunc(found, func(a, b sizing.Finding) int { return cmp.Compare(rank(a), rank(b)) })
}

// repairs finds the repairs of one trouble spot, and why there are none.
func (u *subject) repairs(d *mend.Drawing, f sizing.Finding, p reduce.Progress) (found []mend.Tried, why string, err error) {
	if mend.OfOutline(f.Kind) {
		found, err = mend.ForOutline(d, f, outline.Of(u.design, d.Scale), p)
		return found, mend.WhyOutline(&f), err
	}
	found, err = mend.For(d, f, p)
	return found, mend.Why(&f), err
}
