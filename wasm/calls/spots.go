package calls

import (
	"badgewright/reduce"
	"badgewright/reduce/mask"
	"badgewright/wasm/wire"
)

// spotRaster is the long side, in pixels, of the coarse raster in which the
// callouts' places are looked for: they need to be well inside, not exact.
const spotRaster = 320

// leastPiece is the share of the drawing's pixels under which an area is not
// counted as a piece of its flat: nobody would call it one.
const leastPiece = 1e-5

// spotsOf finds, for each flat, a place well inside its roomiest area, and
// counts its areas. A flat that is nowhere gets no spot.
func spotsOf(s *reduce.Separation) []wire.Spot {
	pieces := piecesOf(s)
	step := max(1, (max(s.W, s.H)+spotRaster-1)/spotRaster)
	w, h := (s.W+step-1)/step, (s.H+step-1)/step
	label := make([]uint8, w*h)
	for y := range h {
		for x := range w {
			label[y*w+x] = s.Labels[min(y*step+step/2, s.H-1)*s.W+min(x*step+step/2, s.W-1)]
		}
	}
	field := mask.Others(label, w, h, &[256]bool{reduce.None: true})
	best := make([]int32, len(s.Flats))
	at := make([]int, len(s.Flats))
	for i, l := range label {
		if l != reduce.None && field.D2[i] > best[l] {
			best[l], at[l] = field.D2[i], i
		}
	}
	spots := []wire.Spot{}
	for l, f := range s.Flats {
		if best[l] == 0 {
			x, y, ok := firstPixel(s, uint8(l))
			if ok {
				spots = append(spots, wire.Spot{Flat: f.ID, X: x, Y: y, Pieces: pieces[l]})
			}
			continue
		}
		x, y := at[l]%w, at[l]/w
		spots = append(spots, wire.Spot{
			Flat: f.ID, Pieces: pieces[l],
			X: float64(min(x*step+step/2, s.W-1)) + 0.5, Y: float64(min(y*step+step/2, s.H-1)) + 0.5,
		})
	}
	return spots
}

// firstPixel finds a flat too fine for the coarse raster.
func firstPixel(s *reduce.Separation, l uint8) (x, y float64, ok bool) {
	for i, v := range s.Labels {
		if v == l {
			return float64(i%s.W) + 0.5, float64(i/s.W) + 0.5, true
		}
	}
	return 0, 0, false
}

// piecesOf counts the areas of each flat.
func piecesOf(s *reduce.Separation) []int {
	var eight [256]bool
	for l, f := range s.Flats {
		eight[l] = f.Role == reduce.Metal // metal joins through corners
	}
	parts := mask.Connect(s.Labels, s.W, s.H, &eight)
	pieces := make([]int, len(s.Flats))
	least := int(leastPiece * float64(s.W*s.H))
	for i, l := range parts.Label {
		if l != reduce.None && parts.Area[i] > least {
			pieces[l]++
		}
	}
	return pieces
}
