package eye

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// Picture is straight-alpha 8-bit sRGB, R in the lowest byte, row by row.
type Picture struct {
	W, H int
	Pix  []uint32
}

// light8 holds the linear light of each 8-bit level.
var light8 = func() (t [256]float32) {
	for i := range t {
		t[i] = float32(colour.Decode(float64(i) / 255))
	}
	return t
}()

// levels holds the encoded level, 0..255 and fractions, of light in steps of
// 1 / levelSteps.
var levels = func() (t [levelSteps + 2]float32) {
	for i := range t {
		t[i] = float32(colour.Encode(float64(i)/levelSteps) * 255)
	}
	return t
}()

const levelSteps = 1 << 14

// levelOf is the level of light, held to what a screen can show.
func levelOf(v float32) float32 {
	if v <= 0 {
		return 0
	}
	if v >= 1 {
		return 255
	}
	s := mul(v, levelSteps)
	i := int(s)
	return levels[i] + mul(levels[i+1]-levels[i], s-float32(i))
}

// OnCloth lays a picture on cloth, as screens do: in encoded values.
func OnCloth(p Picture, cloth colour.RGB8) Picture {
	out := Picture{p.W, p.H, make([]uint32, len(p.Pix))}
	for i, c := range p.Pix {
		out.Pix[i] = over(c, cloth)
	}
	return out
}

func over(p uint32, cloth colour.RGB8) uint32 {
	a := p >> 24
	if a == 255 {
		return p
	}
	at := func(v uint32, under uint8) uint32 { return (v*a + uint32(under)*(255-a) + 127) / 255 }
	return at(p&255, cloth.R) | at(p>>8&255, cloth.G)<<8 | at(p>>16&255, cloth.B)<<16 | 255<<24
}

// lightOf averages blocks of an opaque picture in linear light, with one more
// block of ground on every side. A block that reaches past the picture is filled
// up with ground.
func lightOf(p Picture, block int, ground colour.RGB8) *Light {
	l := NewLight((p.W+block-1)/block+2, (p.H+block-1)/block+2, block, ground)
	under := uint32(ground.R) | uint32(ground.G)<<8 | uint32(ground.B)<<16
	bare := make([]uint32, l.W*block)
	for i := range bare {
		bare[i] = under
	}
	row := make([]uint32, len(bare))
	for y := range l.H * block {
		from := bare
		if k := y - block; k >= 0 && k < p.H {
			copy(row, bare)
			copy(row[block:], p.Pix[k*p.W:(k+1)*p.W])
			from = row
		}
		at := y / block * l.W
		l.add(at, from)
	}
	part := 1 / float32(block*block)
	for _, ch := range [3][]float32{l.R, l.G, l.B} {
		for i := range ch {
			ch[i] = mul(ch[i], part)
		}
	}
	return l
}

// add adds a row of pixels to the blocks from at on.
func (l *Light) add(at int, row []uint32) {
	for x := at; len(row) > 0; x++ {
		var r, g, b float32
		for _, p := range row[:l.Block] {
			r += light8[p&255]
			g += light8[p>>8&255]
			b += light8[p>>16&255]
		}
		l.R[x] += r
		l.G[x] += g
		l.B[x] += b
		row = row[l.Block:]
	}
}

// Onto says where the pixels of a picture lie on another: place x of the one,
// 0 being the edge of its first pixel, is x * Scale + DX of the other.
type Onto struct {
	W, H          int
	Scale, DX, DY float64
}

// Itself lays a picture onto its own pixels.
func (p Picture) Itself() Onto { return Onto{W: p.W, H: p.H, Scale: 1} }

// Seen is an opaque picture as an eye sees it from a distance, turned back to
// sRGB and drawn onto other pixels, or its own; pitch is the size of one of the
// picture's, mm. Round it lies cloth without end. It stops with p's error when
// p, which may be nil, returns one.
func Seen(pic Picture, pitch unit.MM, v Viewing, cloth colour.RGB8, to Onto, p reduce.Progress) (Picture, error) {
	if p == nil {
		p = func(float64, string) error { return nil }
	}
	block := BlockFor(pitch, v)
	if err := p(0, "looking from afar"); err != nil {
		return Picture{}, err
	}
	f := fieldOf(lightOf(pic, block, cloth))
	if err := p(0.2, "blurring as the eye does"); err != nil {
		return Picture{}, err
	}
	f = f.filtered(v.SamplesPerDegree(pitch)/float64(block), lostTo(block, to.Scale))
	if err := p(0.5, "drawing what is left"); err != nil {
		return Picture{}, err
	}
	return f.picture(block, to), nil
}

// lostTo is the variance, in blocks squared, of averaging blocks and drawing
// them out at a scale; drawing pixels onto themselves loses nothing.
func lostTo(block int, scale float64) float64 {
	if scale == 1 {
		return coarseLoss(block) / float64(block*block)
	}
	b := float64(block * block)
	return (1-1/b)/12 + 1.0/6
}

// picture turns a field, which has one more block on every side, back to sRGB
// and draws it out evenly between the middles of its blocks. Neighbours are so
// alike by now that it is all one whether light or levels are drawn out.
func (f *field) picture(block int, to Onto) Picture {
	rgb := f.levels()
	out := Picture{to.W, to.H, make([]uint32, to.W*to.H)}
	across, down := steps(to.W, f.plane[0].w, block, to.Scale, to.DX), steps(to.H, f.plane[0].h, block, to.Scale, to.DY)
	line := make([][planes]float32, f.plane[0].w)
	for y, d := range down {
		for k := range planes {
			up, under := rgb[k].row(d.at), rgb[k].row(d.at+1)
			for x, u := range up {
				line[x][k] = u + mul(under[x]-u, d.share)
			}
		}
		row := out.Pix[y*to.W : (y+1)*to.W]
		for x, a := range across {
			p, q := &line[a.at], &line[a.at+1]
			r, g, b := p[0]+mul(q[0]-p[0], a.share), p[1]+mul(q[1]-p[1], a.share), p[2]+mul(q[2]-p[2], a.share)
			row[x] = uint32(r+0.5) | uint32(g+0.5)<<8 | uint32(b+0.5)<<16 | 255<<24
		}
	}
	return out
}

// levels is a field in encoded sRGB, 0..255, by channel.
func (f *field) levels() (rgb [planes]plane) {
	m := narrowed(&fromOpponent)
	var ground [planes]float64
	ground[0], ground[1], ground[2] = times(&fromOpponent, f.ground[0], f.ground[1], f.ground[2])
	for k := range rgb {
		a, b, c, add := m[3*k], m[3*k+1], m[3*k+2], float32(ground[k])
		rgb[k] = newPlane(f.plane[0].w, f.plane[0].h)
		for i := range rgb[k].v {
			rgb[k].v[i] = levelOf(mul(a, f.plane[0].v[i]) + mul(b, f.plane[1].v[i]) + mul(c, f.plane[2].v[i]) + add)
		}
	}
	return rgb
}

// stepTo is a block, and how far on the way to the next a pixel lies.
type stepTo struct {
	at    int
	share float32
}

// steps says, for n pixels, between which of the blocks they lie, the extra
// ones at either end among them.
func steps(n, blocks, block int, scale, shift float64) []stepTo {
	out := make([]stepTo, n)
	for x := range out {
		at := (float64(x)+0.5-shift)/scale/float64(block) + 0.5
		k := min(max(int(at), 0), blocks-2)
		out[x] = stepTo{k, float32(min(max(at-float64(k), 0), 1))}
	}
	return out
}
