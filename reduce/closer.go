package reduce

import "math"

// Part is a part of a file in shares (0..1) of its width and height: x0, y0,
// x1, y1. The zero value means the whole file.
type Part [4]float64

// Whole is true for a part that leaves nothing out.
func (p Part) Whole() bool { return p == Part{} || p == Part{0, 0, 1, 1} }

// part is what a drawing shows of its file, in full.
func (d *Drawing) part() Part {
	if d.Part.Whole() {
		return Part{0, 0, 1, 1}
	}
	return d.Part
}

func (p Part) w() float64 { return p[2] - p[0] }
func (p Part) h() float64 { return p[3] - p[1] }

const (
	// closerRoom is how much ground is kept round the drawing, as a share of
	// its longer side: paper must still be known as paper.
	closerRoom = 0.12
	// closerGain is how many times as many pixels along a side a closer look
	// must bring to be worth decoding a file again, and heavyGain that for a file
	// of more than heavyFile pixels, which takes about a second to decode.
	closerGain = 1.5
	heavyGain  = 2
	heavyFile  = 12_000_000
)

// Closer returns the part of the file that holds all that is drawn, and some
// ground round it, when the file can show that part with more pixels than the
// working raster gives it now: a small drawing on a large canvas. finest is the
// long side, px, at which the whole file could be drawn. g is the ground found
// in d. Without such a part ok is false.
func (d *Drawing) Closer(g *Ground, finest int) (part Part, ok bool) {
	x0, y0, x1, y1 := drawnIn(g.Back, d.W, d.H)
	if g.Found == GroundNone || x1 <= x0 || y1 <= y0 {
		return Part{}, false
	}
	room := closerRoom * float64(max(x1-x0, y1-y0))
	w, h := float64(d.W), float64(d.H)
	part = Part{
		max(0, float64(x0)-room) / w, max(0, float64(y0)-room) / h,
		min(w, float64(x1)+room) / w, min(h, float64(y1)+room) / h,
	}
	least := closerGain
	if d.FileW*d.FileH > heavyFile {
		least = heavyGain
	}
	return part, gainOf(part, d.W, d.H, finest) >= least
}

// gainOf is how many times as many pixels along a side a part gets that is
// drawn alone, instead of with the whole at w x h.
func gainOf(p Part, w, h, finest int) float64 {
	long := float64(max(w, h))
	alone := max(float64(p.w()*float64(w)), float64(p.h()*float64(h)))
	return min(float64(finest)/long, WorkingLongSide/alone)
}

// drawnIn is the box of all pixels that are not surely background.
func drawnIn(back []uint8, w, h int) (x0, y0, x1, y1 int) {
	x0, y0 = w, h
	for y := range h {
		row := back[y*w : (y+1)*w]
		a := 0
		for a < w && row[a] == 255 {
			a++
		}
		if a == w {
			continue
		}
		b := w
		for row[b-1] == 255 {
			b--
		}
		x0, x1 = min(x0, a), max(x1, b)
		y0, y1 = min(y0, y), y+1
	}
	return x0, y0, x1, y1
}

// WorkingPart returns the part to be drawn, its edges moved out to whole pixels
// of the file as it would be drawn at most, and the raster to draw it at.
func WorkingPart(p Part, fileW, fileH, finest int) (aligned Part, w, h int) {
	k := float64(finest) / float64(max(fileW, fileH))
	fw, fh := math.Round(float64(fileW)*k), math.Round(float64(fileH)*k)
	aligned = Part{
		math.Floor(p[0]*fw) / fw, math.Floor(p[1]*fh) / fh,
		math.Ceil(p[2]*fw) / fw, math.Ceil(p[3]*fh) / fh,
	}
	w, h = WorkingSize(int(math.Round(aligned.w()*fw)), int(math.Round(aligned.h()*fh)), WorkingLongSide)
	return aligned, w, h
}

// InFile takes a place of the working raster to the pixels of the file.
func (d *Drawing) InFile(x, y float64) (fx, fy float64) {
	p := d.part()
	return (p[0] + float64(p.w()*(x/float64(d.W)))) * float64(d.FileW), (p[1] + float64(p.h()*(y/float64(d.H)))) * float64(d.FileH)
}
