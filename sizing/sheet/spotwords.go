package sheet

import (
	"fmt"

	"badgewright/sizing"
)

// spotNames is what each kind of trouble spot is called on paper.
var spotNames = map[sizing.Kind]string{
	sizing.ThinLine: "line too thin", sizing.NarrowArea: "area too narrow", sizing.FadesOut: "runs out to a point",
	sizing.RoundedCorners: "sharp corners come out round", sizing.NoLine: "no line between colours", sizing.NoEdge: "no outer edge",
	sizing.Gap: "gap in a line", sizing.OpenArea: "open to the outside", sizing.SmallArea: "area too small",
	sizing.Pinhole: "pinhole in the metal", sizing.MetalIsland: "speck of metal", sizing.SolidMetal: "large bare metal",
	sizing.SmallLettering: "lettering too small", sizing.SmallCutOut: "cut-out too small", sizing.ClutchShows: "clutch shows",
	sizing.LoosePart: "a part stands alone", sizing.GrownTogether: "parts grow together", sizing.WeakEye: "eye too weak",
	sizing.ThinBridge: "metal too thin to hold its shape", sizing.SharpTip: "sharp tip", sizing.LongArm: "arm bends too easily",
}

// SpotName is what a trouble spot is called on paper.
func SpotName(f *sizing.Finding) string {
	if f.Kind == sizing.SharpTip && f.Verdict == sizing.Holds {
		return "pointed tip"
	}
	return spotNames[f.Kind]
}

// verdictNames are the verdicts on paper.
var verdictNames = map[sizing.Verdict]string{
	sizing.Holds: "a note; it can be made", sizing.Fails: "below the limit", sizing.CannotTell: "too close to the limit to tell",
}

// SpotMeasured is what was measured at a spot.
func SpotMeasured(f *sizing.Finding, u Units) string {
	switch f.Kind {
	case sizing.NoLine, sizing.NoEdge:
		return fmt.Sprintf("over %s", u.Say(f.Length))
	case sizing.RoundedCorners, sizing.SolidMetal, sizing.LoosePart, sizing.OpenArea:
		return u.SayArea(f.Area)
	case sizing.FadesOut:
		return fmt.Sprintf("ends about %s shorter", u.Say(f.Length))
	case sizing.LongArm:
		return fmt.Sprintf("bends at %.1f N", f.Force)
	case sizing.SharpTip:
		return fmt.Sprintf("radius %s, %.0f°", u.Say(f.Thinnest), f.Angle)
	case sizing.ClutchShows:
		return fmt.Sprintf("by %s", u.Say(f.Typical))
	case sizing.GrownTogether:
		return ""
	}
	return u.Say(f.Thinnest)
}

// SpotLimit is the limit that a spot was held against; empty where there is none.
func SpotLimit(f *sizing.Finding, u Units) string {
	if f.Limit <= 0 {
		return ""
	}
	return u.Say(f.Limit)
}

// Open says whether a spot still stands in the way of making.
func Open(f *sizing.Finding) bool { return f.Verdict != sizing.Holds }
