//go:build !js

package reduce

import (
	"bytes"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"

	"golang.org/x/image/webp"
)

// Decode reads a whole picture (PNG, JPEG, WebP or GIF, first frame) and brings
// its long side down to longSide pixels; 0 keeps its size. In the browser the
// browser decodes; this serves native calls and tests. EXIF rotation and
// Display-P3 are honoured; of other wide profiles the numbers are taken as sRGB.
func Decode(r io.Reader, longSide int) (*Drawing, error) {
	data, err := io.ReadAll(io.LimitReader(r, MostBytes+1))
	if err != nil {
		return nil, &Refusal{What: "The file cannot be read: " + err.Error() + ".", Do: "Try again."}
	}
	h, err := ReadHeader("", int64(len(data)), data)
	if err != nil {
		return nil, err
	}
	img, err := decodeAs(h.Format, data)
	if err != nil {
		return nil, err
	}
	d := turn(fromImage(img), h.turn)
	if h.displayP3 {
		d.Clipped = FromDisplayP3(d.Pix)
	}
	if longSide > 0 {
		d = Shrink(d, longSide)
	}
	return d, nil
}

func decodeAs(format string, data []byte) (image.Image, error) {
	read := map[string]func(io.Reader) (image.Image, error){
		"png": png.Decode, "jpeg": jpeg.Decode, "webp": webp.Decode, "gif": gif.Decode,
	}[format]
	if read == nil {
		return nil, &Refusal{What: "SVG and AVIF are drawn by the browser, which is not at hand here.", Do: "Export the drawing as PNG."}
	}
	img, err := read(bytes.NewReader(data))
	if err != nil {
		return nil, &Refusal{What: "The picture is damaged: " + err.Error() + ".", Do: "Export it again."}
	}
	return img, nil
}

// fromImage takes the pixels over with straight alpha.
func fromImage(img image.Image) *Drawing {
	b := img.Bounds()
	d := &Drawing{W: b.Dx(), H: b.Dy(), FileW: b.Dx(), FileH: b.Dy(), Pix: make([]uint32, b.Dx()*b.Dy())}
	at := pixelsOf(img)
	for y := range d.H {
		for x := range d.W {
			c := at(b.Min.X+x, b.Min.Y+y)
			d.Pix[y*d.W+x] = uint32(c.R) | uint32(c.G)<<8 | uint32(c.B)<<16 | uint32(c.A)<<24
		}
	}
	return d
}

// pixelsOf returns how to read one pixel; the common kinds avoid the general way.
func pixelsOf(img image.Image) func(x, y int) color.NRGBA {
	switch m := img.(type) {
	case *image.NRGBA:
		return m.NRGBAAt
	case *image.YCbCr:
		return func(x, y int) color.NRGBA {
			c := m.YCbCrAt(x, y)
			r, g, b := color.YCbCrToRGB(c.Y, c.Cb, c.Cr)
			return color.NRGBA{R: r, G: g, B: b, A: 255}
		}
	case *image.Paletted:
		var palette [256]color.NRGBA
		for i, c := range m.Palette {
			palette[i] = color.NRGBAModel.Convert(c).(color.NRGBA)
		}
		return func(x, y int) color.NRGBA { return palette[m.ColorIndexAt(x, y)] }
	}
	return func(x, y int) color.NRGBA { return color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA) }
}

// turn brings a picture upright (EXIF 2.32, tag 0x0112): 2 to 4 mirror or turn
// it on its feet, 5 to 8 swap its sides.
func turn(d *Drawing, orientation int) *Drawing {
	if orientation < 2 || orientation > 8 {
		return d
	}
	w, h := d.W, d.H
	t := &Drawing{W: w, H: h, FileW: d.FileW, FileH: d.FileH, Pix: make([]uint32, len(d.Pix))}
	if orientation >= 5 {
		t.W, t.H, t.FileW, t.FileH = h, w, d.FileH, d.FileW
	}
	for y := range h {
		for x := range w {
			tx, ty := turned(x, y, w, h, orientation)
			t.Pix[ty*t.W+tx] = d.Pix[y*w+x]
		}
	}
	return t
}

// turned says where a stored pixel is shown: the tag names the sides of the
// shown picture that the stored first row and first column are.
func turned(x, y, w, h, orientation int) (int, int) {
	switch orientation {
	case 2: // top, right
		return w - 1 - x, y
	case 3: // bottom, right
		return w - 1 - x, h - 1 - y
	case 4: // bottom, left
		return x, h - 1 - y
	case 5: // left, top
		return y, x
	case 6: // right, top
		return h - 1 - y, x
	case 7: // right, bottom
		return h - 1 - y, w - 1 - x
	case 8: // left, bottom
		return y, w - 1 - x
	}
	return x, y
}
