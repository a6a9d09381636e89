package fastener

import (
	"fmt"
	"math"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

var numbers = [...]string{"none", "one", "two", "three"}

// say puts the advice into words.
func (a *Advice) say(z *sized, pl place, n need, w Wish) {
	f := fixtureOf(a.Fastening)
	a.Why = []string{}
	a.Reason = n.reason(unit.MM(z.longest()), a.Weight, f)
	switch {
	case a.Fastening == sizing.PinBar:
		lies := "lies level across"
		if a.Upright {
			lies = "stands upright along"
		}
		a.Reason = fmt.Sprintf("A pin bar of %.0f mm %s the back: it cannot turn, and nothing comes off.", float64(a.Bar), lies)
	case a.Chosen < a.Count:
		a.Reason += fmt.Sprintf(" You chose %s: it may turn or droop.", numbers[a.Chosen])
	case a.Chosen > a.Count:
		a.Reason += fmt.Sprintf(" You chose %s, which holds it more firmly.", numbers[a.Chosen])
	}
	a.why(z.partsWords())
	if f.kind == sizing.PostAndClutch {
		a.why(z.clutchWords(pl))
	} else {
		a.why(z.coverWords(pl, f))
	}
	a.why(crowdWords(pl, f))
	if pl.bar == 0 {
		a.why(z.standWords(pl, f, a.ByHand))
	}
	if n.cause != "" && f.kind != sizing.PinBar {
		a.why(fmt.Sprintf("A compact piece holds on one post up to about %.0f mm; this one needs two above %.0f mm, because %s.", onePostUpTo, n.one, n.cause))
	}
	a.HangSays, a.Model = a.hangSays(), modelSays(w.hold())
	a.MassSays = a.massSays(w)
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
func (z *sized) clutchWords(pl place) string {
	room := z.tightest(pl)
	shows := pl.clutch/2 - room
	switch {
	case room < padAcross/2:
		return fmt.Sprintf("Even the %.0f mm pad of a post is wider than the metal where it stands: it would show by about %.1f mm. Broaden a part of the drawing, make the pin larger, or ask the maker for a smaller pad.", padAcross, padAcross/2-room)
	case shows > 0:
		return fmt.Sprintf("The clutch is not hidden: a rubber one of %.0f mm shows beyond the edge by about %.1f mm. A larger pin or a smaller clutch would hide it.", pl.clutch, max(shows, 0.1))
	case pl.clutch < butterfly:
		return fmt.Sprintf("A metal clutch of %.1f mm would show beyond the edge; a rubber one of %.0f mm stays hidden.", butterfly, rubber)
	default:
		return fmt.Sprintf("A clutch of %.1f mm stays hidden behind the piece.", pl.clutch)
	}
}

// coverWords does so for what is no clutch.
func (z *sized) coverWords(pl place, f fixture) string {
	if shows := pl.clutch/2 - z.tightest(pl); shows > 0 {
		return fmt.Sprintf("There is no room to hide a %s %.0f mm broad: it shows beyond the edge by about %.1f mm.", f.name, f.cover, max(shows, 0.1))
	}
	return fmt.Sprintf("A %s %.0f mm broad stays hidden behind the piece.", f.name, f.cover)
}

func crowdWords(pl place, f fixture) string {
	d := closest(pl)
	if d >= pl.clutch {
		return ""
	}
	things := f.many
	if f.kind == sizing.PostAndClutch {
		things = "clutches"
	}
	return fmt.Sprintf("There is no room for %s %s of %.0f mm side by side: they stand only %.1f mm apart.", numbers[len(pl.posts)], things, pl.clutch, d)
}

// standWords says how the posts stand to the centre of mass.
func (p *plate) standWords(pl place, f fixture, byHand bool) string {
	a := pl.posts[0]
	if len(pl.posts) == 1 {
		return p.hangWords(a, f)
	}
	d := apart(a, pl.posts[1])
	switch {
	case pl.level:
		return fmt.Sprintf("%s stand level, %.1f mm apart, %s.", two(f), d, p.heightWords(a.y))
	case byHand:
		return fmt.Sprintf("%s set by hand stand %.1f mm apart.", two(f), d)
	}
	return fmt.Sprintf("There is no good room for two level %s in the upper half, so they stand along it, %.1f mm apart.", f.many, d)
}

func two(f fixture) string { return "Two " + f.many }

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

// hangWords tells where a single post stands to the balance point.
func (p *plate) hangWords(q point, f fixture) string {
	side, up := math.Abs(q.x-p.CX), p.CY-q.y
	words := fmt.Sprintf("The %s stands %s", f.name, p.heightWords(q.y))
	if up < 0.5 {
		return words + ", so the piece may turn over."
	}
	if side >= 0.5 {
		return words + fmt.Sprintf(" and %.1f mm beside it.", side)
	}
	return words + ", straight over it."
}

func formSays(m geometry) string {
	words := fmt.Sprintf("%.0f mm² of silhouette, %s at its widest and %s at its narrowest", m.Area, mm1(m.Feret), mm1(m.MinWidth))
	if aspect := m.Aspect(); aspect >= 1.15 {
		return words + fmt.Sprintf("; about %.1f times as long as broad.", aspect)
	}
	return words + "; about as long as broad."
}

// massSays puts the masses into words.
func (a *Advice) massSays(w Wish) []string {
	m, s := a.Mass, w.Stuff
	says := []string{fmt.Sprintf("The pin alone weighs %s: %s, %s from back to top over %.0f mm².", spanGrams(m.Pin), s.Base, unit.InMM(s.Thickness, 2), a.Area)}
	if m.Filled > 0.005 {
		says = append(says, fmt.Sprintf("%.0f %% of it is cut %s mm deep and %s.", 100*m.Filled, span(s.Depths.Recess, ""), s.filledWords()))
	}
	says = append(says,
		fmt.Sprintf("With what is fixed to its back it weighs %s, and packed with clutch, card and sleeve %s.", spanGrams(m.Worn), spanGrams(m.Packed)),
		fmt.Sprintf("Packed it is %s thick; letter rates have limits for weight and thickness, so hold both against your carrier's.", spanMM(m.Thick)),
	)
	if m.Pieces > 1 {
		says = append(says, fmt.Sprintf("All %d, packed, weigh %s.", m.Pieces, spanGrams(m.All)))
	}
	return says
}

func (s Stuff) filledWords() string {
	switch s.Fill {
	case sizing.Unfilled:
		return "left empty"
	case sizing.Hard:
		return "filled flush with resin enamel"
	default:
		return fmt.Sprintf("filled with resin enamel to %s mm below the metal", span(s.Depths.Sunk, ""))
	}
}
