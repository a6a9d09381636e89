package reduce

import (
	"image"
	"image/color"

	"github.com/ericpauley/go-quantize/quantize"
)

const (
	// paintedLeaves is how finely a painting is grouped: enough that twelve
	// colours merged from them are close to the best twelve.
	paintedLeaves = 32
	// paintedRounds of moving the groups' middles; by then they rest.
	paintedRounds = 10
	// leastFlat is the share of the drawing, in parts of 100, that must lie
	// calm in flats, and mostLost what no mix of flats may leave unexplained;
	// else it is a painting. A tiny icon is mostly edge, yet all explained.
	leastFlat = 12
	mostLost  = 12
	// paintedSpeck is the part of the picture, one in so many, below which an
	// island is a painting's grain that no artist would draw.
	paintedSpeck = 40000
)

// paintedPeaks groups all colours of a drawing without flats: the library's
// median cut makes the starting groups, k-means in OKLab settles them.
func paintedPeaks(shades []shade) []peak {
	peaks := seeds(shades)
	of := make([]uint8, len(shades))
	for range paintedRounds {
		for i := range shades {
			k, _ := nearest(peaks, shades[i].lab)
			of[i] = uint8(k)
		}
		moveToMean(peaks, shades, of)
	}
	return peaks
}

// seeds asks the library for a palette of the shades, laid out as a picture of
// one row and weighted by their pixels.
func seeds(shades []shade) []peak {
	row := image.NewRGBA(image.Rect(0, 0, len(shades), 1))
	for i := range shades {
		c := rgbOf(shades[i].rgb)
		row.SetRGBA(i, 0, color.RGBA{R: c.R, G: c.G, B: c.B, A: 255})
	}
	q := quantize.MedianCutQuantizer{
		Aggregation: quantize.Mean,
		Weighting:   func(_ image.Image, x, _ int) uint32 { return uint32(shades[x].n) },
	}
	var peaks []peak
	for _, c := range q.Quantize(make(color.Palette, 0, paintedLeaves), row) {
		r, g, b, _ := c.RGBA()
		rgb := [3]float64{float64(r >> 8), float64(g >> 8), float64(b >> 8)}
		peaks = append(peaks, peak{rgb: rgb, lab: okOf(rgb)})
	}
	return peaks
}

// moveToMean moves each peak to the mean, in OKLab, of its shades.
func moveToMean(peaks []peak, shades []shade, of []uint8) {
	type sum struct{ w, l, a, b float64 }
	sums := make([]sum, len(peaks))
	for i := range shades {
		w, lab, t := float64(shades[i].n), shades[i].lab, &sums[of[i]]
		t.w += w
		t.l, t.a, t.b = t.l+float64(w*lab.L), t.a+float64(w*lab.A), t.b+float64(w*lab.B)
	}
	for k, t := range sums {
		if t.w > 0 {
			p := &peaks[k]
			p.n = int(t.w)
			p.lab.L, p.lab.A, p.lab.B = t.l/t.w, t.a/t.w, t.b/t.w
			c := p.lab.RGB8()
			p.rgb = [3]float64{float64(c.R), float64(c.G), float64(c.B)}
		}
	}
}

// paint labels every pixel of a painting with the nearest of its leaves. Its
// soft edges have no true place inside a pixel; only the rim of a clear
// background has.
func (s *survey) paint() ([]leaf, fates) {
	take := make([]uint8, len(s.pix))
	for i, b := range s.back[:len(take)] {
		if b < 128 {
			take[i] = 1
		}
	}
	shades := shadesOf(s.pix, take)
	peaks := paintedPeaks(shades)
	var leaves []leaf
	for k := range peaks {
		leaves = append(leaves, leafOf(rgbOf(peaks[k].rgb)))
	}
	table := make([]uint8, shadeKeys)
	for i := range shades {
		k, _ := nearest(peaks, shades[i].lab)
		table[shades[i].key] = uint8(k)
	}
	n := len(s.pix)
	f := fates{label: make([]uint8, n), beside: make([]uint8, n), cover: make([]uint8, n)}
	for i, p := range s.pix {
		l, b := None, s.back[i]
		if b < 128 {
			l = table[shadeKey(p)]
		}
		f.label[i], f.beside[i], f.cover[i] = l, l, 255
		if b > 0 && b < 128 {
			f.beside[i], f.cover[i] = None, 255-b
		}
	}
	return leaves, f
}
