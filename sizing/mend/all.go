package mend

import (
	"badgewright/reduce"
	"badgewright/sizing"
)

// Outcome is what repairing all trouble spots comes to.
type Outcome struct {
	Recipes []sizing.Recipe `json:"recipes"` // to be added to the design's
	Before  int             `json:"before"`  // places that failed
	Left    []Unmended      `json:"left"`    // places that still do
	Change  Alteration      `json:"change"`
}

// Unmended is a place that needs the artist, and why.
type Unmended struct {
	Finding sizing.Finding `json:"finding"` // as it is after the repairs
	Why     string         `json:"why"`
}

// mostRounds bounds how many times the whole drawing is measured again: what
// has not come right by then comes no nearer.
const mostRounds = 5

// All repairs every trouble spot that fails, as far as that can be done gently,
// and measures again until nothing fails or nothing more can be done. Then it
// rounds the tips that prick; the rest of the outline wants a look at each.
// p may be nil.
func All(d *Drawing, p reduce.Progress) (*Outcome, error) {
	b, err := newBench(d)
	if err != nil {
		return nil, err
	}
	w := &work{bench: b, struck: b.keep(b.whole()), p: p}
	found := bad(d.Found)
	if d.Found == nil {
		if found, err = w.failing(0); err != nil {
			return nil, err
		}
	}
	w.first = found
	for round := 1; round <= mostRounds && len(found) > 0; round++ {
		more, err := w.round(found)
		if err != nil {
			return nil, err
		}
		if more == 0 {
			break
		}
		if found, err = w.failing(float64(round) / mostRounds); err != nil {
			return nil, err
		}
	}
	if found, err = w.withoutHarm(found); err != nil {
		return nil, err
	}
	tips, sharp, err := w.roundTips()
	if err != nil {
		return nil, err
	}
	o := w.outcome(found)
	o.Before, o.Left = o.Before+tips, append(o.Left, sharp...)
	return o, nil
}

// work is a bench on which everything is repaired.
type work struct {
	*bench
	struck kept // as it was
	first  []sizing.Finding
	done   []done
	stuck  []sizing.Finding // what no repair was found for as things are
	p      reduce.Progress
	share  float64
}

// done is a trouble spot and the repair that was made.
type done struct {
	f       sizing.Finding
	recipes []sizing.Recipe
}

// failing measures the whole drawing and returns what fails.
func (w *work) failing(share float64) ([]sizing.Finding, error) {
	w.share = share
	if err := w.tell(share, "measuring"); err != nil {
		return nil, err
	}
	all, err := w.measure(nil)
	return bad(all), err
}

// bad lists what fails.
func bad(all []sizing.Finding) []sizing.Finding {
	var list []sizing.Finding
	for _, f := range all {
		if f.Verdict == sizing.Fails {
			list = append(list, f)
		}
	}
	return list
}

func (w *work) tell(share float64, step string) error {
	if w.p == nil {
		return nil
	}
	return w.p(share, step)
}

// round tries to repair each place once and returns how many came right.
func (w *work) round(found []sizing.Finding) (more int, err error) {
	for i := range found {
		f := &found[i]
		if err := w.tell(w.share+float64(i)/float64(len(found))/mostRounds, "repairing"); err != nil {
			return more, err
		}
		if w.isStuck(f) {
			continue
		}
		made, err := w.repair(f)
		if err != nil {
			return more, err
		}
		if len(made) == 0 {
			w.stuck = append(w.stuck, *f)
			continue
		}
		more++
		w.done = append(w.done, done{*f, made})
		w.loosen(f)
	}
	return more, nil
}

// repair makes the first gentle repair that does; else one that eases most of a
// long spot.
func (w *work) repair(f *sizing.Finding) ([]sizing.Recipe, error) {
	ideas := w.spot(f).ideas()
	for _, part := range [2]bool{false, true} {
		for _, o := range ideas {
			if !o.Gentle {
				continue
			}
			how := o.manner()
			if part {
				how = easing
			}
			if made, stays, err := w.try(f, o, how); err != nil || stays {
				return made, err
			}
		}
	}
	return nil, nil
}

// isStuck says whether repairs of a place were tried in vain, with nothing
// changed near it since.
func (w *work) isStuck(f *sizing.Finding) bool {
	for i := range w.stuck {
		s := &w.stuck[i]
		if s.Kind == f.Kind && s.X == f.X && s.Y == f.Y && s.Thinnest == f.Thinnest && s.Length == f.Length {
			return true
		}
	}
	return false
}

// loosen lets places near a repair be tried again.
func (w *work) loosen(f *sizing.Finding) {
	kept := w.stuck[:0]
	for i := range w.stuck {
		if !meet(&w.stuck[i], f, 2*reachOf*w.most()) {
			kept = append(kept, w.stuck[i])
		}
	}
	w.stuck = kept
}

// withoutHarm takes repairs back that brought about what did not fail before,
// and returns what then fails.
func (w *work) withoutHarm(found []sizing.Finding) ([]sizing.Finding, error) {
	for range mostRounds {
		kept := w.done[:0:0]
		for _, d := range w.done {
			if !w.harms(&d.f, found) {
				kept = append(kept, d)
			}
		}
		if len(kept) == len(w.done) {
			return found, nil
		}
		w.done = kept
		w.takeBack(w.struck)
		for _, d := range w.done {
			if err := w.apply(d.recipes); err != nil {
				return nil, err
			}
		}
		var err error
		if found, err = w.failing(w.share); err != nil {
			return nil, err
		}
	}
	return found, nil
}

// harms says whether something fails near a repair that did not fail there at
// first.
func (w *work) harms(f *sizing.Finding, found []sizing.Finding) bool {
	for i := range found {
		g := &found[i]
		if meet(g, f, w.most()) && match(g, w.first, w.most()) == nil {
			return true
		}
	}
	return false
}

func (w *work) outcome(found []sizing.Finding) *Outcome {
	o := &Outcome{Recipes: []sizing.Recipe{}, Before: len(w.first), Left: []Unmended{}}
	for _, d := range w.done {
		o.Recipes = append(o.Recipes, d.recipes...)
	}
	for _, f := range found {
		o.Left = append(o.Left, Unmended{Finding: f, Why: Why(&f)})
	}
	o.Change = changed(w.struck.sep, w.sep, w.d.Scale)
	return o
}

// Why says what stands in the way of a gentle repair.
func Why(f *sizing.Finding) string {
	switch f.Kind {
	case sizing.ThinLine:
		return "There is no room here to thicken the line without closing an area. Draw it with more room, take a line out, or make the pin larger."
	case sizing.NarrowArea:
		return "The lines beside it cannot give way. Take one out, let the place be metal, or make the pin larger."
	case sizing.SmallArea:
		return "It can neither grow nor go without harming what lies beside it. Draw it larger, or join it with its neighbour."
	case sizing.SmallLettering:
		return "Letters are not altered here. Set them larger, leave some out, or have them printed."
	case sizing.SmallCutOut:
		return "A hole is part of the design. Make it larger, or close it."
	case sizing.OpenArea:
		return "Only you know whether this is a notch or an area that should be closed. Close the outline there, or open it wider."
	case sizing.NoLine, sizing.NoEdge, sizing.Gap:
		return "Metal built here would close an area, or there is too little room for it. Draw the line yourself, or make the pin larger."
	}
	return "No repair was found that harms nothing else. It needs your hand."
}
