package sight

import "math"

// edgeDistance returns, for each pixel centre, the distance in px to the edge
// where cover crosses one half: positive inside, negative outside, finer than
// a pixel. far (px) stands where there is no edge at all or none so near.
//
// Seeds are pixels beside the edge; the exact nearest seed centre is found
// with a column sweep and a lower envelope along rows (Felzenszwalb and
// Huttenlocher 2012), then that centre is moved onto the edge by its own cover and
// the way its neighbours fall. What this leaves of steps is evened out.
func edgeDistance(cover []float32, w, h int, far float32) []float32 {
	rise := columnSweep(cover, w, h)
	foot := feetOf(cover, w, h, rise)
	out := make([]float32, w*h)
	env := newEnvelope(w)
	for y := 0; y < h; y++ {
		row := rise[y*w : (y+1)*w]
		o := out[y*w : (y+1)*w]
		if !env.build(row) {
			fillFar(o, cover[y*w:(y+1)*w], far)
			continue
		}
		env.read(row, o, cover, foot, w, y, far)
	}
	even(out, w, h)
	return out
}

func fillFar(o, cover []float32, far float32) {
	for x := range o {
		o[x] = far
		if cover[x] < 0.5 {
			o[x] = -far
		}
	}
}

// noSeed marks a column without an edge; it is larger than any picture.
const noSeed = 30000

// columnSweep gives, for each pixel, the signed rows to the nearest seed of
// its column.
func columnSweep(cover []float32, w, h int) []int16 {
	d := make([]int16, w*h)
	for i := range d {
		d[i] = noSeed
	}
	markSeeds(cover, d, w, h)
	for y := 1; y < h; y++ {
		up, at := d[(y-1)*w:y*w], d[y*w:(y+1)*w]
		for x, u := range up {
			if u != noSeed && at[x] != 0 {
				at[x] = u - 1
			}
		}
	}
	for y := h - 2; y >= 0; y-- {
		down, at := d[(y+1)*w:(y+2)*w], d[y*w:(y+1)*w]
		for x, v := range down {
			if v == noSeed {
				continue
			}
			if a := at[x]; a == noSeed || v+1 < abs16(a) && v+1 >= 0 {
				at[x] = v + 1
			}
		}
	}
	return d
}

func abs16(v int16) int16 {
	if v < 0 {
		return -v
	}
	return v
}

// markSeeds sets 0 at the pixels that know where the edge is.
func markSeeds(cover []float32, d []int16, w, h int) {
	for y := 0; y < h; y++ {
		row := cover[y*w : (y+1)*w]
		for x, v := range row {
			in, i := v >= 0.5, y*w+x
			if x+1 < w && (row[x+1] >= 0.5) != in {
				markPair(cover, d, i, i+1)
			}
			if y+1 < h && (cover[i+w] >= 0.5) != in {
				markPair(cover, d, i, i+w)
			}
		}
	}
}

// markPair marks two pixels on either side of the edge. One that is wholly
// covered or bare knows less than one that the edge passes through.
func markPair(cover []float32, d []int16, i, j int) {
	ci, cj := crossed(cover[i]), crossed(cover[j])
	if ci || !cj {
		d[i] = 0
	}
	if cj || !ci {
		d[j] = 0
	}
}

func crossed(v float32) bool { return v > 0.004 && v < 0.996 }

// envelope is the lower envelope of one row's parabolas.
type envelope struct {
	at    []int     // column of each parabola
	start []float64 // from where it is lowest
	n     int
}

func newEnvelope(w int) *envelope {
	return &envelope{at: make([]int, w), start: make([]float64, w+1)}
}

func (e *envelope) build(rise []int16) bool {
	e.n = 0
	for x, r := range rise {
		if r == noSeed {
			continue
		}
		high := int64(r)*int64(r) + int64(x)*int64(x)
		s := math.Inf(-1)
		for e.n > 0 {
			q := e.at[e.n-1]
			rq := int64(rise[q])
			s = float64(high-rq*rq-int64(q)*int64(q)) / float64(2*(x-q))
			if s > e.start[e.n-1] {
				break
			}
			e.n--
			s = math.Inf(-1)
		}
		e.at[e.n], e.start[e.n] = x, s
		e.n++
	}
	return e.n > 0
}

func (e *envelope) read(rise []int16, out, cover []float32, foot [][2]float32, w, y int, far float32) {
	k := 0
	for x := range out {
		for k+1 < e.n && e.start[k+1] < float64(x) {
			k++
		}
		q := e.at[k]
		dx, dy := x-q, int(rise[q])
		dist := far
		if near := dx*dx + dy*dy; float32(near) < mul(far, far) {
			dist = root(e.nearest(k, x, y, rise, foot, w))
		}
		if cover[y*w+x] < 0.5 {
			dist = -dist
		}
		out[x] = dist
	}
}

// nearest is the square of the distance of pixel (x, y) from the edge, by
// parabola k or one of its neighbours: the nearest centre need not lie beside
// the nearest piece of edge.
func (e *envelope) nearest(k, x, y int, rise []int16, foot [][2]float32, w int) float32 {
	least := float32(math.MaxFloat32)
	for j := max(k-1, 0); j <= min(k+1, e.n-1); j++ {
		q := e.at[j]
		dy := int(rise[q])
		f := &foot[(y+dy)*w+q]
		ex, ey := float32(q-x)+f[0], float32(dy)+f[1]
		least = min(least, mul(ex, ex)+mul(ey, ey))
	}
	return least
}

// feetOf gives, for each seed, the way in px from its centre to the edge: down
// the slope of its neighbourhood by the distance at which a straight edge of
// that slope leaves the pixel its cover.
func feetOf(cover []float32, w, h int, rise []int16) [][2]float32 {
	foot := make([][2]float32, w*h)
	for y := 0; y < h; y++ {
		up, at, down := cover[max(y-1, 0)*w:], cover[y*w:], cover[min(y+1, h-1)*w:]
		for x := 0; x < w; x++ {
			if rise[y*w+x] != 0 {
				continue
			}
			l, r := max(x-1, 0), min(x+1, w-1)
			gx := up[r] + 2*at[r] + down[r] - up[l] - 2*at[l] - down[l]
			gy := down[l] + 2*down[x] + down[r] - up[l] - 2*up[x] - up[r]
			foot[y*w+x] = footOf(gx, gy, at[x]-0.5)
		}
	}
	return foot
}

func footOf(gx, gy, over float32) [2]float32 {
	size := mul(gx, gx) + mul(gy, gy)
	if size == 0 {
		return [2]float32{}
	}
	t := -mul(over, max(abs32(gx), abs32(gy))) / size
	return [2]float32{mul(gx, t), mul(gy, t)}
}
