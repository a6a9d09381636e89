package outline

import (
	"cmp"
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// At is what a silhouette is judged by: a size, limits, the metal, and what the
// person said of its parts.
type At struct {
	Scale     unit.PxPerMM
	Limits    sizing.Limits
	Base      sizing.BaseMetal
	Thickness unit.MM // of the metal, recesses not taken off
	Parts     sizing.Parts
}

// Of returns what a design is judged by at a scale.
func Of(d *sizing.Design, scale unit.PxPerMM) At {
	return At{Scale: scale, Limits: d.Limits, Base: d.Base, Thickness: d.Thickness, Parts: d.Parts}
}

// px2 brings mm2 to pixels.
func (at *At) px2(mm2 float64) float64 { return mm2 * float64(at.Scale) * float64(at.Scale) }

// Findings returns the trouble spots of the silhouette, the worst first. It is a
// lookup in what was measured. Cut-outs too small to make are found with the
// line work.
func (m *Measured) Findings(at At) []sizing.Finding {
	if !(at.Scale > 0) || math.IsInf(float64(at.Scale), 1) {
		return nil
	}
	found := m.looseParts(&at)
	found = append(found, m.weakEyes(&at)...)
	arms := m.longArms(&at)
	thin := m.thinPlaces(&at, arms)
	found = append(found, thin...)
	found = append(found, arms...)
	found = append(found, notOn(thin, m.sharpTips(&at))...)
	slices.SortStableFunc(found, worse)
	return found
}

// notOn leaves out the tips of what is too thin as a whole: the tip is the
// lesser trouble.
func notOn(thin, tips []sizing.Finding) []sizing.Finding {
	return slices.DeleteFunc(tips, func(t sizing.Finding) bool {
		return slices.ContainsFunc(thin, func(f sizing.Finding) bool { return f.Verdict == sizing.Fails && inBox(&f, t.X, t.Y) })
	})
}

// boxSlack is how far outside a spot's box a place may lie to be in it, px.
const boxSlack = 2

func inBox(f *sizing.Finding, x, y float64) bool {
	return x >= f.X0-boxSlack && x <= f.X1+boxSlack && y >= f.Y0-boxSlack && y <= f.Y1+boxSlack
}

// worse orders findings: what fails, what cannot be told, what is noted; parts
// before what is too small; then by share of the limit, place by place.
func worse(a, b sizing.Finding) int {
	return cmp.Or(
		cmp.Compare(rank(a.Verdict), rank(b.Verdict)),
		cmp.Compare(order(a.Kind), order(b.Kind)),
		cmp.Compare(share(&a), share(&b)),
		cmp.Compare(a.Y, b.Y),
		cmp.Compare(a.X, b.X),
	)
}

func rank(v sizing.Verdict) int {
	return slices.Index([]sizing.Verdict{sizing.Fails, sizing.CannotTell, sizing.Holds}, v)
}

func order(k sizing.Kind) int {
	return slices.Index([]sizing.Kind{sizing.LoosePart, sizing.GrownTogether, sizing.WeakEye, sizing.ThinBridge, sizing.LongArm, sizing.SharpTip}, k)
}

func share(f *sizing.Finding) float64 {
	if f.Limit <= 0 {
		return 0
	}
	return math.Round(10 * float64(f.Thinnest/f.Limit))
}

// judge gives the verdict and, when the raster cannot tell, the drawing that could.
func (m *Measured) judge(f *sizing.Finding, scale unit.PxPerMM, err float64) {
	f.Verdict = sizing.Judge(f.Thinnest, f.Error, f.Limit)
	if f.Verdict == sizing.CannotTell {
		times := 4 * err / f.Limit.Px(scale)
		f.NeedPx = int(math.Ceil(float64(max(m.v.w, m.v.h))*times/100)) * 100
	}
}

func (m *Measured) flatAt(node int32) reduce.FlatID {
	n := &m.g.nodes[node]
	return m.flatNear(float64(n.x), float64(n.y))
}

func (m *Measured) flatNear(x, y float64) reduce.FlatID {
	px, py := min(max(int(x), 0), m.v.w-1), min(max(int(y), 0), m.v.h-1)
	if l := m.v.s.Labels[py*m.v.w+px]; int(l) < len(m.v.s.Flats) {
		return m.v.s.Flats[l].ID
	}
	return 0
}

// pathStep is how far apart places on a path are, in nodes.
const pathStep = 4

// path returns the places of nodes, thinned for drawing; the last one stays.
func (m *Measured) path(list []int32) []float32 {
	var all []float32
	for k, i := range list {
		if n := &m.g.nodes[i]; k%pathStep == 0 || k == len(list)-1 {
			all = append(all, float32(n.x)+0.5, float32(n.y)+0.5)
		}
	}
	return all
}
