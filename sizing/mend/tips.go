package mend

import (
	"badgewright/sizing"
	"badgewright/sizing/outline"
)

// tipping is the rounding of tips after everything else was repaired: it takes
// metal away, which shows what lies inside best once that is sound.
type tipping struct {
	*work
	before []sizing.Finding // what was wrong with the outline
	tips   []tipToRound
}

type tipToRound struct {
	f       sizing.Finding
	recipes []sizing.Recipe
	near    box              // in which rounding it changes anything
	inside  []sizing.Finding // what was wrong there with lines and areas
}

// tipRounds bounds how often tips that cannot be rounded are left out and the
// others tried again.
const tipRounds = 3

// roundTips rounds the tips that prick, where nothing else fails by it, and
// returns how many there were and those that stay. It does nothing when the
// outline is not to be looked at.
func (w *work) roundTips() (before int, left []Unmended, err error) {
	if w.d.Outline == nil {
		return 0, nil, nil
	}
	if err := w.tell(1, "rounding tips"); err != nil {
		return 0, nil, err
	}
	t := &tipping{work: w}
	if before, err = t.find(); before == 0 || err != nil {
		return before, nil, err
	}
	was := w.keep(w.whole())
	for round := 0; len(t.tips) > 0; round++ {
		bad, err := t.try()
		if err != nil {
			return before, nil, err
		}
		if len(bad) == 0 {
			break
		}
		w.takeBack(was)
		if round == tipRounds {
			t.tips = nil
		}
		t.leaveOut(bad)
	}
	for i := range t.tips {
		w.done = append(w.done, done{t.tips[i].f, t.tips[i].recipes})
	}
	left, err = t.left()
	return before, left, err
}

// find lists the tips that fail, and how each could be rounded.
func (t *tipping) find() (n int, err error) {
	m, err := outline.Measure(t.sep, nil)
	if err != nil {
		return 0, err
	}
	t.before = bad(m.Findings(*t.d.Outline))
	for i := range t.before {
		f := t.before[i]
		if f.Kind != sizing.SharpTip {
			continue
		}
		n++
		recipes := m.Offer(&f)
		if len(recipes) == 0 {
			continue
		}
		tip := tipToRound{f: f, recipes: recipes, near: t.bench.round(&f, recipes)}
		if tip.inside, err = t.locally(tip.near); err != nil {
			return n, err
		}
		t.tips = append(t.tips, tip)
	}
	return n, nil
}

// try rounds all tips at once and says which of them should be left as they are.
func (t *tipping) try() (out map[int]bool, err error) {
	for i := range t.tips {
		if err := t.apply(t.tips[i].recipes); err != nil {
			return nil, err
		}
	}
	m, err := outline.Measure(t.sep, nil)
	if err != nil {
		return nil, err
	}
	after := bad(m.Findings(*t.d.Outline))
	out = map[int]bool{}
	for i := range t.tips {
		inside, err := t.locally(t.tips[i].near)
		if err != nil {
			return nil, err
		}
		if t.harmed(&t.tips[i], after, inside) {
			out[i] = true
		}
	}
	return out, nil
}

// harmed says whether a tip is still sharp once rounded, or something near it
// fails that did not.
func (t *tipping) harmed(tip *tipToRound, after, inside []sizing.Finding) bool {
	for i := range after {
		g := &after[i]
		if !meet(g, &tip.f, t.most()) {
			continue
		}
		if g.Kind == sizing.SharpTip || match(g, t.before, t.most()) == nil {
			return true
		}
	}
	return len(t.wrong(&tip.f, tip.inside, inside)) > 0
}

func (t *tipping) leaveOut(bad map[int]bool) {
	kept := t.tips[:0:0]
	for i := range t.tips {
		if !bad[i] {
			kept = append(kept, t.tips[i])
		}
	}
	t.tips = kept
}

// left is the tips that still fail.
func (t *tipping) left() (all []Unmended, err error) {
	m, err := outline.Measure(t.sep, nil)
	if err != nil {
		return nil, err
	}
	for _, f := range bad(m.Findings(*t.d.Outline)) {
		if f.Kind == sizing.SharpTip {
			all = append(all, Unmended{Finding: f, Why: WhyOutline(&f)})
		}
	}
	return all, nil
}
