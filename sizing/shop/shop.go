// Package shop makes the pictures of a pin that are shown and sold with: cut out
// on nothing, or lying on a plain ground with a soft shadow.
package shop

import (
	"bytes"
	"fmt"
	"image"
	"image/png"

	"badgewright/reduce"
	"badgewright/reduce/colour"
)

// PictureShape is the shape of a picture.
type PictureShape string

// The shapes; the empty one is a square, as most shops show goods.
const (
	Square   PictureShape = ""
	Portrait PictureShape = "portrait" // four wide to five high
	Close    PictureShape = "close"    // as the pin is, the same margin on every side
)

// ShopGround is what a pin lies on.
type ShopGround struct {
	RGB colour.RGB8 `json:"rgb"`
	// Margin is the least room beside the pin, as a share of the picture's short
	// side, 0 to 0.4.
	Margin float64      `json:"margin"`
	Shape  PictureShape `json:"shape"`
	// Shadow is how dark the soft shadow is, 0 for none, to 1.
	Shadow float64 `json:"shadow"`
}

// UsualGround is a pale warm grey with room round the pin (this tool's choice).
func UsualGround() ShopGround {
	return ShopGround{RGB: colour.RGB8{R: 0xf3, G: 0xf0, B: 0xea}, Margin: 0.14, Shadow: 0.5}
}

// The shadow, as shares of the pin's long side, chosen by eye: it lies straight
// below and a little wider than the pin, as under a large soft light.
const (
	fallShare = 0.045
	softShare = 0.040
	passes    = 3 // of a box blur, which is then close to a bell
)

// Most is the longest side of a picture, px: what a printed page needs.
const Most = 6000

// Check refuses what cannot be drawn.
func (g *ShopGround) Check() error {
	if !(g.Margin >= 0 && g.Margin <= 0.4) || !(g.Shadow >= 0 && g.Shadow <= 1) {
		return &reduce.Refusal{What: "The ground for the pin cannot be drawn so.", Do: "Keep the margin from 0 to 40 % and the shadow from 0 to 100 %."}
	}
	return nil
}

// Lay lays a picture of a pin, straight alpha, on a ground.
func Lay(pin *image.NRGBA, g ShopGround) (*image.NRGBA, error) {
	if err := g.Check(); err != nil {
		return nil, err
	}
	w, h := pin.Rect.Dx(), pin.Rect.Dy()
	fullW, fullH := g.size(w, h)
	if w < 1 || h < 1 || max(fullW, fullH) > Most {
		return nil, &reduce.Refusal{What: fmt.Sprintf("A picture of %d by %d px cannot be drawn.", fullW, fullH), Do: fmt.Sprintf("Ask for up to %d px.", Most)}
	}
	out := image.NewNRGBA(image.Rect(0, 0, fullW, fullH))
	x0, y0 := (fullW-w)/2, (fullH-h)/2
	shade := shadow(pin, fullW, fullH, x0, y0, g.Shadow)
	for y := range fullH {
		for x := range fullW {
			dark := 255 - int(shade[y*fullW+x])
			at := out.PixOffset(x, y)
			under := [3]int{int(g.RGB.R) * dark, int(g.RGB.G) * dark, int(g.RGB.B) * dark} // of 255*255
			px, py := x-x0, y-y0
			var p [4]uint8
			if px >= 0 && py >= 0 && px < w && py < h {
				copy(p[:], pin.Pix[py*pin.Stride+4*px:])
			}
			a := int(p[3])
			for k := range 3 {
				out.Pix[at+k] = uint8((int(p[k])*a*255 + under[k]*(255-a) + 255*255/2) / (255 * 255))
			}
			out.Pix[at+3] = 255
		}
	}
	return out, nil
}

// size is the size of the whole picture for a pin's, px.
func (g *ShopGround) size(w, h int) (fullW, fullH int) {
	room := 1 - 2*g.Margin
	switch g.Shape {
	case Close:
		m := int(float64(float64(min(w, h))*g.Margin/room) + 0.5)
		return w + 2*m, h + 2*m
	case Portrait:
		wide := max(float64(w)/room, float64(h)/(1.25-2*g.Margin))
		return int(wide + 0.5), int(wide*1.25 + 0.5)
	}
	side := int(float64(max(w, h))/room + 0.5)
	return side, side
}

// ShareOf is the share of the picture's long side that a pin's long side takes,
// for a pin of about some shape.
func (g *ShopGround) ShareOf(w, h int) float64 {
	fullW, fullH := g.size(w, h)
	return float64(max(w, h)) / float64(max(fullW, fullH))
}

// shadow is how dark it is on the ground, 0 to 255.
func shadow(pin *image.NRGBA, fullW, fullH, x0, y0 int, dark float64) []uint8 {
	w, h := pin.Rect.Dx(), pin.Rect.Dy()
	long := float64(max(w, h))
	fall, radius := int(long*fallShare), max(1, int(long*softShare))
	field := make([]uint8, fullW*fullH)
	if dark == 0 {
		return field
	}
	level := uint32(dark*255 + 0.5)
	for y := range h {
		to := y + y0 + fall
		if to < 0 || to >= fullH {
			continue
		}
		for x := range w {
			field[to*fullW+x+x0] = uint8(uint32(pin.Pix[y*pin.Stride+4*x+3]) * level / 255)
		}
	}
	line := make([]uint8, max(fullW, fullH))
	for range passes {
		for y := range fullH {
			blur(field[y*fullW:(y+1)*fullW], 1, fullW, radius, line)
		}
		for x := range fullW {
			blur(field[x:], fullW, fullH, radius, line)
		}
	}
	return field
}

// blur takes the mean over a window of 2*radius+1 along a line; outside it is 0.
func blur(at []uint8, step, n, radius int, line []uint8) {
	for i := range n {
		line[i] = at[i*step]
	}
	wide, sum := 2*radius+1, 0
	for i := range min(radius, n) {
		sum += int(line[i])
	}
	for i := range n {
		if i+radius < n {
			sum += int(line[i+radius])
		}
		if i-radius-1 >= 0 {
			sum -= int(line[i-radius-1])
		}
		at[i*step] = uint8((sum + wide/2) / wide)
	}
}

// PNG writes a picture.
func PNG(m image.Image) ([]byte, error) {
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
