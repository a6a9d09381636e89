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
	k, err := d.keep(m)
	if err != nil {
		return err
	}
	return d.place(k, x, y, w, h)
}

// kept is a picture that the file has, to be drawn any number of times.
type kept struct {
	name string
	grew float64
}

var asPNG = fpdf.ImageOptions{ImageType: "PNG"}

func (d *Document) keep(m image.Image) (kept, error) {
	m, grew := d.ownWidth(m)
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		return kept{}, fmt.Errorf("sheet: %w", err)
	}
	name := fmt.Sprintf("picture-%d", m.Bounds().Dx())
	d.pdf.RegisterImageOptionsReader(name, asPNG, &b)
	return kept{name, grew}, d.pdf.Error()
}

func (d *Document) place(k kept, x, y, w, h unit.MM) error {
	d.Clip(x, y, w, h, func() {
		d.pdf.ImageOptions(k.name, float64(x), float64(y), float64(w)*k.grew, float64(h), false, asPNG, 0, "")
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
