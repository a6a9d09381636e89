// Package ink draws pictures to be laid over a drawing or under it: bars,
// strokes round a path and a drafter's lettering, in straight-alpha sRGB, and
// writes them as PNG with their true scale. It knows pixels alone.
//
// Places are in pixels, origin at the left top corner of the sheet, y down;
// pixel (x, y) reaches from x to x+1 and from y to y+1.
package ink

import (
	"image/color"
	"math"
)

// Point is a place on a sheet.
type Point struct{ X, Y float64 }

// To is how far another place is. It is the same to the bit on every machine,
// as math.Hypot need not be.
func (p Point) To(q Point) float64 {
	dx, dy := q.X-p.X, q.Y-p.Y
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

// Sheet is a picture as the list of what is drawn on it, first things first. It
// has no pixels until they are asked for, a few rows at a time, so that a sheet
// of a hundred megapixels needs little room.
type Sheet struct {
	W, H int
	// Ground is what lies under everything; the zero value is transparent.
	Ground color.NRGBA
	marks  []mark
}

// mark is one thing drawn on a sheet.
type mark interface {
	// reach is the rows that the mark may touch, from y0 up to y1.
	reach() (y0, y1 int)
	// paint draws what lies in a strip.
	paint(s *strip)
}

// strip is some rows of a sheet, from y0 up to y1.
type strip struct {
	w, y0, y1 int
	pix       []byte    // R G B A, straight
	far       []float64 // scratch of strokes, one for each pixel
}

// over lays an ink on pixel i, which it covers by a share from 0 to 1.
func (s *strip) over(i int, c color.NRGBA, cover float64) {
	p := s.pix[4*i : 4*i+4]
	top := cover * float64(c.A) / 255
	under := float64(float64(p[3])/255) * (1 - top)
	all := top + under
	if top <= 0 || all <= 0 {
		return
	}
	for k, v := range [3]uint8{c.R, c.G, c.B} {
		p[k] = uint8(math.Round((float64(float64(v)*top) + float64(float64(p[k])*under)) / all))
	}
	p[3] = uint8(math.Round(255 * min(all, 1)))
}

// bar is an upright rectangle.
type bar struct {
	x0, y0, x1, y1 float64
	ink            color.NRGBA
}

// Bar fills the rectangle from (x0, y0) to (x1, y1); a pixel that it covers in
// part gets its share.
func (s *Sheet) Bar(x0, y0, x1, y1 float64, ink color.NRGBA) {
	s.marks = append(s.marks, &bar{min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1), ink})
}

func (b *bar) reach() (y0, y1 int) { return int(math.Floor(b.y0)), int(math.Ceil(b.y1)) }

func (b *bar) paint(s *strip) {
	for y := max(s.y0, int(math.Floor(b.y0))); y < min(s.y1, int(math.Ceil(b.y1))); y++ {
		high := overlap(b.y0, b.y1, y)
		for x := max(0, int(math.Floor(b.x0))); x < min(s.w, int(math.Ceil(b.x1))); x++ {
			s.over((y-s.y0)*s.w+x, b.ink, high*overlap(b.x0, b.x1, x))
		}
	}
}

// overlap is how much of the pixel from k to k+1 lies between a and b.
func overlap(a, b float64, k int) float64 {
	return max(0, min(b, float64(k+1))-max(a, float64(k)))
}
