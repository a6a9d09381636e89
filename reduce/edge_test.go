package reduce

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// widthOf is the area that a flat's pixels cover, over a length.
func widthOf(s *Separation, hex string, t *testing.T, length float64) float64 {
	id := idOf(t, s, hex)
	var has [256]bool
	for k, f := range s.Flats {
		has[k] = f.ID == id
	}
	sum := 0.0
	for i := range s.Labels {
		sum += s.CoverOf(i, &has)
	}
	return sum / length
}

// Bars at any place within a pixel keep their width to a tenth of a pixel.
// The sampling of the test itself is an eighth of a pixel wide; places and
// widths are whole eighths.
func TestWidthsAreFinerThanAPixel(t *testing.T) {
	for _, w := range []float64{2.5, 3.25, 4.125, 5.25, 8} {
		for _, at := range []float64{60, 60.25, 60.5, 60.875} {
			bar := shape{rgb(t, "#1b1b1f"), func(x, y float64) bool { return y > 30 && y < 100 && x > at && x < at+w }}
			right := shape{rgb(t, "#d23b2f"), func(x, y float64) bool { return disc(65, 65, 60)(x, y) && x > at+w/2 }}
			dot := shape{rgb(t, "#1b1b1f"), disc(65, 20, 6)} // the bar's colour in full, elsewhere
			ground := shape{rgb(t, "#8fc7e8"), disc(65, 65, 60)}
			for _, shapes := range [][]shape{{ground, dot, bar}, {ground, right, dot, bar}} {
				a := analysed(t, drawingOf(t, rasterise(130, 130, rgb(t, "#fbe3c0"), shapes...)))
				s, err := a.Reduce(Options{Count: 6, RolesOff: true})
				require.NoError(t, err)
				got := (widthOf(s, "#1b1b1f", t, 1) - math.Pi*36) / 70
				assert.InDelta(t, w, got, 0.1, "width %g at %g", w, at)
			}
		}
	}
}

// Thin lines at a slant: at no place do they fill a pixel, or hardly.
func TestWidthsOfThinLines(t *testing.T) {
	for _, w := range []float64{1, 1.5, 2} {
		for _, hex := range []string{"#1b1b1f", "#d23b2f", "#ffffff"} {
			line := shape{rgb(t, hex), func(x, y float64) bool {
				return x > 40 && x < 160 && math.Abs(y-60-0.37*x) < w/2*math.Sqrt(1+0.37*0.37)
			}}
			a := analysed(t, drawingOf(t, rasterise(200, 200, rgb(t, "#fbe3c0"), shape{rgb(t, "#5a7a8c"), disc(100, 100, 90)}, line)))
			s, err := a.Reduce(Options{Count: 6, RolesOff: true})
			require.NoError(t, err)
			require.Len(t, s.Flats, 2, "%s at %g", hex, w)
			length := 120 * math.Sqrt(1+0.37*0.37)
			got := widthOf(s, s.Flats[1].RGB.Hex(), t, length)
			assert.InDelta(t, w, got, 0.15, "%s at %g", hex, w)
			assert.Less(t, colour.CIEDE2000(rgb(t, hex).Lab(), s.Flats[1].RGB.Lab()), 6.0, "%s at %g: %s", hex, w, s.Flats[1].RGB.Hex())
		}
	}
}

// A mixed pixel names the two flats it lies between, in the share it shows.
func TestMixedPixels(t *testing.T) {
	d := drawingOf(t, rasterise(100, 100, rgb(t, "#ffffff"), shape{rgb(t, "#2a9d8f"), disc(50, 50, 44)},
		shape{rgb(t, "#e9c46a"), func(x, y float64) bool { return disc(50, 50, 44)(x, y) && x > 47.25+0.1*y }}))
	s := at(t, analysed(t, d), 2)
	for y := 35; y < 65; y++ {
		want := 47.25 + 0.1*(float64(y)+0.5) // where the edge crosses this row
		left := 0.0
		for x := range 100 {
			i := y*100 + x
			var teal [256]bool
			teal[s.Labels[y*100+40]] = true
			left += s.CoverOf(i, &teal)
		}
		rim := 50 - math.Sqrt(44*44-math.Pow(float64(y)+0.5-50, 2))
		assert.InDelta(t, want-rim, left, 0.15, "row %d", y)
	}
}

// slowExplain tries every pair of flats and every share in 255ths.
func slowExplain(p tone, labels []uint8, tones *[256]tone) (a, b uint8, part int32, off float64) {
	off = math.Inf(1)
	for x, la := range labels {
		for _, lb := range labels[x+1:] {
			for s := int32(0); s <= 255; s++ {
				d := 0.0
				for c := range p {
					m := float64(tones[lb][c]) + float64(s)/255*float64(tones[la][c]-tones[lb][c])
					d += (float64(p[c]) - m) * (float64(p[c]) - m)
				}
				if d < off-1e-9 {
					a, b, part, off = la, lb, s, d
				}
			}
		}
	}
	return a, b, part, off
}

func TestExplainAgainstItsSlowTwin(t *testing.T) {
	seed := uint64(11)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 2))
	for range 400 {
		var tones [256]tone
		labels := []uint8{0, 1, 2, 3}
		for _, l := range labels {
			tones[l] = tone{r.Int32N(256), r.Int32N(256), r.Int32N(256)}
		}
		p := tone{r.Int32N(256), r.Int32N(256), r.Int32N(256)}
		_, _, _, want := slowExplain(p, labels, &tones)
		best, part := int32(math.MaxInt32), int32(0)
		for x := range labels {
			for y := x + 1; y < len(labels); y++ {
				if s, off := share(&p, &tones[x], &tones[y]); off < best {
					best, part = off, s
				}
			}
		}
		assert.InDelta(t, want, float64(best), 3)
		assert.True(t, part >= 0 && part <= 255)
	}
}

// slowIslands finds small areas by flooding, and what each touches most.
func slowIslands(label []uint8, w, h, least int) map[int]uint8 {
	seen := make([]bool, len(label))
	out := map[int]uint8{}
	for start := range label {
		if seen[start] {
			continue
		}
		part, touch := []int{start}, map[uint8]int{}
		seen[start] = true
		for k := 0; k < len(part); k++ {
			x, y := part[k]%w, part[k]/w
			for yy := max(y-1, 0); yy <= min(y+1, h-1); yy++ {
				for xx := max(x-1, 0); xx <= min(x+1, w-1); xx++ {
					j := yy*w + xx
					if label[j] != label[start] {
						touch[label[j]]++
					} else if !seen[j] {
						seen[j] = true
						part = append(part, j)
					}
				}
			}
		}
		if len(part) < least && len(touch) > 0 {
			best, most := uint8(0), 0
			for l := range 256 {
				if touch[uint8(l)] > most {
					best, most = uint8(l), touch[uint8(l)]
				}
			}
			for _, i := range part {
				out[i] = best
			}
		}
	}
	return out
}

func TestSpeckleAgainstItsSlowTwin(t *testing.T) {
	seed := uint64(3)
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 4))
	for range 60 {
		w, h := 3+r.IntN(20), 3+r.IntN(20)
		label := make([]uint8, w*h)
		for i := range label {
			if r.IntN(5) == 0 {
				label[i] = uint8(r.IntN(4))
			}
			if label[i] == 3 {
				label[i] = None
			}
		}
		islands := slowIslands(label, w, h, trusts[wandering].speck)
		e := &edger{survey: &survey{w: w, h: h, grade: wandering}, trust: trusts[wandering]}
		e.f = fates{label: append([]uint8(nil), label...), beside: make([]uint8, w*h), cover: make([]uint8, w*h)}
		e.unspeckOnce()
		want := append([]uint8(nil), label...)
		for i, l := range islands {
			want[i] = l
		}
		// islands that touch one another are dissolved in reading order, which
		// the twin does not follow: compare where it cannot matter
		for i := range want {
			if _, island := islands[i]; !island {
				assert.Equal(t, want[i], e.f.label[i], "pixel %d of %d x %d", i, w, h)
			}
		}
	}
}
