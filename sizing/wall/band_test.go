package wall

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A band holds what the whole raster, measured, would give it.
func TestABandHoldsAllThatIsNear(t *testing.T) {
	listed := 0
	for _, s := range drawings() {
		b := NewBuilder(s)
		for _, find := range []func(int) []inBand{b.findRim, b.findSeams} {
			want := find(2 * (s.W + s.H))
			for _, reach := range []float64{0.5, 2.3, 9} {
				var k band
				got := map[int32]int32{}
				for _, p := range k.within(reach, find) {
					got[p.i] = p.d
				}
				for _, p := range want {
					d, ok := got[p.i]
					require.True(t, ok || p.d >= steps(k.reach), "%d of %d x %d, %d steps away, for %g px", p.i, s.W, s.H, p.d, reach)
					require.True(t, !ok || d == p.d)
					delete(got, p.i)
				}
				require.Empty(t, got)
				require.GreaterOrEqual(t, k.reach, reach)
			}
			listed += len(want)
		}
	}
	require.Greater(t, listed, 10000)
}

func TestABandIsFoundAnewOnlyForMore(t *testing.T) {
	var k band
	var asked []int
	find := func(reach int) []inBand {
		asked = append(asked, reach)
		return nil
	}
	for _, reach := range []float64{10, 12, 3, 40, 10} {
		k.within(reach, find)
	}
	require.Len(t, asked, 2)
	require.Less(t, asked[0], asked[1])
}
