package wall

import (
	"cmp"
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// A width between two edges that cover places finer than a pixel is right to
// within softError pixels, one between hard edges to within hardError.
const (
	softError = 0.25
	hardError = 0.5
)

// errorOf returns the error of widths, in pixels: hard edges must not pass for
// soft ones because a few pixels are mixed.
func errorOf(points []point) float64 {
	soft := 0
	for i := range points {
		if points[i].mixed {
			soft++
		}
	}
	if 2*soft >= len(points) && soft > 0 {
		return softError
	}
	return hardError
}

// threshold returns the width in pixels below which a place is looked at.
// What is narrower by less than a quarter pixel is as good as the limit; where
// the raster is too coarse to tell, a little above is looked at as well.
func threshold(limit, err float64) float64 {
	if err > limit/4 {
		return limit + err
	}
	return limit - min(err, softError)
}

// limits in pixels, by group.
func limitsOf(l sizing.Limits) [groups]unit.MM {
	return [groups]unit.MM{lineGroup: l.Line, rimGroup: l.Edge, areaGroup: l.Area}
}

// Findings returns the trouble spots at a scale, the worst first. It is a
// lookup in what was measured.
func (m *Measured) Findings(scale unit.PxPerMM, l sizing.Limits) []sizing.Finding {
	if !(scale > 0) {
		return nil
	}
	found := m.smallAreas(scale, l)
	small := map[int32]bool{}
	for _, k := range m.tooSmall(scale, l) {
		small[k] = true
	}
	found = append(found, m.narrow(scale, l, small)...)
	found = append(found, m.missing(scale, l)...)
	slices.SortStableFunc(found, worse)
	return found
}

// worse orders findings: what fails, what cannot be told, what is only noted; metal that is
// missing before metal that is thin, then by share of the limit, then length.
func worse(a, b sizing.Finding) int {
	unsure := func(f sizing.Finding) int {
		switch f.Verdict {
		case sizing.Fails:
			return 0
		case sizing.CannotTell:
			return 1
		}
		return 2
	}
	missing := func(f sizing.Finding) int {
		if f.Kind == sizing.NoEdge || f.Kind == sizing.NoLine {
			return 0
		}
		return 1
	}
	share := func(f sizing.Finding) float64 { return math.Round(10 * float64(f.Thinnest/f.Limit)) }
	return cmp.Or(
		cmp.Compare(unsure(a), unsure(b)),
		cmp.Compare(missing(a), missing(b)),
		cmp.Compare(share(a), share(b)),
		cmp.Compare(b.Length, a.Length),
	)
}

// narrow finds what is thinner than its limit: lines, rims and areas.
func (m *Measured) narrow(scale unit.PxPerMM, l sizing.Limits, small map[int32]bool) []sizing.Finding {
	limits := limitsOf(l)
	var under [groups]float32
	for g, mm := range limits {
		under[g] = float32(threshold(mm.Px(scale), m.shaky))
	}
	in := make([]bool, len(m.lines.points))
	for i := range m.lines.points {
		p := &m.lines.points[i]
		in[i] = p.bad < under[p.group] && !(p.group == areaGroup && small[p.part])
	}
	walk := newWalker(&m.lines)
	var found []spot
	for _, p := range m.lines.pieces(in) {
		found = append(found, m.spotOf(p, walk))
	}
	found = m.mergeNear(found, limits, scale, walk)
	out := make([]sizing.Finding, 0, len(found))
	for i := range found {
		g := m.lines.points[found[i].all[0]].group
		if f := m.report(&found[i], walk, limits[g], under[g], scale); f.Verdict != sizing.Holds || f.Kind == sizing.FadesOut {
			out = append(out, f)
		}
	}
	return out
}

// report puts a spot into millimetres.
func (m *Measured) report(s *spot, walk *walker, limit unit.MM, under float32, scale unit.PxPerMM) sizing.Finding {
	points := m.lines.points
	taus := make([]float32, len(s.all))
	worst := &points[s.all[0]]
	soft := 0
	fades, surest := true, never
	for k, i := range s.all {
		p := &points[i]
		taus[k] = p.tau
		if p.mixed {
			soft++
		}
		fades, surest = fades && p.hard >= under, min(surest, p.hard)
		if p.tau < worst.tau || p.tau == worst.tau && (p.y < worst.y || p.y == worst.y && p.x < worst.x) {
			worst = p
		}
	}
	slices.Sort(taus)
	err := hardError
	if 2*soft >= len(taus) {
		err = softError
	}
	half := float64(taus[len(taus)-1]) / 2
	f := sizing.Finding{
		Kind: sizing.ThinLine, Flat: m.flatAt(int(worst.x), int(worst.y)), Other: sizing.Outside, Count: 1,
		X: float64(worst.x) + 0.5, Y: float64(worst.y) + 0.5,
		X0: float64(s.box[0]) + 0.5 - half, Y0: float64(s.box[1]) + 0.5 - half,
		X1: float64(s.box[2]) + 0.5 + half, Y1: float64(s.box[3]) + 0.5 + half,
		Path:     walk.tour(s.all, s.links, twigPx),
		Length:   scale.MM(s.length),
		Thinnest: scale.MM(float64(taus[0])), Typical: scale.MM(float64(taus[len(taus)/2])),
		Error: scale.MM(err), Limit: limit,
	}
	if s.group == areaGroup {
		f.Kind = sizing.NarrowArea
	}
	m.judge(&f, scale, err)
	switch {
	case f.Verdict != sizing.Fails:
	case fades:
		f.Kind, f.Verdict = sizing.FadesOut, sizing.Holds
	case float64(surest) >= limit.Px(scale)-softError:
		// Thin somewhere, but not for long enough to be sure on this raster.
		f.Verdict, f.NeedPx = sizing.CannotTell, m.needPx(scale, limit, err)
	}
	return f
}

// judge gives the verdict and, when the raster cannot tell, the drawing that could.
func (m *Measured) judge(f *sizing.Finding, scale unit.PxPerMM, err float64) {
	f.Verdict = sizing.Judge(f.Thinnest, f.Error, f.Limit)
	if f.Verdict == sizing.CannotTell {
		f.NeedPx = m.needPx(scale, f.Limit, err)
	}
}

// needPx returns the long side of a drawing whose pixels are fine enough to
// judge a limit, rounded up to a hundred.
func (m *Measured) needPx(scale unit.PxPerMM, limit unit.MM, err float64) int {
	times := 4 * err / limit.Px(scale)
	return int(math.Ceil(float64(max(m.s.W, m.s.H))*times/100)) * 100
}

func (m *Measured) flatAt(x, y int) reduce.FlatID {
	l := m.s.Labels[y*m.s.W+x]
	if int(l) >= len(m.s.Flats) {
		return 0
	}
	return m.s.Flats[l].ID
}
