package sheet

import (
	"fmt"
	"math"
	"strconv"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

// The first page from the top: the front enlarged and numbered beside the table
// of colours; front and back at true size with the posts; the facts in two
// columns; what may be changed, and the proving bar. What the lower three leave
// is the enlarged front's.

// Measures of the first page, mm.
const (
	gutter    unit.MM = 5  // between what stands side by side
	barHigh   unit.MM = 12 // of the proving bar and its words
	leastView unit.MM = 46 // the enlarged front is never lower
	dimRoom   unit.MM = 9  // for a line of dimension beside a view
	mostTrue  unit.MM = 92 // the highest true size that the first page takes
)

func (d *drafting) first() {
	d.apart = !d.trueFits()
	rules, facts := d.rulesText(), d.facts()
	foot := d.foot - barHigh
	rulesHigh := d.rulesHigh(rules)
	factsHigh := d.factsHigh(facts)
	trueHigh := d.trueHigh()
	room := foot - d.y - rulesHigh - factsHigh - trueHigh
	view := max(room, leastView)
	table := d.columns()
	d.numbered(margin, d.y, d.wide-table.wide()-gutter, view)
	d.colourTable(margin+d.wide-table.wide(), d.y, view, table)
	d.y += view
	d.trueBand(trueHigh)
	d.factsBlock(facts)
	d.rulesBlock(rules)
	d.bar(foot)
}

// trueFits says whether front and back stand side by side on the first page.
func (d *drafting) trueFits() bool {
	sh := d.s.Shapes
	return 2*sh.Width+dimRoom+2*gutter <= d.wide && sh.Height <= mostTrue
}

// trueHigh is the height of the band with the true size, or of the back made to
// fit.
func (d *drafting) trueHigh() unit.MM {
	if d.apart {
		return 72
	}
	high := d.s.Shapes.Height + dimRoom + 10 + d.s.over()
	if d.postsBeside() {
		high = max(high, d.postsHigh()+9)
	}
	return high
}

// postsLeft is where the places of posts begin, right of the true size.
func (d *drafting) postsLeft() unit.MM {
	wide := d.s.Shapes.Width
	return margin + dimRoom + max(wide, 24) + 2*gutter + max(wide+2*gutter, 46)
}

// postsBeside says whether there is room for them there; else they stand among
// the facts.
func (d *drafting) postsBeside() bool { return d.apart || margin+d.wide-d.postsLeft() > 40 }

// trueBand shows front and back at true size, and the posts.
func (d *drafting) trueBand(high unit.MM) {
	d.rule()
	d.y += 4.5
	sh := d.s.Shapes
	x := margin
	if d.apart {
		scale := neatScale(min(float64((d.wide-62)/sh.Width), float64((high-14)/sh.Height)))
		d.head(x, d.y, d.wide, "Back, seen from behind", scaleWords(scale)+"; true size on the next sheets")
		stand := Stand{X: x + 2, Y: d.y + 3, Scale: scale, Mirrored: true}
		d.back(stand)
		d.posts(x+2+sh.Width*unit.MM(scale)+gutter+3, d.y+4)
	} else {
		x += dimRoom
		d.head(x, d.y, max(sh.Width+gutter, 30), "Front", "1:1, true size")
		top := d.y + 3 + d.s.over()
		front := Stand{X: x, Y: top, Scale: 1}
		d.front(front)
		d.dimensions(front)
		x += max(sh.Width, 24) + 2*gutter
		d.head(x, d.y, 44, "Back", "seen from behind, 1:1")
		d.back(Stand{X: x, Y: top, Scale: 1, Mirrored: true})
		if d.postsBeside() {
			d.posts(d.postsLeft(), d.y)
		}
	}
	d.y += high - 4.5
}

// front draws the pin in its colours, with its chain.
func (d *drafting) front(stand Stand) {
	sh := d.s.Shapes
	d.Art(sh, stand, d.look)
	d.Stroke(sh, stand, edgeLine, sh.Outline.Areas...)
	for i := range sh.Enamel {
		d.Stroke(sh, stand, edgeLine, sh.Enamel[i].Areas...)
	}
	d.cutOuts(stand)
	d.chain(stand)
}

// cutOuts crosses every hole, as drawings of parts do.
func (d *drafting) cutOuts(stand Stand) {
	sh := d.s.Shapes
	for _, a := range sh.CutOuts.Areas {
		b := boundsOf(sh, a)
		x0, y0 := stand.At(sh, b[0].X, b[0].Y)
		x1, y1 := stand.At(sh, b[1].X, b[1].Y)
		d.Within(sh, stand, []trace.Area{a}, func() {
			d.Line(x0, y0, x1, y1, thinLine)
			d.Line(x0, y1, x1, y0, thinLine)
		})
	}
}

// boundsOf is a box that holds an area.
func boundsOf(sh *trace.Shapes, a trace.Area) [2]trace.Point {
	b := [2]trace.Point{{X: 1e9, Y: 1e9}, {X: -1e9, Y: -1e9}}
	hold := func(p trace.Point) {
		b[0].X, b[0].Y = min(b[0].X, p.X), min(b[0].Y, p.Y)
		b[1].X, b[1].Y = max(b[1].X, p.X), max(b[1].Y, p.Y)
	}
	sh.Walk(trace.Walker{Move: hold, Line: hold, Curve: func(c1, c2, to trace.Point) { hold(c1); hold(c2); hold(to) }, Close: func() {}}, a)
	return b
}

// dimensions draws width and height beside a front at true size.
func (d *drafting) dimensions(stand Stand) {
	sh := d.s.Shapes
	x0, y0, x1, y1 := stand.X, stand.Y, stand.X+sh.Width, stand.Y+sh.Height
	below, left := y1+4.5, x0-4.5
	d.Line(x0, y1+1, x0, below+1, thinLine)
	d.Line(x1, y1+1, x1, below+1, thinLine)
	d.Line(x0-1, y0, left-1, y0, thinLine)
	d.Line(x0-1, y1, left-1, y1, thinLine)
	d.arrows(x0, below, x1, below)
	d.arrows(left, y0, left, y1)
	d.Centred((x0+x1)/2, below+3.2, small, unit.InMM(sh.Width, 2))
	d.upright(left-1.2, (y0+y1)/2, small, unit.InMM(sh.Height, 2))
}

// arrows draws a line of dimension, its heads outward.
func (d *drafting) arrows(x0, y0, x1, y1 unit.MM) {
	d.Line(x0, y0, x1, y1, thinLine)
	const long, half = 1.6, 0.35
	if x1-x0+y1-y0 < 2*long {
		return
	}
	if y0 == y1 {
		d.Polygon([][2]unit.MM{{x0, y0}, {x0 + long, y0 - half}, {x0 + long, y0 + half}}, &black, nil)
		d.Polygon([][2]unit.MM{{x1, y1}, {x1 - long, y1 - half}, {x1 - long, y1 + half}}, &black, nil)
		return
	}
	d.Polygon([][2]unit.MM{{x0, y0}, {x0 - half, y0 + long}, {x0 + half, y0 + long}}, &black, nil)
	d.Polygon([][2]unit.MM{{x1, y1}, {x1 - half, y1 - long}, {x1 + half, y1 - long}}, &black, nil)
}

// largestScale is the most that a view is enlarged.
const largestScale = 20

// neatScale is the largest scale up to one that is said in a short number: in
// tenths for an enlarged view, and one to so many tenths for one made smaller.
func neatScale(most float64) float64 {
	if most >= 1 {
		return min(largestScale, math.Floor(most*10)/10)
	}
	return 10 / math.Ceil(10/most)
}

func scaleWords(s float64) string {
	if s >= 1 {
		return strconv.FormatFloat(s, 'f', -1, 64) + ":1"
	}
	return "1:" + strconv.FormatFloat(1/s, 'f', 1, 64)
}

// bar is the proving bar.
func (d *drafting) bar(y unit.MM) {
	const long unit.MM = 50
	d.y = y
	d.rule()
	x, top := margin, y+4
	for i := range 10 {
		fill := []colour.RGB8{black, paper}[i%2]
		d.Rect(x+unit.MM(i)*long/10, top, long/10, 1.8, &fill, nil)
	}
	d.Rect(x, top, long, 1.8, nil, &edgeLine)
	d.Text(x, top+5, small, "0")
	d.Right(x+long, top+5, small, "50 mm")
	d.Text(x+long+gutter, y+4.6, strong, "Print at 100 percent.")
	d.Block(x+long+gutter, y+8.2, d.wide-long-gutter, small,
		"Choose “actual size” and switch off every fitting to the page. Then lay a ruler on the bar: it measures exactly 50 mm, and true size is true.")
}

// trueSheets print a pin too large for the first page, a view on each.
func (d *drafting) trueSheets() {
	sh := d.s.Shapes
	for _, behind := range []bool{false, true} {
		d.sheet()
		title := "Front, true size 1:1"
		if behind {
			title = "Back, seen from behind, true size 1:1"
		}
		high, wide := d.foot-barHigh-d.y-10, d.wide-dimRoom
		more := fmt.Sprintf("%s wide, %s high", unit.InMM(sh.Width, 2), unit.InMM(sh.Height, 2))
		if fits := sh.Width <= wide && sh.Height <= high; !fits {
			more += "; larger than this sheet, so only its upper left is shown. Take the whole from the layers"
			if !behind {
				d.notes = append(d.notes, "At true size the pin is larger than the paper: what fits of it is printed. Send the layers along, which are whole.")
			}
		}
		d.head(margin, d.y+3, d.wide, title, more)
		stand := Stand{X: margin + dimRoom, Y: d.y + 6, Scale: 1, Mirrored: behind}
		d.Clip(margin, d.y+5, d.wide, d.foot-barHigh-d.y-6, func() {
			if behind {
				d.back(stand)
			} else {
				d.front(stand)
				d.dimensions(stand)
			}
		})
		d.bar(d.foot - barHigh)
	}
}

// chain draws the rings and links that its parts hang by.
func (d *drafting) chain(stand Stand) {
	b := d.s.Badge
	for _, l := range d.s.Chain {
		d.link(stand, b, l)
	}
}

func (d *drafting) link(stand Stand, b *sizing.Badge, l sizing.Loop) {
	x, y := stand.At(d.s.Shapes, b.Scale.MM(l.X-b.Outline[0]), b.Scale.MM(l.Y-b.Outline[1]))
	k := unit.MM(stand.Scale)
	turn := -degreesOf(l.Angle)
	if stand.Mirrored {
		turn = -turn
	}
	wire := b.Scale.MM(l.Wire) * k
	long, wide := b.Scale.MM(l.Long)*k/2-wire/2, b.Scale.MM(l.Wide)*k/2-wire/2
	for _, p := range []Pen{{Width: wire, Colour: black}, {Width: max(wire-0.2, 0.05), Colour: d.s.Metal}} {
		d.pen(p)
		d.pdf.Ellipse(float64(x), float64(y), float64(long), float64(max(wide, 0.05)), turn, "D")
	}
}
