//go:build ignore

// Command goquantize answers, for the colour benchmark, JSON lines: a PNG or
// JPEG file and a count in, the palette of the go-quantize module out. Clear
// pixels do not count.
package main

import (
	"bufio"
	"encoding/json"
	"image"
	"image/color"
	_ "image/jpeg"
	_ "image/png"
	"log"
	"os"

	"github.com/ericpauley/go-quantize/quantize"
)

type request struct {
	File  string `json:"file"`
	Count int    `json:"count"`
}

type response struct {
	Palette []uint32 `json:"palette"` // 0xRRGGBB
}

func main() {
	out := json.NewEncoder(os.Stdout)
	lines := bufio.NewScanner(os.Stdin)
	for lines.Scan() {
		var r request
		if err := json.Unmarshal(lines.Bytes(), &r); err != nil {
			log.Fatal(err)
		}
		palette, err := paletteOf(r)
		if err != nil {
			log.Fatal(err)
		}
		if err := out.Encode(response{Palette: palette}); err != nil {
			log.Fatal(err)
		}
	}
}

func paletteOf(r request) ([]uint32, error) {
	f, err := os.Open(r.File)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	img, _, err := image.Decode(f)
	if err != nil {
		return nil, err
	}
	found := quantize.MedianCutQuantizer{}.Quantize(make(color.Palette, 0, r.Count), seen(img))
	out := make([]uint32, len(found))
	for i, c := range found {
		n := color.NRGBAModel.Convert(c).(color.NRGBA)
		out[i] = uint32(n.R)<<16 | uint32(n.G)<<8 | uint32(n.B)
	}
	return out, nil
}

// seen lines up the pixels that are not clear; the method does not ask where they lie.
func seen(img image.Image) image.Image {
	var pix []uint8
	b := img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA)
			if c.A >= 128 {
				pix = append(pix, c.R, c.G, c.B, 255)
			}
		}
	}
	return &image.NRGBA{Pix: pix, Stride: len(pix), Rect: image.Rect(0, 0, len(pix)/4, 1)}
}
