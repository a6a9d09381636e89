package colourlist

import (
	"fmt"
	"path"
	"strings"

	"badgewright/reduce"
)

// Reading is what was read of a file.
type Reading struct {
	List ColourList
	// Problems are in the order of the lines; More counts those past the first hundred.
	Problems []LineProblem
	More     int
	// Notes say how the list was read.
	Notes []string
	// NeedsWhite is true when the only colours are CIELAB and nothing says for
	// which white: the list is empty until Read is told.
	NeedsWhite bool
}

// Read reads a maker's colour list: CSV after RFC 4180, or with semicolons or
// tabs, in UTF-8, UTF-16 or Windows-1252. Columns are found by their header, or
// guessed. w is the white of CIELAB values for a list that does not say. Lines
// that cannot be read are told of and left out; an error means that nothing
// could be read.
func Read(fileName string, data []byte, w White) (*Reading, error) {
	text, note, err := TextOf(data)
	if err != nil {
		return nil, err
	}
	t, err := tableOf(text)
	if err != nil {
		return nil, err
	}
	if t.torn {
		return nil, &reduce.Refusal{What: "The header names both D50 and D65 for one colour.", Do: "Say one of them, the white that the list was measured for."}
	}
	r := &lister{table: t, byCode: map[string]place{}, reading: &Reading{}}
	if t.white == Unstated {
		t.white = w
	}
	if r.reading.NeedsWhite = t.hasLab() && !t.hasRGB() && t.white == Unstated && !t.has(white); r.reading.NeedsWhite {
		return r.reading, nil
	}
	r.reading.List.Name = nameOf(t.heading, fileName)
	r.reading.Notes = append(r.reading.Notes, t.how())
	r.reading.Notes = append(r.reading.Notes, t.doubts()...)
	if note != "" {
		r.reading.Notes = append(r.reading.Notes, note)
	}
	r.take()
	return r.reading, nil
}

// nameOf is what to call a list: by a heading in it, else by its file.
func nameOf(heading, fileName string) string {
	if heading != "" {
		return cut(heading, maxName)
	}
	base := path.Base(strings.ReplaceAll(fileName, `\`, "/"))
	base, _ = plain(strings.TrimSuffix(base, path.Ext(base)))
	if base == "" {
		return "Pasted list"
	}
	return cut(base, maxName)
}

func cut(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}

// doubts says what was taken with a grain of salt.
func (t *table) doubts() []string {
	var all []string
	if t.hasLab() && t.white == Unstated && !t.has(white) {
		all = append(all, "Its CIELAB was left aside, for nothing says for which white it is; head it “L D50” or “L D65” to have it used.")
	} else if t.hasLab() && t.wide {
		all = append(all, "Its CIELAB is for the 10-degree observer and was taken as though for the 2-degree one, which shifts colours slightly.")
	}
	return all
}

// how says which columns were taken for what.
func (t *table) how() string {
	var parts []string
	say := func(what string, all ...field) {
		var titles []string
		for _, f := range all {
			titles = append(titles, t.title(t.at[f]))
		}
		parts = append(parts, what+" from "+strings.Join(titles, ", "))
	}
	for _, p := range []struct {
		what string
		all  []field
	}{
		{"code", []field{code}}, {"name", []field{name}},
		{"CIELAB " + string(t.white), []field{lab}}, {"CIELAB " + string(t.white), []field{labL, labA, labB}},
		{"hex", []field{hex}}, {"sRGB", []field{rgb}}, {"sRGB", []field{red, green, blue}},
	} {
		if t.has(p.all...) {
			say(strings.TrimSpace(p.what), p.all...)
		}
	}
	by := map[rune]string{',': "commas", ';': "semicolons", '\t': "tabs"}[t.sep]
	head := "by its header"
	if t.titles == nil {
		head = "without a header, by what stands in it"
	}
	return fmt.Sprintf("Read %s, parted by %s: %s.", head, by, strings.Join(parts, "; "))
}
