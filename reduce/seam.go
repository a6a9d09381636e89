package reduce

// seamMost is the greatest part of a seam, in 1, that shows what lies under
// it: where two anti-aliased shapes each cover half of a pixel, a renderer
// that paints one after the other leaves a quarter of it bare.
const seamMost = 0.27

// seam is true when a pixel mixes the flats of two shapes that meet in it and
// a little of something under them: no colour of its own.
func (e *edger) seam(i int) bool {
	var c near
	e.collect(i, 1, e.grip, &c)
	p := e.grade.tone(e.pix[i])
	for x := 0; x < c.n; x++ {
		for y := 0; y < x; y++ {
			if e.seamOf(&p, &e.tones[c.label[x]], &e.tones[c.label[y]]) {
				return true
			}
		}
	}
	return false
}

// seamOf tries the ground and every flat under a seam of a and b.
func (e *edger) seamOf(p, a, b *tone) bool {
	under := func(t *tone) bool {
		off2, ok := mixOfThree(p, a, b, t)
		return ok && off2 <= float64(e.mix*e.mix)
	}
	if under(&e.tones[None]) {
		return true
	}
	for k := 0; k < e.n; k++ {
		if under(&e.tones[k]) {
			return true
		}
	}
	return false
}

// mixOfThree returns the squared distance of p from the plane through a, b and
// t, and whether the mix nearest p holds something of a and b and at most
// seamMost of t.
func mixOfThree(p, a, b, t *tone) (off2 float64, ok bool) {
	var u, v, q [3]float64 // from b: to a, to t, to p
	for k := range u {
		u[k], v[k], q[k] = float64(a[k]-b[k]), float64(t[k]-b[k]), float64(p[k]-b[k])
	}
	dot := func(m, n *[3]float64) float64 {
		return float64(m[0]*n[0]) + float64(m[1]*n[1]) + float64(m[2]*n[2])
	}
	uu, vv, uv, uq, vq := dot(&u, &u), dot(&v, &v), dot(&u, &v), dot(&u, &q), dot(&v, &q)
	det := float64(uu*vv) - float64(uv*uv)
	if det <= 0 {
		return 0, false // one of them is a mix of the others, tried before
	}
	ofA := (float64(uq*vv) - float64(vq*uv)) / det
	ofT := (float64(vq*uu) - float64(uq*uv)) / det
	for k := range q {
		q[k] -= float64(ofA*u[k]) + float64(ofT*v[k])
	}
	return dot(&q, &q), ofT >= 0 && ofT <= seamMost && ofA >= 0 && ofA+ofT <= 1
}
