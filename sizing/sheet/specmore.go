package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"badgewright/reduce"
	"badgewright/sizing/caution"
	"badgewright/sizing/unit"
)

// behind draws what stands on the second page and after it: colours in numbers,
// trouble spots, the limits they were held against, cautions.
func (d *drafting) behind() {
	d.sheet()
	d.colourNumbers()
	d.longFacts()
	d.spots()
	d.limits()
	d.cautions()
}

// title begins a section, with room for something of it.
func (d *drafting) title(name, more string) {
	d.room(22)
	d.y += 5
	d.head(margin, d.y, d.wide, name, more)
	d.y += 1.6
}

// table draws rows of text, each as high as its fullest cell; its head is said
// again on every page.
func (d *drafting) table(columns []column, rows [][]string, before func(row int, x, y, high unit.MM)) {
	d.y += 3
	d.titles(margin, d.y, columns)
	d.y += 1.2
	for i, row := range rows {
		high := d.rowOf(columns, row, nil)
		if d.y+high > d.foot {
			d.sheet()
			d.y += 1
			d.titles(margin, d.y, columns)
			d.y += 1.2
		}
		d.rowOf(columns, row, func(x, y unit.MM, line string) { d.Text(x, y, body, line) })
		if before != nil {
			before(i, margin, d.y, high)
		}
		d.y += high
		d.Line(margin, d.y, margin+d.wide, d.y, ruleLine)
	}
}

// mostLines is how many lines a cell may have before it is cut.
const mostLines = 6

// rowOf sets a row from the present height on, or measures it.
func (d *drafting) rowOf(columns []column, row []string, set func(x, y unit.MM, line string)) (high unit.MM) {
	x := margin
	for i, cell := range row {
		lines := d.Wrap(body, columns[i].wide-1.5, cell)
		if len(lines) > mostLines {
			lines = append(lines[:mostLines-1], d.Cut(body, columns[i].wide-1.5, lines[mostLines-1]+"…"))
		}
		high = max(high, unit.MM(len(lines))*body.Leading()+1.2)
		for k, l := range lines {
			if set != nil {
				set(x, d.y+3.3+unit.MM(k)*body.Leading(), l)
			}
		}
		x += columns[i].wide
	}
	return high
}

// colourNumbers is every colour in numbers.
func (d *drafting) colourNumbers() {
	d.title("Colours in numbers", "CIELAB for illuminant D50 and the 2° observer, reckoned from the screen colour (sRGB, IEC 61966-2-1)")
	rest := d.wide - 7 - 10 - 15 - 22 - 13 - 13 - 13 - 14
	columns := []column{{7, "No"}, {10, ""}, {rest * 0.55, "Colour"}, {15, "Hex"}, {22, "R, G, B"}, {13, "L*"}, {13, "a*"}, {13, "b*"}, {14, "Share"}, {rest * 0.45, "Maker’s code, finish"}}
	colours := d.s.colours()
	var rows [][]string
	for _, c := range colours {
		lab := c.RGB.LabD50()
		share := fmt.Sprintf("%.1f %%", c.Share*100)
		row := []string{
			strconv.Itoa(c.No), "", c.Name, c.RGB.Hex(), fmt.Sprintf("%d, %d, %d", c.RGB.R, c.RGB.G, c.RGB.B),
			signed(lab.L), signed(lab.A), signed(lab.B), share, codeWords(c) + ", " + finishOf(c),
		}
		if c.Role == reduce.Metal {
			row = []string{strconv.Itoa(c.No), "", c.Name + ": all metal", "–", "–", "–", "–", "–", share, metalFinish(c.Finish)}
			if c.Share == 0 {
				row[8] = "–"
			}
		}
		rows = append(rows, row)
	}
	d.table(columns, rows, func(i int, x, y, high unit.MM) { d.swatch(x+7, y, 8, min(high, rowHigh), colours[i].RGB) })
	d.y++
	d.paragraph(small, "Where no code is given, take the nearest of your chart and name it in the proof. The swatches are a guide for the screen: light, plating and firing shift every colour.")
}

func signed(v float64) string {
	s := strconv.FormatFloat(v, 'f', 1, 64)
	if s == "-0.0" {
		s = "0.0"
	}
	return strings.Replace(s, "-", "−", 1)
}

// longFacts are what the first page had to shorten.
func (d *drafting) longFacts() {
	for _, f := range d.long {
		d.title(f.of+", as a whole", "")
		for _, l := range d.Wrap(body, d.wide, f.says) {
			d.room(body.Leading() + 2)
			d.Text(margin, d.y+3, body, l)
			d.y += body.Leading()
		}
	}
}

// spots lists trouble spots: those that stand in the way first.
func (d *drafting) spots() {
	var open, notes []AskedSpot
	for _, s := range d.s.Asked.Spots {
		if Open(&s.Finding) {
			open = append(open, s)
		} else {
			notes = append(notes, s)
		}
	}
	if len(open) == 0 {
		d.title("Open trouble spots", "none: every line and area is as wide as the limits below ask")
	} else {
		d.title("Open trouble spots", "places are of the front, from the left and the top of its outline")
		d.spotMap(open)
		d.spotTable(open)
	}
	if len(notes) > 0 {
		d.title("Notes", "nothing here keeps the pin from being made")
		d.spotTable(notes)
	}
}

func (d *drafting) spotTable(all []AskedSpot) {
	rest := d.wide - 7 - 30 - 24 - 24
	columns := []column{{7, "No"}, {rest * 0.55, "What"}, {30, "Where"}, {24, "Measured"}, {24, "Limit"}, {rest * 0.45, "Verdict"}}
	var rows [][]string
	for _, s := range all {
		what := SpotName(&s.Finding)
		if s.Colour != "" {
			what += ", " + s.Colour
		}
		if s.Count > 1 {
			what += fmt.Sprintf(" (%d places)", s.Count)
		}
		where := fmt.Sprintf("%s; %s", unit.InMM(s.Left, 1), unit.InMM(s.Top, 1))
		rows = append(rows, []string{strconv.Itoa(s.No), what, where, orDash(SpotMeasured(&s.Finding, d.s.Units)), orDash(SpotLimit(&s.Finding, d.s.Units)), verdictNames[s.Verdict]})
	}
	d.table(columns, rows, nil)
}

func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

// mapHigh is the greatest height of the map.
const mapHigh unit.MM = 40

// spotMap shows where open spots lie.
func (d *drafting) spotMap(all []AskedSpot) {
	sh := d.s.Shapes
	high := min(mapHigh, d.foot-d.y-20)
	scale := neatScale(min(float64(d.wide*0.6/sh.Width), float64(high/sh.Height)))
	if high < 30 {
		d.sheet()
		scale = neatScale(min(float64(d.wide*0.6/sh.Width), float64(mapHigh/sh.Height)))
	}
	stand := Stand{X: margin + d.wide*0.2, Y: d.y + 2, Scale: scale}
	d.Fill(sh, stand, plate, sh.Metal.Areas...)
	d.Stroke(sh, stand, edgeLine, sh.Outline.Areas...)
	for i := range sh.Enamel {
		d.Stroke(sh, stand, edgeLine, sh.Enamel[i].Areas...)
	}
	d.flags(all, stand)
	d.y += sh.Height*unit.MM(scale) + 5
}

// flags marks spots with their numbers; one that would lie on another is a dot
// alone.
func (d *drafting) flags(all []AskedSpot, stand Stand) {
	t := Type{Size: 6.5, Weight: Strong, Colour: alarm}
	var taken [][4]unit.MM
	for _, s := range all {
		x, y := stand.At(d.s.Shapes, s.Left, s.Top)
		d.Circle(x, y, 0.5, &alarm, nil)
		w, h := d.Width(t, strconv.Itoa(s.No)), t.Cap()
		for turn := range 16 {
			far := unit.MM(2.2 + 1.6*float64(turn/8))
			a := float64(turn%8) * math.Pi / 4
			cx, cy := x+far*unit.MM(math.Cos(a)), y-far*unit.MM(math.Sin(a))
			b := [4]unit.MM{cx - w/2 - 0.4, cy - h/2 - 0.4, cx + w/2 + 0.4, cy + h/2 + 0.4}
			if overlaps(taken, b) {
				continue
			}
			taken = append(taken, b)
			d.Rect(b[0], b[1], b[2]-b[0], b[3]-b[1], &paper, nil)
			d.Text(cx-w/2, cy+h/2, t, strconv.Itoa(s.No))
			break
		}
	}
}

func overlaps(all [][4]unit.MM, b [4]unit.MM) bool {
	for _, a := range all {
		if a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3] {
			return true
		}
	}
	return false
}

// limits is what the spots were held against.
func (d *drafting) limits() {
	d.title("Limits used", "change what your die does not hold, and tell us")
	l, u := &d.s.Asked.Limits, d.s.Units
	var all []fact
	add := func(of string, m unit.MM) {
		if m > 0 {
			all = append(all, fact{of, u.Say(m)})
		}
	}
	add("thinnest metal line", l.Line)
	add("narrowest colour area", l.Area)
	add("outer edge", l.Edge)
	if l.AreaSize > 0 {
		all = append(all, fact{"smallest colour area", u.SayArea(l.AreaSize)})
	}
	add("lowest capitals, raised", l.Lettering)
	add("lowest capitals, sunk", l.LetteringSunk)
	add("smallest cut-out", l.CutOut)
	add("narrowest bridge", l.Bridge)
	add("least radius of a tip", l.Tip)
	if l.Push > 0 {
		all = append(all, fact{"push that an arm stands", strconv.FormatFloat(l.Push, 'f', -1, 64) + " N"})
	}
	if d.s.Asked.Item.Parts > 1 {
		add("hole for a ring", l.Eye)
		add("metal round that hole", l.EyeRim)
	}
	d.pairs(all)
}

// pairs sets short facts in three columns.
func (d *drafting) pairs(all []fact) {
	const across = 3
	wide := d.wide / across
	rows := (len(all) + across - 1) / across
	d.room(unit.MM(rows)*body.Leading() + 4)
	for i, f := range all {
		x, y := margin+wide*unit.MM(i/rows), d.y+3.5+unit.MM(i%rows)*body.Leading()
		d.Text(x, y, small, f.of)
		d.Text(x+wide*0.62, y, body, f.says)
	}
	d.y += unit.MM(rows)*body.Leading() + 3
}

// cautions are those that the pin calls for, with their clauses.
func (d *drafting) cautions() {
	if len(d.s.Cautions) == 0 {
		return
	}
	d.title("Cautions", "general guidance, not advice on the law: the law of the place of sale and a qualified test house decide")
	for _, c := range d.s.Cautions {
		text, rules := strings.TrimSpace(c.Says+" "+c.Do), rulesOf(c.Rules)
		lines := len(d.Wrap(body, d.wide, text)) + len(d.Wrap(small, d.wide, rules))
		d.room(min(unit.MM(lines)*body.Leading(), 60))
		d.paragraph(body, text)
		if rules != "" {
			d.paragraph(small, rules)
		}
		d.y += 1
	}
}

// rulesOf names clauses and their numbers.
func rulesOf(rules []caution.Rule) string {
	var all []string
	for _, r := range rules {
		words := fmt.Sprintf("%s: %s, %s", r.Place, r.Clause, r.What)
		if r.Value != "" {
			words += " " + r.Value + " " + r.Unit
		}
		if r.Value2 != "" {
			words += " (" + r.Value2 + " " + r.Unit2 + ")"
		}
		if r.Memory {
			words += " [from memory, look it up]"
		}
		all = append(all, words)
	}
	return strings.Join(all, "; ")
}

// paragraph sets text that may go on over the page.
func (d *drafting) paragraph(t Type, s string) {
	for _, l := range d.Wrap(t, d.wide, s) {
		d.room(t.Leading() + 1)
		d.y += t.Leading()
		d.Text(margin, d.y, t, l)
	}
}
