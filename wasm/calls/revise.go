package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// revise puts another drawing on a design's sheet. Its next revision keeps what
// still fits, and says what does not; one that was on the sheet before comes
// back as it was left.
func revise(s *Session, job Job, ask wire.ReviseAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	r := revision{subject: u, at: len(u.design.Drawings)}
	for i, ref := range u.design.Drawings[:len(u.design.Drawings)-1] {
		if ref.ID == ask.Drawing {
			r.at, r.ref = i, ref
		}
	}
	if r.now, err = s.drawing(ask.Drawing, r.ref.Ground, job.Progress); err != nil {
		return Reply{}, err
	}
	if r.diff, err = s.differ(u.opened, r.now); err != nil {
		return Reply{}, err
	}
	r.carried = reduce.Carry(u.opened.found, r.now.found, u.design.Edits)
	if r.ref.ID != "" {
		return r.back(), nil
	}
	return r.next(), nil
}

// differs is the last two drawings that were compared: their picture is asked
// for next, and again with every change while it is shown.
type differs struct {
	old, now *opened
	diff     *reduce.Difference
}

func (s *Session) differ(old, now *opened) (*reduce.Difference, error) {
	if s.differs.old == old && s.differs.now == now {
		return s.differs.diff, nil
	}
	d, err := reduce.Differ(old.found, now.found)
	if err == nil {
		s.differs = differs{old, now, d}
	}
	return d, err
}

// revision is another drawing on its way to a design's sheet.
type revision struct {
	*subject
	now     *opened
	diff    *reduce.Difference
	carried reduce.Carried
	ref     sizing.DrawingRef // the drawing, when the design has it already
	at      int               // its place among the design's drawings, or their number
}

// next lays a new drawing on the design: what was set carries over.
func (r *revision) next() Reply {
	d := *r.design
	r.ref = sizing.DrawingRef{ID: r.now.id, FileName: r.now.fileName, Ground: r.now.choice}
	for _, ref := range d.Drawings {
		r.ref.Revision = max(r.ref.Revision, ref.Revision)
	}
	r.ref.Revision++
	names := namesOf(r.base.sep)
	for _, e := range r.carried.Lost {
		r.ref.Lost = append(r.ref.Lost, lostWords(e, names))
	}
	d.Edits = append([]reduce.Edit{}, r.carried.Edits...)
	d.Recipes, d.Lettering, d.Parts = r.recipes(), r.marks(), r.hangs()
	d.Versions = append([]sizing.Version{}, d.Versions...)
	for i := range d.Versions {
		v := &d.Versions[i]
		var gone []sizing.VersionColour
		v.Colours, gone = carriedColours(v.Colours, r.carried.To)
		for _, c := range gone {
			r.ref.Lost = append(r.ref.Lost, orderedWords(c, v.Name, names))
		}
	}
	return r.on(d, fmt.Sprintf("Version %d is on the sheet. %s; %s.", r.ref.Revision, differsWords(r.diff), fitsWords(len(r.ref.Lost))))
}

// back brings a drawing back as it was left. A version of the design that came
// since has its colours carried over.
func (r *revision) back() Reply {
	d := *r.design
	set := r.ref.Set
	if set == nil {
		set = &sizing.SetOn{Colours: d.Colours, Edits: r.carried.Edits, Recipes: r.recipes(), Lettering: r.marks(), Parts: r.hangs()}
	}
	d.Colours, d.Edits, d.Recipes, d.Lettering, d.Parts = set.Colours, set.Edits, set.Recipes, set.Lettering, set.Parts
	d.Versions = append([]sizing.Version{}, d.Versions...)
	for i := range d.Versions {
		v := &d.Versions[i]
		left, had := set.ColoursOf(v.ID)
		if !had {
			left, _ = carriedColours(v.Colours, r.carried.To)
		}
		v.Colours = left
	}
	r.ref.Set, r.ref.Lost = nil, nil
	return r.on(d, fmt.Sprintf("Version %d is back on the sheet as you left it. %s.", r.ref.Revision, differsWords(r.diff)))
}

// on puts the drawing on the sheet; the one there keeps what was set on it.
func (r *revision) on(d sizing.Design, words string) Reply {
	r.ref.Differs, r.ref.Places = differsWords(r.diff), r.diff.Places
	last := len(d.Drawings) - 1
	all := []sizing.DrawingRef{}
	for i, ref := range r.design.Drawings {
		if i == last {
			ref.Set = r.design.SetNow()
		}
		if i != r.at {
			all = append(all, ref)
		}
	}
	d.Drawings = append(all, r.ref)
	return Reply{Answer: wire.Revised{
		Design: d, Changed: r.diff.Share, Places: r.diff.Places, Words: words, Lost: append([]string{}, r.ref.Lost...),
	}}
}

// recipes moves lines made by hand to where their places now are; one that lies
// where nothing is drawn is lost.
func (r *revision) recipes() []sizing.Recipe {
	out := []sizing.Recipe{}
	for _, recipe := range r.design.Recipes {
		if recipe.Points != nil {
			points := make([][2]float64, len(recipe.Points))
			for i, p := range recipe.Points {
				points[i][0], points[i][1] = r.carried.Laid.At(p[0], p[1])
			}
			recipe.Points = points
			if !r.now.found.DrawnAlong(points) {
				r.ref.Lost = append(r.ref.Lost, lineWords(recipe.Kind))
				continue
			}
		}
		out = append(out, recipe)
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
