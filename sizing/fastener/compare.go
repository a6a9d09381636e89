package fastener

import (
	"fmt"
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// How much worse than the tool's own proposal places set by hand must be
// before it is said (this tool's choice).
const (
	worseShow    = 0.2 // mm of clutch beyond the edge
	worseDegrees = 2.0 // of lean or turn, at the worse end of the range
	worseSpread  = 0.7 // of the distance apart
	worseMiddle  = 1.0 // mm of the middle off a symmetric piece's axis
	worseLoad    = 0.2 // share of the weight carried by the lesser post
)

// compare says, sentence by sentence, in what places set by hand fall behind
// the tool's own; it is silent where they are as good or better.
func (z *sized) compare(hand, own place, b body, h sizing.Hold) []string {
	worse := []string{}
	say := func(format string, a ...any) { worse = append(worse, fmt.Sprintf(format, a...)) }
	if over, less := hand.clutch/2-z.tightest(hand), own.clutch/2-z.tightest(own); over > max(0, less)+worseShow {
		say("A clutch shows beyond the edge by %s; the tool's own places hide it%s.", mm1(over), better(less))
	}
	mine, tools := hang(b, hand.posts, hand.clutch, h), hang(b, own.posts, own.clutch, h)
	z.crowded(hand, own, say)
	z.uneven(hand, own, say)
	if mine.Straight != tools.Straight && mine.Askew.High > tools.Askew.High+worseDegrees {
		say("Pinned upright it turns by %s; from the tool's own places by %s.", angles(mine.Askew), angles(tools.Askew))
	}
	if mine.Droop.High > tools.Droop.High+worseDegrees {
		say("Its top leans forward by %s; from the tool's own places by %s.", angles(mine.Droop), angles(tools.Droop))
	}
	loads(mine, tools, say)
	return worse
}

func better(less float64) string {
	if less > 0 {
		return " but for " + mm1(less)
	}
	return ""
}

type saying func(format string, a ...any)

// crowded compares how far apart the posts stand.
func (z *sized) crowded(hand, own place, say saying) {
	if len(hand.posts) < 2 || len(own.posts) < 2 {
		return
	}
	d, o := closest(hand), closest(own)
	switch {
	case d < hand.clutch && o >= own.clutch:
		say("Two clutches of %s do not fit side by side %s apart.", mm1(hand.clutch), mm1(d))
	case d < worseSpread*o:
		say("The posts stand %s apart; %s would hold it better against turning.", mm1(d), mm1(o))
	}
}

// uneven compares level and symmetry.
func (z *sized) uneven(hand, own place, say saying) {
	if off := math.Abs(middleOf(hand.posts).x - z.CX); z.symmetric && off > worseMiddle && off > math.Abs(middleOf(own.posts).x-z.CX)+worseMiddle {
		say("The pin is the same left and right, but its posts stand %s off its middle.", mm1(off))
	}
	if len(hand.posts) != 2 || len(own.posts) != 2 {
		return
	}
	p, q := hand.posts[0], hand.posts[1]
	if dx, dy := math.Abs(p.x-q.x), math.Abs(p.y-q.y); own.level && dy > sameRow && dx > dy {
		say("The posts are not level: one stands %s higher, so the pin is easily pinned on crooked.", mm1(dy))
	}
}

// loads compares how two posts share the weight.
func loads(mine, tools Hang, say saying) {
	if len(mine.Load) != 2 {
		return
	}
	least := func(h Hang) float64 {
		if len(h.Load) != 2 {
			return 0.5
		}
		return min(h.Load[0], h.Load[1])
	}
	switch l, o := least(mine), least(tools); {
	case l < 0 && o >= 0:
		say("The balance point lies beside both posts: one carries all the weight and the other is lifted.")
	case l < worseLoad && o >= worseLoad:
		say("One post carries %.0f %% of the weight, so the pin sags to that side.", 100*(1-l))
	}
}

// snapWithin is how near, in mm, a post that is moved must come to a line of
// symmetry to be set on it (this tool's choice).
const snapWithin = 0.75

// Snap sets a post that is being moved on what is near: the line of balance
// when it stands alone or above another, the height of another post, and the
// mirror image of another about the line of balance. moved is its index.
func (s *Shape) Snap(scale unit.PxPerMM, posts []sizing.Post, moved int) []sizing.Post {
	out := append([]sizing.Post{}, posts...)
	if !(scale > 0) || moved < 0 || moved >= len(posts) {
		return out
	}
	z := s.at(scale)
	q := z.point(out[moved])
	xs, ys := []float64{z.CX}, []float64{}
	for i := range out {
		if o := z.point(out[i]); i != moved {
			xs = append(xs, 2*z.CX-o.x, o.x)
			ys = append(ys, o.y)
		}
	}
	out[moved] = z.post(point{snapped(q.x, xs), snapped(q.y, ys)})
	return out
}

// snapped is the nearest line within reach, the first of equals, or the place itself.
func snapped(v float64, lines []float64) float64 {
	best, at := snapWithin, v
	for _, l := range lines {
		if d := math.Abs(v - l); d < best {
			best, at = d, l
		}
	}
	return at
}
