package calls

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/wasm/wire"
)

// halves draws the lines of a roundel and its colours, which run on under them.
func halves(px int) (lines, colours []byte) {
	lines, colours = make([]byte, 4*px*px), make([]byte, 4*px*px)
	mid, r := float64(px)/2, 0.45*float64(px)
	for i := range px * px {
		x, y := float64(i%px)+0.5-mid, float64(i/px)+0.5-mid
		d := math.Hypot(x, y)
		ring := min(r-d, d-(r-9)) // how far inside the ring, px
		bar := min(4.5-math.Abs(x), r-d)
		copy(lines[4*i:], []byte{20, 24, 40, byte(255 * min(1, max(0, max(ring, bar)+0.5)))})
		if d < r-4 {
			copy(colours[4*i:], []byte{200, 40, 40, 255})
			if x > 0 {
				copy(colours[4*i:], []byte{240, 220, 180, 255})
			}
		}
	}
	return lines, colours
}

func TestTwoPicturesAreOneDrawing(t *testing.T) {
	s := NewSession()
	lines, colours := halves(200)
	request := wire.OpenAsk{ID: "a", FileName: "sea_roundel-lines.png", W: 200, H: 200, FileW: 200, FileH: 200, Space: "srgb", Ground: reduce.GroundAuto,
		Second: &wire.SecondPicture{FileName: "sea_roundel-colours.png", FileW: 200, FileH: 200, Space: "srgb"}}
	o, _ := ask[wire.Opened](t, s, "open", request, append(append([]byte{}, lines...), colours...))
	assert.True(t, o.Layers)
	assert.True(t, o.Lined)
	assert.Equal(t, 2, o.Suggested)
	assert.Contains(t, o.Reason, "lines of their own")
	assert.Equal(t, "Sea roundel", o.Design.Name)

	ground, _ := ask[wire.Opened](t, s, "ground", wire.GroundAsk{Drawing: "a", Ground: reduce.GroundClear}, nil)
	assert.True(t, ground.Layers, "still two pictures on another ground")

	request.Second.FileW = 300
	text, err := json.Marshal(request)
	require.NoError(t, err)
	_, err = s.Do("open", text, Job{Bytes: append(append([]byte{}, lines...), colours...)})
	assert.ErrorContains(t, err, "one size")
}

func TestNameOfBoth(t *testing.T) {
	for _, c := range [][3]string{
		{"sea-buoy-lines.png", "sea-buoy-colours.png", "Sea buoy"},
		{"lines.png", "colours.png", "Lines"},
		{"tower_1.png", "tower_2.png", "Tower"},
		{"a.png", "b.png", "A"},
		{"", "", "Untitled"},
	} {
		assert.Equal(t, c[2], nameOfBoth(c[0], c[1]))
	}
}
