package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// revise takes a design over to the next revision of its drawing: what still
// fits is kept, what does not is said.
func revise(s *Session, job Job, ask wire.ReviseAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	now, err := s.drawing(ask.Drawing, "", job.Progress)
	if err != nil {
		return Reply{}, err
	}
	c := reduce.Carry(u.opened.found, now.found, u.design.Edits)
	d := *u.design
	d.Drawings = append(append([]sizing.DrawingRef{}, d.Drawings...), sizing.DrawingRef{ID: now.id, FileName: now.fileName, Ground: now.choice})
	d.Edits = append([]reduce.Edit{}, c.Edits...)
	d.Recipes = carriedRecipes(d.Recipes, c.Laid)
	names := namesOf(u.base.sep)
	lost := []string{}
	for _, e := range c.Lost {
		lost = append(lost, lostWords(e, names))
	}
	d.Versions = append([]sizing.Version{}, d.Versions...)
	for i := range d.Versions {
		var gone []sizing.VersionColour
		d.Versions[i].Colours, gone = carriedColours(d.Versions[i].Colours, c.To)
		for _, v := range gone {
			lost = append(lost, fmt.Sprintf("What %s was ordered as in %s: the new drawing has no such colour.", nameIn(names, v.Flat), d.Versions[i].Name))
		}
	}
	return Reply{Answer: wire.Revised{Design: d, Changed: c.Changed, Lost: lost, Words: revisedWords(len(d.Drawings), &c, len(lost))}}, nil
}

// carriedRecipes moves lines drawn by hand to where their places now are.
func carriedRecipes(all []sizing.Recipe, laid reduce.Laid) []sizing.Recipe {
	out := []sizing.Recipe{}
	for _, r := range all {
		points := make([][2]float64, len(r.Points))
		for i, p := range r.Points {
			points[i][0], points[i][1] = laid.At(p[0], p[1])
		}
		if r.Points != nil {
			r.Points = points
		}
		out = append(out, r)
	}
	return out
}

// carriedColours renames the flats of a version's colours; gone are those of
// flats that are no more.
func carriedColours(all []sizing.VersionColour, to map[reduce.FlatID]reduce.FlatID) (kept, gone []sizing.VersionColour) {
	kept = []sizing.VersionColour{}
	for _, v := range all {
		id, has := to[v.Flat]
		if !has {
			gone = append(gone, v)
			continue
		}
		v.Flat = id
		kept = append(kept, v)
	}
	return kept, gone
}

func namesOf(s *reduce.Separation) map[reduce.FlatID]string {
	m := make(map[reduce.FlatID]string)
	for _, f := range s.Flats {
		m[f.ID] = f.Name
	}
	return m
}

func nameIn(names map[reduce.FlatID]string, id reduce.FlatID) string {
	if n, ok := names[id]; ok {
		return n
	}
	return "a colour"
}

// lostWords says which change no longer fits.
func lostWords(e reduce.Edit, names map[reduce.FlatID]string) string {
	what := map[reduce.Op]string{
		reduce.SetRole: "the role of %s", reduce.SetLock: "that %s is kept", reduce.SetColour: "the new colour of %s", reduce.SetName: "the name of %s",
		reduce.Join: "what %s was joined with", reduce.Apart: "what %s was held apart from", reduce.Split: "the area split off %s", reduce.Fill: "an area filled beside %s",
	}[e.Op]
	return "No longer fits: " + fmt.Sprintf(what, nameIn(names, e.Flat)) + "."
}

// revisedWords sums a revision up.
func revisedWords(revision int, c *reduce.Carried, lost int) string {
	changed := "Nothing that is drawn changed"
	switch p := 100 * c.Changed; {
	case p >= 0.1:
		changed = fmt.Sprintf("%.1f %% of what is drawn changed", p)
	case p > 0:
		changed = "Less than 0.1 % of what is drawn changed"
	}
	fits := "all you had set carried over"
	switch {
	case lost == 1:
		fits = "one thing you had set no longer fits"
	case lost > 1:
		fits = fmt.Sprintf("%d things you had set no longer fit", lost)
	}
	return fmt.Sprintf("Revision %d is on the sheet. %s; %s.", revision, changed, fits)
}
