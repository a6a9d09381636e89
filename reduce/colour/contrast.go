package colour

// Luminance is the relative luminance of WCAG 2 (0 black .. 1 white).
func (c RGB8) Luminance() float64 {
	l := c.Linear()
	return dot(0.2126, 0.7152, 0.0722, l.R, l.G, l.B)
}

// Contrast is the contrast ratio of WCAG 2, 1..21, the same both ways. It must
// not be rounded before it is compared.
func Contrast(c, d RGB8) float64 {
	a, b := c.Luminance(), d.Luminance()
	if a < b {
		a, b = b, a
	}
	return (a + 0.05) / (b + 0.05)
}
