package proof

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"

	"badgewright/reduce"
	"badgewright/sizing/ink"
)

// The marks are doubly drawn, a bright line on a dark one, and so are seen on
// anything.
var (
	markDark   = color.NRGBA{R: 0x14, G: 0x06, B: 0x06, A: 255}
	markBright = color.NRGBA{R: 0xff, G: 0x5a, B: 0x48, A: 255}
	markPaper  = color.NRGBA{R: 0xff, G: 0xff, B: 0xff, A: 255}
)

// The marks' sizes are shares of the picture's long side.
const (
	penShare  = 1.0 / 560
	leastPen  = 1.6
	tallPens  = 9.0 // height of numbers, in pens
	besidePen = 7.0 // how far a mark keeps off what it marks
)

// Marked draws differences, each with its number, over the picture they were
// found in, and returns it as PNG.
func Marked(l *Laid, list []Deviation, progress reduce.Progress) ([]byte, error) {
	progress = orNone(progress)
	p := l.h.p
	sheet := &ink.Sheet{W: p.W, H: p.H}
	pen := max(leastPen, penShare*float64(max(p.W, p.H)))
	for i := range list {
		on := l
		if list[i].Behind && l.back != nil {
			on = l.back
		}
		on.mark(sheet, &list[i], pen)
	}
	over, err := sheet.PNG(0, func(share float64) error { return progress(0.7*share, "drawing the marks") })
	if err != nil {
		return nil, err
	}
	marks, err := png.Decode(bytes.NewReader(over))
	if err != nil {
		return nil, fmt.Errorf("proof: marks that cannot be read: %w", err)
	}
	img := image.NewNRGBA(image.Rect(0, 0, p.W, p.H))
	for i, c := range p.Pix {
		q := img.Pix[4*i : 4*i+4]
		q[0], q[1], q[2], q[3] = uint8(c), uint8(c>>8), uint8(c>>16), 255
	}
	draw.Draw(img, img.Rect, marks, image.Point{}, draw.Over)
	var out bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&out, img); err != nil {
		return nil, err
	}
	return out.Bytes(), progress(1, "drawing the marks")
}

// mark draws the way of a difference, or a ring round its box, and its number.
func (l *Laid) mark(s *ink.Sheet, x *Deviation, pen float64) {
	var path []ink.Point
	for i := 0; i+1 < len(x.Path); i += 2 {
		q := l.ToPicture(Point{float64(x.Path[i]), float64(x.Path[i+1])})
		path = append(path, ink.Point{X: q.X, Y: q.Y})
	}
	off := besidePen * pen
	if len(path) == 0 {
		path, off = l.ring(x), 0
	}
	dark, bright := ink.Band{From: off - pen, To: off + 2*pen, Ink: markDark}, ink.Band{From: off, To: off + pen, Ink: markBright}
	if off == 0 {
		dark, bright = ink.Line(3*pen, markDark), ink.Line(pen, markBright)
	}
	s.Stroke([][]ink.Point{path}, dark, bright)
	l.number(s, path, off+3*pen, fmt.Sprint(x.Number), pen)
}

func (l *Laid) ring(x *Deviation) []ink.Point {
	a, b := l.ToPicture(Point{x.Box[0], x.Box[1]}), l.ToPicture(Point{x.Box[2], x.Box[3]})
	mx, my := (a.X+b.X)/2, (a.Y+b.Y)/2
	r := dist(a, b)/2 + 4
	return ink.Ring(mx, my, r, r)
}

// number sets a number beside the uppermost place of a path, within the picture.
func (l *Laid) number(s *ink.Sheet, path []ink.Point, off float64, text string, pen float64) {
	top := path[0]
	for _, p := range path {
		if p.Y < top.Y {
			top = p
		}
	}
	tall := tallPens * pen
	wide := ink.TextWidth(text, tall)
	x := min(max(top.X, wide/2+2*pen), float64(s.W)-wide/2-2*pen)
	y := top.Y - off - pen
	if y-tall < pen {
		y = min(top.Y+off+tall+pen, float64(s.H)-2*pen)
	}
	s.Bar(x-wide/2-2*pen, y-tall-2*pen, x+wide/2+2*pen, y+2*pen, markDark)
	s.Text(text, ink.Point{X: x, Y: y}, tall, ink.Middle, markPaper)
}
