package mask

// Field says for each pixel which pixel of another kind lies nearest, centre
// to centre, and how far: the exact Euclidean feature transform.
type Field struct {
	W, H int
	// D2 is the squared distance to the nearest site, in px2; 0 where skipped.
	D2 []int32
	// SX and SY are the column and row of the nearest site; the sites just off
	// the raster have x -1 or W, or y -1 or H.
	SX, SY []int16
}

// GreatestSide is the longest side of a raster that can be measured.
const GreatestSide = 16000

// Site returns the nearest site of a pixel.
func (f *Field) Site(x, y int) (sx, sy int) {
	i := y*f.W + x
	return int(f.SX[i]), int(f.SY[i])
}

func newField(w, h int) *Field {
	return &Field{W: w, H: h, D2: make([]int32, w*h), SX: make([]int16, w*h), SY: make([]int16, w*h)}
}

// Others finds, for every pixel at once, the nearest pixel with another label.
// Labels for which skip is true are left out (D2 0), though they are sites for
// the rest.
func Others(label []uint8, w, h int, skip *[256]bool) *Field {
	f := newField(w, h)
	c := runsOf(label, w, h)
	k := newColumns(c, skip, true, everywhere)
	e := newEnvelope(k)
	for y := range h {
		k.down(int32(y))
		runs := c.row(y)
		e.others(y, runs, skip)
		for i := range runs {
			f.fill(y, e.of(i), runs[i].X1)
		}
	}
	return f
}

// Nearest finds, for every pixel, the nearest pixel that is a site; ok is
// false when there is none.
func Nearest(site []bool, w, h int) (f *Field, ok bool) {
	f = newField(w, h)
	label, ok := labelled(site)
	if !ok {
		return f, false
	}
	c := runsOf(label, w, h)
	k := newColumns(c, skipSites, false, everywhere)
	e := newEnvelope(k)
	for y := range h {
		k.down(int32(y))
		e.sites(y, c.row(y))
		f.fill(y, e.of(0), int32(w))
	}
	return f, true
}

// skipSites leaves out the label of sites.
var skipSites = &[256]bool{1: true}

// labelled gives sites the label 1; some is false when there is none.
func labelled(site []bool) (label []uint8, some bool) {
	label = make([]uint8, len(site))
	for i, s := range site {
		if s {
			label[i], some = 1, true
		}
	}
	return label, some
}

// fill writes what a run of row y, up to column x1, has nearest.
func (f *Field) fill(y int, all []stretch, x1 int32) {
	line := y * f.W
	for i := range all {
		s, end := &all[i], x1
		if i+1 < len(all) {
			end = all[i+1].start
		}
		from := line + int(s.start)
		d2, sx, sy := f.D2[from:line+int(end)], f.SX[from:line+int(end)], f.SY[from:line+int(end)]
		for j := range d2 {
			x := int(s.start) + j
			d2[j], sx[j], sy[j] = int32(s.far2(x)), int16(s.site(x)), int16(s.v)
		}
	}
}
