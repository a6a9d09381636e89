package calls

import (
	"fmt"
	"slices"
	"strings"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

// The sizes of the curves, mm: from smaller than any usual pin to larger.
const (
	curveFrom unit.MM = 10
	curveTo   unit.MM = 80
)

// sizes says at which sizes a picked design holds as it is drawn, by lookup in
// what was measured once.
func sizes(s *Session, job Job, ask wire.SizesAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	m, err := u.base.widths(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	if u.base.curve == nil {
		u.base.curve = m.Curve()
	}
	d := u.design
	answer := wire.Sizes{By: d.Size.By, From: curveFrom, To: curveTo, Rows: []wire.SizesFor{}}
	rows := makings(d)
	if ask.WhatIf != nil {
		rows = []wire.SizesFor{{Making: d.Making, Fill: d.Fill, Limits: *ask.WhatIf, Name: "what if"}}
	}
	for _, r := range rows {
		row, err := u.sizesFor(r, job.Progress)
		if err != nil {
			return Reply{}, err
		}
		answer.Rows = append(answer.Rows, row)
	}
	return Reply{Answer: answer}, nil
}

// makings are the usual ways to make a pin, and that of the design if its
// limits are none of theirs, first.
func makings(d *sizing.Design) []wire.SizesFor {
	rows := []wire.SizesFor{
		{Making: sizing.Struck, Fill: sizing.Soft, Name: "struck, soft enamel"},
		{Making: sizing.Struck, Fill: sizing.Hard, Name: "struck, hard enamel"},
		{Making: sizing.Cast, Fill: sizing.Soft, Name: "cast"},
	}
	found := false
	for i := range rows {
		r := &rows[i]
		r.Limits = sizing.DefaultLimits(r.Making, r.Fill)
		r.Now = !found && r.Making == d.Making && r.Limits == d.Limits
		found = found || r.Now
	}
	if found {
		return rows
	}
	own := wire.SizesFor{Making: d.Making, Fill: d.Fill, Limits: d.Limits, Name: "by your own limits", Now: true}
	return append([]wire.SizesFor{own}, rows...)
}

// sizesFor finds the sizes of one making.
func (u *subject) sizesFor(r wire.SizesFor, p reduce.Progress) (wire.SizesFor, error) {
	by := u.design.Size.By
	holds := u.holdsFrom(u.base.measured, r.Limits)
	var err error
	if r.Ranges, r.Says, err = u.madeAt(holds, r.Limits, p); err != nil {
		return r, err
	}
	r.Lacks = u.base.measured.Lacks(r.Limits, builtBy(u.design.Recipes))
	for mm := curveFrom; mm <= curveTo; mm++ {
		share := wall.Shares{}
		if holds == 0 || mm < holds { // what counts as holding fails in nothing
			share = u.base.curve.At(sizing.ScaleFor(u.base.box, sizing.Size{MM: mm, By: by}), r.Limits)
		}
		r.Curve = append(r.Curve, share)
	}
	return r, nil
}

// madeAt is the sizes at which a measured drawing can be made, whose lines and
// areas hold from a size on, and the same in words.
func (u *subject) madeAt(holds unit.MM, l sizing.Limits, p reduce.Progress) ([]wire.SizeRange, string, error) {
	shape, err := u.shapeHolds(l, p)
	if err != nil {
		return nil, "", err
	}
	m := u.base.measured
	ranges, says := rangesOf(holds, m.Lacks(l, builtBy(u.design.Recipes)), shape)
	building := func(r sizing.Recipe) bool { return r.Kind == sizing.BuildLines }
	if holds == 0 && slices.ContainsFunc(u.design.Recipes, building) {
		// Slivers between bare colours are gone once metal lies there.
		says = "before its lines are built, no size up to 120 mm holds; with them it is judged at your size alone"
	}
	return ranges, says, nil
}

// builtBy tells which missing metal a design builds.
func builtBy(recipes []sizing.Recipe) func(*sizing.Finding) bool {
	edge, lines := false, false
	for _, r := range recipes {
		edge = edge || r.Kind == sizing.OuterEdge
		lines = lines || r.Kind == sizing.BuildLines
	}
	return func(f *sizing.Finding) bool {
		if f.Other == sizing.Outside {
			return edge
		}
		return lines
	}
}

// rangesOf puts the smallest size at which lines and areas hold, 0 when there is
// none, and the sizes at which the outline does into words; where metal is
// missing no size holds.
func rangesOf(holds unit.MM, lacks bool, shape []outline.Sizes) ([]wire.SizeRange, string) {
	from, both := unit.Shown(holds), holdsAll(holds, shape)
	switch {
	case holds == 0:
		return []wire.SizeRange{}, "as drawn, no size up to 120 mm holds"
	case lacks:
		return []wire.SizeRange{}, fmt.Sprintf("lines and areas hold from %s, but metal is missing between colours or round them", from.InMM)
	case len(both) == 0:
		return []wire.SizeRange{}, fmt.Sprintf("lines and areas hold from %s, but the outline bends or breaks there", from.InMM)
	}
	ranges, says := []wire.SizeRange{}, []string{}
	for _, s := range both {
		r := wire.SizeRange{From: unit.Shown(s.From)}
		words := "from " + r.From.InMM
		if s.To < outline.Greatest {
			r.To = unit.Shown(s.To)
			words += " to " + r.To.InMM + "; larger, an arm bends"
		}
		ranges, says = append(ranges, r), append(says, words)
	}
	return ranges, "holds " + strings.Join(says, ", and ")
}
