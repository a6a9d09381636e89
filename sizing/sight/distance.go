package sight

import "math"

// edgeDistance returns, for each pixel centre, the distance in px to the edge
// where cover crosses one half: positive inside, negative outside, finer than
// a pixel. far (px) stands where there is no edge at all or none so near.
//
// Seeds are pixels beside the edge; the exact nearest seed centre is found
// with a column sweep and a lower envelope along rows (Felzenszwalb and
// Huttenlocher 2012), then moved by what the seed's own cover says.
func edgeDistance(cover []float32, w, h int, far float32) []float32 {
	rise := columnSweep(cover, w, h)
	out := make([]float32, w*h)
	env := newEnvelope(w)
	for y := 0; y < h; y++ {
		row := rise[y*w : (y+1)*w]
		o := out[y*w : (y+1)*w]
		if !env.build(row) {
			fillFar(o, cover[y*w:(y+1)*w], far)
			continue
		}
		env.read(row, o, cover, w, y, far)
	}
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

// markSeeds sets 0 at pixels on either side of the edge.
func markSeeds(cover []float32, d []int16, w, h int) {
	for y := 0; y < h; y++ {
		row := cover[y*w : (y+1)*w]
		for x, v := range row {
			in := v >= 0.5
			if x+1 < w && (row[x+1] >= 0.5) != in {
				d[y*w+x], d[y*w+x+1] = 0, 0
			}
			if y+1 < h && (cover[(y+1)*w+x] >= 0.5) != in {
				d[y*w+x], d[(y+1)*w+x] = 0, 0
			}
		}
	}
}

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

func (e *envelope) read(rise []int16, out, cover []float32, w, y int, far float32) {
	k := 0
	for x := range out {
		for k+1 < e.n && e.start[k+1] < float64(x) {
			k++
		}
		q := e.at[k]
		dx, dy := x-q, int(rise[q])
		dist := far
		in := cover[y*w+x] >= 0.5
		if near := dx*dx + dy*dy; float32(near) < far*far {
			off := cover[(y+dy)*w+q] - 0.5
			if !in {
				off = -off
			}
			dist = float32(math.Sqrt(float64(near))) + off
		}
		if !in {
			dist = -dist
		}
		out[x] = dist
	}
}
