package reduce

import (
	"fmt"
	"hash/fnv"
	"image/color"
	"testing"

	"github.com/ericpauley/go-quantize/quantize"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// digest sums up a separation, pixels and flats; what they are called is no
// part of it.
func digest(s *Separation) string {
	h := fnv.New64a()
	h.Write(s.Labels)
	h.Write(s.Beside)
	h.Write(s.Cover)
	for _, f := range s.Flats {
		fmt.Fprintf(h, "%d %s %s %t", f.ID, f.RGB.Hex(), f.Role, f.Locked)
	}
	return fmt.Sprintf("%016x", h.Sum64())
}

// The same bits on every machine: these were written on one and must be found
// on all, in the browser too. Change them only with a change that is meant to
// change pictures.
func TestSameBitsEverywhere(t *testing.T) {
	want := map[string]string{
		"lined":    "64404978b0d0a128",
		"lineless": "d9102ebc2a2802da",
		"JPEG":     "0e565ad7e533a680",
		"painting": "7ce8a3c1a2223438",
		"levelled": "b0935e15ee3616a6",
	}
	for name, d := range map[string]*Drawing{
		"lined": buoy(t, 200), "lineless": harbour(t, 200), "JPEG": stain(t, harbour(t, 200), 80),
		"painting": painting(), "levelled": byLamp(buoy(t, 300), 0.4, 4, 7),
	} {
		got := digest(at(t, analysed(t, d), 4))
		assert.Equal(t, want[name], got, name)
		assert.Equal(t, got, digest(at(t, analysed(t, d), 4)), "%s, twice", name)
	}
}

// meanLoss is the mean CIEDE2000 between a drawing and what stands for it.
func meanLoss(d *Drawing, stands func(i int) colour.RGB8) float64 {
	sum := 0.0
	for i, p := range d.Pix {
		c := colour.RGB8{R: uint8(p), G: uint8(p >> 8), B: uint8(p >> 16)}
		sum += colour.CIEDE2000(c.Lab(), stands(i).Lab())
	}
	return sum / float64(len(d.Pix))
}

// A whole reduction against a general-purpose library (go-quantize, median
// cut), on one flat picture at its true count of five: ours finds the five
// colours; the library spends some of its five on smoothed edges.
func TestAgainstALibrary(t *testing.T) {
	d := harbour(t, 240)
	true5 := []string{"#fbe3c0", "#f7a65a", "#2f5d7c", "#2a5373", "#c8402f"}
	palette := quantize.MedianCutQuantizer{Aggregation: quantize.Mean}.Quantize(make(color.Palette, 0, 5), asRGBA(d))
	require.Len(t, palette, 5)
	near := func(flats []colour.RGB8) (n int) {
		for _, h := range true5 {
			for _, c := range flats {
				if colour.CIEDE2000(rgb(t, h).Lab(), c.Lab()) < 2 {
					n++
					break
				}
			}
		}
		return n
	}
	var theirs, ours []colour.RGB8
	for _, c := range palette {
		r, g, b, _ := c.RGBA()
		theirs = append(theirs, colour.RGB8{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)})
	}
	s := at(t, analysed(t, d), 5)
	for _, f := range s.Flats {
		ours = append(ours, f.RGB)
	}
	assert.Equal(t, 5, near(ours))
	assert.Less(t, near(theirs), 5)

	theirLoss := meanLoss(d, func(i int) colour.RGB8 {
		p := d.Pix[i]
		k := palette.Index(color.RGBA{uint8(p), uint8(p >> 8), uint8(p >> 16), 255})
		return theirs[k]
	})
	ourLoss := meanLoss(d, func(i int) colour.RGB8 { return ours[s.Labels[i]] })
	t.Logf("mean CIEDE2000: ours %.3f, the library's %.3f", ourLoss, theirLoss)
	assert.LessOrEqual(t, ourLoss, theirLoss)
}
