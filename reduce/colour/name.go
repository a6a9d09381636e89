package colour

// Name returns a plain name: that of the nearest centroid, by CIEDE2000 (ties:
// the first), of the ISCC-NBS system (NBS Special Publication 440).
func Name(c RGB8) string {
	at, best, lab := 0, 1e9, c.Lab()
	for i := range named {
		if d := CIEDE2000(lab, centroids[i]); d < best {
			at, best = i, d
		}
	}
	return named[at].name
}

type namedColour struct {
	rgb  RGB8
	name string
}

var centroids = func() (t [len(named)]Lab) {
	for i := range named {
		t[i] = named[i].rgb.Lab()
	}
	return t
}()
