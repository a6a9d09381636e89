package colourlist

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"badgewright/reduce/colour"
)

// lister takes the rows of a table into a list.
type lister struct {
	*table
	byCode   map[string]place // by the code in small letters
	problems problems
	// notes are on what was kept of the present row; they count once it is taken.
	notes   []LineProblem
	reading *Reading
}

// place is where a code was first met.
type place struct{ line, entry int }

// twoColours is the CIEDE2000 from which two colours given in one line are
// told of: measuring and rounding part them by less.
const twoColours = differentUpTo

func (r *lister) take() {
	list := &r.reading.List
	for i := range r.rows {
		row := &r.rows[i]
		if row.blank() {
			continue
		}
		if len(list.Entries) == MaxEntries {
			r.problems.add(LineProblem{Line: row.line,
				What: fmt.Sprintf("A list may have %d colours; this line and those below it were left out.", MaxEntries),
				Do:   "Take out what you will not use, or make two lists of it."})
			break
		}
		r.notes = r.notes[:0]
		e, bad := r.entry(row)
		if bad != nil {
			r.problems.add(*bad)
			continue
		}
		for _, n := range r.notes {
			r.problems.add(n)
		}
		r.byCode[strings.ToLower(e.Code)] = place{row.line, len(list.Entries)}
		list.Entries = append(list.Entries, *e)
	}
	r.reading.Problems, r.reading.More = r.problems.list, r.problems.more
}

// entry reads one row, or says what is wrong with it.
func (r *lister) entry(row *record) (*ColourEntry, *LineProblem) {
	if row.stray {
		return nil, &LineProblem{Line: row.line, What: "A quotation mark stands where none belongs, or one is not closed.",
			Do: `Put the whole cell in quotation marks and write those inside it twice: "24"" gold".`}
	}
	id := r.text(row, code)
	if bad := codeFault(id); bad != nil {
		return nil, new(bad.at(row.line, r.title(r.at[code])))
	}
	e, bad := r.colour(row)
	if bad != nil {
		return nil, bad
	}
	if bad := r.twice(row, id, e); bad != nil {
		return nil, bad
	}
	e.Code, e.Name = id, r.text(row, name)
	if n := utf8.RuneCountInString(e.Name); n > maxName {
		r.note(row, name, fmt.Sprintf("%s has %d characters; %d are kept.", quoted(e.Name), n, maxName), "The rest was cut off; shorten it if that matters.")
		e.Name = cut(e.Name, maxName)
	}
	return e, nil
}

func codeFault(id string) *fault {
	switch n := utf8.RuneCountInString(id); {
	case n == 0:
		return faultf("Give the code that the maker calls this colour by.", "There is no code.")
	case n > maxCode:
		return faultf("Give the code alone, without a description.", "%s has %d characters, too many for a code.", quoted(id), n)
	}
	return nil
}

// text reads a code or a name and makes it harmless.
func (r *lister) text(row *record, f field) string {
	s, bare := plain(row.cell(r.at[f]))
	if !bare {
		r.note(row, f, "This began like a formula of a table program.", "It was taken as the plain text "+quoted(s)+". Check that it is right.")
	}
	return s
}

// note says what was changed in a row that is kept.
func (r *lister) note(row *record, f field, what, do string) {
	r.notes = append(r.notes, LineProblem{Line: row.line, Column: r.title(r.at[f]), What: what, Do: do, Kept: true})
}

// colour reads a row's colour: CIELAB before hex before channels, for it is
// the one that was measured.
func (r *lister) colour(row *record) (*ColourEntry, *LineProblem) {
	measured, bad, column := r.measured(row)
	if bad != nil {
		return nil, r.wrong(row, bad, column)
	}
	shown, bad, column := r.shown(row)
	if measured == nil {
		if bad != nil {
			return nil, r.wrong(row, bad, column)
		}
		return shown, nil
	}
	if shown != nil && colour.CIEDE2000(measured.CIELAB(), shown.RGB.Lab()) > twoColours {
		r.notes = append(r.notes, LineProblem{Line: row.line, Column: column, Kept: true,
			What: "This is another colour than the CIELAB of the same line.", Do: "CIELAB was taken. Check which of the two is right, and its white."})
	}
	return measured, nil
}

// wrong tells of a colour that cannot be read; a line with more cells than the
// header has most likely a comma in its name.
func (r *lister) wrong(row *record, bad *fault, column string) *LineProblem {
	p := bad.at(row.line, column)
	if n := len(r.titles); n > 0 && len(row.cells) > n {
		p.What += fmt.Sprintf(" The line has %d cells and the header %d.", len(row.cells), n)
		p.Do = "If a name has a comma in it, put the name in quotation marks. " + p.Do
	}
	return &p
}

// measured reads CIELAB; nothing at all where the row or the list has none.
func (r *lister) measured(row *record) (*ColourEntry, *fault, string) {
	if !r.hasLab() || r.white == Unstated && !r.has(white) {
		return nil, nil, ""
	}
	at, cells := r.three(row, lab, [3]field{labL, labA, labB})
	if cells == [3]string{} {
		return nil, nil, ""
	}
	w, bad := r.whiteOf(row)
	if bad != nil {
		return nil, bad, r.title(r.at[white])
	}
	l, bad := labOf(cells, w)
	if bad != nil {
		return nil, bad, r.title(at)
	}
	e := fromLab(l)
	return &e, nil, ""
}

// shown reads hex or channels.
func (r *lister) shown(row *record) (*ColourEntry, *fault, string) {
	if s := row.cell(r.at[hex]); s != "" {
		c, bad := hexOf(s)
		return entryOf(c, bad), bad, r.title(r.at[hex])
	}
	at, cells := r.three(row, rgb, [3]field{red, green, blue})
	if cells == [3]string{} {
		at = max(at, r.at[hex], r.at[lab], r.at[labL])
		return nil, faultf(r.wanted(), "There is no colour."), r.title(at)
	}
	c, bad := rgbOf(cells)
	return entryOf(c, bad), bad, r.title(at)
}

// wanted says how this list gives a colour.
func (t *table) wanted() string {
	switch {
	case t.has(hex):
		return "Write # and six digits, such as #1a6b8f."
	case t.hasRGB():
		return "Give red, green and blue, each from 0 to 255."
	}
	return "Give L, a and b."
}

func entryOf(c colour.RGB8, bad *fault) *ColourEntry {
	if bad != nil {
		return nil
	}
	e := fromRGB(c)
	return &e
}

// three returns three values from one column or from three, and the column to
// speak of when they are wrong.
func (r *lister) three(row *record, one field, each [3]field) (int, [3]string) {
	if s := row.cell(r.at[one]); s != "" {
		return r.at[one], triple(s)
	}
	var cells [3]string
	if r.has(each[:]...) {
		for i, f := range each {
			cells[i] = row.cell(r.at[f])
		}
		return r.at[each[0]], cells
	}
	return r.at[one], cells
}

// whiteOf is the white of one row: its own cell, else the list's.
func (r *lister) whiteOf(row *record) (White, *fault) {
	if !r.has(white) {
		return r.white, nil
	}
	s := row.cell(r.at[white])
	if _, w := headed(s); w != Unstated {
		return w, nil
	}
	if s == "" && r.white != Unstated {
		return r.white, nil
	}
	if s == "" {
		return Unstated, faultf("Write D50 or D65.", "The white of this CIELAB is not said.")
	}
	return Unstated, faultf("Only D50 and D65 can be read. Ask the maker for one of them, or give hex.", "%s is a white that this tool does not know.", quoted(s))
}

// twice tells of a code that stands in the list already.
func (r *lister) twice(row *record, id string, e *ColourEntry) *LineProblem {
	first, there := r.byCode[strings.ToLower(id)]
	if !there {
		return nil
	}
	what := fmt.Sprintf("The code %s already stands in line %d", quoted(id), first.line)
	if r.reading.List.Entries[first.entry].RGB != e.RGB {
		what += ", with another colour"
	}
	return &LineProblem{Line: row.line, Column: r.title(r.at[code]), What: what + ".", Do: "The first was taken. Give this one its own code, or take it out."}
}
