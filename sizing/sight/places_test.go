package sight

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
)

// A place is outlined and hatched where it is, also outside the pin; the pin
// shows between the strokes.
func TestPlaces(t *testing.T) {
	b := paint(40, 40, []reduce.Flat{flat(4, reduce.Enamel, 0xc80000)}, func(x, y float64) uint8 {
		if x < 0.5 && y > 0.25 {
			return 0
		}
		return reduce.None
	})
	at := make([]bool, 40*40)
	for y := 10; y < 30; y++ {
		for x := 12; x < 36; x++ {
			at[y*40+x] = true
		}
	}
	im := Places(b, 520, at)
	kinds := map[uint32]int{}
	for i, p := range im.Pix {
		x, y := (float64(i%im.W)+0.5-im.DX)/im.Scale, (float64(i/im.W)+0.5-im.DY)/im.Scale
		switch rim := min(x-12, 36-x, y-10, 30-y); {
		case rim < -0.2:
			require.Zero(t, p>>24, "at %g, %g", x, y)
		case rim > 0.1 && rim < 0.2 && (x > 14 && x < 34 || y > 12 && y < 28): // corners come out a little round
			require.EqualValues(t, 255, p>>24, "an outline at %g, %g", x, y)
		case rim > 1:
			kinds[p]++
		}
	}
	assert.Len(t, kinds, 3, "white, dark and clear: %v", kinds)
	assert.Greater(t, kinds[0], kinds[0xffffffff]+kinds[0xff000000], "more of the pin than of the mark")
	assert.GreaterOrEqual(t, float64(36)*im.Scale+im.DX, 0.0)
	assert.LessOrEqual(t, float64(36)*im.Scale+im.DX, float64(im.W), "what lies outside the pin is in the frame")
	for _, p := range Places(b, 200, make([]bool, 40*40)).Pix {
		require.Zero(t, p)
	}
}
