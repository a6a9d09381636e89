package sight

import (
	"badgewright/reduce"
	"badgewright/reduce/mask"
	"badgewright/sizing"
)

// Places marks places of the working raster over the pin: a line round each and
// open hatching across it, white and dark beside each other so that it is seen
// on anything, all else clear. The frame is the badge's, made larger where
// places lie outside it.
func Places(b *sizing.Badge, longSide int, at []bool) *Image {
	only := sizing.Badge{Scale: b.Scale, Outline: around(b.Outline, at, b.Sep.W), Sep: reduce.NewSeparation(b.Sep.W, b.Sep.H)}
	only.Sep.Flats = []reduce.Flat{{Role: reduce.Enamel}}
	for i, in := range at {
		if in {
			only.Sep.Labels[i], only.Sep.Beside[i] = 0, 0
		}
	}
	im := frameOf(&only, longSide)
	f := lay(&only, im, nil)
	im.Pix = make([]uint32, len(f.solid))
	off := make([]bool, len(f.solid))
	for i, solid := range f.solid {
		off[i] = solid < 0.5
	}
	in, some := mask.Nearest(off, im.W, im.H)
	if !some {
		return &im
	}
	stroke := max(1, longSide/strokes)
	for i := range im.Pix {
		if !off[i] {
			im.Pix[i] = placeStroke(i%im.W, i/im.W, int(in.D2[i]), stroke)
		}
	}
	return &im
}

// strokes is how many strokes side by side make up the long side of a picture.
const strokes = 420

// hatchAir is the distance from one hatching line to the next, in strokes.
const hatchAir = 9

// placeStroke is a pixel of a marked place: dark at its rim, white within, and
// lines of both across it. d2 is the squared distance to the rim.
func placeStroke(x, y, d2, stroke int) uint32 {
	across := (x + y) % (hatchAir * stroke) / stroke
	switch {
	case d2 <= stroke*stroke:
		return packed(0, 0, 0, 1)
	case d2 <= 9*stroke*stroke, across == 0:
		return packed(1, 1, 1, 1)
	case across == 1:
		return packed(0, 0, 0, 1)
	}
	return 0
}

// around is a box made large enough to hold marked places, w pixels a row.
func around(box [4]float64, at []bool, w int) [4]float64 {
	for i, in := range at {
		if in {
			x, y := float64(i%w), float64(i/w)
			box = [4]float64{min(box[0], x), min(box[1], y), max(box[2], x+1), max(box[3], y+1)}
		}
	}
	return box
}
