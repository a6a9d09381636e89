package reduce

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// byLamp darkens a drawing towards one corner, tints it and adds grain.
func byLamp(d *Drawing, fall, grain float64, seed int64) *Drawing {
	rng := rand.New(rand.NewSource(seed))
	out := *d
	out.Pix = make([]uint32, len(d.Pix))
	for i, p := range d.Pix {
		x, y := float64(i%d.W)/float64(d.W), float64(i/d.W)/float64(d.H)
		light := 1 - fall*(0.7*x*x+0.3*y)
		var q uint32 = 0xff000000
		for c, tint := range []float64{0.95, 0.92, 0.84} {
			v := float64(p>>(8*c)&255)*tint*light + grain*rng.NormFloat64()
			q |= uint32(min(255, max(0, v+0.5))) << (8 * c)
		}
		out.Pix[i] = q
	}
	return &out
}

func TestGroundOfPhotographs(t *testing.T) {
	for _, fall := range []float64{0.15, 0.35, 0.5} {
		for _, grain := range []float64{0, 3, 6} {
			t.Run(fmt.Sprintf("fall %.2f grain %.0f", fall, grain), func(t *testing.T) {
				d, radius := ringPic(480, inks['.'])
				photo := byLamp(d, fall, grain, 7)
				g, err := FindGround(photo, GroundAuto)
				require.NoError(t, err)
				require.Equal(t, GroundPaper, g.Found)
				assert.NotSame(t, photo, g.Levelled)
				assert.Contains(t, g.Note, "evened out")
				assert.LessOrEqual(t, wrong(g, radius, 3.0/240), 12, "pixels beyond three of the edge")
				low, high := paperRange(g, radius)
				assert.LessOrEqual(t, high-low, 8+4*int(grain), "paper is even after levelling")
			})
		}
	}
}

// paperRange returns the 2nd and 98th hundredth of the green of the paper.
func paperRange(g *Ground, radius func(int) float64) (int, int) {
	var count [256]int
	n := 0
	for i, p := range g.Levelled.Pix {
		if radius(i) > 0.66 {
			count[p>>8&255]++
			n++
		}
	}
	return quantile(&count, n, 2, 100), quantile(&count, n, 98, 100)
}

func TestEvenPaperIsNotLevelled(t *testing.T) {
	d, _ := ringPic(200, 0xffd8ecf4)
	for name, d := range map[string]*Drawing{"clean": d, "stained": throughJPEG(t, d, 60)} {
		g, err := FindGround(d, GroundAuto)
		require.NoError(t, err, name)
		assert.True(t, d == g.Levelled, name)
	}
}

// A photograph is levelled where its light is even too: the lamp has a colour.
// Coloured paper keeps its own.
func TestEvenlyLitPhotographs(t *testing.T) {
	d, radius := ringPic(200, 0xffffffff)
	g, err := FindGround(byLamp(d, 0, 5, 3), GroundAuto)
	require.NoError(t, err)
	low, high := paperRange(g, radius)
	assert.Greater(t, low, 230)
	assert.LessOrEqual(t, high, 255)
	kraft, _ := ringPic(200, 0xff6fa0c8)
	g, err = FindGround(byLamp(kraft, 0, 5, 3), GroundAuto)
	require.NoError(t, err)
	assert.Less(t, g.RGB.B, uint8(140), "brown paper stays brown: %s", g.RGB.Hex())
}

func TestAPaintedSkyIsNotLevelled(t *testing.T) {
	d := draw(t, 8, "rrrrrrrrrr", "rrrrrrrrrr", "rrrrkkrrrr", "kkkkkkkkkk", "kkkkkkkkkk")
	for i := range d.Pix { // from blue above to orange below: the hue wanders
		if y := uint32(i / d.W); d.Pix[i] == inks['r'] {
			d.Pix[i] = (40 + 8*y) | (90+2*y)<<8 | (220-6*y)<<16 | 0xff000000
		}
	}
	g, err := FindGround(d, GroundAuto)
	require.NoError(t, err)
	assert.Same(t, d, g.Levelled)
	assert.Equal(t, GroundNone, g.Found)
}

func TestAPaintedGradientIsNotLevelled(t *testing.T) {
	d, _ := ringPic(160, inks['.'])
	for i, p := range d.Pix { // a slow change of hue all round the ring
		if y := uint32(i / d.W); p == inks['.'] {
			d.Pix[i] = (80 + y) | (200-y/4)<<8 | (230-y/2)<<16 | 0xff000000
		}
	}
	g, err := FindGround(d, GroundAuto)
	require.NoError(t, err)
	assert.Same(t, d, g.Levelled)
}

// A photograph of a drawing has the colours that were drawn, not those of the
// lamp: its paper is taken for white.
func TestALampsColourGoes(t *testing.T) {
	flats := []string{"#d23b2f", "#2a9d8f", "#f4c95d"}
	img := rasterise(480, 480, rgb(t, "#ffffff"), shape{rgb(t, flats[0]), disc(150, 240, 80)},
		shape{rgb(t, flats[1]), disc(330, 160, 70)}, shape{rgb(t, flats[2]), disc(320, 330, 75)})
	for _, fall := range []float64{0.2, 0.4} {
		s, err := analysed(t, byLamp(drawingOf(t, img), fall, 3, 11)).Reduce(Options{Count: 3, RolesOff: true})
		require.NoError(t, err)
		for _, hex := range flats {
			least := math.Inf(1)
			for _, f := range s.Flats {
				least = min(least, colour.CIEDE2000(rgb(t, hex).Lab(), f.RGB.Lab()))
			}
			assert.Less(t, least, 2.0, "%s under a lamp that falls by %g", hex, fall)
		}
	}
}
