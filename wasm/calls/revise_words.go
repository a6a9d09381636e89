package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing"
)

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

// lostWhat names an edit, by the flat it was made to.
var lostWhat = map[reduce.Op]string{
	reduce.SetRole: "What %s becomes", reduce.SetLock: "That %s is kept", reduce.SetColour: "The new colour of %s", reduce.SetName: "The name of %s",
	reduce.Join: "What %s was joined with", reduce.Apart: "What %s was held apart from", reduce.Split: "The area split off %s", reduce.Fill: "The area filled in place of %s",
}

var lostWhy = map[reduce.LostWhy]string{
	reduce.NoSuchFlat:   "the new drawing has no such colour",
	reduce.NothingThere: "nothing is drawn at its place any more",
	reduce.AnotherThere: "another colour lies at its place now",
	reduce.RunsOut:      "its place is no longer closed in",
}

// lostWords says which change does not fit, and why.
func lostWords(e reduce.LostEdit, names map[reduce.FlatID]string) string {
	return fmt.Sprintf(lostWhat[e.Op], nameIn(names, e.Flat)) + ": " + lostWhy[e.Why] + "."
}

// orderedWords says it of what a version made of a flat.
func orderedWords(c sizing.VersionColour, version string, names map[reduce.FlatID]string) string {
	as := ""
	if c.Code != "" {
		as = " (" + c.Code + ")"
	}
	return fmt.Sprintf("What %s was ordered as%s in %s: %s.", nameIn(names, c.Flat), as, version, lostWhy[reduce.NoSuchFlat])
}

// lineWords says it of a line made by hand, or of a repair.
func lineWords(kind sizing.RecipeKind) string {
	what := "A repair"
	switch kind {
	case sizing.DrawLine:
		what = "A line drawn by hand"
	case sizing.EraseLine:
		what = "A line erased by hand"
	}
	return what + ": " + lostWhy[reduce.NothingThere] + "."
}

// hangWords says it of eyes that a part hung by.
var hangWords = "A place where parts hang from each other: " + lostWhy[reduce.NothingThere] + "."

// differsWords says how much of a drawing is another.
func differsWords(d *reduce.Difference) string {
	places := "1 place"
	if d.Places != 1 {
		places = fmt.Sprintf("%d places", d.Places)
	}
	switch p := 100 * d.Share; {
	case d.Places == 0:
		return "Nothing that is drawn changed"
	case p < 0.1:
		return places + " changed, less than 0.1 % of what is drawn"
	default:
		return fmt.Sprintf("%s changed, %.1f %% of what is drawn", places, p)
	}
}

// fitsWords says how much of what was set carried over.
func fitsWords(lost int) string {
	switch lost {
	case 0:
		return "all you had set carried over"
	case 1:
		return "one thing you had set does not fit"
	}
	return fmt.Sprintf("%d things you had set do not fit", lost)
}
