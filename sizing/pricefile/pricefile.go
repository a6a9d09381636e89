// Package pricefile writes a price list as a table of text and reads one: CSV
// after RFC 4180, with semicolons or tabs too, a whole list or a block of
// prices pasted from a spreadsheet.
//
// A line is one entry: its name, which one of several, its figure, and what it
// is counted by. An empty figure is not known. Entries may stand in any order,
// and those that are left out are not known.
//
//	price list,Example maker
//	currency,,EUR
//	pieces,up to 30 mm,up to 38 mm
//	50,2.55,2.90
//	100,1.48,1.72
//	die,,68.00
//	further colour,,0.11,piece
//	fill,hard,12,percent
//	plating,every other,0,piece
//	delivery,patient,30,pieces
//	delivery off,patient,6
//	charge,Customs papers,6.00,order
//	note,faults,Faulty pieces are made again.
//
// The prices a piece stand in the lines below the one that names the sizes:
// each starts with the number of pieces from which it holds, or with a range
// such as 50-99. Sizes down the side and pieces across are read as well.
package pricefile

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// Problem is a sentence about one cell of a table.
type Problem struct {
	Row    int    `json:"row"`    // line of the text, from 1
	Column int    `json:"column"` // cell of the line, from 1; 0 for the whole line
	Text   string `json:"text"`   // what stands there
	What   string `json:"what"`
}

// Reading is what was read of a table.
type Reading struct {
	List run.PriceList
	// Problems are in the order of the cells. A list with any must not be used;
	// what could be read of it stands in List all the same.
	Problems []Problem
	// Notes say how the table was read.
	Notes []string
}

// place is a cell of the table.
type place struct {
	row, column int
	text        string
}

// reader reads the lines of one table into a list.
type reader struct {
	list     run.PriceList
	places   map[string]place // where each cell of the list was read, by its path
	problems []Problem
	notes    []string
	table    *table // the prices a piece being read; nil outside
	ranges   []span
	commas   bool // some figure has a decimal comma for sure
	dieSizes []sized
}

// MaxBytes is the most that a table may hold: far past any price list.
const MaxBytes = 1 << 20

// Read reads a table. One that starts with a "price list" line is a list of its
// own; any other changes what it names in the list given, such as the block of
// prices alone. An error means that nothing could be read.
func Read(data []byte, base run.PriceList) (*Reading, error) {
	rows, notes, err := rowsOf(data)
	if err != nil {
		return nil, err
	}
	r := &reader{list: base.Copy(), places: map[string]place{}, notes: notes}
	if first := rows[0]; entryName(first.cells[0]) == "price list" {
		r.list = Blank()
		r.list.ID = base.ID
	}
	r.commas = slices.ContainsFunc(rows, func(l row) bool { return slices.ContainsFunc(l.cells, decimalComma.MatchString) })
	for _, line := range currencyFirst(rows) {
		r.line(line)
	}
	r.endTable()
	r.judge()
	sortProblems(r.problems)
	return &Reading{List: r.list, Problems: r.problems, Notes: r.notes}, nil
}

// Blank is a list of which nothing is known but that shipping is flat.
func Blank() run.PriceList {
	return run.PriceList{
		Pieces:   run.PiecePrices{SizeBy: sizing.ByLongest, Together: run.ByVersion},
		Shipping: run.Shipping{By: run.ShipFlat},
	}
}

// currencyFirst brings the line of the currency to the front: amounts may have
// its sign beside them.
func currencyFirst(rows []row) []row {
	for i, line := range rows {
		if entryName(line.cells[0]) == "currency" {
			first := []row{line}
			return append(append(first, rows[:i]...), rows[i+1:]...)
		}
	}
	return rows
}

// line reads one line: of the prices a piece, or an entry.
func (r *reader) line(l row) {
	if r.inTable(l) {
		return
	}
	name := entryName(l.cells[0])
	e, ok := entries[name]
	if !ok {
		r.problem(l.at(0), fmt.Sprintf("%q is no entry of a price list.%s", l.cells[0], nearEntry(name)))
		return
	}
	for i := e.cells; i < len(l.cells); i++ {
		if l.cells[i] != "" {
			r.problem(l.at(i), "Nothing is asked for here; look for a comma too many.")
		}
	}
	e.set(r, l)
}

func entryName(cell string) string {
	return strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(cell, "\u00a0", " "))), " ")
}

func (r *reader) problem(at place, what string) {
	r.problems = append(r.problems, Problem{Row: at.row, Column: at.column, Text: at.text, What: what})
}

// judge holds what was read against the list's own rules, and names the cells.
func (r *reader) judge() {
	r.checkRanges()
	r.checkDieSizes()
	for _, c := range r.list.Validate() {
		at, ok := r.placeOf(c.Cell)
		if ok && r.blamed(at) {
			continue
		}
		r.problem(at, c.What)
	}
}

// placeOf finds where a cell of the list was read: itself, or the nearest that
// holds it.
func (r *reader) placeOf(cell string) (place, bool) {
	for cell != "" {
		if at, ok := r.places[cell]; ok {
			return at, true
		}
		i := strings.LastIndexAny(cell, ".[")
		cell = cell[:max(i, 0)]
	}
	return place{}, false
}

// blamed says that a cell has its sentence already.
func (r *reader) blamed(at place) bool {
	for _, p := range r.problems {
		if p.Row == at.row && p.Column == at.column {
			return true
		}
	}
	return false
}

// Figures that tell how a table writes its decimals: a comma before one or two
// digits is a decimal one, and a point before three may stand for thousands.
var (
	decimalComma = regexp.MustCompile(`^[^\d]{0,5}\d+,\d{1,2}[^\d]{0,5}$`)
	byThousands  = regexp.MustCompile(`^[1-9]\d{0,2}\.\d{3}$`)
)

// amount reads a figure; an empty cell is not known.
func (r *reader) amount(at place, beside string) run.Rate {
	if at.text == "" {
		return run.Rate{}
	}
	text, err := r.withoutSign(at.text, beside)
	if err == nil && r.commas && byThousands.MatchString(text) {
		err = &unit.Mistake{What: fmt.Sprintf("%q can mean two things, for other figures here have a decimal comma.", at.text), Do: "Take the point out, or write it with a comma."}
	}
	if err == nil {
		d, e := unit.ParseAmount(text, beside)
		if e == nil {
			return run.Of(d)
		}
		err = e
	}
	r.problem(at, err.Error())
	return run.Rate{}
}

// signs are the currencies that write their amounts with a sign.
var signs = map[string][]string{
	"€": {"EUR"}, "£": {"GBP"}, "¥": {"JPY", "CNY"}, "₩": {"KRW"}, "₹": {"INR"}, "₺": {"TRY"}, "zł": {"PLN"},
	"$": {"USD", "CAD", "AUD", "NZD", "SGD", "HKD", "TWD", "MXN", "BRL", "CLP", "COP", "ARS"},
}

// withoutSign takes a currency's sign off an amount; another currency's is an
// error.
func (r *reader) withoutSign(text, beside string) (string, error) {
	for _, sign := range []string{"€", "£", "¥", "₩", "₹", "₺", "zł", "$"} {
		bare, found := strings.CutPrefix(text, sign)
		if !found {
			bare, found = strings.CutSuffix(text, sign)
		}
		if !found {
			continue
		}
		if beside == "%" {
			return "", &reduce.Refusal{What: fmt.Sprintf("%q is an amount of money, and percent are asked for.", text), Do: "Type it without the sign, or charge it by the piece."}
		}
		for _, code := range signs[sign] {
			if code == r.list.Currency {
				return strings.TrimSpace(bare), nil
			}
		}
		return "", &reduce.Refusal{What: fmt.Sprintf("%q is not in %s, the currency of this list.", text, r.currency()), Do: "Change it, or the currency."}
	}
	return text, nil
}

func (r *reader) currency() string {
	if r.list.Currency == "" {
		return "the currency"
	}
	return r.list.Currency
}
