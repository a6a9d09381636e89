package calls

import (
	"fmt"
	"math"

	"badgewright/sizing"
	"badgewright/sizing/outline"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// roomWords say what is wrong with the place of an eye.
var roomWords = map[outline.Room]string{
	outline.RoomOff:     "It stands on no part. Move it onto one, or to its edge.",
	outline.RoomThin:    "Too little of it stands on its part to hold. Move it further in.",
	outline.RoomTouches: "Its metal comes up to another part. Move it away from there.",
	outline.RoomHole:    "It breaks into a hole of the drawing. Move it away from there.",
}

// aboutMM is by how much a part may hang off its drawn place and still hang about
// as drawn.
const aboutMM unit.MM = 0.5

// hangsWords says how far apart two eyes hang, against how they were drawn.
func hangsWords(drop, drawn unit.MM) string {
	says := "It hangs " + unit.InMM(drop, 1) + " from eye to eye, "
	switch off := drop - drawn; {
	case off > aboutMM:
		return says + unit.InMM(off, 1) + " lower than drawn."
	case off < -aboutMM:
		return says + unit.InMM(-off, 1) + " higher than drawn."
	}
	return says + "about as drawn."
}

// partsSay says how a pin holds together, in a sentence.
func partsSay(p *wire.HeldParts) string {
	switch {
	case p.Count <= 1 && p.Choice == sizing.PartsDangle:
		return "This drawing is in one piece; nothing can hang from it."
	case p.Count <= 1:
		return "This drawing is in one piece."
	case p.Choice == sizing.PartsDangle && p.Loose > 0:
		return fmt.Sprintf("%d parts; %s.", p.Count, many(p.Loose, "one hangs from nothing", "%d hang from nothing"))
	case p.Choice == sizing.PartsDangle:
		return fmt.Sprintf("%d parts, hanging by %s.", p.Count, many(len(p.Joins), "one chain", "%d chains"))
	case p.Choice == sizing.PartsOne && p.Loose > 0:
		return fmt.Sprintf("%d parts as drawn; %s not joined to the rest.", p.Count, many(p.Loose, "one is", "%d are"))
	case p.Choice == sizing.PartsOne:
		return fmt.Sprintf("%d parts as drawn, joined to one piece.", p.Count)
	}
	return fmt.Sprintf("%d parts as drawn. Should they hang from each other, or be one piece?", p.Count)
}

// many picks the words for one, or fills in the number.
func many(n int, one, more string) string {
	if n == 1 {
		return one
	}
	return fmt.Sprintf(more, n)
}

func holesApart(a, b sizing.Hole) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

// eyesMeet says whether the metal that is added round two eyes is one.
func eyesMeet(j *sizing.Join, a, b sizing.Hole, at outline.At) bool {
	rim := at.Limits.EyeRim.Px(at.Scale)
	out := func(e *sizing.Eye, h sizing.Hole) float64 {
		if e.Drawn {
			return h.Across / 2
		}
		return h.Across/2 + rim
	}
	return holesApart(a, b) < out(&j.Upper, a)+out(&j.Lower, b)
}
