package sheet

import (
	"bytes"
	"fmt"
	"image"
	"image/png"

	"codeberg.org/go-pdf/fpdf"

	"badgewright/sizing/unit"
)

// Picture draws a raster picture, see-through where it is so, into a box.
func (d *Document) Picture(x, y, w, h unit.MM, m image.Image) error {
	m, grew := d.ownWidth(m)
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		return fmt.Errorf("sheet: %w", err)
	}
	name := fmt.Sprintf("picture-%d", m.Bounds().Dx())
	options := fpdf.ImageOptions{ImageType: "PNG"}
	d.pdf.RegisterImageOptionsReader(name, options, &b)
	d.Clip(x, y, w, h, func() {
		d.pdf.ImageOptions(name, float64(x), float64(y), float64(w)*grew, float64(h), false, options, 0, "")
	})
	return d.pdf.Error()
}

// ownWidth gives a picture a width that no other of the document has, since the
// writer puts pictures of one width in no certain order: idle columns on the
// right, by which it grew.
func (d *Document) ownWidth(m image.Image) (image.Image, float64) {
	from := m.Bounds()
	w := from.Dx()
	for d.widths[w] {
		w++
	}
	d.widths[w] = true
	out := image.NewNRGBA(image.Rect(0, 0, w, from.Dy()))
	for y := range from.Dy() {
		for x := range w {
			out.Set(x, y, m.At(from.Min.X+min(x, from.Dx()-1), from.Min.Y+y))
		}
	}
	return out, float64(w) / float64(from.Dx())
}
