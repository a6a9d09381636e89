package reduce

import "fmt"

// Drawing is what the artist brought, at the working raster: straight-alpha
// 8-bit sRGB (IEC 61966-2-1). The origin is the top left corner, x runs right
// and y runs down; pixel (x, y) is Pix[y*W+x] and its centre lies at
// (x+0.5, y+0.5).
type Drawing struct {
	W, H int
	// Pix holds R in the lowest byte, then G, B and A (0 clear, 255 solid).
	Pix []uint32
	// FileW and FileH are the pixel size of the whole file before it was brought
	// to the working raster; equal to W and H when it was small enough.
	FileW, FileH int
	// Part is what the raster shows of the file: all of it, or what is drawn on
	// a large canvas.
	Part Part
	// Clipped is the share (0..1) of visible pixels whose colour lies outside
	// sRGB in the file and was clipped channel by channel.
	Clipped float64
}

// WorkingLongSide is the long side, in pixels, above which a file is brought
// down before anything is computed: 1600 px is 50 px per mm on a 32 mm pin, so
// that the thinnest line a die holds (0.2 mm) is still ten pixels wide.
const WorkingLongSide = 1600

// NewDrawing wraps pixels of a working raster. It refuses sizes that do not
// match and pictures with nothing to see.
func NewDrawing(w, h int, pix []uint32) (*Drawing, error) {
	if w <= 0 || h <= 0 {
		return nil, &Refusal{What: "This picture has no pixels.", Do: "Export it again with a width and a height."}
	}
	if len(pix) != w*h {
		return nil, fmt.Errorf("reduce: %d pixels for a raster of %d x %d", len(pix), w, h)
	}
	return &Drawing{W: w, H: h, Pix: pix, FileW: w, FileH: h}, nil
}

// Refusal is an error in plain words: what is wrong, and what to do about it.
type Refusal struct {
	What string
	Do   string
}

func (r *Refusal) Error() string {
	if r.Do == "" {
		return r.What
	}
	return r.What + " " + r.Do
}

// Progress is told now and then how far a long step has come (0..1) and what
// it is doing. A non-nil error means: stop, and return that error.
type Progress func(share float64, doing string) error
