package calls

import (
	"fmt"

	"badgewright/sizing"
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
	if ask.WhatIf != nil {
		answer.Rows = append(answer.Rows, u.sizesFor(wire.SizesFor{Making: d.Making, Fill: d.Fill, Limits: *ask.WhatIf, Name: "what if"}))
		return Reply{Answer: answer}, nil
	}
	for _, r := range makings(d) {
		answer.Rows = append(answer.Rows, u.sizesFor(r))
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
func (u *subject) sizesFor(r wire.SizesFor) wire.SizesFor {
	m, by := u.base.measured, u.design.Size.By
	holds := m.HoldsFrom(u.base.box, by, r.Limits)
	r.Ranges, r.Says = rangesOf(holds, m.Lacks(r.Limits, builtBy(u.design.Recipes)))
	for mm := curveFrom; mm <= curveTo; mm++ {
		share := wall.Shares{}
		if holds == 0 || mm < holds { // what counts as holding fails in nothing
			share = u.base.curve.At(sizing.ScaleFor(u.base.box, sizing.Size{MM: mm, By: by}), r.Limits)
		}
		r.Curve = append(r.Curve, share)
	}
	return r
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

// rangesOf puts the smallest size that holds, 0 when there is none, into words;
// where metal is missing no size holds.
func rangesOf(holds unit.MM, lacks bool) ([]wire.SizeRange, string) {
	from := unit.Shown(holds)
	switch {
	case holds == 0:
		return []wire.SizeRange{}, "as drawn, no size up to 120 mm holds"
	case lacks:
		return []wire.SizeRange{}, fmt.Sprintf("lines and areas hold from %s, but metal is missing between colours or round them", from.InMM)
	}
	return []wire.SizeRange{{From: from}}, "holds from " + from.InMM
}
