package sheet

import (
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/trace"
	"badgewright/sizing/unit"
)

// drawn is a badge drawn from letters, one a block of k x k px: r, b enamel, #
// metal, o cut-out, . outside. Each block is one mm.
func drawn(t require.TestingT, k int, rows ...string) (*sizing.Badge, *trace.Shapes) {
	label := map[byte]uint8{'r': 0, 'b': 1, '#': 2, 'o': 3, '.': reduce.None}
	s := reduce.NewSeparation(len(rows[0])*k, len(rows)*k)
	s.Flats = []reduce.Flat{
		{ID: 10, Name: "red", Role: reduce.Enamel, RGB: colour.RGB8{R: 200, G: 30, B: 40}},
		{ID: 11, Name: "blue", Role: reduce.Enamel, RGB: colour.RGB8{R: 70, G: 130, B: 180}},
		{ID: 12, Name: "gold", Role: reduce.Metal, RGB: colour.RGB8{R: 210, G: 170, B: 70}},
		{ID: 13, Name: "hole", Role: reduce.CutOut},
	}
	for i := range s.Labels {
		l := label[rows[i/s.W/k][i%s.W/k]]
		s.Labels[i], s.Beside[i], s.Cover[i] = l, l, 255
	}
	box, ok := sizing.Outline(s)
	require.True(t, ok)
	b := &sizing.Badge{Sep: s, Scale: unit.PxPerMM(k), Outline: box}
	sh, err := trace.Trace(b, 0, nil)
	require.NoError(t, err)
	return b, sh
}

// keepsake has two enamels, a hole, and no symmetry: left and right cannot be
// taken for each other.
var keepsake = []string{
	"..............",
	".############.",
	".#rrrr##bbbb#.",
	".#rrrr##bbbb#.",
	".#rrrr###oo##.",
	".#rrrr###oo##.",
	".############.",
	".####.........",
	"..............",
}

func plainLook() Look {
	return Look{Metal: colour.RGB8{R: 210, G: 170, B: 70}, Paint: func(f *trace.Face) colour.RGB8 { return f.RGB }}
}
