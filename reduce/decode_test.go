//go:build !js

package reduce

import (
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestOrientationsAreThoseOfEXIF(t *testing.T) {
	// A picture shown as F, stored in each of the eight ways EXIF 2.32 lists.
	shown := []string{"###", "#..", "##.", "#..", "#.."}
	stored := map[int][]string{
		1: {"###", "#..", "##.", "#..", "#.."},
		2: {"###", "..#", ".##", "..#", "..#"},
		3: {"..#", "..#", ".##", "..#", "###"},
		4: {"#..", "#..", "##.", "#..", "###"},
		5: {"#####", "#.#..", "#...."},
		6: {"#....", "#.#..", "#####"},
		7: {"....#", "..#.#", "#####"},
		8: {"#####", "..#.#", "....#"},
	}
	want := draw(t, 1, shown...)
	for o, rows := range stored {
		got := turn(draw(t, 1, rows...), o)
		assert.Equal(t, [2]int{want.W, want.H}, [2]int{got.W, got.H}, "orientation %d", o)
		assert.Equal(t, want.Pix, got.Pix, "orientation %d", o)
	}
}

func TestFromImageTakesEveryKind(t *testing.T) {
	r := image.Rect(3, 5, 5, 6)
	soft := color.NRGBA{R: 200, G: 100, B: 50, A: 128}
	for name, img := range map[string]interface {
		image.Image
		Set(x, y int, c color.Color)
	}{"straight": image.NewNRGBA(r), "premultiplied": image.NewRGBA(r), "16 bit": image.NewNRGBA64(r),
		"palette": image.NewPaletted(r, color.Palette{color.Transparent, soft})} {
		img.Set(4, 5, soft)
		d := fromImage(img)
		require.Equal(t, 2, d.W, name)
		for c, want := range []float64{200, 100, 50, 128} {
			assert.InDelta(t, want, float64(d.Pix[1]>>(8*c)&255), 1, name)
		}
		assert.Zero(t, d.Pix[0]>>24, name)
	}
}
