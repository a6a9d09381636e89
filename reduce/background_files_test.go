//go:build !js

package reduce

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

const drawings = "../testdata/drawings/"

func openFile(t testing.TB, name string, longSide int) *Drawing {
	t.Helper()
	f, err := os.Open(drawings + name)
	require.NoError(t, err)
	defer f.Close()
	d, err := Decode(f, longSide)
	require.NoError(t, err, name)
	return d
}

func TestHeadersOfRealFiles(t *testing.T) {
	for name, want := range map[string]Header{
		"lighthouse.png":       {Format: "png", W: 1108, H: 1200},
		"lighthouse-white.jpg": {Format: "jpeg", W: 1108, H: 1200},
		"lighthouse.webp":      {Format: "webp", W: 554, H: 600},
		"buoy.avif":            {Format: "avif", W: 264, H: 600},
		"two-frames.gif":       {Format: "gif", W: 160, H: 160},
		"turned.jpg":           {Format: "jpeg", W: 240, H: 160, turn: 6},
		"p3-icc.png":           {Format: "png", W: 352, H: 64, WideProfile: true, displayP3: true},
		"p3-cicp.png":          {Format: "png", W: 352, H: 64, WideProfile: true, displayP3: true},
		"demo/lighthouse.svg":  {Format: "svg", W: 1477, H: 1600},
		"demo/harbour.svg":     {Format: "svg", W: 1347, H: 1600},
		"demo/buoy.svg":        {Format: "svg", W: 704, H: 1600},
	} {
		data, err := os.ReadFile(drawings + name)
		require.NoError(t, err)
		h, err := ReadHeader(filepath.Base(name), int64(len(data)), data)
		require.NoError(t, err, name)
		assert.Equal(t, want, h, name)
	}
	for name, says := range map[string]string{"cut-short.png": "cut short", "no-size.png": "0 x 40 px", "huge.png": "1200 megapixels"} {
		data, err := os.ReadFile(drawings + name)
		require.NoError(t, err)
		_, err = ReadHeader(name, int64(len(data)), data)
		assert.ErrorContains(t, err, says)
	}
}

// The patches hold rows of testdata/reference/display_p3_srgb.csv (CSS Color 4).
func TestWideFilesGiveThePublishedRows(t *testing.T) {
	for _, name := range []string{"p3-icc.png", "p3-cicp.png"} {
		d := openFile(t, name, 0)
		i, outside := 0, 0
		for _, row := range reference(t, "display_p3_srgb.csv") {
			if row["direction"] != "display-p3_to_srgb_unclamped" {
				continue
			}
			p := d.Pix[32*d.W+32*i+16]
			for c, col := range []string{"out_R", "out_G", "out_B"} {
				assert.InDelta(t, min(max(255*number(t, row[col]), 0), 255), float64(p>>(8*c)&255), 2, "%s patch %d", name, i)
			}
			if row["in_srgb_gamut"] == "false" {
				outside++
			}
			i++
		}
		assert.InDelta(t, float64(outside)/float64(i), d.Clipped, 1e-9, name)
	}
}

func TestTurnedFileIsUpright(t *testing.T) {
	d := openFile(t, "turned.jpg", 0)
	assert.Equal(t, [2]int{240, 160}, [2]int{d.W, d.H})
	assert.Less(t, apart(d.Pix[40*d.W+60], colour.RGB8{R: 0xd9, G: 0x46, B: 0x3e}), 12, "red at the upper left")
	assert.Less(t, apart(d.Pix[100*d.W+120], colour.RGB8{R: 0x2b, G: 0x5f, B: 0x98}), 12, "blue below")
}

func TestFirstFrameOfAGIF(t *testing.T) {
	d := openFile(t, "two-frames.gif", 0)
	p := d.Pix[124*d.W+80] // the tower's cream foot, where the second frame has teal
	assert.Greater(t, int(p&255), 200)
}

func TestGroundOfRealFiles(t *testing.T) {
	for name, c := range map[string]struct {
		found    GroundChoice
		levelled bool
		share    float64 // of the file that is background, and how surely
		within   float64
	}{
		"lighthouse.png":       {GroundClear, false, 0, 1},
		"harbour.png":          {GroundClear, false, 0, 1},
		"buoy.png":             {GroundClear, false, 0, 1},
		"icon40.png":           {GroundClear, false, 0, 1},
		"to-the-edges.png":     {GroundNone, false, 0, 0},
		"white-on-white.png":   {GroundPaper, false, 0.65, 0.15},
		"dark-ground.png":      {GroundPaper, false, 0.72, 0.1},
		"lines-photo.jpg":      {GroundPaper, true, 0, 1},
		"lighthouse-white.jpg": {GroundPaper, false, 0, 1},
	} {
		t.Run(name, func(t *testing.T) {
			d := openFile(t, name, 0)
			g, err := FindGround(d, GroundAuto)
			require.NoError(t, err)
			assert.Equal(t, c.found, g.Found)
			assert.Equal(t, c.levelled, g.Levelled != d)
			share := float64(len(g.Back)-drawn(g.Back)) / float64(len(g.Back))
			assert.InDelta(t, c.share, share, c.within)
		})
	}
}

// The transparent original says where the paper of its JPEG is.
func TestPaperOfAJPEGMatchesTheTransparencyOfItsOriginal(t *testing.T) {
	clear := openFile(t, "lighthouse.png", 0)
	g, err := FindGround(openFile(t, "lighthouse-white.jpg", 0), GroundAuto)
	require.NoError(t, err)
	assert.Zero(t, disagree(clear, g.Back, 3), "pixels more than 3 px from the outline")
}

// So it does for the photo, which has a margin of 60 px and a smaller scale.
func TestPaperOfAPhotoMatchesTheTransparencyOfItsOriginal(t *testing.T) {
	clear := Shrink(openFile(t, "lighthouse.png", 0), 800)
	photo := openFile(t, "lines-photo.jpg", 0)
	g, err := FindGround(photo, GroundAuto)
	require.NoError(t, err)
	const margin = 60
	back := make([]uint8, clear.W*clear.H)
	for y := range clear.H {
		copy(back[y*clear.W:(y+1)*clear.W], g.Back[(y+margin)*photo.W+margin:])
	}
	assert.LessOrEqual(t, disagree(clear, back, 6), 30, "pixels more than 6 px from the outline")
}

// disagree counts the pixels on the wrong side that have no outline of the
// clear drawing within reach.
func disagree(clear *Drawing, back []uint8, reach int) int {
	n := 0
	solid := func(x, y int) bool {
		return x >= 0 && y >= 0 && x < clear.W && y < clear.H && clear.Pix[y*clear.W+x]>>24 > 127
	}
	for y := range clear.H {
	pixels:
		for x := range clear.W {
			in := solid(x, y)
			if in == (back[y*clear.W+x] == 0) {
				continue
			}
			for dy := -reach; dy <= reach; dy++ {
				for dx := -reach; dx <= reach; dx++ {
					if solid(x+dx, y+dy) != in {
						continue pixels
					}
				}
			}
			n++
		}
	}
	return n
}

func BenchmarkGroundOfFiles(b *testing.B) {
	for _, name := range []string{"lighthouse-white.jpg", "lines-photo.jpg", "lighthouse.png"} {
		d := openFile(b, name, 0)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := FindGround(d, GroundAuto); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
