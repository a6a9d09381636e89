package mask

// thin takes away points, nearest to the edge first, as long as that neither
// breaks nor shortens a line, and returns the rest in reading order. Of points
// equally near the earlier in the list goes first.
func thin(points []RidgePoint, label []uint8, w, h int) []RidgePoint {
	t := &thinning{label: label, on: make(bitmap, w*h/64+1), w: w, h: h}
	for k, d := range &ring8 {
		t.steps[k] = int(d[1])*w + int(d[0])
	}
	keys := make([]uint32, len(points))
	for i := range points {
		keys[i] = uint32(points[i].D2)
		t.on.set(t.at(&points[i]))
	}
	order := Order(keys)
	for _, k := range order {
		if p := &points[k]; removable[t.around(t.on, p)] {
			t.on.clear(t.at(p))
		}
	}
	gone := make(bitmap, len(t.on))
	for _, k := range order {
		if p := &points[k]; t.on.has(t.at(p)) && stepped[t.around(t.on, p)] && t.around(gone, p) == 0 {
			t.on.clear(t.at(p))
			gone.set(t.at(p))
		}
	}
	return t.kept(points)
}

type thinning struct {
	label []uint8
	on    bitmap // whether a pixel is a point
	w, h  int
	steps [8]int // from a pixel to those round it
}

func (t *thinning) at(p *RidgePoint) int { return int(p.Y)*t.w + int(p.X) }

// kept returns the points that are on, in reading order.
func (t *thinning) kept(points []RidgePoint) []RidgePoint {
	n := 0
	for i := range points {
		if t.on.has(t.at(&points[i])) {
			points[n] = points[i]
			n++
		}
	}
	keys, sorted := make([]uint32, n), make([]RidgePoint, n)
	for i := range keys {
		keys[i] = uint32(t.at(&points[i]))
	}
	for i, k := range Order(keys) {
		sorted[i] = points[k]
	}
	return sorted
}

// bitmap is a yes or no for each pixel.
type bitmap []uint64

func (b bitmap) has(i int) bool { return b[i>>6]>>(i&63)&1 != 0 }
func (b bitmap) set(i int)      { b[i>>6] |= 1 << (i & 63) }
func (b bitmap) clear(i int)    { b[i>>6] &^= 1 << (i & 63) }

// ring8 goes round a pixel, starting to the right, clockwise as seen with y down.
var ring8 = [8][2]int32{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}

// around returns one bit for each neighbour of the same label that is in a
// bitmap.
func (t *thinning) around(in bitmap, p *RidgePoint) uint8 {
	var bits uint8
	x, y := int(p.X), int(p.Y)
	i := y*t.w + x
	if x > 0 && y > 0 && x+1 < t.w && y+1 < t.h {
		for k, step := range &t.steps {
			if in.has(i+step) && t.label[i+step] == p.Label {
				bits |= 1 << k
			}
		}
		return bits
	}
	for k, d := range &ring8 {
		if nx, ny := x+int(d[0]), y+int(d[1]); nx >= 0 && ny >= 0 && nx < t.w && ny < t.h {
			if n := i + t.steps[k]; in.has(n) && t.label[n] == p.Label {
				bits |= 1 << k
			}
		}
	}
	return bits
}

// For each neighbourhood: removable says whether its middle is neither an end of
// a line nor needed to hold it together (Yokoi's number for lines joined through
// corners is 1); stepped, whether it is the end of a line in steps, with two
// neighbours side by side. Taking that leaves the next such end, and so on along
// the whole of a slanting line, so of these one is taken and not the next.
var removable, stepped = func() (removable, stepped [256]bool) {
	for bits := range 256 {
		count, cross, beside := 0, 0, false
		out := func(k int) int { return 1 - bits>>(k&7)&1 }
		for k := 0; k < 8; k++ {
			count += 1 - out(k)
			beside = beside || out(k)+out(k+1) == 0
			if k%2 == 0 {
				cross += out(k) - out(k)*out(k+1)*out(k+2)
			}
		}
		stepped[bits] = cross == 1 && count == 2 && beside
		removable[bits] = cross == 1 && count >= 2 && !stepped[bits]
	}
	return removable, stepped
}()
