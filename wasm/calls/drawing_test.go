package calls

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/wasm/wire"
)

// onPaper lays straight-alpha pixels on cream paper.
func onPaper(pix []byte) []byte {
	paper := [3]int{250, 246, 236}
	for i := 0; i < len(pix); i += 4 {
		a := int(pix[i+3])
		for k := range 3 {
			pix[i+k] = byte((int(pix[i+k])*a + paper[k]*(255-a) + 127) / 255)
		}
		pix[i+3] = 255
	}
	return pix
}

func TestThumbnailsShowTheDrawingAsBrought(t *testing.T) {
	s := NewSession()
	_, _ = opening(t, s, 400, 10)
	a, pix := ask[wire.Thumbnail](t, s, "thumbnail", wire.ThumbnailAsk{Drawing: "a", LongSide: 160}, nil)
	assert.Equal(t, wire.Thumbnail{W: 160, H: 160, Clear: true, Words: "The drawing as brought, on a transparent background"}, a)
	require.Len(t, pix, 4*160*160)
	at := func(x, y int) []byte { return pix[4*(y*160+x) : 4*(y*160+x)+4] }
	assert.Equal(t, []byte{0, 0, 0, 0}, at(1, 1), "the background is left clear")
	assert.Equal(t, []byte{200, 40, 40, 255}, at(50, 80), "the red half")
	assert.Equal(t, []byte{240, 220, 180, 255}, at(110, 80), "the cream half")

	o := wire.OpenAsk{ID: "b", FileName: "on_paper.jpg", W: 400, H: 400, FileW: 400, FileH: 400, Space: "srgb", Ground: reduce.GroundAuto}
	ask[wire.Opened](t, s, "open", o, onPaper(roundel(400, 10)))
	b, pix := ask[wire.Thumbnail](t, s, "thumbnail", wire.ThumbnailAsk{Drawing: "b", LongSide: 160}, nil)
	assert.False(t, b.Clear)
	assert.Regexp(t, `^The drawing as brought, on paper: .*white`, b.Words)
	assert.Equal(t, []byte{250, 246, 236, 255}, pix[:4], "the paper is shown as paper")
}

func TestASmallDrawingIsItsOwnThumbnail(t *testing.T) {
	s := NewSession()
	_, _ = opening(t, s, 100, 5)
	a, pix := ask[wire.Thumbnail](t, s, "thumbnail", wire.ThumbnailAsk{Drawing: "a", LongSide: 160}, nil)
	assert.Equal(t, 100, a.W)
	assert.Equal(t, roundel(100, 5), pix)
}

func TestThumbnailsOutOfBoundsAreRefused(t *testing.T) {
	s := NewSession()
	_, _ = opening(t, s, 100, 5)
	for _, text := range []string{`{"drawing":"a","longSide":4}`, `{"drawing":"a","longSide":4000}`, `{"drawing":"gone","longSide":160}`} {
		_, err := s.Do("thumbnail", []byte(text), Job{})
		assert.Error(t, err, text)
	}
}
