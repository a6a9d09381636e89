package calls

import (
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/apart"
	"badgewright/sizing/eye"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
	"badgewright/wasm/wire"
)

// eyeUsual is what the sight of a pin starts from: a normal eye, the distances
// of the job, and cloths that pins are worn on.
func eyeUsual() wire.EyeUsual {
	return wire.EyeUsual{
		Distances: []wire.NamedDistance{
			{Name: "in the hand", MM: eye.InTheHand}, {Name: "on the lapel", MM: eye.OnTheLapel}, {Name: "across a table", MM: eye.AcrossTheTable},
		},
		Acuity: 1, Thresholds: apart.Usual(),
		Cloths: []wire.NamedColour{
			{Name: "denim", RGB: colour.RGB8{R: 62, G: 82, B: 112}}, {Name: "black felt", RGB: colour.RGB8{R: 28, G: 27, B: 29}},
			{Name: "undyed canvas", RGB: colour.RGB8{R: 214, G: 203, B: 180}}, {Name: "grey wool", RGB: colour.RGB8{R: 126, G: 126, B: 124}},
			{Name: "white shirt", RGB: colour.RGB8{R: 244, G: 244, B: 242}},
		},
		LeastDistance: eye.LeastDistance, GreatestDistance: eye.GreatestDistance,
		LeastAcuity: eye.LeastAcuity, GreatestAcuity: eye.GreatestAcuity,
	}
}

// FillSight adds, to a request that speaks of sight and leaves them out, how a pin is usually
// looked at: by a normal eye, on the lapel, on the first of the cloths.
func FillSight(call string, ask map[string]any) {
	usual := eyeUsual()
	fill := func(key string, value any) {
		if _, has := ask[key]; !has {
			ask[key] = value
		}
	}
	switch call {
	case "look", "reading", "glance":
		fill("viewing", eye.Viewing{Distance: eye.OnTheLapel, Acuity: usual.Acuity})
		fill("cloth", usual.Cloths[0].RGB)
		fill("thresholds", usual.Thresholds)
	case "neighbours":
		fill("thresholds", usual.Thresholds)
	}
}

// scene is a version as it is looked at.
func (u *subject) scene(k *struck, cloth colour.RGB8) *apart.Scene {
	sep := k.badge.Sep
	flats := append([]reduce.Flat(nil), sep.Flats...)
	given := recolours(u.version)
	for i := range flats {
		if c, ok := given[flats[i].ID]; ok {
			flats[i].RGB = c
		}
	}
	reduce.NamePlainly(flats)
	return &apart.Scene{
		Scale: k.badge.Scale, Size: u.design.Size, LongSide: max(sep.W, sep.H), Flats: flats,
		Plating: platingOf(u.version.Plating), Cloth: cloth,
	}
}

// looked is what is struck, measured and ready to be looked at; asDrawn leaves
// out the recipes, so that another size is a lookup.
func (u *subject) looked(asDrawn bool, p reduce.Progress) (*struck, error) {
	if !asDrawn && len(u.design.Struck()) > 0 {
		return u.measured(p)
	}
	scale, err := scaleOf(u.design, u.base)
	if err != nil {
		return nil, err
	}
	if _, err := u.base.widths(p); err != nil {
		return nil, err
	}
	return u.session.unbuilt(u.base, scale), nil
}

// reading says what can be read from a distance.
func reading(s *Session, job Job, ask wire.ReadingAsk) (Reply, error) {
	if err := checkSight(ask.Viewing, &ask.Thresholds); err != nil {
		return Reply{}, err
	}
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := u.looked(ask.AsDrawn, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	l := look{u: u, k: k, scene: u.scene(k, ask.Cloth), t: &ask.Thresholds}
	answer := wire.ReadingAnswer{At: l.at(ask.Viewing), Rows: []wire.ReadingAt{}}
	answer.At.Findings = l.findings(ask.Viewing)
	for _, d := range eyeUsual().Distances {
		row := l.at(eye.Viewing{Distance: d.MM, Acuity: ask.Viewing.Acuity})
		row.Findings = []apart.Reading{}
		answer.Rows = append(answer.Rows, row)
	}
	return Reply{Answer: answer}, nil
}

func checkSight(v eye.Viewing, t *apart.Thresholds) error {
	if err := v.Check(); err != nil {
		return err
	}
	return t.Check()
}

// look is a version looked at by thresholds.
type look struct {
	u     *subject
	k     *struck
	scene *apart.Scene
	t     *apart.Thresholds
}

// at is what can be read from one distance, in short.
func (l *look) at(v eye.Viewing) wire.ReadingAt {
	m, marks := l.k.measured, l.u.design.Lettering
	r := wire.ReadingAt{
		Name: nameOfDistance(v.Distance), Viewing: v,
		Gap: unit.Shown(v.Size(l.t.Gap)), Letter: unit.Shown(v.Size(l.t.Letter)), LetterBest: unit.Shown(v.Size(l.t.LetterBest)),
	}
	tally := apart.Count(m, marks, l.scene, v, l.t)
	r.Fail, r.Unsure = tally.Fail, tally.Unsure
	r.Lines, r.Areas = l.u.curveOf(l.k).Parted(v.Size(l.t.Gap).Px(l.scene.Scale))
	r.ReadFrom, _ = apart.ReadFrom(m, marks, l.scene, v, l.t)
	r.Words = readingWords(&r, tally.Letters)
	return r
}

// findings are the details that are not surely parted, as they go on the wire.
func (l *look) findings(v eye.Viewing) []apart.Reading {
	all := apart.Read(l.k.measured, l.u.design.Lettering, l.scene, v, l.t)
	for i := range all {
		if all[i].Path == nil {
			all[i].Path = []float32{} // a list on the wire, even when empty
		}
	}
	return all
}

// curveOf puts in order, once, what of a measured pin fails at which limit.
func (u *subject) curveOf(k *struck) *wall.Curve {
	kept := &k.curve
	if k.measured == u.base.measured {
		kept = &u.base.curve
	}
	if *kept == nil {
		*kept = k.measured.Curve()
	}
	return *kept
}

func nameOfDistance(mm unit.MM) string {
	for _, d := range eyeUsual().Distances {
		if d.MM == mm {
			return d.Name
		}
	}
	return fmt.Sprintf("from %.4g m", float64(mm)/1000)
}

// readingWords is the answer in a sentence.
func readingWords(r *wire.ReadingAt, letters int) string {
	switch {
	case r.Fail == 0 && r.Unsure == 0:
		return "everything can be told apart"
	case letters > 0:
		return "the lettering is too small to read"
	case r.Fail == 0:
		return "nothing surely runs together, but this drawing is too coarse to tell everywhere"
	}
	return fmt.Sprintf("%s of the lines and %s of the areas can be told apart", shareSays(r.Lines), shareSays(r.Areas))
}

// shareSays is a share in words; what is not all is never rounded up to it.
func shareSays(v float64) string {
	if v >= 1 {
		return "all"
	}
	return fmt.Sprintf("%.0f %%", math.Floor(100*v))
}
