package fastener

import (
	"fmt"
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

var numbers = [...]string{"none", "one", "two", "three"}

// say puts the advice into words.
func (a *Advice) say(p *plate, pl place, n need, longest, thickness unit.MM, base sizing.BaseMetal) {
	a.Reason = n.reason(longest, a.Weight)
	switch {
	case a.Chosen < a.Count:
		a.Reason += fmt.Sprintf(" You chose %s: it may turn or droop.", numbers[a.Chosen])
	case a.Chosen > a.Count:
		a.Reason += fmt.Sprintf(" You chose %s, which holds it more firmly.", numbers[a.Chosen])
	}
	a.why(p.partsWords())
	a.why(p.clutchWords(pl))
	a.why(crowdWords(pl))
	a.why(p.standWords(pl))
	a.why(fmt.Sprintf("Weighed as solid %s, %s thick over %.0f mm2 of silhouette; recesses filled with enamel make it a little lighter.", base, unit.InMM(thickness, 2), a.Area))
	if n.cause != "" {
		a.why(fmt.Sprintf("A compact piece holds on one post up to about %.0f mm; this one needs two above %.0f mm, because %s.", onePostUpTo, n.one, n.cause))
	}
}

func (a *Advice) why(sentence string) {
	if sentence != "" {
		a.Why = append(a.Why, sentence)
	}
}

func (p *plate) partsWords() string {
	if p.parts < 2 {
		return ""
	}
	return fmt.Sprintf("The pin is in %d separate parts; the posts go on the upper one, and the rest must hang from it or be joined to it.", p.parts)
}

// clutchWords says what the clutch needs, or by how much it shows.
func (p *plate) clutchWords(pl place) string {
	room := p.tightest(pl)
	shows := pl.clutch/2 - room
	switch {
	case room < padAcross/2:
		return fmt.Sprintf("Even the %.0f mm pad of a post is wider than the metal where it can stand: it would show by about %.1f mm. Broaden a part of the drawing, make the pin larger, or ask the maker for a smaller pad.", padAcross, padAcross/2-room)
	case shows > 0:
		return fmt.Sprintf("No place hides the clutch: a rubber one of %.0f mm shows beyond the edge by about %.1f mm. A larger pin or a smaller clutch would hide it.", pl.clutch, max(shows, 0.1))
	case pl.clutch < butterfly:
		return fmt.Sprintf("A metal clutch of %.1f mm would show beyond the edge; a rubber one of %.0f mm stays hidden.", butterfly, rubber)
	default:
		return fmt.Sprintf("A clutch of %.1f mm stays hidden behind the piece.", pl.clutch)
	}
}

func crowdWords(pl place) string {
	d := closest(pl)
	if d >= pl.clutch {
		return ""
	}
	return fmt.Sprintf("There is no room for %s clutches of %.0f mm side by side: these posts stand only %.1f mm apart.", numbers[len(pl.posts)], pl.clutch, d)
}

// standWords says how the posts stand to the centre of mass.
func (p *plate) standWords(pl place) string {
	a := pl.posts[0]
	if len(pl.posts) == 1 {
		return p.hangWords(a)
	}
	d := apart(a, pl.posts[1])
	if pl.level {
		return fmt.Sprintf("Two posts stand level, %.1f mm apart, %s.", d, p.heightWords(a.y))
	}
	return fmt.Sprintf("There is no good room for two level posts in the upper half, so they stand along it, %.1f mm apart.", d)
}

func (p *plate) heightWords(y float64) string {
	switch up := p.CY - y; {
	case up >= 0.5:
		return fmt.Sprintf("%.1f mm above the balance point", up)
	case up > -0.5:
		return "at the height of the balance point"
	default:
		return fmt.Sprintf("%.1f mm below the balance point", -up)
	}
}

// hangWords tells how a piece hangs from one post: without friction its
// balance point comes to rest straight under the post.
func (p *plate) hangWords(q point) string {
	side, up := math.Abs(q.x-p.CX), p.CY-q.y
	words := fmt.Sprintf("The post stands %s", p.heightWords(q.y))
	if up < 0.5 {
		return words + ", so the piece may turn over."
	}
	if tilt := math.Atan2(side, up) * 180 / math.Pi; tilt >= 3 {
		return words + fmt.Sprintf(" and %.1f mm beside it: left to itself the piece comes to rest about %.0f degrees askew.", side, tilt)
	}
	return words + ", so the piece hangs straight."
}
