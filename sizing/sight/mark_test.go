package sight

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"badgewright/reduce"
	"badgewright/reduce/colour"
)

// What is marked is the flat and nothing else, in its new colour between the
// strokes of the hatching.
func TestMark(t *testing.T) {
	b := paint(20, 20, []reduce.Flat{flat(4, reduce.Enamel, 0xc80000), flat(7, reduce.Enamel, 0x0000c8)}, func(x, _ float64) uint8 {
		if x < 0.5 {
			return 0
		}
		return 1
	})
	as := colour.RGB8{G: 99}
	im := Mark(b, 200, 7, as)
	strokes, plain := 0, 0
	for i, p := range im.Pix {
		u := float64(i%im.W) + 0.5
		switch x := (u - im.DX) / im.Scale; {
		case x < 9.5:
			assert.Zero(t, p>>24, "at %g", x)
		case x > 10.5 && x < 19.5 && p&0xffffff == uint32(as.G)<<8:
			plain++
		case x > 10.5 && x < 19.5 && p>>24 != 0:
			strokes++
		}
	}
	assert.Greater(t, strokes, 0)
	assert.Greater(t, plain, strokes)
}
