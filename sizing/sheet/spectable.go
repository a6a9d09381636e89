package sheet

import (
	"strconv"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// The table of colours: number, swatch, name, hex, maker's code, finish.

// column is one of a table.
type column struct {
	wide  unit.MM
	title string
}

// columns are those of a table.
type columns []column

func (c columns) wide() unit.MM {
	sum := unit.MM(0)
	for _, one := range c {
		sum += one.wide
	}
	return sum
}

// columns are those of the table of colours, as wide as what stands in them, up
// to a bound.
func (d *drafting) columns() columns {
	all := columns{{6.5, "No"}, {10, ""}, {13, "Colour"}, {14.5, "Hex"}, {17.5, "Maker’s code"}, {12, "Finish"}}
	most := []unit.MM{0, 0, 30, 0, 22, 19}
	for _, c := range d.s.colours() {
		for i, cell := range colourCells(c) {
			if col := &all[2+i]; most[2+i] > 0 {
				col.wide = max(col.wide, min(most[2+i], d.Width(body, cell)+2))
			}
		}
	}
	return all
}

// rowHigh is the height of its rows; a crowded one has the lower.
const (
	rowHigh     unit.MM = 5.6
	lowRow      unit.MM = 4.3
	tableHead   unit.MM = 8.5
	tableFooter unit.MM = 8
)

// colours are those of the table; metal without a flat of its own is added.
func (s *Spec) colours() []AskedColour {
	all := append([]AskedColour{}, s.Asked.Colours...)
	for i := range all {
		if all[i].Role == reduce.Metal {
			all[i].Name, all[i].RGB = s.Asked.Plating, s.Metal
		}
	}
	if len(all) == 0 || all[len(all)-1].Role != reduce.Metal {
		all = append(all, AskedColour{No: len(all) + 1, Name: s.Asked.Plating, RGB: s.Metal, Role: reduce.Metal})
	}
	return all
}

// colourTable draws the table as high as a box, or as it needs.
func (d *drafting) colourTable(x, y, h unit.MM, table columns) {
	rows := d.s.colours()
	wide := table.wide()
	d.head(x, y+3, wide, "Colours", "numbered as on the front")
	high := max(lowRow, min(rowHigh, (h-tableHead-tableFooter)/unit.MM(len(rows))))
	shown := rows[:min(len(rows), max(1, int((h-tableHead-tableFooter)/high)))]
	d.titles(x, y+7, table)
	y += tableHead
	for _, c := range shown {
		d.colourRow(x, y, high, c, table)
		y += high
	}
	d.Line(x, y, x+wide, y, ruleLine)
	more := "Nearest: of your chart, named in the proof. A screen shows colours only roughly; CIELAB stands behind."
	if len(shown) < len(rows) {
		more = amount(len(rows)-len(shown), "colour") + " more on the next sheets."
	}
	d.Block(x, y+3.4, wide, small, more)
}

// titles sets the heads of columns.
func (d *drafting) titles(x, y unit.MM, columns []column) {
	wide := unit.MM(0)
	for _, c := range columns {
		d.Text(x+wide, y, small, d.Cut(small, c.wide-1, c.title))
		wide += c.wide
	}
	d.Line(x, y+1.2, x+wide, y+1.2, thinLine)
}

func (d *drafting) colourRow(x, y, high unit.MM, c AskedColour, table columns) {
	d.Line(x, y, x+table.wide(), y, ruleLine)
	base := y + high/2 + body.Cap()/2
	d.Text(x+0.5, base, strong, strconv.Itoa(c.No))
	x += table[0].wide
	d.swatch(x, y, table[1].wide-2, high, c.RGB)
	x += table[1].wide
	for i, cell := range colourCells(c) {
		col := table[2+i]
		t := body
		if d.Width(t, cell) > col.wide-1.2 {
			t.Size = 6.5
		}
		d.Text(x, base, t, d.Cut(t, col.wide-1.2, cell))
		x += col.wide
	}
}

// colourCells are a colour in words.
func colourCells(c AskedColour) []string {
	if c.Role == reduce.Metal {
		return []string{c.Name + ": all metal", "–", "–", metalFinish(c.Finish)}
	}
	return []string{c.Name, c.RGB.Hex(), codeWords(c), finishOf(c)}
}

// swatch fills a box with a colour.
func (d *drafting) swatch(x, y, w, high unit.MM, c colour.RGB8) {
	d.Rect(x, y+0.7, w, high-1.4, &c, &edgeLine)
}

func codeWords(c AskedColour) string {
	switch {
	case c.Code == "":
		return "nearest"
	case c.Named == "":
		return c.Code
	}
	return c.Code + " " + c.Named
}

func finishOf(c AskedColour) string {
	switch {
	case c.Role == reduce.Printed:
		return "printed on top"
	case c.Finish == sizing.Plain:
		return "plain"
	}
	return finishWords(c.Finish)
}

func metalFinish(f sizing.Finish) string {
	if f == sizing.Plain {
		return "smooth"
	}
	return string(f)
}
