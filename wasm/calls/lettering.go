package calls

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// lettered says how each marked capital of what is struck holds.
func (u *subject) lettered(k *struck) []sizing.Lettered {
	var all []sizing.Lettered
	for _, mark := range u.design.Lettering {
		f, lies := k.measured.Marked(mark, k.badge.Scale, u.design.Limits)
		all = append(all, sizing.Lettered{
			Mark: mark, Lies: lies, Height: f.Thinnest, Least: f.Limit, Verdict: f.Verdict,
			HoldsFrom: k.measured.MarkHoldsFrom(mark, u.base.box, u.design.Size.By, u.design.Limits),
		})
	}
	return all
}

// markedSpots are the marked capitals that do not hold, but for those in
// lettering that was found.
func (u *subject) markedSpots(k *struck, found []sizing.Finding) []sizing.Finding {
	var all []sizing.Finding
	for _, mark := range u.design.Lettering {
		f, _ := k.measured.Marked(mark, k.badge.Scale, u.design.Limits)
		if f.Verdict != sizing.Holds && !toldIn(&f, found) {
			all = append(all, f)
		}
	}
	return all
}

// toldIn is true when the middle of a marked capital lies in lettering that was
// found.
func toldIn(f *sizing.Finding, found []sizing.Finding) bool {
	for i := range found {
		r := &found[i]
		if r.Kind == sizing.SmallLettering && f.X >= r.X0 && f.X <= r.X1 && f.Y >= r.Y0 && f.Y <= r.Y1 {
			return true
		}
	}
	return false
}

// holdsFrom is the smallest size at which lines, areas and lettering of the
// drawing hold, marked capitals too; 0 for none.
func (u *subject) holdsFrom(m *wall.Measured, l sizing.Limits) unit.MM {
	by := u.design.Size.By
	from := m.HoldsFrom(u.base.box, by, l)
	for _, mark := range u.design.Lettering {
		if from == 0 || !asked(m, mark, l) {
			continue
		}
		own := m.MarkHoldsFrom(mark, u.base.box, by, l)
		if own == 0 {
			return 0
		}
		from = max(from, own)
	}
	return from
}

// asked is true when a height is asked of a marked capital.
func asked(m *wall.Measured, mark sizing.LetterMark, l sizing.Limits) bool {
	f, _ := m.Marked(mark, 1, l)
	return f.Limit > 0
}

// marks moves marked capitals to where they now are; one where nothing is drawn
// any more is lost.
func (r *revision) marks() []sizing.LetterMark {
	var out []sizing.LetterMark
	for _, mark := range r.design.Lettering {
		var m sizing.LetterMark
		m.X0, m.Y0 = r.carried.Laid.At(mark.X0, mark.Y0)
		m.X1, m.Y1 = r.carried.Laid.At(mark.X1, mark.Y1)
		if !r.now.found.DrawnAlong(m.Points()) {
			r.ref.Lost = append(r.ref.Lost, "A mark of lettering: "+lostWhy[reduce.NothingThere]+".")
			continue
		}
		out = append(out, m)
	}
	return out
}
