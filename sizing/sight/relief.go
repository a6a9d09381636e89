package sight

// relief is the slope of a surface at picture resolution: its normal's parts
// across the picture.
type relief struct{ nx, ny []float32 }

// rounded is the height of a wall at a distance from its foot: a bevel that
// starts at the steepness and runs out level after radius px.
func rounded(d, radius, steep float32) float32 {
	if d <= 0 {
		return 0
	}
	if d >= radius {
		return mul(radius, steep) / 2
	}
	t := d / radius
	return mul(mul(radius, steep)/2, mul(t, 2-t))
}

// even blurs heights over 3 x 3 px, in place, so that ridges do not glitter.
func even(z []float32, w, h int) {
	tmp := make([]float32, len(z))
	for y := 0; y < h; y++ {
		in, out := z[y*w:(y+1)*w], tmp[y*w:(y+1)*w]
		for x := range out {
			l, r := max(x-1, 0), min(x+1, w-1)
			out[x] = (in[l] + in[r] + 2*in[x]) / 4
		}
	}
	for y := 0; y < h; y++ {
		up, at, down := tmp[max(y-1, 0)*w:], tmp[y*w:], tmp[min(y+1, h-1)*w:]
		out := z[y*w : (y+1)*w]
		for x := range out {
			out[x] = (up[x] + down[x] + 2*at[x]) / 4
		}
	}
}

// slopes returns the normals of a height field (px of height per px across)
// where there is any cover.
func slopes(z, cover []float32, w, h int) relief {
	r := relief{nx: make([]float32, len(z)), ny: make([]float32, len(z))}
	for y := 0; y < h; y++ {
		up, down := z[max(y-1, 0)*w:], z[min(y+1, h-1)*w:]
		at, some := z[y*w:(y+1)*w], cover[y*w:(y+1)*w]
		for x := range at {
			if some[x] == 0 {
				continue
			}
			gx := (at[min(x+1, w-1)] - at[max(x-1, 0)]) / 2
			gy := (down[x] - up[x]) / 2
			if gx == 0 && gy == 0 {
				continue
			}
			k := 1 / root(1+mul(gx, gx)+mul(gy, gy))
			r.nx[y*w+x], r.ny[y*w+x] = -mul(gx, k), -mul(gy, k)
		}
	}
	return r
}
