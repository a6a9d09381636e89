package proof

import "math"

// freedom is what a map may do, as the number of its values that are free.
type freedom int

const (
	similarity freedom = 4 // shift, turn, size
	affine     freedom = 6 // also stretch and slant
	projective freedom = 8 // also perspective
)

// normal is a set of normal equations of up to eight unknowns.
type normal struct {
	n int
	m [8][9]float64
}

// add enters one equation: row times the unknowns is value.
func (q *normal) add(row *[8]float64, value, weight float64) {
	for i := range q.n {
		if row[i] == 0 {
			continue
		}
		k := weight * row[i]
		for j := range q.n {
			q.m[i][j] += float64(k * row[j])
		}
		q.m[i][8] += float64(k * value)
	}
}

// solve eliminates with pivots; ok is false where an unknown is not fixed.
func (q *normal) solve() (x [8]float64, ok bool) {
	n := q.n
	for c := range n {
		p := c
		for r := c + 1; r < n; r++ {
			if math.Abs(q.m[r][c]) > math.Abs(q.m[p][c]) {
				p = r
			}
		}
		if math.Abs(q.m[p][c]) < unfixed {
			return x, false
		}
		q.m[c], q.m[p] = q.m[p], q.m[c]
		for r := c + 1; r < n; r++ {
			k := q.m[r][c] / q.m[c][c]
			for j := c; j <= 8; j++ {
				q.m[r][j] -= float64(k * q.m[c][j])
			}
		}
	}
	for r := n - 1; r >= 0; r-- {
		sum := q.m[r][8]
		for j := r + 1; j < n; j++ {
			sum -= float64(q.m[r][j] * x[j])
		}
		x[r] = sum / q.m[r][r]
	}
	return x, true
}

// unfixed is a pivot so small that its unknown is not fixed; places are about 1.
const unfixed = 1e-9

// frame takes places of the pin to about -1..1, where equations are well posed.
type frame struct{ x, y, size float64 }

func frameOf(pin []Point) frame {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range pin {
		x0, y0, x1, y1 = min(x0, p.X), min(y0, p.Y), max(x1, p.X), max(y1, p.Y)
	}
	return frame{(x0 + x1) / 2, (y0 + y1) / 2, max(1e-6, max(x1-x0, y1-y0)/2)}
}

func (f frame) warp(mirror bool) Warp {
	k := 1 / f.size
	w := Warp{k, 0, -f.x * k, 0, k, -f.y * k, 0, 0, 1}
	if mirror {
		w[0], w[2] = -w[0], -w[2]
	}
	return w
}

// rows are the two equations of a place at about -1..1 that lies at u, v now: how
// u and v change with each free value. The order is that of build.
func (k freedom) rows(x, y, u, v float64) (ru, rv [8]float64) {
	switch k {
	case similarity:
		return [8]float64{x, -y, 1, 0}, [8]float64{y, x, 0, 1}
	case affine:
		return [8]float64{x, y, 1, 0, 0, 0}, [8]float64{0, 0, 0, x, y, 1}
	default:
		return [8]float64{x, y, 1, 0, 0, 0, -u * x, -u * y}, [8]float64{0, 0, 0, x, y, 1, -v * x, -v * y}
	}
}

func (k freedom) build(x [8]float64) Warp {
	switch k {
	case similarity:
		return Warp{x[0], -x[1], x[2], x[1], x[0], x[3], 0, 0, 1}
	case affine:
		return Warp{x[0], x[1], x[2], x[3], x[4], x[5], 0, 0, 1}
	default:
		return Warp{x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], 1}
	}
}

// nearest is the map of a kind that brings places of the pin nearest to those of
// the picture, by least squares.
func nearest(pin, picture []Point, k freedom, mirror bool) (Warp, bool) {
	f := frameOf(pin)
	to := f.warp(mirror)
	q := normal{n: int(k)}
	for i, p := range pin {
		x, y := to.At(p.X, p.Y)
		u, v := picture[i].X, picture[i].Y
		ru, rv := k.rows(x, y, u, v)
		q.add(&ru, u, 1)
		q.add(&rv, v, 1)
	}
	x, ok := q.solve()
	if !ok {
		return Warp{}, false
	}
	w := k.build(x)
	w = w.after(&to)
	_, ok = w.Inverse()
	return w, ok
}
