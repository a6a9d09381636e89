package sight

// window is a box of a width in px (1 or more, fractions allowed): a pixel and
// r pixels on either side count in full, the next ones by the share end.
type window struct {
	r         int
	end, norm float32
}

func windowOf(width float64) window {
	r := int((width - 1) / 2)
	return window{r: r, end: float32((width-1)/2 - float64(r)), norm: float32(1 / width)}
}

// box averages in place over a window of a width in px, along rows and then
// columns; widths of 1 and below change nothing. Outside the picture is 0. tmp
// is scratch of the same size.
func box(ch, tmp []float32, w, h int, width float64) {
	if width <= 1 {
		return
	}
	win := windowOf(width)
	pad := make([]float32, w+2*win.r+3)
	for y := 0; y < h; y++ {
		copy(pad[win.r+1:], ch[y*w:(y+1)*w])
		win.row(pad, tmp[y*w:(y+1)*w])
	}
	win.columns(tmp, ch, w, h)
}

// row averages a row that has r+1 zeros before it and as many after.
func (win window) row(pad, out []float32) {
	var sum float64
	full := 2*win.r + 1
	for _, v := range pad[1:full] {
		sum += float64(v)
	}
	before := pad[:len(out)]
	first := pad[1 : 1+len(out)]
	last := pad[full : full+len(out)]
	after := pad[full+1 : full+1+len(out)]
	for x := range out {
		sum += float64(last[x])
		out[x] = mul(float32(sum)+mul(before[x]+after[x], win.end), win.norm)
		sum -= float64(first[x])
	}
}

func (win window) columns(in, out []float32, w, h int) {
	sum, none := make([]float64, w), make([]float32, w)
	row := func(y int) []float32 {
		if y < 0 || y >= h {
			return none
		}
		return in[y*w : (y+1)*w]
	}
	for y := 0; y < min(win.r, h); y++ {
		for x, v := range row(y) {
			sum[x] += float64(v)
		}
	}
	for y := 0; y < h; y++ {
		before, first := row(y - win.r - 1)[:w], row(y - win.r)[:w]
		last, after := row(y + win.r)[:w], row(y + win.r + 1)[:w]
		o := out[y*w : (y+1)*w][:w]
		for x, s := range sum {
			s += float64(last[x])
			o[x] = mul(float32(s)+mul(before[x]+after[x], win.end), win.norm)
			sum[x] = s - float64(first[x])
		}
	}
}

// soften returns a copy blurred by two boxes of the width: a bell of a
// standard deviation of about 0.41 widths.
func soften(ch []float32, w, h int, width float64) []float32 {
	if width >= coarseFrom {
		return softenCoarse(ch, w, h, width)
	}
	out := append([]float32(nil), ch...)
	tmp := make([]float32, len(ch))
	box(out, tmp, w, h, width)
	box(out, tmp, w, h, width)
	return out
}

// coarseFrom is the width, in px, from which a blur is worked out on a raster
// coarser by coarseBy: nothing is left in it that the coarse raster loses.
const (
	coarseFrom = 20
	coarseBy   = 4
)

func softenCoarse(ch []float32, w, h int, width float64) []float32 {
	cw, chh := (w+coarseBy-1)/coarseBy, (h+coarseBy-1)/coarseBy
	small := coarse(ch, w, h, cw)
	tmp := make([]float32, len(small))
	left := widthOf(windowOf(width).variance()/(coarseBy*coarseBy) - coarseLoss)
	box(small, tmp, cw, chh, left)
	box(small, tmp, cw, chh, left)
	return finely(small, cw, chh, w, h)
}

// coarseLoss is half the variance, in coarse pixels squared, of going to the
// coarse raster and back: a block of coarseBy and a tent twice as wide.
const coarseLoss = (1 - 1.0/(coarseBy*coarseBy)) / 12 / 2 * 3

// variance is the window's own blur, px squared.
func (win window) variance() float64 {
	r := float64(win.r)
	full := r * (r + 1) * (2*r + 1) / 3
	return (full + float64(2*float64(win.end)*(r+1)*(r+1))) * float64(win.norm)
}

// widthOf returns the width of the window that has a variance.
func widthOf(variance float64) float64 {
	r := 0.0
	for (r+1)*(r+2)/3 <= variance {
		r++
	}
	full := r * (r + 1) * (2*r + 1) / 3
	end := (float64(variance*(2*r+1)) - full) / (2 * (float64((r+1)*(r+1)) - variance))
	return 2*r + 1 + 2*end
}

// coarse averages blocks of coarseBy x coarseBy px; what lies outside is 0.
func coarse(ch []float32, w, h, cw int) []float32 {
	out := make([]float32, cw*((h+coarseBy-1)/coarseBy))
	for y := 0; y < h; y++ {
		o := out[y/coarseBy*cw:][:cw]
		for x, v := range ch[y*w : (y+1)*w] {
			o[x/coarseBy] += v
		}
	}
	for i := range out {
		out[i] /= coarseBy * coarseBy
	}
	return out
}

// finely draws a coarse raster out again, evenly between its middles.
func finely(small []float32, cw, chh, w, h int) []float32 {
	out := make([]float32, w*h)
	line := make([]float32, cw+1)
	for y := 0; y < h; y++ {
		a, t := between(y)
		up, down := small[max(a, 0)*cw:][:cw], small[min(a+1, chh-1)*cw:][:cw]
		for x := range up {
			line[x] = mix(up[x], down[x], t)
		}
		line[cw] = line[cw-1]
		o := out[y*w : (y+1)*w]
		for x := range o {
			a, t := between(x)
			o[x] = mix(line[max(a, 0)], line[a+1], t)
		}
	}
	return out
}

// between gives the coarse pixel whose middle lies at or before fine pixel x,
// and how far x lies on the way to the next.
func between(x int) (int, float32) {
	at := 2*x + 1 - coarseBy
	if at < 0 {
		return -1, float32(at+2*coarseBy) / (2 * coarseBy)
	}
	return at / (2 * coarseBy), float32(at%(2*coarseBy)) / (2 * coarseBy)
}
