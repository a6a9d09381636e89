//go:build !js

package mend

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/wall"
)

// BenchmarkAll repairs all of the lighthouse at 32 mm, and at 19 mm, where there
// is most to do.
func BenchmarkAll(b *testing.B) {
	f, err := os.Open("../../testdata/drawings/lighthouse.png")
	require.NoError(b, err)
	defer f.Close()
	drawing, err := reduce.Decode(f, reduce.WorkingLongSide)
	require.NoError(b, err)
	g, err := reduce.FindGround(drawing, reduce.GroundAuto)
	require.NoError(b, err)
	a, err := reduce.Analyse(drawing, g, nil)
	require.NoError(b, err)
	count, _ := a.Suggested()
	s, err := a.Reduce(reduce.Options{Count: count})
	require.NoError(b, err)
	box, _ := sizing.Outline(s)
	for _, size := range []sizing.Size{{MM: 32, By: sizing.ByLongest}, {MM: 19, By: sizing.ByLongest}} {
		b.Run(mm(size.MM), func(b *testing.B) {
			d := &Drawing{
				Builder: wall.NewBuilder(s), Scale: sizing.ScaleFor(box, size),
				Limits: sizing.DefaultLimits(sizing.Struck, sizing.Soft),
			}
			for b.Loop() {
				_, err := All(d, nil)
				require.NoError(b, err)
			}
		})
	}
}
