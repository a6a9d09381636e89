//go:build !js

package main

import (
	"image"
	"image/color"
	"image/png"
	"os"

	"badgewright/reduce"
	"badgewright/wasm/calls"
	"badgewright/wasm/wire"
)

// write saves the pictures that a line asks for.
func (d *desk) write(r *request, reply calls.Reply) error {
	if r.Out != "" {
		return keep(r.Out, reply.Bytes)
	}
	switch a := reply.Answer.(type) {
	case wire.Flats:
		if r.Labels != "" {
			if err := save(r.Labels, &image.Gray{Pix: reply.Bytes, Stride: a.W, Rect: image.Rect(0, 0, a.W, a.H)}); err != nil {
				return err
			}
		}
		if r.Reduced != "" {
			return save(r.Reduced, reducedImage(a, reply.Bytes))
		}
	case wire.Picture:
		if r.PNG != "" {
			return save(r.PNG, &image.NRGBA{Pix: reply.Bytes, Stride: 4 * a.W, Rect: image.Rect(0, 0, a.W, a.H)})
		}
	case wire.PNGFile:
		if r.PNG != "" {
			return keep(r.PNG, reply.Bytes)
		}
	}
	return nil
}

// reducedImage paints each pixel in its flat's colour; the background is clear.
func reducedImage(f wire.Flats, labels []byte) image.Image {
	img := image.NewNRGBA(image.Rect(0, 0, f.W, f.H))
	for i, l := range labels {
		if l == reduce.None {
			continue
		}
		c := f.Flats[l].RGB
		img.SetNRGBA(i%f.W, i/f.W, color.NRGBA{R: c.R, G: c.G, B: c.B, A: 255})
	}
	return img
}

// keep writes a file that is one already.
func keep(path string, file []byte) error {
	if err := os.WriteFile(path, file, 0o644); err != nil {
		return &reduce.Refusal{What: "This picture cannot be written: " + err.Error() + ".", Do: "Check the path."}
	}
	return nil
}

func save(path string, img image.Image) error {
	f, err := os.Create(path)
	if err != nil {
		return &reduce.Refusal{What: "This picture cannot be written: " + err.Error() + ".", Do: "Check the path."}
	}
	if err := png.Encode(f, img); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}
