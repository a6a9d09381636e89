package mend

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
)

// OfOutline says whether a trouble spot is one of the outline, which is repaired
// by reshaping it.
func OfOutline(k sizing.Kind) bool {
	_, ok := outlineWhys[k]
	return ok
}

// wider are the times a bridge to a loose part may be as wide as it must be: a
// long one would bend under what hangs on it.
var wider = []unit.MM{1, 1.5, 2, 3}

// ForOutline returns the repair of a trouble spot of the outline, if it does:
// measured again, the spot is gone and nothing else fails that did not. at is
// what the outline is judged by. p may be nil.
func ForOutline(d *Drawing, f sizing.Finding, at outline.At, p reduce.Progress) ([]Tried, error) {
	b, err := newBench(d)
	if err != nil {
		return nil, err
	}
	m, err := outline.Measure(b.sep, p)
	if err != nil {
		return nil, err
	}
	before, recipes := failures(m.Findings(at)), m.Offer(&f)
	if len(recipes) == 0 {
		return nil, nil
	}
	struck := b.keep(b.whole())
	for _, times := range wider {
		if f.Kind == sizing.LoosePart {
			recipes[0].Width = times * at.Limits.Bridge
		}
		if err := b.apply(recipes); err != nil {
			return nil, err
		}
		if m, err = outline.Measure(b.sep, p); err != nil {
			return nil, err
		}
		if failures(m.Findings(at)) < before {
			o := Offer{Recipes: recipes, Gentle: f.Kind == sizing.SharpTip}
			o.Words = o.reshapingWords(&f, &at)
			return []Tried{{o, changed(struck.sep, b.sep, d.Scale), b.sep}}, nil
		}
		b.takeBack(struck)
		if f.Kind != sizing.LoosePart {
			break
		}
	}
	return nil, nil
}

func failures(found []sizing.Finding) (n int) {
	for i := range found {
		if found[i].Verdict == sizing.Fails {
			n++
		}
	}
	return n
}

func (o *Offer) reshapingWords(f *sizing.Finding, at *outline.At) string {
	switch f.Kind {
	case sizing.LoosePart:
		return "A bridge of metal " + unit.InMM(o.Recipes[0].Width, 2) + " wide joins it to the rest."
	case sizing.SharpTip:
		return "The tip is rounded to a radius of " + unit.InMM(at.Limits.Tip, 2) + "."
	case sizing.LongArm:
		return "The arm is made " + unit.InMM(o.Recipes[0].Width, 1) + " wide, with metal along both its sides."
	default:
		return "Metal is added along both sides until it is " + unit.InMM(f.Limit, 2) + " wide."
	}
}

// outlineWhys say what to do where the outline is not repaired here.
var outlineWhys = map[sizing.Kind]string{
	sizing.LoosePart:  "No bridge was found that does: it would bend, or the part is too small to be joined or hung. Draw it nearer, hang it from a ring, or take it out.",
	sizing.WeakEye:    "Move the eye inward, or draw more metal round it.",
	sizing.ThinBridge: "There is no room beside it for more metal. Let it lie against its neighbour, or make the pin larger.",
	sizing.SharpTip:   "The tip is too slender to be rounded without losing much of it. Draw it blunter.",
	sizing.LongArm:    "Wider it would run into what lies beside it. Make it shorter, lean it on the rest, or take a thicker metal.",
}

// WhyOutline says what stands in the way of repairing a spot of the outline.
func WhyOutline(f *sizing.Finding) string { return outlineWhys[f.Kind] }
