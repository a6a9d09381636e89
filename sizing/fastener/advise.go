package fastener

import (
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// mostPosts is the greatest number of posts the tool places.
const mostPosts = 3

// Advise weighs a badge, finds where it balances, and says how many posts it
// wants and where. choice 0 takes the advice; 1 to 3 is the person's own
// number, which is placed as well as it can be.
func Advise(b *sizing.Badge, base sizing.BaseMetal, thickness unit.MM, choice sizing.PostCount) (Advice, error) {
	if choice < 0 || choice > mostPosts {
		return Advice{}, &reduce.Refusal{What: fmt.Sprintf("%d is no number of posts.", choice), Do: "Choose one, two or three, or leave it to the tool."}
	}
	if !(b.Scale > 0) || !(b.Longest() > 0) {
		return Advice{}, &reduce.Refusal{What: "There is nothing solid to put a post on.", Do: "Give at least one colour a part in the pin."}
	}
	g := gridOf(b)
	whole := g.measure(g.share)
	if whole.Area == 0 {
		return Advice{}, &reduce.Refusal{What: "There is nothing solid to put a post on.", Do: "Give at least one colour a part in the pin."}
	}
	weight, err := weigh(whole.Area, base, thickness)
	if err != nil {
		return Advice{}, err
	}
	p := plateOf(g, whole)
	single := p.one()
	n := needOf(p, float64(b.Longest()), weight, single.posts[0])
	a := Advice{Count: n.count, Chosen: n.count, Weight: weight, Area: whole.Area, Pad: padAcross, Why: []string{}}
	if choice > 0 {
		a.Chosen = int(choice)
	}
	a.Centre = [2]unit.MM{place2(whole.CX + g.x0), place2(whole.CY + g.y0)}
	pl := p.posts(a.Chosen, single)
	a.put(p, pl)
	a.say(p, pl, n, b.Longest(), thickness, base)
	return a, nil
}

// posts places a number of posts; single is the place of one.
func (p *plate) posts(count int, single place) place {
	switch count {
	case 1:
		return single
	case 2:
		return p.two()
	default:
		return p.three()
	}
}

// place2 rounds a place to a hundredth of a millimetre.
func place2(mm float64) unit.MM { return unit.MM(math.Round(mm*100) / 100) }

// put records the places, measured from the outline.
func (a *Advice) put(p *plate, pl place) {
	a.Clutch = unit.MM(pl.clutch)
	a.Posts = make([]sizing.Post, len(pl.posts))
	for i, q := range pl.posts {
		a.Posts[i] = sizing.Post{X: place2(q.x + p.x0), Y: place2(q.y + p.y0)}
	}
	a.Hidden = p.tightest(pl) >= pl.clutch/2
}

// tightest is the least clearance of the posts placed.
func (p *plate) tightest(pl place) float64 {
	room := math.Inf(1)
	for _, q := range pl.posts {
		room = min(room, p.at(q))
	}
	return room
}

// closest is the least distance between two of the posts placed.
func closest(pl place) float64 {
	d := math.Inf(1)
	for i, a := range pl.posts {
		for _, b := range pl.posts[i+1:] {
			d = min(d, apart(a, b))
		}
	}
	return d
}
