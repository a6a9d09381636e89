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
		left, right, most := rowEnds(s, y, solid)
		if most == 0 {
			continue
		}
		ok = true
		x0, x1 = min(x0, left), max(x1, right)
		y0, y1 = min(y0, float64(y)+1-most), max(y1, float64(y)+most)
	}
	return [4]float64{x0, y0, x1, y1}, ok
}

// rowEnds returns where the solid part of a row begins and ends, and the
// greatest cover in it (0 when none is solid). What lies between the ends
// cannot widen the box, and full cover cannot be passed, so most rows are read
// only at their ends.
func rowEnds(s *reduce.Separation, y int, solid *[256]bool) (left, right, most float64) {
	row := y * s.W
	cover := func(x int) float64 { return s.CoverOf(row+x, solid) }
	a, b := firstSolid(s, row, row+s.W, solid)-row, lastSolid(s, row, row+s.W, solid)-row
	if a > b {
		return 0, 0, 0
	}
	left, right, most = float64(a)+1-cover(a), float64(b)+cover(b), max(cover(a), cover(b))
	for x := a + 1; x < b && most < 1; x++ {
		most = max(most, cover(x))
	}
	return left, right, most
}

// firstSolid returns the first pixel from one on, before end, that is solid in
// part; end when none is.
func firstSolid(s *reduce.Separation, from, end int, solid *[256]bool) int {
	labels, beside := s.Labels[:end], s.Beside[:end]
	for i := from; i < len(labels); i++ {
		if (solid[labels[i]] || solid[beside[i]]) && s.CoverOf(i, solid) >= leastCover {
			return i
		}
	}
	return end
}

// lastSolid does as firstSolid, from the other end; from-1 when none is.
func lastSolid(s *reduce.Separation, from, end int, solid *[256]bool) int {
	labels, beside := s.Labels[:end], s.Beside[:end]
	for i := end - 1; i >= from; i-- {
		if (solid[labels[i]] || solid[beside[i]]) && s.CoverOf(i, solid) >= leastCover {
			return i
		}
	}
	return from - 1
}

// leastCover is the least cover that counts as solid: one step of 255.
const leastCover = 1.0 / 255

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
