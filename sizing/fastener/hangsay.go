package fastener

import (
	"fmt"
	"math"
	"strconv"

	"badgewright/sizing"
)

// hangSays puts into words how the pin hangs.
func (a *Advice) hangSays() []string {
	says := append(a.Hang.turnSays(fixtureOf(a.Fastening)), a.Hang.droopSays())
	if a.OnOne != nil {
		says = append(says, a.OnOne.againstOne())
	}
	return says
}

func (h *Hang) turnSays(f fixture) []string {
	if h.Posts > 1 {
		return append([]string{"Held in two places it cannot turn: it hangs as it is pinned on."}, h.loadSays()...)
	}
	says := []string{h.restSays()}
	switch h.Straight {
	case sizing.Yes:
		says = append(says, "Pinned on upright it stays upright.")
	case sizing.No:
		says = append(says, fmt.Sprintf("Pinned on upright it turns by %s.", angles(h.Askew)))
	default:
		says = append(says, fmt.Sprintf("Pinned on upright it may stay or turn, by %s: that hangs on cloth and %s, so it can go either way.", angles(h.Askew), gripping(f)))
	}
	return append(says, h.knockSays(f))
}

func gripping(f fixture) string {
	if f.kind == sizing.PostAndClutch {
		return "clutch"
	}
	return "the " + f.name
}

func (h *Hang) restSays() string {
	switch {
	case h.Pull.High == 0:
		return "It balances at the post itself, so nothing turns it one way or the other."
	case h.Rest < 1:
		return "Without friction it would come to rest upright."
	case h.Rest > 90:
		return fmt.Sprintf("Without friction it would turn over, and come to rest %.0f° from upright.", h.Rest)
	default:
		return fmt.Sprintf("Without friction it would come to rest %.0f° askew.", h.Rest)
	}
}

func (h *Hang) knockSays(f fixture) string {
	held := "up to " + angle(h.Holds.Low) + " to either side"
	switch {
	case h.Holds.Low >= anyWayUp:
		return fmt.Sprintf("Friction of %s on cloth holds it any way up, so knocked askew it stays askew.", gripping(f))
	case h.Holds.High >= anyWayUp:
		return fmt.Sprintf("Friction holds it %s of rest with a slack clutch on thin cloth, and any way up with a tight one: knocked askew it %s.", held, knocked(h.Knocked))
	default:
		return fmt.Sprintf("Friction holds it %s to either side of rest: knocked askew it %s.", angles(h.Holds), knocked(h.Knocked))
	}
}

func knocked(a sizing.Answer) string {
	switch a {
	case sizing.Yes:
		return "stays askew"
	case sizing.No:
		return "swings back"
	default:
		return "swings back or stays, either can be"
	}
}

func (h *Hang) loadSays() []string {
	if len(h.Load) != 2 {
		return nil
	}
	// Seen from behind, left and right change places.
	most, side := h.Load[0], "right"
	if h.Load[1] > most {
		most, side = h.Load[1], "left"
	}
	switch {
	case most > 1:
		return []string{fmt.Sprintf("The balance point lies beside both posts: the %s one, seen from behind, carries it all and the other is lifted.", side)}
	case most > 0.6:
		return []string{fmt.Sprintf("The %s post, seen from behind, carries %.0f %% of the weight.", side, 100*most)}
	default:
		return []string{"Both posts carry about the same."}
	}
}

func (h *Hang) droopSays() string {
	if h.Droop.High >= floppedAt {
		if h.Droop.Low >= floppedAt {
			return "It flops forward: the balance point lies above what holds it."
		}
		return fmt.Sprintf("Its top leans forward by %s on stiff cloth and flops over on soft: it can go either way.", angle(h.Droop.Low))
	}
	words := fmt.Sprintf("Its top leans forward by %s", angles(h.Droop))
	switch h.Flat {
	case sizing.Yes:
		return words + ", which is hardly seen."
	case sizing.No:
		return words + ", which is seen."
	default:
		return words + ": hardly seen on stiff cloth, seen on soft; it can go either way."
	}
}

// againstOne says how it would hang from one post.
func (h *Hang) againstOne() string {
	words := fmt.Sprintf("On one post its top would lean by %s", angles(h.Droop))
	if h.Droop.High >= floppedAt {
		words = "On one post it could flop forward"
	}
	switch h.Straight {
	case sizing.Yes:
		words += " and it would stay as pinned until knocked"
	default:
		words += fmt.Sprintf(" and it could turn by %s", angles(h.Askew))
	}
	if h.Knocked != sizing.No {
		words += "; knocked askew it could stay so"
	}
	return words + "."
}

// modelSays states the model and its constants.
func modelSays(h sizing.Hold) []string {
	return []string{
		"Turning: on one post a pin is a pendulum. Gravity turns it back with m g L sin d, where L is how far the balance point lies from the post and d how far it is turned from rest. Clutch and back rub on both faces of the cloth and resist with 2 × 2/3 μ N R, R being the clutch's radius. It stays where the first is no more than the second.",
		"Leaning: its weight acts half its thickness and half the cloth's before the middle of the cloth (a), and b below the posts. The cloth resists with its stiffness K: m g (a cos f − b sin f) = K f gives the lean f. Two clutches are twice as stiff as one, and more when they stand one above the other.",
		fmt.Sprintf("Nobody has published the constants, so every answer is a range over them: the clutch presses with N = %s newtons, friction on cloth is μ = %s, cloth gives K = %s N mm a radian for one clutch and is %s mm thick. These are common practice; change them if you know your cloth.",
			span(h.Press, ""), span(h.Friction, ""), span(h.Stiffness, ""), span(h.Cloth, "")),
		fmt.Sprintf("More than %.0f° askew or %.0f° of lean is taken to be seen.", askewSeen, droopSeen),
	}
}

// number prints two figures that count, without zeros behind.
func number(v float64) string {
	if v >= 10 {
		return strconv.FormatFloat(math.Round(v), 'f', -1, 64)
	}
	return strconv.FormatFloat(v, 'g', 2, 64)
}

func angle(deg float64) string { return strconv.Itoa(int(math.Round(deg))) + "°" }

// angles prints whole degrees: "3 to 14°", "up to 14°", "less than 1°".
func angles(r sizing.Range) string {
	low, high := strconv.Itoa(int(math.Round(r.Low))), angle(r.High)
	switch {
	case high == "0°":
		return "less than 1°"
	case low == "0":
		return "up to " + high
	case low+"°" == high:
		return high
	}
	return low + " to " + high
}

// span prints a range once when both ends read alike: "0.1 to 0.5 N".
func span(r sizing.Range, unit string) string {
	low, high := number(r.Low), number(r.High)
	if low == high {
		return low + unit
	}
	return low + " to " + high + unit
}

func mm1(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) + " mm" }

func spanMM(r sizing.Range) string {
	low, high := strconv.FormatFloat(r.Low, 'f', 1, 64), strconv.FormatFloat(r.High, 'f', 1, 64)
	if low == high {
		return low + " mm"
	}
	return low + " to " + high + " mm"
}

// spanGrams prints grams to a tenth below ten, whole above, kilograms from one on.
func spanGrams(r sizing.Range) string {
	as, decimals, unit := 1.0, 1, " g"
	switch {
	case r.High >= 1000:
		as, decimals, unit = 1000, 2, " kg"
	case r.High >= 20:
		decimals = 0
	}
	low, high := strconv.FormatFloat(r.Low/as, 'f', decimals, 64), strconv.FormatFloat(r.High/as, 'f', decimals, 64)
	if low == high {
		return low + unit
	}
	return low + " to " + high + unit
}
