package reduce

// Separation says which flat each pixel belongs to. It is what every later
// step reads. Pixel (x, y) has index y*W+x; the origin is the top left.
//
// A pixel on a boundary may hold two flats: Cover/255 of it is Labels, the
// rest is Beside. Away from boundaries Beside equals Labels and Cover is 255.
// Cover is never below 128 at a pixel whose label is its majority. The pair
// places the true edge inside the pixel, so that later steps measure finer
// than a pixel.
type Separation struct {
	W, H   int
	Labels []uint8 // index into Flats, or None
	Beside []uint8 // index into Flats, or None
	Cover  []uint8 // 128..255
	Flats  []Flat
	// Built is true where metal was added to what was drawn; nil when none was.
	Built []bool
}

// NewSeparation returns a separation of one label everywhere, fully covered.
func NewSeparation(w, h int) *Separation {
	s := &Separation{W: w, H: h, Labels: make([]uint8, w*h), Beside: make([]uint8, w*h), Cover: make([]uint8, w*h)}
	for i := range s.Cover {
		s.Labels[i], s.Beside[i], s.Cover[i] = None, None, 255
	}
	return s
}

// CoverOf returns how much of pixel i (0..1) belongs to flats for which has is
// true; has is indexed by label and must have 256 entries.
func (s *Separation) CoverOf(i int, has *[256]bool) float64 {
	c := float64(s.Cover[i]) / 255
	var sum float64
	if has[s.Labels[i]] {
		sum = c
	}
	if has[s.Beside[i]] {
		sum += 1 - c
	}
	return sum
}

// WithRole returns a table, indexed by label, of the flats that have the role.
func (s *Separation) WithRole(r Role) *[256]bool {
	var t [256]bool
	for i, f := range s.Flats {
		t[i] = f.Role == r
	}
	return &t
}

// Solid returns a table, indexed by label, of everything that is part of the
// pin: every flat but cut-outs, and not the background.
func (s *Separation) Solid() *[256]bool {
	var t [256]bool
	for i, f := range s.Flats {
		t[i] = f.Role != CutOut
	}
	return &t
}
