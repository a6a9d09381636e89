package calls

import (
	"bytes"
	"encoding/json"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/proof"
	"badgewright/wasm/wire"
)

// sheetOf is a white sheet with a roundel half as large again on it, its pale half
// in another colour.
func sheetOf(px int, pale [3]byte) (side int, out []byte) {
	big := px * 3 / 2
	pin := roundel(big, 12)
	side = big + 120
	out = bytes.Repeat([]byte{255}, 4*side*side)
	for y := range big {
		for x := range big {
			p := pin[4*(y*big+x):][:4]
			q := out[4*((y+40)*side+x+70):][:4]
			a := int(p[3])
			for k := range 3 {
				v := int(p[k])
				if p[0] > 230 {
					v = int(pale[k])
				}
				q[k] = byte((v*a + 255*(255-a)) / 255)
			}
		}
	}
	return side, out
}

// TestAProofIsHeldAgainstThePin goes the way of the page: opened, laid, compared,
// looked at, marked, and held against the next round.
func TestAProofIsHeldAgainstThePin(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	p.Project.Order.Designs[0].Size = sizing.Size{MM: 30, By: sizing.ByLongest}
	of := handing(t, s, p)

	side, pix := sheetOf(300, [3]byte{196, 214, 180})
	l, _ := ask[wire.ProofLaid](t, s, "proofopen", wire.ProofOpenAsk{Of: of, W: side, H: side}, pix)
	require.Len(t, l.Spots, 1)
	assert.Equal(t, 1, l.Chosen)
	assert.True(t, l.Fit.Good, l.Fit.Words)
	assert.InDelta(t, 1.5*9, l.Fit.PerMM, 0.05, "a roundel of 270 px at 30 mm, half as large again")
	assert.Len(t, l.Corners, 3)

	said := proof.Said{Size: sizing.Size{MM: 27, By: sizing.ByLongest}}
	r, _ := ask[proof.HeldAgainst](t, s, "proofdiff", wire.ProofDiffAsk{Of: of, Proof: l.Proof, Said: said}, nil)
	require.Len(t, r.Differences, 2, "%+v", r.Differences)
	assert.Equal(t, proof.SizeStated, r.Differences[0].Kind)
	assert.Equal(t, proof.AreaRecoloured, r.Differences[1].Kind)
	assert.Equal(t, "#c4d6b4", r.Differences[1].ShownRGB.Hex())

	for _, view := range []wire.ProofView{wire.ProofShown, wire.ProofAsked} {
		pic, seen := ask[wire.Picture](t, s, "prooflook", wire.ProofLookAsk{Of: of, Proof: l.Proof, View: view, LongSide: 200}, nil)
		assert.Len(t, seen, 4*pic.W*pic.H)
	}
	f, file := ask[wire.PNGFile](t, s, "proofmarks", wire.ProofMarksAsk{Of: of, Proof: l.Proof, Differences: r.Differences, Name: "Sea roundel"}, nil)
	assert.Equal(t, "sea-roundel-proof-marked.png", f.FileName)
	img, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	assert.Equal(t, side, img.Bounds().Dx())

	side, pix = sheetOf(300, [3]byte{240, 220, 180})
	l2, _ := ask[wire.ProofLaid](t, s, "proofopen", wire.ProofOpenAsk{Of: of, W: side, H: side}, pix)
	r2, _ := ask[proof.HeldAgainst](t, s, "proofdiff", wire.ProofDiffAsk{Of: of, Proof: l2.Proof, Said: said}, nil)
	rounds, _ := ask[wire.ProofPairs](t, s, "proofpairs", wire.ProofPairsAsk{Of: of, First: r.Differences, Other: r2.Differences}, nil)
	assert.Equal(t, "1 done, 1 still open, 0 new in this round.", rounds.Words)

	by := wire.ProofHow{Pin: l.Corners, Picture: l.PictureCorners}
	hand, _ := ask[wire.ProofLaid](t, s, "prooffit", wire.ProofFitAsk{Of: of, Proof: l.Proof, How: by}, nil)
	assert.Equal(t, 0, hand.Chosen)
	assert.True(t, hand.Fit.Good, hand.Fit.Words)
}

func TestAProofThatIsNotOpenIsGone(t *testing.T) {
	s := NewSession()
	text, err := json.Marshal(wire.ProofFitAsk{Of: "a", Proof: "b"})
	require.NoError(t, err)
	_, err = s.Do("prooffit", text, Job{})
	require.Error(t, err)
	assert.Equal(t, wire.Gone, FailureOf(err).Kind)
}
