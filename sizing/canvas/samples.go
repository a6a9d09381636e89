package canvas

import (
	"fmt"
	"math"

	"badgewright/sizing/ink"
	"badgewright/sizing/unit"
)

// column is one of the two columns of samples beside the box.
type column struct {
	x, wide float64 // middle, and what it may take, px
	keys    []NeedKey
}

// numbersMM is what the numbers of the ruler take at the left.
const numbersMM unit.MM = 1.5

// samples shows each limit at its true size, with its name and its pixels.
func (g *guide) samples() {
	air := airMM.Px(g.c.Scale)
	left := float64(g.c.X0) - (longTickMM + airMM + numbersMM).Px(g.c.Scale)
	right := float64(g.c.X1) + longTickMM.Px(g.c.Scale)
	columns := [2]column{
		{left / 2, left - 2*air, []NeedKey{NeedLine, NeedGap, NeedEdge, NeedArea}},
		{(right + float64(g.c.W)) / 2, float64(g.c.W) - right - 2*air, []NeedKey{NeedCutOut, NeedBridge, NeedCapitals, NeedSunk}},
	}
	needs := map[NeedKey]Need{}
	for _, n := range g.p.Needs(g.c) {
		needs[n.Key] = n
	}
	for _, c := range columns {
		g.column(c, needs)
	}
}

func (g *guide) column(c column, needs map[NeedKey]Need) {
	top := float64(g.c.Y0) / 2
	high := (float64(g.c.H) - 2*top) / float64(len(c.keys))
	text := g.textOf(c, needs)
	for i, k := range c.keys {
		if n, ok := needs[k]; ok {
			g.sample(c, n, top+float64(i)*high, high, text)
		}
	}
}

// lines are what stands under a sample.
func (n Need) lines() []string {
	if n.Key == NeedArea {
		return []string{n.short, fmt.Sprintf("%d × %d", n.Px, n.Px), n.Beside}
	}
	return []string{n.short, n.Size, n.Beside}
}

// textOf is the height of capitals at which all words of a column fit it.
func (g *guide) textOf(c column, needs map[NeedKey]Need) float64 {
	size := g.text
	for _, k := range c.keys {
		for _, t := range needs[k].lines() {
			if w := ink.TextWidth(t, g.text); w > c.wide {
				size = min(size, g.text*c.wide/w)
			}
		}
	}
	return size
}

// leading is the distance of two base lines, in heights of capitals.
const leading = 1.7

// sample draws one in the middle of its part of a column, with its words under
// it if they fit; one that does not fit itself is left out.
func (g *guide) sample(c column, n Need, top, high, text float64) {
	w, h := g.extent(n, c.wide)
	if w > c.wide || h > high {
		return
	}
	words, lead := n.lines(), leading*text
	all := h + lead*float64(len(words))
	if all > high || text < leastText {
		words, all = nil, h
	}
	y := top + (high-all)/2
	g.shape(n, c.x, y, w, h)
	g.Samples = append(g.Samples, Sample{n.Key, c.x - w/2, y, c.x + w/2, y + h})
	for i, t := range words {
		g.letter(t, c.x, y+h+lead*float64(i+1), text, ink.Middle, grey)
	}
}

// longMM is how long the samples of lines are, sideMM what stands on each side
// of a gap, and shoulderMM how far the parts that a bridge joins stick out.
const (
	longMM     unit.MM = 2
	sideMM     unit.MM = 0.3
	shoulderMM unit.MM = 0.5
)

// extent is the width and height of a sample, px.
func (g *guide) extent(n Need, wide float64) (w, h float64) {
	long := min(longMM.Px(g.c.Scale), wide)
	switch n.Key {
	case NeedLine, NeedEdge:
		return long, n.Exact
	case NeedGap:
		return long, n.Exact + 2*sideMM.Px(g.c.Scale)
	case NeedArea:
		return n.Exact, n.Exact
	case NeedCutOut:
		rim := 2 * g.p.Limits.Line.Px(g.c.Scale)
		return n.Exact + rim, n.Exact + rim
	case NeedBridge:
		return n.Exact + 2*shoulderMM.Px(g.c.Scale), longMM.Px(g.c.Scale)
	}
	return ink.TextWidth(lettering, n.Exact-g.pen(n)) + g.pen(n), n.Exact
}

// lettering is shown as a sample of capitals: by the height of this one they
// are measured.
const lettering = "H"

// pen is how wide the strokes of sample letters are: metal in enamel is a line,
// enamel in metal an area.
func (g *guide) pen(n Need) float64 {
	if n.Key == NeedSunk {
		return g.p.Limits.Area.Px(g.c.Scale)
	}
	return g.p.Limits.Line.Px(g.c.Scale)
}

// shape draws a sample about x from y down, to a fraction of a pixel.
func (g *guide) shape(n Need, x, y, w, h float64) {
	switch n.Key {
	case NeedGap:
		side := (h - n.Exact) / 2
		g.Bar(x-w/2, y, x+w/2, y+side, grey)
		g.Bar(x-w/2, y+h-side, x+w/2, y+h, grey)
	case NeedCutOut:
		r := n.Exact / 2
		g.Stroke([][]ink.Point{{{X: x, Y: y + h/2}}}, ink.Band{From: r, To: h / 2, Ink: grey})
	case NeedBridge:
		g.bridge(n, x, y, w, h)
	case NeedCapitals, NeedSunk:
		pen := g.pen(n)
		base := ink.Point{X: x, Y: y + h - pen/2}
		g.Stroke(ink.TextPaths(lettering, base, h-pen, ink.Middle), ink.Line(pen, grey))
	default:
		g.Bar(x-w/2, y, x+w/2, y+h, grey)
	}
}

// bridge draws two parts and the bridge that joins them.
func (g *guide) bridge(n Need, x, y, w, h float64) {
	deep := shoulderMM.Px(g.c.Scale)
	a, b := math.Round(y+deep), math.Round(y+h-deep) // no seam is seen at whole pixels
	g.Bar(x-w/2, y, x+w/2, a, grey)
	g.Bar(x-n.Exact/2, a, x+n.Exact/2, b, grey)
	g.Bar(x-w/2, b, x+w/2, y+h, grey)
}
