package sight

import (
	"math"

	"badgewright/sizing"
)

// Side of a badge.
type Side string

// The sides of a badge.
const (
	Front Side = "front"
	Back  Side = "back"
)

// Image is a picture: straight-alpha 8-bit sRGB, R in the lowest byte, origin
// top left. A working pixel place (x, y) lies at (x*Scale+DX, y*Scale+DY) of
// the picture; in a picture of the back, x is first mirrored about the middle
// of the silhouette's box: x0+x1-x.
type Image struct {
	W, H   int
	Pix    []uint32
	Scale  float64
	DX, DY float64
}

// marginShare is the ground left round the silhouette, as a share of the long
// side of the picture: room for the shadow and for the thickness of the metal.
const marginShare = 0.045

// frameOf lays the silhouette of a badge into a picture of the long side (px).
// A badge with an empty outline gets a picture of one working pixel's box.
func frameOf(b *sizing.Badge, long int) Image {
	w, h := b.Outline[2]-b.Outline[0], b.Outline[3]-b.Outline[1]
	if !(w > 0 && h > 0) {
		w, h = 1, 1
	}
	margin := math.Max(1, float64(long)*marginShare)
	scale := (float64(long) - 2*margin) / math.Max(w, h)
	im := Image{W: long, H: long, Scale: scale}
	if w >= h {
		im.H = max(1, int(math.Ceil(float64(h*scale)+2*margin)))
	} else {
		im.W = max(1, int(math.Ceil(float64(w*scale)+2*margin)))
	}
	im.DX = (float64(im.W)-float64(w*scale))/2 - float64(b.Outline[0]*scale)
	im.DY = (float64(im.H)-float64(h*scale))/2 - float64(b.Outline[1]*scale)
	return im
}

// Frame is the picture of a long side (px) that a badge is drawn into, without
// its pixels.
func Frame(b *sizing.Badge, longSide int) Image { return frameOf(b, longSide) }

// finer returns the frame k times as fine.
func (im Image) finer(k int) Image {
	f := float64(k)
	return Image{W: im.W * k, H: im.H * k, Scale: im.Scale * f, DX: im.DX * f, DY: im.DY * f}
}

// fineFor is how many times finer than the picture to work, so that small
// pictures are drawn from something like fineLong pixels and averaged down.
func fineFor(long int) int {
	return max(1, min(6, (fineLong+long/2)/long))
}

// fineLong is the long side (px) that small pictures are worked at: enough for
// the bevel of a 0.2 mm line to have a lit and a dark side.
const fineLong = 520
