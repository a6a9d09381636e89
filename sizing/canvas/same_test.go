package canvas

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/ink"
)

// sumOf is a checksum of a sheet's pixels.
func sumOf(t *testing.T, s *ink.Sheet) string {
	t.Helper()
	file, err := s.PNG(0, nil)
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	read, ok := img.(*image.NRGBA)
	require.True(t, ok)
	sum := sha256.Sum256(read.Pix)
	return hex.EncodeToString(sum[:8])
}

// These tests run natively and in WebAssembly: the pictures are the same to the
// bit. A change of how they look changes the sums; look at them first.
func TestPicturesAreTheSameOnEveryMachine(t *testing.T) {
	p := planned(23.7, sizing.Struck, sizing.Hard)
	p.W, p.H = 700, 530
	c := laidOut(t, p)
	assert.Equal(t, "10c3f8bbe11a74ad", sumOf(t, p.Guide(c, false).Sheet))
	spots := []sizing.Finding{
		thinLine(20, 30, 170, 140), thinLine(160, 20, 30, 150),
		{Kind: sizing.SmallArea, Verdict: sizing.CannotTell, Count: 1, X: 260, Y: 150, X0: 240, Y0: 140, X1: 290, Y1: 157},
	}
	assert.Equal(t, "1c101c4509052fb4", sumOf(t, Marks(Art{W: 613, H: 479, KX: 1.53, KY: 1.6, Scale: 9.7}, spots)))
}
