package save

import (
	"badgewright/reduce"
	"badgewright/reduce/colourlist"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// Content is what a project is made of, as the file's reader sees it.
type Content struct {
	Designs     []sizing.Design
	PriceLists  []run.PriceList
	ColourList  *colourlist.ColourList
	PriceListID string // the one in use
}

// Check refuses a project that nobody could have made here: words without a meaning,
// sizes that are none, lists without end, drawings that did not come with it.
func Check(c Content, drawings []Drawing) error {
	if n := len(c.Designs); n < 1 || n > mostDesigns {
		return refuse(notOurs, "The project has %d designs; there can be from 1 to %d.", n, mostDesigns)
	}
	there := map[string]bool{}
	for _, d := range drawings {
		there[d.ID] = true
	}
	for i := range c.Designs {
		if err := checkDesign(&c.Designs[i], there); err != nil {
			return err
		}
	}
	return checkLists(&c)
}

// checkLists looks at price lists and colour list as a whole: what is wrong in a cell of a
// price list is told beside the cell.
func checkLists(c *Content) error {
	if n := len(c.PriceLists); n < 1 || n > mostLists {
		return refuse(notOurs, "The project has %d price lists; there can be from 1 to %d.", n, mostLists)
	}
	ids := map[string]bool{}
	for _, l := range c.PriceLists {
		if l.ID == "" || ids[l.ID] || l.MinorDigits < 0 || l.MinorDigits > 4 {
			return refuse(notOurs, "The price list %q of the project is not as it should be.", shortened(l.Name))
		}
		ids[l.ID] = true
	}
	if !ids[c.PriceListID] {
		return refuse(notOurs, "The project uses a price list that it does not have.")
	}
	if l := c.ColourList; l != nil && len(l.Entries) > colourlist.MaxEntries {
		return refuse(notOurs, "The maker's colour list has %d colours; the most is %d.", len(l.Entries), colourlist.MaxEntries)
	}
	return nil
}

// design is one design being looked at.
type design struct {
	*sizing.Design
	err error // the first thing that is wrong
}

func checkDesign(of *sizing.Design, there map[string]bool) error {
	d := &design{Design: of}
	if err := of.Size.Check(); err != nil {
		return err
	}
	d.within("colours", float64(of.Colours), 1, reduce.MaxCount)
	d.within("posts", float64(of.Posts), 0, 100)
	d.within("thickness in mm", float64(of.Thickness), 0, 50)
	d.word("measure", string(of.Size.By), sizeBys)
	d.word("making", string(of.Making), makings)
	d.word("fill", string(of.Fill), fills)
	d.word("base metal", string(of.Base), metals)
	d.limits(&of.Limits)
	d.drawings(there)
	d.set(of.Edits, of.Recipes, of.Lettering, &of.Parts)
	d.back(&of.Back)
	d.versions()
	return d.err
}

func (d *design) say(format string, args ...any) {
	if d.err == nil {
		args = append([]any{shortened(d.Name)}, args...)
		d.err = refuse(notOurs, "The design %q "+format, args...)
	}
}

// within holds a number to its bounds; NaN is outside of all.
func (d *design) within(what string, v, least, most float64) {
	if !(v >= least && v <= most) {
		d.say("has %g as its %s, which no pin has.", v, what)
	}
}

func (d *design) word(what, word string, known []string) {
	for _, k := range known {
		if word == k {
			return
		}
	}
	d.say("has %q as its %s, a word that is not known here.", shortened(word), what)
}

func (d *design) few(what string, n, most int) {
	if n > most {
		d.say("has %d %s; the most is %d.", n, what, most)
	}
}

// mostLimit bounds a limit, mm: it is that of the largest pin. Limits are lengths, areas,
// degrees and forces; none is larger.
const mostLimit = 1000

func (d *design) limits(l *sizing.Limits) {
	for _, v := range []unit.MM{l.Line, l.Area, l.Edge, l.CutOut, l.Bridge, l.Lettering, l.LetteringSunk, l.Solid, l.Eye, l.EyeRim, l.Tip,
		unit.MM(l.AreaSize), unit.MM(l.TipAngle), unit.MM(l.Push)} {
		d.within("limit", float64(v), 0, mostLimit)
	}
}

func (d *design) drawings(there map[string]bool) {
	d.few("drawings", len(d.Drawings), mostVersions)
	for _, r := range d.Drawings {
		d.word("background", string(r.Ground), grounds)
		if !there[r.ID] {
			d.say("speaks of the drawing %q, which did not come with it.", shortened(r.ID))
		}
		if r.Set != nil {
			d.set(r.Set.Edits, r.Set.Recipes, r.Set.Lettering, &r.Set.Parts)
		}
	}
}

// set looks at what is set on one drawing.
func (d *design) set(edits []reduce.Edit, recipes []sizing.Recipe, letters []sizing.LetterMark, parts *sizing.Parts) {
	d.few("changes of colours", len(edits), mostEdits)
	d.few("lines and repairs", len(recipes), mostRecipes)
	d.few("marked capitals", len(letters), mostRecipes)
	d.few("joins of parts", len(parts.Joins), mostRecipes)
	if d.err != nil {
		return
	}
	points := 0
	for i := range edits {
		points += d.edit(&edits[i])
	}
	for _, r := range recipes {
		d.word("kind of repair", string(r.Kind), recipeKinds)
		d.within("line's width in mm", float64(r.Width), 0, float64(sizing.GreatestSize))
		points += d.places(r.Points)
	}
	for _, l := range letters {
		d.places(l.Points())
	}
	d.word("way to hang", string(parts.Choice), partsChoices)
	for _, j := range parts.Joins {
		d.places([][2]float64{j.Upper.At, j.Lower.At})
		d.within("ring in mm", float64(j.Ring), 0, float64(sizing.GreatestSize))
		d.within("number of links", float64(j.Links), 0, 1000)
	}
	d.few("places of lines", points, mostPoints)
}

func (d *design) edit(e *reduce.Edit) (points int) {
	d.word("kind of change", string(e.Op), ops)
	if e.Role != "" {
		d.word("role of a colour", string(e.Role), roles)
	}
	d.places([][2]float64{{e.X, e.Y}})
	if e.Gap != nil {
		d.places([][2]float64{{e.Gap[0], e.Gap[1]}, {e.Gap[2], e.Gap[3]}})
	}
	d.within("number of colours", float64(e.Count), 0, reduce.MaxFlats)
	for _, l := range e.Lines {
		points += d.places(l.Points)
	}
	return points
}

// mostShare is how far off the drawing a place may lie, in shares of it: lines drawn by hand
// may leave it.
const mostShare = 100

func (d *design) places(all [][2]float64) int {
	for _, p := range all {
		d.within("place", p[0], -mostShare, mostShare)
		d.within("place", p[1], -mostShare, mostShare)
	}
	return len(all)
}

func (d *design) back(b *sizing.Back) {
	d.word("fastening", string(b.Fastening), fastenings)
	d.word("buyers", string(b.Buyers), buyers)
	d.few("posts set by hand", len(b.Hand), 100)
	d.places(b.Hand)
	if b.Stamp != nil && b.Stamp.Mark != nil {
		if _, err := b.Stamp.Mark.Cells(); err != nil && d.err == nil {
			d.err = err
		}
	}
}

func (d *design) versions() {
	if n := len(d.Versions); n < 1 || n > mostVersions {
		d.say("has %d versions; there can be from 1 to %d.", n, mostVersions)
	}
	for _, v := range d.Versions {
		d.word("plating", string(v.Plating), platings())
		d.within("quantity", float64(v.Quantity), 0, 1e7)
		d.few("colours of a version", len(v.Colours), 10*reduce.MaxFlats)
		for _, c := range v.Colours {
			d.word("finish", string(c.Finish), finishes)
		}
	}
}
