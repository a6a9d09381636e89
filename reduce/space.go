package reduce

// Shrink brings a drawing down so that its long side is longSide pixels, by the
// exact mean over the area each new pixel covers, taken of encoded colour
// weighted by alpha (as a browser's canvas does; a mean of light would make
// dark lines thinner than they were drawn). A drawing that is small enough, or
// a longSide below 1, gives the same drawing back. What is known of the file is kept.
func Shrink(d *Drawing, longSide int) *Drawing {
	if longSide < 1 || max(d.W, d.H) <= longSide {
		return d
	}
	w, h := fit(d.W, d.H, longSide)
	s := &Drawing{W: w, H: h, FileW: d.FileW, FileH: d.FileH, Part: d.Part, Clipped: d.Clipped}
	s.Pix = shrinkPix(d.Pix, d.W, d.H, w, h)
	return s
}

// shrinkPix is exact in whole numbers: lengths are counted in units of which
// an old pixel has w (or h) and a new pixel has the old width (or height), so
// that every overlap is a whole number. 100 megapixels times 255 times 255
// stay far below 64 bits.
func shrinkPix(pix []uint32, oldW, oldH, w, h int) []uint32 {
	out := make([]uint32, w*h)
	row := make([]uint64, 4*w)
	sum := make([]uint64, 4*w)
	area := uint64(oldW) * uint64(oldH)
	y, room := 0, oldH // the new row being filled, and how much of it is still open
	for oy := 0; oy < oldH; oy++ {
		shrinkRow(row, pix[oy*oldW:(oy+1)*oldW], w)
		part := min(room, h)
		addRow(sum, row, uint64(part))
		if room -= part; room > 0 {
			continue
		}
		closeRow(out[y*w:(y+1)*w], sum, area)
		clear(sum)
		y, room = y+1, oldH
		if rest := h - part; rest > 0 {
			addRow(sum, row, uint64(rest))
			room -= rest
		}
	}
	return out
}

// shrinkRow sums one old row into w new pixels: red, green and blue times
// alpha, and alpha, each times its overlap.
func shrinkRow(row []uint64, old []uint32, w int) {
	var r, g, b, a uint64
	x, room := 0, len(old)
	for _, p := range old {
		pa := uint64(p >> 24)
		pr, pg, pb := uint64(p&255)*pa, uint64(p>>8&255)*pa, uint64(p>>16&255)*pa
		part := min(room, w)
		n := uint64(part)
		r, g, b, a = r+n*pr, g+n*pg, b+n*pb, a+n*pa
		if room -= part; room > 0 {
			continue
		}
		row[4*x], row[4*x+1], row[4*x+2], row[4*x+3] = r, g, b, a
		rest := w - part
		n = uint64(rest)
		r, g, b, a = n*pr, n*pg, n*pb, n*pa
		x, room = x+1, len(old)-rest
	}
}

func addRow(sum, row []uint64, times uint64) {
	row = row[:len(sum)]
	for i := range sum {
		sum[i] += times * row[i]
	}
}

// closeRow turns sums into straight-alpha pixels, rounded half up.
func closeRow(out []uint32, sum []uint64, area uint64) {
	for x := range out {
		a := sum[4*x+3]
		if a == 0 {
			continue
		}
		r, g, b := (sum[4*x]+a/2)/a, (sum[4*x+1]+a/2)/a, (sum[4*x+2]+a/2)/a
		alpha := (a + area/2) / area
		out[x] = uint32(r) | uint32(g)<<8 | uint32(b)<<16 | uint32(alpha)<<24
	}
}

// fit returns w and h brought down so that the longer is longSide, each at
// least 1, rounded to the nearest pixel.
func fit(w, h, longSide int) (int, int) {
	long := max(w, h)
	if long <= longSide {
		return w, h
	}
	scale := func(n int) int { return max(1, int((int64(n)*int64(longSide)+int64(long)/2)/int64(long))) }
	return scale(w), scale(h)
}
