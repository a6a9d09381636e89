package pricefile

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// table is the block of prices a piece: sizes across and pieces down, or turned.
type table struct {
	turned bool
	head   row
	rows   []row
	lines  []row // as they stood, where it was turned
	top    row
}

// cell is where a cell of the block stands in the text, by its line and column
// in the block as it is read.
func (t *table) cell(i, j int) place {
	if t.turned {
		i, j = j, t.column(i)
		if i == 0 {
			return t.top.at(j)
		}
		return t.lines[i-1].at(j)
	}
	if i == 0 {
		return t.head.at(j)
	}
	return t.rows[i-1].at(j)
}

// column finds the column of the text that became line i of the block.
func (t *table) column(i int) int {
	if i == 0 {
		return 0
	}
	return t.rows[i-1].line
}

// span is the pieces that a line of prices is said to hold for.
type span struct {
	from, to int // to is 0 where the line does not say
	at       place
}

// headWords name the corner of the block.
var headWords = []string{"pieces", "quantity", "qty", "pcs", "from", "size", "sizes", "up to", "mm"}

// inTable takes a line of the block; false when it is none.
func (r *reader) inTable(l row) bool {
	if r.table != nil {
		_, known := entries[entryName(l.cells[0])]
		if !known && startsWithDigit(l.cells[0]) {
			r.table.rows = append(r.table.rows, l)
			return true
		}
		r.endTable()
	}
	if !isHead(l) {
		return false
	}
	r.table = &table{head: l}
	return true
}

// isHead says whether a line names sizes, or numbers of pieces.
func isHead(l row) bool {
	name := entryName(l.cells[0])
	if name != "" && !slices.Contains(headWords, strings.Trim(name, ":")) || len(l.cells) < 2 {
		return false
	}
	for _, c := range l.cells[1:] {
		if c != "" && !startsWithDigit(c) {
			return false
		}
	}
	return strings.Join(l.cells[1:], "") != ""
}

func startsWithDigit(s string) bool {
	for _, word := range fromWords {
		s = strings.TrimSpace(strings.TrimPrefix(strings.ToLower(s), word))
	}
	return s != "" && s[0] >= '0' && s[0] <= '9' || strings.HasPrefix(s, "-")
}

var fromWords = []string{"from", "up to", "≤", ">=", "≥", "over"}

// endTable puts a block that has ended into the list, in place of what is there.
func (r *reader) endTable() {
	t := r.table
	if t == nil {
		return
	}
	r.table = nil
	t.turned = t.sizesDown()
	p := &r.list.Pieces
	p.Sizes, p.Breaks = nil, nil
	r.places["pieces"] = t.head.at(0)
	if t.turned {
		t.turn()
		r.notes = append(r.notes, "Read with the sizes down and the pieces across.")
	}
	width := len(t.head.cells)
	for width > 1 && t.head.cells[width-1] == "" {
		width--
	}
	for j := 1; j < width; j++ {
		at := t.cell(0, j)
		r.places[fmt.Sprintf("pieces.sizes[%d]", j-1)] = at
		p.Sizes = append(p.Sizes, r.size(at))
	}
	for i, l := range t.rows {
		r.priceRow(t, i, l, width)
	}
}

// sizesDown says whether the sizes stand in the first column: it alone has a
// unit of length, or the corner says so.
func (t *table) sizesDown() bool {
	long := func(s string) bool {
		s = strings.ToLower(s)
		return strings.HasSuffix(s, "mm") || strings.HasSuffix(s, "in") || strings.HasSuffix(s, `"`) || strings.HasSuffix(s, "cm")
	}
	if slices.ContainsFunc(t.head.cells[1:], long) {
		return false
	}
	corner := entryName(t.head.cells[0])
	return strings.HasPrefix(corner, "size") || corner == "mm" || slices.ContainsFunc(t.rows, func(l row) bool { return long(l.cells[0]) })
}

// turn swaps lines and columns; cell keeps where each stood.
func (t *table) turn() {
	head := row{line: t.head.line, cells: []string{t.head.cells[0]}}
	for _, l := range t.rows {
		head.cells = append(head.cells, l.cells[0])
	}
	var rows []row
	for j := 1; j < len(t.head.cells); j++ {
		if t.head.cells[j] == "" {
			continue
		}
		turned := row{line: j, cells: []string{t.head.cells[j]}}
		for _, l := range t.rows {
			turned.cells = append(turned.cells, l.cell(j))
		}
		rows = append(rows, turned)
	}
	t.top, t.lines = t.head, t.rows
	t.head, t.rows = head, rows
}

// priceRow reads one line of prices.
func (r *reader) priceRow(t *table, i int, l row, width int) {
	from := t.cell(i+1, 0)
	path := fmt.Sprintf("pieces.breaks[%d]", len(r.list.Pieces.Breaks))
	r.places[path], r.places[path+".from"] = from, from
	b := run.Break{From: r.from(from)}
	for j := 1; j < width; j++ {
		at := t.cell(i+1, j)
		r.places[fmt.Sprintf("%s.unit[%d]", path, j-1)] = at
		b.Unit = append(b.Unit, r.amount(at, r.list.Currency))
	}
	for j := width; j < len(l.cells); j++ {
		if l.cells[j] != "" {
			r.problem(t.cell(i+1, j), "This price stands below no size.")
		}
	}
	r.list.Pieces.Breaks = append(r.list.Pieces.Breaks, b)
}

// size reads the greatest size of a class.
func (r *reader) size(at place) unit.MM {
	text := strings.ToLower(at.text)
	for _, word := range fromWords {
		text = strings.TrimSpace(strings.TrimPrefix(text, word))
	}
	m, err := unit.ParseLength(text, unit.Millimetres)
	if err != nil {
		r.problem(at, err.Error())
	}
	return unit.MM(math.Round(float64(m)*1e6) / 1e6) // inches come out with a tail
}

// from reads the first number of pieces of a line: "50", "from 50", "50+",
// "50-99", with "pieces" or "pcs" behind it.
func (r *reader) from(at place) int {
	text := strings.ToLower(at.text)
	for _, word := range fromWords {
		text = strings.TrimSpace(strings.TrimPrefix(text, word))
	}
	for _, word := range []string{"pieces", "pcs.", "pcs", "pins", "+"} {
		text = strings.TrimSpace(strings.TrimSuffix(text, word))
	}
	low, high, ranged := strings.Cut(strings.NewReplacer("–", "-", "—", "-", " to ", "-").Replace(text), "-")
	if ranged && strings.TrimSpace(low) == "" {
		r.problem(at, fmt.Sprintf("%q is below zero; a row of prices starts at 1 piece or more.", at.text))
		return 0
	}
	n, err := unit.ParseCount(low, "")
	if err != nil {
		r.problem(at, err.Error())
		return 0
	}
	s := span{from: n, at: at}
	if ranged {
		if s.to, err = unit.ParseCount(high, ""); err != nil {
			r.problem(at, err.Error())
		} else if s.to < n {
			r.problem(at, fmt.Sprintf("%q ends before it starts.", at.text))
			s.to = 0
		}
	}
	r.ranges = append(r.ranges, s)
	return n
}

// checkRanges complains of lines that overlap or leave pieces out: the price
// from one line on holds up to the next.
func (r *reader) checkRanges() {
	for i := 1; i < len(r.ranges); i++ {
		a, b := r.ranges[i-1], r.ranges[i]
		switch {
		case a.to == 0 || b.from <= a.from || r.blamed(b.at):
		case b.from <= a.to:
			r.problem(b.at, fmt.Sprintf("%s overlaps %s; give each number of pieces one price.", b.at.text, a.at.text))
		case b.from > a.to+1:
			r.problem(b.at, fmt.Sprintf("No price is given for %s pieces.", between(a.to+1, b.from-1)))
		}
	}
}

func between(a, b int) string {
	if a == b {
		return strconv.Itoa(a)
	}
	return fmt.Sprintf("%d to %d", a, b)
}
