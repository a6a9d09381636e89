package calls

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/sight"
	"badgewright/sizing/unit"
	"badgewright/sizing/wall"
)

// square is a square part of the working raster, px.
type square struct{ x, y, side float64 }

// A close-up shows a trouble spot and some of what is round it: never so little
// that one cannot tell what it is a part of, nor so much that one sees nothing.
const (
	roundSpot    = 1.6 // sides of the spot's box
	leastAcross  = 4   // mm
	closeUpShare = 0.6 // of the pin, at most
)

// beyondClose is how much more than the square is shaded with it, of its side,
// so that what is cut off does not look like an edge of the pin.
const beyondClose = 0.15

// pictureMargin is the ground that a picture of a whole badge leaves round it.
const pictureMargin = 0.045

// A close-up's side, px.
const (
	leastCloseUp    = leastPicture
	greatestCloseUp = 1024
)

func checkSide(side int) error {
	if side == 0 || side >= leastCloseUp && side <= greatestCloseUp {
		return nil
	}
	return &reduce.Refusal{
		What: fmt.Sprintf("A close-up of %d px cannot be drawn.", side),
		Do:   fmt.Sprintf("Ask for %d to %d px.", leastCloseUp, greatestCloseUp),
	}
}

// closeUp is the square round a trouble spot that its close-ups show.
func closeUp(f *sizing.Finding, b *sizing.Badge) square {
	most := closeUpShare * max(b.Outline[2]-b.Outline[0], b.Outline[3]-b.Outline[1])
	side := max(roundSpot*max(f.X1-f.X0, f.Y1-f.Y0), unit.MM(leastAcross).Px(b.Scale))
	side = min(side, most)
	x, y := (f.X0+f.X1)/2, (f.Y0+f.Y1)/2
	if f.X1-f.X0 > side || f.Y1-f.Y0 > side {
		x, y = f.X, f.Y
	}
	return square{x - side/2, y - side/2, side}
}

// closeUps draws a square of several separations as struck, one after another.
func (u *subject) closeUps(all []*reduce.Separation, at square, scale unit.PxPerMM, px int) ([]byte, error) {
	var bytes []byte
	for _, s := range all {
		im, err := sight.Struck(cutBadge(s, at, scale), sight.Look{
			Plating: platingOf(u.version.Plating), Fill: u.design.Fill, Side: sight.Front, LongSide: px,
			Recolour: recolours(u.version), Finish: finishes(u.version),
		}, nil)
		if err != nil {
			return nil, err
		}
		bytes = append(bytes, rgba(im.Pix)...)
	}
	return bytes, nil
}

// cutBadge is a square of a badge and a little round it, framed so that a
// picture of it shows the square alone.
func cutBadge(s *reduce.Separation, at square, scale unit.PxPerMM) *sizing.Badge {
	more := at.side*beyondClose + 2
	x0, y0 := clamp(at.x-more, s.W), clamp(at.y-more, s.H)
	x1, y1 := clamp(at.x+at.side+more+1, s.W), clamp(at.y+at.side+more+1, s.H)
	in := at.side * pictureMargin
	left, top := at.x-float64(x0)+in, at.y-float64(y0)+in
	return &sizing.Badge{
		Sep: wall.Cut(s, x0, y0, x1, y1), Scale: scale,
		Outline: [4]float64{left, top, left + at.side - 2*in, top + at.side - 2*in},
	}
}

func clamp(v float64, most int) int { return int(min(max(v, 0), float64(most))) }
