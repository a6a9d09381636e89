package colourlist

import (
	"encoding/csv"
	"errors"
	"strings"
)

// record is one line of the table.
type record struct {
	line  int // from 1
	cells []string
	// stray is true when a quotation mark out of place spoiled the line.
	stray bool
}

// mostColumns is how many columns are looked at; no list has so many.
const mostColumns = 64

// separators that are tried, in this order: a comma stands inside numbers and
// names more often than the others.
var separators = [...]rune{'\t', ';', ','}

// statedSeparator takes a first line such as "sep=;", which table programs
// write, off the text. The line stays as an empty one, so that lines keep
// their numbers.
func statedSeparator(text string) (rune, string) {
	first, rest, _ := strings.Cut(text, "\n")
	s := strings.ToLower(strings.TrimRight(strings.TrimSpace(first), `"`))
	s = strings.TrimPrefix(s, `"`)
	if s == "sep=" && strings.Contains(first, "\t") {
		return '\t', "\n" + rest
	}
	for _, sep := range separators {
		if s == "sep="+string(sep) {
			return sep, "\n" + rest
		}
	}
	return 0, text
}

// split parts a text into records by RFC 4180. A line with a stray quotation
// mark is marked and left; where one opens a cell that never ends, the lines
// below it are read each for itself, so that none is swallowed.
func split(text string, sep rune) []record {
	var all []record
	r := reader(text, sep)
	for {
		cells, err := r.Read()
		if len(cells) > 0 && err == nil {
			line, _ := r.FieldPos(0)
			all = append(all, record{line: line, cells: cells[:min(len(cells), mostColumns)]})
			continue
		}
		var bad *csv.ParseError
		if !errors.As(err, &bad) {
			return all
		}
		all = append(all, record{line: bad.StartLine, stray: true})
		if bad.Line > bad.StartLine {
			return append(all, singly(text, sep, bad.StartLine)...)
		}
	}
}

func reader(text string, sep rune) *csv.Reader {
	r := csv.NewReader(strings.NewReader(text))
	r.Comma = sep
	r.FieldsPerRecord = -1
	r.TrimLeadingSpace = sep != '\t'
	return r
}

// singly reads every line after the first `done` as a record of its own.
func singly(text string, sep rune, done int) []record {
	var all []record
	for i, l := range strings.Split(text, "\n") {
		if i < done || strings.TrimSpace(l) == "" {
			continue
		}
		if !strings.Contains(l, `"`) {
			all = append(all, record{line: i + 1, cells: strings.SplitN(l, string(sep), mostColumns)})
			continue
		}
		cells, err := reader(l, sep).Read()
		all = append(all, record{line: i + 1, cells: cells[:min(len(cells), mostColumns)], stray: err != nil})
	}
	return all
}

// top returns the first lines of a text.
func top(text string, n int) string {
	at := 0
	for range n {
		i := strings.IndexByte(text[at:], '\n')
		if i < 0 {
			return text
		}
		at += i + 1
	}
	return text[:at]
}

// cell returns a cell without the space round it; empty where the line has no such column.
func (r *record) cell(i int) string {
	if i < 0 || i >= len(r.cells) {
		return ""
	}
	return strings.TrimSpace(r.cells[i])
}

func (r *record) blank() bool {
	for i := range r.cells {
		if r.cell(i) != "" {
			return false
		}
	}
	return !r.stray
}
