package canvas

import (
	"fmt"
	"image/color"
	"math"

	"badgewright/sizing"
	"badgewright/sizing/ink"
	"badgewright/sizing/unit"
)

// Art says how trouble spots, which lie in working pixels, come to lie on the
// file they were found in.
type Art struct {
	// W and H are the picture that the marks are to lie over, px.
	W, H int
	// A working place (x, y) lies at (X + KX x, Y + KY y) of it.
	X, Y, KX, KY float64
	Scale        unit.PxPerMM // working px per mm
}

// Marks are doubly drawn, a bright line on a dark one, and so are seen on
// anything; what fails is red, what cannot be told amber, a note blue.
var (
	markDark = color.NRGBA{R: 0x08, G: 0x05, B: 0x05, A: 255}
	markInks = map[sizing.Verdict]color.NRGBA{
		sizing.Fails:      {R: 0xff, G: 0x90, B: 0x80, A: 255},
		sizing.CannotTell: {R: 0xff, G: 0xc4, B: 0x2e, A: 255},
		sizing.Holds:      {R: 0x6c, G: 0xbe, B: 0xff, A: 255},
	}
)

// The marks' sizes are shares of the picture's long side, so that they look
// alike on every picture; and what must be seen is some pixels at least.
const (
	penShare   = 1.0 / 620
	leastPen   = 1.5
	numberPens = 8 // height of numbers, in pens
	airPens    = 1.6
	alonePens  = 9 // round a place that stands for many
)

// marks is a picture of marks being drawn.
type marks struct {
	*ink.Sheet
	art   Art
	pen   float64 // width of the coloured line, px
	ways  []way
	taken [][4]float64
}

// Marks draws each trouble spot as an outline round its way, which is left open
// for the artist to see what is meant, and its number, counted from 1, beside
// it. The rest is transparent.
func Marks(art Art, spots []sizing.Finding) *ink.Sheet {
	m := &marks{Sheet: &ink.Sheet{W: art.W, H: art.H}, art: art}
	m.pen = max(leastPen, penShare*float64(max(art.W, art.H)))
	for i := range spots {
		m.ways = append(m.ways, m.wayOf(&spots[i]))
	}
	// The first are the worst: they are drawn last and lie on top.
	for i := len(spots) - 1; i >= 0; i-- {
		m.outline(m.ways[i], markInks[spots[i].Verdict])
	}
	labels := make([]label, len(spots))
	for i := range spots {
		labels[i] = m.place(i, fmt.Sprint(i+1))
	}
	for i := len(spots) - 1; i >= 0; i-- {
		m.number(labels[i], markInks[spots[i].Verdict])
	}
	return m.Sheet
}

// way is where a spot lies on the picture, and how far round it the mark runs;
// 0 draws the way itself.
type way struct {
	path  []ink.Point
	round float64
	at    ink.Point // its worst place
	off   float64   // how far from there its number keeps, px
}

func (m *marks) on(x, y float64) ink.Point {
	a := m.art
	return ink.Point{X: a.X + float64(a.KX*x), Y: a.Y + float64(a.KY*y)}
}

// wayOf returns the way of a spot. One without a path is marked by its box, and
// one that sums up many at its worst place.
func (m *marks) wayOf(f *sizing.Finding) way {
	w := way{at: m.on(f.X, f.Y)}
	for i := 0; i+1 < len(f.Path); i += 2 {
		w.path = append(w.path, m.on(float64(f.Path[i]), float64(f.Path[i+1])))
	}
	k := max(m.art.KX, m.art.KY)
	w.round = airPens*m.pen + f.Typical.Px(m.art.Scale)*k/2
	w.off = w.round
	switch {
	case len(w.path) > 0:
	case f.Count > 1:
		w.path, w.round, w.off = []ink.Point{w.at}, alonePens*m.pen, alonePens*m.pen
	default:
		a, b := m.on(f.X0, f.Y0), m.on(f.X1, f.Y1)
		air := airPens * m.pen // the ellipse passes the corners of the box
		rx, ry := (b.X-a.X)/2*math.Sqrt2+air, (b.Y-a.Y)/2*math.Sqrt2+air
		w.path, w.round, w.off = ink.Ring((a.X+b.X)/2, (a.Y+b.Y)/2, rx, ry), 0, max(rx, ry)
	}
	return w
}

// outline draws the edge of everything within reach of a way.
func (m *marks) outline(w way, c color.NRGBA) {
	far := w.round
	dark, bright := ink.Band{From: far - 0.5*m.pen, To: far + 1.5*m.pen, Ink: markDark}, ink.Band{From: far, To: far + m.pen, Ink: c}
	if far == 0 {
		dark, bright = ink.Line(2*m.pen, markDark), ink.Line(m.pen, c)
	}
	m.Stroke([][]ink.Point{w.path}, dark, bright)
}

// label is a number and where it stands.
type label struct {
	text     string
	x, y     float64 // its middle
	from, to ink.Point
}

// box of a label, with its ground, px.
func (m *marks) box(text string, x, y float64) [4]float64 {
	h := (numberPens + 5) * m.pen
	w := max(h, ink.TextWidth(text, numberPens*m.pen)+8*m.pen)
	return [4]float64{x - w/2, y - h/2, x + w/2, y + h/2}
}

// Numbers are looked for room in so many directions, ring by ring.
const (
	directions = 16
	rings      = 14
)

// place finds room for a number near its spot: in the picture, off the other
// numbers, and as near as may be.
func (m *marks) place(spot int, text string) label {
	w := &m.ways[spot]
	best, least := [4]float64{}, math.Inf(1)
	var at ink.Point
	for ring := range rings {
		for d := range directions {
			sin, cos := math.Sincos(2*math.Pi*float64(d)/directions - math.Pi/3)
			far := w.off + float64(9+6*ring)*m.pen
			x, y := m.inside(text, w.at.X+float64(far*cos), w.at.Y+float64(far*sin))
			b := m.box(text, x, y)
			if cost := m.cost(b) + further*float64(ring*directions+d); cost < least {
				best, least, at = b, cost, ink.Point{X: x, Y: y}
			}
		}
		if least < hidesSpot {
			break
		}
	}
	m.taken = append(m.taken, best)
	from, far := w.nearest(at)
	if far > w.round {
		from = ink.Point{X: from.X + float64((at.X-from.X)*w.round/far), Y: from.Y + float64((at.Y-from.Y)*w.round/far)}
	}
	return label{text, at.X, at.Y, from, at}
}

// nearest returns the place of a way that is nearest to another, and how far.
func (w *way) nearest(p ink.Point) (at ink.Point, far float64) {
	far = math.Inf(1)
	for i, a := range w.path {
		b := w.path[min(i+1, len(w.path)-1)]
		dx, dy := b.X-a.X, b.Y-a.Y
		t := 0.0
		if long := float64(dx*dx) + float64(dy*dy); long > 0 {
			t = min(max((float64((p.X-a.X)*dx)+float64((p.Y-a.Y)*dy))/long, 0), 1)
		}
		q := ink.Point{X: a.X + float64(t*dx), Y: a.Y + float64(t*dy)}
		if d := p.To(q); d < far {
			at, far = q, d
		}
	}
	return at, far
}

// inside moves a number's middle so that it is not cut off.
func (m *marks) inside(text string, x, y float64) (float64, float64) {
	b := m.box(text, 0, 0)
	return min(max(x, b[2]), float64(m.W)-b[2]), min(max(y, b[3]), float64(m.H)-b[3])
}

// What a number would rather not do: hide another, hide a spot, and stand
// further off than the first place that was tried.
const (
	hidesNumber = 1.0
	hidesSpot   = 0.5 // which is seen all the same by its colour
	further     = hidesSpot / (directions * rings)
)

func (m *marks) cost(b [4]float64) float64 {
	sum := 0.0
	for _, t := range m.taken {
		if b[0] < t[2] && t[0] < b[2] && b[1] < t[3] && t[1] < b[3] {
			sum += hidesNumber
		}
	}
	middle := ink.Point{X: (b[0] + b[2]) / 2, Y: (b[1] + b[3]) / 2}
	for i := range m.ways {
		w := &m.ways[i]
		if _, far := w.nearest(middle); far < w.round+airPens*m.pen+(b[2]-b[0])/2 {
			sum += hidesSpot
		}
	}
	return sum
}

// number draws a number on its ground, and a leader from there to its spot.
func (m *marks) number(l label, c color.NRGBA) {
	m.Stroke([][]ink.Point{{l.from, l.to}}, ink.Line(2.2*m.pen, markDark), ink.Line(0.8*m.pen, c))
	h := numberPens * m.pen
	b := m.box(l.text, l.x, l.y)
	half := (b[3] - b[1]) / 2
	spine := []ink.Point{{X: b[0] + half, Y: l.y}, {X: b[2] - half, Y: l.y}}
	m.Stroke([][]ink.Point{spine}, ink.Line(2*half, markDark), ink.Line(2*half-1.6*m.pen, c))
	at := ink.Point{X: l.x, Y: l.y + h/2}
	m.Stroke(ink.TextPaths(l.text, at, h, ink.Middle), ink.Line(1.7*m.pen, markDark))
}
