package fastener

import (
	"fmt"
	"math"

	"badgewright/sizing/unit"
)

// Where one post stops being enough, and where two do (common practice, no
// published source: one up to roughly 32-38 mm, two above, three for the very
// large; long shapes, and those that balance off the metal, sooner).
const (
	onePostUpTo  = 36.0 // mm, longest side of a compact piece
	longUpTo     = 27.0 // mm, of one at least longAspect times as long as broad
	compactUntil = 1.6  // length to breadth up to which a piece counts as compact
	longAspect   = 3.0
	offMetal     = 0.8  // of that, when the balance point lies off the metal
	badlyHung    = 0.9  // of that, when no post can stand above the balance point
	askewFrom    = 2.5  // mm beside the line of balance at which one post leaves a piece askew
	onePostHolds = 14.0 // g
	twoPostsUpTo = 70.0 // mm
	twoPostsHold = 40.0 // g
)

// need is how many posts a piece wants, and up to which longest side of the
// whole pin each smaller number would do.
type need struct {
	count    int
	one, two float64 // mm, whole
	cause    string  // why one ends where it does; empty for a compact piece
}

// needOf judges by span, shape, balance and weight. longest is of the whole
// pin; single is where one post would stand.
func needOf(p *plate, longest float64, weight unit.Grams, single point) need {
	part := max(p.wide(), p.high())
	scale := longest / part
	n := need{one: bySpan(p.Aspect())}
	if n.one < onePostUpTo-0.5 {
		n.cause = "it is long for its breadth"
	}
	switch {
	case p.at(point{p.CX, p.CY}) <= 0:
		n.one *= offMetal
		n.cause = "its balance point lies off the metal"
	case math.Abs(single.x-p.CX) > askewFrom || single.y > p.CY:
		n.one *= badlyHung
		n.cause = "no post can stand above its balance point"
	}
	n.one *= scale
	if heavy := longest * math.Sqrt(onePostHolds/float64(weight)); heavy < n.one {
		n.one, n.cause = heavy, "it is heavy"
	}
	n.two = min(twoPostsUpTo*scale, longest*math.Sqrt(twoPostsHold/float64(weight)))
	n.one, n.two = math.Round(n.one), math.Round(max(n.one, n.two))
	switch {
	case longest <= n.one:
		n.count = 1
	case longest <= n.two:
		n.count = 2
	default:
		n.count = 3
	}
	return n
}

// bySpan falls evenly from compact to long.
func bySpan(aspect float64) float64 {
	t := (aspect - compactUntil) / (longAspect - compactUntil)
	return onePostUpTo - float64((onePostUpTo-longUpTo)*min(max(t, 0), 1))
}

// reason says how many, in one sentence with numbers.
func (n need) reason(longest unit.MM, weight unit.Grams, f fixture) string {
	at := fmt.Sprintf("At %s and %s ", unit.InMM(longest, 1), grams(weight))
	because := ""
	if n.cause != "" {
		because = ", because " + n.cause
	}
	switch n.count {
	case 1:
		return at + fmt.Sprintf("one %s holds; above %.0f mm this shape wants two%s.", f.name, n.one, because)
	case 2:
		return at + fmt.Sprintf("this shape wants two %s, so that it does not turn or droop; one holds up to %.0f mm%s.", f.many, n.one, because)
	default:
		return at + fmt.Sprintf("this shape wants three %s; two hold up to %.0f mm.", f.many, n.two)
	}
}

func grams(g unit.Grams) string {
	if g < 9.95 {
		return fmt.Sprintf("%.1f g", float64(g))
	}
	return fmt.Sprintf("%.0f g", float64(g))
}
