package fastener

import "math"

// shore holds further silhouettes of the kind that a lighthouse museum sells,
// each at a usual size. Its posts were looked at one by one on a picture.
func shore() []specimen {
	ring := func(x, y, out, in float64) shape { return disc(x, y, out).less(disc(x, y, in)) }
	return []specimen{
		{"anchor", 40, join(ring(0, -15, 3.5, 1.6), box(-1.4, -12, 1.4, 14), box(-6, -10, 6, -7.5),
			disc(0, 4, 12).less(disc(0, 1.5, 11)).less(box(-20, -20, 20, 4)), poly(-14, 4, -8, 4, -12, 10), poly(14, 4, 8, 4, 12, 10))},
		{"gull", 45, join(poly(-19, -8, -8, -4, 0, 0, 8, -4, 19, -8, 9, 2, 3, 5, 0, 9, -3, 5, -9, 2), disc(0, -1, 3))},
		{"bottle", 42, join(box(-5.5, -4, 5.5, 18), disc(0, -4, 5.5), box(-2, -16, 2, -6), box(-2.8, -18, 2.8, -15))},
		{"whale", 46, join(oval(-3, 2, 14, 7), poly(8, 0, 18, -8, 14, -2, 19, 0, 12, 5))},
		{"compass", 36, join(ring(0, 0, 12, 10), poly(0, -18, 3, -3, 18, 0, 3, 3, 0, 18, -3, 3, -18, 0, -3, -3))},
		{"bell", 32, join(disc(0, -6, 7), poly(-7, -6, 7, -6, 8, 4, 12, 9, -12, 9, -8, 4), disc(0, 10, 3), ring(0, -14, 2.6, 1.1))},
		{"buoy", 38, join(poly(-4, -10, 4, -10, 7, 6, -7, 6), oval(0, 9, 13, 6), box(-0.9, -16, 0.9, -10), disc(0, -15, 2.2))},
		{"shell", 34, join(disc(0, 0, 11).less(box(-20, 6, 20, 20)), poly(-8, 7, 0, 13, 8, 7), poly(-10, 3, 10, 3, 0, 14))},
		{"lighthouse", 48, join(poly(-4, 12, -2.6, -10, 2.6, -10, 4, 12), box(-4, -11, 4, -9.6), box(-2.2, -15, 2.2, -11), poly(-3, -15, 0, -18, 3, -15), poly(-12, 18, -9, 12, 9, 12, 12, 18))},
		{"moon", 38, disc(0, 0, 15).less(disc(7, 0, 13.5))},
		{"moon-lying", 38, disc(0, 0, 15).less(disc(0, -6, 13))},
		{"horseshoe", 34, join(ring(0, -2, 12, 7).less(box(-20, -2, 20, 20)), box(-12, -2, -7, 12), box(7, -2, 12, 12))},
		{"hook", 36, join(ring(0, 6, 9, 5.5).less(box(0, -20, -20, 6)).less(poly(-9, 6, 0, 6, 0, -4, -9, -4)), box(5.5, -14, 9, 6), ring(7.2, -15, 3.4, 1.4))},
		{"umbrella", 38, join(disc(0, 0, 14).less(box(-20, 0, 20, 20)), box(-1, 0, 1, 14), ring(3, 13, 4, 2).less(box(-20, -20, 20, 13)))},
		{"mug", 32, join(box(-9, -9, 6, 10), ring(7, 0, 7, 4).less(box(-20, -20, 5, 20)))},
		{"lantern", 40, join(box(-6, -6, 6, 9), box(-8, 9, 8, 13), poly(-8, -6, 0, -12, 8, -6), ring(0, -14.5, 4, 2.2))},
		{"oar", 60, join(box(-18, -1.1, 8, 1.1), oval(13, 0, 6, 3)).turned(0.5)},
		{"wheel", 40, join(ring(0, 0, 10, 7), disc(0, 0, 3), spokes(8, 15, 1.1))},
		{"sun", 36, join(disc(0, 0, 9), spokes(12, 16, 1.3))},
		{"squid", 48, join(oval(0, -8, 6, 9), poly(-9, -11, 0, -18, 9, -11), box(-5, -2, -3, 14), box(-2, -2, 0, 17), box(1, -2, 3, 15), box(4, -2, 5.6, 12))},
		{"starfish", 36, poly(0, -12, 3.4, -4, 12, -3.6, 5.2, 2, 7.6, 11, 0, 6, -7.6, 11, -5.2, 2, -12, -3.6, -3.4, -4).turned(0.3)},
		{"ess", 42, join(ring(0, -7, 8, 3.6).less(box(0, -7, 20, 20)), ring(0, 4.6, 8, 3.6).less(box(-20, -20, 0, 4.6)))},
		{"flag", 38, join(box(-11, -15, -9, 16), poly(-9, -14, 12, -11, 8, -7, 12, -2, -9, 0))},
		{"tee", 40, join(box(-17, -14, 17, -7), box(-2, -7, 2, 16))},
		{"tee-down", 40, join(box(-17, 7, 17, 14), box(-2, -16, 2, 7))},
		{"heron", 55, join(oval(-2, 0, 9, 4).turned(-0.3), poly(3, -1, 6, -1, 9, -16, 7, -16), disc(8.6, -16, 2), poly(9, -17, 17, -15, 9, -15), box(-2, 2, -1, 18), box(1, 2, 2, 18))},
	}
}

// spokes are bars through the middle, n of them to a full turn, of a reach and
// half a breadth.
func spokes(n int, reach, half float64) shape {
	var all []shape
	for k := range n {
		all = append(all, box(0, -half, reach, half).turned(2*math.Pi*float64(k)/float64(n)))
	}
	return join(all...)
}
