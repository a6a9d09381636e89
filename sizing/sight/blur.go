package sight

// box averages in place over a window of width px (1 or more, fractions
// allowed: the two end pixels count in part), along rows and then columns.
// Outside the picture is 0. tmp is scratch of the same size.
func box(ch, tmp []float32, w, h int, width float64) {
	if width <= 1 {
		return
	}
	r := int((width - 1) / 2)
	end := float32((width-1)/2 - float64(r))
	norm := float32(1 / width)
	for y := 0; y < h; y++ {
		boxRow(ch[y*w:(y+1)*w], tmp[y*w:(y+1)*w], r, end, norm)
	}
	boxColumns(tmp, ch, w, h, r, end, norm)
}

func boxRow(in, out []float32, r int, end, norm float32) {
	w := len(in)
	var sum float64
	for x := 0; x < min(r, w); x++ {
		sum += float64(in[x])
	}
	for x := 0; x < w; x++ {
		if x+r < w {
			sum += float64(in[x+r])
		}
		v := float32(sum)
		if x+r+1 < w {
			v += mul(in[x+r+1], end)
		}
		if x-r-1 >= 0 {
			v += mul(in[x-r-1], end)
		}
		out[x] = mul(v, norm)
		if x-r >= 0 {
			sum -= float64(in[x-r])
		}
	}
}

func boxColumns(in, out []float32, w, h, r int, end, norm float32) {
	sum := make([]float64, w)
	grow := func(y int, sign float64) {
		if y < 0 || y >= h {
			return
		}
		for x, v := range in[y*w : (y+1)*w] {
			sum[x] += float64(sign * float64(v))
		}
	}
	for y := 0; y < min(r, h); y++ {
		grow(y, 1)
	}
	none := make([]float32, w)
	rowAt := func(y int) []float32 {
		if y < 0 || y >= h {
			return none
		}
		return in[y*w : (y+1)*w]
	}
	for y := 0; y < h; y++ {
		grow(y+r, 1)
		above, below, o := rowAt(y-r-1), rowAt(y+r+1), out[y*w:(y+1)*w]
		for x := range o {
			o[x] = mul(float32(sum[x])+mul(above[x]+below[x], end), norm)
		}
		grow(y-r, -1)
	}
}

// soften returns a copy blurred by two boxes of the width: a bell of a
// standard deviation of about 0.41 widths.
func soften(ch []float32, w, h int, width float64) []float32 {
	out := append([]float32(nil), ch...)
	tmp := make([]float32, len(ch))
	box(out, tmp, w, h, width)
	box(out, tmp, w, h, width)
	return out
}
