package calls

import (
	"fmt"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/mend"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// chooseParts finds what a choice for the parts brings with it.
func chooseParts(s *Session, job Job, ask wire.PartsAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	scale, err := scaleOf(u.design, u.base)
	if err != nil {
		return Reply{}, err
	}
	m, err := u.base.shape(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	c := &choosing{subject: u, drawn: m, at: outline.Of(u.design, scale), p: job.Progress}
	c.answer = wire.PartsChosen{Parts: sizing.Parts{Choice: ask.Choice}, Recipes: c.unbridged(), Fits: true}
	switch {
	case !m.Apart(scale) && ask.Choice != sizing.PartsOpen:
		c.answer.Fits, c.answer.Words = false, "It is drawn in one piece; there is nothing to hang or to join."
	case ask.Choice == sizing.PartsDangle:
		c.hang()
	case ask.Choice == sizing.PartsOne:
		err = c.bridge()
	case ask.Choice == sizing.PartsOpen:
		c.answer.Words = "What the parts are is left open."
	default:
		err = fmt.Errorf("calls: parts cannot be %q", ask.Choice)
	}
	return Reply{Answer: c.answer}, err
}

// choosing is a choice on its way.
type choosing struct {
	*subject
	drawn  *outline.Measured
	at     outline.At
	p      reduce.Progress
	answer wire.PartsChosen
}

// unbridged is the recipes without the bridges from part to part.
func (c *choosing) unbridged() []sizing.Recipe {
	kept := []sizing.Recipe{}
	for i := range c.design.Recipes {
		if r := &c.design.Recipes[i]; !c.drawn.JoinsParts(r) {
			kept = append(kept, *r)
		}
	}
	return kept
}

// hang proposes eyes.
func (c *choosing) hang() {
	found, fits := c.drawn.Joins(c.at)
	c.answer.Parts.Joins, c.answer.Fits = found, fits
	drawn := len(found) > 0 && !slices.ContainsFunc(found, func(j sizing.Join) bool { return !j.Upper.Drawn || !j.Lower.Drawn })
	switch {
	case !fits:
		c.answer.Words = "There is no room for an eye in or beside every part. Draw the parts farther apart, or larger, or join them by a bridge."
	case drawn:
		c.answer.Words = "The parts hang by the eyes that were drawn."
	default:
		c.answer.Words = "An eye is added to each part, with metal round it."
	}
}

// bridge joins one loose part after the other, each by a bridge that does.
func (c *choosing) bridge() error {
	d := *c.design
	d.Parts, d.Recipes = c.answer.Parts, c.answer.Recipes
	u := *c.subject
	u.design = &d
	c.at.Parts = d.Parts
	tried := map[[2]float64]bool{}
	for {
		f, ok, err := u.nextLoose(tried, c.p)
		if err != nil || !ok {
			break
		}
		tried[[2]float64{f.X, f.Y}] = true
		drawing, err := u.building()
		if err != nil {
			return err
		}
		offers, err := mend.ForOutline(drawing, f, c.at, c.p)
		if err != nil {
			return err
		}
		if len(offers) == 0 {
			c.answer.Fits = false
			continue
		}
		d.Recipes = append(d.Recipes, offers[0].Recipes...)
	}
	c.answer.Recipes = d.Recipes
	c.answer.Words = "A bridge of metal joins the parts."
	if !c.answer.Fits {
		c.answer.Words = mend.WhyOutline(&sizing.Finding{Kind: sizing.LoosePart})
	}
	return nil
}

// nextLoose is a loose part, no speck, that was not tried yet.
func (u *subject) nextLoose(tried map[[2]float64]bool, p reduce.Progress) (f sizing.Finding, ok bool, err error) {
	k, err := u.struck()
	if err != nil {
		return f, false, err
	}
	found, err := u.outlineSpots(k, p)
	if err != nil {
		return f, false, err
	}
	for _, f = range found {
		if f.Kind == sizing.LoosePart && f.Verdict == sizing.Fails && f.Count == 1 && !tried[[2]float64{f.X, f.Y}] {
			return f, true, nil
		}
	}
	return f, false, nil
}

// eyes says how the parts hang by some joins, by lookup in what is drawn.
func eyes(s *Session, job Job, ask wire.EyesAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	scale, err := scaleOf(u.design, u.base)
	if err != nil {
		return Reply{}, err
	}
	m, err := u.base.shape(job.Progress)
	if err != nil {
		return Reply{}, err
	}
	at := outline.Of(u.design, scale)
	at.Parts.Joins = ask.Joins
	return Reply{Answer: u.hangings(m, at)}, nil
}

// parts says how what is struck holds together; nil when it is drawn in one
// piece and nobody said otherwise.
func (u *subject) parts(k *struck, p reduce.Progress) (*wire.HeldParts, error) {
	m, err := u.base.shape(p)
	if err != nil {
		return nil, err
	}
	at := outline.Of(u.design, k.badge.Scale)
	if !m.Apart(at.Scale) && at.Parts.Choice == sizing.PartsOpen {
		return nil, nil
	}
	w := u.hangings(m, at)
	struck, err := u.shapeOf(k, p)
	if err != nil {
		return nil, err
	}
	w.Loose = struck.LooseAt(at)
	if w.Choice == sizing.PartsOpen && w.Count > 1 && !struck.Apart(at.Scale) {
		w.Choice = sizing.PartsOne
	}
	w.Says = partsSay(&w)
	return &w, nil
}

// chain is the rings and links of all joins; none where nothing hangs.
func (u *subject) chain(scale unit.PxPerMM, p reduce.Progress) (all []sizing.Loop, err error) {
	if u.design.Parts.Choice != sizing.PartsDangle {
		return nil, nil
	}
	m, err := u.base.shape(p)
	if err != nil {
		return nil, err
	}
	at := outline.Of(u.design, scale)
	for i := range at.Parts.Joins {
		j := &at.Parts.Joins[i]
		all = append(all, j.Chain(m.HoleOf(&j.Upper, &at), m.HoleOf(&j.Lower, &at), scale)...)
	}
	return all, nil
}

// hangings is every join as it hangs.
func (u *subject) hangings(m *outline.Measured, at outline.At) wire.HeldParts {
	w := wire.HeldParts{Count: m.PartsAt(at), Choice: at.Parts.Choice, Joins: []wire.Hanging{}}
	if w.Choice != sizing.PartsDangle {
		return w
	}
	for i := range at.Parts.Joins {
		w.Joins = append(w.Joins, u.hanging(m, &at.Parts.Joins[i], at))
	}
	return w
}

func (u *subject) hanging(m *outline.Measured, j *sizing.Join, at outline.At) wire.Hanging {
	a, b := m.HoleOf(&j.Upper, &at), m.HoleOf(&j.Lower, &at)
	h := wire.Hanging{
		Upper: u.hangingEye(m, &j.Upper, a, at), Lower: u.hangingEye(m, &j.Lower, b, at),
		Ring: unit.Shown(j.RingUsed()), Links: max(0, j.Links), Loops: append([]sizing.Loop{}, j.Chain(a, b, at.Scale)...),
	}
	drop := j.Drop() + at.Scale.MM((a.Across+b.Across)/2)
	far := at.Scale.MM(holesApart(a, b))
	h.Drop = unit.Shown(drop)
	h.Says = hangsWords(drop, far)
	switch {
	case j.TooSmall(at.Limits.EyeRim):
		h.Problem = fmt.Sprintf("Rings of %s do not go round %s of metal and what else hangs in them. Take larger ones.", h.Ring.InMM, unit.InMM(at.Limits.EyeRim, 2))
	case eyesMeet(j, a, b, at):
		h.Problem = "The metal round the two eyes meets, so that nothing swings. Move one away."
	}
	return h
}

// hangingEye is an eye at its place, judged when it is one that is added.
func (u *subject) hangingEye(m *outline.Measured, e *sizing.Eye, hole sizing.Hole, at outline.At) wire.HangingEye {
	box := u.base.box
	w := wire.HangingEye{
		X: hole.X, Y: hole.Y, Across: hole.Across, Drawn: e.Drawn,
		Left: unit.Shown(at.Scale.MM(hole.X - box[0])), Top: unit.Shown(at.Scale.MM(hole.Y - box[1])),
	}
	if !e.Drawn {
		w.Rim, w.Room = at.Limits.EyeRim.Px(at.Scale), m.RoomFor(e, at)
		w.Problem = roomWords[w.Room]
	}
	return w
}
