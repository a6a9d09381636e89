package canvas

import (
	"fmt"
	"image/color"
	"math"

	"badgewright/sizing"
	"badgewright/sizing/ink"
	"badgewright/sizing/unit"
)

// The inks of the guide stand out from white and from black alike (contrast
// above 4 to each), because nobody knows what will lie under it.
var (
	blue  = color.NRGBA{R: 0x2f, G: 0x78, B: 0xc4, A: 255} // the pin's outside
	brass = color.NRGBA{R: 0x9a, G: 0x74, B: 0x20, A: 255} // scale
	grey  = color.NRGBA{R: 0x76, G: 0x76, B: 0x76, A: 255} // samples and words
	white = color.NRGBA{R: 255, G: 255, B: 255, A: 255}
)

// How much the squares show: enough to measure by, not so much as to draw on.
const (
	faintAlpha  = 64
	markedAlpha = 120
)

// markedMM is the distance of the lines and ticks that are marked.
const markedMM = 5

// Sample is where on a guide a limit is shown at its true size: the box that
// holds it, and nothing else, in px.
type Sample struct {
	Key            NeedKey
	X0, Y0, X1, Y1 float64
}

// Guide is a picture of a canvas with its scale, the pin's box and samples of
// what the maker holds: a layer to draw over.
type Guide struct {
	*ink.Sheet
	Samples []Sample
}

// guide is one being drawn.
type guide struct {
	Guide
	p    *Plan
	c    Canvas
	text float64 // height of capitals, px
	thin float64 // width of the finest lines, px
}

// Sizes on the guide, mm.
const (
	textMM     unit.MM = 0.6
	tickMM     unit.MM = 0.5
	longTickMM unit.MM = 0.95
	airMM      unit.MM = 0.35
)

// leastText is the height of capitals, px, below which nobody reads them: they
// are left out.
const leastText = 6

// Guide draws the guide of a canvas, on white or on nothing.
func (p *Plan) Guide(c Canvas, onWhite bool) Guide {
	g := &guide{p: p, c: c, text: textMM.Px(c.Scale), thin: max(1, math.Round(0.03*float64(c.Scale)))}
	g.Sheet = &ink.Sheet{W: c.W, H: c.H}
	if onWhite {
		g.Ground = white
	}
	g.squares()
	g.rulers()
	g.box()
	g.words()
	g.samples()
	return g.Guide
}

// line draws an upright or level line of whole pixels, so that it is sharp.
func (g *guide) line(x0, y0, x1, y1, width float64, c color.NRGBA) {
	half := width / 2
	x0, y0, x1, y1 = min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)
	if x0 == x1 {
		x0 = math.Round(x0 - half)
		x1 = x0 + width
	} else {
		y0 = math.Round(y0 - half)
		y1 = y0 + width
	}
	g.Bar(x0, y0, x1, y1, c)
}

// squares draws the inside of the box in squares of a millimetre.
func (g *guide) squares() {
	if g.c.Scale < 3*unit.PxPerMM(g.thin) {
		return // it would be a haze
	}
	x0, y0, x1, y1 := g.corners()
	for k := 1; ; k++ {
		at, c := unit.MM(k).Px(g.c.Scale), shade(k)
		if x0+at >= x1 && y0+at >= y1 {
			break
		}
		if x0+at < x1 {
			g.line(x0+at, y0, x0+at, y1, g.thin, c)
		}
		if y0+at < y1 {
			g.line(x0, y0+at, x1, y0+at, g.thin, c)
		}
	}
}

func shade(k int) color.NRGBA {
	c := brass
	c.A = faintAlpha
	if k%markedMM == 0 {
		c.A = markedAlpha
	}
	return c
}

func (g *guide) corners() (x0, y0, x1, y1 float64) {
	return float64(g.c.X0), float64(g.c.Y0), float64(g.c.X1), float64(g.c.Y1)
}

// rulers marks millimetres outside the box, numbered at the left and the foot.
func (g *guide) rulers() {
	x0, y0, x1, y1 := g.corners()
	for k := 0; ; k++ {
		at := unit.MM(k).Px(g.c.Scale)
		if x0+at > x1+0.5 && y0+at > y1+0.5 {
			return
		}
		marked := k%markedMM == 0
		long := tickMM.Px(g.c.Scale)
		if marked {
			long = longTickMM.Px(g.c.Scale)
		}
		if x0+at <= x1+0.5 {
			g.line(x0+at, y1, x0+at, y1+long, g.thin, brass)
			g.line(x0+at, y0-long, x0+at, y0, g.thin, brass)
			if marked {
				g.letter(fmt.Sprint(k), x0+at, y1+long+airMM.Px(g.c.Scale)+g.text, g.text, ink.Middle, brass)
			}
		}
		if y0+at <= y1+0.5 {
			g.line(x0-long, y0+at, x0, y0+at, g.thin, brass)
			g.line(x1, y0+at, x1+long, y0+at, g.thin, brass)
			if marked {
				g.letter(fmt.Sprint(k), x0-long-airMM.Px(g.c.Scale), y0+at+g.text/2, g.text, ink.Right, brass)
			}
		}
	}
}

// letter draws words that can be read, and no others.
func (g *guide) letter(text string, x, y, height float64, align ink.Align, c color.NRGBA) {
	if height >= leastText {
		g.Text(text, ink.Point{X: x, Y: y}, height, align, c)
	}
}

// SafeZone is how far inside the outline detail should stay: past the outer
// edge, and the narrowest area beside it.
func (p *Plan) SafeZone() unit.MM {
	if p.Fill == sizing.Unfilled {
		return p.Limits.Edge
	}
	return p.Limits.Edge + p.Limits.Area
}

// box draws the outside of the pin, its middle, and the safe zone in dashes.
func (g *guide) box() {
	x0, y0, x1, y1 := g.corners()
	w := 2 * g.thin
	for _, x := range []float64{x0, x1} {
		g.line(x, y0-g.thin, x, y1+g.thin, w, blue)
	}
	for _, y := range []float64{y0, y1} {
		g.line(x0-g.thin, y, x1+g.thin, y, w, blue)
	}
	safe := g.p.SafeZone().Px(g.c.Scale)
	if inset := min(x1-x0, y1-y0); 2*safe < inset {
		path := []ink.Point{{X: x0 + safe, Y: y0 + safe}, {X: x1 - safe, Y: y0 + safe}, {X: x1 - safe, Y: y1 - safe}, {X: x0 + safe, Y: y1 - safe}, {X: x0 + safe, Y: y0 + safe}}
		dash := unit.MM(0.5).Px(g.c.Scale)
		g.Stroke(ink.Dashed(path, dash, dash), ink.Line(1.5*g.thin, blue))
	}
	mid := unit.MM(1).Px(g.c.Scale)
	cx, cy := (x0+x1)/2, (y0+y1)/2
	g.line(cx-mid, cy, cx+mid, cy, g.thin, blue)
	g.line(cx, cy-mid, cx, cy+mid, g.thin, blue)
}

// words says at the head what the guide is of, and at the foot how to read it.
func (g *guide) words() {
	long := longTickMM.Px(g.c.Scale)
	g.across(g.title(), (float64(g.c.Y0)-long)/2, 1.25*g.text, blue)
	foot := (float64(g.c.Y1) + long + airMM.Px(g.c.Scale) + g.text + float64(g.c.H)) / 2
	g.across("solid: outside of the pin · dashed: keep detail inside · squares: 1 mm · draw on a layer of its own, hide this one", foot, g.text, grey)
}

func (g *guide) title() string {
	return fmt.Sprintf("%s · %s · %d × %d px · %s = 1 mm", unit.InBoth(g.p.Size), madeWords(g.p), g.c.W, g.c.H, tenth(float64(g.c.Scale)))
}

func madeWords(p *Plan) string {
	fill := map[sizing.Fill]string{sizing.Soft: "soft enamel", sizing.Hard: "hard enamel", sizing.Unfilled: "no fill"}[p.Fill]
	return string(p.Making) + ", " + fill
}

// across letters a line across the canvas about a height, smaller if it must be.
func (g *guide) across(text string, y, height float64, c color.NRGBA) {
	room := float64(g.c.W) - 2*airMM.Px(g.c.Scale)
	if w := ink.TextWidth(text, height); w > room {
		height *= room / w
	}
	g.letter(text, float64(g.c.W)/2, y+height/2, height, ink.Middle, c)
}
