package calls

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// lineless is a red field with a blue disc in it, on clear ground: no lines.
func lineless(px int) []byte {
	out := make([]byte, 4*px*px)
	for i := range px * px {
		x, y := float64(i%px)-float64(px)/2, float64(i/px)-float64(px)/2
		switch r := (x*x + y*y) / float64(px*px); {
		case r < 0.04:
			copy(out[4*i:], []byte{43, 95, 152, 255})
		case r < 0.2:
			copy(out[4*i:], []byte{217, 70, 62, 255})
		}
	}
	return out
}

// A drawing without lines has them proposed, shown and said, with their length
// and width at the size; a yes or another size changes what is said, not where.
func TestLinesAreProposedForALinelessDrawing(t *testing.T) {
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "a", FileName: "flat.png", W: 400, H: 400, FileW: 400, FileH: 400, Space: "srgb", Ground: reduce.GroundAuto}, lineless(400))
	require.False(t, o.Lined)
	assert.Equal(t, []sizing.Recipe{{Kind: sizing.OuterEdge, Proposed: true}, {Kind: sizing.BuildLines, Proposed: true}}, o.Design.Recipes)
	p := BlankProject()
	p.Order.Designs = []sizing.Design{o.Design}
	picked := wire.Picked{Project: p}
	d := &picked.Project.Order.Designs[0]
	d.Size = sizeOf(40)
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	require.NotNil(t, check.Proposal)
	says := strings.ReplaceAll(check.Proposal.Words, "\u00a0", " ")
	// Round a disc of 40 mm: 126 mm; round one of 40 x 0.2/0.447 = 17.9 mm: 56 mm.
	assert.Contains(t, says, "126 mm round the outside, 0.3 mm wide; 56 mm between colours, 0.2 mm wide.")
	assert.Len(t, check.Proposal.Lines, 2)

	_, asked := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: picked, View: wire.ViewStruck, LongSide: 200}, nil)
	d.Recipes[0].Proposed, d.Recipes[1].Width = false, 0.5
	check, _ = ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	assert.Len(t, check.Proposal.Lines, 1)
	assert.NotContains(t, check.Proposal.Words, "outside")
	assert.Contains(t, strings.ReplaceAll(check.Proposal.Words, "\u00a0", " "), "56 mm between colours, 0.5 mm wide")
	d.Recipes[1] = sizing.Recipe{Kind: sizing.BuildLines}
	check, _ = ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: picked}, nil)
	assert.Nil(t, check.Proposal)
	_, kept := ask[wire.Picture](t, s, "picture", wire.PictureAsk{Picked: picked, View: wire.ViewStruck, LongSide: 200}, nil)
	assert.Equal(t, asked, kept, "a yes changes no pixel")
}

func TestNothingIsProposedForALinedDrawing(t *testing.T) {
	s := NewSession()
	o, p := opening(t, s, 300, 8)
	require.True(t, o.Lined)
	for _, r := range o.Design.Recipes {
		assert.False(t, r.Proposed)
	}
	check, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	assert.Nil(t, check.Proposal)
}
