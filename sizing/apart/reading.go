package apart

import (
	"cmp"
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/eye"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// reader holds what one look at a pin needs.
type reader struct {
	m     *wall.Measured
	s     *Scene
	v     eye.Viewing
	t     *Thresholds
	lines map[[3]colour.RGB8]noticing
}

// noticing is a line between two colours, and the width from which it is
// noticed, minutes of arc; 0 for never.
type noticing struct {
	line eye.Line
	from float64
}

// Read returns what is not surely parted from a distance, and all lettering,
// found and marked; the worst first. It is a lookup in what was measured.
func Read(m *wall.Measured, marks []sizing.LetterMark, s *Scene, v eye.Viewing, t *Thresholds) []Reading {
	r := &reader{m, s, v, t, map[[3]colour.RGB8]noticing{}}
	found := []Reading{}
	for _, n := range m.NarrowerThan(v.Size(t.Gap).Px(s.Scale)) {
		if f := r.stretch(&n); f.Parted != sizing.Holds {
			found = append(found, f)
		}
	}
	found = append(found, r.lettering(marks)...)
	slices.SortStableFunc(found, worse)
	return found
}

// Tally counts what Read finds: what fails, what cannot be told, and of the
// first what is lettering.
type Tally struct{ Fail, Unsure, Letters int }

// Count counts what Read finds, without describing it.
func Count(m *wall.Measured, marks []sizing.LetterMark, s *Scene, v eye.Viewing, t *Thresholds) (c Tally) {
	r := &reader{m, s, v, t, map[[3]colour.RGB8]noticing{}}
	need := v.Size(t.Gap).Px(s.Scale)
	widths, err := m.WidthsUnder(need)
	for _, px := range widths {
		c.add(judge(px, err, need))
	}
	fail := c.Fail
	for _, f := range r.lettering(marks) {
		c.add(f.Parted)
	}
	c.Letters = c.Fail - fail
	return c
}

func (c *Tally) add(v sizing.Verdict) {
	switch v {
	case sizing.Fails:
		c.Fail++
	case sizing.CannotTell:
		c.Unsure++
	}
}

// worse orders readings: letters first, as they are what is read; then what is
// not parted, by how far it falls short, and the longer first.
func worse(a, b Reading) int {
	letters := func(r *Reading) int {
		if r.Detail == Lettering && r.Parted != sizing.Holds {
			return 0
		}
		return 1
	}
	return cmp.Or(
		cmp.Compare(rank(a.Parted), rank(b.Parted)),
		cmp.Compare(letters(&a), letters(&b)),
		cmp.Compare(math.Round(10*float64(a.Measured/a.Need)), math.Round(10*float64(b.Measured/b.Need))),
		cmp.Compare(b.Length, a.Length),
	)
}

func rank(v sizing.Verdict) int {
	switch v {
	case sizing.Fails:
		return 0
	case sizing.CannotTell:
		return 1
	}
	return 2
}

// stretch judges a stretch of metal or enamel.
func (r *reader) stretch(n *wall.Narrow) Reading {
	f := Reading{
		Detail: Area, Flat: n.Flat, Beside: n.Beside, X: n.X, Y: n.Y, X0: n.X0, Y0: n.Y0, X1: n.X1, Y1: n.Y1,
		Path: n.Path, Length: r.s.Scale.MM(n.Length), Built: n.Built,
	}
	switch {
	case n.Edge:
		f.Detail = Edge
	case n.Metal:
		f.Detail = Line
	}
	r.judge(&f, n.From, n.Error, r.v.Size(r.t.Gap))
	r.notice(&f, n.Thinnest, n.Error)
	return f
}

// judge says whether a width in pixels, or a height, is parted.
func (r *reader) judge(f *Reading, px, err float64, need unit.MM) {
	needPx := need.Px(r.s.Scale)
	f.Measured, f.Error, f.Need = r.s.Scale.MM(px), r.s.Scale.MM(err), need
	f.Arcmin = r.v.Arcmin(f.Measured)
	f.Parted = judge(px, err, needPx)
	if !f.Built {
		f.PartedFrom = r.s.sizeFor(needPx, passes(px, err))
	}
	if f.Parted == sizing.CannotTell {
		f.NeedPx = r.finer(sureFrom * err / px)
	}
}

// finer is the long side of a drawing so many times as fine, rounded up to a
// hundred.
func (r *reader) finer(by float64) int {
	return int(math.Ceil(float64(r.s.LongSide)*by/100)) * 100
}

// notice says what leaving a width in pixels out would change, in the
// reflection of the metal in which it changes less.
func (r *reader) notice(f *Reading, px, err float64) {
	arc := func(px float64) float64 { return r.v.Arcmin(r.s.Scale.MM(max(px, 0))) }
	least, most, from := math.Inf(1), math.Inf(1), 0.0
	f.Difference = math.Inf(1)
	for k := range reflections {
		l := r.line(f, k)
		f.Difference = min(f.Difference, l.line.Difference(arc(px)))
		least, most = min(least, l.line.Difference(arc(px-err))), min(most, l.line.Difference(arc(px+err)))
		if l.from == 0 {
			from = math.Inf(1)
		}
		from = max(from, l.from)
	}
	switch lo, hi := min(least, most), max(least, most); {
	case lo >= r.t.Noticed:
		f.Noticed = sizing.Holds
	case hi < r.t.Noticed:
		f.Noticed = sizing.Fails
	default:
		f.Noticed = sizing.CannotTell
		f.NeedPx = max(f.NeedPx, r.finer(2))
	}
	if !f.Built && !math.IsInf(from, 1) {
		f.NoticedFrom = r.s.sizeFor(r.v.Size(from).Px(r.s.Scale), px)
	}
}

// line is a detail between what is beside it, in a reflection of the metal.
func (r *reader) line(f *Reading, reflection int) noticing {
	key := [3]colour.RGB8{r.s.colourOf(f.Flat, reflection), r.s.colourOf(f.Beside[0], reflection), r.s.colourOf(f.Beside[1], reflection)}
	n, ok := r.lines[key]
	if !ok {
		n.line = eye.NewLine(key[0], key[1], key[2])
		n.from = n.line.NoticedFrom(r.t.Noticed)
		r.lines[key] = n
	}
	return n
}

// lettering judges all rows that were found, and the capitals that were marked
// outside them.
func (r *reader) lettering(marks []sizing.LetterMark) []Reading {
	var all []Reading
	rows := r.m.Rows()
	for i := range rows {
		w := &rows[i]
		f := Reading{
			Detail: Lettering, Flat: w.Flat, Beside: [2]reduce.FlatID{w.On, w.On},
			X: w.X, Y: w.Y, X0: w.X0, Y0: w.Y0, X1: w.X1, Y1: w.Y1, Path: w.Base, Length: r.s.Scale.MM(w.Length),
		}
		r.capital(&f, w.Height, w.Error, w.Stroke)
		all = append(all, f)
	}
	for _, mark := range marks {
		if f, ok := r.marked(mark, rows); ok {
			all = append(all, f)
		}
	}
	return all
}

func (r *reader) capital(f *Reading, height, err, stroke float64) {
	f.Better = r.v.Size(r.t.LetterBest)
	r.judge(f, height, err, r.v.Size(r.t.Letter))
	r.notice(f, stroke, err)
}

// marked judges a marked capital; ok is false where it marks nothing, or a row
// that was found.
func (r *reader) marked(mark sizing.LetterMark, rows []wall.Row) (Reading, bool) {
	m, lies := r.m.Marked(mark, 1, sizing.Limits{})
	if lies == sizing.OffThePin {
		return Reading{}, false
	}
	for i := range rows {
		if w := &rows[i]; m.X >= w.X0 && m.X <= w.X1 && m.Y >= w.Y0 && m.Y <= w.Y1 {
			return Reading{}, false
		}
	}
	_, beside := r.m.BesideAt(m.X, m.Y)
	f := Reading{
		Detail: Lettering, Flat: m.Flat, Beside: beside, X: m.X, Y: m.Y, X0: m.X0, Y0: m.Y0, X1: m.X1, Y1: m.Y1,
		Path: m.Path, Length: r.s.Scale.MM(float64(m.Length)),
	}
	r.capital(&f, float64(m.Thinnest), float64(m.Error), r.m.At(m.X, m.Y).Width)
	return f, true
}

// ReadFrom is the size from which everything is parted, and that from which
// lettering alone is; their mm are 0 where no pin is large enough, and those of
// letters also where there is none.
func ReadFrom(m *wall.Measured, marks []sizing.LetterMark, s *Scene, v eye.Viewing, t *Thresholds) (all, letters unit.Length) {
	r := &reader{m, s, v, t, map[[3]colour.RGB8]noticing{}}
	drawn, built, err := m.Narrowest()
	need := v.Size(t.Gap).Px(s.Scale)
	all = unit.Shown(sizing.LeastSize)
	if !math.IsInf(drawn, 1) {
		all = s.sizeFor(need, passes(drawn, err))
	}
	if judge(built, err, need) == sizing.Fails {
		all = unit.Length{} // what recipes build is as wide at every size
	}
	for i, f := range r.lettering(marks) {
		if i == 0 || letters.MM > 0 {
			letters = larger(letters, f.PartedFrom)
		}
		if all.MM > 0 {
			all = larger(all, f.PartedFrom)
		}
	}
	return all, letters
}

// larger of two sizes; one whose mm are 0 is none, and stays so.
func larger(a, b unit.Length) unit.Length {
	if b.MM == 0 || b.MM > a.MM {
		return b
	}
	return a
}
