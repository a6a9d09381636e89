package reduce

import (
	"math"

	"badgewright/reduce/colour"
)

// peak is a colour that calm pixels gather round.
type peak struct {
	rgb [3]float64
	lab colour.OKLab
	n   int // calm pixels
	// solid counts those whose eight neighbours are of the same peak: edge
	// bands and stain have next to none.
	solid int
}

const (
	// mostPeaks bounds the search; a drawing with more is painted, not flat.
	mostPeaks = 160
	// settleRounds of moving each peak to the middle of its pixels; more change nothing.
	settleRounds = 3
)

// peaksOf finds the colours that shades gather round, each at least radius
// from the next, and for each shade its peak (or none, 255).
func peaksOf(shades []shade, radius float64) ([]peak, []uint8) {
	var peaks []peak
	of := make([]uint8, len(shades))
	r2 := radius * radius
	for i := range shades {
		k, d := nearest(peaks, shades[i].lab)
		if d > r2 && len(peaks) < mostPeaks && shades[i].n >= leastShade {
			peaks = append(peaks, peak{rgb: shades[i].rgb, lab: shades[i].lab})
			k = len(peaks) - 1
		}
		of[i] = uint8(k)
	}
	for range settleRounds {
		recentre(peaks, shades, of, r2)
		for i := range shades {
			k, d := nearest(peaks, shades[i].lab)
			if d > 2.25*r2 {
				k = 255
			}
			of[i] = uint8(k)
		}
	}
	recentre(peaks, shades, of, r2)
	return peaks, of
}

// leastShade is how many calm pixels a shade needs to start a peak.
const leastShade = 4

func nearest(peaks []peak, lab colour.OKLab) (int, float64) {
	at, best := 255, math.Inf(1)
	for k := range peaks {
		if d := peaks[k].lab.Distance2(lab); d < best {
			at, best = k, d
		}
	}
	return at, best
}

// recentre moves each peak to the mean of its shades within the radius,
// weighted by pixels squared: the commonest shade is the true colour, the rest
// is stain round it.
func recentre(peaks []peak, shades []shade, of []uint8, r2 float64) {
	type sum struct{ w, r, g, b float64 }
	sums := make([]sum, len(peaks))
	for k := range peaks {
		peaks[k].n = 0
	}
	for i := range shades {
		k := of[i]
		if int(k) >= len(peaks) {
			continue
		}
		s := &shades[i]
		peaks[k].n += s.n
		if s.lab.Distance2(peaks[k].lab) > r2 {
			continue
		}
		w := float64(s.n) * float64(s.n)
		t := &sums[k]
		t.w += w
		t.r, t.g, t.b = t.r+float64(w*s.rgb[0]), t.g+float64(w*s.rgb[1]), t.b+float64(w*s.rgb[2])
	}
	for k, t := range sums {
		if t.w > 0 {
			peaks[k].rgb = [3]float64{t.r / t.w, t.g / t.w, t.b / t.w}
			peaks[k].lab = okOf(peaks[k].rgb)
		}
	}
}

// tableOf spreads the peak of each shade over a table by bin.
func tableOf(shades []shade, of []uint8) []uint8 {
	t := make([]uint8, shadeKeys)
	for i := range t {
		t[i] = loose
	}
	for i := range shades {
		if of[i] != 255 {
			t[shades[i].key] = of[i]
		}
	}
	return t
}

// loose marks a pixel whose flat is still to be found.
const loose uint8 = 254

// plant labels calm pixels by their peak, background None, the rest loose.
func (s *survey) plant(table []uint8) []uint8 {
	label := make([]uint8, len(s.pix))
	calm, back := s.calm[:len(label)], s.back[:len(label)]
	last, lastLabel := uint32(0), table[0]
	for i, p := range s.pix {
		switch {
		case back[i] == 255:
			label[i] = None
		case calm[i] == 0:
			label[i] = loose
		default:
			if p != last {
				last, lastLabel = p, table[shadeKey(p)]
			}
			label[i] = lastLabel
		}
	}
	return label
}

// countSolid counts, for each peak, its pixels and those all of whose eight
// neighbours share it.
func countSolid(label []uint8, w, h int, peaks []peak) {
	var n, solid [256]int
	for y := 1; y+1 < h; y++ {
		up, row, down := label[(y-1)*w:y*w], label[y*w:(y+1)*w], label[(y+1)*w:(y+2)*w]
		up, down = up[:len(row)], down[:len(row)]
		alike := 0 // columns in a row, up to here, of one label top to bottom
		for x, l := range row {
			n[l]++
			switch {
			case up[x] != l || down[x] != l:
				alike = 0
			case alike > 0 && row[x-1] == l:
				alike++
			default:
				alike = 1
			}
			if alike >= 3 {
				solid[l]++
			}
		}
	}
	for k := range peaks {
		peaks[k].n, peaks[k].solid = n[k], solid[k]
	}
}
