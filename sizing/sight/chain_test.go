package sight

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
)

// A ring that goes through the edge of a plate is seen before it on one side and
// hidden behind it on the other, and the other way round on the back; off the
// plate all of it is seen.
func TestARingGoesThroughThePin(t *testing.T) {
	b := paint(200, 20, []reduce.Flat{flat(0, reduce.Enamel, 0x2f7f7b)}, func(x, y float64) uint8 {
		if y < 0.5 || y > 0.9 {
			return 0
		}
		return reduce.None
	})
	ring := sizing.Loop{X: 100, Y: 100, Long: 60, Wide: 60, Wire: 8, Angle: math.Pi / 2, Ring: true}
	look := Look{Plating: sizing.Platings()[0], Fill: sizing.Soft, LongSide: 600}
	for _, side := range []Side{Front, Back} {
		look.Side, look.Chain = side, nil
		bare, err := Struck(b, look, nil)
		require.NoError(t, err)
		look.Chain = []sizing.Loop{ring}
		hung, err := Struck(b, look, nil)
		require.NoError(t, err)
		// Places on the wire at an angle, from the right round downwards.
		changes := func(degrees float64) bool {
			sin, cos := math.Sincos(degrees * math.Pi / 180)
			x := (100 + 26*cos) * hung.Scale
			if side == Back {
				x = (b.Outline[0] + b.Outline[2] - 100 - 26*cos) * hung.Scale
			}
			i := int((100+26*sin)*hung.Scale+hung.DY)*hung.W + int(x+hung.DX)
			return hung.Pix[i] != bare.Pix[i]
		}
		// It hangs down, so its left half is to the right as one looks at it.
		assert.Equal(t, side == Front, changes(-30), "%s: right, on the plate", side)
		assert.Equal(t, side == Back, changes(-150), "%s: left, on the plate", side)
		assert.True(t, changes(30) && changes(150) && changes(80), "%s: off the plate", side)
		assert.False(t, hung.Pix[len(hung.Pix)/2+hung.W/2] != bare.Pix[len(bare.Pix)/2+hung.W/2], "through the middle one sees")
	}
}
