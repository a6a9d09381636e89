package eye

import (
	"math"

	"badgewright/reduce/colour"
)

// plane is one channel of a picture, row by row; what lies round it is 0.
type plane struct {
	w, h int
	v    []float32
}

func newPlane(w, h int) plane { return plane{w, h, make([]float32, w*h)} }

// mul multiplies and rounds, so that no processor fuses it with a sum: the same
// bits natively and in WASM.
func mul(a, b float32) float32 { return float32(a * b) }

const (
	// kernelReach is how many standard deviations of a Gaussian are summed: what
	// is cut off is a two-thousandth of it.
	kernelReach = 3.5
	// leastSigma is the standard deviation, in coarse pixels, that must be left
	// for a blur to be worked out on a coarser raster.
	leastSigma = 2.8
	// sharp is the variance, px2, below which a blur changes nothing.
	sharp = 0.02
)

// gaussian blurs a plane by a Gaussian of a variance in px2. What is much wider
// than a pixel is blurred on a coarser raster and drawn out again, which blurs a
// little by itself: that much is left out.
func (p plane) gaussian(variance float64) plane {
	if variance < sharp {
		return plane{p.w, p.h, append([]float32(nil), p.v...)}
	}
	by := 1
	for math.Sqrt(variance)/float64(2*by) >= leastSigma {
		by *= 2
	}
	if by == 1 {
		return p.convolved(kernel(variance))
	}
	small := p.coarse(by).convolved(kernel((variance - coarseLoss(by)) / float64(by*by)))
	return small.drawnOut(by, p.w, p.h)
}

// coarseLoss is the variance, px2, of averaging blocks of by px and drawing them
// out again evenly: (by^2 - 1) / 12 of the block; of the tent (by^2 - 1) / 6 if by
// is odd, else by^2 / 6 + 1 / 12.
func coarseLoss(by int) float64 { return float64(by*by-by%2) / 4 }

// kernel is the right half of a Gaussian, from its middle on, that adds up to 1.
func kernel(variance float64) []float32 {
	n := int(math.Ceil(kernelReach * math.Sqrt(variance)))
	k, sum := make([]float64, n+1), 0.0
	for i := range k {
		k[i] = colour.FallOff(float64(i*i) / (2 * variance))
		sum += k[i]
		if i > 0 {
			sum += k[i]
		}
	}
	out := make([]float32, n+1)
	for i := range k {
		out[i] = float32(k[i] / sum)
	}
	return out
}

// convolved sums a plane under a kernel, along rows and then columns.
func (p plane) convolved(k []float32) plane {
	tmp, out := newPlane(p.w, p.h), newPlane(p.w, p.h)
	n := len(k) - 1
	pad := make([]float32, p.w+2*n)
	for y := 0; y < p.h; y++ {
		copy(pad[n:], p.v[y*p.w:(y+1)*p.w])
		weigh(tmp.v[y*p.w:(y+1)*p.w], pad, k, n)
	}
	none := make([]float32, p.w)
	row := func(y int) []float32 {
		if y < 0 || y >= p.h {
			return none
		}
		return tmp.v[y*p.w : (y+1)*p.w]
	}
	for y := 0; y < p.h; y++ {
		weighRows(out.v[y*p.w:(y+1)*p.w], row, y, k)
	}
	return out
}

// weighRows sums the rows round row y under a kernel.
func weighRows(out []float32, row func(int) []float32, y int, k []float32) {
	for x, v := range row(y) {
		out[x] = mul(v, k[0])
	}
	i, n := 1, len(k)-1
	for ; i < n; i += 2 {
		a, b, ki := row(y - i)[:len(out)], row(y + i)[:len(out)], k[i]
		c, d, kj := row(y - i - 1)[:len(out)], row(y + i + 1)[:len(out)], k[i+1]
		for x := range out {
			out[x] += mul(a[x]+b[x], ki) + mul(c[x]+d[x], kj)
		}
	}
	if i == n {
		a, b, ki := row(y - n)[:len(out)], row(y + n)[:len(out)], k[n]
		for x := range out {
			out[x] += mul(a[x]+b[x], ki)
		}
	}
}

// weigh sums one padded row under a kernel.
func weigh(out, pad, k []float32, n int) {
	w := len(out)
	for x, v := range pad[n : n+w] {
		out[x] = mul(v, k[0])
	}
	i := 1
	for ; i < n; i += 2 { // two steps out at a time: half the sums are kept
		a, b, ki := pad[n-i:][:len(out)], pad[n+i:][:len(out)], k[i]
		c, d, kj := pad[n-i-1:][:len(out)], pad[n+i+1:][:len(out)], k[i+1]
		for x := range out {
			out[x] += mul(a[x]+b[x], ki) + mul(c[x]+d[x], kj)
		}
	}
	if i == n {
		a, b, ki := pad[:len(out)], pad[2*n:][:len(out)], k[n]
		for x := range out {
			out[x] += mul(a[x]+b[x], ki)
		}
	}
}

// row is a row of a plane.
func (p plane) row(y int) []float32 { return p.v[y*p.w : (y+1)*p.w] }

// coarse averages blocks of by px, with one more block on every side to draw out
// from; what lies off the plane is 0.
func (p plane) coarse(by int) plane {
	c := newPlane((p.w+by-1)/by+2, (p.h+by-1)/by+2)
	for y := 0; y < p.h; y++ {
		out := c.v[(y/by+1)*c.w+1:][:c.w-2]
		for x, v := range p.v[y*p.w : (y+1)*p.w] {
			out[x/by] += v
		}
	}
	for i := range c.v {
		c.v[i] /= float32(by * by)
	}
	return c
}

// drawnOut is a coarse plane, which has one more block on every side, at by times
// the pixels: evenly between its middles.
func (p plane) drawnOut(by, w, h int) plane {
	out := newPlane(w, h)
	line := make([]float32, p.w)
	at, share := make([]int, w), make([]float32, w)
	for x := range at {
		at[x], share[x] = between(x, by)
	}
	for y := 0; y < h; y++ {
		a, t := between(y, by)
		up, down := p.row(a), p.row(a+1)
		for x, u := range up {
			line[x] = u + mul(down[x]-u, t)
		}
		row := out.v[y*w : (y+1)*w]
		for x := range row {
			l := line[at[x]:][:2]
			row[x] = l[0] + mul(l[1]-l[0], share[x])
		}
	}
	return out
}

// between gives the coarse pixel, counted from the one before the first, whose
// middle lies at or before pixel x, and how far x lies on the way to the next.
func between(x, by int) (int, float32) {
	at := 2*x + 1 + by
	return at / (2 * by), float32(at%(2*by)) / float32(2*by)
}
