package reduce

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

// slowMosaic is the flat drawing in blocks, pixel by pixel: enamel in its flat's
// colour, the rest as drawn.
func slowMosaic(a *Analysis, s *Separation, block int, ground colour.RGB8, flat bool) []colour.Linear {
	bw, bh := (s.W+block-1)/block, (s.H+block-1)/block
	out := make([]colour.Linear, bw*bh)
	part := 1 / float64(block*block)
	is := func(l uint8) bool { return l != None && s.Flats[l].Role == Enamel }
	for y := range bh * block {
		for x := range bw * block {
			c := ground.Linear()
			if i := y*s.W + x; x < s.W && y < s.H && s.Labels[i] != None {
				p := a.pix[i]
				c = colour.RGB8{R: uint8(p), G: uint8(p >> 8), B: uint8(p >> 16)}.Linear()
				if flat && is(s.Labels[i]) && is(s.Beside[i]) {
					f, g, t := s.Flats[s.Labels[i]].RGB.Linear(), s.Flats[s.Beside[i]].RGB.Linear(), float64(s.Cover[i])/255
					c = colour.Linear{R: t*f.R + (1-t)*g.R, G: t*f.G + (1-t)*g.G, B: t*f.B + (1-t)*g.B}
				}
			}
			o := &out[y/block*bw+x/block]
			o.R, o.G, o.B = o.R+c.R*part, o.G+c.G*part, o.B+c.B*part
		}
	}
	return out
}

func TestMosaicAgainstThePixels(t *testing.T) {
	ground := colour.RGB8{R: 62, G: 82, B: 112}
	for name, d := range map[string]*Drawing{"lined": buoy(t, 150), "lineless": harbour(t, 130), "painting": painting()} {
		a := analysed(t, d)
		for _, block := range []int{1, 4, 7} {
			m := a.Mosaic(nil, block, ground)
			drawn := slowMosaic(a, at(t, a, 3), block, ground, false)
			require.Len(t, m.R, len(drawn), name)
			for i, c := range drawn {
				require.InDelta(t, c.G, float64(m.G[i]), 1e-4, "%s, block %d", name, block)
			}
			for _, count := range []int{1, 3, 6} {
				r, g, b := m.Flat(count)
				for i, c := range slowMosaic(a, at(t, a, count), block, ground, true) {
					require.InDelta(t, c.R, float64(r[i]), 2e-4, "%s, %d colours, block %d", name, count, block)
					require.InDelta(t, c.G, float64(g[i]), 2e-4)
					require.InDelta(t, c.B, float64(b[i]), 2e-4)
				}
			}
		}
		most := float32(0)
		for _, e := range a.Mosaic(nil, 5, ground).Enamel {
			most = max(most, e)
		}
		assert.InDelta(t, 1, most, 1e-4, name)
	}
}
