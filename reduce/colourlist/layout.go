package colourlist

import (
	"fmt"
	"strings"

	"badgewright/reduce"
)

// How far down a header is looked for, and by how many lines a separator is judged.
const (
	titleLines = 10
	judgeLines = 2 * look
)

// table is a list parted into columns.
type table struct {
	columns
	sep     rune
	heading string   // a line above the header
	rows    []record // below the header
}

// tableOf finds the separator under which a text is a list of colours, and
// its columns.
func tableOf(text string) (*table, error) {
	stated, text := statedSeparator(text)
	tries := separators[:]
	if stated != 0 {
		tries = []rune{stated}
	}
	for _, guessing := range []bool{false, true} {
		for _, sep := range tries {
			t := table{sep: sep}
			if t.layOut(split(top(text, judgeLines), sep), guessing) && t.layOut(split(text, sep), guessing) {
				return &t, nil
			}
		}
	}
	return nil, noColours(text)
}

// layOut finds the columns by a header, or, guessing, by what stands in them.
func (t *table) layOut(recs []record, guessing bool) bool {
	t.columns = noColumns()
	for i := range recs[:min(len(recs), titleLines)] {
		c := headerOf(recs[i].cells)
		if recs[i].holdsColour() {
			break
		}
		if c.hasRGB() || c.hasLab() || guessing && c.guessBelow(recs[i+1:]) {
			t.columns, t.rows, t.heading = c, recs[i+1:], titleIn(recs[:i])
			return t.settleNames()
		}
	}
	if !guessing || !t.guessColour(recs) {
		return false
	}
	t.rows = recs
	return t.settleNames()
}

// guessBelow finds the colour under a header that names only a code or a name.
// A column headed "colour" may hold either.
func (c *columns) guessBelow(recs []record) bool {
	if len(c.titles) < 2 || !c.has(code) && !c.has(name) {
		return false
	}
	if c.guessColour(recs) {
		return true
	}
	called := c.at[name]
	c.at[name] = -1
	if called >= 0 && c.guessColour(recs) {
		return true
	}
	c.at[name] = called
	return false
}

// settleNames makes sure of a column of codes: names stand in for them.
func (t *table) settleNames() bool {
	if !t.has(code) && !t.has(name) {
		t.guessNames(t.rows)
	}
	if !t.has(code) {
		t.at[code], t.at[name] = t.at[name], -1
	}
	return t.has(code)
}

// holdsColour is true for a line with a marked colour in it: no header has one.
func (r *record) holdsColour() bool {
	for i := range r.cells {
		if _, bad := hexOf(r.cell(i)); bad == nil && strings.HasPrefix(r.cell(i), "#") {
			return true
		}
	}
	return false
}

// titleIn returns the first line above the header that says something.
func titleIn(recs []record) string {
	for i := range recs {
		var said []string
		for k := range recs[i].cells {
			if s, _ := plain(recs[i].cell(k)); s != "" {
				said = append(said, s)
			}
		}
		if len(said) > 0 {
			return strings.Join(said, ", ")
		}
	}
	return ""
}

// noColours says what a list lacks and which header to add.
func noColours(text string) error {
	const do = "Put a header line above the colours: code,name,hex (hex such as #1a6b8f); or code,name,r,g,b; or code,name,L D50,a,b."
	first := ""
	for _, r := range split(top(text, titleLines), ',') {
		if !r.blank() {
			first = strings.Join(r.cells, ",")
			break
		}
	}
	return &reduce.Refusal{What: fmt.Sprintf("No column of codes with a column of colours was found. The first line says %s.", quoted(first)), Do: do}
}
