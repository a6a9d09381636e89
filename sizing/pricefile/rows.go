package pricefile

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"badgewright/reduce"
	"badgewright/reduce/colourlist"
	"badgewright/sizing/csvfile"
)

// row is one line of the table, its cells without blanks round them; there is
// at least one.
type row struct {
	line  int
	cells []string
}

// at is a cell of a row; past its end it is empty.
func (l row) at(i int) place { return place{row: l.line, column: i + 1, text: l.cell(i)} }

func (l row) cell(i int) string {
	if i < len(l.cells) {
		return l.cells[i]
	}
	return ""
}

// rowsOf parts a text into rows, empty ones left out.
func rowsOf(data []byte) (rows []row, notes []string, err error) {
	if len(data) > MaxBytes {
		return nil, nil, &reduce.Refusal{What: fmt.Sprintf("This is longer than %d kB, far more than a price list.", MaxBytes>>10), Do: "Keep the rows with prices only."}
	}
	text, note, err := colourlist.TextOf(data)
	if err != nil {
		var r *reduce.Refusal
		if errors.As(err, &r) {
			return nil, nil, &reduce.Refusal{What: strings.ReplaceAll(r.What, "list of colours", "price list"), Do: "Copy its rows as text, a line for each entry, such as: die,,68.00."}
		}
		return nil, nil, err
	}
	if note != "" {
		notes = append(notes, note)
	}
	sep := separator(text)
	for _, rec := range records(text, sep) {
		for i := range rec.cells {
			rec.cells[i] = strings.TrimSpace(strings.ReplaceAll(csvfile.Plain(rec.cells[i]), "\u00a0", " "))
		}
		if strings.Join(rec.cells, "") != "" {
			rows = append(rows, rec)
		}
	}
	if len(rows) == 0 {
		return nil, nil, &reduce.Refusal{What: "There is nothing in this table.", Do: "Give a line for each entry, such as: die,,68.00."}
	}
	return rows, notes, nil
}

// separator is the one that most lines have; a tab before a semicolon before a
// comma, for the latter stand inside figures and sentences.
func separator(text string) rune {
	lines := strings.Split(text, "\n")
	for _, sep := range []string{"\t", ";"} {
		n := 0
		for _, l := range lines {
			if strings.Contains(l, sep) {
				n++
			}
		}
		if full := len(slices.DeleteFunc(slices.Clone(lines), func(l string) bool { return strings.TrimSpace(l) == "" })); n > 0 && 2*n >= full {
			return rune(sep[0])
		}
	}
	return ','
}

// records reads all lines; where a quotation mark out of place spoils one,
// every line is read for itself, and marks stand for what they are.
func records(text string, sep rune) []row {
	if all, err := together(text, sep); err == nil {
		return all
	}
	var all []row
	for i, l := range strings.Split(text, "\n") {
		one, err := together(l, sep)
		if err != nil {
			one = []row{{cells: strings.Split(l, string(sep))}}
		}
		for _, rec := range one {
			all = append(all, row{line: i + 1, cells: rec.cells})
		}
	}
	return all
}

func together(text string, sep rune) (all []row, err error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord = sep, -1
	r.TrimLeadingSpace = sep != '\t'
	for {
		cells, err := r.Read()
		if err == io.EOF {
			return all, nil
		}
		if err != nil {
			return nil, err
		}
		line, _ := r.FieldPos(0)
		all = append(all, row{line: line, cells: cells})
	}
}

func sortProblems(all []Problem) {
	slices.SortStableFunc(all, func(a, b Problem) int {
		if a.Row != b.Row {
			return a.Row - b.Row
		}
		return a.Column - b.Column
	})
}
