package proof

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/basicfont"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/trace"
)

// look is how a maker draws a proof.
type look struct {
	scale   float64 // px of the proof to a px of the pin
	turn    float64 // radians
	mirror  bool
	ground  color.RGBA
	metal   color.RGBA
	quality int // of JPEG; 0 for none
	page    bool
}

// proofOf draws a pin as a maker would, by trace's curves and x/image/vector, and
// returns the map it was drawn by.
func proofOf(t testing.TB, b *sizing.Badge, k look, rnd *rand.Rand) (*Picture, Warp) {
	t.Helper()
	s, err := trace.Trace(b, 0, nil)
	require.NoError(t, err)
	o := b.Outline
	mid := Point{(o[0] + o[2]) / 2, (o[1] + o[3]) / 2}
	span := k.scale * math.Hypot(o[2]-o[0], o[3]-o[1])
	side := span + 8
	w, h := side, side
	if k.page {
		w, h = 1.5*side, 1.35*side
	}
	at := Point{w/2 + (rnd.Float64()-0.5)*0.1*side, h/2 + (rnd.Float64()-0.5)*0.1*side}
	if !k.page {
		at = Point{w/2 + rnd.Float64(), h/2 + rnd.Float64()}
	}
	warp := similar(mid, at, k.scale, k.turn, k.mirror)
	img := image.NewRGBA(image.Rect(0, 0, int(w), int(h)))
	draw.Draw(img, img.Bounds(), image.NewUniform(k.ground), image.Point{}, draw.Src)
	drawPin(img, s, b, &warp, k)
	if k.page {
		captions(img, at, span, rnd)
	}
	return encoded(t, img, k.quality), warp
}

// drawPin fills the outline with metal, then every enamel, then what is printed.
func drawPin(img *image.RGBA, s *trace.Shapes, b *sizing.Badge, warp *Warp, k look) {
	fillAreas(img, s, b, warp, s.Outline.Areas, k.metal)
	for _, f := range s.Enamel {
		fillAreas(img, s, b, warp, f.Areas, opaque(f.RGB))
	}
	for _, f := range s.Printed {
		fillAreas(img, s, b, warp, f.Areas, opaque(f.RGB))
	}
}

func opaque(c colour.RGB8) color.RGBA { return color.RGBA{c.R, c.G, c.B, 255} }

func fillAreas(img *image.RGBA, s *trace.Shapes, b *sizing.Badge, warp *Warp, areas []trace.Area, ink color.RGBA) {
	var r pen
	on := func(p trace.Point) Point {
		u, v := warp.At(b.Outline[0]+p.X.Px(b.Scale), b.Outline[1]+p.Y.Px(b.Scale))
		return Point{u, v}
	}
	s.Walk(trace.Walker{
		Move:  func(p trace.Point) { r.step(0, on(p)) },
		Line:  func(p trace.Point) { r.step(1, on(p)) },
		Curve: func(c1, c2, p trace.Point) { r.step(2, on(c1), on(c2), on(p)) },
		Close: func() { r.step(3) },
	}, areas...)
	r.fill(img, ink)
}

// pen is a path to be filled: what is drawn, step by step, and the places of each.
type pen struct {
	does []int
	at   []Point
}

func (p *pen) step(does int, at ...Point) {
	p.does = append(p.does, does)
	p.at = append(p.at, at...)
}

// fill fills the path on the part of the picture that it takes.
func (p *pen) fill(img *image.RGBA, ink color.RGBA) {
	if len(p.at) == 0 {
		return
	}
	box := image.Rectangle{Min: image.Point{1 << 20, 1 << 20}, Max: image.Point{-1 << 20, -1 << 20}}
	for _, q := range p.at {
		box.Min.X, box.Min.Y = min(box.Min.X, int(q.X)-1), min(box.Min.Y, int(q.Y)-1)
		box.Max.X, box.Max.Y = max(box.Max.X, int(q.X)+2), max(box.Max.Y, int(q.Y)+2)
	}
	box = box.Intersect(img.Rect)
	if box.Empty() {
		return
	}
	r := vector.NewRasterizer(box.Dx(), box.Dy())
	k := 0
	next := func() (float32, float32) {
		q := p.at[k]
		k++
		return float32(q.X - float64(box.Min.X)), float32(q.Y - float64(box.Min.Y))
	}
	for _, does := range p.does {
		switch does {
		case 0:
			x, y := next()
			r.MoveTo(x, y)
		case 1:
			x, y := next()
			r.LineTo(x, y)
		case 2:
			a, b := next()
			c, d := next()
			e, f := next()
			r.CubeTo(a, b, c, d, e, f)
		default:
			r.ClosePath()
		}
	}
	r.Draw(img, box, image.NewUniform(ink), image.Point{})
}

// captions sets lettering, leaders with arrows, colour chips and a measure round
// a pin.
func captions(img *image.RGBA, at Point, span float64, rnd *rand.Rand) {
	ink := color.RGBA{40, 40, 44, 255}
	w, h := float64(img.Rect.Dx()), float64(img.Rect.Dy())
	k := max(1, int(span/350))
	write(img, "PROOF 1 - SKERRY LIGHT - SOFT ENAMEL", Point{0.05 * w, 0.05 * h}, k, ink)
	write(img, "1 PC / BUTTERFLY CLUTCH / GOLD", Point{0.05 * w, 0.97 * h}, k, ink)
	for i := range 5 {
		y := (0.2 + 0.14*float64(i)) * h
		c := opaque(palette[i%len(palette)])
		box(img, 0.02*w, y, 0.02*w+0.05*w, y+0.04*h, c)
		write(img, []string{"A12", "B07", "C33", "D18", "E02"}[i], Point{0.02 * w, y - 4}, k, ink)
		a := math.Atan2(y-at.Y, 0.08*w-at.X) + 0.1*(rnd.Float64()-0.5)
		tip := Point{at.X + 0.54*span*math.Cos(a), at.Y + 0.54*span*math.Sin(a)}
		line(img, Point{0.08 * w, y}, tip, float64(k), ink)
	}
	y := at.Y + 0.58*span
	line(img, Point{at.X - span/2, y}, Point{at.X + span/2, y}, float64(k), ink)
	write(img, "38 MM", Point{at.X, y + float64(14*k)}, k, ink)
}

func box(img *image.RGBA, x0, y0, x1, y1 float64, c color.RGBA) {
	draw.Draw(img, image.Rect(int(x0), int(y0), int(x1), int(y1)), image.NewUniform(c), image.Point{}, draw.Src)
}

// line is a leader with an arrow's head at its end.
func line(img *image.RGBA, a, b Point, wide float64, c color.RGBA) {
	d := dist(a, b)
	nx, ny := -(b.Y-a.Y)/d*wide/2, (b.X-a.X)/d*wide/2
	tx, ty := 4*wide*(b.X-a.X)/d, 4*wide*(b.Y-a.Y)/d
	var r pen
	r.step(0, Point{a.X + nx, a.Y + ny})
	for _, p := range []Point{
		{b.X + nx - tx, b.Y + ny - ty}, {b.X + 3*nx - tx, b.Y + 3*ny - ty}, b,
		{b.X - 3*nx - tx, b.Y - 3*ny - ty}, {b.X - nx - tx, b.Y - ny - ty}, {a.X - nx, a.Y - ny},
	} {
		r.step(1, p)
	}
	r.step(3)
	r.fill(img, c)
}

func write(img *image.RGBA, text string, at Point, k int, c color.RGBA) {
	small := image.NewAlpha(image.Rect(0, 0, 7*len(text), 13))
	d := font.Drawer{Dst: small, Src: image.Opaque, Face: basicfont.Face7x13, Dot: fixed.P(0, 11)}
	d.DrawString(text)
	for y := range 13 * k {
		for x := range 7 * len(text) * k {
			if p := (image.Point{int(at.X) + x, int(at.Y) + y - 11*k}); p.In(img.Rect) && small.AlphaAt(x/k, y/k).A > 127 {
				img.SetRGBA(p.X, p.Y, c)
			}
		}
	}
}

// encoded stains a picture as JPEG does, and hands it over as pixels.
func encoded(t testing.TB, img image.Image, quality int) *Picture {
	t.Helper()
	if quality > 0 {
		var b bytes.Buffer
		require.NoError(t, jpeg.Encode(&b, img, &jpeg.Options{Quality: quality}))
		var err error
		img, err = jpeg.Decode(&b)
		require.NoError(t, err)
	}
	d := img.Bounds()
	pix := make([]uint32, d.Dx()*d.Dy())
	flat := image.NewRGBA(d)
	draw.Draw(flat, d, img, d.Min, draw.Src)
	for i := range pix {
		p := flat.Pix[4*i:]
		pix[i] = uint32(p[0]) | uint32(p[1])<<8 | uint32(p[2])<<16 | 255<<24
	}
	out, err := NewPicture(d.Dx(), d.Dy(), pix)
	require.NoError(t, err)
	return out
}

// save writes a picture where BADGEWRIGHT_LOOK says, to be looked at.
func (p *Picture) save(t testing.TB, name string) {
	dir := os.Getenv("BADGEWRIGHT_LOOK")
	if dir == "" {
		return
	}
	img := image.NewRGBA(image.Rect(0, 0, p.W, p.H))
	for i, c := range p.Pix {
		img.SetRGBA(i%p.W, i/p.W, color.RGBA{uint8(c), uint8(c >> 8), uint8(c >> 16), 255})
	}
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, img))
	require.NoError(t, os.WriteFile(dir+"/"+name+".png", b.Bytes(), 0o644))
}
