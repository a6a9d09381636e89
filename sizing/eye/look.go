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

// levels undoes light8 for light in steps of 1 / levelSteps.
var levels = func() (t [levelSteps + 1]uint8) {
	at := 0
	for i := range t {
		want := float64(i) / levelSteps
		for at < 255 && float64(light8[at+1])+float64(light8[at]) <= 2*want {
			at++
		}
		t[i] = uint8(at)
	}
	return t
}()

const levelSteps = 1 << 14

func level(v float32) uint32 {
	if v <= 0 {
		return 0
	}
	if v >= 1 {
		return 255
	}
	return uint32(levels[int(mul(v, levelSteps)+0.5)])
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

// lightOf averages blocks of an opaque picture in linear light. A block that
// reaches past the picture is filled up with ground.
func lightOf(p Picture, block int, ground colour.RGB8) *Light {
	l := NewLight((p.W+block-1)/block, (p.H+block-1)/block, block, ground)
	for y := 0; y < l.H*block; y++ {
		at := y / block * l.W
		r, g, b := l.R[at:at+l.W], l.G[at:at+l.W], l.B[at:at+l.W]
		var row []uint32
		if y < p.H {
			row = p.Pix[y*p.W : (y+1)*p.W]
		}
		for x := range r {
			for k := x * block; k < (x+1)*block; k++ {
				c := [3]uint8{ground.R, ground.G, ground.B}
				if k < len(row) {
					c = [3]uint8{uint8(row[k]), uint8(row[k] >> 8), uint8(row[k] >> 16)}
				}
				r[x] += light8[c[0]]
				g[x] += light8[c[1]]
				b[x] += light8[c[2]]
			}
		}
	}
	l.scale(1 / float32(block*block))
	return l
}

func (l *Light) scale(by float32) {
	if by == 1 {
		return
	}
	for _, ch := range [3][]float32{l.R, l.G, l.B} {
		for i := range ch {
			ch[i] = mul(ch[i], by)
		}
	}
}

// Seen is an opaque picture as an eye sees it from a distance, turned back to
// sRGB at the same pixels; pitch is the size of one, mm. Round it lies cloth
// without end. It stops with p's error when p, which may be nil, returns one.
func Seen(pic Picture, pitch unit.MM, v Viewing, cloth colour.RGB8, p reduce.Progress) (Picture, error) {
	if p == nil {
		p = func(float64, string) error { return nil }
	}
	block := BlockFor(pitch, v)
	if err := p(0, "looking from afar"); err != nil {
		return Picture{}, err
	}
	f := fieldOf(lightOf(pic, block, cloth))
	if err := p(0.3, "blurring as the eye does"); err != nil {
		return Picture{}, err
	}
	lost := 0.0
	if block > 1 {
		lost = coarseLoss(block) / float64(block*block)
	}
	f = f.filtered(v.SamplesPerDegree(pitch)/float64(block), lost)
	if err := p(0.7, "drawing what is left"); err != nil {
		return Picture{}, err
	}
	return f.picture(block, pic.W, pic.H), nil
}

// picture turns a field back to sRGB, drawn out to w by h pixels.
func (f *field) picture(block, w, h int) Picture {
	m := narrowed(&fromOpponent)
	ground := colour.Linear{}
	ground.R, ground.G, ground.B = times(&fromOpponent, f.ground[0], f.ground[1], f.ground[2])
	add := [planes]float32{float32(ground.R), float32(ground.G), float32(ground.B)}
	out := Picture{w, h, make([]uint32, w*h)}
	for i := range out.Pix {
		out.Pix[i] = 255 << 24
	}
	small := newPlane(f.plane[0].w, f.plane[0].h)
	for k := range planes {
		a, b, c := m[3*k], m[3*k+1], m[3*k+2]
		for i := range small.v {
			small.v[i] = mul(a, f.plane[0].v[i]) + mul(b, f.plane[1].v[i]) + mul(c, f.plane[2].v[i])
		}
		fine := small
		if block > 1 {
			fine = small.drawnOut(block, w, h)
		}
		for i, v := range fine.v {
			out.Pix[i] |= level(v+add[k]) << (8 * k)
		}
	}
	return out
}
