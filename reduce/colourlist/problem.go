package colourlist

import "fmt"

// LineProblem is something wrong with one line of a list.
type LineProblem struct {
	Line int `json:"line"` // from 1, as an editor counts
	// Column is what the header calls it, or "column 3"; empty for the whole line.
	Column string `json:"column"`
	What   string `json:"what"`
	Do     string `json:"do"`
	// Kept is true when the line was taken all the same.
	Kept bool `json:"kept"`
}

// mostProblems is how many are listed: past these a person mends the file,
// not the lines.
const mostProblems = 100

// problems gathers what is wrong, in the order of the lines.
type problems struct {
	list []LineProblem
	more int
}

func (p *problems) add(l LineProblem) {
	if len(p.list) >= mostProblems {
		p.more++
		return
	}
	p.list = append(p.list, l)
}

// fault is what is wrong with one cell.
type fault struct{ what, do string }

func (f *fault) at(line int, column string) LineProblem {
	return LineProblem{Line: line, Column: column, What: f.what, Do: f.do}
}

func faultf(do, format string, args ...any) *fault {
	return &fault{fmt.Sprintf(format, args...), do}
}
