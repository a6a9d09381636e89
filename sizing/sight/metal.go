package sight

import (
	"strings"

	"badgewright/sizing"
)

// ballSide is the side of a ball picture: one value for each direction that a
// surface can face, 1/64 apart.
const ballSide = 129

// rampSide is the number of steps of a plating's ramp, and rampTop the
// brightness of the last.
const (
	rampSide = 1024
	rampTop  = 1.15
)

// ball is the metal as a ball would show it: the brightness for the normal
// (nx, ny) stands at ((ny*64+64)*ballSide + nx*64+64), and each brightness has
// its colour.
type ball struct {
	v    [ballSide * ballSide]float32
	tint [rampSide]rgbf
}

// The light stands to the upper left: its direction across the picture.
const (
	lightX float32 = -0.64
	lightY float32 = -0.77
)

// matte says whether a plating is dyed: no reflections, only soft light.
func matte(p *sizing.Plating) bool { return strings.HasPrefix(string(p.ID), "dyed") }

// ballOf paints the ball of a plating by what a studio would mirror in it.
func ballOf(p *sizing.Plating) *ball {
	var t ball
	shine := studio
	if matte(p) {
		shine = softLight
	}
	for j := 0; j < ballSide; j++ {
		for i := 0; i < ballSide; i++ {
			nx, ny := float32(i-64)/64, float32(j-64)/64
			if d := mul(nx, nx) + mul(ny, ny); d > 0.98 {
				k := root(0.98 / d)
				nx, ny = mul(nx, k), mul(ny, k)
			}
			t.v[j*ballSide+i] = shine(nx, ny)
		}
	}
	r := rampOf(p)
	for i := range t.tint {
		t.tint[i] = r.at(mul(float32(i)/(rampSide-1), rampTop))
	}
	return &t
}

// at is the colour of metal facing (nx, ny).
func (t *ball) at(nx, ny float32) rgbf { return t.of(t.bright(nx, ny)) }

// of is the colour of a brightness.
func (t *ball) of(v float32) rgbf {
	return t.tint[min(max(int(mul(v, (rampSide-1)/rampTop)+0.5), 0), rampSide-1)]
}

// bright is the brightness of metal facing (nx, ny), between the four nearest
// directions of the ball.
func (t *ball) bright(nx, ny float32) float32 {
	fx := min(max(mul(nx, 64)+64, 0), ballSide-1.001)
	fy := min(max(mul(ny, 64)+64, 0), ballSide-1.001)
	i, j := int(fx), int(fy)
	fx, fy = fx-float32(i), fy-float32(j)
	k := j*ballSide + i
	return mix(mix(t.v[k], t.v[k+1], fx), mix(t.v[k+ballSide], t.v[k+ballSide+1], fx), fy)
}

// studioStops is the brightness met going from straight away from the light to
// straight towards it: a dark floor, its far glow, the horizon, the face of
// the metal, and a softbox with a hard edge.
var studioStops = [][2]float32{
	{-1.0, 0.10}, {-0.86, 0.06}, {-0.62, 0.24}, {-0.46, 0.50}, {-0.34, 0.44}, {-0.24, 0.30},
	{-0.10, 0.45}, {0.0, 0.56}, {0.16, 0.68}, {0.27, 0.80}, {0.36, 1.02}, {0.66, 1.10}, {0.76, 0.74}, {0.88, 0.42}, {1.0, 0.30},
}

func along(stops [][2]float32, v float32) float32 {
	for k := 1; k < len(stops); k++ {
		if a, b := stops[k-1], stops[k]; v <= b[0] {
			return mix(a[1], b[1], ease(a[0], b[0], v))
		}
	}
	return stops[len(stops)-1][1]
}

// studio is what a mirror facing (nx, ny) shows, 0 dark to 1 bright and a
// little over.
func studio(nx, ny float32) float32 {
	nz := root(max(0, 1-mul(nx, nx)-mul(ny, ny)))
	rx, ry := mul(2*nz, nx), mul(2*nz, ny)
	to := mul(rx, -lightX) + mul(ry, -lightY)
	across := mul(rx, lightY) - mul(ry, lightX)
	v := along(studioStops, -to)
	side := ease(0.25, 0.95, abs32(across))
	return mix(v, 0.40+mul(0.10, across), mul(side, 0.55))
}

// softLight is what a dull surface shows: evenly lit, never mirrored.
func softLight(nx, ny float32) float32 {
	lit := mul(nx, lightX) + mul(ny, lightY)
	v := 0.53 + mul(lit, 0.40)
	if lit > 0.35 {
		v += mul(ease(0.35, 0.75, lit), 0.22)
	}
	return v
}

func abs32(v float32) float32 {
	if v < 0 {
		return -v
	}
	return v
}

// ramp is a plating from its darkest reflection to its highlight.
type ramp struct{ deep, dark, mid, bright, top rgbf }

func rampOf(p *sizing.Plating) ramp {
	r := ramp{dark: ofRGB8(p.Dark), mid: ofRGB8(p.Mid), bright: ofRGB8(p.Bright)}
	r.deep = rgbf{mul(r.dark[0], 0.55), mul(r.dark[1], 0.5), mul(r.dark[2], 0.5)}
	r.top = r.bright.mix(rgbf{1, 1, 1}, 0.6)
	return r
}

// at gives the colour of a brightness; the face of the metal is 0.55.
func (r *ramp) at(v float32) rgbf {
	switch {
	case v < 0.12:
		return r.deep.mix(r.dark, clamp01(v/0.12))
	case v < 0.55:
		return r.dark.mix(r.mid, (v-0.12)/0.43)
	case v < 1:
		return r.mid.mix(r.bright, (v-0.55)/0.45)
	}
	return r.bright.mix(r.top, clamp01((v-1)*10))
}

// tile is a square of noise, -1..1, that repeats.
type tile [tileSide * tileSide]float32

const tileSide = 256

func (t *tile) at(x, y int) float32 { return t[(y&(tileSide-1))*tileSide+x&(tileSide-1)] }

// speckle is white noise from an integer hash; it starts alike, so that a
// picture is the same every time.
func speckle(seed uint32) *tile {
	var t tile
	for i := range t {
		h := uint32(i)*2654435761 ^ seed
		h ^= h >> 15
		h *= 2246822519
		h ^= h >> 13
		h *= 3266489917
		h ^= h >> 16
		t[i] = float32(h>>8)/float32(1<<23) - 1
	}
	return &t
}

// brushed is noise drawn out along rows, as a brush leaves it.
func brushed(seed uint32, length int) *tile {
	white := speckle(seed)
	var t tile
	for y := 0; y < tileSide; y++ {
		for x := 0; x < tileSide; x++ {
			var sum float32
			for k := 0; k < length; k++ {
				sum += white.at(x+k, y)
			}
			t[y*tileSide+x] = sum / root(float32(length))
		}
	}
	return &t
}

// sanded is noise rounded over two pixels, as blasting with sand leaves it.
func sanded(seed uint32) *tile {
	white := speckle(seed)
	var t tile
	for y := 0; y < tileSide; y++ {
		for x := 0; x < tileSide; x++ {
			t[y*tileSide+x] = (white.at(x, y) + white.at(x+1, y) + white.at(x, y+1) + white.at(x+1, y+1)) / 2
		}
	}
	return &t
}

var (
	brushTile = brushed(11, 14)
	sandTile  = sanded(7)
)
