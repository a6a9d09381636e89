package mask

// Field says for each pixel which pixel of another kind lies nearest, centre
// to centre, and how far: the exact Euclidean feature transform in two
// separable passes (Meijster, Roerdink and Hesselink 2000; Felzenszwalb and
// Huttenlocher 2012).
type Field struct {
	W, H int
	// D2 is the squared distance to the nearest site, in px2; 0 where skipped.
	D2 []int32
	// SX is the column of the nearest site, -1..W; the sites just off the
	// raster have x -1 or W, or y -1 or H.
	SX []int16
	// DY is the way down a pixel's own column to its nearest site in that
	// column, negative upwards.
	DY []int16
}

// far stands for "no site in this column": beyond any raster, and its square
// and a raster's still fit 32 bits.
const far = 30000

// GreatestSide is the longest side of a raster that can be measured.
const GreatestSide = 16000

// Site returns the nearest site of a pixel.
func (f *Field) Site(x, y int) (sx, sy int) {
	i := y*f.W + x
	sx = int(f.SX[i])
	if int(f.D2[i]) == (x-sx)*(x-sx) {
		return sx, y // in the pixel's own row
	}
	return sx, y + int(f.DY[i-x+sx])
}

func newField(w, h int) *Field {
	return &Field{W: w, H: h, D2: make([]int32, w*h), SX: make([]int16, w*h), DY: make([]int16, w*h)}
}

// Others finds, for every pixel at once, the nearest pixel with another label.
// Labels for which skip is true are left out (D2 0), though they are sites for
// the rest.
func Others(label []uint8, w, h int, skip *[256]bool) *Field {
	f := newField(w, h)
	otherInColumn(f, label)
	row := newEnvelope(w)
	for y := 0; y < h; y++ {
		line := label[y*w : y*w+w]
		for x0 := 0; x0 < w; {
			l, x1 := line[x0], x0+1
			for x1 < w && line[x1] == l {
				x1++
			}
			if !skip[l] {
				row.run(f, y, x0, x1)
			}
			x0 = x1
		}
	}
	return f
}

// otherInColumn fills DY with the way to the nearest other label in the column.
func otherInColumn(f *Field, label []uint8) {
	w, h := f.W, f.H
	up := make([]int16, w)
	for y := 0; y < h; y++ {
		here, dy := label[y*w:y*w+w], f.DY[y*w:y*w+w]
		above := here
		if y > 0 {
			above = label[y*w-w : y*w]
		}
		for x, l := range here {
			if above[x] != l {
				up[x] = 0
			}
			up[x]++
			dy[x] = -up[x]
		}
	}
	down := up
	clear(down)
	for y := h - 1; y >= 0; y-- {
		here, dy := label[y*w:y*w+w], f.DY[y*w:y*w+w]
		below := here
		if y < h-1 {
			below = label[y*w+w : y*w+2*w]
		}
		for x, l := range here {
			if below[x] != l {
				down[x] = 0
			}
			down[x]++
			if down[x] < -dy[x] {
				dy[x] = down[x]
			}
		}
	}
}

// Nearest finds, for every pixel, the nearest pixel that is a site; ok is
// false when there is none.
func Nearest(site []bool, w, h int) (f *Field, ok bool) {
	f = newField(w, h)
	siteInColumn(f, site)
	for _, s := range site {
		if s {
			ok = true
			break
		}
	}
	if !ok {
		return f, false
	}
	row := newEnvelope(w)
	for y := 0; y < h; y++ {
		row.whole(f, y)
	}
	return f, true
}

func siteInColumn(f *Field, site []bool) {
	w, h := f.W, f.H
	run := make([]int16, w)
	for x := range run {
		run[x] = far
	}
	for y := 0; y < h; y++ {
		for x := 0; x < w; x++ {
			if site[y*w+x] {
				run[x] = 0
			} else if run[x] < far {
				run[x]++
			}
			f.DY[y*w+x] = -run[x]
		}
	}
	for x := range run {
		run[x] = far
	}
	for y := h - 1; y >= 0; y-- {
		for x := 0; x < w; x++ {
			if site[y*w+x] {
				run[x] = 0
			} else if run[x] < far {
				run[x]++
			}
			if run[x] < -f.DY[y*w+x] {
				f.DY[y*w+x] = run[x]
			}
		}
	}
}

// envelope is the scratch of the row pass: the lower envelope of parabolas,
// shifted by one so that column -1 has a place.
type envelope struct {
	g2    []int32 // squared column distance, at x+1
	at    []int32 // vertices on the envelope
	start []int32 // where each begins to be the lowest
}

func newEnvelope(w int) *envelope {
	return &envelope{g2: make([]int32, w+2), at: make([]int32, w+2), start: make([]int32, w+2)}
}

// run fills one run x0..x1-1 of equal labels: the pixels on either side of it
// are sites, so nothing beyond them matters.
func (e *envelope) run(f *Field, y, x0, x1 int) {
	dy := f.DY[y*f.W : y*f.W+f.W]
	e.g2[x0], e.g2[x1+1] = 0, 0
	for x := x0; x < x1; x++ {
		g := int32(dy[x])
		e.g2[x+1] = g * g
	}
	e.sweep(f, y, x0, x1, int32(x0), int32(x1+1))
}

// whole fills one row when sites may lie anywhere.
func (e *envelope) whole(f *Field, y int) {
	dy := f.DY[y*f.W : y*f.W+f.W]
	for x, d := range dy {
		e.g2[x+1] = int32(d) * int32(d)
	}
	e.sweep(f, y, 0, f.W, 1, int32(f.W))
}

// sweep builds the envelope over shifted columns lo..hi and writes x0..x1-1.
func (e *envelope) sweep(f *Field, y, x0, x1 int, lo, hi int32) {
	g2, at, start := e.g2, e.at, e.start
	top := 0
	at[0], start[0] = lo, lo
	for u := lo + 1; u <= hi; u++ {
		gu := g2[u]
		for top >= 0 {
			t, s := start[top], at[top]
			if (t-s)*(t-s)+g2[s] <= (t-u)*(t-u)+gu {
				break
			}
			top--
		}
		if top < 0 {
			top = 0
			at[0], start[0] = u, lo
			continue
		}
		s := at[top]
		num, den := (u-s)*(u+s)+gu-g2[s], 2*(u-s)
		if from := 1 + num/den; from <= hi { // num >= 0: u has not yet won at start[top] >= 0
			top++
			at[top], start[top] = u, from
		}
	}
	d2, sx := f.D2[y*f.W:y*f.W+f.W], f.SX[y*f.W:y*f.W+f.W]
	for x := int32(x1); x > int32(x0); x-- {
		for start[top] > x {
			top--
		}
		s := at[top]
		d2[x-1] = (x-s)*(x-s) + g2[s]
		sx[x-1] = int16(s - 1)
	}
}
