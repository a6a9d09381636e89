package ink

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	red  = color.NRGBA{R: 200, G: 30, B: 20, A: 255}
	half = color.NRGBA{R: 10, G: 200, B: 90, A: 128}
)

// piece is one chunk of a PNG file.
type piece struct {
	name string
	data []byte
}

// chunks takes a file apart as section 5 of the PNG specification (W3C, third
// edition) lays it out: the signature, then length, name, data and CRC-32 of
// name and data (Annex D), in network order.
func chunks(t *testing.T, file []byte) (all []piece) {
	t.Helper()
	require.Equal(t, []byte{137, 80, 78, 71, 13, 10, 26, 10}, file[:8])
	for at := 8; at < len(file); {
		n := int(binary.BigEndian.Uint32(file[at:]))
		body := file[at+4 : at+8+n]
		require.Equal(t, crc32.ChecksumIEEE(body), binary.BigEndian.Uint32(file[at+8+n:]))
		all = append(all, piece{string(body[:4]), body[4:]})
		at += 12 + n
	}
	return all
}

func TestPNGIsAsTheSpecificationSays(t *testing.T) {
	s := &Sheet{W: 300, H: 200}
	s.Bar(10, 10, 100.5, 90.25, red)
	s.Text("Skerry", Point{20, 150}, 30, Left, half)
	file, err := s.PNG(40, nil)
	require.NoError(t, err)
	all := chunks(t, file)
	var names []string
	for _, c := range all {
		names = append(names, c.name)
	}
	assert.Equal(t, []string{"IHDR", "sRGB", "pHYs", "IDAT", "IEND"}, names, "11.2.1 IHDR first, 11.3.4.3 pHYs before IDAT")
	assert.Equal(t, []byte{0, 0, 1, 44, 0, 0, 0, 200, 8, 6, 0, 0, 0}, all[0].data)
	// 40 px to the mm are 40 000 to the metre, which is unit 1.
	assert.Equal(t, []byte{0, 0, 0x9c, 0x40, 0, 0, 0x9c, 0x40, 1}, all[2].data)
	assert.Empty(t, all[4].data)
}

func TestPNGIsReadBackByAnother(t *testing.T) {
	s := &Sheet{W: 700, H: 333} // several strips and several IDAT chunks
	for i := range 40 {
		s.Stroke([][]Point{Ring(float64(17*i), float64(9*i), float64(3*i), 40)}, Line(1.7, color.NRGBA{R: uint8(6 * i), G: 90, B: uint8(255 - 3*i), A: uint8(255 - 2*i)}))
	}
	file, err := s.PNG(0, nil)
	require.NoError(t, err)
	got, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	read, ok := got.(*image.NRGBA)
	require.True(t, ok)
	require.NoError(t, s.each(func(y int, row []byte) error {
		require.Equal(t, row, read.Pix[y*read.Stride:y*read.Stride+4*s.W], "row %d", y)
		return nil
	}))
	for _, c := range chunks(t, file) {
		assert.NotEqual(t, "pHYs", c.name, "without a scale none is claimed")
	}
}

func TestWorkIsStopped(t *testing.T) {
	stop := errors.New("stopped")
	_, err := (&Sheet{W: 10, H: 500}).PNG(0, func(share float64) error {
		if share > 0.2 {
			return stop
		}
		return nil
	})
	assert.ErrorIs(t, err, stop)
	_, err = (&Sheet{W: 0, H: 5}).PNG(0, nil)
	assert.Error(t, err)
}
