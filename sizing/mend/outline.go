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

// ForOutline returns the repair of a trouble spot of the outline, if it does:
// measured again, the spot is gone and nothing else fails that did not. at is
// what the outline is judged by. p may be nil.
func ForOutline(d *Drawing, f sizing.Finding, at outline.At, p reduce.Progress) ([]Tried, error) {
	b, err := newBench(d)
	if err != nil {
		return nil, err
	}
	before, err := outline.Measure(b.sep, p)
	if err != nil {
		return nil, err
	}
	o := Offer{Recipes: before.Offer(&f), Gentle: f.Kind == sizing.SharpTip}
	if len(o.Recipes) == 0 {
		return nil, nil
	}
	o.Words = o.reshapingWords(&f, &at)
	struck := b.keep(b.whole())
	if err := b.apply(o.Recipes); err != nil {
		return nil, err
	}
	after, err := outline.Measure(b.sep, p)
	if err != nil {
		return nil, err
	}
	if failures(after.Findings(at)) >= failures(before.Findings(at)) {
		return nil, nil
	}
	return []Tried{{o, changed(struck.sep, b.sep, d.Scale), b.sep}}, nil
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
		return "A bridge of metal " + unit.InMM(at.Limits.Bridge, 2) + " wide joins it to the rest."
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
	sizing.LoosePart:  "Nothing this small can be joined or hung. Take it out, or let it touch the rest.",
	sizing.WeakEye:    "Move the eye inward, or draw more metal round it.",
	sizing.ThinBridge: "There is no room beside it for more metal. Let it lie against its neighbour, or make the pin larger.",
	sizing.SharpTip:   "The tip is too slender to be rounded without losing much of it. Draw it blunter.",
	sizing.LongArm:    "Wider it would run into what lies beside it. Make it shorter, lean it on the rest, or take a thicker metal.",
}

// WhyOutline says what stands in the way of repairing a spot of the outline.
func WhyOutline(f *sizing.Finding) string { return outlineWhys[f.Kind] }
