package sizing

import (
	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// Badge is a flat drawing at a size: the struck separation, with every recipe
// applied, and its scale.
type Badge struct {
	Sep   *reduce.Separation
	Scale unit.PxPerMM
	// Outline is the box of the silhouette in working pixels: x0, y0, x1, y1,
	// to the true edge, finer than a pixel.
	Outline [4]float64
}

// Width and Height of the silhouette.
func (b *Badge) Width() unit.MM  { return b.Scale.MM(b.Outline[2] - b.Outline[0]) }
func (b *Badge) Height() unit.MM { return b.Scale.MM(b.Outline[3] - b.Outline[1]) }

// Longest is the longer of width and height.
func (b *Badge) Longest() unit.MM { return max(b.Width(), b.Height()) }

// Mean is the mean of width and height, the other convention for a size.
func (b *Badge) Mean() unit.MM { return (b.Width() + b.Height()) / 2 }

// Outline returns the box of everything solid in a separation, to the true
// edge; ok is false when nothing is solid.
func Outline(s *reduce.Separation) (box [4]float64, ok bool) {
	solid := s.Solid()
	x0, y0, x1, y1 := float64(s.W), float64(s.H), 0.0, 0.0
	for y := 0; y < s.H; y++ {
		row := y * s.W
		for x := 0; x < s.W; x++ {
			i := row + x
			l, o := s.Labels[i], s.Beside[i]
			if !solid[l] && !solid[o] {
				continue
			}
			c := s.CoverOf(i, solid)
			if c < 1.0/255 {
				continue
			}
			ok = true
			x0, x1 = min(x0, float64(x)+1-c), max(x1, float64(x)+c)
			y0, y1 = min(y0, float64(y)+1-c), max(y1, float64(y)+c)
		}
	}
	return [4]float64{x0, y0, x1, y1}, ok
}

// ScaleFor returns the scale at which the box has the size, by its measure.
func ScaleFor(box [4]float64, s Size) unit.PxPerMM {
	w, h := box[2]-box[0], box[3]-box[1]
	px := max(w, h)
	switch s.By {
	case ByWidth:
		px = w
	case ByHeight:
		px = h
	case ByMean:
		px = (w + h) / 2
	}
	return unit.PxPerMM(px / float64(s.MM))
}

// Post is a place on the back, in mm from the left and top of the silhouette
// as seen from the FRONT; seen from the back, left and right are mirrored.
type Post struct {
	X unit.MM `json:"x"`
	Y unit.MM `json:"y"`
}
