package reduce

import (
	"image"

	"github.com/anthonynsimon/bild/transform"
)

// thumbnailRoom is how many times larger than the thumbnail a drawing may be
// when the image library gets it: the rest is taken off by Shrink, which does
// not slow down on large files.
const thumbnailRoom = 4

// Thumbnail returns a small picture of a drawing, its long side longSide
// pixels. A drawing that is small enough is given back as it is.
func Thumbnail(d *Drawing, longSide int) *Drawing {
	if longSide < 1 || max(d.W, d.H) <= longSide {
		return d
	}
	pre := Shrink(d, thumbnailRoom*longSide)
	w, h := fit(d.W, d.H, longSide)
	return fromRGBA(transform.Resize(asRGBA(pre), w, h, transform.Linear), d)
}

// fromRGBA turns premultiplied pixels into straight alpha.
func fromRGBA(m *image.RGBA, of *Drawing) *Drawing {
	d := &Drawing{W: m.Rect.Dx(), H: m.Rect.Dy(), FileW: of.FileW, FileH: of.FileH, Part: of.Part, Clipped: of.Clipped}
	d.Pix = make([]uint32, d.W*d.H)
	for i := range d.Pix {
		a := uint32(m.Pix[4*i+3])
		if a == 0 {
			continue
		}
		straight := func(c int) uint32 { return min(255, (uint32(m.Pix[4*i+c])*255+a/2)/a) }
		d.Pix[i] = straight(0) | straight(1)<<8 | straight(2)<<16 | a<<24
	}
	return d
}
