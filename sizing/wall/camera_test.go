package wall

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colour"
)

// inks are the colours of a drawn scene, by label; what is sky is paper.
var inks = map[uint8]colour.RGB8{
	red: {R: 205, G: 62, B: 50}, blue: {R: 43, G: 95, B: 165}, gold: {R: 244, G: 196, B: 66},
	steel: {R: 24, G: 32, B: 54}, sky: {R: 255, G: 255, B: 255},
}

// gold is a third enamel.
const gold = 5

// light is a picture in linear light.
type light struct {
	w, h int
	pix  []colour.Linear
}

// painted paints a scene on paper, each pixel with the light of all it holds.
func painted(w, h int, at func(x, y float64) uint8) *light {
	const grain = 4
	p := &light{w: w, h: h, pix: make([]colour.Linear, w*h)}
	corners := make([]uint8, (w+1)*(h+1))
	for i := range corners {
		corners[i] = at(float64(i%(w+1)), float64(i/(w+1)))
	}
	linear := map[uint8]colour.Linear{}
	for l, c := range inks {
		linear[l] = c.Linear()
	}
	for i := range p.pix {
		x, y := i%w, i/w
		if l, ok := calm(corners, w+1, h+1, x, y); ok {
			p.pix[i] = linear[l]
			continue
		}
		var sum colour.Linear
		for k := range grain * grain {
			c := linear[at(float64(x)+(float64(k%grain)+0.5)/grain, float64(y)+(float64(k/grain)+0.5)/grain)]
			sum = colour.Linear{R: sum.R + c.R/(grain*grain), G: sum.G + c.G/(grain*grain), B: sum.B + c.B/(grain*grain)}
		}
		p.pix[i] = sum
	}
	return p
}

// photographed is a picture on paper under a lamp to one side, through a lens
// that blurs light by about a pixel, on a sensor with grain, as a JPEG.
func (p *light) photographed(seed uint64) *light {
	rnd := rand.New(rand.NewPCG(seed, 1))
	kernel := [5]float64{0.06, 0.24, 0.4, 0.24, 0.06}
	across, both := make([]colour.Linear, len(p.pix)), make([]colour.Linear, len(p.pix))
	blur := func(from, to []colour.Linear, dx, dy int) {
		for i := range from {
			x, y := i%p.w, i/p.w
			var s colour.Linear
			for k, f := range kernel {
				c := from[min(max(y+(k-2)*dy, 0), p.h-1)*p.w+min(max(x+(k-2)*dx, 0), p.w-1)]
				s = colour.Linear{R: s.R + f*c.R, G: s.G + f*c.G, B: s.B + f*c.B}
			}
			to[i] = s
		}
	}
	blur(p.pix, across, 1, 0)
	blur(across, both, 0, 1)
	out := &light{w: p.w, h: p.h, pix: both}
	grain := func(v, lamp, tint float64) float64 {
		level := 255*colour.Encode(v*lamp*tint) + 2.5*rnd.NormFloat64()
		return colour.Decode(math.Max(0, math.Min(255, level)) / 255)
	}
	for i := range both {
		x, y := float64(i%p.w)/float64(p.w), float64(i/p.w)/float64(p.h)
		lamp := 0.95 - 0.25*math.Hypot(x-0.1, y-0.2)
		c := both[i]
		both[i] = colour.Linear{R: grain(c.R, lamp, 1), G: grain(c.G, lamp, 0.97), B: grain(c.B, lamp, 0.9)}
	}
	return out
}

// picture encodes the light; with a quality it goes through a JPEG.
func (p *light) picture(t *testing.T, quality int) *reduce.Drawing {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, p.w, p.h))
	for i, c := range p.pix {
		e := func(v float64) uint8 { return uint8(math.Max(0, math.Min(255, 255*colour.Encode(v)+0.5))) }
		img.SetRGBA(i%p.w, i/p.w, color.RGBA{R: e(c.R), G: e(c.G), B: e(c.B), A: 255})
	}
	var seen image.Image = img
	if quality > 0 {
		var buf bytes.Buffer
		require.NoError(t, jpeg.Encode(&buf, img, &jpeg.Options{Quality: quality}))
		var err error
		seen, err = jpeg.Decode(&buf)
		require.NoError(t, err)
	}
	pix := make([]uint32, p.w*p.h)
	for i := range pix {
		r, g, b, _ := seen.At(i%p.w, i/p.w).RGBA()
		pix[i] = r>>8 | g&0xff00 | b>>8<<16 | 0xff000000
	}
	d, err := reduce.NewDrawing(p.w, p.h, pix)
	require.NoError(t, err)
	return d
}

// taken are the ways in which a drawing comes in.
var taken = []string{"clean", "jpeg", "photo"}

// flatDrawing brings a scene in one of these ways and reduces it to its enamels.
func flatDrawing(t *testing.T, size int, way string, enamels int, at func(x, y float64) uint8) *reduce.Separation {
	t.Helper()
	p, quality := painted(size, size, at), 0
	switch way {
	case "jpeg":
		quality = 80
	case "photo":
		p, quality = p.photographed(7), 90
	}
	d := p.picture(t, quality)
	g, err := reduce.FindGround(d, reduce.GroundAuto)
	require.NoError(t, err)
	a, err := reduce.Analyse(d, g, nil)
	require.NoError(t, err)
	s, err := a.Reduce(reduce.Options{Count: enamels})
	require.NoError(t, err)
	return s
}
