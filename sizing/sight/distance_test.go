package sight

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// coverBy gives the cover of each pixel by a signed distance, from 16 x 16
// places in it.
func coverBy(w, h int, at func(x, y float64) float64) []float32 {
	out := make([]float32, w*h)
	for i := range out {
		var in int
		for k := 0; k < 256; k++ {
			if at(float64(i%w)+(float64(k%16)+0.5)/16, float64(i/w)+(float64(k/16)+0.5)/16) > 0 {
				in++
			}
		}
		out[i] = float32(in) / 256
	}
	return out
}

// TestEdgeDistanceMeetsGeometry holds the distances to the exact ones of a
// disc and of slanted bars.
func TestEdgeDistanceMeetsGeometry(t *testing.T) {
	const w, h, far = 61, 57, 20
	shapes := map[string]func(x, y float64) float64{
		"disc":    func(x, y float64) float64 { return 17.3 - math.Hypot(x-30.2, y-28.7) },
		"upright": func(x, y float64) float64 { return 9.3 - math.Abs(x-30.6) },
		"steep":   func(x, y float64) float64 { return 9.3 - math.Abs((x-30.6)*0.995+(y-28)*0.0998) },
		"oblique": func(x, y float64) float64 { return 9.3 - math.Abs((x-30.6)*0.8+(y-28)*0.6) },
	}
	for name, at := range shapes {
		d := edgeDistance(coverBy(w, h, at), w, h, far)
		for y := 4; y < h-4; y++ {
			for x := 4; x < w-4; x++ {
				want := at(float64(x)+0.5, float64(y)+0.5)
				// The middle of a shape is a ridge, which is evened on purpose;
				// near the frame the shape is cut off.
				if want > 7 || want < -6 {
					continue
				}
				require.InDelta(t, want, float64(d[y*w+x]), 0.2, "%s at (%d, %d)", name, x, y)
			}
		}
	}
}

func TestEdgeDistanceWithoutAnEdge(t *testing.T) {
	for _, c := range []float32{0, 1} {
		cover := []float32{c, c, c, c, c, c}
		for _, v := range edgeDistance(cover, 3, 2, 7) {
			require.Equal(t, 14*c-7, v)
		}
	}
}

func TestARoundedWallRisesAndLevels(t *testing.T) {
	require.Zero(t, rounded(-1, 4, 2))
	require.Equal(t, float32(4), rounded(4, 4, 2))
	require.Equal(t, float32(4), rounded(9, 4, 2))
	require.Equal(t, float32(3), rounded(2, 4, 2))
}
