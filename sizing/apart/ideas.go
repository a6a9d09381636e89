package apart

import (
	"cmp"
	"fmt"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
)

// mostIdeas is for how many pairs that read as one ideas are sought.
const mostIdeas = 12

// Ideas are changes that keep the design and tell apart what reads as one: metal
// between two enamels that touch, a colour a little lighter or darker, another
// plating. Each is there only if it parts its pair; w and h are those of the
// working raster, px.
func Ideas(pairs []Pair, platings []Ranked, s *Scene, w, h int, t *Thresholds) []Idea {
	ideas := []Idea{}
	replated := false
	for i := range pairs {
		p := &pairs[i]
		if !p.Same() || i >= mostIdeas {
			break // those that read as one come first
		}
		if p.Kind == Touching {
			ideas = append(ideas, s.lined(i, p, w, h))
		}
		ideas = append(ideas, s.shaded(i, pairs, t)...)
		if p.Kind == BesideLine && !replated {
			if idea, ok := s.replated(i, pairs, platings); ok {
				ideas, replated = append(ideas, idea), true
			}
		}
	}
	return ideas
}

// lined builds metal between two enamels.
func (s *Scene) lined(i int, p *Pair, w, h int) Idea {
	at := [][2]float64{{p.X / float64(w), p.Y / float64(h)}}
	return Idea{
		Pair: i, Recipe: &sizing.Recipe{Kind: sizing.BuildBorder, Points: at}, Fixes: 1,
		Words: fmt.Sprintf("Build a line between %s and %s.", s.nameOf(p.A), s.nameOf(p.B)),
	}
}

// shadeStep and mostShade are how finely, and how far, a colour is made lighter
// or darker in search of one that is told apart: OKLab's L. Past a third it is
// another colour.
const (
	shadeStep = 0.01
	mostShade = 0.33
)

// shaded makes one of a pair lighter or darker, as little as does, the gentler
// first. Nothing that was told apart may then read as one.
func (s *Scene) shaded(i int, pairs []Pair, t *Thresholds) []Idea {
	var all []Idea
	p := &pairs[i]
	flats := []reduce.FlatID{p.A}
	if p.Kind != BesideLine {
		flats = append(flats, p.B)
	}
	for _, id := range flats {
		for _, way := range []float64{1, -1} {
			if idea, ok := s.shade(i, id, way, pairs, t); ok {
				all = append(all, idea)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Idea) int { return cmp.Compare(a.Shift, b.Shift) })
	return all[:min(len(all), 2)]
}

// shade goes one way from a flat's colour to the first that is told apart.
func (s *Scene) shade(i int, id reduce.FlatID, way float64, pairs []Pair, t *Thresholds) (Idea, bool) {
	was := s.colourOf(id, 0)
	for step := shadeStep; step <= mostShade; step += shadeStep {
		o := was.OKLab()
		o.L += float64(way * step)
		if o.L <= 0 || o.L >= 1 {
			break
		}
		c := o.RGB8()
		fixes, breaks, parts := s.recoloured(id, c).changes(i, id, pairs, t)
		if !parts || breaks > 0 {
			continue
		}
		word := "lighter"
		if way < 0 {
			word = "darker"
		}
		return Idea{
			Pair: i, Edit: &reduce.Edit{Op: reduce.SetColour, Flat: id, RGB: &c}, Fixes: fixes,
			Shift: colour.CIEDE2000(was.Lab(), c.Lab()),
			Words: fmt.Sprintf("Make %s %s.", s.nameOf(id), word),
		}, true
	}
	return Idea{}, false
}

// recoloured is the scene with one flat in another colour.
func (s *Scene) recoloured(id reduce.FlatID, c colour.RGB8) *Scene {
	t := *s
	t.Flats = slices.Clone(s.Flats)
	for k := range t.Flats {
		if t.Flats[k].ID == id {
			t.Flats[k].RGB = c
		}
	}
	return &t
}

// changes counts the pairs of a flat that a scene parts by colour and that it
// makes read as one, and says whether pair i is parted.
func (s *Scene) changes(i int, id reduce.FlatID, pairs []Pair, t *Thresholds) (fixes, breaks int, parts bool) {
	for k := range pairs {
		p := &pairs[k]
		if !p.has(id) {
			continue
		}
		same := !s.toldApart(p, t)
		switch {
		case p.Same() && !same:
			fixes++
			parts = parts || k == i
		case !p.Same() && same:
			breaks++
		}
	}
	return fixes, breaks, parts
}

// toldApart says whether the normal eye tells a pair apart by colour.
func (s *Scene) toldApart(p *Pair, t *Thresholds) bool {
	if p.Kind == BesideLine {
		return besideMetal(s.colourOf(p.A, 0), &s.Plating, colour.Normal, t).ByColour == sizing.Holds
	}
	return contrastOf(s.colourOf(p.A, 0), s.colourOf(p.B, 0), colour.Normal).Colour >= t.Colour
}

// replated is the best plating that tells pair i apart and more besides than
// the one chosen.
func (s *Scene) replated(i int, pairs []Pair, platings []Ranked) (Idea, bool) {
	now := slices.IndexFunc(platings, func(r Ranked) bool { return r.Chosen })
	for k := range platings {
		r := &platings[k]
		if !r.Fits || r.Chosen || slices.Contains(r.Fail, pairs[i].A) || now >= 0 && r.Share <= platings[now].Share {
			continue
		}
		idea := Idea{Pair: i, Plating: r.Plating, Words: fmt.Sprintf("Plate it in %s.", r.Name)}
		for j := range pairs {
			p := &pairs[j]
			fails := slices.Contains(r.Fail, p.A)
			switch {
			case p.Kind != BesideLine:
			case p.Same() && !fails:
				idea.Fixes++
			case !p.Same() && fails:
				idea.Breaks++
			}
		}
		return idea, true
	}
	return Idea{}, false
}
