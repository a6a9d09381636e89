package sight

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
)

// seen is the middle of a framed area of one flat with a finish, as struck.
func seen(t *testing.T, role reduce.Role, f sizing.Finish) (mean colour.RGB8, spread float64) {
	t.Helper()
	look := Look{Plating: sizing.Platings()[0], Fill: sizing.Soft, Side: Front, LongSide: 600, Finish: Finish{1: f}}
	im, err := Struck(framed(0x2a5f9d, role), look, nil)
	require.NoError(t, err)
	mean = meanOf(im, 200, 200, 400, 400)
	for y := 200; y < 400; y++ {
		for x := 200; x < 400; x++ {
			p := im.Pix[y*im.W+x]
			spread += colour.CIEDE2000(colour.RGB8{R: uint8(p), G: uint8(p >> 8), B: uint8(p >> 16)}.Lab(), mean.Lab()) / 40000
		}
	}
	return mean, spread
}

// Every finish is seen to be one, and is still that colour.
func TestFinishesAreSeen(t *testing.T) {
	plain, even := seen(t, reduce.Enamel, sizing.Plain)
	for _, f := range sizing.Finishes(reduce.Enamel)[1:] {
		mean, spread := seen(t, reduce.Enamel, f)
		apart := colour.CIEDE2000(plain.Lab(), mean.Lab())
		assert.Greater(t, max(apart, spread-even), 1.5, "%s", f)
		assert.Less(t, apart, 16.0, "%s: %s for %s", f, mean.Hex(), plain.Hex())
	}
	smooth, flat := seen(t, reduce.Metal, sizing.Plain)
	for _, f := range sizing.Finishes(reduce.Metal)[1:] {
		mean, spread := seen(t, reduce.Metal, f)
		assert.Greater(t, spread, flat+1, "%s", f)
		assert.Less(t, colour.CIEDE2000(smooth.Lab(), mean.Lab()), 16.0, "%s", f)
	}
}

// Metal has no glitter and a fill is not sandblasted.
func TestAFinishOfAnotherRoleIsNone(t *testing.T) {
	for role, f := range map[reduce.Role]sizing.Finish{reduce.Metal: sizing.Glitter, reduce.Enamel: sizing.Sandblasted, reduce.Printed: sizing.Pearl} {
		plain, _ := seen(t, role, sizing.Plain)
		mean, _ := seen(t, role, f)
		assert.Equal(t, plain, mean, "%s on %s", f, role)
	}
}
