package proof

import (
	"math"

	"badgewright/reduce"
)

// Warp takes a place of the pin, in working px, to one of the picture: a
// projective map, row by row. Of a flat proof the last row is 0 0 1.
type Warp [9]float64

// Point is a place, of the pin or of a picture, px.
type Point struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
}

// At maps a place.
func (w *Warp) At(x, y float64) (u, v float64) {
	u = float64(w[0]*x) + float64(w[1]*y) + w[2]
	v = float64(w[3]*x) + float64(w[4]*y) + w[5]
	if w[6] == 0 && w[7] == 0 {
		return u, v
	}
	d := float64(w[6]*x) + float64(w[7]*y) + w[8]
	return u / d, v / d
}

// Inverse is the map back; ok is false where there is none.
func (w *Warp) Inverse() (inv Warp, ok bool) {
	a, b, c, d, e, f, g, h, i := w[0], w[1], w[2], w[3], w[4], w[5], w[6], w[7], w[8]
	inv = Warp{
		minor(e, i, f, h), minor(c, h, b, i), minor(b, f, c, e),
		minor(f, g, d, i), minor(a, i, c, g), minor(c, d, a, f),
		minor(d, h, e, g), minor(b, g, a, h), minor(a, e, b, d),
	}
	det := float64(a*inv[0]) + float64(b*inv[3]) + float64(c*inv[6])
	if det == 0 || math.IsNaN(det) || inv[8] == 0 {
		return inv, false
	}
	k := inv[8]
	for n := range inv {
		inv[n] /= k
	}
	return inv, true
}

func minor(a, b, c, d float64) float64 { return float64(a*b) - float64(c*d) }

// after is the map that does v first, then w.
func (w *Warp) after(v *Warp) Warp {
	var out Warp
	for r := range 3 {
		for c := range 3 {
			for k := range 3 {
				out[3*r+c] += float64(w[3*r+k] * v[3*k+c])
			}
		}
	}
	k := out[8]
	for n := range out {
		out[n] /= k
	}
	return out
}

// moved is the map at a place as a linear one: how a step in x and in y comes out.
func (w *Warp) moved(x, y float64) (ux, vx, uy, vy float64) {
	d := float64(w[6]*x) + float64(w[7]*y) + w[8]
	u, v := w.At(x, y)
	ux, uy = (w[0]-float64(u*w[6]))/d, (w[1]-float64(u*w[7]))/d
	vx, vy = (w[3]-float64(v*w[6]))/d, (w[4]-float64(v*w[7]))/d
	return ux, vx, uy, vy
}

// scaleAt is how many px of the picture a px of the pin takes at a place.
func (w *Warp) scaleAt(x, y float64) float64 {
	ux, vx, uy, vy := w.moved(x, y)
	return math.Sqrt(math.Abs(minor(ux, vy, uy, vx)))
}

// Mirrored says whether left and right are changed over.
func (w *Warp) Mirrored() bool { return minor(w[0], w[4], w[1], w[3]) < 0 }

// Turn is by how much the picture is turned clockwise against the pin, degrees,
// -180..180; of a mirrored one, after the pin was mirrored left to right.
func (w *Warp) Turn() float64 {
	if w.Mirrored() {
		return math.Atan2(-w[3], -w[0]) * 180 / math.Pi
	}
	return math.Atan2(w[3], w[0]) * 180 / math.Pi
}

// similar is a similarity: size, turn (radians, clockwise as seen) and mirror
// about the pin's place p, which comes to lie on q.
func similar(p, q Point, size, turn float64, mirror bool) Warp {
	s, c := math.Sincos(turn)
	a, b := size*c, size*s
	sx := 1.0
	if mirror {
		sx = -1
	}
	w := Warp{sx * a, -b, 0, sx * b, a, 0, 0, 0, 1}
	u, v := w.At(p.X, p.Y)
	w[2], w[5] = q.X-u, q.Y-v
	return w
}

// WarpBy lays places of the pin on places of the picture: two give shift, turn
// and size, as near as may be; three shift them exactly if exact, stretch and
// slant included, else by the nearest similarity; four or more give the nearest
// view in perspective if exact. Mirror is found.
func WarpBy(pin, picture []Point, exact bool) (Warp, error) {
	if len(pin) != len(picture) || len(pin) < 2 {
		return Warp{}, &reduce.Refusal{What: "This takes at least two places, each set on the pin and in the picture.", Do: "Set three that lie far apart."}
	}
	k := similarity
	switch {
	case exact && len(pin) == 3:
		k = affine
	case exact && len(pin) > 3:
		k = projective
	}
	var best Warp
	least, found := math.Inf(1), false
	for _, mirror := range []bool{false, true} {
		if mirror && k != similarity {
			break
		}
		w, ok := nearest(pin, picture, k, mirror)
		if off := missed(&w, pin, picture); ok && off < least {
			best, least, found = w, off, true
		}
	}
	if !found {
		return Warp{}, &reduce.Refusal{What: "These places lie on one line or on one spot.", Do: "Set them far apart, round the pin."}
	}
	return best, nil
}

func missed(w *Warp, pin, picture []Point) float64 {
	sum := 0.0
	for i, p := range pin {
		u, v := w.At(p.X, p.Y)
		dx, dy := u-picture[i].X, v-picture[i].Y
		sum += float64(dx*dx) + float64(dy*dy)
	}
	return sum
}
