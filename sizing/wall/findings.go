package wall

import (
	"cmp"
	"math"
	"slices"

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
	found := m.sized(scale, l)
	found = append(found, m.missing(scale, l)...)
	found = append(found, m.bays(scale, l)...)
	found = append(found, m.solids(scale, l)...)
	slices.SortStableFunc(found, worse)
	return found
}

// sized returns the trouble spots that a larger size mends, and the notes on
// ends and corners. What is too small as a whole is told once.
func (m *Measured) sized(scale unit.PxPerMM, l sizing.Limits) []sizing.Finding {
	gone := make([]bool, len(m.parts.Label))
	for k := range gone {
		gone[k] = m.isGrain(int32(k))
	}
	found := m.lettering(scale, l, gone)
	found = append(found, m.tiny(scale, l, gone)...)
	return append(found, m.narrow(scale, l, gone)...)
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
		switch {
		case f.Kind.Missing():
			return 0
		case f.Kind == sizing.RoundedCorners:
			return 2
		}
		return 1
	}
	share := func(f sizing.Finding) float64 {
		if f.Limit <= 0 {
			return 0
		}
		return math.Round(10 * float64(f.Thinnest/f.Limit))
	}
	return cmp.Or(
		cmp.Compare(unsure(a), unsure(b)),
		cmp.Compare(missing(a), missing(b)),
		cmp.Compare(share(a), share(b)),
		cmp.Compare(b.Length, a.Length),
	)
}

// narrow finds what is thinner than its limit: lines, rims and areas, but for
// the parts that are gone.
func (m *Measured) narrow(scale unit.PxPerMM, l sizing.Limits, gone []bool) []sizing.Finding {
	limits := limitsOf(l)
	under := m.under(limits, scale)
	in := make([]bool, len(m.lines.points))
	for i := range m.lines.points {
		p := &m.lines.points[i]
		in[i] = p.bad < under[p.group] && !gone[p.part]
	}
	walk := newWalker(&m.lines)
	var thin, fading []spot
	for _, p := range m.lines.pieces(in) {
		if s := m.spotOf(p, walk); m.fades(p, under[s.group]) {
			fading = append(fading, s)
		} else {
			thin = append(thin, s)
		}
	}
	var found []sizing.Finding
	for _, s := range m.mergeNear(thin, limits, scale, walk) {
		if f := m.report(&s, walk, limits[s.group], scale); f.Verdict != sizing.Holds {
			found = append(found, f)
		}
	}
	found = append(found, m.fadingEnds(fading, in, walk, limits, scale)...)
	if f, some := m.corners(in, gone, walk, limits, scale); some {
		found = append(found, f)
	}
	return found
}

// under returns the widths in pixels below which places are looked at.
func (m *Measured) under(limits [groups]unit.MM, scale unit.PxPerMM) (under [groups]float32) {
	for g, mm := range limits {
		under[g] = float32(threshold(mm.Px(scale), m.shaky))
	}
	return under
}

// report puts a spot into millimetres.
func (m *Measured) report(s *spot, walk *walker, limit unit.MM, scale unit.PxPerMM) sizing.Finding {
	f, surest := m.describe(s, walk, limit, scale)
	if s.group == areaGroup {
		f.Kind = sizing.NarrowArea
	}
	m.judge(&f, scale, f.Error.Px(scale))
	if f.Verdict == sizing.Fails && float64(surest) >= limit.Px(scale)-softError {
		// Thin somewhere, but not for long enough to be sure on this raster.
		f.Verdict, f.NeedPx = sizing.CannotTell, m.needPx(scale, limit, f.Error.Px(scale))
	}
	return f
}

// describe measures a spot; surest is the least limit, in px, at which some of
// it is more than a fading end.
func (m *Measured) describe(s *spot, walk *walker, limit unit.MM, scale unit.PxPerMM) (f sizing.Finding, surest float32) {
	points := m.lines.points
	taus := make([]float32, len(s.all))
	worst := &points[s.all[0]]
	soft := 0
	surest = never
	for k, i := range s.all {
		p := &points[i]
		taus[k] = p.tau
		if p.mixed {
			soft++
		}
		surest = min(surest, p.hard)
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
	return sizing.Finding{
		Kind: sizing.ThinLine, Flat: m.flatAt(int(worst.x), int(worst.y)), Other: sizing.Outside, Count: 1,
		X: float64(worst.x) + 0.5, Y: float64(worst.y) + 0.5,
		X0: float64(s.box[0]) + 0.5 - half, Y0: float64(s.box[1]) + 0.5 - half,
		X1: float64(s.box[2]) + 0.5 + half, Y1: float64(s.box[3]) + 0.5 + half,
		Path:     walk.tour(s.all, s.links, twigPx),
		Length:   scale.MM(s.length),
		Thinnest: scale.MM(float64(taus[0])), Typical: scale.MM(float64(taus[len(taus)/2])),
		Error: scale.MM(err), Limit: limit,
	}, surest
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
	return roundedUp(float64(max(m.s.W, m.s.H)) * 4 * err / limit.Px(scale))
}

func roundedUp(px float64) int { return int(math.Ceil(px/100)) * 100 }
