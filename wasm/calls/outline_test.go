package calls

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/wasm/wire"
)

// twoDiscs are pixels of two discs of one colour on a clear ground, one above
// the other, without a line.
func twoDiscs(w, h int) []byte {
	pix := make([]byte, 4*w*h)
	red := colour.RGB8{R: 0xc8, G: 0x32, B: 0x2e}
	for i := range w * h {
		x, y := float64(i%w)+0.5-float64(w)/2, float64(i/w)+0.5
		up, low := float64(h)*0.27, float64(h)*0.8
		a, b := x*x+(y-up)*(y-up), x*x+(y-low)*(y-low)
		if r := float64(h) * 0.24; a <= r*r || b <= r*r/4 {
			copy(pix[4*i:], []byte{red.R, red.G, red.B, 255})
		}
	}
	return pix
}

func checked(t *testing.T, s *Session, p wire.Picked) wire.Check {
	t.Helper()
	c, _ := ask[wire.Check](t, s, "check", wire.CheckAsk{Picked: p}, nil)
	return c
}

func ofKind(found []sizing.Finding, k sizing.Kind) (all []sizing.Finding) {
	for _, f := range found {
		if f.Kind == k {
			all = append(all, f)
		}
	}
	return all
}

// A part that stands alone is found, and is no trouble once it hangs by eyes or a
// bridge joins it.
func TestALoosePartIsHungOrJoined(t *testing.T) {
	s := NewSession()
	o, _ := ask[wire.Opened](t, s, "open", wire.OpenAsk{ID: "two", FileName: "two.png", W: 400, H: 600, Space: "srgb"}, twoDiscs(400, 600))
	p := wire.Picked{Project: BlankProject()}
	p.Project.Order.Designs = []sizing.Design{o.Design}
	d := &p.Project.Order.Designs[0]
	d.Size = sizeOf(60)
	loose := ofKind(checked(t, s, p).Findings, sizing.LoosePart)
	require.Len(t, loose, 1)
	assert.Equal(t, sizing.Fails, loose[0].Verdict)

	got, _ := ask[wire.PartsChosen](t, s, "parts", wire.PartsAsk{Picked: p, Choice: sizing.PartsDangle}, nil)
	require.True(t, got.Fits)
	require.Len(t, got.Parts.Joins, 1)
	d.Parts = got.Parts
	hung := checked(t, s, p)
	assert.Empty(t, ofKind(hung.Findings, sizing.LoosePart))
	assert.Empty(t, ofKind(hung.Findings, sizing.WeakEye))
	assert.Empty(t, ofKind(hung.Findings, sizing.SmallCutOut))

	d.Parts = sizing.Parts{}
	offers, pictures := ask[wire.Offers](t, s, "offers", wire.OffersAsk{Picked: p, Finding: loose[0], Side: 48}, nil)
	require.Len(t, offers.Offers, 1)
	assert.Len(t, pictures, 2*4*48*48, "as it is, and joined")
	d.Recipes = append(d.Recipes, offers.Offers[0].Recipes...)
	joined := checked(t, s, p)
	assert.Empty(t, ofKind(joined.Findings, sizing.LoosePart))
	assert.Empty(t, ofKind(joined.Findings, sizing.ThinBridge))
	assert.Empty(t, ofKind(joined.Findings, sizing.LongArm), "the bridge is wide enough for what hangs on it")
}

// What fails stands before what is only noted, whoever found it.
func TestFindingsWorstFirst(t *testing.T) {
	found := []sizing.Finding{{X: 1, Verdict: sizing.Holds}, {X: 2, Verdict: sizing.Fails}, {X: 3, Verdict: sizing.CannotTell}, {X: 4, Verdict: sizing.Fails}}
	worstFirst(found)
	assert.Equal(t, []float64{2, 4, 3, 1}, []float64{found[0].X, found[1].X, found[2].X, found[3].X})
}
